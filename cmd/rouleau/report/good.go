package report

import (
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/chart"
	"rouleau/cmd/rouleau/page"
	"rouleau/sim"
)

// This file sets the run beside a good one: steady in the same case.

func (r *Report) besideGood() page.Block {
	d := r.Debrief
	own := &chart.Course{Name: words.Say("report.own"), Run: d.Record.Run}
	good := &chart.Course{Name: words.Say("report.good"), Run: d.Good.Run}
	ch := chart.Beside(words.Say("report.good_title"), own, good, math.NaN())
	b := page.Block{ID: "good", Head: words.Say("report.good_head"), Folded: r.shut(), Text: []string{words.Say("report.good_lead")}}
	if text := r.otherEnd(); text != "" {
		b.Text = append(b.Text, text)
	}
	drawn := page.Block{Drawing: &page.Drawing{List: ch.List(), Says: ch.Title}, Caption: ch.Caption}
	if !ch.Differ() {
		drawn = page.Block{Text: []string{words.Say("report.alike")}}
	}
	b.Beside = &page.Beside{Share: []int{42, 58}, Blocks: []page.Block{{Table: r.figures()}, drawn}}
	return b
}

// muchApart is from how long on it matters that two runs did not end at one time.
const muchApart = 60 * sim.TicksPerSecond

// otherEnd says that one of both went on after the other had ended, "" where that did not matter.
func (r *Report) otherEnd() string {
	own, good := r.Debrief.Own.EndTick, r.Debrief.GoodOwn.EndTick
	switch {
	case !r.Attempt.Ended:
		return words.Say("report.good_unfinished")
	case own-good > muchApart:
		return words.Say("report.good_ended_before", at(good), at(own))
	case good-own > muchApart:
		return words.Say("report.good_ended_after", at(good), at(own))
	}
	return ""
}

// figures sets both outcomes side by side.
func (r *Report) figures() *page.Table {
	t := &page.Table{Head: []string{"", words.Say("report.own"), words.Say("report.good")}, Right: []bool{1: true, 2: true}, Share: []int{52, 24, 24}, Named: true}
	for _, f := range r.Told.Figures {
		t.Add(f.Name, f.Own, f.Good)
	}
	return t
}
