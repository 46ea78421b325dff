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
	case ChartDialog:
		d.chartDialog(c, v)
	}
}

var (
	labelKeys = [sim.LabelFieldCount]string{"label.name", "label.number", "label.started", "label.expiry", "label.autologous", "label.volume"}

	handOverKeys = [sim.HandoverFieldCount]string{"handover.volume", "handover.hct", "handover.washed", "handover.anticoagulant",
		"handover.expiry", "handover.problems"}
)

// window opens a dialog beside or above the panel, so that stop stays in sight, and gives the box for its content.
func (d *Desk) window(c *ui.Core, v *View, title string, w, h float32) ui.Rect {
	room := placesOf(c.Size()).aside
	r := room.Place(min(w, room.W-32), min(whole(h+1), room.H-32), 0.5, 0.5)
	r.X, r.Y = whole(r.X), whole(r.Y)
	c.BeginOverlay(ui.Name("dialog"), r, true)
	c.Fill(stopRect(c.Size()), 6, c.Pal.Panel)
	d.stopButton(c, v, ui.Name("stop above"), stopRect(c.Size()))
	return c.Panel(ui.Panel{ID: ui.Name("dialog panel"), Rect: r, Title: title})
}

// dialogChrome is the height of a dialog beside its content: title, foot and margins.
const dialogChrome = 32 + 32 + 44 + 10

// close draws the way out, at the left of r, and ends the dialog when it is taken.
func (d *Desk) close(c *ui.Core, r ui.Rect) {
	if c.Button(ui.Button{ID: ui.Name("dialog close"), Rect: r, Label: words.Say("dialog.close"), Key: ui.Chord{Key: ui.KeyEscape}}) {
		d.Dialog = NoDialog
	}
	c.EndOverlay()
}

// fields is a dialog of ticks that together are the value of one act on the selected bag.
func (d *Desk) fields(c *ui.Core, v *View, title, text string, keys []string, do sim.Verb, label string) {
	const width = 460
	muted := ui.Style{Col: c.Pal.Muted}
	id := ui.Name("fields")
	in := d.window(c, v, title+": "+words.Say("part."+sim.Bag(d.bag).String()), width, d.heights[id]+dialogChrome+8)
	a := on(do, sim.Bag(d.bag), float64(d.bits))
	b := ui.Button{ID: ui.Name("dialog do"), Label: label, Look: ui.LookDark, Why: v.why(a.Sim)}
	if d.bits == 0 {
		b.Why = words.Say("dialog.tick_first")
	}
	foot := in.CutBottom(max(44, c.ButtonHeight(b, in.W*0.6-8)))
	in.CutBottom(8)
	area := c.BeginScroll(ui.Scroll{ID: id, Rect: in, Content: d.heights[id]})
	y := area.Y
	row := func(h float32) ui.Rect {
		r := ui.R(area.X+4, y, area.W-8, h)
		y += h
		return r
	}
	c.Label(ui.Label{Rect: row(c.LabelHeight(text, area.W-8, muted) + 4), Text: text, Style: muted})
	for i, k := range keys {
		name := words.Say(k)
		if c.Checkbox(ui.Checkbox{ID: ui.Name(k), Rect: row(c.CheckHeight(name, "", "", area.W-8)), Label: name, On: d.bits&(1<<i) != 0}) {
			d.bits ^= 1 << i
		}
	}
	d.heights[id] = y - area.Y + 2
	c.EndScroll()
	b.Rect = foot.CutRight(whole(foot.W * 0.6))
	b.Rect.CutLeft(8)
	if c.Button(b) {
		d.do(a)
		d.Dialog = NoDialog
	}
	d.close(c, foot)
}

