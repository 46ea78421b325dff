package report

import (
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/chart"
	"rouleau/cmd/rouleau/page"
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
	if !ch.Differ() {
		drawn = page.Block{Text: []string{words.Say("report.alike")}}
	}
	b.Beside = &page.Beside{Share: []int{42, 58}, Blocks: []page.Block{{Table: r.figures()}, drawn}}
	return b
}

// figures sets both outcomes side by side.
func (r *Report) figures() *page.Table {
	t := &page.Table{Head: []string{"", words.Say("report.own"), words.Say("report.good")}, Right: []bool{1: true, 2: true}, Share: []int{52, 24, 24}, Named: true}
	for _, f := range r.Told.Figures {
		t.Add(f.Name, f.Own, f.Good)
	}
	return t
}
