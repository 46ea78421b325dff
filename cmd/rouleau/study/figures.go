package study

import (
	"slices"

	"gonum.org/v1/gonum/stat"

	"rouleau/assets/words"
	"rouleau/scenarios"
	"rouleau/scoring/operators"
	"rouleau/scoring/study"
)

// This file holds the figures of a study.

const (
	steady = "steady"
	idle   = "idle"
	bins   = 20 // of the histogram, 5 points each
	enough = 30 // people below which a cohort has no figures
)

// Figures are all figures of one case.
type Figures struct {
	Format    int         `json:"format"`
	Case      string      `json:"case"`
	Title     string      `json:"title"`
	What      string      `json:"what"` // what these figures are and are not
	PassMark  float64     `json:"pass_mark"`
	Operators []Operator  `json:"operators"`
	Criteria  []Criterion `json:"criteria"`
	Critical  []Critical  `json:"critical"`
	Spread    Spread      `json:"spread"`
	Recovery  Recovery    `json:"recovery"`
	Rules     []string    `json:"broken_rules"`
	Unjudged  []string    `json:"not_judged"`
	Warnings  []string    `json:"warnings"`
	Cohort    *Cohort     `json:"cohort,omitempty"`
}

// Operator is how one operator did.
type Operator struct {
	Name      string    `json:"name"`
	Failing   string    `json:"failing"`
	Matters   []string  `json:"matters"` // objectives of the case at least half of whose points its failing puts at stake
	N         int       `json:"n"`
	Pass      Interval  `json:"pass"`
	Points    Interval  `json:"points"`
	SD        Interval  `json:"sd"` // over the seeds
	Least     float64   `json:"least"`
	Median    float64   `json:"median"`
	Most      float64   `json:"most"`
	AUC       *Interval `json:"auc,omitempty"` // of steady's points against these
	Recovery  Interval  `json:"recovery"`
	Histogram [bins]int `json:"histogram"`
	says      bool      // its file says in what its failing shows
	shows     []int     // criteria of the case in which it does
}

// Criterion is how one criterion tells runs apart.
type Criterion struct {
	Name        string     `json:"name"`
	Part        string     `json:"part"`
	Objective   string     `json:"objective"`
	Of          float64    `json:"of"`
	Difficulty  Interval   `json:"difficulty"` // mean share of its points over all runs but idle's
	Share       []Interval `json:"share"`      // the same for each operator
	AUC         []Interval `json:"auc"`        // steady's share against that of each operator; of itself left empty
	Best        float64    `json:"best"`
	BestBy      string     `json:"best_by"`
	BestActive  float64    `json:"best_but_idle"`
	Correlation *Interval  `json:"correlation_with_rest,omitempty"` // over all runs but idle's
}

// Critical is how often something that is never made up for came about.
type Critical struct {
	Name  string     `json:"name"`
	Share []Interval `json:"share"` // for each operator
}

// Of makes the figures of the rows of one case.
func Of(sc *scenarios.Scenario, who []*operators.Operator, t *study.Table) *Figures {
	f := &Figures{Format: 1, Case: sc.ID, Title: sc.Title, What: words.Say("study.what"), PassMark: sc.Pass.MarkPercent, Warnings: []string{}}
	rows := slices.Clone(t.Rows)
	slices.SortFunc(rows, study.Less)
	f.recovery(sc, rows)
	who = withoutVariations(who)
	by := make([][]study.Row, len(who))
	for i, o := range who {
		for _, r := range rows {
			if r.Operator == o.Name {
				by[i] = append(by[i], r)
			}
		}
	}
	yard := slices.IndexFunc(who, func(o *operators.Operator) bool { return o.Name == steady })
	for i, o := range who {
		op := operatorOf(o, by[i])
		op.Matters = matters(sc, o)
		op.says = len(o.Shows) > 0
		for k := range sc.Criteria {
			if slices.Contains(o.Shows, sc.Criteria[k].Measure) {
				op.shows = append(op.shows, k)
			}
		}
		if yard >= 0 && i != yard {
			auc := AUC(pointsOf(by[yard]), pointsOf(by[i]))
			op.AUC = &auc
		}
		f.Operators = append(f.Operators, op)
	}
	f.criteria(sc, who, by, yard, t.Criteria)
	f.critical(by)
	f.spread(who, by)
	f.warn()
	f.Rules, f.Unjudged = f.Broken(), f.NotJudged()
	return f
}

func pointsOf(rows []study.Row) []float64 {
	return valuesOf(rows, func(r *study.Row) float64 { return r.Points })
}

