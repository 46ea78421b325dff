package study

import (
	"slices"

	"rouleau/assets/words"
	"rouleau/scenarios"
	"rouleau/scoring/operators"
	"rouleau/scoring/study"
	"rouleau/sim"
)

// This file holds what a case gives back, against published experience: steady with and without rinsing swabs on the same
// seeds.

// Recovery is what share of the red cells that left the patient came back.
type Recovery struct {
	Steady    Interval  `json:"steady"`
	Without   *Interval `json:"without_rinsing_swabs,omitempty"` // nil where that was not played
	FromSwabs *Interval `json:"share_from_swabs,omitempty"`      // of what came back, the mean of the seeds
	Least     float64   `json:"least"`                           // the band for Without that the case asks for
	Most      float64   `json:"most"`
	Why       string    `json:"why,omitempty"` // it asks for another than the usual
	asked     bool      // a band is asked for: something is processed here
}

// recovery sets both ways of playing against each other, seed by seed.
func (f *Figures) recovery(sc *scenarios.Scenario, rows []study.Row) {
	r := &f.Recovery
	r.Least, r.Most, r.Why = sc.Recovery.Least, sc.Recovery.Most, sc.Recovery.Why
	r.asked = sc.Right.RightDecision() == sim.SetUpToProcess
	with := map[uint64]float64{}
	var all, without, swabs []float64
	for _, row := range rows { // sorted by seed, and steady before its variation
		switch row.Operator {
		case steady:
			with[row.Seed] = row.Recovery
			all = append(all, row.Recovery)
		case operators.WithoutRinsing:
			without = append(without, row.Recovery)
			if w := with[row.Seed]; w > 0 {
				swabs = append(swabs, 1-row.Recovery/w)
			}
		}
	}
	r.Steady = Proportion(all)
	if len(without) > 0 {
		w := Proportion(without)
		r.Without = &w
	}
	if len(swabs) > 0 {
		s := Mean(swabs)
		r.FromSwabs = &s
	}
}

// outside says in words that steady gives back less or more than the case asks for, and is empty where it does not.
func (r *Recovery) outside() string {
	if !r.asked || r.Without == nil || r.Without.Value >= r.Least && r.Without.Value <= r.Most {
		return ""
	}
	return words.Say("study.recovery_outside", r.Without.Value, r.Least, r.Most)
}

// lines are the figures in words.
func (r *Recovery) lines() []string {
	out := []string{words.Say("study.recovery_steady", r.Steady.Value, r.Steady.Low, r.Steady.High, r.Steady.N)}
	if r.Without != nil {
		out = append(out, words.Say("study.recovery_without", r.Without.Value, r.Without.Low, r.Without.High, r.Without.N))
	}
	if r.Without != nil && r.asked {
		out = append(out, words.Say("study.recovery_band", r.Least, r.Most))
		if r.Why != "" {
			out = append(out, r.Why)
		}
	}
	if r.FromSwabs != nil {
		out = append(out, words.Say("study.recovery_swabs", 100*r.FromSwabs.Value, 100*r.FromSwabs.Low, 100*r.FromSwabs.High, r.FromSwabs.N))
	}
	return out
}

// withoutVariations are the operators that a case must part.
func withoutVariations(who []*operators.Operator) []*operators.Operator {
	return slices.DeleteFunc(slices.Clone(who), func(o *operators.Operator) bool { return o.Name == operators.WithoutRinsing })
}
