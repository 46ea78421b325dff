package sim

// One tick, readable in one place: the order of the parts and what each reads from the others.

// Step lets 50 ms pass. It changes s and adds to h what happened; c is only read.
func Step(c *Case, s *State, h *Happened) {
	if s.Ended {
		return
	}
	bringEvents(c, s, h) // what the scenario brings
	people(c, s, h)      // team: irrigation held, swabs rinsed

	bleed(c, s)      // patient → pool, swabs, drapes; irrigation → pool
	collect(c, s)    // pool → sucker, with the drip → filter → reservoir; or pool → discard
	process(c, s, h) // reservoir → bowl → waste; wash fluid → bowl; bowl → product bag
	give(c, s)       // product bag → patient
	react(s)
	infuse(c, s)        // crystalloid → patient ⇄ interstitium, urine, decay
	donorBlood(c, s, h) // blood of others, when washed blood does not come
	clottingProducts(c, s, h)

	s.watchCircuit(c)
	oversee(c, s) // counts what a judge will ask about
	laboratory(c, s, h)
	watchAlarms(c, s, h)
	finish(c, s, h)
	s.Tick++
}

// infuse lets the body and the anaesthetist's drip work for one tick.
func infuse(c *Case, s *State) {
	p := &s.Patient
	start := c.Patient.BloodVolumeML
	rate := c.Patient.MaintenanceMLMin + crystalloidMLMin(p.Blood.VolumeML(), start)
	stepPatient(p, &s.Stores.Infusion, start, rate, tickS, true)
	metabolise(p, c.Patient.PotassiumMmolL)
	if s.Tick%TicksPerSecond == 0 {
		p.LowestHbGDL = min(p.LowestHbGDL, p.Blood.HbGPerDL())
		vitals(c, p)
	}
}

// finish ends a case that has run out of time.
func finish(c *Case, s *State, h *Happened) {
	if s.Tick+1 >= c.LastTick && !s.Ended {
		s.Ended = true
		h.act(s.Tick, "time_over", 0)
	}
}
