// Every case of the library, played in a hurry, is opened from its file in the smallest window and debriefed there.

package app_test

import (
	"math"
	"path/filepath"
	"strings"
	"testing"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/line"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau-desk/ui/uitest"
	"rouleau/scenarios"
)

// smallest is the least size of the window.
var smallest = ui.Vec{X: 900, Y: 600}

func TestEveryCaseOfTheLibraryIsDebriefedInTheWindow(t *testing.T) {
	w := openWith(t, line.Asked{}, 0)
	w.click("Understood")
	w.Size = smallest
	for _, name := range scenarios.Library() {
		w.drop("a.json", hurried(t, filepath.Join(t.TempDir(), "a.json"), name, 1e9))
		told := w.debrief()
		v := &w.App.Session().View
		if told == nil || len(told.Heed) > 0 || v.Recorded.Heed != "" || v.Recorded.Stale != "" {
			t.Errorf("%s: %s %+v", name, v.Debrief.Why, told)
			continue
		}
		w.tells(name, told, v)
		for _, key := range []string{"result.tab_grade", "result.tab_timeline", "desk_debrief.tab_costs", "desk_debrief.tab_good", "desk_debrief.tab_questions"} {
			w.click(words.Say(key))
			w.Idle()
			if f := uitest.Faults(w.List); len(f) > 0 {
				t.Errorf("%s, %s: %v", name, words.Say(key), f)
			}
		}
		w.click(words.Say("desk_debrief.tab_costs"))
		w.want(told.Costs[0].Title)
		w.Core.Focus(0)
		w.Key(ui.KeyHome, ui.KeyEnter)
		w.until(func() bool { return told.Costs[0].Courses != nil })
		w.want(words.Line("desk_debrief.titled", told.Costs[0].Points, told.Costs[0].Title))
		w.Key(ui.KeyEscape)
		w.home()
	}
}

// tells checks what holds for the debrief of any case that somebody in a hurry has played.
func (w *window) tells(name string, told *bench.Told, v *bench.View) {
	w.t.Helper()
	end, of := v.Recorded.EndS, 0.0
	for i := range v.Result.Parts {
		of += v.Result.Parts[i].Of
	}
	if scaled := math.Abs(of-100) > 1e-9; scaled != (told.Scaled != "") || scaled != (v.Result.Scaled != "") {
		w.t.Errorf("%s grades %g points, and of their scale says %q and %q", name, of, told.Scaled, v.Result.Scaled)
	}
	if k := &told.Costs[0]; k.Group != bench.CostGained || k.Points == "0" && k.Changes == "" {
		w.t.Errorf("%s: haste cost nothing: %+v", name, k)
	}
	at := func(what string, m bench.Moment) {
		if m.Is && (m.S < 0 || m.S > end) {
			w.t.Errorf("%s: %s is at %g s of %g", name, what, m.S, end)
		}
	}
	for i := range told.Costs {
		k := &told.Costs[i]
		at(k.Title, k.At)
		if k.Title == "" || strings.Contains(k.Title+k.Changes+k.Bears, "%!") || strings.Contains(k.Title+k.Changes+k.Bears, "‹") {
			w.t.Errorf("%s: %+v", name, k)
		}
	}
	for _, k := range v.Result.Criticals {
		if at(k.Name, k.Moment); !k.Moment.Is {
			w.t.Errorf("%s: %q has no moment", name, k.Name)
		}
	}
	if n := len(told.Questions); n < 5 || n > 8 {
		w.t.Errorf("%s: %d questions", name, n)
	}
	for _, q := range told.Questions {
		at(q.Text, q.At)
	}
}
