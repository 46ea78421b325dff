// The guided lesson on the bench: at every size each step fits, and a newcomer who does only what the card says comes to
// its end.

package bench_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/session"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau-desk/ui/uitest"
	"rouleau/scenarios"
	"rouleau/scoring/coach"
	"rouleau/sim"
)

// pupil is a window in which a lesson is played, with a clock of its own.
type pupil struct {
	*table
	lesson *scenarios.Scenario
	now    time.Time
}

func lesson(t testing.TB, size ui.Vec) *pupil {
	t.Helper()
	sc, err := scenarios.Open("first-bowl")
	if err != nil {
		t.Fatal(err)
	}
	p := &pupil{table: &table{Desk: bench.New(), told: map[string]bool{}}, lesson: sc, now: time.Date(2031, 6, 18, 9, 0, 0, 0, time.UTC)}
	p.Session = session.New(sc, session.Options{Seed: 1, Finish: session.Grader(sc, false, "test", "", nil)})
	p.Driver = uitest.New(size, func(c *ui.Core) {
		p.Session.Refresh()
		p.Session.Do(p.Desk.Frame(c, &p.Session.View))
	})
	p.Core.Words = bench.CoreWords()
	return p
}

func (p *pupil) card() *bench.Guide { return &p.Session.View.Guide }

// wait lets a tenth of a second pass on the wall.
func (p *pupil) wait() {
	p.now = p.now.Add(100 * time.Millisecond)
	p.Session.Advance(p.now)
	p.Idle()
}

// step does what the card asks for, by acts and not by hand.
func (p *pupil) step(t *testing.T) {
	t.Helper()
	g := p.card()
	switch {
	case g.Read || g.Old:
		p.Session.Do([]bench.Act{{Do: bench.GuideNext}})
	default:
		if a, ok := coach.Asks(p.lesson, g.Step-1); ok && p.Session.View.May(a) == "" {
			p.Session.Do([]bench.Act{{Sim: a}})
		} else {
			p.wait()
		}
	}
	p.Session.Refresh()
}

var lessonSizes = []ui.Vec{{X: 900, Y: 600}, {X: 1024, Y: 640}, {X: 1280, Y: 800}, {X: 1920, Y: 1080}, {X: 900, Y: 1200}}

func TestEveryStepFits(t *testing.T) {
	for _, size := range lessonSizes {
		p := lesson(t, size)
		p.Session.Do([]bench.Act{{Do: bench.GoOn}})
		at, checked := "", 0
		for range 20000 {
			g := p.card()
			if here := fmt.Sprint("step ", g.Step, " ", g.Then != "", " ", g.Done); here != at {
				at = here
				if g.Step == 4 && p.Session.View.Screen == bench.Sheet {
					p.Session.Do([]bench.Act{{Do: bench.GoOn}})
				}
				p.Idle()
				p.faults(t, here)
				p.covered(t, here)
				if !g.First {
					p.Session.Do([]bench.Act{{Do: bench.GuideBack}})
					p.Idle()
					p.faults(t, here+", the step before read again")
					p.Session.Do([]bench.Act{{Do: bench.GuideNext}})
					p.Idle()
				}
				checked++
			}
			if g.Done {
				break
			}
			if g.Step == 5 && p.Session.View.Screen == bench.Sheet {
				p.Session.Do([]bench.Act{{Do: bench.GoOn}})
			}
			p.step(t)
		}
		if !p.card().Done || checked < len(p.lesson.Guidance) || !p.HasText("You have led one bowl") {
			t.Errorf("%v: %d views of the lesson were looked at, it stands at %s", size, checked, at)
		}
	}
}

// covered reports a card that is not whole, or that lies on the part it is about or on the stop.
func (p *pupil) covered(t *testing.T, where string) {
	t.Helper()
	g := p.card()
	top := float32(0)
	for _, m := range p.List.Marks {
		if m.Kind == ui.KindText && strings.HasPrefix(m.Label, "Step ") {
			top = m.Rect.Y
		}
	}
	if !g.Done && top == 0 {
		t.Errorf("%v, %s: there is no card", p.Size, where)
	}
	if g.Done || top == 0 {
		return
	}
	for _, m := range p.List.Marks {
		if m.Kind == ui.KindHit && m.Rect.Bottom() > top {
			t.Errorf("%v, %s: the card lies on %q", p.Size, where, m.Label)
		}
		if m.Kind == ui.KindText && (m.Label == g.Do || m.Label == g.Then && g.Then != "") && m.Shown.H < m.Rect.H-0.5 {
			t.Errorf("%v, %s: the card does not show all of %q: %v of %v", p.Size, where, m.Label, m.Shown, m.Rect)
		}
	}
	if p.Session.View.Screen == bench.AtBench && g.Look != sim.NoPart && !g.Read && p.Desk.Tab != bench.TabPart {
		t.Errorf("%v, %s: the part is not in the panel", p.Size, where)
	}
}

