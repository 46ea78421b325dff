// Before there is a book: that there is none and how to begin one, or why it cannot be opened.

package ledgerdesk

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

// founding is what was written for a new book so far.
type founding struct {
	Founding
	again string // the passphrase, once more
}

const mostForm = 760 // width of what is written into

func (d *Desk) begin(c *ui.Core, v *View, in ui.Rect) {
	f := d.reading(c, "begin", in)
	defer f.end()
	f.w = min(f.w, mostForm)
	switch v.Stage {
	case Opening:
		f.say(words.Say("desk_book.opening"), ui.Style{Size: 15})
		return
	case Shut:
		f.head(words.Say("desk_book.shut"))
		f.say(v.Fault, ui.Style{Size: 15})
		f.gap(14)
		if f.button(ui.Button{ID: ui.Name("book again"), Label: words.Say("desk_book.again"), Look: ui.LookDark, Why: busy(v)}) {
			d.do(Act{Do: Again})
		}
		return
	}
	n := &d.founding
	f.head(words.Say("desk_book.none"))
	f.say(words.Line("desk_book.none_there", v.Place), ui.Style{Size: 15})
	f.gap(6)
	f.muted(words.Say("desk_book.none_other"))
	f.gap(14)
	f.head(words.Say("desk_book.found"))
	f.muted(words.Say("desk_book.found_text"))
	f.gap(8)
	if v.Book.Origin != "" {
		n.Origin = v.Book.Origin
		f.say(words.Line("desk_book.goes_on", n.Origin), ui.Style{})
		f.gap(8)
	} else {
		n.Origin, _ = f.field(ui.TextField{ID: ui.Name("book origin"), Label: words.Say("desk_book.origin"), Hint: words.Say("desk_book.origin_hint"), Text: n.Origin, Most: 100})
	}
	n.Administrator, _ = f.field(ui.TextField{ID: ui.Name("book administrator"), Label: words.Say("desk_book.administrator"), Hint: words.Say("desk_book.administrator_hint"), Text: n.Administrator, Most: 24})
	n.Phrase, _ = f.field(ui.TextField{ID: ui.Name("book new phrase"), Label: words.Say("desk_book.new_phrase"), Text: n.Phrase, Most: 200, Secret: true})
	n.again, _ = f.field(ui.TextField{ID: ui.Name("book phrase again"), Label: words.Say("desk_book.phrase_again"), Text: n.again, Most: 200, Secret: true})
	if f.button(ui.Button{ID: ui.Name("book found"), Label: words.Say("desk_book.found_do"), Look: ui.LookDark, Why: d.whyNotFound(v)}) {
		d.do(Act{Do: Found, Founding: n.Founding})
		n.Phrase, n.again = "", ""
	}
	if v.Fault != "" {
		f.warn(v.Fault)
	}
}

func (d *Desk) whyNotFound(v *View) string {
	n := &d.founding
	switch {
	case busy(v) != "":
		return busy(v)
	case n.Origin == "":
		return words.Say("desk_book.origin_missing")
	case n.Administrator == "":
		return words.Say("desk_book.administrator_missing")
	case n.Phrase == "":
		return words.Say("desk_book.phrase_missing")
	case n.Phrase != n.again:
		return words.Say("desk_book.phrases_part")
	}
	return ""
}
