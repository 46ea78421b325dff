package study

import "rouleau/assets/words"

// This file holds what a case must show before people are judged by it, and what a study warns of.

const (
	steadyPasses = 0.95 // of steady's runs, at least
	faultyPasses = 0.10 // of a faulty operator's, at most, where its failing matters
	partsWhole   = 0.95 // area under the curve of the points against steady's, at least, where it matters
	partsOne     = 0.80 // of one criterion, for at least one pair
)

// warn tells of criteria that tell nobody apart or that point the wrong way.
func (f *Figures) warn() {
	say := func(key string, args ...any) { f.Warnings = append(f.Warnings, words.Say(key, args...)) }
	for i := range f.Criteria {
		c := &f.Criteria[i]
		switch {
		case len(f.Operators) < 2 || c.BestBy == "":
		case c.Best < partsOne:
			say("study.parts_nobody", c.Name, c.Best)
		case c.BestActive < partsOne:
			say("study.parts_idle_alone", c.Name, c.BestActive)
		}
		for k, auc := range c.AUC {
			if auc.N > 0 && auc.Value <= 1-partsOne {
				say("study.other_way", c.Name, f.Operators[k].Name, auc.Value)
			}
		}
		for k := range c.Share {
			if f.Operators[k].Name == steady && c.Share[k].N > 0 && c.Share[k].Value < partsOne {
				say("study.steady_loses", c.Name, 100*c.Share[k].Value)
			}
		}
		if c.Correlation != nil && c.Correlation.High < 0 {
			say("study.against_the_rest", c.Name, c.Correlation.Value)
		}
	}
}

// Broken lists what of the rules for cases does not hold, in words.
func (f *Figures) Broken() []string {
	var out []string
	say := func(key string, args ...any) { out = append(out, words.Say(key, args...)) }
	for i := range f.Operators {
		o := &f.Operators[i]
		switch {
		case o.N == 0:
		case o.Name == steady && o.Pass.Value < steadyPasses:
			say("study.steady_fails", 100*o.Pass.Value)
		case o.Name == idle && o.Pass.Value > 0:
			say("study.idle_passes", 100*o.Pass.Value)
		case o.Name != steady && o.Name != idle && len(o.Matters) > 0 && o.Pass.Value > faultyPasses:
			say("study.faulty_passes", o.Name, 100*o.Pass.Value)
		}
		if o.Name != steady && o.N > 0 && o.AUC != nil && (len(o.Matters) > 0 || o.Name == idle) && o.AUC.Value < partsWhole {
			say("study.not_parted", o.Name, o.AUC.Value)
		}
	}
	if line := f.Recovery.outside(); line != "" {
		out = append(out, line)
	}
	for i := range f.Criteria {
		if c := &f.Criteria[i]; c.BestBy != "" && c.Best < partsOne {
			say("study.parts_nobody", c.Name, c.Best)
		}
	}
	return out
}
