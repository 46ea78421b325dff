// A part of a drawing that can be pressed or focused: it draws nothing but its
// focus ring, the caller draws the part.

package ui

// HitArea is a part of a drawing.
type HitArea struct {
	ID       ID
	Rect     Rect
	Label    string
	Why      string
	Key      Chord
	Selected bool
	Tip      string // what is said in full about it when it is looked at
}

// HitState is what the caller draws the part by.
type HitState struct {
	Pressed bool // act now
	Over    bool // the pointer is over it
	Held    bool // the pointer holds it
	Focused bool
	Dragged bool    // the pointer holds it, or has let it go in this frame
	Part    float32 // where the pointer is, as a share of the width from the left; beyond 0 and 1 where it has left
}

// Hit places an area and tells what happens to it.
func (c *Core) Hit(h HitArea) HitState {
	t := c.target(h.ID, h.Rect, KindHit, h.Label, h.Why, h.Key)
	c.set(t, "", h.Selected)
	if h.Tip != "" {
		c.tip(t, h.Rect, h.Label, h.Tip)
	} else {
		c.tip(t, h.Rect, "", h.Why)
	}
	c.ring(t, h.Rect)
	return HitState{Pressed: t.pressed, Over: t.over, Held: t.held, Focused: t.focused, Dragged: t.held || t.ended,
		Part: (c.in.Pointer.X - h.Rect.X) / max(h.Rect.W, 1)}
}
