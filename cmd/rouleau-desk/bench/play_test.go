// The case is played by hand through the display list, once with the pointer alone and once with the keyboard alone.

package bench_test

import (
	"fmt"
	"slices"
	"testing"

	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

// hand is a way to work the window.
type hand interface {
	press(label, below string)       // a button; below is a word it stands under, "" for anywhere
	choose(group, label string)      // one of a group
	part(label string)               // a part of the drawing
	set(label string, value float64) // a slider
	hold(label string)
}

// passed lets seconds of the case go by.
func (b *table) passed(seconds float64) {
	for range sim.Ticks(seconds) {
		b.Session.Tick()
	}
	b.Idle()
	b.Idle()
}

// mark finds a control by its label, below a word on the screen; scrolled away or not.
func (b *table) mark(label, below string) (ui.Mark, error) {
	from := float32(-1e9)
	if below != "" {
		found := false
		for _, m := range b.List.Marks {
			if m.Kind == ui.KindText && m.Label == below {
				from, found = m.Rect.Y, true
			}
		}
		if !found {
			return ui.Mark{}, fmt.Errorf("no words %q on the screen", below)
		}
	}
	best := ui.Mark{}
	for _, m := range b.List.Marks {
		if m.Target() && m.Label == label && m.Rect.Y >= from-1 && (best.ID == 0 || m.Rect.Y < best.Rect.Y) {
			best = m
		}
	}
	if best.ID == 0 {
		return best, fmt.Errorf("no control %q below %q; there are %q", label, below, b.Labels())
	}
	return best, nil
}

type pointer struct {
	*table
	t *testing.T
}

// hasWords reports whether words stand on the screen now.
func (b *table) hasWords(words string) bool {
	return slices.ContainsFunc(b.List.Marks, func(m ui.Mark) bool { return m.Kind == ui.KindText && m.Label == words })
}

// reveal turns the wheel over the panel until words come into sight.
func (p pointer) reveal(words string) {
	at := ui.Vec{X: p.Size.X - 160, Y: p.Size.Y * 0.7}
	for i := range 60 {
		if words == "" || p.hasWords(words) {
			return
		}
		lines := float32(-1)
		if i < 15 {
			lines = 2
		}
		p.Wheel(at, lines)
	}
}

// reveal walks with the Tab key until words come into sight.
func (k keyboard) reveal(words string) {
	for range 120 {
		if words == "" || k.hasWords(words) {
			return
		}
		k.Key(ui.KeyTab)
	}
}

// seen scrolls until a control is in sight.
func (p pointer) seen(label, below string) ui.Mark {
	p.t.Helper()
	p.reveal(below)
	for range 60 {
		m, err := p.mark(label, below)
		if err != nil {
			p.t.Fatal(err)
		}
		if m.Shown.H >= 30 && m.Shown.W >= 30 {
			return m
		}
		at := ui.Vec{X: m.Rect.X + m.Rect.W/2, Y: p.Size.Y * 0.6}
		lines := float32(-1)
		if m.Rect.Y < p.Size.Y*0.5 {
			lines = 1
		}
		p.Wheel(at, lines)
	}
	p.t.Fatalf("%q cannot be scrolled into sight: %+v", label, func() ui.Mark { m, _ := p.mark(label, below); return m }())
	return ui.Mark{}
}

func (p pointer) press(label, below string) { p.ClickAt(p.seen(label, below).Shown.Center()); p.Idle() }
func (p pointer) choose(_, label string)    { p.press(label, "") }
func (p pointer) part(label string)         { p.press(label, "") }
func (p pointer) set(label string, value float64) {
	p.t.Helper()
	for range 40 { // dragging is coarse; the keys under the pointer's focus are not used here
		m := p.seen(label, "")
		least, most := p.rangeOf(label)
		x := m.Rect.X + 10 + (m.Rect.W-20)*float32((value-least)/(most-least))
		p.Drag(ui.Vec{X: m.Rect.X + m.Rect.W/2, Y: m.Rect.Bottom() - 13}, ui.Vec{X: x, Y: m.Rect.Bottom() - 13})
		return
	}
}
func (p pointer) hold(label string) {
	m := p.seen(label, "")
	at := m.Shown.Center()
	p.Move(at)
	p.Frame(ui.Input{Pointer: at, PointerIn: true, Pressed: true, Down: true})
	for range 60 {
		p.Frame(ui.Input{Pointer: at, PointerIn: true, Down: true})
	}
	p.Frame(ui.Input{Pointer: at, PointerIn: true, Released: true})
	p.Idle()
}

// rangeOf is the range of a slider of the bench.
func (b *table) rangeOf(label string) (least, most float64) {
	verbs := map[string]sim.Verb{"drip": sim.SetDrip, "vacuum": sim.SetVacuum, "giving": sim.GiveRate, "blood lost": sim.EstimateLoss}
	least, most, _ = sim.ValueRange(verbs[label])
	return least, min(most, 6000)
}

type keyboard struct {
	*table
	t *testing.T
}

// focus walks with the Tab key to a control.
func (k keyboard) focus(id ui.ID, what string) {
	k.t.Helper()
	for range 300 {
		if k.Core.Focused() == id {
			return
		}
		k.Key(ui.KeyTab)
	}
	k.t.Fatalf("the Tab key never reaches %s", what)
}

func (k keyboard) press(label, below string) {
	k.t.Helper()
	k.reveal(below)
	m, err := k.mark(label, below)
	if err != nil {
		k.t.Fatal(err)
	}
	k.focus(m.ID, label)
	k.Key(ui.KeyEnter)
	k.Idle()
}
func (k keyboard) part(label string) { k.press(label, "") }
func (k keyboard) choose(group, label string) {
	k.t.Helper()
	k.focus(ui.Name(group), group)
	k.Key(ui.KeyHome)
	for range 6 {
		for _, m := range k.List.Marks {
			if m.Label == label && m.On {
				return
			}
		}
		k.Key(ui.KeyDown)
		k.Idle()
	}
	k.t.Fatalf("%q cannot be chosen", label)
}
func (k keyboard) set(label string, value float64) {
	k.t.Helper()
	m, err := k.mark(label, "")
	if err != nil {
		k.t.Fatal(err)
	}
	k.focus(m.ID, label)
	k.Type(fmt.Sprintf("%.0f", value))
	k.Key(ui.KeyEnter)
	k.Idle()
}
func (k keyboard) hold(label string) {
	k.t.Helper()
	m, err := k.mark(label, "")
	if err != nil {
		k.t.Fatal(err)
	}
	k.focus(m.ID, label)
	k.Key(ui.KeyEnter)
	k.Key(ui.KeyEnter)
	k.Idle()
}

// playByHand is one bowlful, from the cautions to the grade.
func playByHand(t *testing.T, b *table, h hand) {
	h.press("Understood, to the case", "")
	h.choose("decide", "set up to process")
	h.choose("agent", "heparin in saline")
	h.choose("bowl", "standard")
	h.press("To the bench: time starts", "")
	h.part("reservoir")
	h.press("Open the collection set", "")
	b.passed(46)
	h.press("Connect the suction line", "")
	b.passed(7)
	h.press("Connect the vacuum line", "")
	b.passed(7)
	h.press("Test the vacuum", "")
	b.passed(9)
	h.set("vacuum", 120)
	h.part("anticoagulant")
	h.press("heparin in saline", "")
	b.passed(13)
	h.press("Open the drip clamp", "")
	h.press("Run the prime in", "")
	b.passed(30)
	h.set("drip", 80)
	h.part("wound")
	h.choose("route", "the reservoir")
	b.passed(1500)
	h.part("bowl")
	h.press("Open the processing set", "")
	b.passed(46)
	h.press("Connect the outlet line", "")
	b.passed(7)
	h.part("first wash hook")
	h.press("saline 0.9 %", "")
	b.passed(13)
	h.part("first wash clamp")
	h.part("outlet clamp")
	h.part("reservoir")
	h.press("Turn the reservoir gently", "")
	b.passed(16)
	h.part("bowl")
	h.press("Fill", "")
	b.passed(150)
	h.press("Stop the pump only", "")
	h.press("Wash", "")
	h.part("wound")
	h.choose("route", "the theatre suction, thrown away") // before the haemostat goes in
	h.part("bowl")
	b.passed(205)
	h.press("Stop pump and bowl", "")
	b.passed(16)
	h.press("Empty to the product bag", "")
	b.passed(60)
	h.part("product bag")
	h.press("Push the air out", "")
	b.passed(11)
	h.press("Write the label …", "")
	for _, field := range []string{"first and last name", "hospital number", "date and time collection began", "expiry", "for this patient only", "volume"} {
		h.press(field, "")
	}
	h.press("Write the label", "Label: bag 1")
	b.passed(16)
	h.press("Hand over …", "")
	h.press("volume", "Hand over: bag 1")
	h.press("Say it", "")
	b.passed(21)
	h.part("patient")
	h.press("Call the clinician", "")
	b.passed(31)
	h.part("product bag")
	h.press("Check together, two people", "")
	b.passed(16)
	h.hold("Connect through a filter")
	b.passed(16)
	h.part("patient")
	h.set("giving", 60)
	b.passed(120)
	h.press("Look at the patient", "")
	b.passed(100)
	h.press("Stop giving", "")
	h.choose("tabs", "Records")
	h.set("blood lost", 900)
	h.press("Tell it to the team", "")
	h.press("clot in filter or reservoir", "")
	b.passed(4500 - sim.Seconds(b.Session.Run.State.Tick) + 5)
	h.press("Write the tally …", "")
	h.press("Write", "product")
	h.press("Close", "Closing tally")
	h.hold("Take the bench down")
	b.passed(61)
	h.hold("End the case")
	h.press("To the result", "")
	h.press("Show the verdict without marking", "")
}

var mustHave = []sim.Verb{sim.Decide, sim.ChooseAnticoagulant, sim.ChooseBowl, sim.OpenSet, sim.Connect, sim.TestVacuum, sim.SetVacuum, sim.Hang,
	sim.Clamp, sim.Prime, sim.SetDrip, sim.Route, sim.Mix, sim.Fill, sim.StopPump, sim.Wash, sim.StopAll, sim.Empty, sim.ExpelAir, sim.Label,
	sim.HandOver, sim.Ask, sim.Identify, sim.Hook, sim.GiveRate, sim.Watch, sim.EstimateLoss, sim.Reconcile, sim.Declare, sim.TakeDown, sim.EndCase}

func checkPlayed(t *testing.T, b *table) {
	t.Helper()
	var done []sim.Verb
	for _, a := range b.Session.Run.Actions {
		done = append(done, a.Do)
	}
	for _, v := range mustHave {
		if !slices.Contains(done, v) {
			t.Errorf("%s was never done", v)
		}
	}
	s := &b.Session.Run.State
	if s.Bags[0].LabelBits != sim.LabelComplete || s.Bags[0].Checkers != 2 || s.Giving.GivenML < 100 || !s.Giving.Filter {
		t.Errorf("label %b, checked by %d, given %.0f mL, filter %v", s.Bags[0].LabelBits, s.Bags[0].Checkers, s.Giving.GivenML, s.Giving.Filter)
	}
	if b.Session.View.Screen != bench.Graded || !b.Session.View.Result.Graded {
		t.Errorf("the case did not end in a grade")
	}
	if len(b.Session.View.Result.Criticals) > 0 {
		t.Errorf("critical errors in a careful case: %v", b.Session.View.Result.Criticals)
	}
}

func TestPlayedByPointerAlone(t *testing.T) {
	b := sit(t, ui.Vec{X: 1280, Y: 800}, false)
	playByHand(t, b, pointer{b, t})
	checkPlayed(t, b)
}

func TestPlayedByKeyboardAlone(t *testing.T) {
	b := sit(t, ui.Vec{X: 1024, Y: 640}, false)
	playByHand(t, b, keyboard{b, t})
	checkPlayed(t, b)
}
