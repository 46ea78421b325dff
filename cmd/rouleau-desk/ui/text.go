// Drawing words: one line in a box, wrapped lines, the ellipsis, and numbers
// that keep their string from frame to frame.

package ui

import (
	"math"
	"strconv"
	"strings"
)

// Sizes of type, in logical pixels.
const (
	SizeSmall = 12
	SizeBody  = 14
	SizeHead  = 17
	SizeBig   = 24
)

// Align says where a line stands in its box.
type Align uint8

// The alignments.
const (
	AlignLeft Align = iota
	AlignCenter
	AlignRight
)

// Style is how words look. The zero Size means SizeBody; the zero Col means ink.
type Style struct {
	Size   float32
	Weight Weight
	Tab    bool // figures of one width
	Col    Color
	Align  Align
	Top    bool // at the top of the box instead of in its middle
}

// LineHeight is the distance of lines for a size of type.
func LineHeight(size float32) float32 { return float32(math.Ceil(float64(size) * 1.32)) }

func (c *Core) style(s Style) Style {
	if s.Size == 0 {
		s.Size = SizeBody
	}
	if s.Col == (Color{}) {
		s.Col = c.Pal.Ink
	}
	return s
}

// Width is how wide a line in this style is.
func (s Style) Width(text string) float32 {
	if s.Size == 0 {
		s.Size = SizeBody
	}
	return TextWidth(text, s.Size, s.Weight, s.Tab)
}

// Text draws one line in a box, cut with an ellipsis if it does not fit, and
// reports whether it was cut. Use Label for words a person must be able to read
// in full.
func (c *Core) Text(r Rect, text string, s Style) (cut bool) { return c.inner(0, r, text, s) }

// inner is Text for words that belong to a control.
func (c *Core) inner(owner ID, r Rect, text string, s Style) (cut bool) {
	if text == "" {
		return false
	}
	s = c.style(s)
	shown, dots := text, float32(0)
	n, w := FitText(text, r.W+0.01, s.Size, s.Weight, s.Tab)
	if n < len(text) {
		cut = true
		dots = TextWidth("…", s.Size, s.Weight, s.Tab)
		n, w = FitText(text, max(r.W-dots, 0), s.Size, s.Weight, s.Tab)
		shown = strings.TrimRight(text[:n], " ")
		w = TextWidth(shown, s.Size, s.Weight, s.Tab)
	}
	x := r.X + (r.W-w-dots)*float32(s.Align)/2
	if cut {
		x = r.X
	}
	base := r.Y + r.H/2 + s.Size*CapHeight/2
	if s.Top {
		base = r.Y + (LineHeight(s.Size)+s.Size*CapHeight)/2
	}
	c.glyphs(x, base, shown, s)
	if cut && r.W >= dots {
		c.glyphs(x+w, base, "…", s)
	}
	c.markText(owner, R(x, base-s.Size*CapHeight, w+dots, s.Size*CapHeight), text, cut)
	return cut
}

// TextAt draws one line from a point on its baseline, for drawings and charts.
// With AlignCenter or AlignRight the point is the middle or the right end.
func (c *Core) TextAt(x, base float32, text string, s Style) {
	if text == "" {
		return
	}
	s = c.style(s)
	w := TextWidth(text, s.Size, s.Weight, s.Tab)
	x -= w * float32(s.Align) / 2
	c.glyphs(x, base, text, s)
	c.markText(0, R(x, base-s.Size*CapHeight, w, s.Size*CapHeight), text, false)
}

// glyphs adds the Op of a line. The box is generous, so that a clip cannot drop
// a line of which an accent still shows.
func (c *Core) glyphs(x, base float32, text string, s Style) {
	w := float32(len(text)) * s.Size
	c.add(Op{Kind: OpText, Rect: Rect{X: x, Y: base}, Str: text, Size: s.Size, Weight: s.Weight, Tab: s.Tab, Col: s.Col},
		R(x-s.Size, base-s.Size*1.2, w+2*s.Size, s.Size*1.7))
}

func (c *Core) markText(owner ID, r Rect, text string, cut bool) {
	shown := r.Intersect(c.clip())
	if shown.Empty() {
		return
	}
	c.l.Marks = append(c.l.Marks, Mark{Rect: r, Shown: shown, Kind: KindText, Label: text, Enabled: true,
		Focus: -1, Layer: c.layers.depth, Owner: owner, Cut: cut})
}

// numKey is what a shown number depends on.
type numKey struct {
	whole  int64
	digits int8
	unit   string
}

// maxNums bounds the strings kept; a chart cursor could otherwise grow it for ever.
const maxNums = 4096

// Num writes a number with a fixed count of digits behind the point and a unit,
// with a true minus sign: "24.5 mL/min". The string of a number shown before is
// kept, so that an unchanged frame allocates nothing.
func (c *Core) Num(v float64, digits int, unit string) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "–"
	}
	digits = min(max(digits, 0), 6)
	key := numKey{int64(math.Round(v * math.Pow10(digits))), int8(digits), unit}
	if s, ok := c.nums[key]; ok {
		return s
	}
	if len(c.nums) >= maxNums {
		clear(c.nums)
	}
	var buf [48]byte
	b := buf[:0]
	if key.whole < 0 {
		b = append(b, "−"...)
	}
	b = strconv.AppendFloat(b, math.Abs(float64(key.whole))/math.Pow10(digits), 'f', digits, 64)
	s := string(b)
	if c.Words.Decimal != "" && c.Words.Decimal != "." {
		s = strings.Replace(s, ".", c.Words.Decimal, 1)
	}
	if unit != "" {
		s += " " + unit
	}
	c.nums[key] = s
	return s
}

// Clock writes seconds as hours, minutes and seconds: "0:34:12".
func (c *Core) Clock(sec float64) string {
	n := int64(math.Floor(math.Abs(sec)))
	if sec < 0 {
		n = -n
	}
	if s, ok := c.clocks[n]; ok {
		return s
	}
	if len(c.clocks) >= maxNums {
		clear(c.clocks)
	}
	var buf [24]byte
	b := buf[:0]
	a := n
	if a < 0 {
		b, a = append(b, "−"...), -a
	}
	b = strconv.AppendInt(b, a/3600, 10)
	b = append(b, ':', byte('0'+a/600%6), byte('0'+a/60%10), ':', byte('0'+a%60/10), byte('0'+a%10))
	s := string(b)
	c.clocks[n] = s
	return s
}
