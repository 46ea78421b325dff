package debrief

import (
	"rouleau/sim"
)

// What can be read at the bench when a figure is written: scales, counters and the scrub nurse's count, as steady reads them.

const (
	inFilterAndLineML = 75.0 // drawn from the pack and not yet in the reservoir's scale
	drapesShare       = 0.95 // of what is lost; a little always goes to the drapes
	nearestML         = 10.0
)

// rinsed is what is noted of one rinse of the swabs, so that it is not taken for blood.
type rinsed struct {
	asked, done int64   // ticks; done is -1 where the rinse was never finished
	beforeML    float64 // weighed before it
	restML      float64 // and after it
	basinML     float64 // what it brought: both weights, and the saline that was poured
}

// rinses are the rinses a person asked for. Saline and the weight after it are taken from the nearest minute kept of the case.
func (f *finding) rinses() (all []rinsed) {
	for _, i := range f.every(asks(sim.RinseSwabs)) {
		r := rinsed{asked: f.acts[i].Tick, beforeML: f.rec.moments[i].seen.SwabsML}
		if r.done = f.rec.heard(r.asked, "swabs_rinsed"); r.done >= 0 {
			before, after := &f.rec.markBefore(r.done).State, &f.rec.markBefore(r.done+markEvery).State
			if after.Tick <= r.done {
				after = &f.rec.Run.State
			}
			saline := before.Stores.Rinse.VolumeML() - after.Stores.Rinse.VolumeML()
			r.restML = after.Field.RinsedRestML
			r.basinML = max(0, r.beforeML+saline-r.restML)
		}
		all = append(all, r)
	}
	return all
}

// lossRead is the loss as it can be worked out from what is seen: collected and thrown away less what was added, and what the
// swabs weigh.
func lossRead(v *sim.Seen, rinses []rinsed) float64 {
	if !v.Bench.Opened[sim.CollectionSet] {
		return toTen(v.CanisterML + v.PoolML + v.SwabsML - v.IrrigationML - v.BodyFluidML)
	}
	basin, swabs, rest, rinsing := 0.0, 0.0, 0.0, false
	for _, r := range rinses {
		if r.asked >= v.Tick {
			break
		}
		swabs += r.beforeML - rest
		if rinsing = r.done < 0 || r.done >= v.Tick; rinsing {
			break
		}
		rest, basin = r.restML, basin+r.basinML
	}
	liquid := v.TakenInML - v.PumpBloodML + inFilterAndLineML - v.DripML - basin - v.BodyFluidML + v.CanisterML + v.PoolML - v.IrrigationML
	if !rinsing {
		swabs += v.SwabsML - rest
		liquid += v.BasinML
	}
	return toTen((liquid + swabs) / drapesShare)
}

func toTen(ml float64) float64 { return max(0, nearestML*float64(int64(ml/nearestML+0.5))) }

// tallyRead is the tally as it can be read.
func tallyRead(v *sim.Seen) (t [sim.TallyItems]float64) {
	t[sim.TallyCollected], t[sim.TallyAnticoagulant], t[sim.TallyIrrigation] = v.TakenInML, v.DripML, v.IrrigationML
	t[sim.TallyProcessed], t[sim.TallyWash], t[sim.TallyWaste] = v.Pump.FedML, v.Pump.WashUsedML, v.WasteML+v.WasteAwayML
	for i := range v.BagsUsed {
		t[sim.TallyProduct] += v.Bags[i].CameML
	}
	t[sim.TallyReturned], t[sim.TallyDiscarded] = v.Giving.GivenML, v.DiscardedML
	return t
}
