// The pages as a whole: what stays from frame to frame, the bar at the top, what goes on beside the window, and which page there is.

package ledgerdesk

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scoring/book"
)

// Least size of the window, in logical pixels.
const (
	leastWidth  = 900
	leastHeight = 600
)

// Desk is the state of the pages. It holds nothing of any file.
type Desk struct {
	tab      int
	came     string // for whom the first tab was chosen
	part     int    // of the educator's page
	dialog   dialog
	founding founding
	forms    map[string]*form // of attempts, by path, so that nothing half written is lost
	ratings  map[string]*form // second ratings, by record
	rating   bool             // the record that is looked at is being rated
	assessor string           // who signs here
	phrase   string
	atPhrase bool // the focus is where it is written
	tries    int  // of signing, as many as have been seen
	path     string
	with     bool             // comments go on the sheet
	looked   map[ui.ID]looked // texts, by their fields
	lists    map[string]*list
	heights  map[ui.ID]float32
	acts     []Act
}

type dialog uint8

const (
	noDialog dialog = iota
	saveDialog
)

// The tabs, for whom each is.
const (
	learnerTab = iota
	assessorTab
	educatorTab
)

// New makes the pages as they are at first.
func New() *Desk {
	return &Desk{forms: map[string]*form{}, ratings: map[string]*form{}, looked: map[ui.ID]looked{}, lists: map[string]*list{}, heights: map[ui.ID]float32{}}
}

// Frame draws the page and returns what the person asked for. The slice is good until the next frame.
func (d *Desk) Frame(c *ui.Core, v *View) []Act {
	d.acts = d.acts[:0]
	window := ui.Rect{W: c.Size().X, H: c.Size().Y}
	if window.W < leastWidth || window.H < leastHeight {
		c.Label(ui.Label{ID: ui.Name("too small"), Rect: window.Inset(24), Text: words.Line("window.too_small", leastWidth, leastHeight)})
		return d.acts
	}
	d.forget(v)
	top := window.CutTop(barHeight)
	d.bar(c, v, top.InsetXY(edge, 9))
	c.Segment(0, top.Bottom()+0.5, window.W, top.Bottom()+0.5, 1, c.Pal.Line)
	foot := window.CutBottom(footHeight)
	c.Segment(0, foot.Y+0.5, window.W, foot.Y+0.5, 1, c.Pal.Line)
	d.foot(c, v, foot.InsetXY(edge, 0))
	window.CutTop(1)
	d.notice(c, v, &window)
	d.page(c, v, window.InsetXY(edge, 8))
	if d.dialog == saveDialog {
		d.saveBox(c, v)
	}
	return d.acts
}

const (
	barHeight    = 60
	leastWorking = 340 // room for what goes on; where the name of the book leaves less, it makes way
	footHeight   = 30
	edge         = 16
	gap          = 16
)

// page is the one that the book stands at.
func (d *Desk) page(c *ui.Core, v *View, in ui.Rect) {
	switch {
	case v.Stage != Open:
		d.begin(c, v, in)
	case v.Signed != nil:
		d.signed(c, v, in)
	case v.Draft != nil:
		d.signing(c, v, in)
	case v.Review != nil:
		d.review(c, v, in)
	case v.Record != nil && d.rating:
		d.second(c, v, in)
	case v.Record != nil:
		d.record(c, v, in)
	default:
		if d.came != v.Who { // whoever only assesses comes to that page first
			if d.came = v.Who; v.Book.is(v.Who, book.Assessor) && !v.Book.is(v.Who, book.Learner) {
				d.tab = assessorTab
			}
		}
		d.tabs(c, v, in)
	}
}

// forget lets nothing secret stay longer than it is needed, and ends what its page has gone from.
func (d *Desk) forget(v *View) {
	tries := 0
	switch {
	case v.Draft != nil:
		tries = v.Draft.Tries
	case v.Record != nil && d.rating:
		tries = v.Record.Tries
	default:
		d.phrase = ""
	}
	if tries != d.tries {
		d.phrase, d.tries, d.atPhrase = "", tries, false
	}
	if v.Record == nil {
		d.rating = false
	}
	if v.Record == nil && v.Signed == nil {
		d.dialog = noDialog
	}
}

// Done forgets what was written about an attempt: it stands in the book.
func (d *Desk) Done(path string) { delete(d.forms, path) }

// Rated forgets what was written as a second rater of a record.
func (d *Desk) Rated(id string) {
	delete(d.ratings, id)
	d.rating = false
}

func (d *Desk) do(a Act) { d.acts = append(d.acts, a) }

// busy is why nothing can be asked of the book now, "" when something can.
func busy(v *View) string {
	if v.Work.Text == "" {
		return ""
	}
	return words.Say("desk_book.busy")
}

func (d *Desk) tabs(c *ui.Core, v *View, in ui.Rect) {
	options := [...]ui.Option{{Label: words.Say("desk_book.tab_learner"), Key: ui.K('L')}, {Label: words.Say("desk_book.tab_assessor"), Key: ui.K('A')},
		{Label: words.Say("desk_book.tab_educator"), Key: ui.K('E')}}
	if i, ok := c.Tabs(ui.Tabs{ID: ui.Name("book tabs"), Rect: in.CutTop(42), Label: words.Say("desk_book.tabs"), Options: options[:], Selected: d.tab}); ok && i >= 0 {
		d.tab = i
	}
	in.CutTop(10)
	switch d.tab {
	case learnerTab:
		d.learner(c, v, in)
	case assessorTab:
		d.assess(c, v, in)
	default:
		d.educator(c, v, in)
	}
}

