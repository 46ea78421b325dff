// This file checks the criteria: measures, targets, objectives, and points that add up in every part.

package scenarios

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"rouleau/scenarios/yamlread"
)

func (c *checker) criteria() {
	var measures []string
	for i := range c.f.Criteria {
		cr := &c.f.Criteria[i]
		measures = append(measures, cr.Measure)
		c.target(i, cr)
		c.objective(i, cr.Objective)
	}
	c.unique("criteria", "measure", measures)
	c.points()
}

// objective reports an objective that is not there.
func (c *checker) objective(i int, id string) {
	path := at("criteria", i, "objective")
	known := make([]string, len(c.f.Objectives))
	for k := range c.f.Objectives {
		known[k] = c.f.Objectives[k].ID
	}
	if id == "" || slices.Contains(known, id) || !c.sound(path, "objectives") || !allPlain(known) {
		return
	}
	c.unknown(path, fmt.Sprintf("there is no objective %q", id), id, known)
}

// target checks measure and band of a criterion.
func (c *checker) target(i int, cr *Criterion) {
	path := func(key string) string { return at("criteria", i, key) }
	if cr.Measure == "" || !c.sound(path("measure")) {
		return
	}
	m, ok := MeasureNamed(cr.Measure)
	if !ok {
		c.unknown(path("measure"), fmt.Sprintf("there is no measure %q", cr.Measure), cr.Measure, measuresLike(cr.Measure))
		return
	}
	if !c.sound(path("least"), path("most")) {
		return
	}
	if cr.Least == nil && cr.Most == nil {
		c.Fault(fmt.Sprintf("criteria[%d]", i), "the criterion has no target", "least, most or both ("+m.Unit+")")
		return
	}
	if cr.Least != nil && cr.Most != nil && *cr.Least > *cr.Most {
		c.Fault(path("most"), fmt.Sprintf("most is below least, which is %g", *cr.Least), "least and most, or only one of them")
	}
	for _, b := range []struct {
		key   string
		bound *float64
		soft  string
		width float64
	}{{"least", cr.Least, "soft_below", cr.SoftBelow}, {"most", cr.Most, "soft_above", cr.SoftAbove}} {
		if b.bound == nil && b.width > 0 {
			c.Fault(path(b.soft), b.soft+" softens an edge that is not there", b.key+" beside it, or the key left out")
		}
		if b.bound != nil && (*b.bound < m.Least || *b.bound > m.Most) {
			near := ""
			if m.Unit == Share && *b.bound >= 2 && *b.bound/100 <= m.Most {
				near = strconv.FormatFloat(*b.bound/100, 'g', 6, 64) // written in per cent
			}
			c.FaultNear(path(b.key), fmt.Sprintf("%g is not possible for %s", *b.bound, m.Name), fmt.Sprintf("a number, %g to %g (%s)", m.Least, m.Most, m.Unit), near)
		}
	}
	if cr.Least != nil && *cr.Least <= m.Least && cr.Most == nil || cr.Most != nil && *cr.Most >= m.Most && cr.Least == nil {
		c.Fault(fmt.Sprintf("criteria[%d]", i), "every value meets this target, so it tells nobody apart", fmt.Sprintf("a target inside %g to %g", m.Least, m.Most))
	}
}

// measuresLike gives the measures of which a word begins as one of a name does, or all of them where none does.
func measuresLike(name string) []string {
	const begins = 4 // letters
	words := strings.Split(name, "_")
	like := slices.DeleteFunc(slices.Clone(MeasureNames()), func(known string) bool {
		return !slices.ContainsFunc(strings.Split(known, "_"), func(k string) bool {
			return slices.ContainsFunc(words, func(w string) bool { return len(w) >= begins && len(k) >= begins && w[:begins] == k[:begins] })
		})
	})
	if near := yamlread.Nearest(name, MeasureNames()); len(like) == 0 || near != "" && !slices.Contains(like, near) {
		return MeasureNames()
	}
	return like
}

// points checks that the points of each part add up to what the part always has.
func (c *checker) points() {
	if len(c.f.Criteria) == 0 {
		return
	}
	for i := range c.f.Criteria {
		if !c.sound(at("criteria", i, "points"), at("criteria", i, "part")) {
			return
		}
	}
	for _, p := range Parts {
		sum, last := 0.0, -1
		for i := range c.f.Criteria {
			if c.f.Criteria[i].Part == p.Name {
				sum, last = sum+c.f.Criteria[i].Points, i
			}
		}
		switch {
		case last < 0 && c.f.mayLeaveOut(p.Name):
		case last < 0:
			c.Fault("criteria", "the part "+p.Name+" has no criterion", fmt.Sprintf("criteria of %s worth %g points in all", p.Name, p.Points))
		case sum-p.Points > 1e-9 || p.Points-sum > 1e-9:
			c.Fault(at("criteria", last, "points"), fmt.Sprintf("the points of %s add up to %.6g", p.Name, sum), fmt.Sprintf("%g in all", p.Points))
		}
	}
}
