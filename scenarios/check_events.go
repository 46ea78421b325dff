// This file checks phases, contaminants, events and the bench.

package scenarios

import (
	"fmt"
	"slices"

	"rouleau/scenarios/yamlread"
	"rouleau/sim"
)

// maxBloodVolumes is the bleeding, in blood volumes, beyond which a case is a slip of the pen.
const maxBloodVolumes = 5

// mostQuestions is how many questions a run keeps.
const mostQuestions = 12

func (c *checker) phases() {
	ph := c.f.Phases
	for i := range ph {
		starts := at("phases", i, "starts")
		switch {
		case !c.sound(starts):
		case i == 0 && ph[0].Starts.Seconds != 0:
			c.Fault(starts, "the first phase does not begin with the case", "0:00:00")
		case i > 0 && ph[i].Starts.Seconds <= ph[i-1].Starts.Seconds && c.sound(at("phases", i-1, "starts")):
			c.Fault(starts, "the phase does not begin after the one before it, "+ph[i-1].Starts.String(), "phases in the order in which they begin")
		case c.sound("case_stops") && ph[i].Starts.Seconds >= c.f.Stops.Seconds:
			c.Fault(starts, "the phase begins when the case has stopped", "before case_stops, which is "+c.f.Stops.String())
		}
		swab, drape := at("phases", i, "swab_share"), at("phases", i, "drape_share")
		if c.sound(swab, drape) && ph[i].SwabShare.High()+ph[i].DrapeShare.High() > 1 {
			c.Fault(swab, fmt.Sprintf("swabs and drapes together can take up %.3g of the blood", ph[i].SwabShare.High()+ph[i].DrapeShare.High()), "swab_share and drape_share that add up to 1 at most")
		}
		for _, e := range ph[i].ContaminantPerML {
			c.contaminantNamed(at("phases", i, "contaminants_per_ml."+e.Key), e.Key)
		}
	}
	c.bleedsTooMuch()
}

// contaminantNamed reports a name that no contaminant has.
func (c *checker) contaminantNamed(path, name string) {
	var known []string
	for i := range c.f.Contaminants {
		known = append(known, c.f.Contaminants[i].Name)
	}
	if slices.Contains(known, name) || !c.sound("contaminants") || !allPlain(known) {
		return
	}
	message := fmt.Sprintf("there is no contaminant %q", name)
	if len(known) == 0 {
		c.Fault(path, message, "a contaminant of this name under contaminants, where there are none")
		return
	}
	c.unknown(path, message, name, known)
}

// bleedsTooMuch reports a bleeding that no patient has enough blood for.
func (c *checker) bleedsTooMuch() {
	if !c.sound("phases", "patient", "case_stops") || len(c.f.Phases) == 0 {
		return
	}
	volume, worst, worstML, sum := c.f.Patient.typicalVolumeML(), 0, 0.0, 0.0
	for i := range c.f.Phases {
		ml := float64(c.f.Phases[i].BleedingMLMin.Low() * c.f.minutesOf(i))
		if ml > worstML {
			worst, worstML = i, ml
		}
		sum += ml
	}
	if volume > 0 && sum > maxBloodVolumes*volume {
		c.Fault(at("phases", worst, "bleeding_ml_min"), fmt.Sprintf("the phases shed at least %.0f mL, more than %d times the blood volume of about %.0f mL", sum, maxBloodVolumes, volume), "less bleeding, or shorter phases")
	}
}

// minutesOf is how long a phase lasts; the last lasts until the case stops.
func (f *File) minutesOf(i int) float64 {
	end := f.Stops.Seconds
	if i+1 < len(f.Phases) {
		end = f.Phases[i+1].Starts.Seconds
	}
	return float64(end-f.Phases[i].Starts.Seconds) / 60
}

// middle is a value in the middle of what can be drawn.
func middle(q yamlread.Quantity) float64 { return (q.Low() + q.High()) / 2 }

// typicalVolumeML is the blood volume of a patient in the middle of what can be drawn.
func (p *Patient) typicalVolumeML() float64 {
	height := 0.0
	if p.HeightCM != nil {
		height = middle(*p.HeightCM)
	}
	return bloodVolumeML(p.sex(), middle(p.AgeYears), height, middle(p.WeightKg))
}

