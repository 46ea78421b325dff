// Judging an attempt: at the left what came of it, at the right what only a person can say.

package ledgerdesk

import (
	"strings"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
)

func (d *Desk) review(c *ui.Core, v *View, in ui.Rect) {
	w := d.formOf(v)
	foot := in.CutBottom(46)
	in.CutBottom(10)
	left := in.CutLeft(in.W*0.42 - gap/2)
	in.CutLeft(gap)
	c.Segment(in.X-gap/2, in.Y, in.X-gap/2, in.Bottom(), 1, c.Pal.Line)
	d.graded(c, v.Review, left)
	d.said(c, v, w, in)
	cell := foot.Col(0, 2, 10)
	if c.Button(ui.Button{ID: ui.Name("book result"), Rect: cell, Label: words.Say("desk_book.see_result"), Key: ui.K('R')}) {
		d.do(Act{Do: Result, Path: v.Review.Path})
	}
	if c.Button(ui.Button{ID: ui.Name("book look over"), Rect: foot.Col(1, 2, 10), Label: words.Say("desk_book.look_over"), Look: ui.LookDark, Why: d.whyNotOver(v, w)}) {
		d.do(Act{Do: LookOver, Path: v.Review.Path, Form: w.asked(v.Book.Items)})
		c.Focus(0)
	}
}

// formOf is what was written about the attempt so far; at first what the attempt itself says.
func (d *Desk) formOf(v *View) *form {
	r := v.Review
	w := d.forms[r.Path]
	if w == nil {
		w = &form{Form: Form{Learner: r.who(), For: r.Role, Competent: r.Attempt.Grade.Passed && r.Assessment}}
		d.forms[r.Path] = w
	}
	if w.Assessor == "" {
		w.Assessor = d.assessor
	}
	return w
}

// graded is what came of the attempt, as computed.
func (d *Desk) graded(c *ui.Core, r *Review, in ui.Rect) {
	a := r.Attempt
	f := d.reading(c, "graded", in)
	defer f.end()
	f.head(r.Title)
	verdict := words.Line("desk_book.computed_failed", float64(a.Grade.Points), float64(a.Grade.PassMark))
	if a.Grade.Passed {
		verdict = words.Line("desk_book.computed_passed", float64(a.Grade.Points), float64(a.Grade.PassMark))
	}
	f.say(verdict, ui.Style{Size: 15, Weight: ui.SemiBold})
	f.gap(4)
	f.muted(words.Line("desk_book.how", timeOf(a.When), r.who(), a.Seed, a.Scenario.Version))
	if b := a.Breaks; b != (attempt.Breaks{}) {
		f.muted(words.Line("cli.breaks", b.Interruptions, float64(b.LetGoS)))
		if b.TakenOver {
			f.muted(words.Say("cli.taken_over"))
		}
	}
	f.gap(8)
	f.strong(words.Say("cli.critical"))
	f.gap(4)
	for i := range a.Grade.Critical {
		k := &a.Grade.Critical[i]
		if k.Mended {
			f.bullet(words.Line("result.mended", k.Reason))
		} else {
			f.warn(k.Reason)
		}
	}
	if len(a.Grade.Critical) == 0 {
		f.say(words.Say("cli.none"), ui.Style{})
	}
	for i := range a.Grade.Parts {
		p := &a.Grade.Parts[i]
		if p.Of <= 0 {
			continue
		}
		f.gap(8)
		points := words.Line("desk_book.part", p.Title, float64(p.Points), float64(p.Of))
		if !p.Reached {
			points = words.Line("desk_book.part_under", p.Title, float64(p.Points), float64(p.Of), float64(p.Floor))
		}
		f.strong(points)
		for k := range a.Grade.Criteria {
			if cr := &a.Grade.Criteria[k]; cr.Part == p.Part {
				f.criterion(cr)
			}
		}
	}
}

// criterion is one thing that was graded; why is said where points were lost.
func (f *column) criterion(k *attempt.CriterionGrade) {
	value := words.Say("result.nothing_measured")
	if k.Measured {
		value = words.Line("result.measured", scoring.ShowUnit(float64(k.Value), k.Unit))
	}
	f.gap(3)
	const left = 92
	st := ui.Style{Size: 13, Tab: true, Col: f.c.Pal.Muted}
	lost := k.Points < k.Of
	if lost {
		st.Col = f.c.Pal.Ink
	}
	h := f.c.LabelHeight(k.Meaning, f.w-left, st)
	r := f.box(h)
	f.c.Text(ui.R(r.X, r.Y, left, ui.LineHeight(13)), words.Line("desk_book.criterion", float64(k.Points), float64(k.Of)), st)
	f.c.Label(ui.Label{Rect: ui.R(r.X+left, r.Y, f.w-left, h), Text: k.Meaning, Style: st})
	if lost {
		f.x, f.w = f.x+left, f.w-left
		f.muted(words.Line("desk_book.lost", value, k.Target, k.Reason))
		f.x, f.w = f.x-left, f.w+left
	}
}

