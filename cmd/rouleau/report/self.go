package report

import (
	"fmt"
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/page"
	"rouleau/scoring/attempt"
	"rouleau/scoring/debrief"
)

// This file holds how the person saw each objective: beside what was measured where marks were given before the verdict, else a
// form to be ticked before reading on.

func (r *Report) self() page.Block {
	if r.Attempt.Self == nil {
		return r.form()
	}
	rows := debrief.SideBySide(r.scenario(), r.grade(), r.Attempt.Self)
	t := &page.Table{Head: []string{words.Say("report.objective"), words.Say("self.own"), words.Say("self.measured"), ""}, Share: []int{46, 16, 20, 18}, Named: true}
	var apart []debrief.Apart
	part := ""
	for i := range rows {
		b := &rows[i]
		if b.PartTitle != part {
			part = b.PartTitle
			t.Rows = append(t.Rows, page.Row{Group: part})
		}
		apart = append(apart, b.Apart)
		measured := page.Cell{Text: level(b), Small: strings.Join(b.Errors, "; ")}
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{{Text: numbered(i, b.Objective.Text)}, {Text: debrief.MarkWords(b.Own)}, measured, {Text: signOf(b.Apart)}}})
	}
	b := page.Block{ID: "self", Head: words.Say("self.beside"), Text: []string{page.Strong(sentence(debrief.SumUp(apart))), debrief.SelfRule()}, Table: t, Sheet: true}
	if said := r.Attempt.Self.Otherwise; said != "" {
		b.Text = append(b.Text, words.Say("self.said", said))
	}
	return b
}

// level is what was measured of an objective, with its points.
func level(b *debrief.Beside) string {
	return words.Say("self.level", b.Measured, words.Say("result.points", debrief.Score(b.Points), debrief.Score(b.Of)))
}

// signOf says how a mark and a measure stand to each other; where they part it catches the eye.
func signOf(a debrief.Apart) string {
	switch a {
	case debrief.SeenBetter, debrief.CameUpUnseen:
		return page.Sign(page.Serious, a.String())
	case debrief.SeenWorse:
		return page.Sign(page.Slight, a.String())
	case debrief.NoMark:
		return ""
	}
	return page.Sign(page.Well, a.String())
}

func numbered(i int, text string) string { return fmt.Sprintf("%d. %s", i+1, text) }

// form asks for the marks. It says nothing of what was measured.
func (r *Report) form() page.Block {
	var choices []string
	for _, m := range []attempt.Mark{attempt.WentWell, attempt.WentPartly, attempt.NotWell, attempt.DidNotComeUp} {
		choices = append(choices, debrief.MarkWords(m))
	}
	each := &page.Beside{Across: formColumns}
	for i, o := range attempt.Objectives(r.scenario()) {
		each.Blocks = append(each.Blocks, page.Block{Ask: []page.Question{{Text: numbered(i, o.Text), Choices: choices}}})
	}
	return page.Block{ID: "self", Head: words.Say("self.title"), Text: []string{words.Say("report.form_lead")}, Beside: each, Sheet: true}
}

// formColumns is how many columns the form has: as many as let it stand on one sheet.
const formColumns = 4
