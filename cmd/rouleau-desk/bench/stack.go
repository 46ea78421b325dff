// A column of rows in the panel: readings, words, and controls that know by themselves why they cannot be used.

package bench

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

// Controls that other places of the screen lead to.
var (
	dripID     = ui.Name("drip rate")
	vacuumID   = ui.Name("vacuum")
	estimateID = ui.Name("estimate")
)

type stack struct {
	c  *ui.Core
	d  *Desk
	v  *View
	id ui.ID
	r  ui.Rect // its lower edge grows
	y  float32
	// tail is set below readings, which stand closer to each other than to what follows.
	tail bool
}

func (s *stack) row(h float32) ui.Rect {
	if s.tail {
		s.y, s.tail = s.y+5, false
	}
	r := ui.R(s.r.X, s.y, s.r.W, h)
	s.y += h + 6
	return r
}

func (s *stack) head(text string) {
	if s.y > s.r.Y+1 {
		s.y += 6
	}
	st := ui.Style{Weight: ui.SemiBold, Size: ui.SizeBody}
	s.c.Label(ui.Label{Rect: s.row(s.c.LabelHeight(text, s.r.W, st)), Text: text, Style: st})
	s.y -= 2
}

// read is a reading: name at the left, value at the right.
func (s *stack) read(name, value string) { s.reading(name, value, false) }

// truth is a reading nobody at a bench could take: framed in dots, in italics' stead.
func (s *stack) truth(name, value string) { s.reading(name, value, true) }

// reading sets the value beside the name, or below it where one line does not hold both.
func (s *stack) reading(name, value string, truth bool) {
	c := s.c
	named := ui.Style{Size: 13, Col: c.Pal.Muted}
	st := ui.Style{Size: 13, Weight: ui.SemiBold, Tab: true, Align: ui.AlignRight}
	if truth {
		st.Weight = ui.Regular
	}
	w, step := st.Width(value)+1, float32(19)
	h := step
	if two := named.Width(name)+8+w > s.r.W; two {
		h = c.LabelHeight(name, s.r.W, named) + c.LabelHeight(value, s.r.W, st) + 2
	}
	r := ui.R(s.r.X, s.y, s.r.W, h)
	s.y, s.tail = s.y+h+1, true
	if truth {
		c.StrokeDash(r.InsetXY(-3, 0), 3, 1, c.Pal.Edge, ui.Dash{On: 1.5, Off: 2.5})
	}
	if h == step {
		c.Text(r.CutRight(w), value, st)
		c.Text(r, name, named)
		return
	}
	c.Label(ui.Label{Rect: r.CutTop(c.LabelHeight(name, r.W, named)), Text: name, Style: named})
	c.Label(ui.Label{Rect: r, Text: value, Style: st})
}

// say is a few words over the whole width.
func (s *stack) say(text string, strong bool) {
	st := ui.Style{Size: 13, Col: s.c.Pal.Muted}
	if strong {
		st = ui.Style{Size: 13, Weight: ui.SemiBold}
	}
	h := s.c.LabelHeight(text, s.r.W, st)
	s.c.Label(ui.Label{Rect: ui.R(s.r.X, s.y, s.r.W, h), Text: text, Style: st})
	s.y, s.tail = s.y+h+6, false
}

func (s *stack) idOf(a sim.Action) ui.ID {
	return s.id.With("act").At(int(a.Do)).At(int(a.On)).At(int(a.Value * 16)).At(int(a.Item))
}

// button is a button as high as its words ask for.
func (s *stack) button(b ui.Button) bool {
	b.Rect = s.row(s.c.ButtonHeight(b, s.r.W))
	return s.c.Button(b)
}

// act is a button for an act on the bench.
func (s *stack) act(label string, a Act, more ...func(ui.Button) ui.Button) bool {
	b := ui.Button{ID: s.idOf(a.Sim), Label: label, Why: s.v.why(a.Sim)}
	for _, f := range more {
		b = f(b)
	}
	b.Rect = s.row(s.c.ButtonHeight(b, s.r.W))
	s.leadTo(a.Sim, b.Rect)
	if s.c.Button(b) {
		s.d.do(a)
		return true
	}
	return false
}

// choose is a choice below each other, as high as its words ask for.
func (s *stack) choose(g ui.Choice) (int, bool) {
	h := float32(40)
	for i := range g.Options {
		o := &g.Options[i]
		h = max(h, s.c.CheckHeight(o.Label, o.Detail, o.Why, s.r.W))
	}
	g.Rect = s.row(h * float32(len(g.Options)))
	return s.c.Choice(g)
}

func key(r rune) func(ui.Button) ui.Button {
	return func(b ui.Button) ui.Button { b.Key = ui.K(r); return b }
}

