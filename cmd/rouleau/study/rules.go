package study

import (
	"fmt"
	"slices"
	"strings"

	"rouleau/assets/words"
)

// This file holds what a case must show before people are judged by it, and what a study warns of.

const (
	steadyPasses = 0.95 // of steady's runs, at least
	faultyPasses = 0.10 // of a faulty operator's, at most, where its failing matters
	partsWhole   = 0.95 // area under the curve of the points against steady's, at least, where it matters
	partsOne     = 0.80 // of one criterion, for at least one pair
	mostNamed    = 6    // criteria in one line
	mostCosts    = 4    // criteria that are named where a failing costs too little
)

// faulty says whether an operator has a failing by which the rules look at it here.
func (o *Operator) faulty() bool {
	return o.Name != steady && o.Name != idle && o.N > 0 && len(o.Matters) > 0
}

// warn tells of criteria that tell few apart or that point the wrong way. What breaks a rule is told by Broken alone.
func (f *Figures) warn() {
	say := func(key string, args ...any) { f.Warnings = append(f.Warnings, words.Say(key, args...)) }
	if alone := f.partedByIdleAlone(); len(alone) > 0 {
		say("study.parts_idle_alone", named(alone))
	}
	for i := range f.Criteria {
		c := &f.Criteria[i]
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

// named is a list in one line; of a long one the first names and how many there are more.
func named(names []string) string {
	if len(names) <= mostNamed {
		return strings.Join(names, ", ")
	}
	return words.Say("study.and_more", strings.Join(names[:mostNamed], ", "), len(names)-mostNamed)
}

// partedByIdleAlone names the criteria in which only who does nothing differs from steady. Where nobody else played against
// steady that says nothing, and there are none.
func (f *Figures) partedByIdleAlone() (names []string) {
	if !slices.ContainsFunc(f.Operators, func(o Operator) bool { return o.Name != steady && o.Name != idle && o.N > 0 }) {
		return nil
	}
	for i := range f.Criteria {
		if c := &f.Criteria[i]; c.Best >= partsOne && c.BestActive < partsOne {
			names = append(names, c.Name)
		}
	}
	return names
}

// Broken lists what of the rules for cases does not hold, in words.
func (f *Figures) Broken() []string {
	out := []string{}
	say := func(key string, args ...any) { out = append(out, words.Say(key, args...)) }
	for i := range f.Operators {
		o := &f.Operators[i]
		switch {
		case o.N == 0:
		case o.Name == steady && o.Pass.Value < steadyPasses:
			say("study.steady_fails", 100*o.Pass.Value)
		case o.Name == idle && o.Pass.Value > 0:
			say("study.idle_passes", 100*o.Pass.Value)
		case o.faulty() && o.Pass.Value > faultyPasses:
			say("study.faulty_passes", o.Name, 100*o.Pass.Value, f.costs(i))
		}
		if o.N > 0 && o.AUC != nil && (o.faulty() || o.Name == idle) && o.AUC.Value < partsWhole {
			say("study.not_parted", o.Name, o.AUC.Value)
		}
	}
	if line := f.Recovery.outside(); line != "" {
		out = append(out, line)
	}
	var nobody []string
	for i := range f.Criteria {
		if c := &f.Criteria[i]; c.BestBy != "" && c.Best < partsOne {
			nobody = append(nobody, words.Say("study.best_auc", c.Name, c.Best))
		}
	}
	if len(nobody) > 0 {
		say("study.parts_nobody", named(nobody))
	}
	return out
}

// costs says in words what its failing costs an operator, against steady, and what to change so that it costs more.
func (f *Figures) costs(who int) string {
	yard := slices.IndexFunc(f.Operators, func(o Operator) bool { return o.Name == steady })
	type cost struct {
		name     string
		lost, of float64
	}
	var costs []cost
	all := 0.0
	for _, k := range f.Operators[who].shows {
		c := &f.Criteria[k]
		lost := c.Of * (c.Share[yard].Value - c.Share[who].Value)
		costs = append(costs, cost{c.Name, lost, c.Of})
		all += lost
	}
	slices.SortStableFunc(costs, func(a, b cost) int {
		switch {
		case a.lost > b.lost:
			return -1
		case a.lost < b.lost:
			return 1
		}
		return 0
	})
	var named []string
	for _, c := range costs[:min(mostCosts, len(costs))] {
		named = append(named, words.Say("study.cost", c.name, max(0, c.lost), c.of))
	}
	return words.Say("study.costs", max(0, all), strings.Join(named, ", "), f.Operators[who].Points.Value, f.PassMark)
}

// NotJudged tells of operators about whom the rules say nothing though they pass: their file does not say what their failing
// shows in, or it shows in too little of this case.
func (f *Figures) NotJudged() []string {
	out := []string{}
	for i := range f.Operators {
		o := &f.Operators[i]
		switch {
		case o.Name == steady || o.Name == idle || o.N == 0 || o.faulty():
		case !o.says:
			out = append(out, words.Say("study.shows_nothing", o.Name, 100*o.Pass.Value))
		case o.Pass.Value > faultyPasses:
			out = append(out, words.Say("study.not_at_stake", o.Name, 100*o.Pass.Value))
		}
	}
	return out
}

// Verdict says in one sentence whether the rules hold, and names only what was looked at.
func (f *Figures) Verdict() string {
	if n := len(f.Broken()); n > 0 {
		return words.Say("study.rules_broken", n)
	}
	var held, faulty []string
	for i := range f.Operators {
		switch o := &f.Operators[i]; {
		case o.N == 0:
		case o.Name == steady:
			held = append(held, words.Say("study.holds_steady", 100*o.Pass.Value, o.N))
		case o.Name == idle:
			held = append(held, words.Say("study.holds_idle"))
		case o.faulty():
			faulty = append(faulty, fmt.Sprintf("%s %.1f %%", o.Name, 100*o.Pass.Value))
		}
	}
	if len(faulty) > 0 {
		held = append(held, words.Say("study.holds_faulty", strings.Join(faulty, ", ")))
	}
	if slices.ContainsFunc(f.Criteria, func(c Criterion) bool { return c.BestBy != "" }) {
		held = append(held, words.Say("study.holds_criteria"))
	}
	if f.Recovery.asked && f.Recovery.Without != nil {
		held = append(held, words.Say("study.holds_recovery"))
	}
	return words.Say("study.rules_hold", strings.Join(held, "; "))
}
