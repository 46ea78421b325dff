package sim

// The people around the bench: where the sucker leads, what was asked of them, what they ask.

const (
	oozeS           = 600.0 // [A] how long a wound oozes more when its haemostat is given up
	oozeFactor      = 1.15  // [A]
	irrigationHeldS = 300.0 // [A] the surgeon goes on irrigating after this
	maxQuestions    = 12
)

// Question is something the team wants answered.
type Question struct {
	Kind         EventKind // EventAsk, EventAskLoss or EventRequestBlood
	Line         int16     // the scenario's words, -1 for none
	Who          Speaker
	AskedTick    int64
	DueTick      int64
	AnsweredTick int64 // 0 while open
	Value        float64
	Right        float64
}

// Team is what the people around the bench do and want.
type Team struct {
	Route          Destination
	VacuumMmHg     float64
	Pooling        bool
	IrrigationHeld bool
	HeldUntil      int64
	TellMe         bool
	AgentSaid      bool  // an agent was announced and nobody has said that the field is clear of it
	AgentAsked     bool  // the trainee asked since it went
	FieldClear     bool  // the last answer
	OozeUntil      int64 // bleeding is brisker until this tick, an agent was stopped
	RinseUntil     int64
	RinseTimes     int
	Basin          Fluid // swabs' rinse, waiting to be sucked up
	Questions      [maxQuestions]Question
	QuestionCount  int
	Warned         uint64 // agents announced beforehand, as bits of their events
	Fired          uint64 // scenario events that have happened, as bits
	ClinicianAt    int64  // tick at which the clinician is at the bedside, 0 for not called
	OverSaid       bool
	SecondSucker   bool  // the surgeon has a second one for what must be diverted
	SecondInUse    bool  // and uses it now
	AntiDTick      int64 // when anti-D was asked for, 0 for never
	PumpOfferTick  int64 // when the blood of the pump was offered, 0 for never
	PumpOfferEnds  int64 // the pump is taken away at this tick
	PumpRuns       bool  // its blood runs into the reservoir
	Heparinised    bool  // systemic heparin was given and no protamine since
	ReasonTold     bool  // the trainee said why nothing is collected, or what must be kept away
	Together       bool  // surgeon and anaesthetist said what they think of collecting here
	FetalTestTick  int64 // when the test of the fetal bleed was asked for and could tell, 0 for never
	Clotting       Clotting
	Fetching       Fetching
}

// ask puts a question. A scenario asks no more than fit: its reader refuses more.
func (t *Team) ask(q Question) {
	if t.QuestionCount < maxQuestions {
		t.Questions[t.QuestionCount] = q
		t.QuestionCount++
	}
}

// OpenQuestion is the oldest question of the kinds answered by word that is not answered yet, or -1.
func (t *Team) OpenQuestion() int {
	for i := range t.Questions[:t.QuestionCount] {
		if q := &t.Questions[i]; q.AnsweredTick == 0 && q.Kind != EventRequestBlood {
			return i
		}
	}
	return -1
}

// BloodWanted is the oldest request for washed blood not yet served, or -1.
func (t *Team) BloodWanted() int { return t.openOf(EventRequestBlood) }

// openOf is the oldest open question of a kind, or -1.
func (t *Team) openOf(kind EventKind) int {
	for i := range t.Questions[:t.QuestionCount] {
		if q := &t.Questions[i]; q.AnsweredTick == 0 && q.Kind == kind {
			return i
		}
	}
	return -1
}

// washedBloodOffered says whether washed blood is running in, or was handed over within the anaesthetist's patience.
func (s *State) washedBloodOffered(patience int64) bool {
	if s.Giving.Bag >= 0 && s.Giving.FlowMLMin > 0 {
		return true
	}
	for i := range s.Bags[:s.BagsUsed] {
		b := &s.Bags[i]
		if b.HandedBits != 0 && !b.Discarded && b.Fluid.VolumeML() > 0 && b.GivenML == 0 && s.Tick < b.HandedTick+patience {
			return true
		}
	}
	return false
}

