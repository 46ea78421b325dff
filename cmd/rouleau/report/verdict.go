package report

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/page"
	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/debrief"
)

// This file holds the verdict: what points never make up for, why it was passed or not, the parts with their floors, and every
// criterion under its objective, with the way to its moment.

// judged is the verdict. Without marks of one's own it is shut until one has had the chance to give some.
func (r *Report) judged() page.Block {
	g := r.grade()
	b := page.Block{ID: "verdict", Head: words.Say("report.verdict_head"), Sheet: true, Folded: r.shut(), Pairs: r.parts(), Table: r.criteria()}
	for i := range g.Critical {
		b.Text = append(b.Text, criticalLine(i, &g.Critical[i]))
	}
	b.Text = append(b.Text, page.Strong(r.opening()))
	b.Text = append(b.Text, r.warnings()...)
	if !g.Passed && !r.scenario().Lesson() {
		var reasons []string
		for _, why := range g.Reasons {
			if !r.isCritical(why) { // they stand above
				reasons = append(reasons, sentence(why))
			}
		}
		if len(reasons) > 0 {
			b.Text = append(b.Text, strings.Join(reasons, " "))
		}
	}
	lead := words.Say("report.criteria_lead")
	if of := r.points(); of < 100 {
		lead += " " + words.Say("report.scaled", debrief.Score(of))
	}
	b.Text = append(b.Text, lead)
	return b
}

// points are those of all parts together: less than 100 where a case leaves parts out.
func (r *Report) points() (of float64) {
	for i := range r.grade().Parts {
		of += r.grade().Parts[i].Of
	}
	return of
}

// shut says whether what tells of the verdict is to be opened first, because nobody has been asked yet how it went.
func (r *Report) shut() bool { return r.Attempt.Self == nil }

func (r *Report) isCritical(why string) bool {
	for i := range r.grade().Critical {
		if r.grade().Critical[i].Reason == why {
			return true
		}
	}
	return false
}

// critical is what points never make up for, or a slip that was mended, in words.
func critical(c *scoring.Critical) string {
	if c.Tick >= 0 {
		return words.Say("result.moment", at(c.Tick), c.Reason)
	}
	return c.Reason
}

// criticalLine is the same for the page.
func criticalLine(i int, c *scoring.Critical) string {
	w, name := page.Grave, "report.fatal"
	if c.Mended {
		w, name = page.Slight, "report.mended"
	}
	text := page.Sign(w, words.Say(name)) + " " + c.Reason
	if c.Tick >= 0 {
		text += ", " + page.Ref("at-"+errorSign(i), at(c.Tick))
	}
	return text
}

// The signs by which criteria and errors are found on the timeline.
func criterionSign(i int) string { return "c" + strconv.Itoa(i+1) }
func errorSign(i int) string     { return "x" + strconv.Itoa(i+1) }

// parts are the parts with their floors.
func (r *Report) parts() (all []page.Pair) {
	for i := range r.grade().Parts {
		p := &r.grade().Parts[i]
		if p.Of <= 0 { // a lesson leaves it out
			continue
		}
		text := words.Say("report.part_points", debrief.Score(p.Points), debrief.Score(p.Of))
		if !r.scenario().Lesson() {
			sign := page.Sign(page.Well, words.Say("report.reached"))
			if !p.Reached {
				sign = page.Sign(page.Serious, words.Say("report.not_reached"))
			}
			text = words.Say("report.part_floor", text, scoring.Show(p.Floor), sign)
		}
		all = append(all, page.Pair{Name: p.Title, Lines: []string{text}})
	}
	return all
}

