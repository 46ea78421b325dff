package debrief

import "rouleau/sim"

// The last estimate of the blood loss: missing, made too early, or off.

const (
	lossRight   = 0.25 // an answer this near is right, as the measure has it
	lastShare   = 0.8  // of the whole loss must have been shed before the last estimate, as the measure has it
	sameFigure  = 0.02 // figures this near are the same
	afterTheEnd = 60 * sim.TicksPerSecond
)

// findLastLoss looks at the estimate that stands at the end. Where it answered a question in time and is off so much that the
// answer was wrong, it is a decision among the answers.
func findLastLoss(f *finding) []Decision {
	made := f.every(does(sim.EstimateLoss))
	last := -1
	if len(made) > 0 {
		last = made[len(made)-1]
	}
	if last >= 0 && f.rec.moments[last].shed >= float64(lastShare*f.rec.Run.State.Patient.ShedML) {
		for i, k := range f.answeredBy() {
			if q := &f.rec.Run.State.Team.Questions[i]; k == last && f.short("questions_answered_share") && !late(q, f.acts[k].Tick) && apartShare(f.acts[k].Value, q.Right) > lossRight {
				return nil
			}
		}
		d := f.otherFigure(last, f.rinses())
		if apartShare(f.acts[last].Value, d.Edit.Swap[0].Act.Value) <= sameFigure {
			return nil
		}
		return []Decision{d}
	}
	at := f.inTime(f.c.EndTick + afterTheEnd)
	for _, do := range [...]sim.Verb{sim.EndCase, sim.TakeDown} { // before the bench is taken down, or the case is ended
		if i := f.first(f.c.EndTick, does(do)); i >= 0 {
			at = f.acts[i].Tick
		}
	}
	ml := lossRead(f.rec.seenAt(at), f.rinses())
	d := Decision{Fault: LeftOut, Title: title("last_loss", LeftOut, clock(at), ml), Tick: at, Done: -1, Edit: saying(at, sim.EstimateLoss, ml)}
	if last >= 0 {
		d.Fault, d.Done, d.Title = Late, f.acts[last].Tick, title("last_loss", Late, clock(at), ml, clock(f.acts[last].Tick))
	}
	return []Decision{d}
}

// otherFigure puts what could be read in the place of a figure.
func (f *finding) otherFigure(k int, rinses []rinsed) Decision {
	right := f.acts[k]
	right.Value = lossRead(&f.rec.moments[k].seen, rinses)
	return Decision{Fault: Wrong, Title: title("last_loss", Wrong, right.Value, f.acts[k].Value, clock(right.Tick)), Tick: right.Tick, Done: right.Tick, Edit: Edit{Swap: []Swap{{k, right}}}}
}

// apartShare is how far a figure is from another one, as a share of that.
func apartShare(v, from float64) float64 { return max(v-from, from-v) / max(1, from) }
