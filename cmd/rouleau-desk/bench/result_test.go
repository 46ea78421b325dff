// Tests of the result page: its words, the way from a criterion to its moment and back, the ways on.

package bench_test

import (
	"math"
	"strings"
	"testing"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/ui"
)

// graded is a case played to its end by the competent operator.
func graded(t *testing.T, size ui.Vec) *table {
	t.Helper()
	b := sit(t, size, false)
	b.begin()
	b.until(1e6)
	b.finish()
	b.Idle()
	b.Idle()
	return b
}

func TestTheVerdictNeverLooksBetterThanItIs(t *testing.T) {
	b := graded(t, ui.Vec{X: 1280, Y: 800})
	r := &b.Session.View.Result
	for _, k := range []struct {
		total float64
		pass  bool
		want  string
	}{{87, true, "Passed 87 of 100"}, {99.8, true, "Passed 99.8 of 100"}, {99.97, true, "Passed 99.9 of 100"}, {100, true, "Passed 100 of 100"},
		{69.96, false, "Not passed: 69.9 of 100"}} {
		r.Total, r.Pass = k.total, k.pass
		b.Idle()
		if !b.hasWords(k.want) {
			t.Errorf("%g points should read %q", k.total, k.want)
		}
	}
	b.Screen = func(c *ui.Core) { b.Desk.Frame(c, &b.Session.View) }
	b.Session.View.Guide.Done = true
	b.Idle()
	if !b.hasWords("Lesson done") || b.HasText("Not passed") {
		t.Error("a lesson passes no verdict")
	}
}

func TestResultFitsAtEverySize(t *testing.T) {
	for _, size := range allSizes {
		b := graded(t, size)
		b.faults(t, "grade")
		r := &b.Session.View.Result
		r.Criticals = append(r.Criticals, bench.CriticalResult{Name: "120 mL were given before two people had checked who the blood was for", Mended: true, Moment: bench.Moment{Is: true, S: 3000}})
		b.Session.View.Notice, b.Session.View.TakenOver, b.Session.View.Interrupted = "saved as picture.png", true, 2
		b.faults(t, "grade with a critical error")
		b.Click("See it at 0:50:00")
		b.faults(t, "timeline at a critical error")
		if !b.HasText("120 mL were given") {
			t.Error("the timeline does not tell of the critical error gone to")
		}
		b.Click("Save a copy")
		b.faults(t, "saving a copy")
		b.Key(ui.KeyEscape)
		b.Desk.Dialog = bench.ChartDialog
		b.faults(t, "choosing signals after the end")
		if _, err := b.mark(bench.TrueClotting.Name(), ""); err != nil {
			t.Error("after the end hidden truth is not offered")
		}
	}
}

func TestACriterionLeadsToItsMomentAndBack(t *testing.T) {
	b := graded(t, ui.Vec{X: 1280, Y: 800})
	var row *bench.CriterionResult
	for _, p := range b.Session.View.Result.Parts {
		for i := range p.Rows {
			if k := &p.Rows[i]; k.Moment.Is && k.Moment.S > 1500 && k.Moment.S < 4000 && row == nil {
				row = k
			}
		}
	}
	if row == nil {
		t.Fatal("no criterion has a moment")
	}
	label := words.Say("result.at", b.Core.Clock(math.Floor(row.Moment.S)))
	m := b.scrolledTo(t, label)
	offset := b.Core.ScrollOffset(ui.Name("result"))
	b.ClickAt(m.Shown.Center())
	b.Idle()
	b.Idle()
	if !b.HasText(row.Name) || !b.HasText(b.Core.Clock(math.Floor(row.Moment.S))) {
		t.Errorf("the timeline does not tell of %q", row.Name)
	}
	b.Move(ui.Vec{X: 2, Y: 2})
	b.Click(words.Say("result.back"))
	b.Idle()
	b.Idle()
	if got := b.Core.ScrollOffset(ui.Name("result")); math.Abs(float64(got-offset)) > 60 {
		t.Errorf("back at the grade it is scrolled to %g, was %g", got, offset)
	}
	if b.focusedLabel() != label {
		t.Errorf("the focus came back to %q, want %q", b.focusedLabel(), label)
	}
	b.Key(ui.KeyEnter) // and by keys alone
	b.Idle()
	b.Idle()
	if !b.HasText(row.Name) || !b.HasText(words.Say("result.back")) {
		t.Error("Enter on the criterion does not lead to its moment")
	}
	before := b.momentTold()
	b.Click(words.Say("result.later"))
	b.Idle()
	if after := b.momentTold(); after == before || after == "" {
		t.Errorf("Later tells of %q after %q", after, before)
	}
}

// momentTold is the line above the timeline.
func (b *table) momentTold() string {
	for _, m := range b.List.Marks {
		if m.Kind == ui.KindText && (m.ID == ui.Name("moment") || strings.Contains(m.Label, ": ")) && m.Rect.Y > 100 && m.Rect.Y < 170 {
			return m.Label
		}
	}
	return ""
}

func TestTheWaysOnFromAResult(t *testing.T) {
	b := graded(t, ui.Vec{X: 1024, Y: 640})
	var asked []bench.Act
	v := &b.Session.View
	b.Screen = func(c *ui.Core) { asked = append(asked, b.Desk.Frame(c, v)...) }
	for label, want := range map[string]bench.Verb{"result.again": bench.Again, "result.again_new": bench.AgainNewSeed, "result.home": bench.GoHome, "result.leave": bench.Leave} {
		asked = asked[:0]
		if err := b.Click(words.Say(label)); err != nil {
			t.Fatal(err)
		}
		if len(asked) != 1 || asked[0].Do != want {
			t.Errorf("%s asks for %v", words.Say(label), asked)
		}
	}
	asked = asked[:0]
	b.Click(words.Say("result.save_as"))
	b.Idle()
	b.Type("copy.json")
	b.Key(ui.KeyEnter)
	if len(asked) != 1 || asked[0].Do != bench.SaveCopy || asked[0].Text != "copy.json" {
		t.Errorf("saving a copy asks for %v", asked)
	}
	b.Idle()
	if b.HasText(words.Say("result.save_title")) {
		t.Error("the dialog stays open")
	}
}

// The result and the large charts in a longer language.
func TestTheResultFitsInALongerLanguage(t *testing.T) {
	speakLong(t)
	for _, size := range []ui.Vec{{X: 900, Y: 600}, {X: 1024, Y: 640}, {X: 900, Y: 1200}} {
		b := graded(t, size)
		b.Session.View.Result.SavedAs = "some/folder/attempt.json"
		b.faults(t, "grade, long words")
		b.Desk.Dialog = bench.ChartDialog
		b.faults(t, "choosing, long words")
		b.Desk.Dialog = bench.NoDialog
		b.Click(words.Say("result.tab_timeline"))
		b.faults(t, "timeline, long words")
		b.Click(words.Say("result.later"))
		b.Click(words.Say("result.save_as"))
		b.faults(t, "saving a copy, long words")
		b = sit(t, size, false)
		b.begin()
		b.until(1800)
		b.Key(ui.K('C').Key)
		b.faults(t, "large charts, long words")
	}
}
