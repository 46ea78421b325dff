// Letters one by one: where each of a line stands and what its outline is, for a painter that makes its own pictures of
// them. It is the same shaping the measuring uses, so what is measured is what is painted, and a line never seen before
// costs no more than any other.

package ui

import (
	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/font/opentype"
)

// AppendPlaces adds, for each letter of s, how far its origin stands from the left end of the line, as a part of the size.
func AppendPlaces(to []float32, s string, w Weight, tab bool) []float32 {
	f := faceFor(w, tab)
	f.mu.Lock()
	defer f.mu.Unlock()
	var sum float32
	prev := rune(-1)
	for _, r := range s {
		if prev >= 0 {
			sum += f.kern(prev, r)
		}
		to = append(to, sum)
		sum += f.advance(r)
		prev = r
	}
	return to
}

// Outline is the shape of a letter: its number in the typeface, the same for letters drawn alike, and its lines in units of
// which PerEm make the size; Y grows upwards. A letter without lines, such as a space, has none.
type Outline struct {
	Glyph    uint32
	PerEm    float32
	Segments []opentype.Segment
}

// LoadTypeface reads the typeface, which else happens when the first letter is measured, in the midst of a frame.
func LoadTypeface() { facesOnce.Do(loadFaces) }

// LetterOutline gives the outline of a letter, and keeps it: it is wanted again at other sizes and places.
func LetterOutline(r rune, w Weight, tab bool) Outline {
	f := faceFor(w, tab)
	f.mu.Lock()
	defer f.mu.Unlock()
	o, ok := f.outlines[r]
	if ok {
		return o
	}
	o.PerEm = float32(f.font.Upem())
	if glyphs := f.shaped(r).Glyphs; len(glyphs) > 0 {
		o.Glyph = uint32(glyphs[0].GlyphID)
		if shape, ok := f.font.GlyphData(glyphs[0].GlyphID).(font.GlyphOutline); ok {
			o.Segments = shape.Segments
		}
	}
	f.outlines[r] = o
	return o
}
