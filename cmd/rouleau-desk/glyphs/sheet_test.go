// The pictures of letters: as large as their ink, in their places, never over each other, and free once they are made.

package glyphs_test

import (
	"image"
	"math"
	"strings"
	"testing"

	"rouleau/cmd/rouleau-desk/glyphs"
	"rouleau/cmd/rouleau-desk/mesh"
	"rouleau/cmd/rouleau-desk/ui"
)

// copied is what a painter holds: it takes over what is fresh.
type copied struct {
	side  int
	cover []byte
}

func (c *copied) load(t *testing.T, s *glyphs.Sheet) {
	t.Helper()
	if c.side != s.Side {
		c.side, c.cover = s.Side, make([]byte, s.Side*s.Side)
	}
	r, pixels := s.Fresh()
	if len(pixels) != 4*r.Dx()*r.Dy() || !r.In(image.Rect(0, 0, s.Side, s.Side)) {
		t.Fatalf("%d bytes for %v of a sheet of %d", len(pixels), r, s.Side)
	}
	for i := 0; i < len(pixels); i += 4 {
		if pixels[i] != pixels[i+3] || pixels[i+1] != pixels[i+3] || pixels[i+2] != pixels[i+3] {
			t.Fatal("a letter is not white with its cover multiplied in")
		}
		at := i / 4
		c.cover[(r.Min.Y+at/r.Dx())*c.side+r.Min.X+at%r.Dx()] = pixels[i+3]
	}
}

func (c *copied) ink(g mesh.Glyph) (sum float64) {
	for y := range int(g.H) {
		for x := range int(g.W) {
			sum += float64(c.cover[(int(g.V)+y)*c.side+int(g.U)+x]) / 255
		}
	}
	return sum
}

func TestALetterIsThereWithItsWeight(t *testing.T) {
	s, c := glyphs.New(), copied{}
	for _, size := range []float32{12, 14, 33} {
		run := append([]mesh.Glyph(nil), s.Run("Il–", size, ui.Regular, false)...)
		bold := append([]mesh.Glyph(nil), s.Run("I", size, ui.SemiBold, false)...)
		c.load(t, s)
		if len(run) != 3 {
			t.Fatalf("%d pictures for three letters", len(run))
		}
		// A capital I is a plain stem: it stands on the baseline and is as high as capitals are.
		stem := run[0]
		if high := -float64(stem.Y); math.Abs(high-float64(size*ui.CapHeight)) > 1 || stem.Y+stem.H < 0 || stem.Y+stem.H > 1 {
			t.Errorf("size %g: the stem reaches from %g to %g", size, stem.Y, stem.Y+stem.H)
		}
		width := c.ink(stem) / float64(size*ui.CapHeight)
		if part := width / float64(size); part < 0.07 || part > 0.13 {
			t.Errorf("size %g: a regular stem is %g of the size wide", size, part)
		}
		if c.ink(bold[0]) < 1.3*c.ink(stem) {
			t.Errorf("size %g: the bold stem has %g of ink, the regular one %g", size, c.ink(bold[0]), c.ink(stem))
		}
	}
	if c.cover[glyphs.WhiteAt*c.side+glyphs.WhiteAt] != 255 {
		t.Error("the place for shapes is not white")
	}
}

func TestLettersStandWhereTheyWereMeasured(t *testing.T) {
	s, c := glyphs.New(), copied{}
	for _, text := range []string{"AVATAR 24.5 mL/min", "0:11:47", "“Hämatokrit” 0,58"} {
		for _, tab := range []bool{false, true} {
			run := append([]mesh.Glyph(nil), s.Run(text, 14, ui.Regular, tab)...)
			c.load(t, s)
			if n := len([]rune(strings.ReplaceAll(text, " ", ""))); len(run) != n {
				t.Fatalf("%q: %d pictures, want %d", text, len(run), n)
			}
			last := run[len(run)-1]
			// The end of the ink stands within the side bearing of the end of the advance.
			if end, want := last.X+last.W, ui.TextWidth(text, 14, ui.Regular, tab); end > want+1.5 || end < want-2.5 {
				t.Errorf("%q ends at %g, measured %g", text, end, want)
			}
			for i := 1; i < len(run); i++ {
				if run[i].X < run[i-1].X {
					t.Errorf("%q: letter %d stands left of the one before", text, i)
				}
			}
		}
	}
}

func TestPicturesNeverLieOverEachOther(t *testing.T) {
	s := glyphs.New()
	var taken []image.Rectangle
	for size := float32(12); size < 40 && !s.Full; size++ {
		for _, g := range s.Run("The quick brown fox, 0123456789", size, ui.Regular, false) {
			r := image.Rect(int(g.U), int(g.V), int(g.U+g.W), int(g.V+g.H))
			for _, o := range taken {
				if r != o && r.Overlaps(o) {
					t.Fatalf("%v lies over %v", r, o)
				}
			}
			taken = append(taken, r)
		}
	}
}

func TestALineNeverSeenCostsNoAllocation(t *testing.T) {
	s := glyphs.New()
	for _, d := range "0123456789. mL/min" {
		for shift := range 12 {
			s.Run(strings.Repeat("1", shift)+string(d)+"0.12", 14, ui.Regular, true)
		}
	}
	lines := []string{"12.5 mL/min", "98.1 mL/min", "47.0 mL/min", "3.9 mL/min"}
	for _, l := range lines {
		s.Run(l, 14, ui.Regular, true)
	}
	n := 0
	if a := testing.AllocsPerRun(len(lines)-1, func() { s.Run(lines[n%len(lines)], 14, ui.Regular, true); n++ }); a != 0 {
		t.Errorf("%g allocations", a)
	}
}

// A sheet that is full says so; it grows at once while that is cheap, and forgets before it grows further.
func TestAFullSheetGrows(t *testing.T) {
	s, c := glyphs.New(), copied{}
	first := s.Side
	fill := func() {
		for size := float32(20); !s.Full && size < 4000; size++ {
			s.Run("ABCDEFGHIJKLMNOPQRSTUVWXYZ", size, ui.Regular, false)
		}
		if !s.Full {
			t.Fatal("the sheet takes letters without end")
		}
	}
	fill()
	turn := s.Turn
	s.Reset(false)
	if s.Side != 2*first || s.Full || s.Turn == turn {
		t.Errorf("side %d after %d, full %v, turn %d", s.Side, first, s.Full, s.Turn)
	}
	fill()
	s.Reset(false)
	if s.Side != 2*first {
		t.Errorf("a sheet of %d grows to %d before it is known that one frame is too much", 2*first, s.Side)
	}
	s.Reset(true)
	if s.Side != 4*first || !s.MayGrow() {
		t.Errorf("side %d", s.Side)
	}
	run := s.Run("A", 50, ui.Regular, false)
	c.load(t, s)
	if len(run) != 1 || c.ink(run[0]) < 100 {
		t.Error("no letter is drawn in the new sheet")
	}
}
