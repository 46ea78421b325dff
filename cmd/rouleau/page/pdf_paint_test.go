package page

import (
	"bytes"
	"math"
	"regexp"
	"strings"
	"testing"

	"rouleau/cmd/rouleau-desk/ui"
)

// painted is what a sheet holds on which something was painted, in the words of the file.
func painted(t *testing.T, paint func(c *canvas)) string {
	t.Helper()
	c := blank()
	c.pdf.AddPage()
	paint(c)
	var b bytes.Buffer
	if err := c.pdf.Output(&b); err != nil {
		t.Fatal(err)
	}
	for _, s := range sheets(t, b.Bytes()) {
		return s
	}
	t.Fatal("nothing was painted")
	return ""
}

// onPaper paints one drawing of 200 × 100 with its corner at 10, 10 and half a millimetre for a unit, and a word beside it.
func onPaper(t *testing.T, draw func(c *ui.Core)) string {
	t.Helper()
	d := Draw(200, 100, "x", draw)
	return painted(t, func(c *canvas) {
		c.list(d.List, 10, 10, 0.5)
		c.letters(10, 100, "x", textLook)
	})
}

// Everything a list may hold is painted as what it is, where it is.
func TestDrawingsArePainted(t *testing.T) {
	black := ui.Color{A: 255}
	// the file counts in points, from the lower edge of the sheet
	for name, c := range map[string]struct {
		draw func(c *ui.Core)
		want []string
	}{
		"a rectangle":         {func(c *ui.Core) { c.Fill(ui.R(20, 10, 40, 20), 0, ui.Color{R: 255, A: 255}) }, []string{"1.000 0.000 0.000 rg", "56.69 552.76 56.69 -28.35 re f"}},
		"a thin one":          {func(c *ui.Core) { c.Stroke(ui.R(20, 10, 40, 20), 0, 2, black) }, []string{"2.83 w", "56.69 552.76 56.69 -28.35 re S"}},
		"half seen":           {func(c *ui.Core) { c.Fill(ui.R(20, 10, 40, 20), 0, ui.Color{A: 128}) }, []string{"/GS1 gs", "re f", "/GS2 gs"}},
		"a line":              {func(c *ui.Core) { c.Segment(0, 0, 200, 100, 4, black) }, []string{"5.67 w", "2 j", "0 J", "28.35 566.93 m", "311.81 425.20 l", "\nS"}},
		"a line with dashes":  {dashed(ui.Dash{On: 4, Off: 2}), []string{"[5.67 2.83] 0.00 d", "[] 0.00 d"}},
		"dashes that moved":   {dashed(ui.Dash{On: 4, Off: 2, Phase: 1}), []string{"[5.67 2.83] 7.09 d"}},
		"a round line":        {func(c *ui.Core) { c.BeginPath(); c.To(0, 0); c.To(9, 9); c.To(20, 0); c.LineRound(3, black, true) }, []string{"1 j", "1 J", "h\n"}},
		"a polygon":           {func(c *ui.Core) { c.BeginPath(); c.To(0, 0); c.To(9, 9); c.To(20, 0); c.Polygon(black) }, []string{"41.10 554.18 l", "h\nf"}},
		"triangles":           {func(c *ui.Core) { c.BeginPath(); c.To(0, 0); c.To(9, 9); c.To(20, 0); c.Triangles(black) }, []string{"41.10 554.18 l", "h\nf"}},
		"a ring":              {func(c *ui.Core) { c.Ring(ui.Vec{X: 50, Y: 50}, 10, 20, 0, math.Pi, black) }, []string{"127.56 496.07 m", "f*"}},
		"a disc":              {func(c *ui.Core) { c.Disc(ui.R(20, 10, 40, 20), black) }, []string{" c\n", "f"}},
		"hatching":            {func(c *ui.Core) { c.HatchRect(ui.R(20, 10, 40, 20), 5, 0, 1, black) }, []string{"h W n", "1.42 w", "56.69 552.05 m 113.39 552.05 l S", "Q"}},
		"what is out of view": {func(c *ui.Core) { c.PushClip(ui.R(0, 0, 50, 50)); c.Fill(ui.R(0, 0, 90, 20), 0, black); c.PopClip() }, []string{"28.35 566.93 70.87 -70.87 re W n", "Q"}},
		"a word":              {func(c *ui.Core) { c.TextAt(20, 50, "mL", ui.Style{Size: 20, Weight: ui.SemiBold}) }, []string{"28.35 Tf", "BT 56.69 496.07 Td"}},
	} {
		got := onPaper(t, c.draw)
		at := 0
		for _, want := range c.want {
			found := strings.Index(got[at:], want)
			if found < 0 {
				t.Errorf("%s: %q is not painted, or not in this order, in\n%s", name, want, got)
				break
			}
			at += found
		}
		if open, shut := strings.Count("\n"+got, "\nq "), strings.Count(got, "\nQ"); open != shut {
			t.Errorf("%s: %d views are opened and %d shut", name, open, shut)
		}
	}
}

