// The lesson leads on: the control that a step asks for is scrolled into sight, and a wait that cannot come any more is told
// with the way on.

package bench_test

import (
	"testing"

	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

// upTo does what the card asks until it says this.
func (p *pupil) upTo(t *testing.T, says string) {
	t.Helper()
	p.Session.Do([]bench.Act{{Do: bench.GoOn}})
	for range 20000 {
		g := p.card()
		if g.Done {
			break
		}
		if g.Do == says && !g.Read {
			return
		}
		p.step(t)
	}
	t.Fatalf("the lesson does not come to %q", says)
}

func TestTheControlOfAStepIsInSight(t *testing.T) {
	for _, x := range []struct{ lesson, says, control string }{
		{"first-bowl", "Connect the outlet line.", "Connect the outlet line"},
		{"first-bowl", "Set the wash volume to 500 mL.", "wash volume"},
		{"first-bowl", "Take the bench down. Hold the button.", "Take the bench down"},
		{"lesson-anticoagulation", "Hang the citrate.", "citrate solution"},
		{"lesson-the-bowl", "Tick: empty after washing.", "empty after washing"},
		{"lesson-the-bowl", "Top up from the product bag.", "Top up from the product bag"},
		{"lesson-washing", "Draw the product back.", "Draw the product back"},
	} {
		for _, size := range []ui.Vec{{X: 900, Y: 600}, {X: 1280, Y: 800}} {
			p := lessonNamed(t, x.lesson, size)
			p.upTo(t, x.says)
			for range 5 {
				p.Idle()
			}
			m, err := p.mark(x.control, "")
			if err != nil {
				t.Errorf("%v, %s, %q: %v", size, x.lesson, x.says, err)
				continue
			}
			if m.Shown.H < m.Rect.H-0.5 {
				t.Errorf("%v, %s: %q is asked for, and %v of its %v are in sight", size, x.lesson, x.control, m.Shown.H, m.Rect.H)
			}
		}
	}
}

func TestAWaitThatCannotComeIsToldInTheWindow(t *testing.T) {
	p := lesson(t, ui.Vec{X: 1280, Y: 800})
	p.upTo(t, "Wait for the interface to reach the detector, at 0.93.")
	pass := func(seconds int) {
		for range 10 * seconds {
			p.wait()
		}
	}
	pass(2)
	if p.card().Stuck != "" {
		t.Fatalf("filling goes on, and it is told: %s", p.card().Stuck)
	}
	p.Session.Do([]bench.Act{{Sim: sim.Action{Do: sim.StopPump}}})
	pass(14)
	if p.card().Stuck == "" || !p.HasText("Press Fill.") {
		t.Errorf("the pump was stopped too early, and the card says %+v", *p.card())
	}
	p.Session.Do([]bench.Act{{Sim: sim.Action{Do: sim.Fill}}})
	pass(2)
	if p.card().Stuck != "" {
		t.Errorf("filled again, and still told: %s", p.card().Stuck)
	}
}

func TestAnActThatIsRefusedWhileTheClockStandsIsTold(t *testing.T) {
	p := lessonNamed(t, "lesson-anticoagulation", ui.Vec{X: 1280, Y: 800})
	p.upTo(t, "Run the prime in.")
	p.Session.Do([]bench.Act{{Sim: sim.Action{Do: sim.Clamp, On: sim.DripClamp}}})
	p.Idle()
	p.Idle()
	if p.card().Stuck == "" || !p.HasText("This is not possible now") {
		t.Errorf("the clamp was closed again, and the card says %+v", *p.card())
	}
}
