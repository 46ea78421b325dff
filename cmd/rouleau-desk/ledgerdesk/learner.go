// The learner's page: how one stands in each competency, what is missing and when it is due, what is in the book, and what is not.

package ledgerdesk

import (
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scoring/book"
)

func (d *Desk) learner(c *ui.Core, v *View, in ui.Rect) {
	if v.Who == "" {
		c.Label(ui.Label{Rect: in, Text: words.Say("desk_book.who_first"), Style: ui.Style{Size: 15}})
		return
	}
	left := in.CutLeft(in.W*0.5 - gap/2)
	in.CutLeft(gap)
	d.stands(c, v, left)
	upper := in.CutTop(in.H * 0.55)
	in.CutTop(10)
	mine := d.listOf(v, "mine", v.Who, func(l *list) {
		for i := range v.Book.Entries {
			if e := &v.Book.Entries[i]; e.Learner == v.Who {
				l.add(i, words.Say("desk_book.row", dayOf(e.Decided), e.Title), entryWords(e))
			}
		}
	})
	head := words.Line("desk_book.results", len(mine.rows))
	if i := mine.show(c, "mine", head, words.Say("desk_book.results_list"), words.Say("desk_book.no_results"), upper); i >= 0 && busy(v) == "" {
		d.do(Act{Do: Show, ID: v.Book.Entries[i].ID})
	}
	outside := d.listOf(v, "outside", v.Who, func(l *list) {
		for i := range v.Book.Waiting {
			if w := &v.Book.Waiting[i]; w.Learner == v.Who || w.Operator == v.Who {
				l.add(i, words.Say("desk_book.row", dayOf(w.When), w.Title), waitingWords(w))
			}
		}
	})
	head = words.Line("desk_book.outside", len(outside.rows))
	if i := outside.show(c, "outside", head, words.Say("desk_book.outside_list"), words.Say("desk_book.no_outside"), in); i >= 0 {
		d.do(Act{Do: Result, Path: v.Book.Waiting[i].Path})
	}
}

// entryWords are the outcome of a sign-off in a line.
func entryWords(e *Entry) string {
	switch {
	case e.State != "":
		return e.State
	case e.Competent:
		return words.Line("desk_book.competent_until", e.Points, e.Due)
	}
	return words.Line("desk_book.not_yet_row", e.Points)
}

// waitingWords are an attempt outside the book in a line.
func waitingWords(w *Waiting) string {
	mode, passed := words.Say("home.practice"), words.Say("desk_book.not_passed")
	if w.Assessment {
		mode = words.Say("home.assessment")
	}
	if w.Passed {
		passed = words.Say("desk_book.passed")
	}
	if !w.Ended {
		mode = words.Line("home.broken_off", mode)
	}
	return words.Line("desk_book.waiting_row", mode, w.Points, passed)
}

// dayOf is the day of a time in the person's own zone.
func dayOf(when string) string { return inZone(when, time.DateOnly) }

// timeOf is the time to the minute.
func timeOf(when string) string { return inZone(when, "2006-01-02 15:04") }

func inZone(when, form string) string {
	t, err := time.Parse(time.RFC3339, when)
	if err != nil {
		return when
	}
	return t.Local().Format(form)
}

// stands is one's standing in all competencies.
func (d *Desk) stands(c *ui.Core, v *View, r ui.Rect) {
	f := d.reading(c, "standing", r)
	defer f.end()
	f.head(words.Line("desk_book.you", v.Who))
	is := v.Book.is(v.Who, book.Learner)
	switch {
	case v.Book.Department == "":
		f.say(words.Say("desk_book.no_plan"), ui.Style{})
		return
	case !is && len(v.Book.Roles[v.Who]) > 0:
		f.say(words.Line("desk_book.other_role", v.Who), ui.Style{})
		return
	case !is:
		f.say(words.Line("desk_book.unknown_learner", v.Who), ui.Style{})
		return
	}
	f.muted(words.Line("desk_book.plan_of", v.Book.Department))
	f.gap(6)
	for i := range v.Book.Standing {
		if st := &v.Book.Standing[i]; st.Learner == v.Who {
			f.standing(st)
		}
	}
}

// standing is one competency: whether it holds, until when, why not, and what is missing.
func (f *column) standing(st *book.Standing) {
	f.gap(6)
	name := ui.Style{Size: 15, Weight: ui.SemiBold}
	h := f.c.LabelHeight(st.Competency.Title, f.w-24, name)
	r := f.box(h)
	sign(f.c, ui.R(r.X+1, r.Y+3, 14, 14), !st.Due, st.Shown)
	f.c.Label(ui.Label{Rect: ui.R(r.X+24, r.Y, f.w-24, h), Text: st.Competency.Title, Style: name})
	f.gap(2)
	f.x, f.w = f.x+24, f.w-24
	f.strong(standingWords(st))
	for _, why := range st.Why {
		f.say(words.Line("desk_book.because", why), ui.Style{})
	}
	for _, what := range st.Missing {
		f.bullet(words.Line("desk_book.missing", what))
	}
	if n := st.Competency.SupervisedCases; n > 0 && st.Shown {
		f.muted(words.Line("desk_book.cases", st.Cases, n))
	}
	f.x, f.w = f.x-24, f.w+24
	f.rule()
}

// standingWords say how somebody stands in a competency.
func standingWords(st *book.Standing) string {
	switch {
	case !st.Shown:
		return words.Say("desk_book.not_shown")
	case st.Due:
		return words.Say("desk_book.due_again")
	}
	return words.Line("desk_book.holds", st.Until.Format(time.DateOnly))
}

// is says whether somebody has a role.
func (b *Book) is(who string, role book.Role) bool {
	for _, r := range b.Roles[who] {
		if r == role {
			return true
		}
	}
	return false
}
