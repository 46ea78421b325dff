package page

import (
	"fmt"
	"math"
	"strings"
	"unicode/utf16"

	"golang.org/x/text/unicode/norm"

	"rouleau/cmd/rouleau-desk/ui"
)

// This file sets text in PDF: it breaks texts into lines and writes letters where the window would, with its kerning and its
// figures of one width, which the library knows nothing of.

type colour = ui.Color

// look is how letters look.
type look struct {
	size float64 // mm
	bold bool
	tab  bool // figures of one width
	col  colour
	to   string // the anchor a link leads to
}

// high is the distance of lines.
func (k look) high() float64 { return 1.38 * k.size }

func (k look) weight() ui.Weight {
	if k.bold {
		return ui.SemiBold
	}
	return ui.Regular
}

// width is how wide a text is, in mm.
func (k look) width(text string) float64 {
	return k.size * float64(ui.TextWidth(text, 1, k.weight(), k.tab))
}

// unknown stands for a letter the typeface has not.
const unknown = '□'

// shown is a text in letters that the typeface has.
func shown(text string) string {
	text = norm.NFC.String(clean(text))
	missing := map[rune]bool{}
	for _, r := range ui.Missing(text) {
		missing[r] = true
	}
	return strings.Map(func(r rune) rune {
		if missing[r] {
			return unknown
		}
		return r
	}, text)
}

// bit is a stretch of a line that looks the same.
type bit struct {
	text    string
	look    look
	x, wide float64
}

// textLine is a line of text.
type textLine struct {
	bits []bit
	wide float64
}

// wrap breaks a text into lines.
func wrap(text string, plain look, width float64) (lines []textLine) {
	var l textLine
	turn := func() { lines, l = append(lines, l), textLine{} }
	for _, w := range wordsOf(text, plain) {
		gap := 0.0
		if len(l.bits) > 0 {
			gap = w[0].look.width(" ")
		}
		if gap > 0 && l.wide+gap+w.wide() > width+slack {
			turn()
			gap = 0
		}
		for _, b := range w {
			for l.wide+gap+b.look.width(b.text) > width+slack { // a word wider than a line is broken between letters
				n := b.fit(width - l.wide - gap)
				if n == 0 && len(l.bits) == 0 {
					n = len(string([]rune(b.text)[:1]))
				}
				if n > 0 {
					l.add(bit{text: b.text[:n], look: b.look}, gap)
				}
				b.text = b.text[n:]
				if b.text == "" {
					break
				}
				turn()
				gap = 0
			}
			if b.text != "" {
				l.add(b, gap)
			}
			gap = 0
		}
	}
	if len(l.bits) > 0 {
		turn()
	}
	return lines
}

// fit is how many bytes of a stretch fit into a width.
func (b *bit) fit(width float64) int {
	n, _ := ui.FitText(b.text, float32(width/b.look.size), 1, b.look.weight(), b.look.tab)
	return n
}

// add adds a stretch to a line, some way from what is there; what looks the same becomes one.
func (l *textLine) add(b bit, gap float64) {
	if n := len(l.bits); n > 0 && l.bits[n-1].look == b.look {
		last := &l.bits[n-1]
		if gap > 0 {
			last.text += " "
		}
		last.text += b.text
		last.wide = b.look.width(last.text)
		l.wide = last.x + last.wide
		return
	}
	b.x, b.wide = l.wide+gap, b.look.width(b.text)
	l.bits = append(l.bits, b)
	l.wide = b.x + b.wide
}

// word is what is not broken: it may look different in its parts.
type word []bit

func (w word) wide() (sum float64) {
	for _, b := range w {
		sum += b.look.width(b.text)
	}
	return sum
}

