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
}

func (s *stack) row(h float32) ui.Rect {
	r := ui.R(s.r.X, s.y, s.r.W, h)
	s.y += h + 6
	return r
}

func (s *stack) head(text string) {
	if s.y > s.r.Y+1 {
		s.y += 6
	}
	s.c.Text(s.row(20), text, ui.Style{Weight: ui.SemiBold, Size: ui.SizeBody})
	s.y -= 2
}

// read is a reading: name at the left, value at the right.
func (s *stack) read(name, value string) { s.reading(name, value, false) }

// truth is a reading nobody at a bench could take: framed in dots, in italics' stead.
func (s *stack) truth(name, value string) { s.reading(name, value, true) }

func (s *stack) reading(name, value string, truth bool) {
	r := ui.R(s.r.X, s.y, s.r.W, 19)
	s.y += 20
	st := ui.Style{Size: 13, Weight: ui.SemiBold, Tab: true, Align: ui.AlignRight}
	if truth {
		s.c.StrokeDash(r.InsetXY(-3, 0), 3, 1, s.c.Pal.Edge, ui.Dash{On: 1.5, Off: 2.5})
		st.Weight = ui.Regular
	}
	w := min(st.Width(value)+1, r.W)
	s.c.Text(r.CutRight(w), value, st)
	r.CutRight(8)
	s.c.Text(r, name, ui.Style{Size: 13, Col: s.c.Pal.Muted})
}

// say is a few words over the whole width.
func (s *stack) say(text string, strong bool) {
	st := ui.Style{Size: 13, Col: s.c.Pal.Muted}
	if strong {
		st = ui.Style{Size: 13, Weight: ui.SemiBold}
	}
	h := s.c.LabelHeight(text, s.r.W, st)
	s.c.Label(ui.Label{Rect: ui.R(s.r.X, s.y, s.r.W, h), Text: text, Style: st})
	s.y += h + 6
}

func (s *stack) idOf(a sim.Action) ui.ID {
	return s.id.With("act").At(int(a.Do)).At(int(a.On)).At(int(a.Value * 16)).At(int(a.Item))
}

// act is a button for an act on the bench.
func (s *stack) act(label string, a Act, more ...func(*ui.Button)) bool {
	b := ui.Button{ID: s.idOf(a.Sim), Rect: s.row(40), Label: label, Why: s.v.why(a.Sim)}
	for _, f := range more {
		f(&b)
	}
	if s.c.Button(b) {
		s.d.do(a)
		return true
	}
	return false
}

func key(r rune) func(*ui.Button) { return func(b *ui.Button) { b.Key = ui.K(r) } }

func running(on bool, detail string) func(*ui.Button) {
	return func(b *ui.Button) {
		if on {
			b.Running, b.Detail, b.Why = true, detail, ""
		}
	}
}

func detail(text string) func(*ui.Button) { return func(b *ui.Button) { b.Detail = text } }

// hold is an act that cannot be undone.
func (s *stack) hold(label string, a Act) {
	if s.c.Hold(ui.HoldButton{ID: s.idOf(a.Sim), Rect: s.row(46), Label: label, Why: s.v.why(a.Sim)}) {
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
	v, done := s.c.Slider(ui.Value{ID: id, Rect: s.row(ui.SliderHeight), Label: label, Unit: unit, Value: value, Min: least, Max: most, Step: step, Why: s.v.why(probe)})
	if done {
		s.d.do(on(do, sim.NoPart, v))
	}
}

// tick is something of the bench that is on or off.
func (s *stack) tick(label string, do sim.Verb, is bool) {
	a := on(do, sim.NoPart, 1)
	if is {
		a.Sim.Value = 0
	}
	if s.c.Checkbox(ui.Checkbox{ID: s.id.With("tick").At(int(do)), Rect: s.row(40), Label: label, On: is, Why: s.v.why(a.Sim)}) {
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
	s.read(words.Say("part."+p.String()), state)
	s.looked(p)
	s.two(words.Say("panel.look"), on(sim.Inspect, p, 0), words.Say("panel.connect"), on(sim.Connect, p, 0))
}

// clamp is a clamp: its state, a look, and turning it.
func (s *stack) clamp(p sim.Part) {
	to, label, state := 1.0, words.Say("panel.open"), words.Say("panel.closed")
	if s.v.Seen.Bench.Open[p] {
		to, label, state = 0, words.Say("panel.close"), words.Say("panel.is_open")
	}
	s.read(words.Say("part."+p.String()), state)
	s.looked(p)
	s.two(words.Say("panel.look"), on(sim.Inspect, p, 0), label, on(sim.Clamp, p, to))
}

// two is two short acts side by side, or below each other where a reason needs the width.
func (s *stack) two(labelA string, a Act, labelB string, b Act) {
	acts, labels := [...]Act{a, b}, [...]string{labelA, labelB}
	half := (s.r.W-8)/2 - 26
	wide := false
	var why [2]string
	for i := range acts {
		why[i] = s.v.why(acts[i].Sim)
		wide = wide || ui.TextWidth(why[i], ui.SizeSmall, ui.Regular, false) > half
	}
	var r ui.Rect
	for i := range acts {
		box := r
		switch {
		case wide:
			box = s.row(40)
		case i == 0:
			r = s.row(40)
			box = r.Col(0, 2, 8)
		default:
			box = r.Col(1, 2, 8)
		}
		if s.c.Button(ui.Button{ID: s.idOf(acts[i].Sim), Rect: box, Label: labels[i], Why: why[i]}) {
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
