package report

import (
	"slices"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/page"
	"rouleau/scoring/debrief"
)

// This file holds the other decisions that were looked at: what was done better than the usual way, what would have changed
// nothing worth telling; and the lost points that no single decision explains.

const (
	mostWorse = 8
	mostSame  = 12
	mostLost  = 12
)

func (r *Report) rest() page.Block {
	t := &page.Table{Head: []string{words.Say("report.usual"), words.Say("report.time"), words.Say("report.would_change"), words.Say("report.points")},
		Right: []bool{1: true, 3: true}, Share: []int{49, 8, 35, 8}}
	r.better(t)
	r.unchanged(t)
	b := page.Block{ID: "rest", Head: words.Say("report.rest_head"), Folded: r.shut()}
	if len(t.Rows) > 0 {
		b.Text, b.Table = []string{words.Say("report.rest_lead")}, t
	}
	b.List = r.unexplained()
	return b
}

// under puts rows under a head of their own, and how many more there are.
func under(t *page.Table, head string, costs []*debrief.Cost, most int, row func(c *debrief.Cost) []string) {
	if len(costs) == 0 {
		return
	}
	t.Rows = append(t.Rows, page.Row{Group: head})
	kept, more := cut(costs, most)
	for _, c := range kept {
		t.Add(row(c)...)
	}
	if more != "" {
		t.Add(more, "", "", "")
	}
}

// better is what the person did better than the usual advice.
func (r *Report) better(t *page.Table) {
	under(t, words.Say("report.better_head"), r.worse(), mostWorse, func(c *debrief.Cost) []string {
		return []string{c.Decision.Title, at(c.Decision.Tick), r.changed(c), gain(c.Points)}
	})
}

// unchanged are the decisions that would have changed nothing worth telling.
func (r *Report) unchanged(t *page.Table) {
	under(t, words.Say("report.same_head"), r.same(), mostSame, func(c *debrief.Cost) []string {
		return []string{c.Decision.Title, at(c.Decision.Tick), "", ""}
	})
}

// unexplained are the criteria whose lost points no single decision would have brought back.
func (r *Report) unexplained() (lines []string) {
	left := r.Debrief.Unexplained(r.Costs)
	if len(left) == 0 {
		return nil
	}
	lines = []string{words.Say("report.unexplained", count(len(left), "report.criterion_one", "report.criteria"), score(debrief.Lost(left))) + " " + words.Say("report.unexplained_why")}
	own := r.grade().Criteria
	kept, more := cut(left, mostLost)
	for k := range kept {
		i := slices.Index(own, kept[k])
		lines = append(lines, words.Say("report.borne", page.Ref(criterionSign(i), criterionSign(i)), kept[k].Meaning, gain(kept[k].Points-kept[k].Of)))
	}
	if more != "" {
		lines = append(lines, more)
	}
	return lines
}
