package chart

import (
	"bytes"
	"math"
	"slices"
	"testing"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// with is the same run with one of its acts left out or changed, as far as the others can be done.
func with(run *play.Run, edit func(a *sim.Action) bool) *play.Run {
	var acts []sim.Action
	for _, a := range run.Actions {
		if edit(&a) {
			acts = append(acts, a)
		}
	}
	other := play.New(run.Case, run.Seed)
	other.Again(acts, run.Case.LastTick, nil)
	return other
}

func TestBesideShowsWhatDiffers(t *testing.T) {
	_, steady := played(t, "steady-oozing-spine", "steady")
	// without the drip there is clot, and nothing comes of it
	part := math.NaN()
	dry := &Course{Name: "no drip", Run: with(steady.Run, func(a *sim.Action) bool {
		if a.Do == sim.SetDrip && math.IsNaN(part) {
			part = sim.Seconds(a.Tick)
		}
		return a.Do != sim.SetDrip
	})}
	both := &Course{Name: "steady", Run: steady.Run}
	ch := Beside("no anticoagulant", dry, both, part)
	drawing := drawn(ch)
	if !bytes.Equal(drawing, drawn(Beside("no anticoagulant", dry, both, part))) {
		t.Error("the same courses give another drawing")
	}
	have := map[string]int{}
	for _, s := range texts(t, drawing) {
		have[s]++
	}
	for _, want := range []string{"no drip", "steady", "clot, mL", ui.New(ui.Paper()).Num(last(dry.Run.Trace).FilterClotML+last(dry.Run.Trace).ReservoirClotML, 1, "no drip")} {
		if have[want] == 0 {
			t.Errorf("the drawing does not say %q; it says %v", want, have)
		}
	}
	if s := words.Say("course.bleeding"); slices.ContainsFunc(ch.Lanes, func(l Lane) bool { return l.Name == s }) {
		t.Error("bleeding is drawn, though it hardly differs")
	}
	if len(ch.Lanes) > mostLanes || len(ch.Lanes) < 2 || !ch.Differ() {
		t.Errorf("%d lanes, differ: %t", len(ch.Lanes), ch.Differ())
	}
	onSheet(t, "beside", ch.List(), sheetW/2, sheetH/2)
	for _, lane := range ch.Lanes {
		if lane.Curves[0].Look == lane.Curves[1].Look {
			t.Errorf("both courses look alike in %q", lane.Name)
		}
	}
}

func last(tr []play.Sample) *play.Sample { return &tr[len(tr)-1] }

func TestEqualCoursesDifferInNothing(t *testing.T) {
	_, co := played(t, "steady-oozing-spine", "steady")
	ch := Beside("the same", co, &Course{Name: "again", Run: co.Run}, math.NaN())
	if len(ch.Rows) > 0 || len(ch.Lanes) != 1 || ch.Lanes[0].Name != words.Say("course.hb") {
		t.Errorf("%d rows, lanes %v", len(ch.Rows), ch.Lanes)
	}
	if ch.Differ() {
		t.Error("an eye could tell a course from itself")
	}
	texts(t, drawn(ch))
	for _, op := range ch.List().Ops {
		if op.Str == words.Say("course.parts", "0:00:00") {
			t.Error("courses that never part have a moment where they do")
		}
	}
}

// Whoever worked otherwise in everything differs in everything: still only some lanes are drawn, on a part of a page.
func TestComparisonsStaySmall(t *testing.T) {
	for _, name := range []string{"steady-oozing-spine", "pelvis-loss-over-hours", "salvage-declined"} {
		_, one := played(t, name, "inattentive")
		_, other := played(t, name, "steady")
		one.Name = "as played"
		for _, part := range []float64{math.NaN(), -5, 0, 600, 1e9} {
			ch := Beside(name, one, other, part)
			l := ch.List()
			onSheet(t, name, l, sheetW/2, sheetH/2)
			if l.Size.Y > 360 {
				t.Errorf("%s: it is %g units high", name, l.Size.Y)
			}
		}
	}
}

func TestAnEyeTellsWhatDiffers(t *testing.T) {
	lane := &Lane{Most: 100}
	flat := slices.Repeat([]float64{50}, 600)
	for _, c := range []struct {
		name    string
		other   []float64
		differs bool
	}{
		{"the same", flat, false},
		{"a trifle", slices.Repeat([]float64{52}, 600), false},
		{"much", slices.Repeat([]float64{80}, 600), true},
		{"much for a moment", slices.Concat(slices.Repeat([]float64{50}, 570), slices.Repeat([]float64{90}, 30)), false},
		{"much where there is nothing", slices.Repeat([]float64{math.NaN()}, 600), false},
		{"much after the end", slices.Concat(flat, slices.Repeat([]float64{90}, 600)), false},
		{"nothing", nil, false},
	} {
		if got := apartness(flat, c.other, lane); (got > 0) != c.differs || math.IsNaN(got) {
			t.Errorf("%s: %g", c.name, got)
		}
	}
}

// Two courses differ where their curves lie apart, where one has a value and the other none, or where one goes on well beyond the
// other's end; a line's breadth is no difference.
func TestWhenTwoCoursesDiffer(t *testing.T) {
	flat := func(n int, v float64) []float64 { return slices.Repeat([]float64{v}, n) }
	for name, k := range map[string]struct {
		a, b []float64
		want bool
	}{
		"alike":            {flat(600, 5), flat(600, 5), false},
		"a line's breadth": {flat(600, 5), flat(600, 5.1), false},
		"apart":            {flat(600, 5), append(flat(599, 5), 5.3), true},
		"none":             {flat(600, 5), append(flat(599, 5), math.NaN()), true},
		"a little longer":  {flat(600, 5), flat(650, 5), false},
		"much longer":      {flat(700, 5), flat(600, 5), true},
	} {
		ch := &Chart{Lanes: []Lane{{Most: 10, Curves: []Curve{{Values: k.a}, {Values: k.b}}}}}
		if ch.Differ() != k.want {
			t.Errorf("%s: %t", name, ch.Differ())
		}
	}
	if !(&Chart{Rows: []Row{{}}}).Differ() {
		t.Error("rows stand in a chart only where they differ")
	}
}

// What a text tells of stands on its chart, however short it lasts: one bowl more, a unit of donor blood.
func TestBowlsAndDonorUnitsAreDrawnWhereTheyDiffer(t *testing.T) {
	_, co := played(t, "steady-oozing-spine", "steady")
	run := *co.Run
	run.State.CycleUsed--
	run.State.Patient.DonorUnits++
	ch := Beside("one bowl and one unit", co, &Course{Name: "other", Run: &run}, math.NaN())
	if len(ch.Rows) != 2 || !slices.ContainsFunc(ch.Lanes, func(l Lane) bool { return l.Name == words.Say("course.donor") }) {
		t.Errorf("%d rows, lanes %v", len(ch.Rows), ch.Lanes)
	}
}

// Page and window draw the drip on one scale; what goes on above it has a sign.
func TestTheDripHasOneScale(t *testing.T) {
	for _, k := range []struct{ value, most float64 }{{12, 40}, {40, 40}, {41, 50}, {51, 100}, {700, 100}, {math.NaN(), 40}} {
		if got := dripLane("course.per_100", []float64{10}, []float64{k.value}).Most; got != k.most {
			t.Errorf("%g: the scale ends at %g, want %g", k.value, got, k.most)
		}
	}
	lane := Lane{Name: "drip", Most: 100, Curves: []Curve{{Name: "drip", Values: []float64{10, 120, 130, 20, 20, 101}}}}
	signs := 0
	for _, op := range (&Chart{EndS: 6, Lanes: []Lane{lane}}).List().Ops {
		if op.Kind == ui.OpPolygon {
			signs++
		}
	}
	if signs != 2 {
		t.Errorf("%d signs for two stretches above the scale", signs)
	}
}