// wordsOf takes a text apart where it has spaces.
func wordsOf(text string, plain look) (all []word) {
	apart := true // the next stretch begins a word
	for _, r := range runs(text) {
		k := plain
		switch r.kind {
		case strong:
			k.bold = true
		case ref:
			k.to = r.arg
		case sign:
			k.bold = true
			if r.weight() == Grave {
				k.col = bad
			}
			r.text = strings.ReplaceAll(shapes[r.weight()]+" "+r.text, " ", "\u00a0") // not broken
		}
		said := shown(r.text)
		for i, f := range strings.FieldsFunc(said, func(r rune) bool { return r == ' ' }) {
			if i > 0 || apart || said[0] == ' ' {
				all = append(all, nil)
			}
			all[len(all)-1] = append(all[len(all)-1], bit{text: f, look: k})
			apart = false
		}
		apart = apart || said[len(said)-1] == ' '
	}
	return all
}

// draw writes a line with its top at y, with its links.
func (l *textLine) draw(c *canvas, x, y float64) {
	for _, b := range l.bits {
		k := b.look
		base := y + k.high()/2 + k.size*ui.CapHeight/2
		if k.to != "" && c.at[k.to] != nil {
			k.col = accent
			c.rule(x+b.x, base+0.14*k.size, b.wide, 0.06*k.size, accent)
			c.lead(k.to, x+b.x, y, b.wide, k.high())
		}
		c.letters(x+b.x, base, b.text, k)
	}
}

// letters writes letters from a point of their baseline. Where the window would put a letter elsewhere than just behind the one
// before it, it is put there; a word that is parted by that is named whole, so that a search of the file finds it.
func (c *canvas) letters(x, base float64, text string, k look) {
	if text == "" {
		return
	}
	face := ""
	if k.bold {
		face = "B"
	}
	c.pdf.SetFont(family, face, k.size/point)
	c.pdf.SetFillColor(int(k.col.R), int(k.col.G), int(k.col.B)) // letters are filled
	c.pdf.SetTextColor(int(k.col.R), int(k.col.G), int(k.col.B))
	for _, parts := range k.stretches(text) {
		if len(parts) > 1 {
			whole := ""
			for _, s := range parts {
				whole += s.text
			}
			c.pdf.RawWriteStr("/Span <</ActualText <FEFF" + hex16(whole) + ">>> BDC")
		}
		for _, s := range parts {
			c.pdf.Text(x+s.x, base, s.text)
		}
		if len(parts) > 1 {
			c.pdf.RawWriteStr("EMC")
		}
	}
}

// hex16 is a text as the file names it.
func hex16(text string) string {
	var b strings.Builder
	for _, u := range utf16.Encode([]rune(text)) {
		fmt.Fprintf(&b, "%04X", u)
	}
	return b.String()
}

// stretch is letters that the library puts as the window would, once they begin at their place.
type stretch struct {
	text string
	x    float64
}

// stretches parts a text: words that need no parting stand together, any other stands alone in its parts.
func (k look) stretches(text string) (all [][]stretch) {
	const much = 0.004 // of the size: less is not seen
	natural := look{size: k.size, bold: k.bold}
	pen, at, before := 0.0, 0.0, "" // where the library has come to, where the window has, the letter there
	for word := range strings.SplitAfterSeq(text, " ") {
		var parts []stretch
		joins := len(all) > 0 && len(all[len(all)-1]) == 1 // it may go on from the words before it
		for _, r := range word {
			letter := string(r)
			own, step := natural.width(letter), k.width(letter)
			if before != "" {
				at += k.width(before+letter) - k.width(before) - step
			}
			place := at + (step-own)/2 // in the middle of its cell, where figures are of one width
			moved := math.Abs(place-pen) > much*k.size
			if len(parts) == 0 {
				joins = joins && !moved
			}
			if len(parts) == 0 || moved {
				parts = append(parts, stretch{"", place})
				pen = place
			}
			parts[len(parts)-1].text += letter
			pen, at, before = pen+own, at+step, letter
		}
		switch {
		case len(parts) == 1 && joins:
			all[len(all)-1][0].text += parts[0].text
		case len(parts) > 0:
			all = append(all, parts)
		}
	}
	return all
}