func valuesOf(rows []study.Row, value func(r *study.Row) float64) []float64 {
	x := make([]float64, len(rows))
	for i := range rows {
		x[i] = value(&rows[i])
	}
	return x
}

func passes(rows []study.Row) Interval {
	yes := 0
	for i := range rows {
		if rows[i].Passed {
			yes++
		}
	}
	return Wilson(yes, len(rows))
}

func operatorOf(o *operators.Operator, rows []study.Row) Operator {
	op := Operator{Name: o.Name, Failing: o.Failing, N: len(rows), Pass: passes(rows)}
	if len(rows) == 0 {
		return op
	}
	points := pointsOf(rows)
	op.Points = Mean(points).between(0, 100)
	op.SD = Deviation(points)
	op.Recovery = Proportion(valuesOf(rows, func(r *study.Row) float64 { return r.Recovery }))
	for _, p := range points {
		op.Histogram[min(bins-1, max(0, int(p*bins/100)))]++
	}
	slices.Sort(points)
	op.Least, op.Median, op.Most = points[0], stat.Quantile(0.5, stat.Empirical, points, nil), points[len(points)-1]
	return op
}

// matters names the objectives of a case at least half of whose points lie on measures in which an operator's failing shows.
func matters(sc *scenarios.Scenario, o *operators.Operator) []string {
	found := []string{}
	for _, objective := range sc.Objectives {
		all, at := 0.0, 0.0
		for i := range sc.Criteria {
			if cr := &sc.Criteria[i]; cr.Objective == objective.ID {
				all += cr.Points
				if slices.Contains(o.Shows, cr.Measure) {
					at += cr.Points
				}
			}
		}
		if all > 0 && at >= all/2 {
			found = append(found, objective.ID)
		}
	}
	return found
}

func (f *Figures) criteria(sc *scenarios.Scenario, who []*operators.Operator, by [][]study.Row, yard int, names []string) {
	var active []study.Row
	for i, o := range who {
		if o.Name != idle {
			active = append(active, by[i]...)
		}
	}
	for k, name := range names {
		cr := &sc.Criteria[k]
		share := func(r *study.Row) float64 { return r.Criteria[k] }
		c := Criterion{Name: name, Part: cr.Part, Objective: cr.Objective, Of: cr.Points, Difficulty: Proportion(valuesOf(active, share))}
		for i, o := range who {
			c.Share = append(c.Share, Proportion(valuesOf(by[i], share)))
			var auc Interval
			if yard >= 0 && i != yard {
				auc = AUC(valuesOf(by[yard], share), valuesOf(by[i], share))
				if auc.Value > c.Best {
					c.Best, c.BestBy = auc.Value, o.Name
				}
				if o.Name != idle {
					c.BestActive = max(c.BestActive, auc.Value)
				}
			}
			c.AUC = append(c.AUC, auc)
		}
		c.Correlation = Correlation(valuesOf(active, share), valuesOf(active, func(r *study.Row) float64 { return r.Points - cr.Points*r.Criteria[k] }))
		f.Criteria = append(f.Criteria, c)
	}
}

// critical counts what is never made up for, for what came about at all.
func (f *Figures) critical(by [][]study.Row) {
	var names []string
	for _, rows := range by {
		for _, r := range rows {
			for _, c := range r.Critical {
				if !slices.Contains(names, c) {
					names = append(names, c)
				}
			}
		}
	}
	slices.Sort(names)
	f.Critical = []Critical{}
	for _, name := range names {
		c := Critical{Name: name}
		for _, rows := range by {
			n := 0
			for _, r := range rows {
				if slices.Contains(r.Critical, name) {
					n++
				}
			}
			c.Share = append(c.Share, Wilson(n, len(rows)))
		}
		f.Critical = append(f.Critical, c)
	}
}

// spread takes the points apart over the seeds that every operator but idle has played.
func (f *Figures) spread(who []*operators.Operator, by [][]study.Row) {
	played := map[uint64]int{}
	all := 0
	for i, o := range who {
		if o.Name == idle {
			continue
		}
		all++
		for _, r := range by[i] {
			played[r.Seed]++
		}
	}
	var grid [][]float64
	for i, o := range who {
		if o.Name == idle {
			continue
		}
		var row []float64
		for _, r := range by[i] { // in the order of seeds
			if played[r.Seed] == all {
				row = append(row, r.Points)
			}
		}
		grid = append(grid, row)
	}
	f.Spread = SpreadOf(grid)
}
