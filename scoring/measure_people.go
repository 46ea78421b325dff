package scoring

import (
	"math/bits"

	"rouleau/sim"
)

// Measures of returning, communicating and recording.

const (
	lossTolerance = 0.25  // an estimate this near answers the question rightly; common practice
	tallyFloorML  = 200.0 // a line of less is judged as if it were this much
	lateEnough    = 0.8   // of the final loss must have been shed when the last estimate was made
)

// givenRightly is the share of the washed blood given without a fault that wrongML of it had.
func givenRightly(j *judged, wrongML float64) found {
	given := j.s.Giving.GivenML
	if given < 1 {
		return absent()
	}
	return shareOf(given-wrongML, given)
}

func airExpelled(j *judged) found {
	all, good := 0.0, 0.0
	for i := range j.s.Bags[:j.s.BagsUsed] {
		if b := &j.s.Bags[i]; b.GivenML >= 1 {
			all++
			if b.AirAtGiven < 1 {
				good++
			}
		}
	}
	if all == 0 {
		return absent()
	}
	return shareOf(good, all)
}

// lowestHbAgainst and donorUnitsAgainst judge only where something was done: an idle trainee has not spared anything.
func lowestHbAgainst(j *judged) found {
	if j.s.Giving.GivenML < 1 && j.yard.Recovery > 0 {
		return absent()
	}
	return value(j.s.Patient.LowestHbGDL - j.yard.LowestHbGDL)
}

func donorUnitsAgainst(j *judged) found {
	if j.s.Giving.GivenML < 1 && j.yard.Recovery > 0 {
		return absent()
	}
	return value(float64(j.s.Patient.DonorUnits - j.yard.DonorUnits))
}

func watchedTimes(j *judged) found {
	if j.s.Giving.GivenML < 1 {
		return absent()
	}
	return value(float64(j.s.Conduct.WatchedTimes))
}

func requestToBedside(j *judged) found {
	worst, at := -1.0, int64(-1)
	for i := range j.s.Team.Questions[:j.s.Team.QuestionCount] {
		q := &j.s.Team.Questions[i]
		if q.Kind != sim.EventRequestBlood {
			continue
		}
		end := q.AnsweredTick
		if end == 0 || j.s.Giving.GivenML < 1 { // donor blood instead is no answer
			end = j.s.Tick
		}
		if v := sim.Seconds(end-q.AskedTick) / 60; v > worst {
			worst, at = v, q.AskedTick
		}
	}
	if worst < 0 {
		return none()
	}
	return valueAt(worst, at)
}

func questionsAnswered(j *judged) found {
	all, good, at := 0.0, 0.0, int64(-1)
	for i := range j.s.Team.Questions[:j.s.Team.QuestionCount] {
		q := &j.s.Team.Questions[i]
		if q.Kind == sim.EventRequestBlood {
			continue
		}
		all++
		if rightly(q) {
			good++
		} else if at < 0 {
			at = q.AskedTick
		}
	}
	if all == 0 {
		return none()
	}
	return found{value: good / all, tick: at}
}

// rightly says whether a question was answered in time and well.
func rightly(q *sim.Question) bool {
	if q.AnsweredTick == 0 || q.DueTick > q.AskedTick && q.AnsweredTick > q.DueTick {
		return false
	}
	if q.Kind == sim.EventAskLoss {
		return off(q.Value, q.Right) <= lossTolerance
	}
	return q.Value == q.Right
}

// off is how far a value is from the truth, as a share of the truth.
func off(v, truth float64) float64 {
	return max(v-truth, truth-v) / max(1, truth)
}

func handoverComplete(j *judged) found {
	all, said := 0.0, 0.0
	for i := range j.s.Bags[:j.s.BagsUsed] {
		if b := &j.s.Bags[i]; b.GivenML >= 1 {
			all += sim.HandoverFieldCount
			said += float64(bits.OnesCount8(b.HandedBits))
		}
	}
	if all == 0 {
		return absent()
	}
	return shareOf(said, all)
}

// agentTicks are the ticks at which an agent was announced.
func (j *judged) agentTicks() []int64 {
	var ticks []int64
	for i := range j.run.Log {
		o := &j.run.Log[i]
		if o.Kind != sim.Said || o.Line < 0 {
			continue
		}
		for k := range j.c.Events {
			if e := &j.c.Events[k]; e.Kind == sim.EventAgentOn && e.Line == o.Line {
				ticks = append(ticks, o.Tick)
			}
		}
	}
	return ticks
}

func askedAboutAgent(j *judged) found {
	ticks := j.agentTicks()
	if len(ticks) == 0 {
		return none()
	}
	if j.s.Field.SuckedML == 0 {
		return absent()
	}
	for _, t := range ticks {
		back := j.nextDone(t, routesIn)
		clear := j.toldClear(t)
		away := j.nextDone(t, func(a *sim.Action) bool { return a.Do == sim.Route && sim.Destination(a.Value) == sim.ToDiscard })
		diverted := !j.at(t).ToReservoir || away >= 0 && away < clear || j.secondSucker(t)
		if !diverted || clear < 0 || back >= 0 && clear > back {
			return valueAt(0, t)
		}
	}
	return value(1)
}

// secondSucker says whether a second sucker was asked for by a tick.
func (j *judged) secondSucker(by int64) bool {
	asked := j.firstDone(func(a *sim.Action) bool { return a.Do == sim.Ask && sim.Request(a.Value) == sim.SecondSucker })
	return asked >= 0 && asked <= by
}

// toldClear is the first tick from a tick on at which the surgeon said that the field is clear, asked or not; -1 for never.
func (j *judged) toldClear(from int64) int64 {
	for i := range j.run.Log {
		if o := &j.run.Log[i]; o.Tick >= from && o.Kind == sim.Said && (o.Key == "field_is_clear" || o.Key == "back_to_first") {
			return o.Tick
		}
	}
	return -1
}

func warnedOfAgent(j *judged) found {
	ticks := j.agentTicks()
	if len(ticks) == 0 {
		return none()
	}
	ask := j.firstDone(func(a *sim.Action) bool { return a.Do == sim.Ask && sim.Request(a.Value) == sim.TellMeWhen })
	return yesNo(ask >= 0 && ask <= ticks[0])
}

func lossError(j *judged) found {
	k := &j.s.Conduct
	if k.EstimateML < 0 || k.EstimateTruthML < float64(lateEnough*j.s.Patient.ShedML) {
		return absent()
	}
	return valueAt(off(k.EstimateML, k.EstimateTruthML), k.EstimateTick)
}

func tallyError(j *judged) found {
	sum := 0.0
	written := 0
	for i, truth := range sim.TallyTruth(j.s) {
		if !j.s.Tally[i].Written {
			sum++
			continue
		}
		written++
		d := j.s.Tally[i].ML - truth
		sum += min(1, max(d, -d)/max(tallyFloorML, truth))
	}
	if written == 0 {
		return absent()
	}
	return value(sum / float64(sim.TallyItems))
}

func tallyLines(j *judged) found {
	n := 0.0
	for i := range j.s.Tally {
		if j.s.Tally[i].Written {
			n++
		}
	}
	if n == 0 {
		return absent()
	}
	return value(n)
}

func incidentsDeclared(j *judged) found {
	k := &j.s.Conduct
	all, told := float64(k.FalseAlarms), 0.0
	for i := range k.Met {
		if k.Met[i] > 0 {
			all++
			if k.Told[i] > 0 {
				told++
			}
		}
	}
	switch {
	case all > 0:
		return shareOf(told, all)
	case !j.s.Bench.Opened[sim.CollectionSet]:
		return absent()
	}
	return none()
}
