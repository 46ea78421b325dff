package sim

// Packs that are not on the bench: somebody has to send for them, and they take time to come.

// Fetching is what was sent for.
type Fetching struct {
	Tick   int64   // when somebody was sent, 0 for never
	LeftML float64 // saline in date on the bench at that time
	Come   bool
}

// inStore says whether pack i is still in the store.
func (s *State) inStore(c *Case, i int) bool { return c.Packs[i].InStore && !s.Team.Fetching.Come }

// salineLeftML is the saline in date that is on the bench.
func (s *State) salineLeftML(c *Case) float64 {
	sum := 0.0
	for i := range c.Packs {
		if c.Packs[i].Solution == Saline && !c.Packs[i].Expired && !s.inStore(c, i) {
			sum += s.Bench.Packs[i].Fluid.VolumeML()
		}
	}
	return sum
}

// sendForFluid sends the scrub nurse's helper to the store.
func sendForFluid(c *Case, s *State, h *Happened) {
	f := &s.Team.Fetching
	some := false
	for i := range c.Packs {
		some = some || s.inStore(c, i)
	}
	switch {
	case !some:
		h.say(s.Tick, ScrubNurse, "store_is_empty")
	case f.Tick > 0:
		h.say(s.Tick, ScrubNurse, "is_on_the_way")
	default:
		f.Tick, f.LeftML = max(1, s.Tick), s.salineLeftML(c)
		h.sayValue(s.Tick, ScrubNurse, "reads_back_fetch", Seconds(c.Faults.StoreTicks)/60)
	}
}

// store lets what was sent for arrive.
func store(c *Case, s *State, h *Happened) {
	if f := &s.Team.Fetching; f.Tick > 0 && !f.Come && s.Tick >= f.Tick+c.Faults.StoreTicks {
		f.Come = true
		h.say(s.Tick, ScrubNurse, "fluid_has_come")
	}
}