// said is what the assessor says.
func (d *Desk) said(c *ui.Core, v *View, w *form, in ui.Rect) {
	f := d.column(c, "said", in)
	defer f.end()
	codes := f.box(ui.TextFieldHeight)
	w.Learner, _ = c.TextField(ui.TextField{ID: ui.Name("book learner"), Rect: codes.Col(0, 2, 12), Label: words.Say("desk_book.learner"), Hint: words.Say("desk_book.learner_hint"), Text: w.Learner, Most: 24})
	w.Assessor, _ = c.TextField(ui.TextField{ID: ui.Name("book signs"), Rect: codes.Col(1, 2, 12), Label: words.Say("desk_book.signs_as"), Hint: words.Say("desk_book.code_hint"), Text: w.Assessor, Most: 24})
	f.gap(10)
	w.Learner, w.Assessor = strings.TrimSpace(w.Learner), strings.TrimSpace(w.Assessor)
	if w.Assessor != "" && w.Learner != "" {
		f.warn(v.MaySign(w.Learner, w.Assessor))
	}
	f.head(words.Say("desk_book.judged"))
	f.items(w, v.Book.Items, v.Book.Names)
	f.head(words.Say("desk_book.decision"))
	d.decision(f, v, w)
	w.For, _ = f.field(ui.TextField{ID: ui.Name("book for"), Label: words.Say("desk_book.trains_for"), Hint: words.Say("desk_book.trains_hint"), Text: w.For, Most: 60})
	w.Comments = f.text(ui.Name("book comments"), words.Say("desk_book.comments"), w.Comments, v.Book.Names)
	w.Feedback = f.text(ui.Name("book feedback"), words.Say("desk_book.feedback"), w.Feedback, v.Book.Names)
	hint := words.Say("desk_book.due_now")
	if w.Competent {
		hint = words.Line("desk_book.due_hint", v.Review.Due)
	}
	w.Due, _ = f.field(ui.TextField{ID: ui.Name("book due"), Label: words.Say("desk_book.due"), Hint: hint, Text: w.Due, Most: 10})
}

// decision is as graded, or otherwise and why.
func (d *Desk) decision(f *column, v *View, w *form) {
	g := &v.Review.Attempt.Grade
	at := 1
	if w.Competent {
		at = 0
	}
	options := [...]ui.Option{{Label: outcomeWord(true)}, {Label: outcomeWord(false)}}
	if !v.Review.Assessment {
		options[0].Why = words.Say("desk_book.practice_shows_none")
	}
	if i, changed := f.c.Choice(ui.Choice{ID: ui.Name("book outcome"), Rect: f.box(42), Label: words.Say("desk_book.decision"), Options: options[:], Selected: at, Row: true}); changed && i >= 0 {
		w.Competent = i == 0
	}
	f.gap(4)
	if w.Competent == g.Passed {
		w.Override = ""
		f.muted(words.Say("desk_book.as_graded"))
		f.gap(8)
		return
	}
	w.Override = f.text(ui.Name("book override"), words.Say("desk_book.override"), w.Override, v.Book.Names)
}

func isDate(text string) bool {
	_, err := time.Parse(time.DateOnly, text)
	return err == nil
}

// whyNotOver is why the record cannot be made yet.
func (d *Desk) whyNotOver(v *View, w *form) string {
	switch {
	case busy(v) != "":
		return busy(v)
	case w.Learner == "" || w.Assessor == "":
		return words.Say("desk_book.codes_missing")
	case v.MaySign(w.Learner, w.Assessor) != "":
		return words.Say("desk_book.cannot_sign")
	case w.Competent != v.Review.Attempt.Grade.Passed && strings.TrimSpace(w.Override) == "":
		return words.Say("desk_book.override_missing")
	case strings.TrimSpace(w.For) == "":
		return words.Say("desk_book.for_missing")
	case w.Due != "" && !isDate(w.Due):
		return words.Say("desk_book.due_wrong")
	}
	return ""
}
