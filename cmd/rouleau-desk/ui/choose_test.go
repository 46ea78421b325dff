// Tests of choices, tabs, lists and scrolled areas.

package ui_test

import (
	"strings"
	"testing"

	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau-desk/ui/uitest"
)

func hasAll(s string, parts ...string) bool {
	for _, p := range parts {
		if !strings.Contains(s, p) {
			return false
		}
	}
	return true
}

func TestChoiceAndTabsByEveryMeans(t *testing.T) {
	options := []ui.Option{{Label: "saline"}, {Label: "water", Why: "not on the bench"}, {Label: "dextrose", Key: ui.K('D')}}
	draws := map[string]func(c *ui.Core, sel int) (int, bool){
		"radio": func(c *ui.Core, sel int) (int, bool) {
			return c.Choice(ui.Choice{ID: ui.Name("g"), Rect: ui.R(10, 10, 300, 126), Options: options, Selected: sel})
		},
		"row": func(c *ui.Core, sel int) (int, bool) {
			return c.Choice(ui.Choice{ID: ui.Name("g"), Rect: ui.R(10, 10, 400, 42), Options: options, Selected: sel, Row: true})
		},
		"tabs": func(c *ui.Core, sel int) (int, bool) {
			return c.Tabs(ui.Tabs{ID: ui.Name("g"), Rect: ui.R(10, 10, 400, 42), Options: options, Selected: sel})
		},
	}
	for name, draw := range draws {
		for _, c := range []struct {
			means string
			start int
			do    func(d *uitest.Driver)
			want  int
		}{
			{"pointer", 0, func(d *uitest.Driver) { _ = d.Click("dextrose") }, 2},
			{"pointer on a sleeping one", 0, func(d *uitest.Driver) { _ = d.Click("water") }, 0},
			{"finger", 0, func(d *uitest.Driver) { _ = d.Tap("dextrose") }, 2},
			{"arrow over a sleeping one", 0, func(d *uitest.Driver) { d.Key(ui.KeyTab, ui.KeyDown) }, 2},
			{"arrow past the end", 0, func(d *uitest.Driver) { d.Key(ui.KeyTab, ui.KeyRight, ui.KeyRight, ui.KeyRight) }, 2},
			{"End and back", 0, func(d *uitest.Driver) { d.Key(ui.KeyTab, ui.KeyEnd, ui.KeyHome) }, 0},
			{"quick key", 0, func(d *uitest.Driver) { d.Type("d") }, 2},
			{"Space on none yet", -1, func(d *uitest.Driver) { d.Key(ui.KeyTab, ui.KeySpace) }, 0},
			{"up from none yet", -1, func(d *uitest.Driver) { d.Key(ui.KeyTab, ui.KeyUp) }, 2},
			{"second Tab leaves the group", 0, func(d *uitest.Driver) { d.Key(ui.KeyTab, ui.KeyTab, ui.KeyDown) }, 0},
		} {
			sel := c.start
			d := uitest.New(window, func(co *ui.Core) {
				now, changed := draw(co, sel)
				if changed != (now != sel) {
					t.Errorf("%s: changed is %v from %d to %d", name, changed, sel, now)
				}
				sel = now
				co.Button(ui.Button{ID: ui.Name("o"), Rect: ui.R(10, 300, 200, 44), Label: "other"})
			})
			c.do(d)
			d.Idle()
			if sel != c.want {
				t.Errorf("%s by %s: chosen %d, want %d", name, c.means, sel, c.want)
			}
		}
	}
}

func listDriver(n int, sel, opened *int) *uitest.Driver {
	rows := make([]ui.Row, n)
	for i := range rows {
		rows[i] = ui.Row{Label: "row " + string(rune('A'+i%26)) + string(rune('a'+i/26))}
	}
	return uitest.New(window, func(c *ui.Core) {
		s, o := c.List(ui.ListBox{ID: ui.Name("l"), Rect: ui.R(10, 10, 300, 210), Label: "rows", Rows: rows, Selected: *sel})
		*sel = s
		if o {
			*opened++
		}
	})
}

func TestListByKeys(t *testing.T) {
	sel, opened := -1, 0
	d := listDriver(60, &sel, &opened)
	d.Key(ui.KeyTab, ui.KeyDown)
	if sel != 0 {
		t.Errorf("first arrow chooses %d", sel)
	}
	d.Key(ui.KeyDown, ui.KeyDown, ui.KeyUp, ui.KeyPageDown)
	if sel != 5 {
		t.Errorf("after a page: %d, want 5", sel)
	}
	d.Key(ui.KeyEnd)
	if m, err := d.At("row Hc"); err != nil || sel != 59 || m.Shown.H < 40 {
		t.Errorf("End chooses %d, row shown %v, %v", sel, m.Shown, err)
	}
	d.Key(ui.KeyHome, ui.KeyEnter)
	if sel != 0 || opened != 1 {
		t.Errorf("Home and Enter: chosen %d, opened %d", sel, opened)
	}
}

