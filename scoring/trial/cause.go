// This file finds the one cause behind many warnings: that the competent operator decides otherwise than the case has it, or is
// cut off by case_stops. The case is then tried as if that were mended, so that only what is left over is told beside it.

package trial

import (
	"fmt"
	"slices"

	"rouleau/scenarios"
	"rouleau/scenarios/yamlread"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

const (
	longerTicks = 4 * 3600 * sim.TicksPerSecond // in which anybody is ready who ever will be
	leftML      = 5.0                           // less than this in a bag is no blood to be given
	readyML     = 100.0                         // of washed blood are worth asking for [A]
	halfAnHour  = 1800                          // after the operation, at least [A]
	fiveMinutes = 300                           // to which a proposed time is rounded up
)

// tries plays a case with steady.
type tries struct {
	sc     *scenarios.Scenario
	doc    *yamlread.Doc
	agrees bool  // play as if steady had read off the sheet what is right
	longer int64 // ticks added to the case
}

// play plays one seed to the end.
func (t *tries) play(seed uint64) *play.Run {
	run := play.New(t.sc.Case(seed, false), seed)
	run.Case.LastTick += t.longer
	sheet := operators.SheetOf(t.sc, &run.Case)
	if t.agrees {
		sheet.Refused, sheet.Contraindicated = false, t.sc.Right.RightDecision() == sim.DoNotSalvage
		sheet.ExpectedLossML = max(sheet.ExpectedLossML, 2*sheet.WorthFromML())
	}
	run.ToEnd(operators.NewSteady(sheet))
	return run
}

// playAll plays all seeds.
func (t *tries) playAll() (runs []*play.Run) {
	for _, seed := range seedsOf(t.sc) {
		runs = append(runs, t.play(seed))
	}
	return runs
}

// runs plays all seeds, tells of a cause that stands before all else, and plays again as if it were mended.
func (t *tries) runs() []*play.Run {
	runs := t.playAll()
	if t.decidesOtherwise(runs) {
		t.agrees = true
		runs = t.playAll()
	}
	if slices.ContainsFunc(runs, cutOff) {
		t.longer = longerTicks
		longer := t.playAll()
		if t.cutsOff(runs, longer) {
			return longer
		}
	}
	return runs
}

// decidesOtherwise tells of a sheet that speaks for another decision than the right one.
func (t *tries) decidesOtherwise(runs []*play.Run) bool {
	right := t.sc.Right.RightDecision()
	k := slices.IndexFunc(runs, func(run *play.Run) bool { return run.State.Bench.Decision != right })
	if k < 0 {
		return false
	}
	sheet := operators.SheetOf(t.sc, &runs[k].Case)
	const follows = "; what follows from that is left out below"
	switch {
	case right == sim.DoNotSalvage:
		t.doc.Fault("right.decision", "steady, a competent operator, finds nothing on the sheet that speaks against salvage, and sets up"+follows,
			"a line in story.refusals or story.contraindications, less expected_loss_ml, or another decision")
	case sheet.Refused:
		t.doc.Fault("story.refusals", "steady, a competent operator, decides against salvage, because the patient refuses it"+follows, "a sheet that goes with right.decision")
	case sheet.Contraindicated:
		t.doc.Fault("story.contraindications", "steady, a competent operator, decides against salvage because of this"+follows,
			"another right.decision, or the line under story.history where it changes nothing")
	default:
		t.doc.Fault("story.expected_loss_ml", fmt.Sprintf("steady, a competent operator, decides against salvage, which is worth while from an expected loss of about %.0f mL in this patient%s",
			sheet.WorthFromML(), follows), "more loss, or right.decision: do_not_salvage")
	}
	return true
}

// cutOff tells whether the clock ended a run, and not whoever played it.
func cutOff(run *play.Run) bool {
	return !slices.ContainsFunc(run.Actions, func(a sim.Action) bool { return a.Do == sim.EndCase })
}

// cutsOff tells of a case that stops while steady still works, if with more time steady comes to an end.
func (t *tries) cutsOff(runs, longer []*play.Run) bool {
	worst, needS := -1, 0.0
	for i := range runs {
		if !cutOff(runs[i]) || cutOff(longer[i]) {
			continue
		}
		if s := sim.Seconds(longer[i].State.Tick); s > needS {
			worst, needS = i, s
		}
	}
	if worst < 0 {
		return false
	}
	stops := yamlread.Clock{Seconds: max((int(needS)/fiveMinutes+1)*fiveMinutes, t.sc.Ends.Seconds+halfAnHour)} // people are slower than steady
	t.doc.Fault("case_stops", fmt.Sprintf("steady, a competent operator, is cut off by case_stops while %s: there are %d minutes after operation_ends, and half an hour is usual",
		busyWith(&runs[worst].State), (t.sc.Stops.Seconds-t.sc.Ends.Seconds)/60), "more time after operation_ends: case_stops of about "+stops.String())
	return true
}

// busyWith says what was still to do at the end of a run.
func busyWith(s *sim.State) string {
	leftInBags := 0.0
	for i := range s.Bags[:s.BagsUsed] {
		if b := &s.Bags[i]; !b.Discarded {
			leftInBags += b.Fluid.VolumeML()
		}
	}
	switch {
	case s.Pump.Mode != sim.PumpIdle:
		return "still processing"
	case s.Giving.FlowMLMin > 0:
		return "still giving back"
	case leftInBags > leftML:
		return fmt.Sprintf("%.0f mL of washed blood are still to be given", leftInBags)
	}
	return "still tidying up and writing the tally"
}

// waits tells of washed blood that lies in bags while donor blood is given, because nobody in the file asks for it.
func waits(doc *yamlread.Doc, sc *scenarios.Scenario, runs []*play.Run) {
	for _, run := range runs {
		for _, o := range run.Log {
			if o.Kind != sim.Said || o.Key != "gives_donor_unit" {
				continue
			}
			from := readyFrom(run, o.Tick)
			if from < 0 || askedBy(run, o.Tick) {
				continue
			}
			clock := func(tick int64) string { return yamlread.Clock{Seconds: int(tick / sim.TicksPerSecond)}.String() }
			place := "events"
			if !doc.Has(place) {
				place = "phases"
			}
			doc.Fault(place, fmt.Sprintf("washed blood lies ready from %s, and donor blood is given at %s: no event request_blood asks for the washed blood before that (seed %d)",
				clock(from), clock(o.Tick), run.Seed), "an event request_blood, such as with when: {haemoglobin_below_g_dl: 9}")
			return
		}
	}
}

// readyFrom is the tick since which enough washed blood has been in bags until a tick without any of it running in, -1 for no such blood.
func readyFrom(run *play.Run, until int64) int64 {
	from := int64(-1)
	for _, t := range run.Trace {
		switch {
		case t.Tick > until:
			return from
		case t.ProductML < readyML || t.GiveMLMin > 0:
			from = -1
		case from < 0:
			from = t.Tick
		}
	}
	return from
}

// askedBy tells whether an event had asked for washed blood by a tick.
func askedBy(run *play.Run, tick int64) bool {
	for i := range run.State.Team.Questions[:run.State.Team.QuestionCount] {
		if q := &run.State.Team.Questions[i]; q.Kind == sim.EventRequestBlood && q.AskedTick <= tick {
			return true
		}
	}
	return false
}