// bar is the name of the book, and the way back.
func (d *Desk) bar(c *ui.Core, v *View, r ui.Rect) {
	back := words.Say("desk_book.home")
	if v.Stage == Open && (v.Signed != nil || v.Draft != nil || v.Review != nil || v.Record != nil) {
		back = words.Say("desk_book.back")
	}
	why := ""
	if v.Stage == Open && v.Signed == nil && (v.Draft != nil || v.Record != nil) {
		why = busy(v) // what goes on is about this page
	}
	w := ui.TextWidth(back, ui.SizeBody, ui.SemiBold, false) + c.KeyCapWidth(ui.Chord{Key: ui.KeyEscape}) + 36
	if c.Button(ui.Button{ID: ui.Name("book back"), Rect: r.CutRight(w), Label: back, Key: ui.Chord{Key: ui.KeyEscape}, Why: why}) {
		d.back(c, v)
	}
	r.CutRight(12)
	name := ui.Style{Size: ui.SizeBig, Weight: ui.SemiBold}
	title := words.Say("desk_book.title")
	if w := name.Width(title) + 2; !v.Work.Told || r.W-w > leastWorking {
		c.Text(r.CutLeft(w), title, name)
		r.CutLeft(14)
	}
	switch {
	case v.Work.Told:
		d.working(c, v, r)
	case v.Stage == Open:
		text := words.Line("desk_book.which", v.Book.Origin, int(v.Book.Records))
		small := ui.Style{Size: 13, Col: c.Pal.Muted}
		h := min(c.LabelHeight(text, r.W, small), 2*ui.LineHeight(13))
		c.Label(ui.Label{ID: ui.Name("book which"), Rect: r.Place(r.W, h, 0, 0.5), Text: text, Style: small})
	}
}

// back goes one page back.
func (d *Desk) back(c *ui.Core, v *View) {
	c.Focus(0)
	switch {
	case v.Stage != Open:
		d.do(Act{Do: Leave})
	case v.Signed != nil:
		d.do(Act{Do: Understood})
	case v.Draft != nil:
		d.do(Act{Do: BackToForm})
	case v.Review != nil:
		d.do(Act{Do: LookAway})
	case v.Record != nil && d.rating:
		d.rating = false
	case v.Record != nil:
		d.do(Act{Do: ShowNone})
	default:
		d.do(Act{Do: Leave})
	}
}

// foot says where the book is, and what it is about.
func (d *Desk) foot(c *ui.Core, v *View, r ui.Rect) {
	small := ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted}
	caution := words.Say("desk_book.caution")
	c.Text(r.CutRight(small.Width(caution)+1), caution, small)
	r.CutRight(gap)
	if v.Stage != Open {
		return
	}
	text := words.Line("desk_book.place", v.Place)
	c.Label(ui.Label{ID: ui.Name("book place").With(text), Rect: r.Place(r.W, ui.LineHeight(ui.SizeSmall), 0, 0.5), Text: text, Style: small})
}

// working says in the bar what goes on beside the window, and how far it is.
func (d *Desk) working(c *ui.Core, v *View, in ui.Rect) {
	w := &v.Work
	if w.Stops {
		label := words.Say("desk_book.stop")
		wide := ui.TextWidth(label, ui.SizeBody, ui.SemiBold, false) + 26
		if c.Button(ui.Button{ID: ui.Name("book stop"), Rect: in.CutRight(wide).Place(wide, 42, 0, 0.5), Label: label}) {
			d.do(Act{Do: Stop})
		}
		in.CutRight(12)
	}
	text := w.Text
	if w.All > 0 {
		text = words.Line("desk_book.progress", w.Text, w.Done, w.All)
	}
	st := ui.Style{Size: 13, Weight: ui.SemiBold}
	h := min(c.LabelHeight(text, in.W, st), 2*ui.LineHeight(13))
	box := in.Place(in.W, h+6, 0, 0.5)
	c.Label(ui.Label{ID: ui.Name("book working"), Rect: box.CutTop(h), Text: text, Style: st})
	bar := ui.R(box.X, box.Y+2, min(box.W, 300), 4)
	c.Fill(bar, 2, c.Pal.Line)
	if w.All > 0 {
		c.Fill(ui.R(bar.X, bar.Y, bar.W*float32(w.Done)/float32(w.All), bar.H), 2, c.Pal.Dark)
	}
}

// notice tells what came of the last thing that was asked for.
func (d *Desk) notice(c *ui.Core, v *View, window *ui.Rect) {
	if v.Notice == "" {
		return
	}
	label := words.Say("home.notice_read")
	wide := ui.TextWidth(label, ui.SizeBody, ui.SemiBold, false) + 26
	st := ui.Style{Size: 13}
	hh := min(c.LabelHeight(v.Notice, window.W-2*edge-wide-48, st), 4*ui.LineHeight(13))
	r := window.CutTop(max(hh+16, 52))
	c.Fill(r, 0, c.Pal.Shade)
	c.Segment(0, r.Bottom()-0.5, r.W, r.Bottom()-0.5, 1, c.Pal.Line)
	in := r.InsetXY(edge, 0)
	if c.Button(ui.Button{ID: ui.Name("book notice read"), Rect: in.CutRight(wide).Place(wide, 40, 0, 0.5), Label: label}) {
		d.do(Act{Do: Read})
	}
	in.CutRight(14)
	exclaim(c, in.CutLeft(30).Place(20, 20, 0, 0.5))
	c.Label(ui.Label{ID: ui.Name("book notice").With(v.Notice), Rect: in.Place(in.W, hh, 0, 0.5), Text: v.Notice, Style: st})
}
