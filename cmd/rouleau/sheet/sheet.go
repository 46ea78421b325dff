// Package sheet makes the printable sheet of a record of the competency book: what was decided, by whom, on which evidence, and
// what pins it in the book. It shows codes of people and no names, and comments only where they are asked for.
package sheet

import (
	"encoding/base64"
	"fmt"
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/page"
	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/book"
)

// Of is the sheet of a signed-off record.
func Of(s *book.State, e *book.Entry, comments bool) (*page.Page, error) {
	b, ok := e.Body.(*book.SignOff)
	if !ok {
		return nil, fmt.Errorf("%s", words.Say("sheet.no_sheet", e.Leaf.ID, string(e.Leaf.Kind)))
	}
	root, err := s.Root()
	if err != nil {
		return nil, err
	}
	p := &page.Page{Title: words.Say("sheet.title", b.Learner), Lead: []string{words.Say("sheet.lead", b.Scenario.ID, b.Scenario.Version, b.For), words.Say("sheet.training")}}
	p.Blocks = append(p.Blocks, decided(e, b, comments), critical(b))
	if beside := filled([]page.Block{parts(b), rated(s, e, b)}); len(beside) > 0 {
		p.Blocks = append(p.Blocks, page.Block{Beside: &page.Beside{Blocks: beside}})
	}
	if comments && (b.Comments != "" || b.Feedback != "") {
		p.Blocks = append(p.Blocks, page.Block{Head: words.Say("sheet.said"), Pairs: pairs(words.Say("sheet.comments"), b.Comments, words.Say("sheet.feedback"), b.Feedback)})
	}
	p.Blocks = append(p.Blocks, earlier(b), criteria(b))
	if comments {
		p.Blocks = append(p.Blocks, training(b))
	}
	p.Blocks = append(p.Blocks, pinned(s, e, b, base64.StdEncoding.EncodeToString(root[:])))
	p.Blocks = filled(p.Blocks)
	return p, nil
}

// filled leaves out blocks with nothing but a head.
func filled(all []page.Block) (some []page.Block) {
	for _, b := range all {
		if len(b.Text) > 0 || len(b.Pairs) > 0 || len(b.List) > 0 || b.Beside != nil || b.Table != nil && len(b.Table.Rows) > 0 {
			some = append(some, b)
		}
	}
	return some
}

// pairs are names with texts; those without a text are left out.
func pairs(texts ...string) (all []page.Pair) {
	for i := 0; i+1 < len(texts); i += 2 {
		if texts[i+1] != "" {
			all = append(all, page.Pair{Name: texts[i], Lines: []string{texts[i+1]}})
		}
	}
	return all
}

// decided is the decision. Why somebody decided otherwise than computed is said in their own words, which are shown only where they
// are asked for; that there is a reason is always said.
func decided(e *book.Entry, b *book.SignOff, comments bool) page.Block {
	outcome := page.Sign(page.Serious, words.Say("sheet.not_yet"))
	if b.Outcome == book.Competent {
		outcome = page.Sign(page.Well, words.Say("sheet.competent"))
	}
	computed := words.Say("sheet.computed_failed", b.Points, b.PassMark)
	if b.Passed {
		computed = words.Say("sheet.computed_passed", b.Points, b.PassMark)
	}
	override := b.Override
	if override != "" && !comments {
		override = words.Say("sheet.has_reason")
	}
	standing := ""
	switch {
	case e.VoidedBy != "":
		standing = page.Sign(page.Grave, words.Say("sheet.void", e.VoidedBy))
	case e.SupersededBy != "":
		standing = page.Sign(page.Grave, words.Say("sheet.superseded", e.SupersededBy))
	}
	return page.Block{Head: words.Say("sheet.decided"), Note: true, Pairs: pairs(
		words.Say("sheet.standing"), standing,
		words.Say("sheet.outcome"), outcome,
		words.Say("sheet.computed"), computed,
		words.Say("sheet.mark"), b.MarkSetBy,
		words.Say("sheet.override"), override,
		words.Say("sheet.learner"), b.Learner,
		words.Say("sheet.assessor"), b.Assessor,
		words.Say("sheet.date"), b.Date,
		words.Say("sheet.due"), b.Due,
		words.Say("sheet.attempt"), words.Say("sheet.attempt_line", b.Number, words.Say("sheet.mode_"+b.Mode), b.Played, b.LengthS/60),
		words.Say("sheet.breaks"), breaks(&b.Breaks),
		words.Say("sheet.supersedes"), b.Supersedes)}
}

func breaks(b *book.Breaks) string {
	if *b == (book.Breaks{}) {
		return words.Say("sheet.no_breaks")
	}
	text := words.Say("cli.breaks", b.Interruptions, b.LetGoS)
	if b.TakenOver {
		text += " " + words.Say("cli.taken_over")
	}
	return text
}

func critical(b *book.SignOff) page.Block {
	block := page.Block{Head: words.Say("sheet.critical")}
	for _, c := range b.Critical {
		weight := page.Grave
		if c.Mended {
			weight = page.Slight
		}
		block.List = append(block.List, page.Sign(weight, c.Reason))
	}
	if len(block.List) == 0 {
		block.Text = []string{words.Say("sheet.no_critical")}
	}
	return block
}

