package sim

import "math/bits"

// What the scenario brings: lines, questions, faults, agents, drugs.

// bringEvents fires each event whose time or condition has come, once.
func bringEvents(c *Case, s *State, h *Happened) {
	for left := ^s.Team.Fired & (1<<len(c.Events) - 1); left != 0; left &= left - 1 {
		i := bits.TrailingZeros64(left)
		e := &c.Events[i]
		if s.Tick < e.At || !s.due(e) {
			continue
		}
		s.Team.Fired |= 1 << i
		bring(c, s, e, h)
	}
}

// due says whether the condition of an event holds. A reaction waits until blood is being given, a touch until the set is open,
// a line that works loose until it is connected.
func (s *State) due(e *EventSpec) bool {
	if e.Kind == EventReaction && s.Giving.FlowMLMin <= 0 {
		return false
	}
	if e.Kind == EventLineLoose && !s.Bench.Connected[Part(e.Value)] {
		return false
	}
	if e.Kind == EventTouch && !s.Bench.Opened[ProcessingSet] {
		return false
	}
	switch e.When {
	case WhenHbBelow:
		return s.Patient.Blood.HbGPerDL() < e.Threshold
	case WhenShedAbove:
		return s.Patient.ShedML > e.Threshold
	case WhenGiving:
		return s.Giving.GivenML > e.Threshold
	case WhenProduct:
		sum := 0.0
		for i := range s.Bags[:s.BagsUsed] {
			sum += s.Bags[i].CameML
		}
		return sum > e.Threshold
	}
	return true
}

// bring lets one event happen.
func bring(c *Case, s *State, e *EventSpec, h *Happened) {
	if e.Line >= 0 {
		h.add(Occurrence{Tick: s.Tick, Kind: Said, Who: e.Who, Line: e.Line})
	}
	b := &s.Bench
	switch e.Kind {
	case EventAskLoss, EventAsk, EventRequestBlood:
		s.Team.ask(Question{Kind: e.Kind, Line: int16(e.Line), Who: e.Who, AskedTick: s.Tick, DueTick: s.Tick + e.Within, Right: e.Value})
	case EventAgentOn:
		i := int(e.Value)
		s.Field.Agent[i] = true
		s.Team.AgentSaid, s.Team.AgentAsked, s.Team.FieldClear = true, false, false
	case EventAgentOff:
		s.Field.Agent[int(e.Value)] = false
	case EventDetectorFault:
		s.Bowl.Detector.Offset = e.Value
	case EventVacuumLost:
		b.VacuumSource = false
	case EventVacuumBack:
		b.VacuumSource = true
	case EventPowerLost:
		b.Power = false
		stopPump(s)
		stopBowl(s)
		s.Conduct.meet(IncidentEquipment, s.Tick)
		h.act(s.Tick, "power_lost", 0)
	case EventPowerBack:
		b.Power = true
		h.act(s.Tick, "power_back", 0)
	case EventBowlLeak:
		s.Bowl.LeakMLMin = e.Value
	case EventReaction:
		s.Patient.Reaction, s.Patient.ReactionTick, s.Patient.ReactionLast = true, s.Tick, s.Tick
		if s.Giving.Bag >= 0 {
			s.Bags[s.Giving.Bag].Reacted = true
		}
		s.Conduct.meet(IncidentReaction, s.Tick)
	case EventHeparin:
		s.Patient.Blood.In[Heparin] += e.Value
		s.Stores.Syringe.In[Heparin] -= e.Value
		s.Team.Heparinised = true
	case EventProtamine:
		gone := min(s.Patient.Blood.In[Heparin], e.Value*protamineIUPerMG)
		s.Patient.Blood.In[Heparin] -= gone
		s.Patient.Metabolised.In[Heparin] += gone
		s.Patient.ProtamineTick, s.Team.Heparinised = max(1, s.Tick), false
	case EventTouch:
		s.breach(ProcessingSet, h)
	case EventLineLoose:
		s.worksLoose(Part(e.Value))
	case EventBypass:
		s.goOnPump(e.Value)
	case EventPumpBlood:
		s.Team.PumpOfferTick, s.Team.PumpOfferEnds = max(1, s.Tick), s.Tick+e.Within
	}
}

// breach marks a set as not sterile any more, in plain sight.
func (s *State) breach(set Part, h *Happened) {
	s.Bench.Breached[set] = true
	s.Bench.BreachKnown = true
	s.Conduct.meet(IncidentBreach, s.Tick)
	h.add(Occurrence{Tick: s.Tick, Kind: Came, Who: Bench, Key: "touched", Line: -1, Act: Action{On: set}})
}

// stopBowl brakes a spinning bowl; its contents mix.
func stopBowl(s *State) {
	if b := &s.Bowl; b.Spinning {
		b.Spinning = false
		b.BrakeUntil = s.Tick + Ticks(brakeS)
		b.mixContents()
		b.Detector.Filled, b.Detector.Next = false, 0
	}
}
