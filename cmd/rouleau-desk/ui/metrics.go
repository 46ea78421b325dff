// Measuring text without a display: advance widths and kerning of the shipped
// typeface, in the same shaping the painter uses, kept per letter and per pair
// so that measuring any string allocates nothing once its letters were seen.

package ui

import (
	"bytes"
	"sync"

	"github.com/go-text/typesetting/di"
	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/font/opentype"
	"github.com/go-text/typesetting/language"
	"github.com/go-text/typesetting/shaping"
	"golang.org/x/image/math/fixed"

	"rouleau/assets"
)

// Vertical measures of Inter as parts of the size (from the font's own tables;
// a test compares them).
const (
	Ascent    = 0.96875
	Descent   = 0.2412
	CapHeight = 0.7273
	XHeight   = 0.546
)

// low is the first rune kept in a map instead of an array.
const low = 0x180

// unset marks an entry of a table that has not been measured yet.
const unset = float32(-1e9)

// face is one weight, either with text figures and kerning or, for tab, with
// figures of one width and no kerning, so that "1:11" is as wide as "0:00".
type face struct {
	mu      sync.Mutex
	font    *font.Face
	shaper  shaping.HarfbuzzShaper
	tab     bool
	advLow  [low]float32
	advHigh map[rune]float32
	kernLow [128][128]float32
	kernMap map[[2]rune]float32

	outlines map[rune]Outline
}

var (
	facesOnce sync.Once
	faces     [2][2]*face // weight, tab
)

func loadFaces() {
	for w, data := range [][]byte{assets.InterRegular, assets.InterSemiBold} {
		f, err := font.ParseTTF(bytes.NewReader(data))
		if err != nil {
			// The data is compiled in: only a broken build can get here.
			panic("ui: the shipped typeface does not parse: " + err.Error())
		}
		for t := range 2 {
			fc := &face{font: f, tab: t == 1, advHigh: map[rune]float32{}, kernMap: map[[2]rune]float32{}, outlines: map[rune]Outline{}}
			fc.shaper.SetFontCacheSize(1)
			for i := range fc.advLow {
				fc.advLow[i] = unset
			}
			for i := range fc.kernLow {
				for j := range fc.kernLow[i] {
					fc.kernLow[i][j] = unset
				}
			}
			faces[w][t] = fc
		}
	}
}

func faceFor(w Weight, tab bool) *face {
	facesOnce.Do(loadFaces)
	t := 0
	if tab {
		t = 1
	}
	return faces[w][t]
}

// Features returns the OpenType features both the measuring and the painting of
// text must set: contextual forms off (they would make widths depend on whole
// strings), and for tab figures of one width without kerning.
func Features(tab bool) (tags [3]string, values [3]uint32) {
	tags = [3]string{"calt", "kern", "tnum"}
	if tab {
		return tags, [3]uint32{0, 0, 1}
	}
	return tags, [3]uint32{0, 1, 0}
}

// em is the size text is shaped at to be measured.
const em = 1024

// shape measures runes as a part of the em.
func (f *face) shape(runes ...rune) float32 { return float32(f.shaped(runes...).Advance) / 64 / em }

func (f *face) shaped(runes ...rune) shaping.Output {
	tags, values := Features(f.tab)
	features := make([]shaping.FontFeature, len(tags))
	for i, t := range tags {
		features[i] = shaping.FontFeature{Tag: opentype.MustNewTag(t), Value: values[i]}
	}
	return f.shaper.Shape(shaping.Input{
		Text: runes, RunEnd: len(runes), Direction: di.DirectionLTR, Face: f.font,
		FontFeatures: features, Size: fixed.I(em), Script: language.Latin, Language: "en",
	})
}

func (f *face) advance(r rune) float32 {
	if r < low {
		if f.advLow[r] == unset {
			f.advLow[r] = f.shape(r)
		}
		return f.advLow[r]
	}
	a, ok := f.advHigh[r]
	if !ok {
		a = f.shape(r)
		f.advHigh[r] = a
	}
	return a
}

func (f *face) kern(a, b rune) float32 {
	if f.tab {
		return 0
	}
	if a < 128 && b < 128 {
		k := &f.kernLow[a][b]
		if *k == unset {
			*k = f.shape(a, b) - f.advance(a) - f.advance(b)
		}
		return *k
	}
	pair := [2]rune{a, b}
	k, ok := f.kernMap[pair]
	if !ok {
		k = f.shape(a, b) - f.advance(a) - f.advance(b)
		f.kernMap[pair] = k
	}
	return k
}

// TextWidth is the advance width of s in logical pixels.
func TextWidth(s string, size float32, w Weight, tab bool) float32 {
	f := faceFor(w, tab)
	f.mu.Lock()
	defer f.mu.Unlock()
	var sum float32
	prev := rune(-1)
	for _, r := range s {
		sum += f.advance(r)
		if prev >= 0 {
			sum += f.kern(prev, r)
		}
		prev = r
	}
	return sum * size
}

// FitText returns how many bytes of s fit into width, and how wide they are.
func FitText(s string, width, size float32, w Weight, tab bool) (n int, used float32) {
	f := faceFor(w, tab)
	f.mu.Lock()
	defer f.mu.Unlock()
	var sum float32
	prev := rune(-1)
	for i, r := range s {
		next := sum + f.advance(r)
		if prev >= 0 {
			next += f.kern(prev, r)
		}
		if next*size > width {
			return i, sum * size
		}
		sum, prev = next, r
	}
	return len(s), sum * size
}

// TextIndex returns the byte index in s of the gap between letters nearest to
// x, measured from the left end of the text.
func TextIndex(s string, x, size float32, w Weight, tab bool) int {
	f := faceFor(w, tab)
	f.mu.Lock()
	defer f.mu.Unlock()
	var sum float32
	prev := rune(-1)
	for i, r := range s {
		a := f.advance(r)
		if prev >= 0 {
			a += f.kern(prev, r)
		}
		if (sum+a/2)*size > x {
			return i
		}
		sum, prev = sum+a, r
	}
	return len(s)
}

// Missing lists the letters of s the typeface has no picture for, so that a test
// can go over every word the program may show.
func Missing(s string) (missing []rune) {
	f := faceFor(Regular, false)
	for _, r := range s {
		if _, ok := f.font.NominalGlyph(r); !ok && r != '\n' {
			missing = append(missing, r)
		}
	}
	return missing
}