func TestARowIsFoundByTypingHowItBegins(t *testing.T) {
	labels := []string{"Spine, oozing", "Hip, second time", "Spleen", "splint", "Aorta", "Hip, first time"}
	sel, pressed := -1, 0
	d := uitest.New(window, func(c *ui.Core) {
		rows := make([]ui.Row, len(labels))
		for i := range rows {
			rows[i].Label = labels[i]
		}
		sel, _ = c.List(ui.ListBox{ID: ui.Name("l"), Rect: ui.R(10, 10, 300, 210), Label: "rows", Rows: rows, Selected: sel})
		if c.Button(ui.Button{ID: ui.Name("o"), Rect: ui.R(10, 300, 200, 44), Label: "other", Key: ui.K('S')}) {
			pressed++
		}
	})
	d.Key(ui.KeyTab)
	for _, k := range []struct {
		typed string
		pause float32
		want  int
	}{{"s", 1500, 0}, {"s", 0, 2}, {"s", 0, 3}, {"s", 1500, 0}, {"spl", 0, 2}, {"i", 1500, 3}, {"HIP", 0, 5}, {", s", 1500, 1}, {"x", 1500, 1}} {
		d.Type(k.typed)
		if sel != k.want {
			t.Errorf("after %q row %d is chosen, want %d", k.typed, sel, k.want)
		}
		d.Wait(k.pause)
	}
	if pressed != 0 {
		t.Errorf("letters typed into a list pressed a quick key %d times", pressed)
	}
	d.Key(ui.KeyTab)
	d.Type("s")
	if pressed != 1 {
		t.Errorf("outside the list the quick key pressed %d times", pressed)
	}
}

func TestListByPointerWheelAndFinger(t *testing.T) {
	sel, opened := -1, 0
	d := listDriver(60, &sel, &opened)
	if err := d.Click("row Ca"); err != nil || sel != 2 || opened != 1 {
		t.Errorf("click chooses %d, opens %d, %v", sel, opened, err)
	}
	d.Wheel(ui.Vec{X: 100, Y: 100}, -4)
	if off := d.Core.ScrollOffset(ui.Name("l").With("rows")); off < 100 {
		t.Errorf("the wheel scrolled to %g", off)
	}
	d.Wheel(ui.Vec{X: 600, Y: 500}, 400)
	if off := d.Core.ScrollOffset(ui.Name("l").With("rows")); off < 100 {
		t.Error("the wheel outside the list scrolled it")
	}
	d.Wheel(ui.Vec{X: 100, Y: 100}, 400)
	was := sel
	d.Swipe(ui.Vec{X: 100, Y: 190}, ui.Vec{X: 100, Y: 60})
	if off := d.Core.ScrollOffset(ui.Name("l").With("rows")); off < 90 || sel != was {
		t.Errorf("the finger scrolled to %g and chose %d", off, sel)
	}
	if err := d.Tap("row Ga"); err != nil || sel != 6 {
		t.Errorf("a tap chose %d, %v", sel, err)
	}
	d.Drag(ui.Vec{X: 303, Y: 60}, ui.Vec{X: 303, Y: 400})
	if off := d.Core.ScrollOffset(ui.Name("l").With("rows")); off != 60*40-210 {
		t.Errorf("the bar dragged to the end is at %g", off)
	}
}

func TestLogSticksToItsEnd(t *testing.T) {
	rows := []ui.Row{}
	d := uitest.New(window, func(c *ui.Core) {
		c.List(ui.ListBox{ID: ui.Name("l"), Rect: ui.R(10, 10, 300, 100), Rows: rows, RowH: 20, Stick: true, Quiet: true, Selected: -1})
	})
	add := func(n int) {
		for range n {
			rows = append(rows, ui.Row{Label: "line"})
		}
		d.Idle()
		d.Idle()
	}
	off := func() float32 { return d.Core.ScrollOffset(ui.Name("l").With("rows")) }
	add(20)
	if off() != 300 {
		t.Errorf("the log stands at %g, want its end 300", off())
	}
	d.Wheel(ui.Vec{X: 50, Y: 50}, 1)
	was := off()
	add(5)
	if off() != was || was >= 300 {
		t.Errorf("a log scrolled up moved from %g to %g", was, off())
	}
	d.Wheel(ui.Vec{X: 50, Y: 50}, -100)
	add(5)
	if off() != 500 {
		t.Errorf("back at the end it stands at %g, want 500", off())
	}
}

func TestScrolledAreaFollowsTheFocusAndTheFinger(t *testing.T) {
	pressed := -1
	draw := func(c *ui.Core) {
		in := c.BeginScroll(ui.Scroll{ID: ui.Name("s"), Rect: ui.R(10, 10, 300, 200), Content: 20 * 48})
		for i := range 20 {
			label := "act " + string(rune('A'+i))
			if c.Button(ui.Button{ID: ui.Name("s").At(i), Rect: in.CutTop(40), Label: label}) {
				pressed = i
			}
			in.CutTop(8)
		}
		c.EndScroll()
	}
	d := uitest.New(window, draw)
	for range 10 {
		d.Key(ui.KeyTab)
	}
	d.Idle()
	if m, err := d.At("act J"); err != nil || m.Shown.H < 40 {
		t.Errorf("the tenth stop is not in view: %v %v", m.Shown, err)
	}
	d.Core.SetScroll(ui.Name("s"), 0)
	d.Idle()
	d.Swipe(ui.Vec{X: 100, Y: 170}, ui.Vec{X: 100, Y: 50})
	if pressed != -1 || d.Core.ScrollOffset(ui.Name("s")) < 60 {
		t.Errorf("a swipe over buttons pressed %d and scrolled to %g", pressed, d.Core.ScrollOffset(ui.Name("s")))
	}
	// A quick key that puts the focus on something out of view shows it.
	d.Core.SetScroll(ui.Name("s"), 0)
	d.Core.Focus(ui.Name("s").At(18))
	d.Idle()
	d.Idle()
	if m, err := d.At("act S"); err != nil || m.Shown.H < 40 {
		t.Errorf("a stop that got the focus is not in view: %v %v", m.Shown, err)
	}
	// What is clipped away cannot be pressed.
	d.Core.SetScroll(ui.Name("s"), 0)
	d.Idle()
	d.ClickAt(ui.Vec{X: 100, Y: 260})
	if pressed != -1 {
		t.Errorf("a clipped button was pressed: %d", pressed)
	}
}
