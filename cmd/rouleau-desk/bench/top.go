// The top of the bench: clock and phase, who says what, the patient, and below it time and alarms.

package bench

import (
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

func (d *Desk) topBar(c *ui.Core, v *View, r ui.Rect) {
	s := &v.Seen
	in := r.InsetXY(12, 6)
	clock := in.CutLeft(104)
	c.Text(clock.CutTop(28), c.Clock(math.Floor(sim.Seconds(s.Tick))), ui.Style{Size: 22, Weight: ui.SemiBold, Tab: true})
	mode := words.Say("top.practice")
	if v.Assessment {
		mode = words.Say("top.assessment")
	}
	if v.Paused {
		mode = words.Say("top.paused")
	}
	small := ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted}
	c.Text(clock, words.Say("top.mode", mode, v.Speed), small)
	d.vitals(c, v, in.CutRight(6*vitalWidth(r.W)))
	name := ui.Style{Size: 15, Weight: ui.SemiBold}
	phase := in.CutLeft(min(in.W*0.5, max(170, name.Width(s.PhaseName)+2)))
	in.CutLeft(14)
	if name.Width(s.PhaseName) > phase.W {
		name.Size = 13
	}
	c.Label(ui.Label{ID: ui.Name("phase"), Rect: phase.CutTop(26), Text: s.PhaseName, Style: name})
	left := words.Say("top.until", d.leftOf(c, v))
	if s.OperationOver {
		left = words.Say("top.operation_over")
	}
	if v.BusyLeftS > 0 {
		left = words.Say("top.busy", c.Num(math.Ceil(v.BusyLeftS), 0, "s"))
	}
	c.Text(phase, left, small)
	d.speech(c, v, in)
}

func (d *Desk) leftOf(c *ui.Core, v *View) string {
	left := max(0, v.Limits.EndS-sim.Seconds(v.Seen.Tick))
	return c.Num(math.Ceil(left/60), 0, "min")
}

