// The text field: one line that can be written.

package ui

import (
	"strings"
	"unicode/utf8"
)

// TextField is a line of text. The caller keeps the text.
type TextField struct {
	ID    ID
	Rect  Rect // at least TextFieldHeight, or 40 without a label
	Label string
	Text  string
	Hint  string // muted words in an empty field
	Most  int    // the most letters, 0 for no bound
	Key   Chord  // quick key: puts the focus here
	Why   string

	Secret bool // shown as dots, told to nobody who reads marks, and never copied
}

// dotted is how a text of the field is shown.
func (f *TextField) dotted(text string) string {
	if !f.Secret {
		return text
	}
	return strings.Repeat(secretDot, utf8.RuneCountInString(text))
}

const secretDot = "•"

// within turns a place in what is shown into one in the text.
func (f *TextField) within(text string, at int) int {
	if !f.Secret {
		return at
	}
	return len(firstRunes(text, at/len(secretDot)))
}

// TextFieldHeight is the height of a field with its label above.
const TextFieldHeight = 66

// TextField draws the field. It returns the text as it stands now, and entered
// when Enter was pressed in it.
func (c *Core) TextField(f TextField) (text string, entered bool) {
	t := c.place(f.ID, f.Rect, KindTextField, f.Label, f.Why)
	text = f.Text
	c.overText = c.overText || (t.over && t.enabled)
	if c.Shortcut(f.Key) {
		c.Focus(f.ID)
		c.focusShown = true
		t.focused, t.ring = true, true
		c.typingNow = typesText
		c.runesUsed = true // the quick key's own letter is not text
	}
	box := f.Rect
	if f.Label != "" && f.Rect.H >= 60 {
		c.fieldLabel(t, box.CutTop(20), f)
	}
	box = box.Place(box.W, min(box.H, 40), 0, 1)
	in := box.InsetXY(10, 0)
	if t.focused && t.enabled {
		text, entered = c.editField(t, f, in)
	} else if c.edit.id == f.ID {
		c.edit = editState{}
	}
	c.set(t, f.dotted(text), false)
	c.drawField(t, f, box, in, f.dotted(text))
	return text, entered
}

func (c *Core) fieldLabel(t target, r Rect, f TextField) {
	ink := c.Pal.Ink
	if !t.enabled {
		ink = c.Pal.Muted
	}
	c.keyCapRight(&r, f.Key, ink)
	if c.twoPartsLine(f.ID, r, f.Label, f.Why, Style{Col: ink}, Style{Size: SizeSmall, Col: c.Pal.Muted}) {
		c.cut(t, true)
		c.tip(t, f.Rect, f.Label, f.Why)
	}
}

func (c *Core) editField(t target, f TextField, in Rect) (text string, entered bool) {
	c.typingNow = typesText
	e := &c.edit
	if e.id != f.ID {
		*e = editState{id: f.ID, text: f.Text, blink: c.clockMS}
		e.to(len(f.Text), false)
		if !t.began {
			e.anchor = 0 // reached by keys: typing replaces the whole
		}
	}
	if e.text != f.Text {
		// The caller changed the text: keep the caret inside it.
		e.text = f.Text
		e.to(min(e.caret, len(e.text)), false)
	}
	if t.began || t.held {
		at := f.within(e.text, TextIndex(f.dotted(e.text), c.in.Pointer.X-in.X+e.off, SizeBody, Regular, false))
		shift := c.in.Mods&ModShift != 0
		if t.began {
			e.click(c.in.Pointer.X, c.clockMS)
			if !shift {
				e.from = at
			}
		}
		if e.from = min(e.from, len(e.text)); shift && e.clicks == 1 {
			e.to(at, true)
		} else {
			e.grasp(e.from, at)
		}
		e.blink = c.clockMS
	}
	entered = c.editKeys(&f)
	c.keepCaret(&f, in)
	return e.text, entered
}

// keepCaret scrolls the text so that the caret stays in the field.
func (c *Core) keepCaret(f *TextField, in Rect) {
	e := &c.edit
	x := TextWidth(f.dotted(e.text[:e.caret]), SizeBody, Regular, false)
	if x-e.off > in.W-2 {
		e.off = x - in.W + 2
	}
	if x < e.off {
		e.off = x
	}
	e.off = max(0, min(e.off, TextWidth(f.dotted(e.text), SizeBody, Regular, false)-in.W+2))
}

func (c *Core) drawField(t target, f TextField, box, in Rect, text string) {
	p := c.Pal
	if !t.enabled {
		c.StrokeDash(box.Inset(0.5), radius, 1, p.Edge, Dash{On: 3, Off: 3})
		c.inner(f.ID, in, text, Style{Col: p.Muted})
		return
	}
	c.Fill(box, radius, p.Well)
	if !t.focused {
		c.Frame(box, radius, 1.2, p.Edge)
		if text == "" {
			c.inner(f.ID, in, f.Hint, Style{Col: p.Muted})
		} else {
			c.inner(f.ID, in, text, Style{})
		}
		return
	}
	c.Frame(box, radius, 2, p.Accent)
	e := &c.edit
	c.PushClip(in.InsetXY(-2, 0))
	if from, to := e.selection(); from < to {
		x0 := in.X - e.off + TextWidth(f.dotted(e.text[:from]), SizeBody, Regular, false)
		x1 := in.X - e.off + TextWidth(f.dotted(e.text[:to]), SizeBody, Regular, false)
		c.Fill(R(x0, box.Y+8, x1-x0, box.H-16), 2, mix(p.Well, p.Accent, selectPart))
	}
	if text == "" {
		c.inner(f.ID, in, f.Hint, Style{Col: p.Muted})
	} else {
		base := box.Y + box.H/2 + SizeBody*CapHeight/2
		c.glyphs(in.X-e.off, base, text, c.style(Style{}))
		c.markText(f.ID, in, text, false)
	}
	if c.Still || int((c.clockMS-e.blink)/530)%2 == 0 {
		x := in.X - e.off + TextWidth(f.dotted(e.text[:e.caret]), SizeBody, Regular, false)
		c.Fill(R(x-0.5, box.Y+9, 1.5, box.H-18), 0, p.Ink)
	}
	c.PopClip()
	c.ring(t, box)
}
