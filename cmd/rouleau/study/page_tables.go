package study

import (
	"fmt"
	"math"
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/page"
)

// This file puts the tables of criteria, of what is never made up for, and of people on the page.

// table is a table whose first column names and whose others hold figures. A number of runs in its head is not parted from its n.
func table(head ...string) *page.Table {
	t := &page.Table{Named: true}
	for i, h := range head {
		t.Head = append(t.Head, strings.ReplaceAll(h, " n ", " n\u00a0"))
		t.Right = append(t.Right, i > 0)
	}
	return t
}

func add(t *page.Table, cells ...page.Cell) { t.Rows = append(t.Rows, page.Row{Cells: cells}) }

// said is a cell with a word or a number that was counted.
func said(what any) page.Cell { return page.Cell{Text: fmt.Sprint(what)} }

// of is a figure over its interval; n stands in the row or in the head of the column.
func of(i *Interval, format string, factor float64) page.Cell { return shaded(i, format, factor, 0) }

// shaded is a figure with a tint of 0 to 1 behind it.
func shaded(i *Interval, format string, factor, tint float64) page.Cell {
	if i == nil || i.N == 0 {
		return page.Cell{Text: "–"}
	}
	return page.Cell{Text: fmt.Sprintf(format, factor*i.Value), Small: fmt.Sprintf(format+" – "+format, factor*i.Low, factor*i.High), Tint: tint}
}

func (f *Figures) criteriaBlocks() []page.Block {
	var hard, rest []bar
	n := 0
	for i := range f.Criteria {
		c := &f.Criteria[i]
		hard, rest = append(hard, bar{c.Name, &c.Difficulty}), append(rest, bar{c.Name, c.Correlation})
		n = max(n, c.Difficulty.N)
	}
	difficulty, correlation := words.Say("study.difficulty_n", n), words.Say("study.correlation_n", n)
	head := []string{words.Say("study.criterion"), words.Say("study.of"), difficulty, correlation}
	for i := range f.Operators {
		if o := &f.Operators[i]; o.Name != steady && o.AUC != nil {
			head = append(head, words.Say("study.auc_of", o.Name, o.AUC.N))
		}
	}
	t := table(head...)
	for i := range f.Criteria {
		c := &f.Criteria[i]
		cells := []page.Cell{said(c.Name), said(c.Of), of(&c.Difficulty, "%.2f", 1), of(c.Correlation, "%.2f", 1)}
		for k := range c.AUC {
			if o := &f.Operators[k]; o.Name != steady && o.AUC != nil {
				cells = append(cells, shaded(&c.AUC[k], "%.2f", 1, math.Abs(2*c.AUC[k].Value-1)))
			}
		}
		add(t, cells...)
	}
	first := page.Block{Head: words.Say("study.criteria_head"), Text: []string{words.Say("study.criteria_note")}}
	if len(hard) > 0 {
		first.Drawing = spans(panel{difficulty, 0, 1, nil, hard}, panel{correlation, -1, 1, nil, rest})
		first.Caption = words.Say("study.spans_note")
	}
	return []page.Block{first, {Table: t}}
}

func (f *Figures) criticalBlock() page.Block {
	b := page.Block{Head: words.Say("study.critical_head")}
	if len(f.Critical) == 0 {
		b.Text = []string{words.Say("study.no_critical")}
		return b
	}
	head := []string{""}
	for i := range f.Operators {
		head = append(head, words.Say("study.named_n", f.Operators[i].Name, f.Operators[i].N))
	}
	b.Table = table(head...)
	for i := range f.Critical {
		cells := []page.Cell{said(f.Critical[i].Name)}
		for k := range f.Critical[i].Share {
			share := &f.Critical[i].Share[k]
			cells = append(cells, shaded(share, "%.1f", 100, share.Value))
		}
		add(b.Table, cells...)
	}
	return b
}

func (f *Figures) cohortBlocks() []page.Block {
	c := f.Cohort
	if c == nil {
		return nil
	}
	b := page.Block{Head: words.Say("study.cohort_head"), Text: []string{c.Note}}
	if c.Pass == nil {
		return []page.Block{b}
	}
	b.Drawing = histogram(c.hist, f.PassMark)
	b.Table = table("n", words.Say("study.passes"), words.Say("study.points"), words.Say("study.deviation_people"), words.Say("study.auc_people"))
	b.Table.Named = false
	add(b.Table, said(c.N), of(c.Pass, "%.1f", 100), of(c.Points, "%.1f", 1), of(c.SD, "%.2f", 1), of(c.AUC, "%.3f", 1))
	if len(c.Criteria) == 0 {
		return []page.Block{b, {Text: []string{words.Say("study.cohort_no_criteria")}}}
	}
	criteria := table(words.Say("study.criterion"), "n", words.Say("study.difficulty"), words.Say("study.correlation"), words.Say("study.auc_people_of"))
	for i := range c.Criteria {
		k := &c.Criteria[i]
		add(criteria, said(k.Name), said(k.N), of(k.Difficulty, "%.2f", 1), of(k.Correlation, "%.2f", 1), of(k.AUC, "%.2f", 1))
	}
	blocks := []page.Block{b, {Table: criteria}}
	if len(c.Critical) > 0 {
		critical := table(words.Say("study.critical_head"), words.Say("study.named_n", words.Say("study.cohort_head"), c.N))
		for i := range c.Critical {
			add(critical, said(c.Critical[i].Name), of(&c.Critical[i].Share, "%.1f", 100))
		}
		blocks = append(blocks, page.Block{Table: critical})
	}
	return blocks
}
