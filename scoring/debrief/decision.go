package debrief

import (
	"slices"

	"rouleau/assets/words"
	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/sim"
)

// Finding the decisions that may have mattered: acts done, late, wrong or left out. A finder only proposes; what a decision cost
// is found by playing it.

// Fault is what was the matter with a decision.
type Fault uint8

// The faults.
const (
	LeftOut  Fault = iota // what should have been done was not
	Late                  // it was done too late, or too early
	Wrong                 // it was done with another value, or on another part
	Needless              // it should not have been done
)

var faultNames = [...]string{"left_out", "late", "wrong", "needless"}

// String is the name used in files.
func (f Fault) String() string { return faultNames[f] }

// Decision is one decision and how it would be put right.
type Decision struct {
	Aspect   string // which kind of decision: the same for every trainee, so that a group can be compared
	Fault    Fault
	Title    string   // the decision put right, in words: "opening the drip at 12:40 instead of 17:05"
	Tick     int64    // when it should have been taken
	Done     int64    // when it was taken, -1 where it was left out
	Measures []string // criteria that it bears on
	Edit     Edit
	Part     bool // it is one of several of its kind, which another decision puts right together
}

// aspect is one kind of decision with its finder.
type aspect struct {
	name     string
	measures []string // criteria that it bears on; where none of them, and nothing critical, was lost it is not looked for
	critical []string // names of what points never make up for that it can bring about
	quiet    bool     // it can cost cells without costing a point
	find     func(f *finding) []Decision
}

// aspects are all kinds of decisions, in the order of the work.
var aspects = slices.Concat(preparing, collecting, processing, returning, telling)

// finding is what finders look at.
type finding struct {
	rec    *Record
	sc     *scenarios.Scenario
	c      *sim.Case
	acts   []sim.Action
	grade  *scoring.Grade
	good   *Record // steady in the same case
	fewer  bool    // the patient was worse off for cells than with steady, whether or not points were lost by it
	aspect *aspect
}

// find proposes all decisions of a record, in the order of time.
func (d *Debrief) find() (all []Decision) {
	rec := d.Record
	f := &finding{rec: rec, sc: rec.Scenario, c: &rec.Run.Case, acts: rec.Run.Actions, grade: &d.Own.Grade, good: d.Good,
		fewer: gainOfCells(&d.Own, &d.GoodOwn) > worthLooking}
	for i := range aspects {
		f.aspect = &aspects[i]
		if !f.lost() {
			continue
		}
		for _, d := range f.aspect.find(f) {
			d.Aspect, d.Measures = f.aspect.name, f.aspect.measures
			all = append(all, d)
		}
	}
	slices.SortStableFunc(all, func(a, b Decision) int { return int(a.Tick - b.Tick) })
	return all
}

// worthLooking is how much of cells the patient must have lost, by weight, before quiet aspects are looked for though no point was
// lost [A].
const worthLooking = 0.5

// lost says whether anything that the aspect bears on was lost.
func (f *finding) lost() bool {
	if f.fewer && f.aspect.quiet {
		return true
	}
	for i := range f.grade.Criteria {
		cg := &f.grade.Criteria[i]
		if cg.Points < cg.Of-1e-9 && slices.Contains(f.aspect.measures, cg.Measure) {
			return true
		}
	}
	for _, c := range f.grade.Critical {
		if slices.Contains(f.aspect.critical, c.Name) {
			return true
		}
	}
	return false
}

// short says whether points of a measure were lost.
func (f *finding) short(measure string) bool {
	for i := range f.grade.Criteria {
		if cg := &f.grade.Criteria[i]; cg.Measure == measure && cg.Points < cg.Of-1e-9 {
			return true
		}
	}
	return false
}

// criterion is the criterion of a measure in the scenario, nil where there is none.
func (f *finding) criterion(measure string) *scenarios.Criterion {
	i := slices.IndexFunc(f.sc.Criteria, func(c scenarios.Criterion) bool { return c.Measure == measure })
	if i < 0 {
		return nil
	}
	return &f.sc.Criteria[i]
}

// first is the first of the person's acts from a tick on that fits, -1 for none.
func (f *finding) first(from int64, fits func(a *sim.Action) bool) int {
	return slices.IndexFunc(f.acts, func(a sim.Action) bool { return a.Tick >= from && fits(&a) })
}

// every are all acts that fit.
func (f *finding) every(fits func(a *sim.Action) bool) (all []int) {
	for i := range f.acts {
		if fits(&f.acts[i]) {
			all = append(all, i)
		}
	}
	return all
}

func does(v sim.Verb) func(a *sim.Action) bool { return func(a *sim.Action) bool { return a.Do == v } }

func on(v sim.Verb, p sim.Part) func(a *sim.Action) bool {
	return func(a *sim.Action) bool { return a.Do == v && a.On == p }
}

func asks(r sim.Request) func(a *sim.Action) bool {
	return func(a *sim.Action) bool { return a.Do == sim.Ask && sim.Request(a.Value) == r }
}

// act is an act at a tick.
func act(tick int64, do sim.Verb, on sim.Part, value float64) sim.Action {
	return sim.Action{Tick: tick, Do: do, On: on, Value: value}
}

// clock is a time of the case as people read it.
func clock(tick int64) string {
	s := tick / sim.TicksPerSecond
	return words.Say("debrief.clock", s/3600, s/60%60, s%60)
}

// title words a decision.
func title(aspect string, fault Fault, args ...any) string {
	return words.Say("decision."+aspect+"_"+fault.String(), args...)
}
