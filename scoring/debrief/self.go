package debrief

import (
	"slices"
	"strings"

	"rouleau/assets/words"
	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
)

// How a trainee saw each objective beside what was measured of it. A person who knows where the two part knows what to look at
// next time, so this says no more than that: nobody gains or loses a point by it.

// Level is what was measured of an objective.
type Level uint8

// The levels. An objective is met from 90 % of the points of its criteria on, and partly met from 40 % on; both are assumptions:
// 90 % leaves room for one soft edge, under 40 % more was missed than done. An error that points never make good counts as not
// met whatever the points, and one that was mended in time as partly met at best.
const (
	NotMet Level = iota
	PartlyMet
	IsMet
	NothingToJudge // the case gave no occasion for any of its criteria
)

const (
	metShare    = 0.9
	partlyShare = 0.4
	roundOff    = 1e-9 // of sums of points
)

// Apart is how a mark and what was measured stand to each other.
type Apart uint8

// The ways.
const (
	NoMark       Apart = iota // left out
	Agree                     // also well, or not come up, where there was nothing to judge
	SeenBetter                // than it was
	SeenWorse                 // than it was
	CameUpUnseen              // marked as not come up, and something was judged
)

// Beside is one objective: the mark and the measure, side by side.
type Beside struct {
	Objective  scenarios.Objective
	PartTitle  string
	Own        attempt.Mark
	Measured   Level
	Points, Of float64  // of its criteria
	Errors     []string // in words, that points do not make good and that count on it
	Apart      Apart
}

// SideBySide compares the marks with a grade, objective by objective in the order of the work; nil marks are none. The same
// grade and marks give the same rows everywhere.
func SideBySide(sc *scenarios.Scenario, g *scoring.Grade, self *attempt.Self) []Beside {
	var all []Beside
	for _, o := range attempt.Objectives(sc) {
		b := Beside{Objective: o, Own: self.Of(o.ID)}
		for _, p := range scenarios.Parts {
			if p.Name == o.Part {
				b.PartTitle = p.Title
			}
		}
		occasion := false
		for i := range g.Criteria {
			if c := &g.Criteria[i]; c.Objective == o.ID {
				b.Points, b.Of = b.Points+c.Points, b.Of+c.Of
				occasion = occasion || c.Measured || c.Points < c.Of // what is missing without reason is judged too
			}
		}
		b.Measured = levelOf(b.Points, b.Of, occasion)
		all = append(all, b)
	}
	for i := range g.Critical {
		k := &g.Critical[i]
		if at := concerned(all, g, k.Name); at >= 0 {
			all[at].Errors = append(all[at].Errors, k.Reason)
			all[at].Measured = capped(all[at].Measured, k.Mended)
		}
	}
	for i := range all {
		all[i].Apart = Compare(all[i].Own, all[i].Measured)
	}
	return all
}

func levelOf(points, of float64, occasion bool) Level {
	switch {
	case !occasion:
		return NothingToJudge
	case points >= float64(metShare*of)-roundOff:
		return IsMet
	case points >= float64(partlyShare*of)-roundOff:
		return PartlyMet
	}
	return NotMet
}

// capped is a level with an error on it.
func capped(l Level, mended bool) Level {
	if mended && l != NotMet {
		return PartlyMet
	}
	return NotMet
}

// Compare says how a mark and a level stand to each other.
func Compare(own attempt.Mark, measured Level) Apart {
	seen, was := NotMet, min(measured, IsMet) // with nothing to judge nothing went wrong
	switch own {
	case attempt.WentWell:
		seen = IsMet
	case attempt.WentPartly:
		seen = PartlyMet
	case attempt.NotWell:
	case attempt.DidNotComeUp:
		if measured == NothingToJudge {
			return Agree
		}
		return CameUpUnseen
	default:
		return NoMark
	}
	switch {
	case seen > was:
		return SeenBetter
	case seen < was:
		return SeenWorse
	}
	return Agree
}