func dashed(d ui.Dash) func(c *ui.Core) {
	return func(c *ui.Core) {
		c.BeginPath()
		c.To(0, 50)
		c.To(200, 50)
		c.Line(1, ui.Color{A: 255}, d, false)
	}
}

// Letters stand where the window puts them: with its kerning, and figures in cells of one width. The file knows only how wide
// each letter is by itself, so that is how long what is written in one go must be.
func TestLettersStandWhereTheWindowPutsThem(t *testing.T) {
	const size = 10 * point
	for _, c := range []struct {
		text string
		k    look
		most int // in so many goes
	}{
		{"mmm", look{size: size}, 1}, {"AVATAR To Ty", look{size: size}, 12}, {"1111.11", look{size: size, tab: true}, 7}, {"Typed 24.5 mL/min", look{size: size, bold: true, tab: true}, 17},
	} {
		got := said(t, painted(t, func(p *canvas) { p.letters(20, 50, c.text, c.k) }))
		if len(got) == 0 || len(got) > c.most {
			t.Fatalf("%q is written in %d goes", c.text, len(got))
		}
		whole := ""
		natural := look{size: size, bold: c.k.bold}
		for _, g := range got {
			// where the window begins the letter: the width of all before it, kerning with it included
			first := string([]rune(g.text)[:1])
			want := 20 + c.k.width(whole+first) - c.k.width(first)
			if c.k.tab {
				want += (c.k.width(first) - natural.width(first)) / 2
			}
			if d := g.x*point - want; math.Abs(d) > 0.02*size {
				t.Errorf("%q: %q stands %.3f mm off", c.text, g.text, d)
			}
			whole += g.text
		}
		last := got[len(got)-1]
		if end, want := last.x*point+natural.width(last.text), 20+c.k.width(c.text); whole != c.text || math.Abs(end-want) > 0.05*size && !c.k.tab {
			t.Errorf("%q ends at %.2f mm as %q, want %.2f", c.text, end, whole, want)
		}
	}
}

// Letters that the typeface lacks are seen to be missing, and those that are put together become one.
func TestLettersOfOtherScripts(t *testing.T) {
	for text, want := range map[string]string{"é": "e\u0301", "5 °C – µ ≥": "5 °C – µ ≥", "□□ x": "漢字 x", "a □ b": "a 😀 b", "Łódź я": "Łódź я"} {
		if got := shown(want); got != text {
			t.Errorf("%q is shown as %q, want %q", want, got, text)
		}
	}
}

// Lines are broken at spaces, and within a word only where a line cannot hold it; what is put together again is the text.
func TestLinesAreBrokenAtSpaces(t *testing.T) {
	k := look{size: 4}
	text := "Some words, " + Strong("strong ones") + Ref("x", "linked") + ", and " + strings.Repeat("endless", 12) + " then " + Sign(Grave, "not made up for") + "."
	for width := 5.0; width < 120; width += 3 {
		whole, parts := "", 0
		for _, l := range wrap(text, k, width) {
			if l.wide > width+slack && len([]rune(l.bits[0].text)) > 1 && !strings.HasPrefix(l.bits[0].text, "◆") {
				t.Errorf("a line of %.1f is %.1f wide: %+v", width, l.wide, l.bits)
			}
			for _, b := range l.bits {
				whole += b.text
				parts++
			}
		}
		if squeezed(whole) != squeezed("Some words, strong oneslinked, and "+strings.Repeat("endless", 12)+" then ◆ not made up for.") {
			t.Errorf("at %.0f the lines say %q", width, whole)
		}
	}
	if lines := wrap("a b\u00a0c d", k, k.width("b c")+0.1); len(lines) != 3 || lines[1].bits[0].text != "b\u00a0c" {
		t.Errorf("a space that does not break breaks: %+v", lines)
	}
}

// The pictures of a page are the ones of the window: nothing in a list is left unpainted.
func TestEveryKindOfThingIsPainted(t *testing.T) {
	kinds := map[ui.OpKind]bool{}
	for _, op := range small("x", 400, 130).List.Ops {
		kinds[op.Kind] = true
	}
	for _, kind := range []ui.OpKind{ui.OpRect, ui.OpRectStroke, ui.OpLine, ui.OpCircle, ui.OpRing, ui.OpHatch, ui.OpText, ui.OpClip, ui.OpUnclip} {
		if !kinds[kind] {
			t.Errorf("the drawing of the tests holds nothing of kind %d", kind)
		}
	}
	text := painted(t, func(c *canvas) { c.list(small("x", 400, 130).List, 10, 10, unit) })
	if bad := regexp.MustCompile(`NaN|Inf|[0-9]e[+-]`).FindString(text); bad != "" {
		t.Errorf("a number of the file is %s", bad)
	}
}