func (c *checker) contaminants() {
	for i := range c.f.Contaminants {
		x := &c.f.Contaminants[i]
		full := at("contaminants", i, "haemostat_full_per_ml")
		if x.Procoagulant && x.HaemostatFull <= 0 && c.sound(full) {
			c.Fault(full, x.Name+" is procoagulant, so the amount with full effect is needed", "haemostat_full_per_ml above 0"+c.alsoNeeded(i))
		}
		if x.MustDivert && x.HaemostatFull <= 0 && x.LimitPerML <= 0 && c.sound(full, at("contaminants", i, "limit_per_ml")) && !x.Procoagulant {
			c.Fault(at("contaminants", i, "must_divert"), x.Name+" must be diverted, so an amount from which it counts is needed", "limit_per_ml or haemostat_full_per_ml above 0"+c.alsoNeeded(i))
		}
	}
}

// alsoNeeded says what else a contaminant lacks, so that nobody learns of it only in the next round.
func (c *checker) alsoNeeded(i int) string {
	x, also := &c.f.Contaminants[i], ""
	bled := slices.ContainsFunc(c.f.Phases, func(p Phase) bool { q, ok := p.ContaminantPerML.Get(x.Name); return ok && q.High() > 0 })
	if x.AgentPerML.High() <= 0 && !bled {
		also += "; agent_per_ml above 0 for the event agent_on that brings it, or contaminants_per_ml in a phase"
	}
	if x.Procoagulant && x.LimitPerML <= 0 {
		also += "; limit_per_ml if some of it in the product makes that unfit"
	}
	return also
}

func (c *checker) events() {
	questions := 0
	on := map[string]bool{} // agents that were brought, and sources that failed
	unsure := slices.ContainsFunc(c.f.Events, func(e Event) bool {
		return (e.kind() == sim.EventAgentOn || e.kind() == sim.EventAgentOff) && contaminantIndex(c.f.Contaminants, e.Agent) < 0
	})
	for i := range c.f.Events {
		e := &c.f.Events[i]
		if !c.sound(at("events", i, "kind")) {
			continue
		}
		c.eventTime(i, e)
		c.eventValues(i, e)
		switch e.kind() {
		case sim.EventAsk, sim.EventAskLoss, sim.EventRequestBlood:
			if questions++; questions == mostQuestions+1 {
				c.Fault(at("events", i, "kind"), "too many questions and requests", fmt.Sprintf("at most %d in a case", mostQuestions))
			}
		case sim.EventPumpBlood:
			if !on["bypass"] {
				c.Fault(at("events", i, "kind"), "there is no pump whose blood could be handed over", "bypass in an event before it")
			}
		case sim.EventAgentOn, sim.EventVacuumLost, sim.EventPowerLost, sim.EventBypass:
			on[e.Kind+e.Agent] = true
		case sim.EventAgentOff, sim.EventVacuumBack, sim.EventPowerBack:
			switch before := e.begun(); {
			case !on[before+e.Agent] && !unsure:
				c.Fault(at("events", i, "kind"), fmt.Sprintf("%s has nothing to end", e.Kind), before+" in an event before it")
			case on[before+e.Agent]:
				c.endsTooSoon(i, e)
			}
		}
	}
}

func (c *checker) eventTime(i int, e *Event) {
	when := at("events", i, "when")
	if e.When != nil && c.sound(when) {
		given := 0
		for _, q := range []*yamlread.Quantity{e.When.HaemoglobinBelow, e.When.ShedAbove, e.When.GivenAbove, e.When.ProductAbove} {
			if q != nil {
				given++
			}
		}
		if given != 1 {
			c.Fault(when, fmt.Sprintf("the event waits for %d conditions", given), "exactly one of haemoglobin_below_g_dl, shed_above_ml, given_above_ml, product_above_ml")
		}
	}
	if e.At == nil && e.When == nil && c.sound(at("events", i, "at"), when) {
		c.Fault(fmt.Sprintf("events[%d]", i), "nothing says when the event happens", "at, when or both")
	}
	later := at("events", i, "later_by_min")
	if e.At != nil && c.sound(at("events", i, "at"), later, "case_stops") && float64(e.At.Seconds)+float64(60*e.LaterByMin.High()) >= float64(c.f.Stops.Seconds) {
		c.Fault(at("events", i, "at"), "the event can come when the case has stopped", "at and later_by_min before case_stops, which is "+c.f.Stops.String())
	}
}

