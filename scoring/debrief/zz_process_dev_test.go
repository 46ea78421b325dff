//go:build devprocess

package debrief

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"rouleau/scenarios"
	"rouleau/sim"
)

var devCase = flag.String("case", "", "")
var devWho = flag.String("who", "", "")
var devActs = flag.Bool("acts", false, "")
var devSeed = flag.Uint64("devseed", 3, "")
var devParts = flag.Bool("mine", true, "")
var devTop = flag.Int("top", 12, "")
var devAspect = flag.String("aspect", "", "")

func devList(s string, all []string) []string {
	if s == "" {
		return all
	}
	return strings.Split(s, ",")
}

func actLine(rec *Record, i int, a *sim.Action) string {
	v := &rec.moments[i].seen
	return fmt.Sprintf("%3d %s %s %s %g | res %.0f clear %.0f mode %d det %.2f held %.0f washed %.0f bags %d hands %v waste %.0f", i, clock(a.Tick), a.Do, a.On, a.Value, v.ReservoirML, v.ClearML, v.Pump.Mode, v.Pump.Detector, v.Pump.HeldML, v.Pump.WashedML, v.BagsUsed, v.HandsBusy, v.WasteML)
}

func TestDevLost(t *testing.T) {
	for _, name := range devList(*devCase, scenarios.Library()) {
		for _, who := range devList(*devWho, []string{"hasty", "inattentive", "overcautious", "rule-bound", "forgetful-of-paper"}) {
			rec := played(t, name, who, *devSeed)
			d := New(rec)
			g := &d.Own.Grade
			fmt.Fprintf(os.Stdout, "== %s %s: %.1f passed %v crit %v cycles %d\n", name, who, g.Points, g.Passed, d.Own.Critical, rec.Run.State.CycleUsed)
			for _, c := range g.Criteria {
				if c.Points < c.Of-0.05 && (!*devParts || c.Part == "processing" || c.Part == "returning") {
					fmt.Fprintf(os.Stdout, "     %-30s %.1f/%.0f value %.3g measured %v target %s\n", c.Measure, c.Points, c.Of, c.Value, c.Measured, c.Target)
				}
			}
			if *devActs {
				for i := range rec.Run.Actions {
					fmt.Println(actLine(rec, i, &rec.Run.Actions[i]))
				}
				for i := range rec.Run.State.Cycles[:rec.Run.State.CycleUsed] {
					c := &rec.Run.State.Cycles[i]
					fmt.Printf("cycle %d fill %s stop %s wash %s done %s bed %.2f clear %.2f wash %.0f bag %d prod %.0f hct %.2f\n", i, clock(c.FillTick), clock(c.StopTick), clock(c.WashTick), clock(c.DoneTick), c.BedAtStop, c.ClearShare, c.WashML, c.Bag, c.ProductML, c.ProductCellsML/max(1, c.ProductML))
				}
			}
		}
	}
}

func TestDevRank(t *testing.T) {
	for _, name := range devList(*devCase, scenarios.Library()) {
		for _, who := range devList(*devWho, []string{"hasty", "inattentive", "overcautious", "rule-bound", "forgetful-of-paper", "idle"}) {
			rec := played(t, name, who, *devSeed)
			d := New(rec)
			var costs []Cost
			for i := range d.Decisions {
				if *devAspect == "" || strings.Contains(*devAspect, d.Decisions[i].Aspect) {
					costs = append(costs, d.Play(i))
				}
			}
			Rank(costs)
			fmt.Printf("== %s %s: %.1f of steady's %.1f, passed %v crit %v; %d decisions\n", name, who, d.Own.Grade.Points, d.GoodOwn.Grade.Points, d.Own.Grade.Passed, d.Own.Critical, len(d.Decisions))
			for i, c := range costs {
				if i < *devTop || c.Gain < -slightest {
					fr, br := Freed(&d.Own, &c.With)
					fmt.Printf("   %+6.1f (%+.1f) %s/%s: %s %v %v\n", c.Gain, c.Points, c.Decision.Aspect, c.Decision.Fault, c.Decision.Title, fr, br)
					if c.Gain < -0.5 {
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
				if !*devParts || u.Part == "processing" || u.Part == "returning" {
					fmt.Printf("     unexplained %s %.1f/%.0f value %.3g\n", u.Measure, u.Points, u.Of, u.Value)
				}
			}
		}
	}
}
