// What an assessor has written about an attempt so far, and the items that only a person can judge, each on its scale with the words
// for every level.

package ledgerdesk

import (
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scoring/book"
)

// form is what was written so far.
type form struct {
	Form
	levels  []int // of the items, 0 while not rated
	remarks []string
}

// looked is a text that was looked through, which is done only when it has changed.
type looked struct {
	text  string
	found []string // what in it could tell who somebody is
	news  bool     // more than before
}

// mostText is how many letters a text may have: the book bounds it in bytes, of which a letter has up to four.
const mostText = 1000

// fit makes room for the items of the plan.
func (w *form) fit(items []book.Item) {
	if len(w.levels) != len(items) {
		w.levels, w.remarks = make([]int, len(items)), make([]string, len(items))
	}
}

// asked is the form as it goes to the book.
func (w *form) asked(items []book.Item) Form {
	out := w.Form
	out.Rated = nil
	for i, level := range w.levels {
		if level > 0 {
			out.Rated = append(out.Rated, book.Rated{Item: items[i].Name, Level: level, Comment: strings.TrimSpace(w.remarks[i])})
		}
	}
	return out
}

// items draws the items to be rated.
func (f *column) items(w *form, items []book.Item, names []string) {
	w.fit(items)
	for i := range items {
		it := &items[i]
		id := ui.Name("book item").At(i)
		f.strong(it.Title)
		options := []ui.Option{{Label: words.Say("desk_book.not_rated")}}
		high := float32(40)
		for k, anchor := range it.Anchors {
			label := words.Line("desk_book.anchor", k+1, anchor)
			if k+1 == it.Needs {
				label = words.Line("desk_book.anchor_enough", k+1, anchor)
			}
			options = append(options, ui.Option{Label: label})
			high = max(high, f.c.CheckHeight(label, "", "", f.w))
		}
		r := f.box(high * float32(len(options)))
		if k, changed := f.c.Choice(ui.Choice{ID: id, Rect: r, Label: it.Title, Options: options, Selected: w.levels[i]}); changed && k >= 0 {
			w.levels[i] = k
		}
		f.gap(2)
		if w.levels[i] > 0 {
			w.remarks[i] = f.text(id.With("remark"), words.Line("desk_book.remark", it.Title), w.remarks[i], names)
		}
		f.gap(6)
	}
}

// text is a field for what people write. Under it is a warning of what in it could tell who somebody is; it comes into view when it
// is new.
func (f *column) text(id ui.ID, label, text string, names []string) string {
	text, _ = f.field(ui.TextField{ID: id, Label: label, Text: text, Most: mostText})
	d := f.d
	known := d.looked[id]
	if known.text != text {
		before := len(known.found)
		known = looked{text: text, found: book.Identifying(text, names)}
		known.news = len(known.found) > before
	}
	top := f.y
	for _, what := range known.found {
		f.warn(words.Line("desk_book.identifies", what))
	}
	if known.news {
		f.c.BringIn(ui.R(f.x, top, f.w, f.y-top))
	}
	known.news = false
	d.looked[id] = known
	return text
}