// Somebody who reads again is not overtaken by the case, and comes back to where the lesson stands.
func TestReadingAgainStandsStill(t *testing.T) {
	p := lesson(t, ui.Vec{X: 1280, Y: 800})
	p.Session.Do([]bench.Act{{Do: bench.GoOn}})
	for p.card().Step < 17 {
		p.step(t)
		if p.card().Step == 5 && p.Session.View.Screen == bench.Sheet {
			p.Session.Do([]bench.Act{{Do: bench.GoOn}})
		}
	}
	for p.card().Read {
		p.step(t)
	}
	at, tick := p.card().Step, p.Session.Run.State.Tick
	p.Key(ui.K('V').Key)
	p.wait()
	tick = p.Session.Run.State.Tick
	for range 30 {
		p.wait()
	}
	if g := p.card(); !g.Old || g.Step != at-1 || p.Session.Run.State.Tick != tick {
		t.Errorf("reading step %d of %d again: %+v, tick %d, was %d", at-1, at, g, p.Session.Run.State.Tick, tick)
	}
	p.Key(ui.K('O').Key)
	for range 30 {
		p.wait()
	}
	if p.card().Old || p.Session.Run.State.Tick == tick {
		t.Errorf("the lesson does not go on after a step was read again: %+v, tick %d, was %d", *p.card(), p.Session.Run.State.Tick, tick)
	}
}

func TestAnAssessmentHasNoGuide(t *testing.T) {
	sc, err := scenarios.Open("first-bowl")
	if err != nil {
		t.Fatal(err)
	}
	s := session.New(sc, session.Options{Seed: 1, Assessment: true})
	s.Refresh()
	if s.View.Guide.On {
		t.Error("an assessment is guided")
	}
}

// newcomer is somebody who works the window with the pointer alone and knows only what the card says.
type newcomer struct {
	pointer
	*lessonPlay
}

// lessonPlay is the pupil's clock and card.
type lessonPlay struct{ p *pupil }

func (l lessonPlay) card() *bench.Guide { return l.p.card() }
func (l lessonPlay) wait()              { l.p.wait() }

// lets waits until the card has changed.
func (n newcomer) lets() {
	n.t.Helper()
	was := *n.card()
	for range 4000 {
		if g := n.card(); g.Step != was.Step || g.Then != was.Then || g.Done {
			return
		}
		n.wait()
	}
	log := n.Session.View.Log
	n.t.Fatalf("the card stays at step %d, %q; there are %q; the log ends with %+v", was.Step, was.Do, n.Labels(), log[max(0, len(log)-3):])
}

// free waits until the hands are free.
func (n newcomer) free() {
	for range 4000 {
		if v := &n.Session.View.Seen; !v.HandsBusy && !v.Pump.Braking {
			break
		}
		n.wait()
	}
	n.Idle()
}

// press finds a control, with the wheel over the area that holds it, and presses it.
func (n newcomer) press(label, below string) {
	n.t.Helper()
	n.turn(label)
	n.pointer.press(label, below)
}

func (n newcomer) set(label string, value float64) { n.turn(label); n.pointer.set(label, value) }
func (n newcomer) hold(label string)               { n.turn(label); n.pointer.hold(label) }

// turn turns the wheel over the scrolled area a control stands in until it is in sight.
func (n newcomer) turn(label string) {
	n.t.Helper()
	for range 40 {
		m, err := n.mark(label, "")
		if err != nil {
			n.t.Fatal(err)
		}
		if m.Shown.H >= min(m.Rect.H, 30) {
			return
		}
		for _, area := range n.List.Marks {
			if in := area.Shown; area.Kind == ui.KindScroll && in.X <= m.Rect.X && in.Right() >= m.Rect.Right()-1 && in.H > 60 {
				lines := float32(-1)
				if m.Rect.Y < in.Y {
					lines = 1
				}
				n.Wheel(in.Center(), lines)
				break
			}
		}
	}
}

// slide drags a slider to a value.
func (n newcomer) slide(label string, verb sim.Verb, value float64) {
	n.t.Helper()
	n.turn(label)
	m := n.seen(label, "")
	least, most, _ := sim.ValueRange(verb)
	x := m.Rect.X + 10 + (m.Rect.W-20)*float32((value-least)/(most-least))
	y := m.Rect.Bottom() - 13
	n.Drag(ui.Vec{X: m.Rect.X + m.Rect.W/2, Y: y}, ui.Vec{X: x, Y: y})
}

// shows says whether there is a button of exactly these words, in sight or to be scrolled to.
func (n newcomer) shows(label string) bool {
	return slices.ContainsFunc(n.List.Marks, func(m ui.Mark) bool { return m.Kind == ui.KindButton && m.Label == label })
}

