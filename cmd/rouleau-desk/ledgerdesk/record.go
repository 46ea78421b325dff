// A record that is looked at: its sheet with all that stands in it, verified on request, saved, and rated by a second rater.

package ledgerdesk

import (
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scoring/book"
)

func (d *Desk) record(c *ui.Core, v *View, in ui.Rect) {
	r := v.Record
	foot := in.CutBottom(46)
	in.CutBottom(10)
	f := d.reading(c, "record", in)
	f.head(words.Line("desk_book.record_head", r.Learner, r.Title))
	if r.State != "" {
		f.warn(r.State)
	}
	if r.Verified != nil {
		f.verified(r.Verified)
		f.rule()
	}
	if r.Page != nil {
		f.sheet(r.Page)
	} else {
		f.say(words.Say("book_cli.line_gone"), ui.Style{})
	}
	f.end()
	gone := busy(v)
	if r.Page == nil {
		gone = words.Say("desk_book.gone")
	}
	rate := gone
	if rate == "" && r.State != "" {
		rate = words.Say("desk_book.no_force")
	}
	ways := [...]struct {
		button ui.Button
		do     func()
	}{
		{ui.Button{ID: ui.Name("book result"), Label: words.Say("desk_book.see_result_short"), Key: ui.K('R'), Why: gone}, func() { d.do(Act{Do: ResultOf, ID: r.ID}) }},
		{ui.Button{ID: ui.Name("book verify one"), Label: words.Say("desk_book.verify_one"), Key: ui.K('V'), Why: busy(v)}, func() { d.do(Act{Do: VerifyOne, ID: r.ID}) }},
		{ui.Button{ID: ui.Name("book save"), Label: words.Say("desk_book.save_sheet"), Key: ui.K('S'), Why: gone}, func() { d.askSave(c) }},
		{ui.Button{ID: ui.Name("book second"), Label: words.Say("desk_book.rate"), Key: ui.K('T'), Why: rate}, func() {
			d.rating = true
			c.Focus(0)
		}},
	}
	for i := range ways {
		b := ways[i].button
		b.Rect = foot.Col(i, len(ways), 10)
		if c.Button(b) {
			ways[i].do()
		}
	}
}

// second is a second rating of the record: the items alone, without a look at what the first rater gave.
func (d *Desk) second(c *ui.Core, v *View, in ui.Rect) {
	r := v.Record
	w := d.ratings[r.ID]
	if w == nil {
		w = &form{Form: Form{Assessor: d.assessor}}
		if w.Assessor == "" && v.Book.is(v.Who, book.Assessor) {
			w.Assessor = v.Who
		}
		d.ratings[r.ID] = w
	}
	f := d.column(c, "second", in)
	defer f.end()
	f.w = min(f.w, mostForm)
	f.head(words.Line("desk_book.second_head", r.Learner, r.Title))
	f.muted(words.Say("desk_book.second_text"))
	f.gap(8)
	w.Assessor, _ = f.field(ui.TextField{ID: ui.Name("book signs"), Label: words.Say("desk_book.signs_as"), Hint: words.Say("desk_book.code_hint"), Text: w.Assessor, Most: 24})
	w.Assessor = strings.TrimSpace(w.Assessor)
	why := ""
	switch {
	case w.Assessor == "":
		why = words.Say("desk_book.codes_missing")
	case w.Assessor == r.Assessor:
		why = words.Line("desk_book.rated_first", w.Assessor)
	default:
		why = v.MaySign(r.Learner, w.Assessor)
	}
	if w.Assessor != "" {
		f.warn(why)
	}
	f.items(w, v.Book.Items, v.Book.Names)
	w.Comments = f.text(ui.Name("book comments"), words.Say("desk_book.comments"), w.Comments, v.Book.Names)
	asked := w.asked(v.Book.Items)
	if why != "" {
		why = words.Say("desk_book.cannot_sign")
	} else if len(asked.Rated) == 0 {
		why = words.Say("desk_book.nothing_rated")
	}
	d.passphrase(f, v, w.Assessor, r.Fault, words.Say("desk_book.sign_rating"), why, Act{Do: Rate, ID: r.ID, Form: asked})
}

func (d *Desk) askSave(c *ui.Core) {
	d.dialog = saveDialog
	c.Focus(0)
}

// saveBox asks where the sheet should go.
func (d *Desk) saveBox(c *ui.Core, v *View) {
	id := ""
	if v.Signed != nil {
		id = v.Signed.ID
	} else {
		id = v.Record.ID
	}
	window := ui.Rect{W: c.Size().X, H: c.Size().Y}
	w := min(640, window.W-48)
	st := ui.Style{Col: c.Pal.Muted}
	text := words.Say("desk_book.save_text")
	check := c.CheckHeight(words.Say("desk_book.with_comments"), "", "", w-32)
	high := c.LabelHeight(text, w-32, st)
	r := window.Place(w, high+ui.TextFieldHeight+check+152, 0.5, 0.4)
	c.BeginOverlay(ui.Name("book dialog"), r, true)
	in := c.Panel(ui.Panel{ID: ui.Name("book dialog panel"), Rect: r, Title: words.Say("desk_book.save_sheet")})
	c.Label(ui.Label{Rect: in.CutTop(high), Text: text, Style: st})
	in.CutTop(8)
	path, entered := c.TextField(ui.TextField{ID: ui.Name("book path"), Rect: in.CutTop(ui.TextFieldHeight), Label: words.Say("result.save_path"), Hint: words.Say("desk_book.save_hint"), Text: d.path, Most: 4096})
	d.path = path
	in.CutTop(6)
	if c.Checkbox(ui.Checkbox{ID: ui.Name("book with"), Rect: in.CutTop(check), Label: words.Say("desk_book.with_comments"), On: d.with}) {
		d.with = !d.with
	}
	foot := in.CutBottom(44)
	why := busy(v)
	if why == "" && strings.TrimSpace(d.path) == "" {
		why = words.Say("home.path_missing")
	}
	shut := c.Button(ui.Button{ID: ui.Name("book dialog close"), Rect: foot.CutLeft(min(foot.W*0.4, 160)), Label: words.Say("home.shut"), Key: ui.Chord{Key: ui.KeyEscape}})
	foot.CutLeft(10)
	pressed := c.Button(ui.Button{ID: ui.Name("book save do"), Rect: foot, Label: words.Say("result.save_do"), Look: ui.LookDark, Why: why})
	c.EndOverlay()
	if (pressed || entered) && why == "" {
		d.do(Act{Do: Save, ID: id, Path: strings.TrimSpace(d.path), With: d.with})
		shut = true
	}
	if shut {
		d.dialog = noDialog
	}
}
