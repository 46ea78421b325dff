// What lies above the bench: label, handover, closing tally, alarms.

package bench

import (
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

func (d *Desk) dialogs(c *ui.Core, v *View) {
	switch d.Dialog {
	case LabelDialog:
		d.fields(c, v, words.Say("dialog.label"), words.Say("dialog.label_text"), labelKeys[:], sim.Label, words.Say("dialog.write_label"))
	case HandOverDialog:
		d.fields(c, v, words.Say("dialog.hand_over"), words.Say("dialog.hand_over_text"), handOverKeys[:], sim.HandOver, words.Say("dialog.say_it"))
	case TallyDialog:
		d.tallyDialog(c, v)
	case AlarmDialog:
		d.alarmDialog(c, v)
	case HintDialog:
		d.hintDialog(c, v)
	}
}

var (
	labelKeys = [sim.LabelFieldCount]string{"label.name", "label.number", "label.started", "label.expiry", "label.autologous", "label.volume"}

	handOverKeys = [sim.HandoverFieldCount]string{"handover.volume", "handover.hct", "handover.washed", "handover.anticoagulant",
		"handover.expiry", "handover.problems"}
)

// window opens a dialog in the middle and gives the box for its content.
func (d *Desk) window(c *ui.Core, v *View, title string, w, h float32) ui.Rect {
	size := c.Size()
	room := ui.R(0, 0, size.X-panelWidth(size.X), size.Y) // beside the panel, so that stop stays in sight
	r := room.Place(min(w, room.W-32), min(h, room.H-32), 0.5, 0.5)
	c.BeginOverlay(ui.Name("dialog"), r, true)
	stop := on(sim.StopAll, sim.NoPart, 0)
	c.Fill(stopRect(size), 6, c.Pal.Panel)
	if c.Button(ui.Button{ID: ui.Name("stop above"), Rect: stopRect(size), Label: words.Say("panel.stop"), Key: ui.K('S'), Look: ui.LookDark, Why: v.why(stop.Sim)}) {
		d.do(stop)
	}
	return c.Panel(ui.Panel{ID: ui.Name("dialog panel"), Rect: r, Title: title})
}

// close draws the way out, at the left of r, and ends the dialog when it is taken.
func (d *Desk) close(c *ui.Core, r ui.Rect) {
	if c.Button(ui.Button{ID: ui.Name("dialog close"), Rect: r, Label: words.Say("dialog.close"), Key: ui.Chord{Key: ui.KeyEscape}}) {
		d.Dialog = NoDialog
	}
	c.EndOverlay()
}

// fields is a dialog of ticks that together are the value of one act on the selected bag.
func (d *Desk) fields(c *ui.Core, v *View, title, text string, keys []string, do sim.Verb, label string) {
	in := d.window(c, v, title+": "+words.Say("part."+sim.Bag(d.bag).String()), 460, 430)
	c.Label(ui.Label{Rect: in.CutTop(42), Text: text, Style: ui.Style{Col: c.Pal.Muted}})
	for i, k := range keys {
		if c.Checkbox(ui.Checkbox{ID: ui.Name(k), Rect: in.CutTop(40), Label: words.Say(k), On: d.bits&(1<<i) != 0}) {
			d.bits ^= 1 << i
		}
	}
	row := in.CutBottom(44)
	a := on(do, sim.Bag(d.bag), float64(d.bits))
	ok := row.CutRight(row.W * 0.62)
	ok.CutLeft(8)
	if c.Button(ui.Button{ID: ui.Name("dialog do"), Rect: ok, Label: label, Look: ui.LookDark, Why: v.why(a.Sim)}) {
		d.do(a)
		d.Dialog = NoDialog
	}
	d.close(c, row)
}

func (d *Desk) tallyDialog(c *ui.Core, v *View) {
	in := d.window(c, v, words.Say("dialog.tally"), 620, 610)
	c.Label(ui.Label{Rect: in.CutTop(40), Text: words.Say("dialog.tally_text"), Style: ui.Style{Size: 13, Col: c.Pal.Muted}})
	foot := in.CutBottom(44)
	in.CutBottom(6)
	rowH := in.H / float32(sim.TallyItems)
	for i := range d.tally {
		item := sim.TallyItem(i)
		row := in.CutTop(rowH)
		row = row.Place(row.W, 42, 0, 0)
		if v.Seen.Written[i] && !d.touched[i] {
			d.tally[i] = v.Tally[i]
		}
		state := words.Say("dialog.not_written")
		if v.Seen.Written[i] {
			state = words.Say("dialog.written", c.Num(v.Tally[i], 0, "mL"))
		}
		btn := row.CutRight(92)
		row.CutRight(8)
		val := row.CutRight(176)
		row.CutRight(8)
		c.Text(row.CutTop(22), words.Say("tally."+item.String()), ui.Style{Weight: ui.SemiBold})
		c.Text(row, state, ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted})
		ml, done := c.Stepper(ui.Value{ID: ui.Name("tally").At(i), Rect: val, Label: words.Say("tally." + item.String()), Unit: "mL", Value: d.tally[i], Max: 100000, Step: 10, Big: 100})
		if done {
			d.tally[i], d.touched[i] = ml, true
		}
		a := Act{Sim: sim.Action{Do: sim.Reconcile, Item: uint8(i), Value: d.tally[i]}}
		if c.Button(ui.Button{ID: ui.Name("write tally").At(i), Rect: btn, Label: words.Say("dialog.write"), Selected: v.Seen.Written[i] && v.Tally[i] == d.tally[i]}) {
			d.touched[i] = false
			d.do(a)
		}
	}
	d.close(c, foot.Place(200, 44, 0, 0))
}

