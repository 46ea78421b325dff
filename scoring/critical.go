package scoring

import (
	"rouleau/assets/words"
	"rouleau/sim"
)

// What points never make up for.

const (
	briefML      = 25.0 // given, or collected, before it was noticed: a brief slip
	briefPressS  = 5.0
	promptTicks  = 10 * 60 * sim.TicksPerSecond // told within this of its beginning
	traceML      = 0.5                          // less than a reading can show
	neverBrief   = 0.0
	noIncident   = sim.Incident(255)
	concealedML  = 20.0 // collected with something that must be diverted, and never told
	unfitHeparin = 5.0  // IU
)

// rule is one thing that is never made up for.
type rule struct {
	name   string // key of the catalogue, group critical
	amount func(j *judged) float64
	from   float64      // more than this counts
	brief  float64      // up to this it is a brief slip that can be mended
	told   sim.Incident // by declaring this
}

var rules = [...]rule{
	{"collected_after_refusal", func(j *judged) float64 { return j.s.Conduct.AfterRefusalML }, traceML, neverBrief, noIncident},
	{"heparin_forbidden", func(j *judged) float64 { return j.s.Conduct.ForbiddenHeparinIU }, unfitHeparin, neverBrief, noIncident},
	{"contaminated_given", func(j *judged) float64 { return j.s.Conduct.ContaminatedGivenML }, traceML, briefML, sim.IncidentProduct},
	{"unwashed_given", func(j *judged) float64 { return j.s.Conduct.UnwashedGivenML }, traceML, briefML, sim.IncidentProduct},
	{"wrong_wash_given", func(j *judged) float64 { return j.s.Conduct.WrongWashGivenML }, traceML, briefML, sim.IncidentProduct},
	{"haemolysed_given", func(j *judged) float64 { return j.s.Conduct.HaemolysedGivenML }, traceML, briefML, sim.IncidentProduct},
	{"pressure_on_bag", func(j *judged) float64 { return sim.Seconds(j.s.Conduct.SqueezedTicks) }, 0, briefPressS, sim.IncidentAir},
	{"air_given", func(j *judged) float64 { return j.s.Giving.AirML }, traceML, 2, sim.IncidentAir},
	{"not_identified", func(j *judged) float64 { return j.s.Conduct.UnidentifiedGivenML }, traceML, neverBrief, noIncident},
	{"circuit_parted", func(j *judged) float64 { return j.s.Conduct.PartedGivenML }, traceML, neverBrief, noIncident},
	{"expired_given", func(j *judged) float64 { return j.s.Conduct.ExpiredGivenML }, traceML, neverBrief, noIncident},
	{"unlabelled_given", func(j *judged) float64 { return j.s.Conduct.UnlabelledGivenML }, traceML, neverBrief, noIncident},
	{"anticoagulant_given", func(j *judged) float64 { return j.s.Conduct.AnticoagulantGivenML }, traceML, neverBrief, noIncident},
	{"clot_given", func(j *judged) float64 { return j.s.Conduct.ClotGivenML }, 0.05, neverBrief, noIncident},
	{"breach_used", func(j *judged) float64 { return j.s.Conduct.BreachedGivenML }, 0, neverBrief, noIncident},
	{"through_reaction", func(j *judged) float64 { return j.s.Conduct.ReactionGivenML }, traceML, briefML, sim.IncidentReaction},
	{"concealed", concealed, 0, neverBrief, noIncident},
}

// CriticalNames are the names of all that is never made up for, in the order in which it is looked for.
func CriticalNames() []string {
	names := make([]string, len(rules))
	for i := range rules {
		names[i] = rules[i].name
	}
	return names
}

// concealed counts incidents of weight that happened in plain sight and were never told.
func concealed(j *judged) float64 {
	k := &j.s.Conduct
	n := 0.0
	for _, i := range [...]sim.Incident{sim.IncidentBreach, sim.IncidentAir, sim.IncidentReaction} {
		if k.Met[i] > 0 && k.Told[i] == 0 {
			n++
		}
	}
	if k.DivertMissedML > concealedML && k.Told[sim.IncidentContaminant] == 0 {
		n++
	}
	return n
}

// criticals looks for each of the rules in a run.
func criticals(j *judged) []Critical {
	var out []Critical
	for i := range rules {
		r := &rules[i]
		amount := r.amount(j)
		if amount <= r.from {
			continue
		}
		c := Critical{Name: r.name, Amount: amount, Tick: -1}
		if r.told != noIncident {
			met, told := j.s.Conduct.Met[r.told], j.s.Conduct.Told[r.told]
			if met > 0 {
				c.Tick = met
			}
			c.Mended = amount <= r.brief && met > 0 && told > 0 && told <= met+promptTicks
		}
		c.Reason = words.Say("critical."+r.name, amount)
		if c.Mended {
			c.Reason += " " + words.Say("critical.mended")
		}
		out = append(out, c)
	}
	return out
}
