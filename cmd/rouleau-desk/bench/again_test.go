// Trying again from a moment: chosen on the timeline of a case that has ended, or on the axis of one that is watched, with the
// pointer alone, by touch, and with keys alone.

package bench_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/session"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau-desk/ui/uitest"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// overTimeline is the timeline of a case that has ended; what it asks for is gathered.
func overTimeline(t *testing.T, size ui.Vec) (*table, *[]bench.Act) {
	t.Helper()
	b := graded(t, size)
	b.Click(words.Say("result.tab_timeline"))
	asked := &[]bench.Act{}
	b.Screen = func(c *ui.Core) { *asked = append(*asked, b.Desk.Frame(c, &b.Session.View)...) }
	b.Core.Focus(0)
	b.Idle()
	return b, asked
}

// tries is the button that tries again, whatever its words are now.
func (b *table) tries(t *testing.T) ui.Mark {
	t.Helper()
	for _, m := range b.List.Marks {
		if m.ID == ui.Name("try again") {
			return m
		}
	}
	t.Fatalf("there is no way to try again; there are %v", b.Labels())
	return ui.Mark{}
}

// want checks that one act was asked for, to try again from about a time.
func want(t *testing.T, how string, asked []bench.Act, seconds, within float64) {
	t.Helper()
	if len(asked) != 1 || asked[0].Do != bench.TryAgain || math.Abs(float64(asked[0].Value)-seconds) > within {
		t.Errorf("%s asks for %+v, want to try again from %.0f s", how, asked, seconds)
	}
}

// chosenS is the moment that is chosen, by the words of the button.
func (b *table) chosenS(t *testing.T) float64 {
	t.Helper()
	at, ok := strings.CutPrefix(b.tries(t).Label, "Try again from ")
	var h, m, s float64
	if n, _ := fmt.Sscanf(at, "%f:%f:%f", &h, &m, &s); !ok || n != 3 {
		t.Fatalf("no moment is chosen: %q", b.tries(t).Label)
	}
	return 3600*h + 60*m + s
}

// chartAt is the place of a time on the chart, found by pressing.
func (b *table) chartAt(t *testing.T, seconds float64) ui.Vec {
	t.Helper()
	r := b.chartMark(t).Rect
	low, high, y := r.X+0.3*r.W, r.Right()-0.2*r.W, r.Y+0.7*r.H
	for range 12 {
		mid := (low + high) / 2
		b.Wait(500) // two presses after each other would show the whole case
		b.ClickAt(ui.Vec{X: mid, Y: y})
		b.Idle()
		if b.chosenS(t) < seconds {
			low = mid
		} else {
			high = mid
		}
	}
	b.Wait(500)
	return ui.Vec{X: high, Y: y}
}

func TestAMomentIsChosenByPointer(t *testing.T) {
	b, asked := overTimeline(t, ui.Vec{X: 1280, Y: 800})
	if m := b.tries(t); m.Enabled || !strings.Contains(m.Why, words.Say("result.try_choose")) {
		t.Errorf("without a moment: %+v", m)
	}
	if b.Click(words.Say("result.minute_before")) == nil {
		t.Error("without a moment there is a minute before it")
	}
	p := b.chartAt(t, 2400)
	b.ClickAt(p)
	b.Move(ui.Vec{X: 4, Y: 4}) // the pointer leaves the charts, and the moment stays
	b.Idle()
	b.Idle()
	m := b.tries(t)
	if at := b.chosenS(t); !m.Enabled || math.Abs(at-2400) > 8 {
		t.Fatalf("after a press at 0:40:00: %q", m.Label)
	}
	if at := strings.TrimPrefix(m.Label, "Try again from "); b.chartMark(t).Value != at && !b.HasText(at) {
		t.Error("the charts do not tell the moment")
	}
	b.ClickAt(m.Rect.Center())
	want(t, "the button", *asked, 2400, 8)
	*asked = (*asked)[:0]
	b.Click(words.Say("result.minute_before"))
	b.Click(words.Say("result.minute_before"))
	b.Idle()
	b.ClickAt(b.tries(t).Rect.Center())
	want(t, "two minutes before", *asked, 2280, 8)
	// A drag moves what is in sight and chooses nothing.
	b.Wheel(p, 6)
	was := b.tries(t).Label
	b.Drag(p, ui.Vec{X: p.X - 200, Y: p.Y})
	b.Move(ui.Vec{X: 4, Y: 4})
	b.Idle()
	if got := b.tries(t).Label; got != was {
		t.Errorf("a drag chose another moment: %q, was %q", got, was)
	}
}