// ways are what to press where the words of the card are not those of a button.
var ways = map[string]func(n newcomer){
	"Choose to set up to process": func(n newcomer) {
		for _, label := range []string{"set up to process", "heparin in saline", "small"} {
			n.press(label, "")
		}
		n.press("To the bench: time starts", "")
	},
	"Set the vacuum to about 120 mmHg.":      func(n newcomer) { n.set("vacuum", 120) },
	"Hang the heparin solution":              func(n newcomer) { n.press("heparin in saline", "") },
	"Set the drip to about 150 drops/min":    func(n newcomer) { n.set("drip", 150) },
	"Lead the sucker to the reservoir.":      func(n newcomer) { n.choose("route", "the reservoir") },
	"Ask the surgeon to let the blood pool.": func(n newcomer) { n.press(words.Say("request.let_it_pool"), "") },
	"Hang the saline":                        func(n newcomer) { n.press("saline 0.9 %", "") },
	"Set the wash volume to 500 mL.":         func(n newcomer) { n.slide("wash volume", sim.SetWashVolume, 500) },
	"Set the fill rate to 200 mL/min.":       func(n newcomer) { n.slide("fill rate", sim.SetFillRate, 200) },
	"Set the wash rate to 200 mL/min.":       func(n newcomer) { n.slide("wash rate", sim.SetWashRate, 200) },
	"Turn the reservoir gently.":             func(n newcomer) { n.press(words.Say("panel.mix"), "") },
	"Stop the pump only.":                    func(n newcomer) { n.press("Stop the pump only", "") },
	"Push the air out of the bag.":           func(n newcomer) { n.press("Push the air out", "") },
	"Write the label, all six fields.": func(n newcomer) {
		n.press("Write the label …", "")
		for _, field := range []string{"first and last name", "hospital number", "date and time collection began", "expiry", "for this patient only", "volume"} {
			n.press(field, "Label: bag 1")
		}
		n.press("Write the label", "Label: bag 1")
	},
	"Hand over, all six points.": func(n newcomer) {
		n.press("Hand over …", "")
		for _, m := range n.Labels() {
			if slices.Contains(handOver, m) {
				n.press(m, "Hand over: bag 1")
			}
		}
		n.press("Say it", "")
	},
	"Call the clinician to the bedside.": func(n newcomer) { n.press("Call the clinician", "") },
	"Connect the bag through a filter.":  func(n newcomer) { n.hold("Connect through a filter") },
	"Give at about 60 mL/min.":           func(n newcomer) { n.set("giving", 60) },
	"Stop giving":                        func(n newcomer) { n.press("Stop giving", "") },
	"The anaesthetist asks.": func(n newcomer) {
		n.set("blood lost", 450)
		n.press("Tell it to the team", "")
	},
	"Take the bench down.": func(n newcomer) { n.hold("Take the bench down") },
	"End the case.":        func(n newcomer) { n.hold("End the case") },
}

var handOver = []string{words.Say("handover.volume"), words.Say("handover.hct"), words.Say("handover.washed"), words.Say("handover.anticoagulant"),
	words.Say("handover.expiry"), words.Say("handover.problems")}

// The whole lesson by pointer, through the display list, from the cautions to the result.
func TestANewcomerFinishesTheLesson(t *testing.T) {
	for _, size := range []ui.Vec{{X: 900, Y: 600}, {X: 1280, Y: 800}} {
		p := lesson(t, size)
		n := newcomer{pointer{p.table, t}, &lessonPlay{p}}
		n.press("Understood, to the case", "")
		for range 200 {
			g := *n.card()
			if g.Done {
				break
			}
			if g.Read {
				n.press("Continue", "")
				continue
			}
			n.free()
			acted := false
			for said, way := range ways {
				if strings.HasPrefix(g.Do, said) {
					way(n)
					acted = true
				}
			}
			if button := strings.TrimSuffix(g.Do, "."); !acted && n.shows(button) {
				n.press(button, "")
				acted = true
			}
			if acted {
				n.Idle()
			}
			if h := n.card(); h.Step == g.Step && h.Then == g.Then && !h.Done {
				n.lets()
			}
		}
		v := &n.Session.View
		if !n.card().Done || !v.Seen.Ended {
			t.Fatalf("%v: the lesson stands at step %d, %q; ended %v", size, n.card().Step, n.card().Do, v.Seen.Ended)
		}
		if !n.HasText("Steady oozing in a spine operation") || !n.HasText("mL were given") {
			t.Errorf("%v: the end card says neither what came of it nor what comes next", size)
		}
		if minutes := sim.Seconds(v.Seen.Tick) / 60; minutes > 25 {
			t.Errorf("%v: %.0f minutes of the case", size, minutes)
		}
		n.press("See the result", "")
		if r := &v.Result; v.Screen != bench.Graded || !r.Pass || r.Total < 85 {
			t.Errorf("%v: screen %v, passed %v with %.0f points: %v", size, v.Screen, r.Pass, r.Total, r.Reasons)
		}
	}
}