// alarmDialog lists all alarms that are on, what to look at first, and acknowledges them.
func (d *Desk) alarmDialog(c *ui.Core, v *View) {
	id := ui.Name("alarm list")
	in := d.window(c, v, words.Say("dialog.alarms"), 640, min(560, max(220, d.heights[id]+128)))
	foot := in.CutBottom(44)
	in.CutBottom(8)
	area := c.BeginScroll(ui.Scroll{ID: id, Rect: in, Content: d.heights[id]})
	y := area.Y
	if len(v.Alarms) == 0 {
		c.Text(ui.R(area.X, y, area.W, 24), words.Say("top.no_alarm"), ui.Style{Col: c.Pal.Muted})
		y += 30
	}
	for i := range v.Alarms {
		a := &v.Alarms[i]
		row := ui.R(area.X+4, y+4, area.W-8, 42)
		known := row.CutRight(136)
		row.CutRight(8)
		since := words.Say("dialog.since", c.Clock(math.Floor(a.SinceS)))
		// the strip itself is drawn quiet here: one flashing place is enough
		c.Alarm(ui.AlarmStrip{ID: ui.Name("listed").At(int(a.Is)), Rect: row, Priority: priority(a.Is), Text: words.Say("alarm." + a.Is.String()), Detail: since, Quiet: true})
		label := words.Say("dialog.acknowledge")
		if a.Known {
			label = words.Say("dialog.acknowledged")
		}
		if c.Button(ui.Button{ID: ui.Name("ack").At(int(a.Is)), Rect: known, Label: label, Selected: a.Known}) && !a.Known {
			d.do(Act{Do: Acknowledge, Alarm: a.Is})
		}
		y += 50
		text := words.Say("check." + a.Is.String())
		st := ui.Style{Size: 13}
		h := c.LabelHeight(text, area.W-24, st)
		c.Label(ui.Label{Rect: ui.R(area.X+12, y, area.W-24, h), Text: text, Style: st})
		y += h + 10
	}
	d.heights[id] = y - area.Y
	c.EndScroll()
	d.close(c, foot.Place(200, 44, 0, 0))
}
