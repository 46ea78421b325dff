package report

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau/page"
	"rouleau/scoring/debrief"
)

// This file holds the other decisions that were looked at: what was done better than the usual way, what nobody can
// tell, what would have changed nothing worth telling; and the lost points that no single decision explains.

const (
	mostBetter  = 8
	mostUnclear = 12
	mostSame    = 12
	mostLost    = 12
)

func (r *Report) rest() page.Block {
	t := &page.Table{Head: []string{words.Say("report.usual"), words.Say("report.time"), words.Say("report.would_change"), words.Say("report.points")},
		Right: []bool{1: true, 3: true}, Share: []int{49, 8, 35, 8}}
	under(t, words.Say("report.better_head"), r.Told.Of(debrief.Better), mostBetter, func(l *debrief.Line) (string, string) { return changed(l), l.Points })
	under(t, words.Say("report.unclear_head"), r.Told.Of(debrief.Unclear), mostUnclear, func(l *debrief.Line) (string, string) { return changed(l), l.Points })
	under(t, words.Say("report.same_head"), r.Told.Of(debrief.Same), mostSame, func(*debrief.Line) (string, string) { return "", "" })
	b := page.Block{ID: "rest", Head: words.Say("report.rest_head"), Folded: r.shut()}
	if len(t.Rows) > 0 {
		b.Text, b.Table = []string{words.Say("report.rest_lead")}, t
	}
	b.List = r.left()
	return b
}

// under puts decisions under a head of their own, each with what it changed and in points, and how many more there are.
func under(t *page.Table, head string, lines []debrief.Line, most int, came func(l *debrief.Line) (change, points string)) {
	if len(lines) == 0 {
		return
	}
	t.Rows = append(t.Rows, page.Row{Group: head})
	kept, more := cut(lines, most)
	for i := range kept {
		change, points := came(&kept[i])
		t.Add(kept[i].Cost.Decision.Title, at(kept[i].Cost.Decision.Tick), change, points)
	}
	if more != "" {
		t.Add(more, "", "", "")
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
	kept, more := cut(r.Told.Left, mostLost)
	return append([]string{text + " " + words.Say("report.unexplained_why")}, r.borneLines(kept, more)...)
}

// borneLines are criteria with what was won or lost on each, and how many more there are.
func (r *Report) borneLines(all []debrief.Borne, more string) (lines []string) {
	for _, b := range all {
		lines = append(lines, words.Say("report.borne", page.Ref(criterionSign(b.Criterion), criterionSign(b.Criterion)), r.grade().Criteria[b.Criterion].Meaning, b.Points))
	}
	if more != "" {
		lines = append(lines, more)
	}
	return lines
}
