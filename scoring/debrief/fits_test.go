package debrief

import (
	"flag"
	"os"
	"strings"
	"testing"
)

// Whoever played, and whatever they did otherwise than steady: putting one decision right must lead to a course that their later acts
// fit. Where none does, the decision is told among those that could go either way.

var everyCase = flag.Bool("every-case", false, "put the decisions right in every case of the library played by every kind of person, not in a few")

// mostMisfits is the share of decisions that may be told so because the later acts do not fit.
const mostMisfits = 0.02

func TestLaterActsFit(t *testing.T) {
	runs := map[string][]string{"one-trouble-after-another": {"overcautious"}, "calcium-in-the-irrigation": {"hasty"}, "heparin-pump-and-protamine": {"hasty"},
		"bench-left-by-a-colleague": {"rule-bound"}}
	if *everyCase {
		clear(runs)
		files, err := os.ReadDir("../../scenarios/library")
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range files {
			runs[strings.TrimSuffix(f.Name(), ".yaml")] = []string{"hasty", "inattentive", "overcautious", "rule-bound"}
		}
	}
	var all tally
	t.Run("runs", func(t *testing.T) {
		for name, people := range runs {
			for _, who := range people {
				t.Run(name+" by "+who, func(t *testing.T) {
					t.Parallel()
					d := New(played(t, name, who, 1))
					tried, misfits := 0, 0
					for i := range d.Decisions {
						c := d.Play(i)
						tried++
						if c.Mattered() && d.misfits(&c.With) {
							misfits++
							t.Logf("%s: %.0f mL given instead of %.0f mL, %v instead of %v", c.Decision.Title, c.With.GivenML, d.Own.GivenML, c.With.Critical, d.Own.Critical)
						}
					}
					all.lock.Lock()
					defer all.lock.Unlock()
					all.tried, all.idle = all.tried+tried, all.idle+misfits
				})
			}
		}
	})
	t.Logf("%d decisions, to %d of which the later acts do not fit", all.tried, all.idle)
	if all.tried < 40 || float64(all.idle) > float64(mostMisfits*float64(all.tried)) {
		t.Errorf("%d of %d: too many", all.idle, all.tried)
	}
}
