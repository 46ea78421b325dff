// The case that is chosen is in view, however it was chosen.

package home_test

import (
	"testing"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/home"
	"rouleau/cmd/rouleau-desk/ui"
)

// whole tells whether a row of the list can be seen from its upper to its lower edge.
func (d *desk) whole(title string) bool {
	for _, m := range d.List.Marks {
		if m.Target() && m.Label == title && m.Shown == m.Rect {
			return true
		}
	}
	return false
}

func TestTheChosenCaseIsInView(t *testing.T) {
	v := full()
	for i := range 12 {
		more := v.Cases[2]
		more.Key, more.Title = string(rune('p'+i)), "Case "+string(rune('p'+i))
		v.Cases = append(v.Cases, more)
	}
	first, last := v.Cases[0].Title, v.Cases[len(v.Cases)-1].Title
	for i := range v.Cases[8:] {
		v.Cases[8+i].Group = home.Own
	}
	for _, size := range sizes[:3] {
		d := sit(size, v)
		d.click(t, "Understood")
		settle := func() {
			for range 4 {
				d.Idle()
			}
		}
		if settle(); d.whole(last) || !d.whole(first) {
			t.Fatal("the list is too short for this test")
		}
		d.Key(ui.KeyEnd)
		if settle(); !d.whole(last) {
			t.Errorf("%v: End chooses the last case and does not show it", size)
		}
		d.Key(ui.KeyHome)
		if settle(); !d.whole(first) {
			t.Errorf("%v: Home chooses the first case and does not show it", size)
		}
		d.Key(ui.KeyEnd)
		settle()
		d.Core.SetScroll(ui.Name("home list"), 0)
		if settle(); d.whole(last) {
			t.Fatal("the list was not scrolled")
		}
		d.Key(ui.KeyEnd)
		if settle(); !d.whole(last) {
			t.Errorf("%v: End leaves the chosen case out of view", size)
		}
		d.Key(ui.KeyHome)
		for range v.Cases {
			d.Key(ui.KeyDown)
		}
		if settle(); !d.whole(last) {
			t.Errorf("%v: the arrow goes to the last case and does not show it", size)
		}
		d.home.ShowCase(v.Cases[0].Key)
		if settle(); !d.whole(first) {
			t.Errorf("%v: a file that was opened is not shown", size)
		}
	}
}

// What was gone on with from another attempt is told as such, in the list where it is the best and in its own row.
func TestWhatWasTakenOverIsTold(t *testing.T) {
	over := words.Say("home.taken_over", words.Say("home.passed", 41.0))
	for _, taken := range []bool{false, true} {
		v := full()
		k := &v.Cases[1]
		k.Past = past(3)
		k.Past[1].Passed, k.Past[1].TakenOver = true, taken
		d := sit(sizes[0], v)
		d.click(t, "Understood")
		d.Core.SetScroll(ui.Name("home list"), 0)
		d.Idle()
		if err := d.Click(k.Title); err != nil {
			t.Fatal(err)
		}
		d.Idle()
		for _, want := range []string{words.Say("home.best_last", over, 40.0), words.Say("home.taken_over", words.Say("home.practice"))} {
			if d.HasText(want) != taken {
				t.Errorf("taken over: %t; %q stands: %t", taken, want, !taken)
			}
		}
	}
}