// rated are the items that only a person judges, with the second rater's levels where there is one, and how far they agree.
func rated(s *book.State, e *book.Entry, b *book.SignOff) page.Block {
	block := page.Block{Head: words.Say("sheet.rated"), Table: &page.Table{Named: true, Right: []bool{false, true, true}}}
	second := s.Ratings(e.Leaf.ID)
	block.Table.Head = []string{words.Say("sheet.item"), words.Say("sheet.first"), words.Say("sheet.second"), words.Say("sheet.anchor")}
	for _, r := range b.Rated {
		other := ""
		for _, k := range second {
			for _, q := range k.Rated {
				if q.Item == r.Item {
					other = strings.TrimSpace(other + " " + fmt.Sprint(q.Level))
				}
			}
		}
		if other == "" {
			other = "–"
		}
		block.Table.Add(r.Item, fmt.Sprint(r.Level), other, r.Anchor)
	}
	if len(second) > 0 {
		a := s.Agreement(e.Leaf.ID)
		block.Text = []string{words.Say("sheet.same", a.Same, a.Items)}
		if a.Computed {
			block.Text = []string{words.Say("sheet.kappa", a.Same, a.Items, a.Kappa)}
		}
	}
	return block
}

func parts(b *book.SignOff) page.Block {
	t := &page.Table{Named: true, Right: []bool{false, true, true, true}, Head: []string{words.Say("sheet.part"), words.Say("sheet.points"), words.Say("sheet.of"), words.Say("sheet.floor")}}
	for _, p := range b.Parts {
		if p.Of <= 0 {
			continue
		}
		reached := scoring.Show(p.Floor)
		if !p.Reached {
			reached = page.Sign(page.Serious, words.Say("sheet.under_floor", p.Floor))
		}
		t.Add(p.Part, fmt.Sprintf("%.1f", p.Points), scoring.Show(p.Of), reached)
	}
	return page.Block{Head: words.Say("sheet.parts"), Table: t}
}

func criteria(b *book.SignOff) page.Block {
	t := &page.Table{Named: true, Right: []bool{false, true, false, true}, Share: []int{26, 13, 16, 9, 36},
		Head: []string{words.Say("sheet.criterion"), words.Say("sheet.measured"), words.Say("sheet.target"), words.Say("sheet.points"), words.Say("sheet.reason")}}
	part := ""
	for i := range b.Criteria {
		c := &b.Criteria[i]
		if c.Part != part {
			part = c.Part
			t.Rows = append(t.Rows, page.Row{Group: part})
		}
		measured := "–"
		if c.Measured {
			measured = scoring.ShowUnit(c.Value, c.Unit)
		}
		name := strings.ReplaceAll(c.Measure, "_", " ")
		if m, ok := scenarios.MeasureNamed(c.Measure); ok {
			name = m.Meaning
		}
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{{Text: name}, {Text: measured}, {Text: c.Target},
			{Text: words.Say("sheet.points_of", c.Points, c.Of)}, {Text: c.Reason, Small: c.Source}}})
	}
	return page.Block{Head: words.Say("sheet.criteria"), Table: t}
}

func earlier(b *book.SignOff) page.Block {
	block := page.Block{Head: words.Say("sheet.earlier"), Table: &page.Table{Head: []string{words.Say("sheet.played"), words.Say("sheet.mode"), words.Say("sheet.points"), words.Say("sheet.outcome")}, Right: []bool{false, false, true}}}
	for _, k := range b.Earlier {
		outcome := words.Say("sheet.failed")
		if k.Passed {
			outcome = words.Say("sheet.passed")
		}
		if k.Critical > 0 {
			outcome = words.Say("sheet.with_critical", outcome, k.Critical)
		}
		block.Table.Add(k.Played, words.Say("sheet.mode_"+k.Mode), fmt.Sprintf("%.1f", k.Points), outcome)
	}
	if len(b.Earlier) == 0 {
		block.Table = nil
		block.Text = []string{words.Say("sheet.no_earlier")}
	}
	return block
}

func training(b *book.SignOff) page.Block {
	block := page.Block{Head: words.Say("sheet.training_items")}
	for _, k := range b.Training {
		block.List = append(block.List, words.Say("sheet.training_item", k.What, k.Text))
	}
	return block
}

// pinned is what shows, with the book or a proof, that the record is this one.
func pinned(s *book.State, e *book.Entry, b *book.SignOff, root string) page.Block {
	return page.Block{Head: words.Say("sheet.pinned"), Text: []string{words.Say("sheet.pinned_text")}, Pairs: pairs(
		words.Say("sheet.book"), s.Origin,
		words.Say("sheet.record"), words.Say("sheet.record_line", e.Leaf.ID, e.Seq, e.Leaf.At),
		words.Say("sheet.hash"), e.Leaf.SHA256,
		words.Say("sheet.key"), e.Leaf.Key,
		words.Say("sheet.root"), words.Say("sheet.root_line", s.Size(), root),
		words.Say("sheet.scenario"), b.Scenario.SHA256,
		words.Say("sheet.model"), words.Say("sheet.model_line", b.Model, b.Seed))}
}
