// Below the timeline of a case that has ended: what is charted, the charts as a file, and the way to try again from the moment
// that was chosen.

package bench

import (
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

// timelineFoot are the buttons and their places, from left to right.
type timelineFoot struct {
	choose, before, again ui.Button
	exports               ui.Rect
	high                  float32
}

// laidOut gives each button its place in a row of some width. Without a moment there is none before it.
func (d *Desk) laidOut(c *ui.Core, v *View, row ui.Rect) (f timelineFoot) {
	f.choose = ui.Button{ID: ui.Name("signals"), Label: words.Say("chart.choose")}
	f.before = ui.Button{ID: ui.Name("minute before"), Label: words.Say("result.minute_before"), Key: backKey}
	f.again = ui.Button{ID: ui.Name("try again"), Label: words.Say("result.try_again"), Key: tryAgainKey, Why: v.Recorded.Stale}
	left := row.CutLeft(min(row.W*0.52, 600))
	row.CutLeft(20)
	f.choose.Rect = left.Col(0, 3, 8)
	f.exports = ui.R(left.X+f.choose.Rect.W+8, left.Y, left.W-f.choose.Rect.W-8, left.H)
	f.high = max(c.ButtonHeight(f.choose, f.choose.Rect.W), exportHeight(c, f.exports.W))
	if at := d.board.at; !math.IsNaN(at) {
		f.again.Label = words.Line("result.try_from", c.Clock(math.Floor(at)))
		f.before.Rect = row.CutLeft(min(wideAs(c, &f.before), row.W*0.42))
		row.CutLeft(8)
		f.high = max(f.high, c.ButtonHeight(f.before, f.before.Rect.W))
	} else if f.again.Why == "" {
		f.again.Why = words.Say("result.try_choose")
	}
	row.W = min(row.W, max(wideAs(c, &f.again), 320))
	f.again.Rect = row
	f.high = max(f.high, c.ButtonHeight(f.again, row.W))
	return f
}

// timelineFootHeight is how high the row must be for its words.
func (d *Desk) timelineFootHeight(c *ui.Core, v *View, width float32) float32 {
	return d.laidOut(c, v, ui.R(0, 0, width, 0)).high
}

func (d *Desk) timelineFoot(c *ui.Core, v *View, row ui.Rect) {
	f := d.laidOut(c, v, row)
	if c.Button(f.choose) {
		d.Dialog = ChartDialog
	}
	d.exportButtons(c, f.exports)
	if at := d.board.at; !math.IsNaN(at) && c.Button(f.before) {
		d.moveTo(v, at-60)
	}
	if c.Button(f.again) {
		d.do(Act{Do: TryAgain, Value: int(d.board.at)})
	}
}
