package debrief

import "rouleau/sim"

var plantedPreparing = []planted{
	{"no prime", "steady-oozing-spine", "prime", func(rec *Record) (Edit, bool) {
		i := rec.firstOf(does(sim.Prime))
		return Edit{Drop: []int{i}}, i >= 0
	}},
}