// request does what the team was asked.
func request(c *Case, s *State, r Request, h *Happened) {
	t := &s.Team
	switch r {
	case LetItPool:
		t.Pooling = true
		h.say(s.Tick, Surgeon, "reads_back_pool")
	case SkimAsYouGo:
		t.Pooling = false
		h.say(s.Tick, Surgeon, "reads_back_skim")
	case RinseSwabs:
		t.RinseUntil = s.Tick + Ticks(rinseS)
		h.say(s.Tick, ScrubNurse, "reads_back_rinse")
	case HoldIrrigation:
		t.IrrigationHeld, t.HeldUntil = true, s.Tick+Ticks(irrigationHeldS)
		h.say(s.Tick, Surgeon, "reads_back_hold")
	case ResumeIrrigation:
		t.IrrigationHeld = false
		h.say(s.Tick, Surgeon, "reads_back_resume")
	case StopAgent:
		h.say(s.Tick, Surgeon, "reads_back_stop_agent")
		for i := range s.Field.Agent {
			if s.Field.Agent[i] { // what was stopping the ooze is taken away
				s.Field.Agent[i] = false
				t.OozeUntil = s.Tick + Ticks(oozeS)
			}
		}
	case TellMeWhen:
		t.TellMe = true
		h.say(s.Tick, Surgeon, "reads_back_tell")
	case IsAgentGone:
		key := "field_is_clear"
		if s.agentAbout(c) {
			key = "field_is_not_clear"
		}
		t.AgentAsked, t.FieldClear = true, key == "field_is_clear"
		if t.FieldClear {
			t.AgentSaid = false
		}
		h.say(s.Tick, Surgeon, key)
	case ClinicianComes:
		t.ClinicianAt = s.Tick + Ticks(30)
		h.say(s.Tick, Anaesthetist, "reads_back_comes")
	case SecondSucker:
		t.SecondSucker = true
		h.say(s.Tick, Surgeon, "reads_back_second")
	case GiveAntiD, TestFetalBleed:
		askAfterBirth(c, s, r, h)
	case ThinnedClotting:
		tellOfClotting(c, s, h)
	case SendForFluid:
		sendForFluid(c, s, h)
	case DecideTogether:
		decideTogether(c, s, h)
	case PatientDeclines, InfectedField, NoHeparin:
		tellReason(s, r, h)
	}
}

// people lets time pass for the team: held irrigation, rinsed swabs, the end of the operation.
func people(c *Case, s *State, h *Happened) {
	t := &s.Team
	if t.IrrigationHeld && s.Tick >= t.HeldUntil {
		t.IrrigationHeld = false
		h.say(s.Tick, Surgeon, "irrigates_again")
	}
	if t.RinseUntil > 0 && s.Tick >= t.RinseUntil {
		t.RinseUntil = 0
		rinseSwabs(s)
		h.say(s.Tick, ScrubNurse, "swabs_rinsed")
	}
	changeSucker(c, s, h)
	store(c, s, h)
	if !t.OverSaid && s.Tick >= c.EndTick {
		t.OverSaid, t.Pooling = true, false // no wound is closed over a pool
		h.say(s.Tick, Surgeon, "operation_over")
	}
	if t.TellMe && s.Tick%TicksPerSecond == 0 {
		tell(c, s, h)
	}
}

const warnBeforeS = 60.0 // [A] how long before using an agent a surgeon who was asked to will say so

// tell keeps the promise to say before an agent comes and when the field is clear of it.
func tell(c *Case, s *State, h *Happened) {
	t := &s.Team
	for i := range c.Events {
		e, bit := &c.Events[i], uint64(1)<<i
		if e.Kind == EventAgentOn && e.When == AtTime && t.Warned&bit == 0 && e.At > s.Tick && e.At <= s.Tick+Ticks(warnBeforeS) {
			t.Warned |= bit
			h.say(s.Tick, Surgeon, "agent_coming")
		}
	}
	if t.AgentSaid && !s.agentAbout(c) {
		t.AgentSaid, t.FieldClear = false, true
		h.say(s.Tick, Surgeon, "field_is_clear")
	}
}

// agentAbout says whether something that must be diverted is in use or still in the pool.
func (s *State) agentAbout(c *Case) bool {
	if s.closed() {
		return false
	}
	for i := range c.Contaminants {
		if c.Contaminants[i].MustDivert && (s.diverting(c, i) || s.Field.Agent[i] || phaseAt(c, s.Tick).ContaminantPerML[i] > 0) {
			return true
		}
	}
	return false
}

// rinseSwabs wrings the swabs out in saline into the basin.
func rinseSwabs(s *State) {
	f, t := &s.Field, &s.Team
	volume := f.Swabs.VolumeML()
	if volume <= 0 {
		return
	}
	saline := max(rinseLeastML, volume)
	move(&f.Swabs, &s.Stores.Rinse, saline)
	var out Fluid
	moveCells(&out, &f.Swabs, float64(rinseShare*f.Swabs.CellsML))
	moveLiquid(&out.Liquid, &f.Swabs.Liquid, float64(rinseShare*f.Swabs.ML))
	lyse(&out, float64(rinseLysis*out.CellsML), &s.Stores.LysedML)
	moveAll(&t.Basin, &out)
	t.RinseTimes++
	f.RinsedRestML = f.Swabs.VolumeML()
}
