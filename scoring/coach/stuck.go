// Waits that cannot come true any more: what a step waits for has stopped on its way, or never began. It is told with the act
// that sets it going again, so that nobody sits before a card that stays.

package coach

import (
	"rouleau/scenarios"
	"rouleau/sim"
)

// What is long enough to be sure: seconds of the case that a wait has been out of reach, and that it has shown no change at all.
const (
	stuckAfterS = 10
	stillForS   = 15 * 60
)

// stuck is what is known of a wait that does not come.
type stuck struct {
	why   string // out of reach because of this, "" when it is on its way
	since int64
	value float64 // of the reading waited for
	still int64   // since when it has this value
	told  string
}

// watch looks whether the wait of a step is still on its way.
func (k *stuck) watch(u *scenarios.Until, s *Sight, fresh bool) {
	tick := s.Seen.Tick
	if fresh {
		*k = stuck{since: tick, still: tick}
	}
	if u.Reads != nil {
		if x := s.Value(u.Reads.What); x != k.value && (x == x || k.value == k.value) {
			k.value, k.still = x, tick
		}
	}
	why := outOfReach(u, s)
	if why != k.why {
		k.why, k.since = why, tick
	}
	switch {
	case s.Seen.Ended:
		k.told = "case_over"
	case why != "" && tick-k.since >= stuckAfterS*sim.TicksPerSecond:
		k.told = why
	case u.Reads != nil && tick-k.still >= stillForS*sim.TicksPerSecond:
		k.told = "nothing_changes"
	default:
		k.told = ""
	}
}

// outOfReach says why what a step waits for cannot come by itself, "" where it can.
func outOfReach(u *scenarios.Until, s *Sight) string {
	p := &s.Seen.Pump
	switch {
	case u.Holds == "filled_not_washed":
		return needs(p.Mode == sim.PumpFill, "not_filling")
	case u.Holds == "question_open" || u.Holds == "agent_in_field" || u.Holds == "blood_wanted":
		return needs(!s.Seen.OperationOver, "operation_over")
	case u.Reads == nil:
		return ""
	}
	if u.Reads.AtLeast != nil && !(s.Value(u.Reads.What) >= *u.Reads.AtLeast) {
		return cannotRise(u.Reads.What, *u.Reads.AtLeast, s)
	}
	return cannotFall(u.Reads.What, s)
}

func needs(is bool, otherwise string) string {
	if is {
		return ""
	}
	return otherwise
}

// cannotRise says why a reading will not come up to a value.
func cannotRise(what string, to float64, s *Sight) string {
	v := s.Seen
	p := &v.Pump
	switch what {
	case "reservoir_ml", "taken_in_ml", "filling_ml_min":
		if v.OperationOver {
			return needs(v.DripMLMin > 0 || v.FillingMLMin > 0, "operation_over")
		}
		return needs(v.Route == sim.ToReservoir, "not_collecting")
	case "bleeding_ml_min", "pool_ml":
		return needs(!v.OperationOver, "operation_over")
	case "primed_ml", "drip_per_100_ml", "drip_ml":
		return needs(v.DripMLMin > 0, "no_drip")
	case "clear_ml":
		return needs(v.ReservoirML > to, "too_little")
	case "detector", "fed_ml":
		return needs(p.Mode == sim.PumpFill || p.Mode == sim.PumpTopUp, "not_filling")
	case "effluent_red", "effluent_ml_min":
		return needs(p.Mode != sim.PumpIdle, "pump_stands")
	case "washed_ml":
		return needs(p.Mode == sim.PumpWash, "not_washing")
	case "bag_ml":
		return needs(emptying(p), "not_emptying")
	case "given_ml", "giving_ml_min":
		return needs(v.Giving.FlowMLMin > 0, "not_giving")
	case "clinician_here":
		return needs(v.ClinicianCalled, "not_called")
	case "samples_answered":
		return needs(float64(v.SampleCount) > s.Value(what), "no_sample")
	}
	return ""
}

// cannotFall says why a reading will not come down.
func cannotFall(what string, s *Sight) string {
	v := s.Seen
	p := &v.Pump
	switch what {
	case "reservoir_ml":
		return needs(p.Mode == sim.PumpFill, "not_filling")
	case "clear_ml":
		return needs(v.Mixing || v.FillingMLMin > 0, "not_mixing")
	case "drip_per_100_ml":
		return needs(!v.OperationOver, "operation_over")
	case "anticoagulant_left_ml":
		return needs(v.DripMLMin > 0, "no_drip")
	case "detector":
		return needs(p.Spinning, "bowl_stands")
	case "bowl_spins":
		return needs(p.Braking || !p.Spinning, "bowl_turns")
	case "bowl_ml":
		return needs(emptying(p), "not_emptying")
	case "bag_ml":
		return needs(p.Mode == sim.PumpDrawBack || p.Mode == sim.PumpTopUp || v.Giving.FlowMLMin > 0, "not_drawing")
	}
	return ""
}

// emptying says whether the bowl is being emptied, or will be by itself.
func emptying(p *sim.SeenPump) bool {
	return p.Mode == sim.PumpEmpty || p.AutoEmpty && (p.Mode == sim.PumpWash || p.Braking || p.Washed)
}
