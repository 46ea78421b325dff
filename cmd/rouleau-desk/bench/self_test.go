// Marks of one's own before the verdict: given with keys alone, with the pointer alone, or left out; and then beside what was
// measured.

package bench_test

import (
	"fmt"
	"strings"
	"testing"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/ui"
)

// finish goes to the verdict past the marks.
func (b *table) finish() {
	b.Session.Do([]bench.Act{{Do: bench.Finish}, {Do: bench.GiveMarks, Marks: &bench.Marks{}}})
}

// ended is a case at its end, at which the marks are asked for.
func ended(t *testing.T, size ui.Vec) *table {
	t.Helper()
	b := sit(t, size, false)
	b.begin()
	b.until(1e6)
	b.Session.Do([]bench.Act{{Do: bench.Finish}})
	b.Idle()
	b.Idle()
	if !b.asked() {
		t.Fatal("the marks are not asked for")
	}
	return b
}

func (b *table) asked() bool { return b.Session.View.Result.Self.Asked }

func (b *table) rows() []bench.SelfRow { return b.Session.View.Result.Self.Rows }

// choices are the marks of a row on the screen, on and off.
func (b *table) choices(row int) (all []ui.Mark) {
	for k := range b.Session.View.Result.Self.Choices {
		for _, m := range b.List.Marks {
			if m.Kind == ui.KindChoice && m.ID == ui.Name("own mark").At(row).At(k) {
				all = append(all, m)
			}
		}
	}
	return all
}

// chosen is the choice of a row that is on, counted from 1; 0 for none.
func (b *table) chosen(row int) int {
	for k, m := range b.choices(row) {
		if m.On {
			return k + 1
		}
	}
	return 0
}

// given checks what was kept of the marks.
func (b *table) given(t *testing.T, each []int, otherwise string) {
	t.Helper()
	s := &b.Session.View.Result.Self
	if s.Asked || !s.Given || s.Otherwise != otherwise {
		t.Errorf("asked %v, given %v, %q, want %q", s.Asked, s.Given, s.Otherwise, otherwise)
	}
	for i, n := range each {
		want := words.Say("self.not_marked")
		if n > 0 {
			want = s.Choices[n-1]
		}
		if s.Rows[i].Own != want {
			t.Errorf("%s is kept as %q, want %q", s.Rows[i].ID, s.Rows[i].Own, want)
		}
	}
}

// Before the marks nothing on the screen tells how the case went.
func TestTheVerdictDoesNotShowBeforeTheMarks(t *testing.T) {
	for _, size := range []ui.Vec{{X: 900, Y: 600}, {X: 1920, Y: 1080}} {
		b := ended(t, size)
		r := &b.Session.View.Result
		for _, m := range b.List.Marks {
			if text := m.Label + m.Value + m.Why; strings.Contains(text, "of 100") || strings.Contains(text, "assed") || strings.Contains(text, words.Say("self.met")+",") {
				t.Errorf("%q shows before the marks", text)
			}
			for _, p := range r.Parts {
				for _, k := range p.Rows {
					if m.Label == k.Name || m.Label == k.Reason {
						t.Errorf("%q shows before the marks", m.Label)
					}
				}
			}
		}
		if len(r.Self.Rows) != len(b.Session.View.Story.Objectives) {
			t.Errorf("%d rows for %d objectives", len(r.Self.Rows), len(b.Session.View.Story.Objectives))
		}
		for i, o := range b.Session.View.Story.Objectives {
			if r.Self.Rows[i].Text != o {
				t.Errorf("row %d is %q, want %q", i, r.Self.Rows[i].Text, o)
			}
		}
		if !b.HasText(r.Self.Rows[0].Text) || !b.HasText(words.Say("self.title")) {
			t.Error("the objectives are not asked about")
		}
	}
}

