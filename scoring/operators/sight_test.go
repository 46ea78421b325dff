package operators

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"reflect"
	"slices"
	"strings"
	"testing"

	"rouleau/scenarios"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// Operators see what a trainee sees: no file here but the one that reads the sheet may name the truth behind it.
func TestNoOperatorCanNameTheTruth(t *testing.T) {
	hidden := []string{"State", "Case", "Start", "Step", "Apply", "View", "Before", "PatientSpec", "Phase", "BenchFaults", "EventSpec", "ContaminantSpec", "Conduct", "TallyTruth"}
	parsed, err := parser.ParseDir(token.NewFileSet(), ".", func(i fs.FileInfo) bool { return !strings.HasSuffix(i.Name(), "_test.go") }, 0)
	if err != nil {
		t.Fatal(err)
	}
	files := 0
	for name, file := range parsed["operators"].Files {
		files++
		ast.Inspect(file, func(n ast.Node) bool {
			s, ok := n.(*ast.SelectorExpr)
			if !ok {
				return true
			}
			from, ok := s.X.(*ast.Ident)
			if !ok {
				return true
			}
			switch {
			case from.Name == "sim" && slices.Contains(hidden, s.Sel.Name) && name != "sheet.go":
				t.Errorf("%s names sim.%s", name, s.Sel.Name)
			case from.Name == "play" && s.Sel.Name != "Actor":
				t.Errorf("%s names play.%s", name, s.Sel.Name)
			case from.Name == "scenarios" && s.Sel.Name == "Scenario" && name != "sheet.go":
				t.Errorf("%s names scenarios.Scenario", name)
			}
			return true
		})
	}
	if files < 10 {
		t.Errorf("only %d files were read", files)
	}
}

// The sheet says nothing of what only shows in the course of a case: bleeding, what the detector makes of it, what the patient
// is like inside, when something happens, and what is loose on the bench.
func TestTheSheetHidesTheCourse(t *testing.T) {
	for _, name := range scenarios.Library() {
		sc, err := scenarios.Open(name)
		if err != nil {
			t.Fatal(err)
		}
		c := sc.Case(1, false)
		want := SheetOf(sc, &c)
		p := &c.Patient
		p.Hct, p.PlasmaProteinGL, p.PlateletsG9L, p.FibrinogenGL, p.ESRMMPerH = p.Hct/2, 40, 50, 1, 80
		p.CalciumMmolL, p.PotassiumMmolL, p.HeartRate, p.MeanPressureMmHg, p.PatienceTicks = 1, 6, 120, 50, 1
		c.Faults.TouchChance, c.Faults.LabTicks = 1, 1
		for i := range c.Phases {
			c.Phases[i].BleedMLMin, c.Phases[i].SwabShare, c.Phases[i].DrapeShare, c.Phases[i].IrrigationMLMin = 99, 0.9, 0.05, 77
		}
		for i := range c.Events {
			c.Events[i].At += 12345
		}
		for i := range c.Contaminants {
			c.Contaminants[i].BoundShare = 0.99
		}
		if got := SheetOf(sc, &c); !reflect.DeepEqual(got, want) {
			t.Errorf("%s: the sheet changes with what it cannot say:\n%+v\n%+v", name, got, want)
		}
	}
}

// blindfold hands on what is seen and sees to it that nothing else is asked of an operator.
type blindfold struct {
	inner play.Actor
	saw   *[]sim.Seen
}

func (b blindfold) Act(v *sim.Seen, do func(sim.Action) sim.Reason) {
	*b.saw = append(*b.saw, *v)
	b.inner.Act(v, do)
}

// Shown the same sights and given the same answers, an operator does the same, whatever case lies behind them.
func TestTheSameSightsMakeTheSameActs(t *testing.T) {
	var saw []sim.Seen
	c := spine()
	first := play.New(c, 5)
	type answered struct {
		tick int64
		act  sim.Action
		why  sim.Reason
	}
	var acts []answered
	inner := NewSteady(sheet(c))
	first.ToEnd(blindfold{actorFunc(func(v *sim.Seen, do func(sim.Action) sim.Reason) {
		inner.Act(v, func(a sim.Action) sim.Reason {
			why := do(a)
			acts = append(acts, answered{v.Tick, a, why})
			return why
		})
	}), &saw})
	again, next := NewSteady(sheet(c)), 0
	for i := range saw {
		again.Act(&saw[i], func(a sim.Action) sim.Reason {
			if next >= len(acts) || acts[next].tick != saw[i].Tick || acts[next].act != a {
				t.Fatalf("at tick %d another act, %+v", saw[i].Tick, a)
			}
			next++
			return acts[next-1].why
		})
	}
	if next != len(acts) || next < 50 {
		t.Errorf("%d of %d acts", next, len(acts))
	}
}

// actorFunc is a function that acts.
type actorFunc func(v *sim.Seen, do func(sim.Action) sim.Reason)

func (f actorFunc) Act(v *sim.Seen, do func(sim.Action) sim.Reason) { f(v, do) }