func TestAMomentIsChosenByTouch(t *testing.T) {
	b, asked := overTimeline(t, ui.Vec{X: 1280, Y: 800})
	p := b.chartAt(t, 1500)
	b.Click(words.Say("result.minute_before"))
	b.TapAt(p)
	b.Idle()
	b.TapAt(b.tries(t).Rect.Center())
	want(t, "a tap", *asked, 1500, 8)
}

func TestAMomentIsChosenByKeys(t *testing.T) {
	b, asked := overTimeline(t, ui.Vec{X: 1280, Y: 800})
	b.Key(ui.K('A').Key)
	if len(*asked) != 0 {
		t.Errorf("without a moment it asks for %v", *asked)
	}
	b.Core.Focus(0)
	end := sim.Seconds(b.Session.Run.State.Tick)
	b.Key(ui.KeyLeft, ui.KeyLeft, ui.KeyLeft, ui.KeyRight)
	b.Idle()
	b.Key(ui.K('A').Key)
	want(t, "two steps before the end", *asked, end-0.02*end, 2)
	*asked = (*asked)[:0]
	b.Key(ui.K('J').Key, ui.K('A').Key)
	want(t, "a minute before", *asked, end-0.02*end-60, 2)
	// With the focus on the charts their own keys choose.
	*asked = (*asked)[:0]
	for range 40 {
		if b.Key(ui.KeyTab); b.focusedLabel() == words.Say("chart.name") {
			break
		}
	}
	b.Key(ui.KeyHome, ui.KeyPageDown)
	b.Idle()
	b.Key(ui.K('A').Key)
	want(t, "from the charts", *asked, 0.2*end, 2)
	*asked = (*asked)[:0]
	for range 10 {
		b.Key(ui.K('J').Key)
	}
	for range 10 {
		b.Key(ui.K('J').Key)
	}
	b.Key(ui.K('A').Key)
	want(t, "before the beginning", *asked, 0, 0)
}

// A moment that a criterion leads to is the one that is tried again from.
func TestAMomentOfTheGradeIsChosen(t *testing.T) {
	b := graded(t, ui.Vec{X: 1280, Y: 800})
	r := &b.Session.View.Result
	r.Criticals = append(r.Criticals, bench.CriticalResult{Name: "an error", Moment: bench.Moment{Is: true, S: 3000.4}})
	b.Idle()
	b.Click("See it at 0:50:00")
	b.Idle()
	b.Idle()
	if got := b.tries(t).Label; got != "Try again from 0:50:00" {
		t.Errorf("the moment gone to is offered as %q", got)
	}
	b.Click(words.Say("result.earlier"))
	b.Idle()
	if got := b.tries(t).Label; got == "Try again from 0:50:00" {
		t.Error("the moment before is not chosen when it is gone to")
	}
}

func TestTheTimelineFitsWithAMoment(t *testing.T) {
	for _, long := range []bool{false, true} {
		if long {
			speakLong(t)
		}
		for _, size := range allSizes {
			b, _ := overTimeline(t, size)
			b.faults(t, "timeline without a moment")
			b.Key(ui.KeyLeft)
			b.Move(ui.Vec{X: 4, Y: 4})
			b.faults(t, "timeline with a moment")
			b.Session.View.Recorded.Stale = words.Say("app.stale", "12")
			b.faults(t, "timeline of what cannot be tried again")
		}
	}
}

// watching is a table at which a recorded case is shown.
func watching(t *testing.T, size ui.Vec) *table {
	t.Helper()
	sc := spine(t)
	run := play.New(sc.Case(1, false), 1)
	run.ToEnd(operators.NewSteady(operators.SheetOf(sc, &run.Case)))
	b := &table{Desk: bench.New(), told: map[string]bool{}}
	b.Session = session.New(sc, session.Options{Seed: 1, Watch: &session.Recorded{Acts: run.Actions, End: run.State.Tick}})
	b.Session.Do([]bench.Act{{Do: bench.GoOn}, {Do: bench.GoOn}})
	b.Driver = uitest.New(size, func(c *ui.Core) {
		b.Session.Refresh()
		b.Session.Do(b.Desk.Frame(c, &b.Session.View))
	})
	b.Core.Words = bench.CoreWords()
	b.Idle()
	return b
}

func (b *table) seconds() float64 { return sim.Seconds(b.Session.Run.State.Tick) }

// near checks where the recording stands.
func (b *table) near(t *testing.T, how string, want, within float64) {
	t.Helper()
	if got := b.seconds(); math.Abs(got-want) > within {
		t.Errorf("%s: it stands at %.1f s, want %.1f", how, got, want)
	}
}