// Digits alone: each marks and goes on; from the last ↓ leads to the line, and Enter there shows the verdict.
func TestMarkedByDigits(t *testing.T) {
	b := ended(t, ui.Vec{X: 900, Y: 600})
	n := len(b.rows())
	each := make([]int, n)
	for i := range each {
		each[i] = 1 + i%4
		b.Type(fmt.Sprint(each[i]))
		b.Idle()
		b.Idle()
		if got := b.chosen(i); got != each[i] {
			t.Errorf("row %d is marked %d, want %d", i, got, each[i])
		}
		if i+1 < n { // the next is in view, whole
			for _, m := range b.choices(i + 1) {
				if m.Shown != m.Rect {
					t.Errorf("row %d is not in view: %v of %v", i+1, m.Shown, m.Rect)
				}
			}
		}
	}
	b.Type("4") // one digit too many changes the last mark, and is not written anywhere
	each[n-1] = 4
	b.Key(ui.KeyDown)
	b.Type("start 2 clamps sooner")
	for i := range each {
		if b.chosen(i) != each[i] {
			t.Errorf("writing changed row %d", i)
		}
	}
	b.Key(ui.KeyEnter)
	b.Idle()
	b.given(t, each, "start 2 clamps sooner")
	b.Idle()
	if !b.HasText("Passed") || !b.HasText("start 2 clamps sooner") {
		t.Error("the verdict does not show, with the line beside it")
	}
}

// Arrows go from row to row and change a mark; digits go on from there.
func TestMarkedByArrows(t *testing.T) {
	b := ended(t, ui.Vec{X: 1280, Y: 800})
	n := len(b.rows())
	b.Key(ui.KeyRight) // the first row: the first choice
	b.Key(ui.KeyRight)
	if got := b.chosen(0); got != 2 {
		t.Fatalf("→ twice marks %d", got)
	}
	b.Key(ui.KeyDown, ui.KeyDown, ui.KeyUp)
	if b.chosen(0) != 2 || b.chosen(1) != 0 || b.chosen(2) != 0 {
		t.Error("moving from row to row marks something")
	}
	b.Key(ui.KeyLeft) // the last choice of the second row
	b.Key(ui.KeyLeft)
	if got := b.chosen(1); got != 3 {
		t.Errorf("← twice marks %d", got)
	}
	b.Type("3") // as it is, and on
	b.Type("1")
	b.Idle()
	if b.chosen(1) != 3 || b.chosen(2) != 1 {
		t.Errorf("digits after arrows mark %d and %d", b.chosen(1), b.chosen(2))
	}
	for range n - 4 {
		b.Key(ui.KeyDown)
	}
	b.Type("4") // of the last; some before it are left
	b.Idle()
	if b.chosen(n-1) != 4 || b.Core.Focused() != ui.Name("own mark").At(3) {
		t.Errorf("the last row is marked %d, or the first that was left out does not come after it", b.chosen(n-1))
	}
	b.Key(ui.KeyUp, ui.KeyUp, ui.KeyUp, ui.KeyUp, ui.KeyUp, ui.KeyRight)
	if b.chosen(0) != 3 {
		t.Errorf("above the first row is no other: it is marked %d", b.chosen(0))
	}
	for range n + 3 { // further than there are rows
		b.Key(ui.KeyDown)
	}
	if b.Core.Focused() != ui.Name("own line") {
		t.Error("↓ does not lead from the last row to the line")
	}
	// Tab goes through the rows too, and the next digit is for the row it rests on.
	for range 60 {
		if b.Core.Focused() == ui.Name("own mark").At(5) {
			break
		}
		b.Key(ui.KeyTab)
	}
	b.Type("2")
	b.Idle()
	if got := b.chosen(5); got != 2 || b.Core.Focused() != ui.Name("own mark").At(6) {
		t.Errorf("after Tab the sixth row is marked %d", got)
	}
}

// With Tab, arrows and Enter as any other screen.
func TestMarkedByKeysAlone(t *testing.T) {
	b := ended(t, ui.Vec{X: 1024, Y: 640})
	k := keyboard{b, t}
	each := make([]int, len(b.rows()))
	for i := range each {
		each[i] = 1
		b.Key(ui.KeyTab)
		b.Key(ui.KeyRight)
	}
	k.press(words.Say("self.show"), "")
	b.given(t, each, "")
}