// criteria is the table of all of them, by part and objective.
func (r *Report) criteria() *page.Table {
	t := &page.Table{Head: []string{"", words.Say("report.criterion"), words.Say("report.measured"), words.Say("report.target"), words.Say("report.points"), words.Say("report.reason"), words.Say("report.moment")},
		Right: []bool{6: true}, Share: []int{4, 25, 9, 10, 8, 38, 6}}
	g := r.grade()
	add := func(group string, of func(c *scoring.CriterionGrade) bool) {
		for i := range g.Criteria {
			if !of(&g.Criteria[i]) {
				continue
			}
			if group != "" {
				t.Rows, group = append(t.Rows, page.Row{Group: group}), ""
			}
			t.Rows = append(t.Rows, criterionRow(i, &g.Criteria[i]))
		}
	}
	rows := debrief.SideBySide(r.scenario(), g, r.Attempt.Self)
	for i := range rows {
		b := &rows[i]
		add(words.Say("report.group", b.PartTitle, numbered(i, b.Objective.Text), level(b)), func(c *scoring.CriterionGrade) bool { return c.Objective == b.Objective.ID })
	}
	known := func(c *scoring.CriterionGrade) bool {
		for i := range rows {
			if rows[i].Objective.ID == c.Objective {
				return true
			}
		}
		return false
	}
	add(words.Say("report.group_other"), func(c *scoring.CriterionGrade) bool { return !known(c) })
	return t
}

func criterionRow(i int, c *scoring.CriterionGrade) page.Row {
	measured := words.Say("result.nothing_measured")
	if c.Measured {
		measured = shown(c.Value, c.Unit)
	}
	moment := ""
	if c.Tick >= 0 {
		moment = page.Ref("at-"+criterionSign(i), at(c.Tick))
	}
	return page.Row{ID: criterionSign(i), Cells: []page.Cell{{Text: criterionSign(i)}, {Text: c.Meaning}, {Text: measured}, {Text: target(c)}, {Text: pointsSign(c)},
		{Text: strings.TrimSuffix(strings.TrimSpace(c.Reason), ":"), Small: words.Say("result.source", c.Source)}, {Text: moment}}}
}

// target is that of a criterion, with what is written as it is for its value.
func target(c *scoring.CriterionGrade) string {
	if c.Unit == scenarios.Share {
		return percent(c.Target)
	}
	return minus(c.Target)
}

// pointsSign is the points of a criterion with a shape for how much of them was got.
func pointsSign(c *scoring.CriterionGrade) string {
	w := page.Slight
	switch {
	case c.Points >= c.Of-1e-9:
		w = page.Well
	case c.Points <= 1e-9:
		w = page.Serious
	}
	return page.Sign(w, words.Say("result.points", debrief.Score(c.Points), debrief.Score(c.Of)))
}

// shown is a measured value. What is less than anybody could measure at a bench is nothing.
func shown(v float64, unit string) string {
	switch unit {
	case scenarios.Share:
		return percent(strconv.FormatFloat(v, 'f', -1, 64))
	case scenarios.YesNo, "ratio", "":
	default:
		if math.Abs(v) < 0.005 {
			v = 0
		}
	}
	return minus(scoring.ShowUnit(v, unit))
}

// percent writes the shares in a text in percent: at least 90 %.
func percent(text string) string {
	text = share.ReplaceAllStringFunc(text, func(part string) string {
		v, _ := strconv.ParseFloat(part, 64)
		return scoring.Show(100 * v)
	})
	if end := share.FindAllStringIndex(text, -1); len(end) > 0 {
		last := end[len(end)-1]
		text = text[:last[0]] + words.Say("report.percent", text[last[0]:last[1]]) + text[last[1]:]
	}
	return text
}

var share = regexp.MustCompile(`[0-9]+(\.[0-9]+)?`)

// minus puts a minus where a hyphen stands before a figure.
func minus(text string) string { return hyphen.ReplaceAllString(text, "${1}\u2212$2") }

var hyphen = regexp.MustCompile(`(^| )-([0-9])`)

// sentence begins a text with a capital and ends it with a full stop.
func sentence(text string) string {
	first, n := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + strings.TrimSuffix(text[n:], ".") + "."
}
