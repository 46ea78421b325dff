// The guided lesson on the bench: at every size each step fits, and a newcomer who does only what the card says comes to
// its end.

package bench_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

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

func lesson(t testing.TB, size ui.Vec) *pupil { return lessonNamed(t, "first-bowl", size) }

// lessons are the lessons of the library.
func lessons(t testing.TB) []string {
	t.Helper()
	var names []string
	for _, name := range scenarios.Library() {
		if sc, err := scenarios.Open(name); err != nil {
			t.Fatal(err)
		} else if sc.Lesson() {
			names = append(names, name)
		}
	}
	if len(names) < 4 {
		t.Fatalf("the library has only these lessons: %v", names)
	}
	return names
}

func lessonNamed(t testing.TB, name string, size ui.Vec) *pupil {
	t.Helper()
	sc, err := scenarios.Open(name)
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
	case p.Session.View.Screen == bench.Sheet && g.Look != sim.NoPart && !g.Read && !g.Old:
		p.Session.Do([]bench.Act{{Do: bench.GoOn}}) // the step is about the bench
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
	for _, name := range lessons(t) {
		t.Run(name, func(t *testing.T) { stepsFit(t, name) })
	}
}

func stepsFit(t *testing.T, name string) {
	for _, size := range lessonSizes {
		p := lessonNamed(t, name, size)
		p.Session.Do([]bench.Act{{Do: bench.GoOn}})
		at, checked := "", 0
		for range 20000 {
			g := p.card()
			if here := fmt.Sprint("step ", g.Step, " ", g.Then != "", " ", g.Done); here != at {
				at = here
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
			p.step(t)
		}
		if !p.card().Done || checked < len(p.lesson.Guidance) || !p.HasText("You have ") {
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
