// Alarms: priorities, the rhythm they flash in, and the strip that shows one.
// The rates are those of IEC 60601-1-8 (from memory): high 1.4 to 2.8 Hz,
// medium 0.4 to 0.8 Hz, low steady.

package ui

import "math"

// Priority is the priority of an alarm.
type Priority uint8

// The priorities, lowest first.
const (
	Low Priority = iota
	Medium
	High
)

// Rates of flashing, chosen inside the ranges of the standard.
const (
	HighFlashHz   = 2.0
	MediumFlashHz = 0.6
)

// FlashOn tells whether an alarm shows its strong colours at a time of the
// cosmetic clock. With still set (reduced motion) it shows them all the time.
func FlashOn(p Priority, clockMS float64, still bool) bool {
	hz := 0.0
	switch p {
	case High:
		hz = HighFlashHz
	case Medium:
		hz = MediumFlashHz
	}
	if hz == 0 || still {
		return true
	}
	_, part := math.Modf(clockMS / 1000 * hz)
	return part < 0.5
}

// AlarmStrip is one alarm: its shape, its words, and a press that opens what it
// means. Known marks one that was acknowledged: it stays, but does not flash,
// and its sign is an outline, so that it can be told without colour or motion.
type AlarmStrip struct {
	ID       ID
	Rect     Rect
	Priority Priority
	Text     string
	Detail   string // at the right, for example "why ›"
	Key      Chord
	Known    bool
	Quiet    bool // it does not flash here, as it does elsewhere
}

// Alarm draws an alarm and reports whether it was pressed.
func (c *Core) Alarm(a AlarmStrip) bool {
	t := c.target(a.ID, a.Rect, KindAlarm, a.Text, "", a.Key)
	col := c.Pal.Alarm[a.Priority]
	ground, ink, sign, stroke := col.Off, col.OffText, col.Edge, c.Pal.Well
	if !a.Quiet && !a.Known && FlashOn(a.Priority, c.clockMS, c.Still) {
		ground, ink, sign, stroke = col.On, col.OnText, col.OnText, col.On
	}
	c.Fill(a.Rect, 6, ground)
	c.Stroke(a.Rect.Inset(1), 5, 2, col.Edge)
	in := a.Rect.InsetXY(10, 0)
	c.alarmShape(in.CutLeft(24).Place(22, 22, 0, 0.5), a.Priority, a.Known, sign, stroke)
	in.CutLeft(8)
	c.keyCapRight(&in, a.Key, ink)
	if a.Detail != "" {
		w := TextWidth(a.Detail, SizeBody, SemiBold, false)
		c.inner(a.ID, in.CutRight(w), a.Detail, Style{Size: SizeBody, Weight: SemiBold, Col: ink, Align: AlignRight})
		in.CutRight(10)
	}
	st := Style{Size: SizeBody, Weight: SemiBold, Col: ink}
	if c.block(a.ID, in, a.Text, st) {
		c.cut(t, true)
		c.tip(t, a.Rect, a.Text, "")
	}
	c.ring(t, a.Rect)
	return t.pressed
}

// AlarmSign is the sign of an alarm alone, on a ground of its own, for the place the alarm is about.
func (c *Core) AlarmSign(r Rect, p Priority, known bool) {
	col := c.Pal.Alarm[p]
	ground, sign, stroke := col.Off, col.Edge, c.Pal.Well
	if !known && FlashOn(p, c.clockMS, c.Still) {
		ground, sign, stroke = col.On, col.OnText, col.On
	}
	c.Fill(r, 5, ground)
	c.Stroke(r, 5, 1.5, col.Edge)
	c.alarmShape(r.Place(20, 20, 0.5, 0.5), p, known, sign, stroke)
}

// alarmShape draws the sign of a priority: they differ in outline and in the
// number of strokes, so that colour is not needed to tell them apart.
func (c *Core) alarmShape(r Rect, p Priority, hollow bool, col, fill Color) {
	m := r.Center()
	n := 1
	if hollow {
		fill = col
	}
	body := func() {
		if hollow {
			c.Line(1.6, col, Dash{}, true)
		} else {
			c.Polygon(col)
		}
	}
	switch p {
	case High:
		c.BeginPath()
		c.To(m.X, r.Y)
		c.To(r.Right(), r.Bottom()-2)
		c.To(r.X, r.Bottom()-2)
		body()
		n = 3
		m.Y += 3
	case Medium:
		c.BeginPath()
		c.To(m.X, r.Y)
		c.To(r.Right(), m.Y)
		c.To(m.X, r.Bottom())
		c.To(r.X, m.Y)
		body()
		n = 2
	case Low:
		if hollow {
			c.Circle(r.Inset(2), 1.6, col)
		} else {
			c.Disc(r.Inset(1), col)
		}
	}
	for i := range n {
		x := m.X + (float32(i)-float32(n-1)/2)*3.6
		c.Fill(R(x-0.9, m.Y-4, 1.8, 5), 0.9, fill)
		c.Fill(R(x-0.9, m.Y+2.2, 1.8, 1.8), 0.9, fill)
	}
}
