// Package glyphs keeps the pictures of letters: one sheet of cover values with every letter that was needed, at every size
// and quarter of a pixel it was needed at. It knows no display; the painter copies what is new to where it draws from.
package glyphs

import (
	"image"
	"math"
	"slices"

	"golang.org/x/image/vector"

	"rouleau/cmd/rouleau-desk/mesh"
	"rouleau/cmd/rouleau-desk/ui"
)

const (
	firstSide = 1024
	easySide  = 2048 // up to here a sheet that is full grows at once
	maxSide   = 8192
	whiteSide = 8 // the white corner shapes are drawn with
)

// WhiteAt is a place in the sheet that is white all round.
const WhiteAt = whiteSide / 2

// steps are the parts of a pixel a letter may stand at: finer ones cannot be told apart.
const (
	stepBits = 2
	steps    = 1 << stepBits
)

// Sheet is the pictures of letters. Use New.
type Sheet struct {
	Side int
	Full bool // a letter was left out for want of room
	Turn int  // grows whenever all letters are forgotten: what was copied before is void

	cover []uint8
	fresh image.Rectangle // changed since Fresh was last called
	faces map[faceKey]*face
	last  *face
	made  map[pictureKey]picture
	x, y  int // the free place in the row being filled
	h     int // and the height of that row

	run    []mesh.Glyph
	places []float32
	pen    vector.Rasterizer
	ink    image.Alpha
	rgba   []byte
}

type faceKey struct {
	size   float32
	weight ui.Weight
	tab    bool
}

// low is the first letter kept in a map instead of an array, as in the measuring.
const low = 0x180

// face is the letters of one size and weight.
type face struct {
	key  faceKey
	low  [low][steps]picture
	high map[rune]*[steps]picture
}

// picture is where a letter lies in the sheet and stands by its origin; made without width says that it has no ink.
type picture struct {
	made bool
	at   mesh.Glyph
}

// pictureKey names a picture by what is drawn, so that figures of both kinds share their letters.
type pictureKey struct {
	glyph  uint32
	size   float32
	weight ui.Weight
	step   uint8
}

// New makes an empty sheet.
func New() *Sheet {
	s := &Sheet{Side: firstSide}
	s.Reset(false)
	return s
}

// Reset forgets all letters; with grow there is twice the room a side for new ones.
func (s *Sheet) Reset(grow bool) {
	if (grow || s.Full && s.Side < easySide) && s.Side < maxSide {
		s.Side *= 2
	}
	if len(s.cover) != s.Side*s.Side {
		s.cover = make([]uint8, s.Side*s.Side)
	}
	clear(s.cover)
	for y := range whiteSide {
		for x := range whiteSide {
			s.cover[y*s.Side+x] = 255
		}
	}
	s.fresh = image.Rect(0, 0, whiteSide, whiteSide)
	s.Turn++
	s.faces, s.made, s.last = map[faceKey]*face{}, map[pictureKey]picture{}, nil
	s.x, s.y, s.h, s.Full = whiteSide+1, 0, whiteSide, false
}

// MayGrow says whether there could be more room.
func (s *Sheet) MayGrow() bool { return s.Side < maxSide }

func (s *Sheet) face(k faceKey) *face {
	if s.last != nil && s.last.key == k {
		return s.last
	}
	f := s.faces[k]
	if f == nil {
		f = &face{key: k, high: map[rune]*[steps]picture{}}
		s.faces[k] = f
	}
	s.last = f
	return f
}

// Run gives the pictures of a line and where they stand from the left end of its baseline. It is good until the next call.
func (s *Sheet) Run(text string, size float32, w ui.Weight, tab bool) []mesh.Glyph {
	f := s.face(faceKey{size, w, tab})
	s.places = ui.AppendPlaces(s.places[:0], text, w, tab)
	s.run = s.run[:0]
	n := 0
	for _, r := range text {
		// in whole steps, so that what is rounded up to the next pixel begins there
		at := int(math.Floor(float64(s.places[n]*size*steps) + 0.5))
		n++
		p := s.picture(f, r, uint8(at&(steps-1)))
		if p == nil || p.at.W == 0 {
			continue
		}
		g := p.at
		g.X += float32(at >> stepBits)
		s.run = append(s.run, g)
	}
	return s.run
}

// picture finds the picture of a letter, or draws it; nil if there is no room.
func (s *Sheet) picture(f *face, r rune, step uint8) *picture {
	var all *[steps]picture
	if r < low {
		all = &f.low[r]
	} else if all = f.high[r]; all == nil {
		all = &[steps]picture{}
		f.high[r] = all
	}
	p := &all[step]
	if !p.made {
		made, ok := s.draw(f.key, r, step)
		if !ok {
			s.Full = true
			return nil
		}
		*p = made
	}
	return p
}

// Fresh gives the part of the sheet that has changed since it was last asked, as colours: white with the cover as alpha,
// multiplied in. It is empty when nothing has, and good until the next call.
func (s *Sheet) Fresh() (image.Rectangle, []byte) {
	r := s.fresh
	s.fresh = image.Rectangle{}
	if r.Empty() {
		return r, nil
	}
	s.rgba = slices.Grow(s.rgba[:0], 4*r.Dx()*r.Dy())
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for _, c := range s.cover[y*s.Side+r.Min.X : y*s.Side+r.Max.X] {
			s.rgba = append(s.rgba, c, c, c, c)
		}
	}
	return r, s.rgba
}
