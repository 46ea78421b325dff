// Signing: what will stand in the book, what to look at before, the passphrase; and what came of it, checked at once.

package ledgerdesk

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scoring/book"
)

var phraseID = ui.Name("book phrase")

func (d *Desk) signing(c *ui.Core, v *View, in ui.Rect) {
	b := v.Draft.Record
	right := in.CutRight(in.W*0.44 - gap/2)
	in.CutRight(gap)
	c.Segment(right.X-gap/2, in.Y, right.X-gap/2, in.Bottom(), 1, c.Pal.Line)
	f := d.reading(c, "to sign", in)
	f.head(words.Say("desk_book.will_stand"))
	f.summary(b, v.Review, v.Book.Items)
	f.end()

	f = d.column(c, "sign", right)
	if len(v.Draft.Warnings) > 0 {
		f.head(words.Say("desk_book.look_at"))
		for _, text := range v.Draft.Warnings {
			f.warn(text)
		}
		f.gap(6)
	}
	f.head(words.Say("desk_book.sign_head"))
	f.muted(words.Line("desk_book.sign_text", b.Assessor))
	f.gap(8)
	d.passphrase(f, v, b.Assessor, v.Draft.Fault, words.Say("desk_book.sign"), "", Act{Do: Sign})
	f.end()
}

// passphrase asks for the one of somebody's key, and does an act with it. What was wrong with the last is said under it.
func (d *Desk) passphrase(f *column, v *View, who, fault, label, why string, then Act) {
	top := f.y
	phrase, entered := f.field(ui.TextField{ID: phraseID, Label: words.Line("desk_book.phrase", who), Text: d.phrase, Most: 200, Secret: true})
	d.phrase = phrase
	f.warn(fault)
	switch {
	case why != "":
	case busy(v) != "":
		why = busy(v)
	case d.phrase == "":
		why = words.Say("desk_book.phrase_missing")
	}
	pressed := f.button(ui.Button{ID: ui.Name("book sign"), Label: label, Look: ui.LookDark, Why: why})
	if at := f.c.Focused() == phraseID; at != d.atPhrase {
		if d.atPhrase = at; at { // what is done with it, and what came of it, come into view with it
			f.c.BringIn(ui.R(f.x, top, f.w, f.y-top))
		}
	}
	if (pressed || entered) && why == "" {
		then.Phrase = d.phrase
		d.do(then)
	}
}

// summary is what a record says of a decision.
func (f *column) summary(b *book.SignOff, r *Review, items []book.Item) {
	f.pair(words.Say("book_cli.field_outcome"), outcomeWord(b.Outcome == book.Competent))
	f.pair(words.Say("book_cli.field_override"), b.Override)
	f.pair(words.Say("book_cli.field_points"), words.Line("desk_book.points", b.Points, b.PassMark, passedWord(b.Passed)))
	f.pair(words.Say("book_cli.field_due"), b.Due)
	f.pair(words.Say("book_cli.learner"), b.Learner)
	f.pair(words.Say("book_cli.assessor"), b.Assessor)
	f.pair(words.Say("book_cli.field_for"), b.For)
	title := b.Scenario.ID
	if r != nil {
		title = r.Title
	}
	f.pair(words.Say("book_cli.field_scenario"), words.Line("desk_book.case", title, b.Scenario.Version))
	f.pair(words.Say("book_cli.field_played"), timeOf(b.Played))
	f.pair(words.Say("book_cli.field_number"), words.Line("book_cli.number", b.Number))
	for i := range b.Earlier {
		e := &b.Earlier[i]
		f.pair(words.Say("book_cli.field_earlier"), words.Line("desk_book.earlier", dayOf(e.Played), e.Points, passedWord(e.Passed)))
	}
	for i := range b.Rated {
		k := &b.Rated[i]
		name := k.Item
		for _, it := range items {
			if it.Name == k.Item {
				name = it.Title
			}
		}
		f.pair(name, words.Line("book_cli.level", k.Level, k.Anchor))
		f.pair("", k.Comment)
	}
	f.pair(words.Say("book_cli.field_comments"), b.Comments)
	f.pair(words.Say("book_cli.field_feedback"), b.Feedback)
	for i := range b.Critical {
		f.pair(words.Say("cli.critical"), b.Critical[i].Reason)
	}
}

// signed is what came of it.
func (d *Desk) signed(c *ui.Core, v *View, in ui.Rect) {
	f := d.reading(c, "signed", in)
	defer f.end()
	f.w = min(f.w, mostForm)
	f.head(words.Say("desk_book.is_signed"))
	f.verified(v.Signed)
	f.gap(10)
	if f.button(ui.Button{ID: ui.Name("book save"), Label: words.Say("desk_book.save_sheet"), Key: ui.K('S'), Why: busy(v)}) {
		d.askSave(c)
	}
	if f.button(ui.Button{ID: ui.Name("book show"), Label: words.Say("desk_book.show_record"), Why: busy(v)}) {
		d.do(Act{Do: Show, ID: v.Signed.ID})
	}
	if f.button(ui.Button{ID: ui.Name("book done"), Label: words.Say("desk_book.done"), Look: ui.LookDark}) {
		d.do(Act{Do: Understood})
		c.Focus(0)
	}
}

// verified is what verifying a record found.
func (f *column) verified(s *Signed) {
	if s.Verdict != "" {
		f.marked(words.Line("desk_book.verdict", s.Verdict), s.Good)
	}
	f.warn(s.What)
	for _, what := range s.Log {
		f.warn(what)
	}
	f.pair(words.Say("book_cli.field_record"), s.ID)
	f.root(s.Root, s.Records)
}

// root is what pins everything before it, to be kept elsewhere.
func (f *column) root(root string, records int) {
	if root == "" {
		return
	}
	f.pair(words.Say("desk_book.root"), words.Line("desk_book.root_of", root, records))
	f.gap(4)
	f.muted(words.Say("desk_book.root_text"))
	f.gap(4)
	label := words.Say("desk_book.root_copy")
	b := ui.Button{ID: ui.Name("book copy").With(root), Label: label}
	b.Rect = f.box(42)
	b.Rect.W = min(b.Rect.W, ui.TextWidth(label, ui.SizeBody, ui.SemiBold, false)+26)
	if f.c.Button(b) {
		f.c.SetClipboard(root)
	}
	f.gap(4)
}

// marked is a line with a sign before it for whether it is as it should be.
func (f *column) marked(text string, good bool) {
	st := ui.Style{Size: 15, Weight: ui.SemiBold}
	h := f.c.LabelHeight(text, f.w-24, st)
	r := f.box(h + 4)
	sign(f.c, ui.R(r.X+1, r.Y+3, 14, 14), good, false)
	f.c.Label(ui.Label{Rect: ui.R(r.X+24, r.Y, f.w-24, h), Text: text, Style: st})
	f.gap(4)
}
