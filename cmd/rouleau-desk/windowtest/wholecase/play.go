// The play: prepared in order, then, again and again, the first thing that needs doing by what stands on the screen.

package main

import (
	"fmt"
	"math"
	"strings"
	"time"
)

// What the player aims at; the sources stand beside the same numbers of the operator steady.
const (
	dripPer100    = 17
	reachesSucker = 0.75
	leastDrops    = 60
	openSetML     = 450
	fillFromML    = 900
	rinseFromML   = 150
	restOfSwabsML = 60
	filterAndLine = 75
	lostToDrapes  = 0.95
	clearShare    = 0.04
	washBowlsML   = 1000
	givingMLMin   = 100
	slow, fast    = 2, 20
	slowHand      = 450 * time.Millisecond // that one touch takes
	askAgainS     = 80
	watchEveryS   = 70
	emptyEnoughML = 5
	leastToFillML = 120
)

type player struct {
	*hand
	until     time.Time
	seed      uint64
	speed     int
	ready     bool   // the processing set is open and checked
	stage     string // of the bowl that is under way
	agent     bool   // in the wound, and the sucker led away
	askedS    int    // when it was last asked for
	watched   int    // when the patient was last looked at
	drops     int
	lastRinse int     // when swabs were last given to rinse
	rested    float64 // what the swabs still weighed after it
	swabs     float64 // weighed before rinses
	basin     float64 // rinse that was sucked up
	rinsing   bool
	skims     bool
	bag       int // the last that was brought to the patient
	giving    bool
	heard     map[string]bool // alarms acknowledged once
}

// all runs steps until one fails.
func all(steps ...func() error) error {
	for _, s := range steps {
		if err := s(); err != nil {
			return err
		}
	}
	return nil
}

func (p *player) press1(label string) func() error { return func() error { return p.click(label) } }

// click waits for the hands where they are busy.
func (p *player) click(label string) error {
	if err := p.handsFor(label); err != nil {
		return err
	}
	return p.hand.click(label)
}

func (p *player) keepDown(label string) error {
	if err := p.handsFor(label); err != nil {
		return err
	}
	return p.hand.keepDown(label)
}

// handsFor brings a control into sight and waits for free hands where it needs them.
func (p *player) handsFor(label string) error {
	m, err := p.reach(label)
	if err == nil && m.Off && strings.Contains(m.Why, "hands are busy") {
		err = p.free()
	}
	return err
}

// when waits until a control may be used, then presses it.
func (p *player) when(label string) func() error {
	return func() error {
		m, err := p.reach(label)
		if err != nil {
			return err
		}
		if m.Off {
			err = p.passing(label, func() bool { m, ok := p.find(label); return ok && !m.Off })
		}
		if err == nil {
			err = p.click(label)
		}
		return err
	}
}

// passing lets time pass until something holds. Where it stood still before, it does again.
func (p *player) passing(what string, holds func() bool) error {
	_, stood := p.find("Go on")
	p.still(false)
	err := p.await(what, 60*time.Second, holds)
	p.still(stood)
	return err
}

// still lets time stand, or pass again. Several steps in a row are done while it stands, so that a busy machine, on which a
// hand is slow, loses no time of the case.
func (p *player) still(on bool) {
	switch _, stands := p.find("Go on"); {
	case on && !stands:
		p.click("Pause")
	case !on && stands:
		p.click("Go on")
	}
}

// pace sets the speed, if it is another.
func (p *player) pace(times int) {
	if times == fast && p.takes > slowHand { // a hand that is slow must not go at the full pace
		times = fast / 2
	}
	if p.speed != times && p.click(fmt.Sprintf("%d×", times)) == nil {
		p.speed = times
	}
}

// free waits until the hands are.
func (p *player) free() error {
	if _, busy := p.says("hands are busy"); !busy {
		return nil
	}
	return p.passing("free hands", func() bool { _, busy := p.says("hands are busy"); return !busy })
}

// choose selects a part of the drawing by one of its names; a hook is named after what hangs on it.
func (p *player) choose(names ...string) error {
	for range 3 {
		for _, n := range names {
			for _, m := range p.look() {
				if m.Kind == "hit" && m.Label == n {
					p.press(m)
					return nil
				}
			}
		}
		time.Sleep(100 * time.Millisecond)
	}
	return fmt.Errorf("there is no %v in the drawing", names)
}

func (p *player) play() error {
	p.heard, p.lastRinse = map[string]bool{}, -1000
	if err := p.before(); err != nil {
		return err
	}
	if err := p.prepare(); err != nil {
		return err
	}
	for time.Now().Before(p.until) {
		ended, err := p.next()
		if err != nil {
			return err
		}
		if ended {
			return p.result()
		}
		time.Sleep(60 * time.Millisecond)
	}
	return fmt.Errorf("time is over")
}

// caseTitle is what the list of the home screen calls the case.
const caseTitle = "Steady oozing in a spine operation"

// before goes from the cautions through the home screen to the bench; the sheet is filled in with keys and pointer.
func (p *player) before() error {
	p.do("mousemove", "640", "300") // by then the first frame is on the display, not only in words
	p.picture("cautions")
	p.keys("Return")
	return all(p.exactly, func() error { return p.inList(caseTitle) }, p.press1("Practice"),
		func() error { p.picture("home"); return nil }, p.press1("To the case sheet"),
		func() error { p.picture("case-sheet"); return nil },
		p.press1("set up to process"), p.press1("heparin in saline"), func() error {
			p.keys("Tab", "Home") // the first bowl, the standard one
			p.picture("decided")
			return nil
		}, p.press1("To the bench: time starts"), func() error { p.picture("empty-bench"); return nil })
}