// The pointer alone, with the wheel.
func TestMarkedByPointerAlone(t *testing.T) {
	b := ended(t, ui.Vec{X: 900, Y: 600})
	each := make([]int, len(b.rows()))
	area := b.List.Marks[0]
	for _, m := range b.List.Marks {
		if m.Kind == ui.KindScroll {
			area = m
		}
	}
	for i := range each {
		each[i] = 4 - i%4
		for range 40 {
			m := b.choices(i)[each[i]-1]
			if m.Shown == m.Rect {
				break
			}
			b.Wheel(area.Rect.Center(), -1)
		}
		b.ClickAt(b.choices(i)[each[i]-1].Shown.Center())
		b.Idle()
		if got := b.chosen(i); got != each[i] {
			t.Fatalf("row %d is marked %d, want %d", i, got, each[i])
		}
		if i == 2 { // and another choice of the same row
			b.ClickAt(b.choices(i)[0].Shown.Center())
			b.ClickAt(b.choices(i)[each[i]-1].Shown.Center())
		}
	}
	if err := b.Click(words.Say("self.show")); err != nil {
		t.Fatal(err)
	}
	b.given(t, each, "")
}

// Fingers too, and keys on the glass for the line.
func TestMarkedByTouch(t *testing.T) {
	b := ended(t, ui.Vec{X: 1280, Y: 800})
	b.TapAt(b.choices(0)[2].Shown.Center())
	b.Idle()
	if b.chosen(0) != 3 {
		t.Error("a finger does not mark")
	}
	m, err := b.At(words.Say("self.otherwise"))
	if err != nil {
		t.Fatal(err)
	}
	b.TapAt(ui.Vec{X: m.Rect.X + 40, Y: m.Rect.Bottom() - 12})
	b.faults(t, "keys on the glass for the line")
	b.Tap("h")
	b.Idle()
	if m, _ := b.At(words.Say("self.otherwise")); m.Value != "h" {
		t.Errorf("the line holds %q", m.Value)
	}
}

// The verdict can be had without marks, and what was left out is kept as left out.
func TestTheVerdictWithoutMarks(t *testing.T) {
	b := ended(t, ui.Vec{X: 1280, Y: 800})
	if m, _ := b.At(words.Say("self.show")); m.Enabled || !strings.Contains(m.Why, fmt.Sprint(len(b.rows()))) {
		t.Errorf("with nothing marked the verdict is offered as marked: %q", m.Why)
	}
	if err := b.Click(words.Say("self.without")); err != nil {
		t.Fatal(err)
	}
	b.given(t, make([]int, len(b.rows())), "")
	b.Idle()
	b.Idle()
	if !b.HasText("Passed") || !b.HasText(words.Say("self.sum_none")) || b.HasText(words.Say("self.beside")) {
		t.Error("the verdict does not say that nothing was marked")
	}
	// Some marked: the rest is left out, and what was written stays.
	b = ended(t, ui.Vec{X: 1280, Y: 800})
	b.Type("12")
	b.Idle()
	b.Core.Focus(ui.Name("own line"))
	b.Type("ask")
	b.Key(ui.KeyEnter) // goes to what is missing, not to the verdict
	b.Idle()
	if !b.asked() || b.Core.Focused() != ui.Name("own mark").At(2) {
		t.Error("Enter in the line does not lead to the first objective that is not marked")
	}
	if err := b.Click(words.Say("self.rest_unmarked")); err != nil {
		t.Fatal(err)
	}
	each := make([]int, len(b.rows()))
	each[0], each[1] = 1, 2
	b.given(t, each, "ask")
	b.Idle()
	if !b.HasText(fmt.Sprintf("%d not marked", len(each)-2)) {
		t.Error("the line over all does not count what was left out")
	}
}

// The key that led here, still held down, marks nothing and shows nothing.
func TestAHeldKeyMarksNothing(t *testing.T) {
	b := sit(t, ui.Vec{X: 1280, Y: 800}, false)
	b.begin()
	b.until(1e6)
	b.Core.Focus(ui.Name("finish"))
	b.Session.Do([]bench.Act{{Do: bench.Finish}})
	for range 10 {
		b.Frame(ui.Input{Keys: []ui.KeyEvent{{Key: ui.KeyEnter, Repeat: true}}})
	}
	for i := range b.rows() {
		if b.chosen(i) != 0 {
			t.Errorf("row %d was marked", i)
		}
	}
	if !b.asked() {
		t.Error("the verdict was shown")
	}
}
