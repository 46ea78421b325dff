package report

import (
	"math"
	"strconv"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/chart"
	"rouleau/cmd/rouleau/page"
	"rouleau/scoring"
	"rouleau/scoring/debrief"
)

// This file sets the run beside a good one: steady in the same case.

func (r *Report) besideGood() page.Block {
	d := r.Debrief
	own := &chart.Course{Name: words.Say("report.own"), Run: d.Record.Run}
	good := &chart.Course{Name: words.Say("report.good"), Run: d.Good.Run}
	ch := chart.Beside(words.Say("report.good_title"), own, good, math.NaN())
	b := page.Block{ID: "good", Head: words.Say("report.good_head"), Sheet: true, Folded: r.shut(), Text: []string{words.Say("report.good_lead")}}
	if !r.Attempt.Ended {
		b.Text = append(b.Text, words.Say("report.good_unfinished"))
	}
	drawn := page.Block{Drawing: &page.Drawing{List: ch.List(), Says: ch.Title}, Caption: ch.Caption}
	if alike(ch, &d.Own, &d.GoodOwn) {
		drawn = page.Block{Text: []string{words.Say("report.alike")}}
	}
	b.Beside = &page.Beside{Share: []int{42, 58}, Blocks: []page.Block{{Table: r.figures()}, drawn}}
	return b
}

// alike says whether two courses show no difference that a chart could show: the lane of haemoglobin alone is always drawn.
func alike(ch *chart.Chart, one, other *debrief.Outcome) bool {
	const visible = 0.1 // g/dL
	apart := max(math.Abs(one.LowestHbGDL-other.LowestHbGDL), math.Abs(one.EndHbGDL-other.EndHbGDL))
	return len(ch.Rows) == 0 && len(ch.Lanes) <= 1 && apart < visible
}

// figures sets both outcomes side by side.
func (r *Report) figures() *page.Table {
	t := &page.Table{Head: []string{"", words.Say("report.own"), words.Say("report.good")}, Right: []bool{1: true, 2: true}, Share: []int{52, 24, 24}, Named: true}
	both := [2]*debrief.Outcome{&r.Debrief.Own, &r.Debrief.GoodOwn}
	add := func(key string, of func(o *debrief.Outcome) string) {
		t.Add(words.Say(key), of(both[0]), of(both[1]))
	}
	amount := func(key, unit string, of func(o *debrief.Outcome) float64) {
		add(key, func(o *debrief.Outcome) string { return scoring.ShowUnit(of(o), unit) })
	}
	add("report.figure_points", func(o *debrief.Outcome) string { return score(o.Grade.Points) })
	if !r.scenario().Lesson() {
		add("report.figure_passed", func(o *debrief.Outcome) string {
			if o.Grade.Passed {
				return words.Say("target.yes")
			}
			return words.Say("target.no")
		})
	}
	add("report.figure_errors", func(o *debrief.Outcome) string { return strconv.Itoa(len(o.Critical)) })
	add("report.figure_bowls", func(o *debrief.Outcome) string { return strconv.Itoa(o.Bowls) })
	amount("report.figure_product", "mL", func(o *debrief.Outcome) float64 { return math.Round(o.ProductML) })
	amount("report.figure_given", "mL", func(o *debrief.Outcome) float64 { return math.Round(o.GivenML) })
	amount("report.figure_cells", "mL", func(o *debrief.Outcome) float64 { return math.Round(o.GivenCells) })
	add("report.figure_recovery", func(o *debrief.Outcome) string { return words.Say("report.percent", math.Round(100*o.Recovery)) })
	amount("report.figure_clot", "mL", func(o *debrief.Outcome) float64 { return math.Round(10*o.MostClotML) / 10 })
	add("report.figure_lowest_hb", func(o *debrief.Outcome) string { return words.Say("report.hb", o.LowestHbGDL) })
	add("report.figure_end_hb", func(o *debrief.Outcome) string { return words.Say("report.hb", o.EndHbGDL) })
	add("report.figure_donor", func(o *debrief.Outcome) string { return strconv.Itoa(o.DonorUnits) })
	add("report.figure_end", func(o *debrief.Outcome) string { return at(o.EndTick) })
	return t
}
