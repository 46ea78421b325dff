// Words of a control in more than one line: long words and reasons wrap, and a control can be asked how high it must be.

package ui

import (
	"strings"
	"unicode/utf8"
)

// block sets words into a box, in its middle and in as many lines as they take. It reports whether they were cut.
func (c *Core) block(owner ID, r Rect, text string, s Style) (cut bool) {
	s = c.style(s)
	step := LineHeight(s.Size)
	n := CountLines(text, r.W, s.Size, s.Weight, s.Tab)
	if n <= 1 || float32(n)*step > r.H+3 {
		return c.inner(owner, r, text, s)
	}
	box := r.Place(r.W, float32(n)*step, 0, 0.5)
	if s.Top {
		box.Y = r.Y
	}
	rest := text
	for row := box; rest != ""; {
		before := len(rest)
		var line string
		line, rest = NextLine(rest, r.W, s.Size, s.Weight, s.Tab)
		c.lineIn(row.CutTop(step), line, s)
		cut = cut || len(line)+len(rest) == before && broken(line, rest)
	}
	c.markText(owner, box, text, cut)
	return cut
}

// longWord is the length from which a word may be broken between two letters, as compounds of some languages must be; a shorter
// one reads as badly broken as cut.
const longWord = 16

// broken tells whether a line ends inside a word of usual length.
func broken(line, rest string) bool {
	if rest == "" || strings.HasSuffix(line, "-") || strings.HasSuffix(line, "/") || strings.HasSuffix(line, "–") {
		return false
	}
	head, tail := line[strings.LastIndexByte(line, ' ')+1:], rest
	if i := strings.IndexByte(rest, ' '); i >= 0 {
		tail = rest[:i]
	}
	return utf8.RuneCountInString(head)+utf8.RuneCountInString(tail) < longWord
}

// BreaksWord tells whether wrapping text to a width breaks a word of usual length between two letters.
func BreaksWord(text string, width float32, s Style) bool {
	for text != "" {
		before := len(text)
		var line string
		line, text = NextLine(text, width, s.Size, s.Weight, s.Tab)
		if len(line)+len(text) == before && broken(line, text) {
			return true
		}
	}
	return false
}

// twoParts sets a label at the left and a detail at the right, or below it in as many lines as both take, if they do not fit
// on one line. It reports whether anything was cut.
func (c *Core) twoParts(owner ID, r Rect, label, detail string, ls, ds Style) (cut bool) {
	if detail == "" {
		return c.block(owner, r, label, ls)
	}
	ls, ds = c.style(ls), c.style(ds)
	lw, dw := ls.Width(label), ds.Width(detail)
	if lw+partGap+dw <= r.W {
		cut = c.inner(owner, R(r.X, r.Y, lw+1, r.H), label, ls)
		ds.Align = AlignRight
		return c.inner(owner, R(r.X+lw+6, r.Y, r.W-lw-6, r.H), detail, ds) || cut
	}
	high, low := blockHeight(label, r.W, ls), blockHeight(detail, r.W, ds)
	if high+low > r.H+3 { // what is most needed stays whole
		high, low = min(high, r.H-LineHeight(ds.Size)), LineHeight(ds.Size)
	}
	box := r.Place(r.W, high+low-1, 0, 0.5)
	cut = c.block(owner, box.CutTop(high), label, ls)
	return c.block(owner, box, detail, ds) || cut
}

func blockHeight(text string, width float32, s Style) float32 {
	if text == "" {
		return 0
	}
	return float32(CountLines(text, width, s.Size, s.Weight, s.Tab)) * LineHeight(s.Size)
}

const (
	partGap   = 14 // least space between a label and the detail beside it
	buttonPad = 12
)

// partsHeight is the height a control needs whose words have a width: 40 if that does.
func partsHeight(label, detail string, w float32) float32 {
	ls, ds := Style{Size: SizeBody, Weight: SemiBold}, Style{Size: SizeSmall}
	if detail != "" && ls.Width(label)+partGap+ds.Width(detail) <= w {
		return 40
	}
	return max(40, blockHeight(label, w, ls)+blockHeight(detail, w, ds)+6)
}

// ButtonHeight is the height at which a button of a width shows its label and its whole detail or reason.
func (c *Core) ButtonHeight(b Button, width float32) float32 {
	detail := b.Detail
	if b.Why != "" {
		detail = b.Why
	}
	w := width - 2*buttonPad
	if k := c.KeyCapWidth(b.Key); k > 0 {
		w -= k + 8
	}
	if b.Why == "" && (b.Running || b.Selected) {
		w -= 28
	}
	return partsHeight(b.Label, detail, w)
}

// HoldHeight is that of a hold button.
func (c *Core) HoldHeight(b HoldButton, width float32) float32 {
	w := width - 2*holdPad
	if k := c.KeyCapWidth(b.Key); k > 0 {
		w -= k + 8
	}
	detail := b.Why
	if detail == "" {
		detail = b.Detail
		if detail == "" {
			detail = longer(c.Words.HoldToConfirm, c.Words.AgainToConfirm)
		}
	}
	return max(46, partsHeight(b.Label, detail, w)+4)
}

const holdPad = 14

func longer(a, b string) string {
	if len(b) > len(a) {
		return b
	}
	return a
}

// CheckHeight is that of a checkbox, and of one option of a choice, which say as much beside their box.
func (c *Core) CheckHeight(label, detail, why string, width float32) float32 {
	if why != "" {
		detail = why
	}
	return partsHeight(label, detail, width-switchPad)
}

const switchPad = 32

// SliderHeightFor is that of a slider: the reason goes below its name where it does not fit beside it.
func (c *Core) SliderHeightFor(s Value, width float32) float32 {
	h := SliderHeight + whyBelow(c, s, width)
	if n := blockHeight(s.Label, sliderRoom(c, s, width), Style{Size: SizeBody}) - LineHeight(SizeBody); n > 0 {
		h += n
	}
	return h
}

// sliderRoom is the width for the name of a slider beside its number.
func sliderRoom(c *Core, s Value, width float32) float32 {
	return width - Style{Weight: SemiBold, Tab: true}.Width(c.Num(s.Max, s.Digits, s.Unit)) - 10
}

// whyBelow is the height of a reason that does not fit beside the name, 0 when it does.
func whyBelow(c *Core, s Value, width float32) float32 {
	small := Style{Size: SizeSmall}
	if s.Why == "" || (Style{}).Width(s.Label)+10+small.Width(s.Why) <= sliderRoom(c, s, width) {
		return 0
	}
	return blockHeight(s.Why, width, small)
}
