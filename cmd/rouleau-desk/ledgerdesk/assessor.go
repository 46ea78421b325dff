// The assessor's page: who signs here, finished assessments that await a decision, and what is signed, to be looked at or rated by a
// second rater.

package ledgerdesk

import (
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scoring/book"
)

var assessorID = ui.Name("book assessor")

func (d *Desk) assess(c *ui.Core, v *View, in ui.Rect) {
	if d.assessor == "" && v.Book.is(v.Who, book.Assessor) {
		d.assessor = v.Who
	}
	d.signsHere(c, v, in.CutTop(ui.TextFieldHeight))
	in.CutTop(10)
	left := in.CutLeft(in.W*0.5 - gap/2)
	in.CutLeft(gap)
	waiting := d.listOf(v, "awaiting", "", func(l *list) {
		for i := range v.Book.Waiting {
			if w := &v.Book.Waiting[i]; w.Assessment {
				l.add(i, words.Say("desk_book.whose", w.who(), w.Title), words.Say("desk_book.played_row", timeOf(w.When), w.Points, passedWord(w.Passed)))
			}
		}
	})
	head := words.Line("desk_book.awaiting", len(waiting.rows))
	if i := waiting.show(c, "awaiting", head, words.Say("desk_book.awaiting_list"), words.Say("desk_book.none_awaiting"), left); i >= 0 && busy(v) == "" {
		d.do(Act{Do: Look, Path: v.Book.Waiting[i].Path})
	}
	signed := d.listOf(v, "signed", "", func(l *list) {
		for i := range v.Book.Entries {
			e := &v.Book.Entries[i]
			l.add(i, words.Say("desk_book.whose", e.Learner, e.Title), signedWords(e))
		}
	})
	head = words.Line("desk_book.signed", len(signed.rows))
	if i := signed.show(c, "signed", head, words.Say("desk_book.signed_list"), words.Say("desk_book.none_signed"), in); i >= 0 && busy(v) == "" {
		d.do(Act{Do: Show, ID: v.Book.Entries[i].ID})
	}
}

// signedWords say when a record was signed, by whom, and what it says.
func signedWords(e *Entry) string {
	text := words.Say("desk_book.signed_row", dayOf(e.Decided), e.Assessor, outcomeWord(e.Competent))
	switch {
	case e.State != "":
		return words.Say("desk_book.signed_row", dayOf(e.Decided), e.Assessor, e.State)
	case e.Seconds > 0:
		return words.Say("desk_book.rated_row", text)
	}
	return text
}

// signsHere is the code of who signs, and whether they can.
func (d *Desk) signsHere(c *ui.Core, v *View, r ui.Rect) {
	box := r.CutLeft(min(320, r.W*0.4))
	r.CutLeft(gap)
	code, _ := c.TextField(ui.TextField{ID: assessorID, Rect: box, Label: words.Say("desk_book.signs_as"), Hint: words.Say("desk_book.code_hint"), Text: d.assessor, Most: 24})
	d.assessor = strings.TrimSpace(code)
	text, st := words.Say("desk_book.can_sign"), ui.Style{Size: 13, Col: c.Pal.Muted}
	if d.assessor == "" {
		text = words.Say("desk_book.signs_missing")
	} else if why := v.MaySign("", d.assessor); why != "" {
		text, st = why, ui.Style{Size: 13, Weight: ui.SemiBold}
	}
	h := min(c.LabelHeight(text, r.W, st), ui.TextFieldHeight)
	c.Label(ui.Label{ID: ui.Name("book can sign").With(text), Rect: r.Place(r.W, h, 0, 0.72), Text: text, Style: st})
}

// who is who played, by code where the book knows them.
func (w *Waiting) who() string {
	if w.Learner != "" {
		return w.Learner
	}
	return w.Operator
}

func passedWord(passed bool) string {
	if passed {
		return words.Say("desk_book.passed")
	}
	return words.Say("desk_book.not_passed")
}

func outcomeWord(competent bool) string {
	if competent {
		return words.Say("book_cli.competent")
	}
	return words.Say("book_cli.not_yet")
}
