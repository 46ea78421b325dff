package attempt

import (
	"fmt"
	"strings"
	"testing"

	"rouleau/sim"
)

// Everything that somebody could change in a file is found, each by what it changes: with the seal made anew, so that it is
// the replay that finds it.

func tampered(t *testing.T, change func(a *Attempt)) *Report {
	t.Helper()
	a := read(t, file(t))
	change(a)
	a.Seal = a.seal()
	return replayed(t, read(t, a.Encode()))
}

// nth is the n-th act of a kind.
func nth(t *testing.T, a *Attempt, do sim.Verb, n int) *sim.Action {
	t.Helper()
	for i := range a.Actions {
		if a.Actions[i].Do == do {
			if n == 0 {
				return &a.Actions[i]
			}
			n--
		}
	}
	t.Fatalf("there is no such act: %s", do)
	return nil
}

func TestTamperedActs(t *testing.T) {
	for _, c := range []struct {
		name     string
		change   func(a *Attempt) (tick int64)
		quantity string
	}{
		{"a drip rate", func(a *Attempt) int64 {
			x := nth(t, a, sim.SetDrip, 2)
			x.Value++
			return x.Tick
		}, "drip_ml"},
		{"a drip rate in its last bit", func(a *Attempt) int64 {
			x := nth(t, a, sim.SetDrip, 0)
			x.Value += x.Value * 2e-15
			return x.Tick
		}, ""},
		{"the tick of a filling", func(a *Attempt) int64 {
			x := nth(t, a, sim.Fill, 0)
			x.Tick++
			return x.Tick - 1
		}, "bowl_cells_ml"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var tick int64
			r := tampered(t, func(a *Attempt) { tick = c.change(a) })
			p := r.Parting
			if r.Same() || p == nil {
				t.Fatal("not found")
			}
			if p.After > tick || p.By < tick || p.By-tick > hashEvery {
				t.Errorf("parts after %d and by %d, the act is at %d", p.After, p.By, tick)
			}
			if c.quantity != "" && !strings.Contains(fmt.Sprint(p.Quantities), c.quantity) {
				t.Errorf("%v does not name %s", p.Quantities, c.quantity)
			}
			if !r.Sealed {
				t.Error("the seal was made anew and is said to be broken")
			}
		})
	}
}

func TestRefusedActIsNamed(t *testing.T) {
	var tick int64
	r := tampered(t, func(a *Attempt) {
		x := nth(t, a, sim.Hang, 0)
		x.On, tick = sim.PumpPart, x.Tick
	})
	if r.Same() || r.Refused == nil || r.Refused.Tick != tick || r.Refused.Act != "hang pump" || r.Refused.Reason != "not_a_hook" {
		t.Errorf("%+v, want the act at %d", r.Refused, tick)
	}
}

func TestTamperedSeedModeAndLength(t *testing.T) {
	if r := tampered(t, func(a *Attempt) { a.Seed++ }); r.Same() || r.Parting == nil {
		t.Error("another seed was not found")
	}
	if r := tampered(t, func(a *Attempt) { a.Ended = false }); r.Same() || !r.EndedNow {
		t.Error("an ended case that is said to go on was not found")
	}
	r := tampered(t, func(a *Attempt) {
		a.LengthTicks++
		a.Checkpoints[len(a.Checkpoints)-1].Tick++
	})
	if r.Same() || r.LengthRecorded != r.LengthNow+1 {
		t.Errorf("another length was not found: %d, %d", r.LengthRecorded, r.LengthNow)
	}
}

func TestTamperedCheckpoints(t *testing.T) {
	r := tampered(t, func(a *Attempt) {
		x := &a.Checkpoints[100].Values[12]
		*x += *x * 2e-16
	})
	p := r.Parting
	if r.Same() || p == nil || p.After != 99*quantityEvery || p.By != 100*quantityEvery || len(p.Quantities) != 1 || p.Quantities[0].Name != "reservoir_ml" {
		t.Errorf("a quantity: %+v", p)
	}
	r = tampered(t, func(a *Attempt) { a.Checkpoints[60].Hash = "0123456789abcdef" })
	p = r.Parting
	if r.Same() || p == nil || p.By != 10*hashEvery || len(p.Quantities) != 0 || p.Hash == nil || p.Hash.Recorded != "0123456789abcdef" {
		t.Errorf("a hash: %+v", p)
	}
	r = tampered(t, func(a *Attempt) { a.Quantities[3] = "pulse" })
	if r.Same() || r.Parting == nil || r.Parting.Quantities[0].Name != "pulse" {
		t.Error("a quantity of another name was not found")
	}
}

func TestTamperedGrade(t *testing.T) {
	r := tampered(t, func(a *Attempt) {
		g := &a.Grade
		g.Points += 0.1
		g.Passed = !g.Passed
		g.Parts[2].Points++
		g.Criteria[1].Value += 1e-12
		g.Criteria = g.Criteria[:len(g.Criteria)-1]
		g.Critical = append(g.Critical, Critical{Name: "clot_given"})
	})
	for _, name := range []string{"{points ", "{passed ", "{parts[2].points ", "{criteria[1] ", "{criteria, how many ", "{critical, how many "} {
		if !strings.Contains(fmt.Sprint(r.Grade), name) {
			t.Errorf("%s is not among %v", name, r.Grade)
		}
	}
	if r.Same() || r.Parting != nil {
		t.Errorf("same %v, parting %+v: the grade alone was changed", r.Same(), r.Parting)
	}
	if r := tampered(t, func(a *Attempt) { a.Grade.Criteria[1].Points += 1e-12 }); r.Same() || len(r.Grade) != 1 {
		t.Errorf("one value alone: %v", r.Grade)
	}
}

// What has no effect on state and grade is covered by the seal.
func TestBrokenSeal(t *testing.T) {
	for name, change := range map[string]func(a *Attempt){
		"operator": func(a *Attempt) { a.Operator = "somebody else" },
		"when":     func(a *Attempt) { a.When = "2031-05-15T09:00:00Z" },
		"a reason": func(a *Attempt) { a.Grade.Criteria[0].Reason = "well done" },
	} {
		a := read(t, file(t))
		if change(a); read(t, a.Encode()).Sealed() {
			t.Errorf("%s: not found", name)
		}
	}
	a := read(t, file(t))
	nth(t, a, sim.Note, 0).Text = "never written"
	r := replayed(t, read(t, a.Encode()))
	if r.Same() || r.Sealed || r.Parting != nil || len(r.Grade) > 0 {
		t.Errorf("a note: sealed %v, parting %+v, grade %v", r.Sealed, r.Parting, r.Grade)
	}
}

// A newer program may word a reason in another way: told, and not held against the record.
func TestOtherWordingIsTold(t *testing.T) {
	r := tampered(t, func(a *Attempt) { a.Grade.Criteria[0].Reason = "as an older program worded it" })
	if !r.Same() || len(r.Wording) != 1 || r.Wording[0].Recorded != "as an older program worded it" {
		t.Errorf("same %v, wording %v", r.Same(), r.Wording)
	}
}

func TestOtherModelIsTold(t *testing.T) {
	r := tampered(t, func(a *Attempt) { a.Model = "0" })
	if r.ModelRecorded != "0" || r.ModelNow != sim.ModelVersion {
		t.Errorf("%+v", r)
	}
}
