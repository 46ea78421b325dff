package preview

import (
	"fmt"
	"strconv"
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/chart"
	"rouleau/cmd/rouleau/page"
	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// This file holds what becomes of the case in both runs, and what the criteria make of it.

// outcome sets both runs side by side.
func (p *preview) outcome() page.Block {
	t := &page.Table{Head: []string{"", p.courses[steady].Name, p.courses[idle].Name}, Share: []int{24, 38, 38}}
	add := func(name string, of func(run *play.Run, g *scoring.Grade) string) {
		cells := []string{name}
		for i := range p.courses {
			cells = append(cells, of(p.courses[i].Run, &p.grades[i]))
		}
		t.Add(cells...)
	}
	amount := func(name, unit string, of func(s *sim.State) float64) {
		add(name, func(run *play.Run, _ *scoring.Grade) string { return scoring.ShowUnit(of(&run.State), unit) })
	}
	add(words.Say("preview.verdict"), func(_ *play.Run, g *scoring.Grade) string {
		if g.Passed {
			return words.Say("preview.passed", g.Points)
		}
		return words.Say("preview.failed", g.Points)
	})
	add(words.Say("preview.reasons"), func(_ *play.Run, g *scoring.Grade) string { return strings.Join(g.Reasons, "; ") })
	add(words.Say("preview.critical"), func(_ *play.Run, g *scoring.Grade) string {
		var lines []string
		for _, c := range g.Critical {
			lines = append(lines, c.Reason)
		}
		if len(lines) == 0 {
			return words.Say("preview.nothing")
		}
		return strings.Join(lines, "; ")
	})
	amount(words.Say("preview.shed"), "mL", func(s *sim.State) float64 { return s.Patient.ShedML })
	amount(words.Say("preview.sucked"), "mL", func(s *sim.State) float64 { return s.Field.SuckedML })
	amount(words.Say("preview.given"), "mL", func(s *sim.State) float64 { return s.Giving.GivenML })
	add(words.Say("preview.recovery"), func(run *play.Run, _ *scoring.Grade) string {
		if run.State.Patient.ShedCellsML <= 0 {
			return words.Say("preview.nothing")
		}
		return scoring.Show(run.State.Giving.GivenCells / run.State.Patient.ShedCellsML)
	})
	amount(words.Say("preview.lowest_hb"), "g/dL", func(s *sim.State) float64 { return s.Patient.LowestHbGDL })
	amount(words.Say("preview.last_hb"), "g/dL", func(s *sim.State) float64 { return s.Patient.Blood.HbGPerDL() })
	amount(words.Say("preview.donor"), "", func(s *sim.State) float64 { return float64(s.Patient.DonorUnits) })
	add(words.Say("preview.ended"), func(run *play.Run, _ *scoring.Grade) string { return at(run.State.Tick) })
	return page.Block{Head: words.Say("preview.outcome_head"), Table: t}
}

// criteriaMoments are the criteria that turn on a moment, by their numbers. The very start is none.
func (p *preview) criteriaMoments(who int) (m []chart.Moment) {
	for i := range p.grades[who].Criteria {
		if tick := p.grades[who].Criteria[i].Tick; tick > 0 {
			m = append(m, chart.Moment{S: sim.Seconds(tick), Text: strconv.Itoa(i + 1)})
		}
	}
	return m
}

// criteria is the table of targets and of what both runs came to.
func (p *preview) criteria() page.Block {
	t := &page.Table{Head: []string{words.Say("preview.number"), words.Say("preview.measured"), words.Say("preview.target"), words.Say("preview.of"),
		p.courses[steady].Name, words.Say("preview.points"), p.courses[idle].Name, words.Say("preview.points")},
		Right: []bool{0: true, 3: true, 5: true, 7: true}, Share: []int{4, 38, 14, 4, 15, 5, 15, 5}}
	for k, part := range p.grades[steady].Parts {
		if part.Of <= 0 { // a lesson leaves it out
			continue
		}
		other := p.grades[idle].Parts[k]
		t.Rows = append(t.Rows, page.Row{Group: words.Say("preview.part", part.Title, part.Of, part.Floor, part.Points, other.Points)})
		for i := range p.sc.Criteria {
			if cr := &p.sc.Criteria[i]; cr.Part == part.Part {
				t.Rows = append(t.Rows, p.criterion(i, cr))
			}
		}
	}
	return page.Block{Head: words.Say("preview.criteria_head"), Text: []string{words.Say("preview.pass_rule", p.sc.Pass.MarkPercent, p.sc.Pass.FloorPercent)}, Table: t, Sheet: true}
}

func (p *preview) criterion(i int, cr *scenarios.Criterion) page.Row {
	g := &p.grades[steady].Criteria[i]
	row := page.Row{Cells: []page.Cell{{Text: strconv.Itoa(i + 1)}, {Text: g.Meaning, Small: words.Say("preview.note", cr.Measure, cr.Note, cr.Source)},
		{Text: g.Target, Small: edges(cr)}, {Text: scoring.Show(g.Of)}}}
	for who := range p.grades {
		g := &p.grades[who].Criteria[i]
		row.Cells = append(row.Cells, page.Cell{Text: reached(g), Small: why(g, cr)}, page.Cell{Text: fmt.Sprintf("%.1f", g.Points)})
	}
	return row
}

// edges says where, beyond the target, points have fallen to none.
func edges(cr *scenarios.Criterion) string {
	var ends []string
	if cr.Least != nil && cr.SoftBelow > 0 {
		ends = append(ends, scoring.Show(*cr.Least-cr.SoftBelow))
	}
	if cr.Most != nil && cr.SoftAbove > 0 {
		ends = append(ends, scoring.Show(*cr.Most+cr.SoftAbove))
	}
	if len(ends) == 0 {
		return ""
	}
	return words.Say("preview.none_at", strings.Join(ends, " "+words.Say("preview.or")+" "))
}

// reached is what a run came to.
func reached(g *scoring.CriterionGrade) string {
	if !g.Measured {
		return words.Say("preview.not_measured")
	}
	return scoring.ShowUnit(g.Value, g.Unit)
}

// why is the reason without the note, which stands once for both, and the moment it turns on.
func why(g *scoring.CriterionGrade, cr *scenarios.Criterion) string {
	reason := strings.TrimSuffix(strings.TrimSuffix(g.Reason, " "+cr.Note), ":")
	if g.Tick <= 0 {
		return reason
	}
	return words.Say("preview.turned", reason, at(g.Tick))
}
