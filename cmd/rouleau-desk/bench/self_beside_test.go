// The marking and the verdict beside it: what fits, in which order it stands, and where nobody is asked.

package bench_test

import (
	"fmt"
	"strings"
	"testing"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/ui"
)

// The marking and the rows side by side fit at every size, with long words, and with the most that can be written.
func TestMarkingFitsAtEverySize(t *testing.T) {
	look := func(t *testing.T) {
		b := ended(t, sizes[0])
		b.atSizes(func() { b.faults(t, "nothing marked") })
		b.Session.View.Notice = "A file was dropped. Finish or leave this case first, then drop it again."
		b.Type("1234")
		b.atSizes(func() { b.faults(t, "four marked") })
		b.Session.View.Notice = ""
		for range b.rows() {
			b.Type("3")
		}
		b.Idle()
		b.Core.Focus(ui.Name("own line"))
		b.Idle()
		b.Type(strings.Repeat("Überlegt früher ", 30))
		b.atSizes(func() { b.faults(t, "all marked") })
		b.Key(ui.KeyEnter)
		s := &b.Session.View.Result.Self
		if n := len([]rune(s.Otherwise)); b.asked() || n != 400 {
			t.Errorf("asked %v; the line has %d characters, want 400", b.asked(), n)
		}
		b.atSizes(func() { b.faults(t, "side by side") })
		r := &b.Session.View.Result
		r.Criticals = append(r.Criticals, bench.CriticalResult{Name: "120 mL were given before two people had checked who the blood was for"})
		for i := range s.Rows {
			s.Rows[i].Measured, s.Rows[i].Was = words.Say("self.for_an_error", words.Say("self.partly_met")), i%4-1
			s.Rows[i].Apart, s.Rows[i].Seen = words.Say("self.seen_better"), (i+1)%4-1
		}
		for _, off := range []float32{0, 300, 600} {
			b.atSizes(func() {
				b.Core.SetScroll(ui.Name("result"), off)
				b.faults(t, fmt.Sprintf("side by side with the longest words, scrolled by %.0f", off))
			})
		}
	}
	t.Run("English", look)
	t.Run("longer words", func(t *testing.T) {
		speakLong(t)
		look(t)
	})
}

// Errors that points do not make good come first, then why, then the marks beside what was measured, then the points in detail.
func TestTheOrderOfTheVerdict(t *testing.T) {
	b := ended(t, ui.Vec{X: 1280, Y: 1400})
	for range b.rows() {
		b.Type("1")
	}
	b.Key(ui.KeyDown, ui.KeyEnter)
	r := &b.Session.View.Result
	name := "120 mL were given before two people had checked who the blood was for"
	r.Pass, r.Reasons = false, []string{"Recording: too few points", name}
	r.Criticals = []bench.CriticalResult{{Name: name}}
	b.Idle()
	b.Idle()
	last, times := float32(0), 0
	for _, text := range []string{name, r.Reasons[0], words.Say("self.beside"), r.Self.Sum, r.Self.Rows[0].Text} {
		at := float32(-1)
		for _, m := range b.List.Marks {
			if m.Kind == ui.KindText && m.Label == text {
				at = m.Rect.Y
				if text == name {
					times++
				}
			}
		}
		if at <= last {
			t.Errorf("%q stands at %.0f, after what stands at %.0f", text, at, last)
		}
		last = at
	}
	if times != 1 {
		t.Errorf("the error is told %d times", times)
	}
	if m, err := b.mark(r.Parts[0].Name, ""); err != nil || m.Rect.Y < last {
		t.Errorf("the parts with their criteria do not come after the marks: %v %v", m.Rect, err)
	}
}

// What a lesson or a recorded attempt ends in asks for nothing.
func TestWhereNobodyIsAsked(t *testing.T) {
	b := graded(t, ui.Vec{X: 1280, Y: 800})
	s := &b.Session.View.Result.Self
	*s = bench.Self{}
	b.Idle()
	b.Idle()
	if b.HasText(words.Say("self.sum_none")) || b.HasText(words.Say("self.beside")) || !b.HasText("Passed") {
		t.Error("without marks in the file something is said of them")
	}
}
