package attempt

import (
	"fmt"
	"slices"

	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// Playing an attempt again, and what came of it.

// Report says how a replay compares with its record.
type Report struct {
	ModelRecorded, ModelNow   string
	Sealed                    bool // the file is as it was written
	Acts                      int
	Hashes, Points            int         // compared
	Parting                   *Parting    // where the states first part, nil when they do not
	Refused                   *Refusal    // the first recorded act that is refused now, nil when none is
	Grade                     []Different // what is otherwise in the grade, wording left out
	Wording                   []Different // and in its texts, which a newer program may word in another way
	LengthRecorded, LengthNow int64
	EndedRecorded, EndedNow   bool
	decided                   bool // pass or fail, and what points never make good, are as recorded
}

// Parting is where two runs first part: after one tick that was compared and by another.
type Parting struct {
	After, By  int64       // After is -1 when they part before the first tick
	Quantities []Different // at By; empty when only the hash of the whole state is otherwise
	Hash       *Different  // nil where no hash was compared
}

// Different is one thing that came out otherwise.
type Different struct{ Name, Recorded, Now string }

// Refusal is a recorded act that the model refuses.
type Refusal struct {
	Tick   int64
	Act    string
	Reason sim.Reason
}

// Same tells whether everything came out as recorded.
func (r *Report) Same() bool {
	return r.Sealed && r.Parting == nil && r.Refused == nil && len(r.Grade) == 0 && r.LengthRecorded == r.LengthNow &&
		r.EndedRecorded == r.EndedNow
}

// SameDecisions tells whether every act was possible, the case ended as recorded and the grade comes to the same decisions, though
// not everything is the same to the bit.
func (r *Report) SameDecisions() bool {
	return r.Refused == nil && r.decided && r.LengthRecorded == r.LengthNow && r.EndedRecorded == r.EndedNow
}

// Difference tells in one line where a replay that is not the same parts from its record first.
func (r *Report) Difference() string {
	switch {
	case !r.Sealed:
		return "the seal does not fit the file"
	case r.Refused != nil:
		return fmt.Sprintf("the act %s at tick %d is refused now: %s", r.Refused.Act, r.Refused.Tick, r.Refused.Reason)
	case r.Parting != nil && len(r.Parting.Quantities) > 0:
		q := &r.Parting.Quantities[0]
		return fmt.Sprintf("between tick %d and %d %s parts: %s recorded, %s now", r.Parting.After, r.Parting.By, q.Name, q.Recorded, q.Now)
	case r.Parting != nil:
		return fmt.Sprintf("between tick %d and %d the state parts", r.Parting.After, r.Parting.By)
	case r.LengthRecorded != r.LengthNow:
		return fmt.Sprintf("it lasted %d ticks and lasts %d now", r.LengthRecorded, r.LengthNow)
	case len(r.Grade) > 0:
		return fmt.Sprintf("the grade parts in %s: %s recorded, %s now", r.Grade[0].Name, r.Grade[0].Recorded, r.Grade[0].Now)
	}
	return ""
}

const samePoints = 0.05 // shown with one digit

// decidedAlike says whether two grades come to the same decisions.
func decidedAlike(a, b *Grade) bool {
	d := float64(a.Points - b.Points)
	return a.Passed == b.Passed && max(d, -d) < samePoints &&
		slices.EqualFunc(a.Critical, b.Critical, func(x, y Critical) bool { return x.Name == y.Name && x.Mended == y.Mended })
}

// Replay plays an attempt again and compares. It reads the attempt only and writes nothing anywhere. The error is for an
// attempt that cannot be played because its scenario cannot be read.
func Replay(a *Attempt) (*Report, error) { return ReplayBeside(a, scoring.PlayYardstick) }

// ReplayBeside is Replay with a yardstick that the caller gives: one that was played already serves every attempt at the same
// case.
func ReplayBeside(a *Attempt, yardstick func(sc *scenarios.Scenario, seed uint64, assessment bool) scoring.Yardstick) (*Report, error) {
	sc, faults := scenarios.Parse(a.Scenario.ID+".yaml", []byte(a.Scenario.Text))
	if err := faults.Err(); err != nil {
		return nil, fmt.Errorf("the scenario of the attempt cannot be read:\n%w", err)
	}
	run, points := playAgain(sc, a)
	now := GradeOf(scoring.Judge(sc, run, yardstick(sc, a.Seed, a.Assessment())))
	r := &Report{ModelRecorded: a.Model, ModelNow: sim.ModelVersion, Sealed: a.Sealed(), Acts: len(a.Actions),
		LengthRecorded: a.LengthTicks, LengthNow: run.State.Tick, EndedRecorded: a.Ended, EndedNow: run.State.Ended}
	r.compare(a, points)
	r.Refused = refusedIn(run)
	r.Grade, r.Wording = gradesDiffer(&a.Grade, &now)
	r.decided = decidedAlike(&a.Grade, &now)
	return r, nil
}

// compare goes through the checkpoints in order and stops where they part.
func (r *Report) compare(a *Attempt, now []Checkpoint) {
	ours := map[string]int{}
	for i, q := range quantities {
		ours[q.name] = i
	}
	after := int64(-1)
	for i := range a.Checkpoints {
		was := &a.Checkpoints[i]
		if i >= len(now) || now[i].Tick != was.Tick {
			r.Parting = &Parting{After: after, By: was.Tick}
			return
		}
		p := Parting{After: after, By: was.Tick}
		for k, name := range a.Quantities {
			at, known := ours[name]
			switch {
			case !known:
				p.Quantities = append(p.Quantities, Different{name, was.Values[k].String(), "not known to this model"})
			case !was.Values[k].same(now[i].Values[at]):
				p.Quantities = append(p.Quantities, Different{name, was.Values[k].String(), now[i].Values[at].String()})
			}
		}
		if was.Hash != "" {
			if was.Hash != now[i].Hash {
				p.Hash = &Different{"hash of the state", was.Hash, now[i].Hash}
			}
			r.Hashes++
		}
		r.Points++
		if len(p.Quantities) > 0 || p.Hash != nil {
			r.Parting = &p
			return
		}
		after = was.Tick
	}
}

// refusedIn finds the first act that was refused.
func refusedIn(run *play.Run) *Refusal {
	for i := range run.Log {
		if o := &run.Log[i]; o.Kind == sim.Refused {
			text := o.Act.Do.String()
			if o.Act.On != sim.NoPart {
				text += " " + o.Act.On.String()
			}
			return &Refusal{Tick: o.Tick, Act: text, Reason: sim.Reason(o.Key)}
		}
	}
	return nil
}
