package report

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau/page"
	"rouleau/scoring/debrief"
)

// This file holds the other decisions that were looked at: what was done better than the usual way, what nobody can
// tell, what would have changed nothing worth telling; and the lost points that no single decision explains.

func (r *Report) rest() page.Block {
	t := &page.Table{Head: []string{words.Say("report.usual"), words.Say("report.time"), words.Say("report.would_change"), words.Say("report.points")},
		Right: []bool{1: true, 3: true}, Share: []int{49, 8, 35, 8}}
	under(t, words.Say("report.better_head"), r.Told.Of(debrief.Better), func(l *debrief.Line) (string, string) { return r.changed(l), l.Points })
	under(t, words.Say("report.unclear_head"), r.Told.Of(debrief.Unclear), func(l *debrief.Line) (string, string) { return r.changed(l), l.Points })
	under(t, words.Say("report.same_head"), r.Told.Of(debrief.Same), func(*debrief.Line) (string, string) { return "", "" })
	b := page.Block{ID: "rest", Head: words.Say("report.rest_head"), Folded: r.shut()}
	if len(t.Rows) > 0 {
		b.Text, b.Table = []string{words.Say("report.rest_lead")}, t
	}
	b.List = r.left()
	return b
}

// under puts decisions under a head of their own, each with what it changed and in points.
func under(t *page.Table, head string, lines []debrief.Line, came func(l *debrief.Line) (change, points string)) {
	if len(lines) == 0 {
		return
	}
	t.Rows = append(t.Rows, page.Row{Group: head})
	for i := range lines {
		change, points := came(&lines[i])
		t.Add(lines[i].Cost.Decision.Title, at(lines[i].Cost.Decision.Tick), change, points)
	}
}

// unexplained says how many criteria lost points that no single decision explains, "" for none.
func (r *Report) unexplained() string {
	if len(r.Told.Left) == 0 {
		return ""
	}
	return words.Say("report.unexplained", count(len(r.Told.Left), "report.criterion_one", "report.criteria"), r.Told.LeftPoints)
}

// left are these criteria.
func (r *Report) left() []string {
	text := r.unexplained()
	if text == "" {
		return nil
	}
	return append([]string{text + " " + words.Say("report.unexplained_why")}, r.borneLines(r.Told.Left, "")...)
}

// borneLine is a criterion with what was won or lost on it.
func (r *Report) borneLine(b *debrief.Borne) string {
	return words.Say("report.borne", page.Ref(criterionSign(b.Criterion), criterionSign(b.Criterion)), r.grade().Criteria[b.Criterion].Meaning, b.Points)
}

// borneLines are several of them, and what is said of those beyond.
func (r *Report) borneLines(all []debrief.Borne, more string) (lines []string) {
	for i := range all {
		lines = append(lines, r.borneLine(&all[i]))
	}
	if more != "" {
		lines = append(lines, more)
	}
	return lines
}
