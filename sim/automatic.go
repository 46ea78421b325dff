package sim

// Automatic steps: single acts the trainee may switch on. They go through the same actions as a hand does.

const byHandPauseS = 20.0 // [A] after a stop by hand the automatic steps wait this long

// automatic does what the switched-on steps ask for, one act a tick at most.
func automatic(c *Case, s *State, h *Happened) {
	p, b := &s.Pump, &s.Bowl
	if s.Tick < p.PutOffTick || s.Bench.TakenDown {
		return
	}
	do := func(v Verb) { Apply(c, s, Action{Tick: s.Tick, Do: v, Auto: true}, h) }
	cy := s.cycle()
	open := cy != nil && cy.DoneTick == 0
	switch {
	case (p.Mode == PumpFill || p.Mode == PumpTopUp) && p.AutoStop && b.Detector.Mean() > detectorStop:
		do(StopPump)
		cy.StoppedByItself = true
		h.act(s.Tick, "interface_reached", b.Detector.Mean())
	case p.Mode != PumpIdle:
	case p.AutoFillML > 0 && !open && s.Reservoir.Blood.VolumeML() >= p.AutoFillML && May(c, s, Action{Do: Fill}) == "":
		do(Fill)
	case p.AutoWash && open && b.Spinning && cy.StopTick > 0 && cy.WashTick == 0 && May(c, s, Action{Do: Wash}) == "":
		do(Wash)
	case p.AutoEmpty && open && cy.WashTick > 0 && b.Spinning && p.WashedML >= p.WashML-1e-9:
		do(StopAll)
	case p.AutoEmpty && open && cy.WashTick > 0 && !b.Spinning && p.WashedML >= p.WashML-1e-9 && May(c, s, Action{Do: Empty}) == "":
		do(Empty)
	}
}
