package scoring

import (
	"rouleau/assets/words"
	"rouleau/scenarios"
	"rouleau/sim"
)

// What points never make up for.

const promptTicks = scenarios.PromptMin * 60 * sim.TicksPerSecond

// amounts is how much of each of scenarios.Criticals there was in a run.
var amounts = map[string]func(j *judged) float64{
	"collected_after_refusal": func(j *judged) float64 { return j.s.Conduct.AfterRefusalML },
	"heparin_forbidden":       func(j *judged) float64 { return j.s.Conduct.ForbiddenHeparinIU },
	"contaminated_given":      func(j *judged) float64 { return j.s.Conduct.ContaminatedGivenML },
	"unwashed_given":          func(j *judged) float64 { return j.s.Conduct.UnwashedGivenML },
	"wrong_wash_given":        func(j *judged) float64 { return j.s.Conduct.WrongWashGivenML },
	"haemolysed_given":        func(j *judged) float64 { return j.s.Conduct.HaemolysedGivenML },
	"pressure_on_bag":         func(j *judged) float64 { return sim.Seconds(j.s.Conduct.SqueezedTicks) },
	"air_given":               func(j *judged) float64 { return j.s.Giving.AirML },
	"not_identified":          func(j *judged) float64 { return j.s.Conduct.UnidentifiedGivenML },
	"circuit_parted":          func(j *judged) float64 { return j.s.Conduct.PartedGivenML },
	"expired_given":           func(j *judged) float64 { return j.s.Conduct.ExpiredGivenML },
	"unlabelled_given":        func(j *judged) float64 { return j.s.Conduct.UnlabelledGivenML },
	"anticoagulant_given":     func(j *judged) float64 { return j.s.Conduct.AnticoagulantGivenML },
	"clot_given":              func(j *judged) float64 { return j.s.Conduct.ClotGivenML },
	"breach_used":             func(j *judged) float64 { return j.s.Conduct.BreachedGivenML },
	"through_reaction":        func(j *judged) float64 { return j.s.Conduct.ReactionGivenML },
	"concealed":               concealed,
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
	if k.DivertMissedML > scenarios.ConcealedML && k.Told[sim.IncidentContaminant] == 0 {
		n++
	}
	return n
}

// CriticalAmount is how much there has been, by a state, of what points never make up for, and from how much on it counts.
func CriticalAmount(name string, s *sim.State) (amount, from float64) {
	for i := range scenarios.Criticals {
		if r := &scenarios.Criticals[i]; r.Name == name {
			return amounts[name](&judged{s: s}), r.From
		}
	}
	return 0, 0
}

// criticals looks for each of the rules in a run.
func criticals(j *judged) []Critical {
	var out []Critical
	for i := range scenarios.Criticals {
		r := &scenarios.Criticals[i]
		amount := amounts[r.Name](j)
		if amount <= r.From {
			continue
		}
		c := Critical{Name: r.Name, Amount: amount, Tick: -1}
		if r.Told != scenarios.NoIncident {
			met, told := j.s.Conduct.Met[r.Told], j.s.Conduct.Told[r.Told]
			if met > 0 {
				c.Tick = met
			}
			c.Mended = amount <= r.Brief && met > 0 && told > 0 && told <= met+promptTicks
		}
		c.Reason = words.Say("critical."+r.Name, amount)
		if c.Mended {
			c.Reason += " " + words.Say("critical.mended")
		}
		out = append(out, c)
	}
	return out
}
