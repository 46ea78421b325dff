// The top of the bench: clock, phase and what the surgeon does, who says what, and the patient below.

package bench

import (
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

func (d *Desk) topBar(c *ui.Core, v *View, r ui.Rect) {
	s := &v.Seen
	in := r.InsetXY(12, 3)
	d.vitals(c, v, in.CutBottom(26))
	mode := words.Say("top.practice")
	if v.Assessment {
		mode = words.Say("top.assessment")
	}
	if v.Watching {
		mode = words.Say("top.recorded")
	}
	if v.Paused {
		mode = words.Say("top.paused")
	}
	mode = words.Line("top.mode", mode, v.Speed)
	small := ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted}
	clock := in.CutLeft(max(100, small.Width(mode)+14))
	c.Text(clock.CutTop(27), c.Clock(math.Floor(sim.Seconds(s.Tick))), ui.Style{Size: 22, Weight: ui.SemiBold, Tab: true})
	c.Text(clock, mode, small)
	name := ui.Style{Size: 15, Weight: ui.SemiBold}
	now, left := surgeonNow(v), words.Line("top.until", d.leftOf(c, v))
	if s.OperationOver {
		now, left = "", words.Say("top.operation_over")
	}
	if v.BusyLeftS > 0 {
		now, left = "", words.Line("top.busy", c.Num(math.Ceil(v.BusyLeftS), 0, "s"))
	}
	most := in.W * 0.5
	both := left
	if now != "" {
		both = words.Line("top.now_until", now, left)
	}
	both = fitting(most, small, both, words.Line("top.now_until", now, d.leftOf(c, v)), left)
	phase := in.CutLeft(min(most, max(170, max(name.Width(s.PhaseName), small.Width(both))+2)))
	in.CutLeft(14)
	if name.Width(s.PhaseName) > phase.W {
		name.Size = 13
	}
	c.Label(ui.Label{ID: ui.Name("phase"), Rect: phase.CutTop(25), Text: s.PhaseName, Style: name})
	c.Label(ui.Label{ID: ui.Name("surgeon now"), Rect: phase.Place(phase.W, ui.LineHeight(small.Size), 0, 0.5), Text: both, Style: small})
	d.speech(c, v, in)
}

func (d *Desk) leftOf(c *ui.Core, v *View) string {
	left := max(0, v.Limits.EndS-sim.Seconds(v.Seen.Tick))
	return c.Num(math.Ceil(left/60), 0, "min")
}

// surgeonNow says in few words how the surgeon sucks, and what else goes into the wound.
func surgeonNow(v *View) string {
	s := &v.Seen
	text := words.Say("top.skims")
	switch {
	case s.AgentSaid:
		text = words.Say("top.agent")
	case s.Pooling:
		text = words.Say("top.pools")
	}
	if s.IrrigationMLMin > 0 {
		return words.Line("top.irrigates", text)
	}
	return text
}

// speech is what was said last, and before it where there is room.
func (d *Desk) speech(c *ui.Core, v *View, r ui.Rect) {
	if len(v.Said) == 0 {
		return
	}
	last := v.Said[len(v.Said)-1]
	if d.long(c, last, r) {
		return
	}
	for i, at := range [...]int{len(v.Said) - 1, len(v.Said) - 2} {
		if at < 0 {
			break
		}
		l := v.Said[at]
		if i > 0 && ui.TextWidth(words.Say("speaker."+l.Who), ui.SizeSmall, ui.SemiBold, false)+ui.TextWidth(l.Text, ui.SizeSmall, ui.SemiBold, false)+12 > r.W {
			break // the log has it in full
		}
		d.spoken(c, l, r.Row(i, 2, 0), i == 0)
	}
}

var saidIDs = [2]ui.ID{ui.Name("said last"), ui.Name("said before")}

func (d *Desk) spoken(c *ui.Core, l Line, r ui.Rect, newest bool) {
	who := ui.Style{Size: ui.SizeSmall, Weight: ui.SemiBold, Col: c.Pal.Muted}
	text := ui.Style{Size: ui.SizeBody}
	id := saidIDs[0]
	if !newest {
		text = ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted}
		id = saidIDs[1]
	}
	name := words.Say("speaker." + l.Who)
	w := who.Width(name)
	c.Text(r.CutLeft(w+1), name, who)
	r.CutLeft(8)
	line := r.Place(r.W, ui.LineHeight(text.Size), 0, 0.5)
	c.Label(ui.Label{ID: id, Rect: line, Text: l.Text, Style: text})
}

// long shows something said that needs the whole place, in the largest type in which it fits.
func (d *Desk) long(c *ui.Core, l Line, r ui.Rect) bool {
	name := ui.Style{Size: ui.SizeSmall, Weight: ui.SemiBold, Col: c.Pal.Muted}
	who := words.Say("speaker." + l.Who)
	w := r.W - name.Width(who) - 9
	if ui.TextWidth(l.Text, ui.SizeBody, ui.Regular, false) <= w {
		return false
	}
	st := ui.Style{Size: ui.SizeBody}
	for st.Size > ui.SizeSmall-1 && c.LabelHeight(l.Text, w, st) > r.H {
		st.Size--
	}
	c.Text(ui.R(r.X, r.Y, r.W-w-8, ui.LineHeight(st.Size)), who, name)
	c.Label(ui.Label{ID: saidIDs[0], Rect: ui.R(r.Right()-w, r.Y, w, r.H+1), Text: l.Text, Style: st})
	return true
}

// vitals are six figures in a row: what the monitor and the last blood gas say.
func (d *Desk) vitals(c *ui.Core, v *View, r ui.Rect) {
	s := &v.Seen
	hb, hct, age, aged := "–", "–", words.Say("top.no_gas"), words.Say("top.no_gas")
	if s.Gas.Tick >= 0 && s.Gas.HbGDL > 0 {
		hb, hct = c.Num(s.Gas.HbGDL, 1, ""), c.Num(s.Gas.Hct, 2, "")
		min := c.Num(math.Floor(sim.Seconds(s.Tick-s.Gas.Tick)/60), 0, "")
		age, aged = words.Line("top.gas_ago", min), words.Line("top.gas_age", min)
	}
	loss := "–"
	if s.EstimateML >= 0 {
		loss = c.Num(s.EstimateML, 0, "")
	}
	cells := [...][3]string{{hb, words.Say("top.hb")}, {hct, age, aged}, {c.Num(s.HeartRate, 0, ""), words.Say("top.rate")},
		{c.Num(s.PressureMmHg, 0, ""), words.Say("top.pressure")}, {loss, words.Say("top.loss")}, {c.Num(float64(s.DonorUnits), 0, ""), words.Say("top.units")}}
	figure, name := ui.Style{Size: 17, Weight: ui.SemiBold, Tab: true}, ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted}
	for i, k := range cells {
		cell := r.Col(i, len(cells), 10)
		if i > 0 {
			c.Segment(cell.X-6, cell.Y+5, cell.X-6, cell.Bottom()-5, 1, c.Pal.Line)
		}
		c.Text(cell.CutLeft(figure.Width(k[0])+1), k[0], figure)
		cell.CutLeft(6)
		text := k[1]
		if k[2] != "" {
			text = fitting(cell.W, name, k[1], k[2])
		}
		c.Text(cell.Move(0, 1), text, name)
	}
}
