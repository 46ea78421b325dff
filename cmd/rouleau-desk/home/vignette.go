// A small drawing in the manner of the bench: vessels cut open, in ink.

package home

import "rouleau/cmd/rouleau-desk/ui"

// vignette draws, from left to right as the blood goes, a wound, a reservoir, a bowl cut along its axis, and a bag.
func vignette(c *ui.Core, r ui.Rect) {
	ink, thin := c.Pal.Ink, float32(1.4)
	line := func(points ...float32) {
		c.BeginPath()
		for i := 0; i+1 < len(points); i += 2 {
			c.To(r.X+points[i], r.Y+points[i+1])
		}
		c.LineRound(thin, ink, false)
	}
	// the wound
	c.BeginPath()
	c.To(r.X, r.Y+52)
	c.To(r.X+10, r.Y+52)
	c.Curve(r.X+16, r.Y+70, r.X+26, r.Y+70)
	c.Curve(r.X+36, r.Y+70, r.X+42, r.Y+52)
	c.To(r.X+52, r.Y+52)
	c.LineRound(thin, ink, false)
	c.Fill(ui.R(r.X+19, r.Y+64, 14, 5), 2, c.Pal.Muted)
	line(26, 64, 30, 40, 58, 22, 74, 22)
	// the reservoir: what is clear above what is not
	vessel := ui.R(r.X+74, r.Y+8, 34, 62)
	c.HatchRect(ui.R(vessel.X+2, vessel.Y+38, vessel.W-4, 22), 4, 0.8, 1, c.Pal.Muted)
	line(76, 38, 106, 38)
	c.Stroke(vessel, 4, thin, ink)
	line(91, 70, 91, 75, 122, 75, 122, 18, 146, 18)
	// the bowl: two halves beside the axis, the bed on the outside
	for _, x := range [...]float32{132, 155} {
		half := ui.R(r.X+x, r.Y+24, 19, 44)
		bed := half
		if x < 150 {
			bed = bed.CutLeft(11)
		} else {
			bed = bed.CutRight(11)
		}
		c.HatchRect(bed, 4, 0.8, 1, c.Pal.Muted)
		c.Stroke(half, 1, thin, ink)
	}
	c.StrokeDash(ui.R(r.X+153, r.Y+26, 0, 46), 0, 1, c.Pal.Edge, ui.Dash{On: 5, Off: 3})
	c.Stroke(ui.R(r.X+146, r.Y+12, 14, 12), 1, thin, ink)
	line(160, 18, 190, 18, 190, 8, 209, 8, 209, 14)
	// the bag
	c.Stroke(ui.R(r.X+196, r.Y+14, 26, 42), 6, thin, ink)
	c.HatchRect(ui.R(r.X+199, r.Y+36, 20, 17), 4, 0.8, 1, c.Pal.Muted)
	line(209, 56, 209, 68)
}
