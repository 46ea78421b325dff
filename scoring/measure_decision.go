package scoring

import (
	"strings"

	"rouleau/sim"
)

// Measures of a decision that is talked over, told and written down, also where the right answer is no.

const leastNoteWords = 3 // fewer say nothing about a decision [A]

// firstBlood is the second in which the first blood had been shed; the end where none was.
func (j *judged) firstBlood() int64 {
	for _, t := range j.run.Trace {
		if t.ShedML > 0 {
			return t.Tick
		}
	}
	return j.s.Tick
}

// lastDecided is the tick of the last decision, -1 for none.
func (j *judged) lastDecided() int64 {
	at := int64(-1)
	for i := range j.run.Log {
		if o := &j.run.Log[i]; o.Kind == sim.Done && o.Act.Do == sim.Decide {
			at = o.Tick
		}
	}
	return at
}

// asked is the first tick at which something was asked of the team, or told it; -1 for never.
func (j *judged) asked(r sim.Request) int64 {
	return j.firstDone(func(a *sim.Action) bool { return a.Do == sim.Ask && sim.Request(a.Value) == r })
}

func decidedInTime(j *judged) found {
	at := j.lastDecided()
	f := yesNo(at >= 0 && at <= j.firstBlood())
	f.tick = at
	return f
}

func askedTogether(j *judged) found {
	if j.sc.Right.CliniciansSay == "" {
		return none()
	}
	at, opened := j.asked(sim.DecideTogether), j.firstDone(does(sim.OpenSet))
	f := yesNo(at >= 0 && at <= j.firstBlood() && (opened < 0 || at <= opened))
	f.tick = at
	return f
}

// setsOpened judges only who decided: an untouched bench is no merit of one who did nothing.
func setsOpened(j *judged) found {
	if j.s.Bench.Decision == sim.Undecided {
		return absent()
	}
	n := 0.0
	for set := sim.CollectionSet; set <= sim.ProcessingSet; set++ {
		if j.s.Bench.Opened[set] {
			n++
		}
	}
	return valueAt(n, j.firstDone(does(sim.OpenSet)))
}

func reasonTold(j *judged) found {
	for r := sim.PatientDeclines; r <= sim.NoHeparin; r++ {
		if r.String() == j.sc.Right.Tell {
			at := j.asked(r)
			f := yesNo(at >= 0 && at <= j.firstBlood())
			f.tick = at
			return f
		}
	}
	return none()
}

func decisionNoted(j *judged) found {
	decided := j.lastDecided()
	for i := range j.run.Log {
		o := &j.run.Log[i]
		if o.Kind == sim.Done && o.Act.Do == sim.Note && decided >= 0 && o.Tick >= decided && len(strings.Fields(o.Act.Text)) >= leastNoteWords {
			return valueAt(1, o.Tick)
		}
	}
	return value(0)
}
