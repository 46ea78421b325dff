// Editing a line of text: caret, selection, clipboard. Knows no drawing.

package ui

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// editState is the text being edited in the one field that has the focus.
// Caret and anchor are byte places in text; what lies between is selected.
type editState struct {
	id     ID
	text   string
	caret  int
	anchor int
	off    float32 // how far the text is scrolled left
	blink  float64 // clock when the caret last moved

	clicks  int     // presses that follow each other at one place: two take a word, three take all
	clickMS float64 // clock of the newest
	clickX  float32
	from    int // the place in text of the first press of a selection
}

// How soon and how near a press must follow to count with the one before, as desktops have it.
const (
	againMS = 400
	againPX = 5
)

// click counts a press.
func (e *editState) click(x float32, nowMS float64) {
	if e.clicks == 0 || e.clicks >= 3 || nowMS-e.clickMS > againMS || x-e.clickX > againPX || e.clickX-x > againPX {
		e.clicks = 0
	}
	e.clicks++
	e.clickMS, e.clickX = nowMS, x
}

// grasp selects what a press at a place takes hold of, and what lies between the place of the press and where the pointer
// is now: letters, after two presses whole words, after three all.
func (e *editState) grasp(from, at int) {
	switch {
	case e.clicks == 1:
		e.anchor, e.caret = from, at
	case e.clicks >= 3:
		e.anchor, e.caret = 0, len(e.text)
	case at < from:
		e.anchor, e.caret = e.wordEnd(from), e.wordStart(at)
	default:
		e.anchor, e.caret = e.wordStart(from), e.wordEnd(at)
	}
}

// wordStart and wordEnd are the ends of the word, or of the run of other signs, that a place stands in or before.
func (e *editState) wordStart(at int) int {
	r, _ := utf8.DecodeRuneInString(e.text[at:])
	if at == len(e.text) {
		r, _ = utf8.DecodeLastRuneInString(e.text)
	}
	return len(strings.TrimRightFunc(e.text[:at], func(o rune) bool { return isWord(o) == isWord(r) }))
}

func (e *editState) wordEnd(at int) int {
	r, _ := utf8.DecodeRuneInString(e.text[at:])
	return len(e.text) - len(strings.TrimLeftFunc(e.text[at:], func(o rune) bool { return isWord(o) == isWord(r) }))
}

func (e *editState) selection() (from, to int) {
	return min(e.caret, e.anchor), max(e.caret, e.anchor)
}

// to moves the caret; with extend the selection grows.
func (e *editState) to(at int, extend bool) {
	e.caret = min(max(at, 0), len(e.text))
	if !extend {
		e.anchor = e.caret
	}
}

// insert puts text in the place of the selection, within a bound on letters.
func (e *editState) insert(s string, most int) {
	from, to := e.selection()
	room := most - utf8.RuneCountInString(e.text[:from]) - utf8.RuneCountInString(e.text[to:])
	if most > 0 && utf8.RuneCountInString(s) > room {
		s = firstRunes(s, room)
	}
	e.text = e.text[:from] + s + e.text[to:]
	e.to(from+len(s), false)
}

func firstRunes(s string, n int) string {
	for i := range s {
		if n <= 0 {
			return s[:i]
		}
		n--
	}
	return s
}

// remove takes out the selection, or else what lies between the caret and at.
func (e *editState) remove(at int) {
	if e.caret == e.anchor {
		e.anchor = min(max(at, 0), len(e.text))
	}
	e.insert("", 0)
}

func (e *editState) left() int {
	_, n := utf8.DecodeLastRuneInString(e.text[:e.caret])
	return e.caret - n
}

func (e *editState) right() int {
	_, n := utf8.DecodeRuneInString(e.text[e.caret:])
	return e.caret + n
}

// wordLeft is the start of the word at or before a place.
func (e *editState) wordLeft(at int) int {
	s := strings.TrimRightFunc(e.text[:at], notWord)
	return len(strings.TrimRightFunc(s, isWord))
}

// wordRight is the end of the word at or after a place.
func (e *editState) wordRight(at int) int {
	s := strings.TrimLeftFunc(e.text[at:], notWord)
	return len(e.text) - len(strings.TrimLeftFunc(s, isWord))
}

func isWord(r rune) bool  { return unicode.IsLetter(r) || unicode.IsDigit(r) }
func notWord(r rune) bool { return !isWord(r) }

// oneLine makes text from outside fit for a field of one line.
func oneLine(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t' || r == '\r':
			return ' '
		case unicode.IsControl(r) || r == utf8.RuneError:
			return -1
		}
		return r
	}, s)
}

// editKeys applies the keys and letters of this frame to the field with the
// focus and reports whether Enter was pressed.
func (c *Core) editKeys(f *TextField) (enter bool) {
	e, most := &c.edit, f.Most
	if !c.runesUsed && c.in.Mods&(ModCtrl|ModAlt) != ModCtrl {
		for _, r := range c.in.Runes {
			if !unicode.IsControl(r) {
				e.insert(string(r), most)
			}
		}
		c.runesUsed = true
	}
	for i, k := range c.in.Keys {
		if c.used(i) {
			continue
		}
		used := true
		ext := k.Mods&ModShift != 0
		ctrl := k.Mods&ModCtrl != 0
		switch {
		case ctrl && k.Key == K('A').Key:
			e.caret, e.anchor = len(e.text), 0
		case ctrl && (k.Key == K('C').Key || k.Key == K('X').Key):
			if from, to := e.selection(); from < to && !f.Secret {
				c.SetClipboard(e.text[from:to])
				if k.Key == K('X').Key {
					e.insert("", most)
				}
			}
		case ctrl && k.Key == K('V').Key:
			s := c.clipboard
			if c.in.HasClipboard {
				s = c.in.Clipboard
			}
			e.insert(oneLine(s), most)
		case k.Key == KeyLeft && ctrl:
			e.to(e.wordLeft(e.caret), ext)
		case k.Key == KeyRight && ctrl:
			e.to(e.wordRight(e.caret), ext)
		case k.Key == KeyLeft && !ext && e.caret != e.anchor:
			from, _ := e.selection()
			e.to(from, false)
		case k.Key == KeyRight && !ext && e.caret != e.anchor:
			_, to := e.selection()
			e.to(to, false)
		case k.Key == KeyLeft:
			e.to(e.left(), ext)
		case k.Key == KeyRight:
			e.to(e.right(), ext)
		case k.Key == KeyHome || k.Key == KeyUp:
			e.to(0, ext)
		case k.Key == KeyEnd || k.Key == KeyDown:
			e.to(len(e.text), ext)
		case k.Key == KeyBackspace && ctrl:
			e.remove(e.wordLeft(e.caret))
		case k.Key == KeyBackspace:
			e.remove(e.left())
		case k.Key == KeyDelete && ctrl:
			e.remove(e.wordRight(e.caret))
		case k.Key == KeyDelete:
			e.remove(e.right())
		case k.Key == KeyEnter:
			enter = true
		case k.Key == KeySpace:
			// The letter itself comes with the runes.
		default:
			used = false
		}
		if used {
			c.use(i)
			e.blink = c.clockMS
		}
	}
	return enter
}
