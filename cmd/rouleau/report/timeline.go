package report

import (
	"fmt"
	"math"
	"unicode/utf8"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/chart"
	"rouleau/cmd/rouleau/page"
	"rouleau/cmd/says"
	"rouleau/scoring/debrief"
	"rouleau/sim"
)

// This file holds the timeline, and what the numbers and signs in it stand for.

// pointer is a sign on the timeline with what it stands for, and the way back to where it is told of.
type pointer struct {
	sign, to, text string
	tick           int64
}

// timeline is the chart and its tables. Marks and words on it tell of the verdict, and so it is shut like that.
func (r *Report) timeline() []page.Block {
	decisions, criteria := r.decisionPointers(), r.criterionPointers()
	story := &chart.Story{Title: words.Say("report.timeline_title"), Course: chart.CourseOf(words.Say("report.own"), r.Debrief.Record.Run), MostClotML: r.mostClotML(),
		More: []chart.Moments{moments("report.row_decisions", decisions, true), moments("chart.row_points", criteria, false)}, Says: r.says}
	story.More = withMoments(story.More)
	ch, named := chart.Timeline(story)
	drawn := page.Block{ID: "timeline", Head: words.Say("report.timeline_head"), Drawing: &page.Drawing{List: ch.List(), Says: ch.Title},
		Caption: ch.Caption + " " + words.Say("report.timeline_signs"), Sheet: true, Folded: r.shut()}
	var groups []group
	for i := range named {
		n := &named[i]
		if k := len(groups); k == 0 || groups[k-1].head != n.Row {
			groups = append(groups, group{head: n.Row})
		}
		g := &groups[len(groups)-1]
		row := page.Row{Cells: []page.Cell{{}, lasting(n), {Text: times(n)}}}
		if n.Number > 0 {
			row.ID, row.Cells[0].Text = fmt.Sprintf("m%d", n.Number), fmt.Sprint(n.Number)
		}
		g.rows = append(g.rows, row)
	}
	signs := group{head: words.Say("report.signs_head")}
	for _, p := range append(decisions, criteria...) {
		signs.rows = append(signs.rows, page.Row{ID: "at-" + p.sign, Cells: []page.Cell{{Text: page.Ref(p.to, p.sign)}, {Text: at(p.tick)}, {Text: p.text}}})
	}
	if len(signs.rows) > 0 {
		groups = append(groups, signs)
	}
	if len(groups) == 0 {
		return []page.Block{drawn}
	}
	tables := &page.Beside{Across: tableColumns}
	for _, g := range groups {
		tables.Blocks = append(tables.Blocks, g.columns()...)
	}
	return []page.Block{drawn, {Head: words.Say("report.numbers_head"), Beside: tables, Folded: r.shut()}}
}

// group is a row of the timeline with what stands in it.
type group struct {
	head string
	rows []page.Row
}

const (
	tableColumns = 3
	mostLong     = 36.0 // lines of what stands beside each other: longer ones leave much of a sheet empty
)

// columns are the rows of a group in tables beside each other, about as long as each other, as many below each other as it takes.
func (g *group) columns() (blocks []page.Block) {
	all := 0.0
	for _, row := range g.rows {
		all += long(row)
	}
	tables := tableColumns * int(math.Ceil(all/mostLong))
	blocks, sum := make([]page.Block, tables), 0.0
	for _, row := range g.rows {
		b := &blocks[min(int(float64(tables)*sum/all), tables-1)]
		if b.Table == nil {
			b.Table = &page.Table{Head: []string{"", words.Say("report.time"), g.head}, Share: []int{11, 23, 66}}
		}
		b.Table.Rows = append(b.Table.Rows, row)
		sum += long(row)
	}
	return blocks
}

// long is about how many lines a row takes.
func long(row page.Row) float64 {
	const letters = 44.0 // in a line
	lines := math.Ceil(float64(utf8.RuneCountInString(row.Cells[2].Text)) / letters)
	if row.Cells[1].Small != "" {
		lines = max(lines, 2)
	}
	return lines + 0.5 // the room between rows
}

// lasting is when a numbered moment began, and under it until when it lasted.
func lasting(n *chart.Named) page.Cell {
	c := page.Cell{Text: at(sim.Ticks(n.FromS))}
	if to := at(sim.Ticks(n.ToS)); to != c.Text {
		c.Small = words.Say("report.until", to)
	}
	return c
}

func times(n *chart.Named) string {
	if n.Times > 1 {
		return words.Say("report.times", n.Text, n.Times)
	}
	return n.Text
}

// says is an occurrence in the words of a table in which its kind is known.
func (r *Report) says(o *sim.Occurrence) string {
	switch o.Kind {
	case sim.Said:
		return words.Say("log.said", words.Say("speaker."+o.Who.String()), says.Occurrence(o, r.scenario().Lines))
	case sim.Alarmed:
		return words.Say("alarm." + o.Key)
	}
	return says.Occurrence(o, r.scenario().Lines)
}

// decisionPointers are the costliest decisions at the moment at which they should have been taken.
func (r *Report) decisionPointers() (all []pointer) {
	gained := r.Told.Of(debrief.Gained)
	for i := range gained[:min(mostCharted, len(gained))] {
		d := &gained[i].Cost.Decision
		all = append(all, pointer{letter(i), "d" + letter(i), d.Title, d.Tick})
	}
	return all
}

// criterionPointers are the moments on which errors and criteria turn. The very start is one too: links lead there.
func (r *Report) criterionPointers() (all []pointer) {
	g := r.grade()
	for i := range g.Critical {
		if c := &g.Critical[i]; c.Tick >= 0 {
			all = append(all, pointer{errorSign(i), "verdict", c.Reason, c.Tick})
		}
	}
	for i := range g.Criteria {
		if c := &g.Criteria[i]; c.Tick >= 0 {
			all = append(all, pointer{criterionSign(i), criterionSign(i), c.Meaning, c.Tick})
		}
	}
	return all
}

func moments(name string, all []pointer, guide bool) chart.Moments {
	m := chart.Moments{Name: words.Say(name), Guide: guide}
	for _, p := range all {
		m.At = append(m.At, chart.Moment{S: sim.Seconds(p.tick), Text: p.sign})
	}
	return m
}

// withMoments leaves out rows in which nothing stands.
func withMoments(all []chart.Moments) (kept []chart.Moments) {
	for _, m := range all {
		if len(m.At) > 0 {
			kept = append(kept, m)
		}
	}
	return kept
}

// mostClotML is the most clot that a criterion allows, not a number where there is none.
func (r *Report) mostClotML() float64 {
	for i := range r.scenario().Criteria {
		if cr := &r.scenario().Criteria[i]; cr.Measure == "clot_ml" && cr.Most != nil {
			return *cr.Most
		}
	}
	return math.NaN()
}
