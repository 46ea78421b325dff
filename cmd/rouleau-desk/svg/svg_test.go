// The drawings are well-formed, say what the list says, and are the same bytes each time.

package svg_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strings"
	"testing"

	"rouleau/cmd/rouleau-desk/svg"
	"rouleau/cmd/rouleau-desk/ui"
)

// everything is a list with each kind of thing in it.
func everything() *ui.List {
	c := ui.New(ui.Paper())
	c.Begin(ui.Input{Size: ui.Vec{X: 400, Y: 300}, Scale: 1})
	ink := c.Pal.Ink
	c.Fill(ui.R(10, 10, 50, 20), 4, ink)
	c.StrokeDash(ui.R(10, 40, 50, 20), 4, 2, ink, ui.Dash{On: 3, Off: 2, Phase: 1})
	c.Disc(ui.R(100, 10, 30, 20), ui.Color{R: 200, G: 10, B: 20, A: 128})
	c.Ring(ui.Vec{X: 200, Y: 60}, 10, 20, 0, 2*math.Pi, ink)
	c.PushClip(ui.R(0, 100, 200, 100))
	c.BeginPath()
	c.To(10, 120)
	c.To(60, 140)
	c.To(110, 110)
	c.Line(2, ink, ui.Dash{On: 9, Off: 4}, false)
	c.LineRound(3, ink, true)
	c.Polygon(ink)
	c.Triangles(ink)
	c.Hatch(5, -0.8, 1, ink)
	c.PopClip()
	c.Text(ui.R(10, 220, 300, 20), `<b> & "quoted" ]]> 5 °C – µ`, ui.Style{Weight: ui.SemiBold})
	c.Text(ui.R(10, 250, 300, 20), "24.5 mL", ui.Style{Tab: true})
	l, _ := c.End()
	return l
}

func TestDrawingsAreWellFormed(t *testing.T) {
	out := svg.Of(everything(), `a <title> & more`)
	count, text := map[string]int{}, ""
	for d := xml.NewDecoder(bytes.NewReader(out)); ; {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("%v in\n%s", err, out)
		}
		switch tok := tok.(type) {
		case xml.StartElement:
			count[tok.Name.Local]++
		case xml.CharData:
			text += string(tok)
		}
	}
	for name, least := range map[string]int{"svg": 1, "title": 1, "rect": 4, "ellipse": 1, "path": 2, "polyline": 1, "polygon": 3, "clipPath": 1, "g": 1, "pattern": 1, "text": 2} {
		if count[name] < least {
			t.Errorf("%d elements %s, want %d", count[name], name, least)
		}
	}
	for _, want := range []string{`<b> & "quoted" ]]> 5 °C – µ`, `a <title> & more`, "24.5 mL"} {
		if !strings.Contains(text, want) {
			t.Errorf("the words %q are not in it", want)
		}
	}
	for _, want := range []string{`stroke-dasharray="9 4"`, `stroke-dashoffset="-1"`, `fill-opacity="0.5"`, "sans-serif", "clip-path", `viewBox="0 0 400 300"`} {
		if !strings.Contains(string(out), want) {
			t.Errorf("%s is not in it", want)
		}
	}
	if strings.Contains(string(out), "NaN") {
		t.Error("a number is none")
	}
}

func TestSameListSameBytes(t *testing.T) {
	if !bytes.Equal(svg.Of(everything(), "x"), svg.Of(everything(), "x")) {
		t.Error("the same list gives other bytes")
	}
}
