// The play from product bag to patient, and the tidy end.

package main

import (
	"fmt"
	"strings"
	"time"
)

// bagOn is what the bag on the product line holds, by the words beside it.
func (p *player) bagOn() (n int, ml float64) {
	for _, m := range p.look() {
		if m.Kind != "text" || m.Place[0] < 780 || m.Place[0] > 940 || m.Place[1] > 330 {
			continue
		}
		switch {
		case strings.HasPrefix(m.Label, "bag "):
			n = int(number(m.Label))
		case strings.HasSuffix(m.Label, " mL") && !strings.HasPrefix(m.Label, "air") && ml == 0:
			ml = number(m.Label)
		}
	}
	return n, ml
}

// give brings the bag to the patient when it is wanted, or when nothing more will come, and watches.
func (p *player) give() (bool, error) {
	if p.giving {
		return p.watch()
	}
	n, ml := p.bagOn()
	_, wanted := p.says("blood was asked for")
	_, dry := p.over()
	res, _ := p.reservoir()
	idle := p.stage == "" || p.stage == "emptying"
	stands := p.shown("standing")
	if n == 0 || ml < 20 || !stands || !idle || !(wanted || dry && res < leastToFillML) {
		return false, nil
	}
	over, _ := p.over() // while the hands are busy it cannot be read
	p.still(true)
	p.pace(5)
	p.bag = n
	fields := func(open, done, shot string) error {
		return all(p.press1(open), func() error {
			for _, m := range p.look() {
				if m.Kind == "checkbox" && m.Layer > 0 && !m.On {
					p.press(m)
				}
			}
			p.picture(shot)
			return p.click(done)
		}, p.free)
	}
	err := all(func() error { return p.choose("product bag") }, p.press1("Turn it over"), p.free, p.press1("Sample"), p.free,
		func() error { return fields("Write the label …", "Write the label", "label") }, func() error { p.picture("labelled"); return nil },
		p.press1("Push the air out"), p.free, func() error { return fields("Hand over …", "Say it", "handover") },
		func() error { return p.choose("patient") }, p.press1("Call the clinician"), func() error { return p.choose("product bag") },
		p.when("Check together, two people"), p.free,
		func() error { return p.keepDown("Connect through a filter") }, p.free,
		func() error { return p.choose("patient") }, func() error { return p.set("giving", givingMLMin) },
		p.press1("Look at the patient"), func() error { p.picture("giving"); p.watched = p.clockS(); return nil })
	p.giving = err == nil
	if err == nil && !over { // the next bowl needs a bag
		err = all(func() error { return p.choose("product bag") }, p.press1("Hang a fresh bag"), p.free, func() error { p.picture("second-bag"); return nil })
	}
	p.still(false)
	return true, err
}

// watch looks at the patient now and then, and takes the bag off when it is empty.
func (p *player) watch() (bool, error) {
	t, _ := p.says("mL to go")
	if t != "" && number(t) > emptyEnoughML {
		if p.clockS() < p.watched+watchEveryS {
			return false, nil
		}
		p.watched = p.clockS()
		return true, all(func() error { return p.choose("patient") }, p.press1("Look at the patient"))
	}
	p.giving = false
	if err := p.choose("patient"); err != nil {
		return true, err
	}
	p.click("Stop giving") // unless it has stopped by itself
	return true, all(p.when("Take the bag off"), p.free)
}

// tidy clears up when all is done: estimate, lines, bench, tally, end.
func (p *player) tidy() (bool, error) {
	_, dry := p.over()
	res, _ := p.reservoir()
	stands := p.shown("standing")
	if _, ml := p.bagOn(); !dry || !stands || res >= leastToFillML || ml > emptyEnoughML || p.giving {
		return false, nil
	}
	p.still(true) // reading off takes a hand longer than the case has left
	loss := p.loss()
	p.keys("r")
	err := all(func() error { return p.set("blood lost", loss) }, p.press1("Tell it to the team"),
		func() error { return p.keepDown("Take the bench down") }, p.free, p.tally,
		func() error { return p.keepDown("End the case") })
	return true, err
}

// tally writes the closing tally from scales and counters.
func (p *player) tally() error {
	p.keys("b")
	values := map[string]float64{}
	read := func(part string, names map[string]string) {
		p.choose(part)
		for line, name := range names {
			p.toTop()
			values[line] += p.reading(name)
		}
	}
	read("wound", map[string]string{"irrigation": "irrigation so far"})
	read("reservoir", map[string]string{"collected, anticoagulant included": "taken in so far"})
	read("heparin in saline", map[string]string{"anticoagulant": "drawn from packs"})
	read("bowl", map[string]string{"processed": "processed in all", "wash fluid": "wash fluid in all"})
	read("waste bag", map[string]string{"waste": "holds", "product thrown away": "blood thrown away"})
	read("patient", map[string]string{"given back": "given so far"})
	p.choose("product bag")
	for i := 1; i <= p.bag; i++ {
		if p.bag > 1 {
			p.click(fmt.Sprint(i))
		}
		p.toTop() // each bag has its place in the panel
		values["product"] += p.reading("came in so far")
	}
	p.keys("r")
	if err := p.click("Write the tally …"); err != nil {
		return err
	}
	for line, ml := range values {
		if err := p.set(line, int(ml)); err != nil {
			return err
		}
		field, _ := p.find(line)
		for _, m := range p.look() {
			if m.Label == "Write" && m.Place[1] > field.Place[1]-8 && m.Place[1] < field.Place[1]+8 {
				p.press(m)
			}
		}
	}
	p.picture("tally")
	p.keys("Escape")
	return nil
}

// result marks each objective before the verdict, by keys, goes to the grade, keeps pictures of both, and closes the window.
func (p *player) result() error {
	p.keys("F10")
	count, ok := "", false
	err := p.await("the marking", 60*time.Second, func() bool { count, ok = p.says(" marked"); return ok })
	if err != nil {
		return err
	}
	_, all, _ := strings.Cut(count, "of ")
	for i := range int(number(all)) {
		p.keys("1")
		if i == 1 {
			p.picture("marking")
		}
	}
	p.keys("Down")
	p.do("type", "--delay", "50", ownLine)
	p.picture("marked")
	p.keys("Return")
	err = p.await("the grade", 60*time.Second, func() bool { _, ok := p.says("of 100"); return ok })
	p.picture("result")
	if _, ok := p.says(ownLine); err == nil && !ok {
		err = fmt.Errorf("the verdict does not show what was written before it")
	}
	if err == nil {
		err = p.click("Close the window")
	}
	return err
}
