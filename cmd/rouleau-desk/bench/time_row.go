// The row of time: pause and pace, the way on, help, and the alarms.

package bench

import (
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

func (d *Desk) timeRow(c *ui.Core, v *View, r ui.Rect) {
	r = r.InsetXY(0, 3)
	switch {
	case v.Seen.Ended || v.TimeOver || v.watchOver():
		b := ui.Button{ID: ui.Name("finish"), Label: words.Say("top.finish"), Look: ui.LookDark, Key: ui.Chord{Key: ui.KeyF10}}
		b.Rect = r.CutLeft(wideAs(c, &b) + 20)
		if c.Button(b) {
			d.do(Act{Do: Finish})
		}
		r.CutLeft(8)
		if v.TimeOver {
			text, st := words.Say("top.time_over"), ui.Style{Size: 13, Weight: ui.SemiBold}
			c.Label(ui.Label{Rect: r.Place(r.W, c.LabelHeight(text, r.W, st), 0, 0.5), Text: text, Style: st})
		}
		return
	case v.Assessment:
		d.timeLeft(c, v, &r)
	default:
		d.pace(c, v, &r)
	}
	d.alarms(c, v, r)
}

// least room for the alarms in the row of time
const leastAlarms = 280

// pace is what a person in practice may do with time.
func (d *Desk) pace(c *ui.Core, v *View, r *ui.Rect) {
	pause, label := ui.Button{ID: ui.Name("pause"), Key: ui.K('P')}, words.Say("top.pause")
	if v.Paused { // the way on stands out: nothing moves until it is pressed
		pause.Look, label = ui.LookDark, words.Say("top.go_on")
	}
	if d.small(c, r, pause, label) {
		d.do(Act{Do: TogglePause})
	}
	var options [8]ui.Option
	n, at := min(len(v.Speeds), len(options)), -1
	for i, speed := range v.Speeds[:n] {
		options[i].Label = words.Line("top.times", speed)
		if speed == v.Speed {
			at = i
		}
	}
	if i, ok := c.Choice(ui.Choice{ID: ui.Name("speed"), Rect: r.CutLeft(40 * float32(n)), Label: words.Say("top.speed"), Options: options[:n], Selected: at, Row: true}); ok && i >= 0 {
		d.do(Act{Do: SetSpeed, Value: v.Speeds[i]})
	}
	r.CutLeft(8)
	if v.Paused {
		if d.small(c, r, ui.Button{ID: ui.Name("home")}, words.Say("top.home"), words.Say("top.home_short")) {
			d.do(Act{Do: GoHome})
		}
	} else if d.small(c, r, ui.Button{ID: ui.Name("jump"), Key: ui.K('N'), Running: v.Jumping}, words.Say("top.jump"), words.Say("top.jump_short")) {
		d.do(Act{Do: JumpToNext})
	}
	b := ui.Button{ID: ui.Name("hint"), Label: words.Say("top.hint"), Key: ui.K('H')}
	d.hintButton(c, v, r.CutLeft(wideAs(c, &b)))
	r.CutLeft(10)
}

// small is a button as wide as the longest of its wordings that leaves room for the alarms.
func (d *Desk) small(c *ui.Core, r *ui.Rect, b ui.Button, texts ...string) bool {
	var w float32
	for _, t := range texts {
		b.Label = t
		w = wideAs(c, &b)
		if b.Running {
			w += 8
		}
		if r.W-w-100 >= leastAlarms {
			break
		}
	}
	b.Rect = r.CutLeft(w)
	r.CutLeft(8)
	return c.Button(b)
}

// timeLeft is what an assessment may still take, in figures that do not move their place, and whether the window was late.
func (d *Desk) timeLeft(c *ui.Core, v *View, r *ui.Rect) {
	st := ui.Style{Size: ui.SizeSmall, Tab: true, Col: c.Pal.Muted}
	if v.TimeLeftS < 600 {
		st.Col, st.Weight = c.Pal.Ink, ui.SemiBold
	}
	text := words.Line("top.time_left", c.Clock(math.Ceil(v.TimeLeftS)))
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
		more := r.CutRight(56)
		r.CutRight(8)
		fit = max(1, int((r.W+8)/(least+8)))
		if c.Button(ui.Button{ID: ui.Name("more alarms"), Rect: more, Label: words.Line("top.more", n-fit)}) {
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
		if c.Alarm(ui.AlarmStrip{ID: ui.Name("alarm").At(int(a.Is)), Rect: box, Priority: priority(a.Is), Text: words.Say("alarm." + a.Is.String()), Known: a.Known}) {
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
