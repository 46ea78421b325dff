// Package uitest drives screens made with package ui without a display: it
// presses what a person would press, found by its label, and measures what the
// display list says about overlap, truncation and the size of targets.
package uitest

import (
	"fmt"
	"strings"

	"rouleau/cmd/rouleau-desk/ui"
)

// FrameMS is the time a frame takes for the driver.
const FrameMS = 16

// Driver is a window without a display.
type Driver struct {
	Core   *ui.Core
	Screen func(*ui.Core)
	Size   ui.Vec
	Scale  float32
	List   *ui.List // of the newest frame
	// Changed tells whether the newest frame differs from the one before.
	Changed bool
	pointer ui.Vec
	touchID int
}

// New makes a driver and draws the first frame.
func New(size ui.Vec, screen func(*ui.Core)) *Driver {
	d := &Driver{Core: ui.New(ui.Paper()), Screen: screen, Size: size, Scale: 1, pointer: ui.Vec{X: -1, Y: -1}}
	d.Core.Words = ui.Words{HoldToConfirm: "keep pressed", AgainToConfirm: "again to confirm", More: "%d more",
		Enter: "Enter", Space: "Space", Tab: "Tab", Escape: "Esc", Shift: "Shift", Ctrl: "Ctrl", Alt: "Alt"}
	d.Idle()
	return d
}

// Frame runs one frame with an input; size, scale, time and pointer are filled in.
func (d *Driver) Frame(in ui.Input) {
	in.Size, in.Scale = d.Size, d.Scale
	if in.DeltaMS == 0 {
		in.DeltaMS = FrameMS
	}
	if !in.PointerIn && len(in.Touches) == 0 && d.pointer.X >= 0 {
		in.Pointer, in.PointerIn = d.pointer, true
	}
	d.Core.Begin(in)
	d.Screen(d.Core)
	d.List, d.Changed = d.Core.End()
}

// Idle runs a frame in which nothing happens.
func (d *Driver) Idle() { d.Frame(ui.Input{}) }

// Wait runs frames for a time.
func (d *Driver) Wait(ms float32) {
	for ; ms > 0; ms -= FrameMS {
		d.Idle()
	}
}

// Key presses and lets go of keys one after the other.
func (d *Driver) Key(keys ...ui.Key) {
	for _, k := range keys {
		d.Chord(ui.Chord{Key: k})
	}
}

// Chord presses a key with modifiers.
func (d *Driver) Chord(ch ui.Chord) {
	d.Frame(ui.Input{Keys: []ui.KeyEvent{{Key: ch.Key, Mods: ch.Mods}}, Mods: ch.Mods})
	d.Frame(ui.Input{KeysUp: []ui.Key{ch.Key}})
}

// Type writes letters, as a keyboard sends them: key events and runes together.
func (d *Driver) Type(s string) {
	for _, r := range s {
		in := ui.Input{Runes: []rune{r}}
		if ch := ui.K(r); ch.Key != ui.KeyNone {
			in.Keys = []ui.KeyEvent{{Key: ch.Key}}
		}
		d.Frame(in)
	}
}

// At finds the mark of a control by its label. It must be the only one.
func (d *Driver) At(label string) (ui.Mark, error) {
	var found []ui.Mark
	for _, m := range d.List.Marks {
		if m.Target() && m.Label == label && !m.Shown.Empty() {
			found = append(found, m)
		}
	}
	switch len(found) {
	case 0:
		return ui.Mark{}, fmt.Errorf("no control is called %q; there are: %s", label, strings.Join(d.Labels(), ", "))
	case 1:
		return found[0], nil
	}
	return ui.Mark{}, fmt.Errorf("%d controls are called %q", len(found), label)
}

// Labels lists the labels of all controls on the screen.
func (d *Driver) Labels() (labels []string) {
	for _, m := range d.List.Marks {
		if m.Target() && !m.Shown.Empty() {
			labels = append(labels, m.Label)
		}
	}
	return labels
}

