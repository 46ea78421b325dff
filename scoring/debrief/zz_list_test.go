package debrief

import (
	"flag"
	"os"
	"strings"
	"testing"
	"time"

	"rouleau/scenarios"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

var zcase = flag.String("zcase", "", "")
var zwho = flag.String("zwho", "hasty,inattentive,overcautious,rule-bound,forgetful-of-paper,idle", "")
var zall = flag.Bool("zall", false, "all parts")
var zplay = flag.Bool("zplay", true, "")
var zseed = flag.Uint64("zseed", 3, "")

var _ = os.Args

func TestZList(t *testing.T) {
	for _, name := range scenarios.Library() {
		if *zcase != "" && !strings.Contains(name, *zcase) {
			continue
		}
		for _, who := range strings.Split(*zwho, ",") {
			var rec *Record
			if who == "idle" {
				sc := opened(t, name)
				run := play.New(sc.Case(*zseed, true), *zseed)
				run.ToEnd(operators.Idle{})
				rec = OfRun(sc, run, true)
			} else {
				rec = played(t, name, who, *zseed)
			}
			t0 := time.Now()
			good := rec.Good()
			_ = good
			t1 := time.Now()
			d := New(rec)
			_ = t1
			dt := time.Since(t1)
			t.Logf("=== %s by %s: %.1f points, critical %v; %d decisions; good %v new %v; end %s", name, who, d.Own.Grade.Points, d.Own.Critical, len(d.Decisions), t1.Sub(t0), dt, clock(rec.Run.State.Tick))
			var costs []Cost
			if *zplay {
				for i := range d.Decisions {
					costs = append(costs, d.Play(i))
				}
				Rank(costs)
			}
			mine := map[string]bool{}
			for _, a := range append(append([]aspect{}, preparing...), collecting...) {
				mine[a.name] = true
			}
			for i, c := range costs {
				if *zall || mine[c.Decision.Aspect] {
					fr, br := Freed(&d.Own, &c.With)
					t.Logf("  %2d %+6.2f pts %+7.1f [%s/%s] %s -- %v %v", i+1, c.Points, c.Gain, c.Decision.Aspect, c.Decision.Fault, c.Decision.Title, fr, br)
				}
			}
			for _, cg := range d.Own.Grade.Criteria {
				if cg.Points < cg.Of-0.05 && (cg.Part == "deciding" || cg.Part == "collecting" || *zall) {
					best, by := 0.0, ""
					for _, c := range costs {
						for _, x := range c.With.Grade.Criteria {
							if x.Measure == cg.Measure && x.Part == cg.Part && x.Points-cg.Points > best {
								best, by = x.Points-cg.Points, c.Decision.Aspect
							}
						}
					}
					mark := ""
					if best <= slightest {
						mark = "   <<<<<< UNEXPLAINED"
					}
					t.Logf("     lost %.2f of %.1f %s (%.3f); best %.2f by %s%s", cg.Of-cg.Points, cg.Of, cg.Measure, cg.Value, best, by, mark)
				}
			}
		}
	}
}

var zacts = flag.String("zacts", "", "from-to minutes")

func TestZActs(t *testing.T) {
	rec := played(t, *zcase, *zwho, *zseed)
	for i, a := range rec.Run.Actions {
		m := &rec.moments[i].seen
		t.Logf("%3d %s %-14s %-16s %6.1f | res %4.0f pool %3.0f brisk %3.0f drops %3.0f vac %3.0f primed %3.0f busy %v route %d mode %d agent %v swabs %.0f", i, clock(a.Tick), a.Do, a.On, a.Value, m.ReservoirML, m.PoolML, m.BriskMLMin, m.DropsMin, m.VacuumMmHg, m.PrimedML, m.HandsBusy, m.Route, m.Pump.Mode, m.AgentSaid, m.SwabsML)
	}
	_ = sim.Fill
}