// inList takes a case of the list, scrolled to where it is not in sight.
func (p *player) inList(title string) error {
	for range 30 {
		for _, m := range p.look() {
			if m.Kind == "hit" && m.Label == title && m.Place[3] >= leastSeen {
				p.press(m)
				return nil
			}
		}
		p.do("mousemove", "230", "500", "click", "--repeat", "2", "--delay", "30", "5")
	}
	return fmt.Errorf("there is no %q in the list", title)
}

// exactly writes the seed.
func (p *player) exactly() error {
	if err := p.click("Exact"); err != nil {
		return err
	}
	for _, m := range p.look() {
		if m.Kind == "text field" {
			p.press(m)
		}
	}
	p.do("type", "--delay", "50", fmt.Sprint(p.seed))
	return nil
}

// lookAt looks at parts that stand in the panel.
func (p *player) lookAt(parts ...string) func() error {
	return func() error {
		for _, name := range parts {
			if err := all(p.press1("Look at the "+name), p.free); err != nil {
				return err
			}
		}
		return nil
	}
}

// prepare makes the collecting side ready before the incision.
func (p *player) prepare() error {
	p.pace(5)
	p.still(true)
	return all(func() error { return p.choose("reservoir") }, p.press1("Open the collection set"), p.free,
		func() error { return p.choose("anticoagulant") }, p.press1("heparin in saline"), p.free,
		func() error { return p.choose("reservoir") },
		p.when("Connect the suction line"), p.free, p.when("Connect the vacuum line"), p.free, p.when("Test the vacuum"), p.free,
		func() error { return p.click("0 mmHg") }, // the pill in the drawing takes the focus to its control
		func() error {
			p.do("type", "--delay", "50", "120")
			p.keys("Return")
			return nil
		},
		p.lookAt("collection set", "suction line", "vacuum line"),
		func() error { return p.choose("heparin in saline") }, p.lookAt("drip clamp", "pack"),
		func() error { return p.choose("drip clamp") }, p.when("Run the prime in"), func() error { p.picture("priming"); return nil },
		func() error { p.keys("t"); return nil }, p.press1("tell me before what I must not collect"), p.press1("let it pool, suck from deep"),
		func() error { p.keys("b"); return p.choose("wound") }, p.press1("the reservoir"),
		func() error { p.picture("set-up"); p.still(false); p.pace(fast); return nil })
}

// next does the first thing that needs doing.
func (p *player) next() (ended bool, err error) {
	if _, ok := p.find("To the result"); ok {
		return true, nil
	}
	p.stop()
	if _, busy := p.says("hands are busy"); busy {
		return false, nil
	}
	for _, rule := range [...]func() (bool, error){p.answer, p.divert, p.drip, p.processing, p.give, p.process, p.rinse, p.tidy} {
		if did, err := rule(); did || err != nil {
			return false, err
		}
	}
	p.pace(fast)
	return false, nil
}

// answer sees to the question at the top of the panel.
func (p *player) answer() (bool, error) {
	if _, ok := p.find("Yes"); ok {
		p.picture("question")
		return true, p.click("Yes")
	}
	if _, ok := p.find("Give an estimate"); !ok {
		return false, nil
	}
	p.pace(slow)
	loss := p.loss()
	err := p.click("Give an estimate")
	p.do("type", "--delay", "50", fmt.Sprint(loss))
	p.keys("Return")
	p.picture("estimate")
	if err == nil {
		err = p.click("Tell it to the team")
	}
	p.keys("b")
	return true, err
}

// loss is what was collected and thrown away less what was added, and what swabs weigh.
func (p *player) loss() int {
	p.keys("b")
	p.choose("wound")
	sum := p.reading("theatre suction") + p.reading("pool") - p.reading("irrigation so far") + p.reading("in swabs, weighed") - p.rested + p.swabs
	p.choose("reservoir")
	sum += p.reading("taken in so far") + filterAndLine - p.basin
	p.choose("heparin in saline")
	sum -= p.reading("drawn from packs")
	return int(math.Max(0, math.Round(sum/lostToDrapes/10)*10))
}

// divert keeps what was announced out of the reservoir until the surgeon says that it is gone.
func (p *player) divert() (bool, error) {
	_, in := p.says("in the wound: not to be collected")
	now := p.clockS()
	switch {
	case in && !p.agent:
		p.agent, p.askedS = true, now
		return true, all(func() error { return p.choose("wound") }, p.press1("the theatre suction, thrown away"), func() error { p.picture("diverted"); return nil })
	case !in && p.agent:
		p.agent = false
		return true, all(func() error { return p.choose("wound") }, p.press1("the reservoir"))
	case !in || now < p.askedS+askAgainS:
		return false, nil
	}
	p.askedS = now
	return true, all(func() error { return p.choose("wound") }, p.press1("is the field clear of it?"))
}

// drip follows the bleeding.
func (p *player) drip() (bool, error) {
	line, ok := p.says(", bleeding ")
	if !ok {
		return false, nil
	}
	_, after, _ := strings.Cut(line, "bleeding ")
	want := max(leastDrops, int(number(after)*dripPer100/100*reachesSucker*20))
	if want == p.drops || p.clockS() < 270 {
		return false, nil
	}
	p.drops = want
	if err := p.choose("heparin in saline"); err != nil {
		return true, err
	}
	return true, p.set("drip", want)
}