// speech is what was said last, and the question that waits for an answer.
func (d *Desk) speech(c *ui.Core, v *View, r ui.Rect) {
	r.CutRight(12)
	if len(v.Said) == 0 {
		return
	}
	if d.long(c, v.Said[len(v.Said)-1], r) {
		return
	}
	for i, at := range [...]int{len(v.Said) - 1, len(v.Said) - 2} {
		if at < 0 {
			break
		}
		l := v.Said[at]
		if i > 0 && ui.TextWidth(words.Say("speaker."+l.Who)+l.Text, ui.SizeSmall, ui.SemiBold, false)+12 > r.W {
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
	for st.Size > ui.SizeSmall && c.LabelHeight(l.Text, w, st) > r.H {
		st.Size--
	}
	c.Text(ui.R(r.X, r.Y, r.W-w-8, ui.LineHeight(st.Size)), who, name)
	c.Label(ui.Label{ID: saidIDs[0], Rect: ui.R(r.Right()-w, r.Y, w, r.H), Text: l.Text, Style: st})
	return true
}

func vitalWidth(w float32) float32 { return min(max(w*0.058, 70), 84) }

// vitals are six columns of figures: what the monitor and the last blood gas say.
func (d *Desk) vitals(c *ui.Core, v *View, r ui.Rect) {
	s := &v.Seen
	hb, hct, age := "–", "–", words.Say("top.no_gas")
	if s.Gas.Tick >= 0 && s.Gas.HbGDL > 0 {
		hb, hct = c.Num(s.Gas.HbGDL, 1, ""), c.Num(s.Gas.Hct, 2, "")
		age = words.Say("top.gas_age", c.Num(math.Floor(sim.Seconds(s.Tick-s.Gas.Tick)/60), 0, ""))
	}
	loss := "–"
	if s.EstimateML >= 0 {
		loss = c.Num(s.EstimateML, 0, "")
	}
	cells := [...][2]string{{hb, words.Say("top.hb")}, {hct, age}, {c.Num(s.HeartRate, 0, ""), words.Say("top.rate")},
		{c.Num(s.PressureMmHg, 0, ""), words.Say("top.pressure")}, {loss, words.Say("top.loss")}, {c.Num(float64(s.DonorUnits), 0, ""), words.Say("top.units")}}
	for i, k := range cells {
		cell := r.Col(i, len(cells), 0)
		c.Text(cell.CutTop(28), k[0], ui.Style{Size: 18, Weight: ui.SemiBold, Tab: true, Align: ui.AlignRight})
		c.Text(cell, k[1], ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted, Align: ui.AlignRight})
	}
}

// timeRow is the row of time control, hints of what is off, and alarms.
func (d *Desk) timeRow(c *ui.Core, v *View, r ui.Rect) {
	r = r.InsetXY(0, 3)
	if v.Seen.Ended || v.TimeOver {
		if c.Button(ui.Button{ID: ui.Name("finish"), Rect: r.CutLeft(230), Label: words.Say("top.finish"), Look: ui.LookDark, Key: ui.Chord{Key: ui.KeyF10}}) {
			d.do(Act{Do: Finish})
		}
		r.CutLeft(8)
		if v.TimeOver {
			c.Badge(r, words.Say("top.time_over"), false)
		}
		return
	}
	if !v.Assessment {
		label := words.Say("top.pause")
		if v.Paused {
			label = words.Say("top.go_on")
		}
		if c.Button(ui.Button{ID: ui.Name("pause"), Rect: r.CutLeft(100), Label: label, Key: ui.K('P'), Selected: v.Paused}) {
			d.do(Act{Do: TogglePause})
		}
		r.CutLeft(8)
		options := make([]ui.Option, len(v.Speeds))
		at := -1
		for i, n := range v.Speeds {
			options[i] = ui.Option{Label: words.Say("top.times", n)}
			if n == v.Speed {
				at = i
			}
		}
		if i, ok := c.Choice(ui.Choice{ID: ui.Name("speed"), Rect: r.CutLeft(42 * float32(len(options))), Label: words.Say("top.speed"), Options: options, Selected: at, Row: true}); ok && i >= 0 {
			d.do(Act{Do: SetSpeed, Value: v.Speeds[i]})
		}
		r.CutLeft(8)
		d.hintButton(c, v, r.CutLeft(92))
		r.CutLeft(10)
	} else {
		d.timeLeft(c, v, &r)
	}
	d.alarms(c, v, r)
}

// timeLeft is what an assessment may still take, in figures that do not move their place, and whether the window was late.
func (d *Desk) timeLeft(c *ui.Core, v *View, r *ui.Rect) {
	st := ui.Style{Size: ui.SizeSmall, Tab: true, Col: c.Pal.Muted}
	if v.TimeLeftS < 600 {
		st.Col, st.Weight = c.Pal.Ink, ui.SemiBold
	}
	text := words.Say("top.time_left", c.Clock(math.Ceil(v.TimeLeftS)))
	c.Text(r.CutLeft(st.Width(text)+1), text, st)
	r.CutLeft(12)
	if v.Behind {
		w := c.Badge(*r, words.Say("top.behind"), false)
		r.CutLeft(w + 10)
	}
}

// alarms shows the most urgent that fit, and how many more there are.
func (d *Desk) alarms(c *ui.Core, v *View, r ui.Rect) {
	n := len(v.Alarms)
	if n == 0 {
		c.Text(r, words.Say("top.no_alarm"), ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted})
		return
	}
	const least = 286
	fit := max(1, int((r.W+8)/(least+8)))
	if n > fit {
		more := r.CutRight(70)
		r.CutRight(8)
		fit = max(1, int((r.W+8)/(least+8)))
		if c.Button(ui.Button{ID: ui.Name("more alarms"), Rect: more, Label: words.Say("top.more", n-fit)}) {
			d.Dialog = AlarmDialog
		}
	}
	show := min(fit, n)
	for i := range show {
		a := v.Alarms[i]
		box := r.Col(i, max(show, 2), 8)
		if fit == 1 {
			box = r
		}
		if box.W > 380 {
			box.W = 380
		}
		if c.Alarm(ui.AlarmStrip{ID: ui.Name("alarm").At(int(a.Is)), Rect: box, Priority: priority(a.Is), Text: words.Say("alarm." + a.Is.String()), Quiet: a.Known}) {
			d.Dialog = AlarmDialog
		}
	}
}

func priority(a sim.Alarm) ui.Priority {
	switch a.Priority() {
	case sim.HighPriority:
		return ui.High
	case sim.MediumPriority:
		return ui.Medium
	}
	return ui.Low
}
