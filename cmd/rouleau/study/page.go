package study

import (
	"fmt"
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/page"
)

// This file puts the page of a study together. What is told by a colour is told by a form or a number as well.

// Page gives the whole page.
func (f *Figures) Page() *page.Page {
	p := &page.Page{Title: words.Say("study.title", f.Title)}
	verdict := page.Block{Note: true, Text: []string{f.Verdict()}, List: marked("✗ ", f.Broken())}
	verdict.List = append(verdict.List, f.NotJudged()...)
	warnings := page.Block{Head: words.Say("study.warnings_head"), List: marked("⚠ ", f.Warnings)}
	if len(f.Warnings) == 0 {
		warnings.Text = []string{words.Say("study.no_warnings")}
	}
	p.Blocks = append(p.Blocks, verdict, page.Block{Text: []string{f.What}}, f.points(), f.passing(), page.Block{Table: f.operators()},
		page.Block{Head: words.Say("study.recovery_head"), List: f.Recovery.lines()}, page.Block{Text: []string{words.Say("study.recovery_published")}})
	p.Blocks = append(p.Blocks, f.criteriaBlocks()...)
	p.Blocks = append(p.Blocks, f.criticalBlock(), f.seedBlock())
	p.Blocks = append(p.Blocks, f.cohortBlocks()...)
	p.Blocks = append(p.Blocks, warnings, page.Block{Head: words.Say("study.methods_head"), Text: []string{words.Say("study.rules_are"), words.Say("study.intervals")}})
	return p
}

// marked puts a sign before each line.
func marked(sign string, lines []string) (all []string) {
	for _, l := range lines {
		all = append(all, sign+l)
	}
	return all
}

// points is how often each operator came to how many points.
func (f *Figures) points() page.Block {
	each := &page.Beside{Across: 3}
	for i := range f.Operators {
		o := &f.Operators[i]
		each.Blocks = append(each.Blocks, page.Block{Drawing: histogram(o.Histogram, f.PassMark),
			Caption: page.Strong(o.Name) + ": " + o.Failing + " " + words.Say("study.passes_of", 100*o.Pass.Value, 100*o.Pass.Low, 100*o.Pass.High)})
	}
	return page.Block{Head: words.Say("study.operators_head"), Text: []string{words.Say("study.histograms_note", f.PassMark)}, Beside: each}
}

// passing is who passes, and how far points part each from steady.
func (f *Figures) passing() page.Block {
	var passes, apart []bar
	for i := range f.Operators {
		o := &f.Operators[i]
		passes, apart = append(passes, bar{o.Name, &o.Pass}), append(apart, bar{o.Name, o.AUC})
	}
	return page.Block{Caption: words.Say("study.limits_note"), Drawing: spans(
		panel{words.Say("study.pass_share"), 0, 1, []float64{faultyPasses, steadyPasses}, passes},
		panel{words.Say("study.auc"), 0, 1, []float64{partsWhole}, apart})}
}

// operators is the table of how each did.
func (f *Figures) operators() *page.Table {
	t := table(words.Say("study.operator"), "n", words.Say("study.passes"), words.Say("study.points"), words.Say("study.deviation"), words.Say("study.range"),
		words.Say("study.auc"), words.Say("study.recovery"), words.Say("study.matters"))
	t.Right[8] = false
	for i := range f.Operators {
		o := &f.Operators[i]
		add(t, said(o.Name), said(o.N), of(&o.Pass, "%.1f", 100), of(&o.Points, "%.1f", 1), of(&o.SD, "%.2f", 1),
			said(fmt.Sprintf("%.1f–%.1f", o.Least, o.Most)), of(o.AUC, "%.3f", 1), of(&o.Recovery, "%.2f", 1), said(strings.Join(o.Matters, ", ")))
	}
	return t
}

// seedBlock says what the seed does to the points.
func (f *Figures) seedBlock() page.Block {
	t := table(words.Say("study.share_of_variance"), words.Say("study.with_interval", f.Spread.Seeds))
	add(t, said(words.Say("study.seed_who")), of(&f.Spread.Operator, "%.1f", 100))
	add(t, said(words.Say("study.seed_seed")), of(&f.Spread.Seed, "%.1f", 100))
	add(t, said(words.Say("study.seed_rest")), of(&f.Spread.Rest, "%.1f", 100))
	return page.Block{Head: words.Say("study.seed_head"), Text: []string{words.Say("study.seed", f.Spread.Seeds)}, Table: t}
}
