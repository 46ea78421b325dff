package operators

import "rouleau/sim"

// Steady when something goes wrong or somebody wants to know: answering, telling, mending.

// answer answers the oldest open question.
func (o *Steady) answer(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	if !o.habits.Answers {
		return false
	}
	switch v.OpenQuestion {
	case sim.EventAsk:
		return try(sim.Answer, sim.NoPart, o.sheet.answer(v.OpenLine))
	case sim.EventAskLoss:
		return try(sim.EstimateLoss, sim.NoPart, o.lossML(v))
	}
	return false
}

// againTicks is after how long it tells of what goes on.
const againTicks = 5 * 60 * sim.TicksPerSecond

// declare tells that something happened or goes on.
func (o *Steady) declare(v *sim.Seen, what sim.Incident, try func(sim.Verb, sim.Part, float64) bool) {
	at := &o.declared[what]
	if o.habits.Declares && (*at == 0 || v.Tick >= *at+againTicks) && try(sim.Declare, sim.NoPart, float64(what)) {
		*at = max(1, v.Tick)
	}
}

const seenOnFloorML = 100.0 // missing from the reservoir: nobody overlooks that on the floor [A]

// told are the alarms that are worth telling of.
var told = [...]struct {
	alarm    sim.Alarm
	incident sim.Incident
}{
	{sim.AlarmNoPower, sim.IncidentEquipment}, {sim.AlarmLeak, sim.IncidentEquipment},
	{sim.AlarmAir, sim.IncidentAir}, {sim.AlarmClot, sim.IncidentClot}, {sim.AlarmNoDrip, sim.IncidentAnticoagulant},
}

// trouble tells what the alarms show, stops a leaking bowl and has its set replaced.
func (o *Steady) trouble(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	for _, t := range told {
		if v.Alarms[t.alarm] {
			o.declare(v, t.incident, try)
		}
	}
	if v.Alarms[sim.AlarmNoVacuum] && !v.Bench.VacuumTested && try(sim.TestVacuum, sim.NoPart, 0) {
		return true
	}
	if b := &v.Bench; b.Open[sim.OutletClamp] && !b.Connected[sim.OutletLine] && v.TakenInML > v.ReservoirML+seenOnFloorML && clamp(v, sim.OutletClamp, false, try) {
		o.declare(v, sim.IncidentSpill, try)
		return true
	}
	p := &v.Pump
	if v.Alarms[sim.AlarmLeak] {
		o.broken = true
		return try(sim.StopAll, sim.NoPart, 0)
	}
	if o.broken && !p.Spinning && !p.Braking && p.Mode == sim.PumpIdle {
		clamp(v, sim.OutletClamp, false, try)
		o.broken = !try(sim.ReplaceSet, sim.ProcessingSet, 0)
		return true
	}
	return false
}
