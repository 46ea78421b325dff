package study

import (
	"math"
	"slices"

	"rouleau/assets/words"
	"rouleau/scoring/study"
)

// This file makes the figures of people. Only first attempts count, and fewer than thirty people have no figures: what parts a
// few people from each other is chance.

// Cohort is how people did.
type Cohort struct {
	N        int              `json:"n"` // people, by their first attempts
	Later    int              `json:"later_attempts_left_out"`
	Note     string           `json:"note"`
	Pass     *Interval        `json:"pass,omitempty"`
	Points   *Interval        `json:"points,omitempty"`
	SD       *Interval        `json:"sd,omitempty"`
	AUC      *Interval        `json:"auc_of_steady,omitempty"`
	Criteria []CohortCriteria `json:"criteria,omitempty"`
	Critical []CohortCritical `json:"critical,omitempty"`
	hist     [bins]int
}

// CohortCriteria is one criterion among people. Where it was measured of too few there are no figures.
type CohortCriteria struct {
	Name        string    `json:"name"`
	N           int       `json:"n"` // people of whom it was measured
	Difficulty  *Interval `json:"difficulty,omitempty"`
	Correlation *Interval `json:"correlation_with_rest,omitempty"`
	AUC         *Interval `json:"auc_of_steady,omitempty"`
}

// CohortCritical is how often something that is never made up for came about among people.
type CohortCritical struct {
	Name  string   `json:"name"`
	Share Interval `json:"share"`
}

// cohort makes the figures of people; criteria are the places of theirs among those of the case.
func (f *Figures) cohort(people []person, later int, criteria []int, t *study.Table) {
	c := &Cohort{N: len(people), Later: later}
	f.Cohort = c
	if c.N < enough {
		c.Note = words.Say("study.too_few", c.N, enough)
		return
	}
	c.Note = words.Say("study.cohort_note", c.N, c.Later)
	points, passed := make([]float64, c.N), 0
	for i, p := range people {
		points[i] = p.points
		c.hist[min(bins-1, int(p.points*bins/100))]++
		if p.passed {
			passed++
		}
	}
	pass, mean, sd := Wilson(passed, c.N), Mean(points).between(0, 100), Deviation(points)
	c.Pass, c.Points, c.SD = &pass, &mean, &sd
	best := slices.DeleteFunc(slices.Clone(t.Rows), func(r study.Row) bool { return r.Operator != steady })
	c.AUC = against(pointsOf(best), points)
	if c.AUC == nil {
		c.Note += " " + words.Say("study.cohort_few_runs", enough, len(best))
	}
	for k, which := range criteria {
		c.Criteria = append(c.Criteria, f.criterionOf(people, k, which, best))
	}
	c.criticals(people)
}

// criterionOf makes the figures of one criterion, the k-th in the file and which among those of the case, of those people of
// whom it was measured.
func (f *Figures) criterionOf(people []person, k, which int, best []study.Row) CohortCriteria {
	var share, rest []float64
	for _, p := range people {
		if !math.IsNaN(p.shares[k]) {
			share = append(share, p.shares[k])
			rest = append(rest, p.points-f.Criteria[which].Of*p.shares[k])
		}
	}
	c := CohortCriteria{Name: f.Criteria[which].Name, N: len(share)}
	if c.N < enough {
		return c
	}
	difficulty := Proportion(share)
	c.Difficulty, c.Correlation = &difficulty, Correlation(share, rest)
	c.AUC = against(valuesOf(best, func(r *study.Row) float64 { return r.Criteria[which] }), share)
	return c
}

// against is the area of steady's runs against people, where both are enough.
func against(best, people []float64) *Interval {
	if len(best) < enough || len(people) < enough {
		return nil
	}
	auc := AUC(best, people)
	return &auc
}

// criticals counts people by what is never made up for, for what came about.
func (c *Cohort) criticals(people []person) {
	var names []string
	for _, p := range people {
		names = append(names, p.critical...)
	}
	slices.Sort(names)
	for _, name := range slices.Compact(names) {
		n := 0
		for _, p := range people {
			if slices.Contains(p.critical, name) {
				n++
			}
		}
		c.Critical = append(c.Critical, CohortCritical{name, Wilson(n, c.N)})
	}
}

// within says whether a number was read and lies between 0 and the most.
func within(x, most float64) bool { return !math.IsNaN(x) && x >= 0 && x <= most }