// valuesOf says which keys a kind of event needs beside its time; others of the list are refused.
var valuesOf = map[sim.EventKind][]string{
	sim.EventSay:           {"says"},
	sim.EventAskLoss:       {"says", "within_min"},
	sim.EventAsk:           {"says", "within_min", "right_answer"},
	sim.EventRequestBlood:  {"says", "within_min"},
	sim.EventAgentOn:       {"agent"},
	sim.EventAgentOff:      {"agent"},
	sim.EventDetectorFault: {"detector_offset"},
	sim.EventBowlLeak:      {"leak_ml_min"},
	sim.EventHeparin:       {"heparin_iu"},
	sim.EventProtamine:     {"protamine_mg"},
	sim.EventBypass:        {"pump_ml"},
	sim.EventPumpBlood:     {"says", "within_min"},
	sim.EventLineLoose:     {"line"},
}

func (c *checker) eventValues(i int, e *Event) {
	needs := valuesOf[e.kind()]
	for _, v := range []struct {
		key   string
		given bool
		shape string
	}{
		{"says", e.Says != "", "the words, in quotes"},
		{"within_min", e.WithinMin > 0, "minutes above 0"},
		{"right_answer", e.RightAnswer != nil, "true or false"},
		{"agent", e.Agent != "", "the name of a contaminant"},
		{"detector_offset", e.DetectorOffset != nil, "a number"},
		{"leak_ml_min", e.LeakMLMin != nil, "a number"},
		{"heparin_iu", e.HeparinIU != nil, "a number"},
		{"protamine_mg", e.ProtamineMG != nil, "a number"},
		{"pump_ml", e.PumpML != nil, "a number"},
		{"line", e.Line != "", "the name of a line"},
	} {
		path := at("events", i, v.key)
		needed := slices.Contains(needs, v.key)
		switch {
		case !c.sound(path):
		case needed && !v.given && c.Has(path):
			c.Fault(path, fmt.Sprintf("%s needs %s", e.Kind, v.key), v.shape)
		case needed && !v.given:
			c.Fault(at("events", i, "kind"), fmt.Sprintf("%s needs %s", e.Kind, v.key), v.key+": "+v.shape)
		case v.given && !needed && v.key != "says":
			c.Fault(path, fmt.Sprintf("%s has no use for %s", e.Kind, v.key), "the key left out")
		}
	}
	if e.Says != "" && e.Who == sim.Bench.String() && needs != nil && slices.Contains(needs, "says") && c.sound(at("events", i, "who")) {
		c.Fault(at("events", i, "who"), "nobody says the words", "who: surgeon, anaesthetist, scrub_nurse or laboratory")
	}
	agent := at("events", i, "agent")
	if e.Agent == "" || !slices.Contains(needs, "agent") || !c.sound(agent) {
		return
	}
	c.contaminantNamed(agent, e.Agent)
	if k := contaminantIndex(c.f.Contaminants, e.Agent); k >= 0 && e.kind() == sim.EventAgentOn {
		amount := at("contaminants", k, "agent_per_ml")
		if c.f.Contaminants[k].AgentPerML.High() <= 0 && c.sound(amount) {
			c.Fault(agent, e.Agent+" has no agent_per_ml, so bringing it changes nothing", "agent_per_ml above 0 in contaminants")
		}
	}
}

// bench checks that no hook carries two packs and no fault stands twice.
func (c *checker) bench() {
	var hooks []string
	for _, p := range c.f.Bench.Packs {
		hooks = append(hooks, p.On)
	}
	c.unique("bench.packs", "on", hooks)
	for i, p := range c.f.Bench.Packs {
		if p.InStore && p.On != "" && c.sound(at("bench.packs", i, "on"), at("bench.packs", i, "in_store")) {
			c.Fault(at("bench.packs", i, "in_store"), "a pack that hangs on a hook is not in the store", "in_store or on, not both")
		}
	}
	for _, list := range []struct {
		path  string
		words []string
	}{{"bench.open_clamps", c.f.Bench.OpenClamps}, {"bench.loose_lines", c.f.Bench.LooseLines},
		{"right.anticoagulants", c.f.Right.Anticoagulants}, {"right.bowls", c.f.Right.Bowls}} {
		for i, word := range list.words {
			if word != "" && slices.Index(list.words, word) < i {
				c.Fault(fmt.Sprintf("%s[%d]", list.path, i), word+" stands here twice", "each name once")
			}
		}
	}
}

// EventNeeds lists the keys that a kind of event needs beside its time.
func EventNeeds(kind string) []string { return valuesOf[(&Event{Kind: kind}).kind()] }
