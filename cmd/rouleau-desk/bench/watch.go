// The band of a recorded attempt that is watched: all of its time on one axis, to go to any moment of it, and the way to try
// again from there.

package bench

import (
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

const (
	watchHeight = 50
	watchStepS  = 5  // of the arrow keys on the axis
	watchLeapS  = 60 // of the buttons beside it, and of the page keys
	axisThumb   = 8
)

var (
	tryAgainKey = ui.K('A')
	backKey     = ui.K('J')
	onKey       = ui.K('L')
)

// watchOver says whether the attempt that is watched has been shown to its end.
func (v *View) watchOver() bool { return v.Watching && sim.Seconds(v.Seen.Tick) >= v.Recorded.EndS }

// watchBand cuts the band off the top of the room of the drawing.
func (d *Desk) watchBand(c *ui.Core, v *View, r *ui.Rect) {
	again := ui.Button{ID: ui.Name("try again"), Label: words.Say("band.try_again"), Look: ui.LookDark, Key: tryAgainKey, Why: v.Recorded.Stale}
	wide := min(wideAs(c, &again), r.W*0.5)
	high := max(40, c.ButtonHeight(again, wide))
	box := r.CutTop(max(watchHeight, high+10)).InsetXY(6, 1)
	c.Fill(box, 6, c.Pal.Panel)
	c.Frame(box, 6, 1.2, c.Pal.Edge)
	in := box.InsetXY(8, 1)
	again.Rect = in.CutRight(wide).Place(wide, high, 0, 0.5)
	in.CutRight(10)
	now := sim.Seconds(v.Seen.Tick)
	leap := func(name, key string, k ui.Chord, by float64, cut func(float32) ui.Rect) {
		b := ui.Button{ID: ui.Name(name), Label: words.Say(key), Key: k}
		b.Rect = cut(wideAs(c, &b)).Place(wideAs(c, &b), 40, 0, 0.5)
		cut(10)
		if c.Button(b) {
			d.seek(v, now+by)
		}
	}
	leap("watch back", "band.back", backKey, -watchLeapS, in.CutLeft)
	leap("watch on", "band.on", onKey, watchLeapS, in.CutRight)
	d.watchAxis(c, v, now, in)
	if c.Button(again) {
		d.do(Act{Do: TryAgain, Value: int(now)})
	}
}

// seek asks for a moment; beyond the end it is the end.
func (d *Desk) seek(v *View, toS float64) {
	to := math.Floor(max(toS, 0))
	if to >= v.Recorded.EndS {
		to = math.Ceil(v.Recorded.EndS)
	}
	d.do(Act{Do: Seek, Value: int(to)})
}

// watchAxis is the time of the attempt from its start to its end, with what was done when. It is dragged like a slider.
func (d *Desk) watchAxis(c *ui.Core, v *View, now float64, r ui.Rect) {
	all := v.Recorded.EndS
	at, end := c.Clock(math.Floor(now)), c.Clock(math.Floor(all))
	st := ui.Style{Weight: ui.SemiBold, Tab: true}
	label := fitting(r.W, st, words.Line("band.recorded", at, end), words.Line("band.recorded_short", at, end), at)
	id := ui.Name("watch axis")
	h := c.Hit(ui.HitArea{ID: id, Rect: r, Label: label, Tip: words.Say("band.recorded_tip")})
	c.Text(ui.R(r.X, r.Y, r.W, 20), label, st)
	axis := ui.R(r.X+axisThumb, r.Y+20, r.W-2*axisThumb, r.H-20)
	x := func(s float64) float32 { return axis.X + axis.W*float32(min(s/max(all, 1), 1)) }
	rail := ui.R(r.X, axis.Y+5, r.W, 5)
	c.Fill(rail, 2.5, c.Pal.Line)
	c.Stroke(rail, 2.5, 1, c.Pal.Edge)
	c.Fill(ui.R(rail.X, rail.Y, x(now)-rail.X, rail.H), 2.5, c.Pal.Accent)
	last := float32(-9)
	for _, s := range v.Recorded.ActsS {
		if t := x(s); t-last >= 3 {
			c.Segment(t, rail.Bottom()+4, t, rail.Bottom()+9, 1, c.Pal.Edge)
			last = t
		}
	}
	thumb := ui.R(x(now)-axisThumb, rail.Y+2.5-axisThumb, 2*axisThumb, 2*axisThumb)
	c.Disc(thumb, c.Pal.Well)
	c.Circle(thumb.Inset(1), 2.5, c.Pal.Accent)
	if h.Dragged { // also by the frame in which it is let go: a slow one holds the last move as well
		to := float64((h.Part*r.W-axisThumb)/max(axis.W, 1)) * all
		if to = min(max(to, 0), all); math.Floor(to) != math.Floor(now) {
			d.seek(v, to)
		}
	}
	if h.Focused {
		d.axisKeys(c, v, now)
	}
}

// axisKeys move along the axis while it has the focus.
func (d *Desk) axisKeys(c *ui.Core, v *View, now float64) {
	for _, k := range [...]struct {
		key ui.Key
		to  float64
	}{{ui.KeyLeft, now - watchStepS}, {ui.KeyDown, now - watchStepS}, {ui.KeyRight, now + watchStepS}, {ui.KeyUp, now + watchStepS},
		{ui.KeyPageUp, now - watchLeapS}, {ui.KeyPageDown, now + watchLeapS}, {ui.KeyHome, 0}, {ui.KeyEnd, v.Recorded.EndS}} {
		if c.Pressed(k.key) {
			d.seek(v, k.to)
		}
	}
}
