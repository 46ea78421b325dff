// Situations of very large losses and of trouble: clotting thinned out, fluid running short, a waste bag, air, a leak, power, a
// reaction, a bag that expires.

package coach

import "rouleau/sim"

const (
	hintGivenML  = 800.0 // washed blood from which the anaesthetist should hear of clotting: a little before a litre
	hintSalineML = 4000.0
)

// holdsInTrouble are the situations in which something runs out or fails.
func (s *Sight) holdsInTrouble(when string) bool {
	v := s.Seen
	switch when {
	case "clotting_thinned":
		return v.Giving.GivenML >= hintGivenML && !v.ClottingTold
	case "fluid_runs_short":
		return v.SalineLeftML < hintSalineML && !v.FluidSentFor && v.Bench.PackInStore != [sim.MaxPacks]bool{}
	case "waste_nearly_full":
		return v.Alarms[sim.AlarmWasteFull]
	case "air_in_line":
		return v.Alarms[sim.AlarmAir]
	case "bowl_leaks":
		return v.Alarms[sim.AlarmLeak]
	case "power_is_lost":
		return v.Alarms[sim.AlarmNoPower]
	case "patient_reacts":
		return v.Reacting
	case "bag_expires_soon":
		return v.Alarms[sim.AlarmExpiring]
	}
	return false
}
