// The educator's page: who stands where, who is due and why, what decisions cost the group, and the book as a whole.

package ledgerdesk

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau/group"
	"rouleau/scoring/book"
)

// The parts of the page.
const (
	standPart = iota
	duePart
	costPart
	bookPart
)

func (d *Desk) educator(c *ui.Core, v *View, in ui.Rect) {
	options := [...]ui.Option{{Label: words.Say("desk_book.part_stand")}, {Label: words.Say("desk_book.part_due")}, {Label: words.Say("desk_book.part_cost")}, {Label: words.Say("desk_book.part_book")}}
	if i, ok := c.Choice(ui.Choice{ID: ui.Name("book parts"), Rect: in.CutTop(42), Label: words.Say("desk_book.parts"), Options: options[:], Selected: d.part, Row: true}); ok && i >= 0 {
		d.part = i
	}
	in.CutTop(10)
	f := d.reading(c, "educator"+string(rune('0'+d.part)), in)
	defer f.end()
	switch {
	case d.part == costPart:
		d.costs(f, v)
	case d.part == bookPart:
		d.whole(f, v)
	case v.Book.Department == "":
		f.say(words.Say("desk_book.no_plan"), ui.Style{})
	case len(v.Book.Standing) == 0:
		f.say(words.Say("desk_book.no_learners"), ui.Style{})
	case d.part == standPart:
		f.group(v.Book.Standing)
	default:
		f.due(v.Book.Standing)
	}
}

const (
	codeWidth   = 120
	leastColumn = 180 // of a competency
)

// group is the table of people and competencies. Where there are more competencies than fit beside each other, it goes on below.
func (f *column) group(all []book.Standing) {
	n := 0 // competencies, the same for everybody and in the same order
	for n < len(all) && all[n].Learner == all[0].Learner {
		n++
	}
	each := min(n, max(1, int((f.w-codeWidth)/leastColumn)))
	for from := 0; from < n; from += each {
		to := min(from+each, n)
		wide := (f.w - codeWidth) / float32(each)
		head := ui.Style{Size: 13, Weight: ui.SemiBold}
		high := float32(20)
		for i := from; i < to; i++ {
			high = max(high, f.c.LabelHeight(all[i].Competency.Title, wide-14, head))
		}
		r := f.box(high + 4)
		r.CutLeft(codeWidth)
		for i := from; i < to; i++ {
			cell := r.CutLeft(wide)
			h := f.c.LabelHeight(all[i].Competency.Title, wide-14, head)
			f.c.Label(ui.Label{Rect: ui.R(cell.X, cell.Bottom()-h-4, wide-14, h), Text: all[i].Competency.Title, Style: head})
		}
		f.c.Segment(f.x, f.y, f.x+f.w, f.y, 1.4, f.c.Pal.Ink)
		for at := 0; at+n <= len(all); at += n {
			f.person(all[at+from:at+to], wide)
		}
		f.gap(18)
	}
}

// person is a row of the table.
func (f *column) person(row []book.Standing, wide float32) {
	text := ui.Style{Size: 13}
	high := float32(30)
	for i := range row {
		high = max(high, f.c.LabelHeight(standingWords(&row[i]), wide-38, text)+10)
	}
	if f.far(high) {
		f.gap(high)
		return
	}
	r := f.box(high)
	f.c.Text(r.CutLeft(codeWidth), row[0].Learner, ui.Style{Weight: ui.SemiBold})
	for i := range row {
		cell := r.CutLeft(wide)
		say := standingWords(&row[i])
		h := f.c.LabelHeight(say, wide-38, text)
		sign(f.c, ui.R(cell.X+1, cell.Y+(cell.H-12)/2, 12, 12), !row[i].Due, row[i].Shown)
		f.c.Label(ui.Label{Rect: ui.R(cell.X+22, cell.Y+(cell.H-h)/2, wide-38, h), Text: say, Style: text})
	}
	f.c.Segment(f.x, f.y, f.x+f.w, f.y, 1, f.c.Pal.Line)
}

