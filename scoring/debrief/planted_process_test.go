package debrief

import "rouleau/sim"

var plantedProcessing = []planted{
	{"little wash", "steady-oozing-spine", "wash_volume", func(rec *Record) (Edit, bool) {
		i := rec.firstOf(does(sim.SetWashVolume))
		if i < 0 {
			return Edit{}, false
		}
		a := rec.Run.Actions[i]
		a.Value = 400
		return Edit{Swap: []Swap{{i, a}}}, true
	}},
}