func (b *table) axis(t *testing.T) ui.Rect {
	t.Helper()
	for _, m := range b.List.Marks {
		if m.ID == ui.Name("watch axis") {
			return m.Rect
		}
	}
	t.Fatal("there is no axis")
	return ui.Rect{}
}

func TestAnyMomentIsGoneToByPointer(t *testing.T) {
	for _, size := range allSizes {
		b := watching(t, size)
		end := b.Session.View.Recorded.EndS
		r := b.axis(t)
		slip := end/float64(r.W-16)*1.5 + 1
		on := func(part float32) ui.Vec { return ui.Vec{X: r.X + 8 + (r.W-16)*part, Y: r.Bottom() - 12} }
		b.ClickAt(on(0.5))
		b.near(t, "pressed in the middle", end/2, slip)
		b.Drag(on(0.5), on(0.2))
		b.near(t, "dragged back", 0.2*end, slip)
		b.Drag(on(0.2), ui.Vec{X: r.Right() + 300, Y: 5})
		b.near(t, "dragged beyond the end", end, 0)
		b.Idle()
		b.faults(t, "watched to its end")
		if _, err := b.At(words.Say("top.finish")); err != nil {
			t.Error("at the end there is no way to the result")
		}
		b.Click(words.Say("band.back"))
		b.near(t, "a minute before the end", math.Floor(end-60), 0)
		b.ClickAt(on(0))
		b.near(t, "at the start", 0, slip)
		b.Click(words.Say("band.on"))
		b.near(t, "a minute later", 60, slip)
		b.TapAt(on(0.7))
		b.near(t, "touched", 0.7*end, slip)
		b.faults(t, "watched")
	}
}

func TestAnyMomentIsGoneToByKeys(t *testing.T) {
	b := watching(t, ui.Vec{X: 1024, Y: 640})
	end := b.Session.View.Recorded.EndS
	for range 31 {
		b.Key(ui.K('L').Key)
	}
	b.near(t, "L", 31*60, 0)
	b.Key(ui.K('J').Key)
	b.near(t, "J", 30*60, 0)
	for range 80 {
		if b.Key(ui.KeyTab); strings.HasPrefix(b.focusedLabel(), "Recorded attempt: 0:30:00") {
			break
		}
	}
	part := b.Desk.Part
	b.Key(ui.KeyRight, ui.KeyRight, ui.KeyUp, ui.KeyLeft)
	b.near(t, "arrows", 1810, 0)
	b.Key(ui.KeyPageDown, ui.KeyPageDown, ui.KeyPageUp)
	b.near(t, "page keys", 1870, 0)
	b.Key(ui.KeyEnd)
	b.near(t, "End", end, 0)
	b.Key(ui.KeyHome)
	b.near(t, "Home", 0, 0)
	b.Key(ui.KeyLeft)
	b.near(t, "before the start", 0, 0)
	if b.Desk.Part != part {
		t.Error("the arrows of the axis chose another part of the drawing")
	}
	b.Key(ui.KeyPageDown)
	var asked []bench.Act
	b.Screen = func(c *ui.Core) { asked = append(asked, b.Desk.Frame(c, &b.Session.View)...) }
	b.Key(ui.K('A').Key)
	want(t, "A", asked, 60, 0)
}

// What was recorded with another model says why it cannot be tried again.
func TestWhatIsStaleSaysSo(t *testing.T) {
	b := watching(t, ui.Vec{X: 1280, Y: 800})
	b.Session.View.Recorded.Stale = words.Say("app.stale", "12")
	b.Idle()
	if m := b.tries(t); m.Enabled || !strings.Contains(m.Why, "version 12") {
		t.Errorf("%+v", m)
	}
	var asked []bench.Act
	b.Screen = func(c *ui.Core) { asked = append(asked, b.Desk.Frame(c, &b.Session.View)...) }
	b.Key(ui.K('A').Key)
	b.ClickAt(b.tries(t).Rect.Center())
	if len(asked) != 0 {
		t.Errorf("it asks for %v", asked)
	}
}

func TestWatchingFitsInALongerLanguage(t *testing.T) {
	speakLong(t)
	for _, size := range allSizes {
		b := watching(t, size)
		b.Session.Do([]bench.Act{{Do: bench.Seek, Value: 1900}})
		b.faults(t, "watched, long words")
		b.Key(ui.K('C').Key)
		b.faults(t, "watched with large charts, long words")
	}
}