// HasText reports whether words stand on the screen, whole or as part of a line.
func (d *Driver) HasText(words string) bool {
	for _, m := range d.List.Marks {
		if !m.Shown.Empty() && (strings.Contains(m.Label, words) || strings.Contains(m.Value, words)) {
			return true
		}
	}
	return false
}

// Move moves the pointer.
func (d *Driver) Move(to ui.Vec) {
	d.pointer = to
	d.Idle()
}

// ClickAt presses and lets go at a point.
func (d *Driver) ClickAt(p ui.Vec) {
	d.Move(p)
	d.Frame(ui.Input{Pointer: p, PointerIn: true, Pressed: true, Down: true})
	d.Frame(ui.Input{Pointer: p, PointerIn: true, Released: true})
}

// Click presses the control with a label.
func (d *Driver) Click(label string) error {
	m, err := d.At(label)
	if err == nil {
		d.ClickAt(m.Shown.Center())
	}
	return err
}

// HoldDown keeps the pointer pressed on a control for a time.
func (d *Driver) HoldDown(label string, ms float32) error {
	m, err := d.At(label)
	if err != nil {
		return err
	}
	p := m.Shown.Center()
	d.Move(p)
	d.Frame(ui.Input{Pointer: p, PointerIn: true, Pressed: true, Down: true})
	for ; ms > 0; ms -= FrameMS {
		d.Frame(ui.Input{Pointer: p, PointerIn: true, Down: true})
	}
	d.Frame(ui.Input{Pointer: p, PointerIn: true, Released: true})
	return nil
}

// Drag moves the pressed pointer from one point to another in steps.
func (d *Driver) Drag(from, to ui.Vec) {
	d.Move(from)
	d.Frame(ui.Input{Pointer: from, PointerIn: true, Pressed: true, Down: true})
	const steps = 8
	for i := 1; i <= steps; i++ {
		d.pointer = between(from, to, float32(i)/steps)
		d.Frame(ui.Input{Pointer: d.pointer, PointerIn: true, Down: true})
	}
	d.Frame(ui.Input{Pointer: to, PointerIn: true, Released: true})
}

// TapAt touches a point for two frames.
func (d *Driver) TapAt(p ui.Vec) { d.Swipe(p, p) }

// Tap touches the control with a label.
func (d *Driver) Tap(label string) error {
	m, err := d.At(label)
	if err == nil {
		d.TapAt(m.Shown.Center())
	}
	return err
}

// Swipe moves a finger from one point to another.
func (d *Driver) Swipe(from, to ui.Vec) { d.SwipeFor(from, to, 0) }

// SwipeFor is Swipe with the finger resting at the end for a time.
func (d *Driver) SwipeFor(from, to ui.Vec, restMS float32) {
	d.pointer = ui.Vec{X: -1, Y: -1}
	d.touchID++
	touch := func(p ui.Vec, began, ended bool) {
		d.Frame(ui.Input{Touches: []ui.Touch{{ID: d.touchID, Pos: p, Began: began, Ended: ended}}})
	}
	touch(from, true, false)
	const steps = 6
	for i := 1; i <= steps; i++ {
		touch(between(from, to, float32(i)/steps), false, false)
	}
	for ; restMS > 0; restMS -= FrameMS {
		touch(to, false, false)
	}
	touch(to, false, true)
	d.Idle()
}

// Wheel turns the wheel over a point; positive lines show what is above.
func (d *Driver) Wheel(p ui.Vec, lines float32) {
	d.Move(p)
	d.Frame(ui.Input{Pointer: p, PointerIn: true, Wheel: ui.Vec{Y: lines}})
	d.Idle()
}

func between(a, b ui.Vec, part float32) ui.Vec {
	return ui.Vec{X: a.X + (b.X-a.X)*part, Y: a.Y + (b.Y-a.Y)*part}
}