// due lists who is due for what, and why.
func (f *column) due(all []book.Standing) {
	f.w = min(f.w, mostReadable)
	due := 0
	for i := range all {
		if all[i].Due {
			due++
		}
	}
	f.muted(words.Line("desk_book.due_sum", due, len(all)))
	f.gap(6)
	for i := range all {
		st := &all[i]
		if !st.Due {
			continue
		}
		if f.far(80) {
			f.gap(f.dueHeight(st))
			continue
		}
		f.strong(words.Line("desk_book.due_head", st.Learner, st.Competency.Title, standingWords(st)))
		for _, why := range st.Why {
			f.bullet(words.Line("desk_book.because", why))
		}
		for _, what := range st.Missing {
			f.bullet(words.Line("desk_book.missing", what))
		}
		f.rule()
	}
	if due == 0 {
		f.say(words.Say("desk_book.nobody_due"), ui.Style{})
	}
}

// dueHeight is about how high somebody's lines are: what is far out of sight is only reckoned.
func (f *column) dueHeight(st *book.Standing) float32 {
	line := ui.LineHeight(ui.SizeBody)
	return line*float32(1+len(st.Why)+len(st.Missing)) + 3*float32(len(st.Why)+len(st.Missing)) + 12
}

// costs is what decisions cost the group, as the page of a class has it.
func (d *Desk) costs(f *column, v *View) {
	f.say(words.Line("desk_book.cost_text", group.LeastPeople), ui.Style{})
	f.gap(8)
	b := ui.Button{ID: ui.Name("book costs"), Label: words.Say("desk_book.cost_do"), Look: ui.LookDark, Why: busy(v)}
	w := f.w
	f.w = min(f.w, 420)
	if f.button(b) {
		d.do(Act{Do: Costs})
	}
	f.w = w
	if v.NoCost != "" {
		f.warn(v.NoCost)
	}
	if v.Class != nil {
		f.sheet(v.Class)
	}
}

// whole is the book itself: how far raters agree, its root, and whether all of it is as it was written.
func (d *Desk) whole(f *column, v *View) {
	f.w = min(f.w, 900)
	f.head(words.Say("desk_book.agree_head"))
	f.say(agreementWords(&v.Book), ui.Style{})
	f.gap(12)
	f.head(words.Say("desk_book.verify_head"))
	f.root(v.Book.Root, int(v.Book.Records))
	f.gap(8)
	f.say(words.Say("desk_book.verify_text"), ui.Style{})
	f.gap(6)
	w := f.w
	f.w = min(f.w, 420)
	if f.button(ui.Button{ID: ui.Name("book verify"), Label: words.Say("desk_book.verify_do"), Look: ui.LookDark, Key: ui.K('V'), Why: busy(v)}) {
		d.do(Act{Do: Verify})
	}
	f.w = w
	k := v.Check
	if k == nil {
		return
	}
	good := words.Say("desk_book.is_wrong")
	if k.Good {
		good = words.Say("desk_book.is_right")
	}
	f.marked(good, k.Good)
	f.pair(words.Say("desk_book.root"), words.Line("desk_book.root_of", k.Root, k.Records))
	for _, text := range k.Counts {
		f.bullet(text)
	}
	for _, text := range k.Findings {
		f.warn(text)
	}
}

// agreementWords say how far the raters of the whole book agree, unless the figure would be of so few that it tells of one.
func agreementWords(b *Book) string {
	a := &b.Agreement
	switch {
	case a.Items == 0:
		return words.Say("desk_book.agree_none")
	case b.RatedPeople < group.LeastPeople:
		return words.Line("desk_book.agree_few", group.LeastPeople)
	case !a.Computed:
		return words.Line("book_cli.no_kappa", a.Same, a.Items)
	}
	return words.Line("book_cli.kappa", a.Same, a.Items, a.Kappa)
}
