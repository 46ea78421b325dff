package study

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"

	"rouleau/assets/words"
	"rouleau/scoring/study"
)

// This file reads the results of people. Only first attempts count, and fewer than thirty people have no figures.

// Cohort is how people did.
type Cohort struct {
	N        int              `json:"n"` // people, by their first attempts
	Later    int              `json:"later_attempts_left_out"`
	Note     string           `json:"note"`
	Pass     *Interval        `json:"pass,omitempty"`
	Points   *Interval        `json:"points,omitempty"`
	AUC      *Interval        `json:"auc_of_steady,omitempty"`
	Criteria []CohortCriteria `json:"criteria,omitempty"`
	hist     [bins]int
}

// CohortCriteria is one criterion among people.
type CohortCriteria struct {
	Name        string    `json:"name"`
	Difficulty  Interval  `json:"difficulty"`
	Correlation *Interval `json:"correlation_with_rest,omitempty"`
}

// person is somebody's first attempt.
type person struct {
	name    string
	attempt int
	passed  bool
	points  float64
	shares  []float64
}

// ReadCohort reads a CSV with the columns person, attempt, passed, points and, as far as they are known, one for each
// criterion with the share of its points, 0 to 1, and adds its figures.
func (f *Figures) ReadCohort(name string, from io.Reader, t *study.Table) error {
	r := csv.NewReader(from)
	head, err := r.Read()
	if err != nil {
		return fmt.Errorf("%s: the first line cannot be read (%w): it must name the columns person, attempt, passed and points", name, err)
	}
	var at [4]int
	for i, column := range [...]string{"person", "attempt", "passed", "points"} {
		if at[i] = slices.Index(head, column); at[i] < 0 {
			return fmt.Errorf("%s:1: the column %s is missing: there must be person, attempt, passed and points", name, column)
		}
	}
	var criteria []int // columns, and which criterion each is
	var places []int
	for k := range f.Criteria {
		if i := slices.Index(head, f.Criteria[k].Name); i >= 0 {
			criteria, places = append(criteria, k), append(places, i)
		}
	}
	var people []person
	c := &Cohort{}
	for {
		fields, err := r.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return fmt.Errorf("%s: %w: every line has as many fields as the first", name, err)
		}
		p, bad := personOf(fields, at, places)
		if bad != "" {
			line, _ := r.FieldPos(0)
			return fmt.Errorf("%s:%d: %q cannot be read in this place: attempt is a number from 1, passed true or false, points 0 to 100, a share 0 to 1", name, line, bad)
		}
		i := slices.IndexFunc(people, func(q person) bool { return q.name == p.name })
		switch {
		case i < 0:
			people = append(people, p)
		case p.attempt < people[i].attempt:
			people[i] = p
			c.Later++
		default:
			c.Later++
		}
	}
	// Whoever is here with later attempts only has had practice: that is no first attempt.
	all := len(people)
	people = slices.DeleteFunc(people, func(p person) bool { return p.attempt != 1 })
	c.Later += all - len(people)
	f.Cohort = c
	f.cohort(people, criteria, t)
	return nil
}

func personOf(f []string, at [4]int, places []int) (p person, bad string) {
	number := func(text string, most float64) float64 {
		x, err := strconv.ParseFloat(text, 64)
		if (err != nil || !(x >= 0 && x <= most)) && bad == "" {
			bad = text
		}
		return x
	}
	var err error
	p.name = f[at[0]]
	if p.attempt, err = strconv.Atoi(f[at[1]]); err != nil || p.attempt < 1 {
		return p, f[at[1]]
	}
	if p.passed, err = strconv.ParseBool(f[at[2]]); err != nil {
		return p, f[at[2]]
	}
	p.points = number(f[at[3]], 100)
	for _, i := range places {
		p.shares = append(p.shares, number(f[i], 1))
	}
	return p, bad
}

// cohort makes the figures of people.
func (f *Figures) cohort(people []person, criteria []int, t *study.Table) {
	c := f.Cohort
	c.N = len(people)
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
	pass, mean := Wilson(passed, c.N), Mean(points)
	c.Pass, c.Points = &pass, &mean
	var best []float64
	for i := range t.Rows {
		if t.Rows[i].Operator == steady {
			best = append(best, t.Rows[i].Points)
		}
	}
	if len(best) >= enough {
		auc := AUC(best, points)
		c.AUC = &auc
	}
	for k, which := range criteria {
		share, rest := make([]float64, c.N), make([]float64, c.N)
		for i, p := range people {
			share[i] = p.shares[k]
			rest[i] = p.points - f.Criteria[which].Of*p.shares[k]
		}
		c.Criteria = append(c.Criteria, CohortCriteria{f.Criteria[which].Name, Mean(share), Correlation(share, rest)})
	}
}
