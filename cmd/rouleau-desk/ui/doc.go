// Package ui is the widget core of the window: it takes an Input value and gives
// a List of things to draw. It knows no simulation, no clock, no display, so
// everything a person can do is tested by feeding inputs and reading lists.
//
// # A frame
//
//	core := ui.New(ui.Paper())
//	core.Words = words            // the few words widgets say themselves
//	for each frame {
//		core.Begin(input)         // from the window's collector, or from a test
//		screen(core, view)        // calls widgets, returns what is to be done
//		list, changed := core.End()
//		if changed { paint(list) }
//	}
//
// # A screen
//
// A screen is a function. It cuts its rectangle into parts, calls a widget for
// each, and returns what the person asked for. Widgets are plain values: what is
// on, how far, and why something cannot be done is asked of the core behind the
// screen each frame.
//
//	func bowlPanel(c *ui.Core, r ui.Rect, v View) (acts []Act) {
//		in := c.Panel(ui.Panel{ID: idBowl, Rect: r, Title: v.Say("bowl"), Note: v.Cycle})
//		if c.Button(ui.Button{ID: idBowl.With("stop"), Rect: in.CutTop(40), Label: v.Say("stop"),
//			Key: ui.K('S'), Look: ui.LookDark}) {
//			acts = append(acts, Stop{})
//		}
//		in.CutTop(8)
//		if c.Button(ui.Button{ID: idBowl.With("wash"), Rect: in.CutTop(40), Label: v.Say("wash"),
//			Key: ui.K('W'), Running: v.Washing, Detail: v.WashTime, Why: v.WhyNotWash}) {
//			acts = append(acts, Wash{})
//		}
//		in.CutTop(8)
//		rate, done := c.Slider(ui.Value{ID: idBowl.With("rate"), Rect: in.CutTop(ui.SliderHeight),
//			Label: v.Say("wash rate"), Unit: "mL/min", Value: v.RateMLMin, Min: 50, Max: 600, Step: 10})
//		if done { // the person has settled on it; while dragging, only rate moves
//			acts = append(acts, SetRate{rate})
//		}
//		return acts
//	}
//
// # Rules of use
//
//   - Coordinates are logical pixels. Input.Size is the window divided by
//     Input.Scale, which is the monitor's scale times the person's own.
//   - The order of calls is the order of the Tab key, and what is called later
//     lies above and gets the pointer first.
//   - Every control needs an ID of its own: Name("bowl").With("wash").At(3).
//   - Strings that change are made with Core.Num and Core.Clock, or kept by the
//     caller: a string made anew each frame allocates each frame.
//   - An empty Why means a control can be used. A control with a Why stays in the
//     order of focus, so that the reason can be read by keyboard.
//   - Colours come from Core.Pal. Its Alarm colours are for Core.Alarm alone.
//   - Controls are at least 40 pixels high; the tests of screens assert it, with
//     overlap and truncation, from List.Marks (see package uitest).
//
// # Keys
//
// Tab and Shift+Tab move the focus; Enter and Space press; arrows, PageUp,
// PageDown, Home and End change values and choices; digits typed on a slider or
// stepper and taken with Enter set it exactly, Escape drops them. A quick key
// acts from anywhere, except while the focused widget needs it for typing.
package ui