func running(on bool, detail string) func(ui.Button) ui.Button {
	return func(b ui.Button) ui.Button {
		if on {
			b.Running, b.Detail, b.Why = true, detail, ""
		}
		return b
	}
}

func detail(text string) func(ui.Button) ui.Button {
	return func(b ui.Button) ui.Button { b.Detail = text; return b }
}

// hold is an act that cannot be undone.
func (s *stack) hold(label string, a Act) {
	b := ui.HoldButton{ID: s.idOf(a.Sim), Label: label, Why: s.v.why(a.Sim)}
	b.Rect = s.row(s.c.HoldHeight(b, s.r.W))
	s.leadTo(a.Sim, b.Rect)
	if s.c.Hold(b) {
		s.d.do(a)
	}
}

// slide sets a value of the bench.
func (s *stack) slide(id ui.ID, label, unit string, do sim.Verb, value, step float64) {
	least, most, _ := sim.ValueRange(do)
	probe := sim.Action{Do: do, Value: max(least, min(value, most))}
	if do == sim.GiveRate && probe.Value == 0 {
		probe.Value = 1
	}
	y := s.y
	x, done := s.slider(ui.Value{ID: id, Label: label, Unit: unit, Value: value, Min: least, Max: most, Step: step, Why: s.v.why(probe)})
	s.leadTo(sim.Action{Do: do}, ui.R(s.r.X, y, s.r.W, s.y-6-y))
	if done {
		s.d.do(on(do, sim.NoPart, x))
	}
}

func (s *stack) slider(v ui.Value) (float64, bool) {
	v.Rect = s.row(s.c.SliderHeightFor(v, s.r.W))
	return s.c.Slider(v)
}

// tick is something of the bench that is on or off.
func (s *stack) tick(label string, do sim.Verb, is bool) {
	a := on(do, sim.NoPart, 1)
	if is {
		a.Sim.Value = 0
	}
	why := s.v.why(a.Sim)
	r := s.row(s.c.CheckHeight(label, "", why, s.r.W))
	s.leadTo(a.Sim, r)
	if s.c.Checkbox(ui.Checkbox{ID: s.id.With("tick").At(int(do)), Rect: r, Label: label, On: is, Why: why}) {
		s.d.do(a)
	}
}

// line is a tube: whether it is connected, a look at it, and connecting it.
func (s *stack) line(p sim.Part) {
	b := &s.v.Seen.Bench
	state := words.Say("panel.not_connected")
	switch {
	case b.FoundLoose[p]:
		state = words.Say("panel.loose")
	case b.Connected[p]:
		state = words.Say("panel.connected")
	}
	name := words.Say("part." + p.String())
	s.read(name, state)
	s.looked(p)
	s.two(words.Line("panel.look", name), on(sim.Inspect, p, 0), words.Line("panel.connect", name), on(sim.Connect, p, 0))
}

// clamp is a clamp: its state, a look, and turning it.
func (s *stack) clamp(p sim.Part) {
	to, label, state := 1.0, "panel.open", "panel.closed"
	if s.v.Seen.Bench.Open[p] {
		to, label, state = 0, "panel.close", "panel.is_open"
	}
	name := words.Say("part." + p.String())
	s.read(name, words.Say(state))
	s.looked(p)
	s.two(words.Line("panel.look", name), on(sim.Inspect, p, 0), words.Line(label, name), on(sim.Clamp, p, to))
}

// two is two acts side by side, or below each other where words or a reason need the width.
func (s *stack) two(labelA string, a Act, labelB string, b Act) {
	acts, labels := [...]Act{a, b}, [...]string{labelA, labelB}
	half, high := (s.r.W-8)/2, float32(40)
	var buttons [2]ui.Button
	for i := range acts {
		buttons[i] = ui.Button{ID: s.idOf(acts[i].Sim), Label: labels[i], Why: s.v.why(acts[i].Sim)}
		high = max(high, s.c.ButtonHeight(buttons[i], half))
	}
	var r ui.Rect
	if high <= 60 {
		r = s.row(high)
	}
	for i := range buttons {
		k := &buttons[i]
		if k.Rect = r.Col(i, 2, 8); high > 60 {
			k.Rect = s.row(s.c.ButtonHeight(*k, s.r.W))
		}
		s.leadTo(acts[i].Sim, k.Rect)
		if s.c.Button(*k) {
			s.d.do(acts[i])
		}
	}
}

// looked is what the last look at a part brought to light.
func (s *stack) looked(p sim.Part) {
	if heard := s.v.Heard[p]; heard != "" {
		s.read(words.Say("panel.looked"), heard)
	}
}
