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
	head := in.CutTop(ui.TextFieldHeight)
	d.signsHere(c, v, head)
	in.CutTop(10)
	left := in.CutLeft(in.W*0.5 - gap/2)
	in.CutLeft(gap)
	var waiting []*Waiting
	var rows []ui.Row
	for i := range v.Book.Waiting {
		if w := &v.Book.Waiting[i]; w.Assessment {
			waiting = append(waiting, w)
			rows = append(rows, ui.Row{Label: words.Line("desk_book.whose", w.who(), w.Title), Detail: words.Line("desk_book.played_row", timeOf(w.When), w.Points, passedWord(w.Passed))})
		}
	}
	c.Text(left.CutTop(26), words.Line("desk_book.awaiting", len(waiting)), ui.Style{Weight: ui.SemiBold})
	if i := d.rows(c, "awaiting", words.Say("desk_book.awaiting_list"), words.Say("desk_book.none_awaiting"), rows, left); i >= 0 && busy(v) == "" {
		d.do(Act{Do: Look, Path: waiting[i].Path})
	}
	signed := d.entries(v, func(*Entry) bool { return true })
	c.Text(in.CutTop(26), words.Line("desk_book.signed", len(signed)), ui.Style{Weight: ui.SemiBold})
	rows = rows[:0]
	for _, e := range signed {
		detail := words.Line("desk_book.signed_row", dayOf(e.Decided), e.Assessor, outcomeWord(e.Competent))
		switch {
		case e.State != "":
			detail = words.Line("desk_book.state_row", dayOf(e.Decided), e.Assessor, e.State)
		case e.Seconds > 0:
			detail = words.Line("desk_book.rated_row", detail)
		}
		rows = append(rows, ui.Row{Label: words.Line("desk_book.whose", e.Learner, e.Title), Detail: detail})
	}
	if i := d.rows(c, "signed", words.Say("desk_book.signed_list"), words.Say("desk_book.none_signed"), rows, in); i >= 0 && busy(v) == "" {
		d.do(Act{Do: Show, ID: signed[i].ID})
	}
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