func (d *Desk) tallyDialog(c *ui.Core, v *View) {
	id := ui.Name("tally list")
	in := d.window(c, v, words.Say("dialog.tally"), 640, d.heights[id]+dialogChrome+8)
	foot := in.CutBottom(44)
	in.CutBottom(8)
	area := c.BeginScroll(ui.Scroll{ID: id, Rect: in, Content: d.heights[id]})
	y := area.Y
	intro := ui.Style{Size: 13, Col: c.Pal.Muted}
	h := c.LabelHeight(words.Say("dialog.tally_text"), area.W, intro)
	c.Label(ui.Label{Rect: ui.R(area.X, y, area.W, h), Text: words.Say("dialog.tally_text"), Style: intro})
	y += h + 6
	for i := range d.tally {
		y += d.tallyRow(c, v, i, ui.R(area.X, y, area.W, 42))
	}
	d.heights[id] = y - area.Y + 2
	c.EndScroll()
	d.close(c, foot.Place(min(200, foot.W), 44, 0, 0))
}

// tallyRow is one line of the tally: what is counted, how much, and writing it. It returns its height.
func (d *Desk) tallyRow(c *ui.Core, v *View, i int, row ui.Rect) float32 {
	item := sim.TallyItem(i)
	if v.Seen.Written[i] && !d.touched[i] {
		d.tally[i] = v.Tally[i]
	}
	state := words.Say("dialog.not_written")
	if v.Seen.Written[i] {
		state = words.Line("dialog.written", c.Num(v.Tally[i], 0, "mL"))
	}
	name, text := words.Say("tally."+item.String()), ui.Style{Weight: ui.SemiBold}
	write := ui.Button{ID: ui.Name("write tally").At(i), Label: words.Say("dialog.write"), Selected: v.Seen.Written[i] && v.Tally[i] == d.tally[i]}
	side := ui.TextWidth(write.Label, ui.SizeBody, ui.SemiBold, false) + 54
	words := row.W - side - 8 - 150 - 8
	high := c.LabelHeight(name, words, text)
	row.H = max(42, high+18)
	write.Rect = row.CutRight(side).Place(side, 42, 0, 0.5)
	row.CutRight(8)
	val := row.CutRight(150).Place(150, 42, 0, 0.5)
	row.CutRight(8)
	left := row.Place(row.W, high+16, 0, 0.5)
	c.Label(ui.Label{Rect: left.CutTop(high), Text: name, Style: text})
	c.Text(left, state, ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted})
	ml, done := c.Stepper(ui.Value{ID: ui.Name("tally").At(i), Rect: val, Label: name, Unit: "mL", Value: d.tally[i], Max: 100000, Step: 10, Big: 100})
	if done {
		d.tally[i], d.touched[i] = ml, true
	}
	if c.Button(write) {
		d.touched[i] = false
		d.do(Act{Sim: sim.Action{Do: sim.Reconcile, Item: uint8(i), Value: d.tally[i]}})
	}
	return row.H + 4
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
	ackWidth := max(136, ui.TextWidth(words.Say("dialog.acknowledge"), ui.SizeBody, ui.SemiBold, false)+28)
	for i := range v.Alarms {
		a := &v.Alarms[i]
		row := ui.R(area.X+4, y+4, area.W-8, 42)
		known := row.CutRight(ackWidth)
		row.CutRight(8)
		since := words.Line("dialog.since", c.Clock(math.Floor(a.SinceS)))
		// the strip itself is drawn quiet here: one flashing place is enough
		c.Alarm(ui.AlarmStrip{ID: ui.Name("listed").At(int(a.Is)), Rect: row, Priority: priority(a.Is), Text: words.Say("alarm." + a.Is.String()), Detail: since, Quiet: true, Known: a.Known})
		label := words.Say("dialog.acknowledge")
		if a.Known {
			label = words.Say("dialog.acknowledged")
		}
		if c.Button(ui.Button{ID: ui.Name("ack").At(int(a.Is)), Rect: known, Label: label, Selected: a.Known}) && !a.Known {
			d.do(Act{Do: Acknowledge, Alarm: a.Is})
		}
		y += 50
		text := words.Say("means."+a.Is.String()) + "\n" + words.Say("check."+a.Is.String())
		st := ui.Style{Size: 13}
		h := c.LabelHeight(text, area.W-24, st)
		c.Label(ui.Label{Rect: ui.R(area.X+12, y, area.W-24, h), Text: text, Style: st})
		y += h + 10
	}
	d.heights[id] = y - area.Y
	c.EndScroll()
	d.close(c, foot.Place(200, 44, 0, 0))
}
