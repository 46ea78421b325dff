//go:build devtell

package debrief

import (
	"flag"
	"fmt"
	"strings"
	"testing"
	"time"

	"rouleau/scenarios"
	"rouleau/sim"
)

var devCase = flag.String("case", "", "")
var devWho = flag.String("who", "", "")
var devSeed = flag.Uint64("devseed", 3, "")
var devMine = flag.Bool("mine", true, "")
var devTop = flag.Int("top", 12, "")
var devActs = flag.Bool("acts", false, "")

func devList(s string, all []string) []string {
	if s == "" {
		return all
	}
	return strings.Split(s, ",")
}

func TestDevTell(t *testing.T) {
	mine := map[string]bool{}
	for _, a := range telling {
		mine[a.name] = true
	}
	for _, name := range devList(*devCase, scenarios.Library()) {
		for _, who := range devList(*devWho, []string{"hasty", "inattentive", "overcautious", "rule-bound", "forgetful-of-paper", "idle"}) {
			rec := played(t, name, who, *devSeed)
			d := New(rec)
			t0 := time.Now()
			f := &finding{rec: rec, sc: rec.Scenario, c: &rec.Run.Case, acts: rec.Run.Actions, grade: &d.Own.Grade, good: d.Good}
			for i := range telling {
				f.aspect = &telling[i]
				if f.lost() {
					f.aspect.find(f)
				}
			}
			took := time.Since(t0)
			var costs []Cost
			for i := range d.Decisions {
				if !*devMine || mine[d.Decisions[i].Aspect] {
					costs = append(costs, d.Play(i))
				}
			}
			Rank(costs)
			fmt.Printf("== %s %s: %.1f of steady's %.1f, passed %v crit %v; %d decisions, %v\n", name, who, d.Own.Grade.Points, d.GoodOwn.Grade.Points, d.Own.Grade.Passed, d.Own.Critical, len(d.Decisions), took)
			for i, c := range costs {
				if i < *devTop || c.Gain < -slightest {
					fr, br := Freed(&d.Own, &c.With)
					fmt.Printf("   %+6.1f (%+.1f) %s/%s: %s %v %v\n", c.Gain, c.Points, c.Decision.Aspect, c.Decision.Fault, c.Decision.Title, fr, br)
					if c.Gain < -0.3 {
						for k := range d.Own.Grade.Criteria {
							a, b := &d.Own.Grade.Criteria[k], &c.With.Grade.Criteria[k]
							if a.Points-b.Points > 0.1 {
								fmt.Printf("          worse %s %.2f -> %.2f (value %.3g -> %.3g)\n", a.Measure, a.Points, b.Points, a.Value, b.Value)
							}
						}
					}
				}
			}
			for _, u := range d.Unexplained(costs) {
				if !*devMine || u.Part == "communicating" || u.Part == "recording" {
					fmt.Printf("     unexplained %s %.1f/%.0f value %.3g\n", u.Measure, u.Points, u.Of, u.Value)
				}
			}
			if *devActs {
				for i := range rec.Run.Actions {
					a := &rec.Run.Actions[i]
					fmt.Printf("%3d %s %s %s %g %d\n", i, clock(a.Tick), a.Do, a.On, a.Value, a.Item)
				}
				for i := range rec.Run.State.Team.Questions[:rec.Run.State.Team.QuestionCount] {
					fmt.Printf("%+v\n", rec.Run.State.Team.Questions[i])
				}
			}
		}
	}
	_ = sim.TicksPerSecond
}
