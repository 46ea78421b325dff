// Fingers: the first one acts as the pointer, two of them pinch.

package ui

import "math"

func (c *Core) touchToPointer() {
	c.pinch = 1
	in := &c.in
	if len(in.Touches) >= 2 {
		c.pinchBy(in.Touches[0], in.Touches[1])
	} else {
		c.pinchDist = 0
	}
	if !c.touching {
		c.fromTouch = c.fromTouch && !in.PointerIn && !in.Pressed
		for _, t := range in.Touches {
			if t.Began {
				c.touching, c.touchID = true, t.ID
				break
			}
		}
		if !c.touching {
			return
		}
	}
	c.fromTouch = true
	for _, t := range in.Touches {
		if t.ID != c.touchID {
			continue
		}
		in.Pointer, in.PointerIn = t.Pos, true
		in.Pressed, in.Released, in.Down = t.Began, t.Ended, !t.Ended
		c.touching = !t.Ended
		return
	}
	// The finger is gone without an end being told: let go, press nothing.
	c.touching = false
	in.PointerIn, in.Down, in.Pressed, in.Released = false, false, false, false
}

func (c *Core) pinchBy(a, b Touch) {
	d := float32(math.Hypot(float64(a.Pos.X-b.Pos.X), float64(a.Pos.Y-b.Pos.Y)))
	ids := [2]int{a.ID, b.ID}
	if c.pinchDist > 0 && d > 0 && c.pinchIDs == ids && !a.Ended && !b.Ended {
		c.pinch = d / c.pinchDist
	}
	c.pinchDist, c.pinchIDs = d, ids
}