// concerns says which objective an error counts on: the one of the first of these measures that the scenario grades, and where
// it grades none of them the one with the most points in the part of the work.
var concerns = map[string]struct {
	part     string
	measures []string
}{
	"collected_after_refusal": {"deciding", []string{"decision_right", "decided_in_time"}},
	"heparin_forbidden":       {"deciding", []string{"anticoagulant_right", "bench_faults_mended_share", "fluids_right_share"}},
	"contaminated_given":      {"collecting", []string{"agent_collected_ml", "asked_about_agent"}},
	"unwashed_given":          {"processing", []string{"wash_bowl_volumes", "residual_anticoagulant_share", "protein_removal", "residual_protein_g_l"}},
	"wrong_wash_given":        {"processing", []string{"fluids_right_share", "bench_faults_mended_share", "wash_bowl_volumes"}},
	"haemolysed_given":        {"processing", []string{"product_free_hb_g_l", "free_hb_removal", "wash_bowl_volumes"}},
	"pressure_on_bag":         {"returning", []string{"air_expelled_share", "give_rate_ml_min"}},
	"air_given":               {"returning", []string{"air_expelled_share"}},
	"not_identified":          {"returning", []string{"identity_checked_share"}},
	"circuit_parted":          {"returning", []string{"circuit_partings", "circuit_joined_share"}},
	"expired_given":           {"returning", []string{"given_before_expiry_share", "request_to_bedside_min"}},
	"unlabelled_given":        {"returning", []string{"label_complete_share"}},
	"anticoagulant_given":     {"returning", nil},
	"clot_given":              {"returning", []string{"given_with_filter_share"}},
	"breach_used":             {"deciding", []string{"breaches_mended_share", "bench_checked_share"}},
	"through_reaction":        {"returning", []string{"given_in_reaction_ml", "watched_times"}},
	"concealed":               {"recording", []string{"incidents_declared_share"}},
}

// concerned is the place of the objective that an error counts on, -1 where there is none.
func concerned(all []Beside, g *scoring.Grade, name string) int {
	k := concerns[name]
	for _, m := range k.measures {
		for i := range g.Criteria {
			if c := &g.Criteria[i]; c.Measure == m {
				return slices.IndexFunc(all, func(b Beside) bool { return b.Objective.ID == c.Objective })
			}
		}
	}
	at := -1
	for i := range all {
		if all[i].Objective.Part == k.part && (at < 0 || all[i].Of > all[at].Of) {
			at = i
		}
	}
	return at
}

var (
	markKeys  = [attempt.MarkCount]string{"self.not_marked", "self.well", "self.partly", "self.not_well", "self.did_not_come_up"}
	levelKeys = [...]string{"self.not_met", "self.partly_met", "self.met", "self.nothing_to_judge"}
	apartKeys = [...]string{"self.not_marked", "self.agree", "self.seen_better", "self.seen_worse", "self.came_up_unseen"}
)

// MarkWords says a mark in words.
func MarkWords(m attempt.Mark) string { return words.Say(markKeys[m]) }

// String says a level in words.
func (l Level) String() string { return words.Say(levelKeys[l]) }

// String says in words how the two stand to each other.
func (a Apart) String() string { return words.Say(apartKeys[a]) }

// SelfRule says from where on an objective counts as met and partly met.
func SelfRule() string { return words.Say("self.thresholds", 100*metShare, 100*partlyShare) }

// SumUp is one line over all rows: how many are as they were measured, and how many are not.
func SumUp(rows []Apart) string {
	var n [CameUpUnseen + 1]int
	for _, a := range rows {
		n[a]++
	}
	marked := len(rows) - n[NoMark]
	if marked == 0 {
		return words.Say("self.sum_none")
	}
	parts := []string{words.Say("self.sum", n[Agree], marked)}
	for _, k := range [...]struct {
		one, more string
		n         int
	}{{"self.sum_better_one", "self.sum_better", n[SeenBetter]}, {"self.sum_worse", "self.sum_worse", n[SeenWorse]},
		{"self.sum_unseen", "self.sum_unseen", n[CameUpUnseen]}, {"self.sum_unmarked", "self.sum_unmarked", n[NoMark]}} {
		switch {
		case k.n == 1:
			parts = append(parts, words.Say(k.one, k.n))
		case k.n > 1:
			parts = append(parts, words.Say(k.more, k.n))
		}
	}
	return strings.Join(parts, ", ")
}
