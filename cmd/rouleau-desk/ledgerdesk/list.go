// Lists of attempts and records. Their rows are put together only when the book has been read anew: there may be a thousand.

package ledgerdesk

import "rouleau/cmd/rouleau-desk/ui"

// list is what stays of one.
type list struct {
	serial int // of the book that its rows are of
	who    string
	width  float32
	made   bool
	rows   []ui.Row
	of     []int // the place of each row in what it lists
	high   float32
	chosen int
}

func (l *list) add(of int, label, detail string) {
	l.of = append(l.of, of)
	l.rows = append(l.rows, ui.Row{Label: label, Detail: detail})
}

// listOf is a list of a name, filled with what it holds.
func (d *Desk) listOf(v *View, name, who string, fill func(l *list)) *list {
	l := d.lists[name]
	if l == nil {
		l = &list{}
		d.lists[name] = l
	}
	if !l.made || l.serial != v.Book.Serial || l.who != who {
		*l = list{serial: v.Book.Serial, who: who, made: true, chosen: l.chosen}
		fill(l)
	}
	return l
}

// inList says whether the keyboard is at a list.
func (d *Desk) inList(c *ui.Core) bool {
	for name := range d.lists {
		if c.Focused() == listID(name) {
			return true
		}
	}
	return false
}

func listID(name string) ui.ID { return ui.Name("book rows").With(name) }

// show draws a list under its head, and gives the place of what was opened in it, -1 for nothing. What is missing is said where it is
// empty.
func (l *list) show(c *ui.Core, name, head, label, none string, r ui.Rect) int {
	c.Text(r.CutTop(26), head, ui.Style{Weight: ui.SemiBold})
	c.Fill(r, 6, c.Pal.Well)
	c.Frame(r, 6, 1, c.Pal.Line)
	r = r.Inset(4)
	if len(l.rows) == 0 {
		c.Label(ui.Label{ID: ui.Name("book none").With(name), Rect: r.InsetXY(10, 8), Text: none, Style: ui.Style{Col: c.Pal.Muted}})
		return -1
	}
	if l.width != r.W {
		l.width, l.high = r.W, leastRow
		for i := range l.rows {
			l.high = max(l.high, c.ButtonHeight(ui.Button{Label: l.rows[i].Label, Detail: l.rows[i].Detail}, r.W-rowMargins)+4)
		}
	}
	l.chosen = min(l.chosen, len(l.rows)-1)
	chosen, opened := c.List(ui.ListBox{ID: listID(name), Rect: r, Label: label, Rows: l.rows, RowH: l.high, Selected: l.chosen})
	if l.chosen = chosen; opened && chosen >= 0 {
		return l.of[chosen]
	}
	return -1
}

const (
	leastRow   = 46
	rowMargins = 24 // of a row and of the bar beside it, more than those of a button
)
