// The atlas: one picture with every letter that was needed, and the runs of text
// already shaped, so that text costs four vertices a letter and no draw call.

package paint

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"math"

	"github.com/hajimehoshi/ebiten/v2"
	"github.com/hajimehoshi/ebiten/v2/text/v2"

	"rouleau/assets"
	"rouleau/cmd/rouleau-desk/mesh"
	"rouleau/cmd/rouleau-desk/ui"
)

const (
	firstSide = 2048
	maxSide   = 8192
	whiteSide = 8 // the white corner shapes are drawn with
	whiteAt   = whiteSide / 2
	maxRuns   = 4096
)

type faceKey struct {
	size   float32
	weight ui.Weight
	tab    bool
}

type runKey struct {
	face faceKey
	text string
}

type atlas struct {
	img     *ebiten.Image
	side    int
	sources [2]*text.GoTextFaceSource
	faces   map[faceKey]*text.GoTextFace
	glyphs  map[*ebiten.Image]image.Point
	runs    map[runKey][]mesh.Glyph
	buf     []text.Glyph
	x, y, h int // the free place in the row being filled, and its height
	full    bool
}

func newAtlas() (*atlas, error) {
	a := &atlas{faces: map[faceKey]*text.GoTextFace{}}
	for w, data := range [][]byte{assets.InterRegular, assets.InterSemiBold} {
		s, err := text.NewGoTextFaceSource(bytes.NewReader(data))
		if err != nil {
			return nil, fmt.Errorf("the typeface shipped with the program cannot be read: %w; build it again", err)
		}
		a.sources[w] = s
	}
	a.side = firstSide
	a.img = ebiten.NewImage(a.side, a.side)
	a.reset(false)
	return a, nil
}

// reset forgets all letters; with grow there is twice the room a side for new ones.
func (a *atlas) reset(grow bool) {
	if grow && a.side < maxSide {
		a.side *= 2
		a.img.Deallocate()
		a.img = ebiten.NewImage(a.side, a.side)
	}
	a.img.Clear()
	a.img.SubImage(image.Rect(0, 0, whiteSide, whiteSide)).(*ebiten.Image).Fill(color.White)
	a.glyphs = map[*ebiten.Image]image.Point{}
	a.runs = map[runKey][]mesh.Glyph{}
	a.x, a.y, a.h = whiteSide+1, 0, whiteSide
	a.full = false
}

func (a *atlas) face(k faceKey) *text.GoTextFace {
	if f := a.faces[k]; f != nil {
		return f
	}
	f := &text.GoTextFace{Source: a.sources[k.weight], Size: float64(k.size)}
	tags, values := ui.Features(k.tab)
	for i, t := range tags {
		f.SetFeature(text.MustParseTag(t), values[i])
	}
	a.faces[k] = f
	return f
}

// Run gives the letters of a line, shaping it if it is new.
func (a *atlas) Run(s string, size float32, w ui.Weight, tab bool) []mesh.Glyph {
	key := runKey{faceKey{size, w, tab}, s}
	if run, ok := a.runs[key]; ok {
		return run
	}
	if len(a.runs) >= maxRuns {
		clear(a.runs)
	}
	a.buf = text.AppendGlyphs(a.buf[:0], s, a.face(key.face), nil)
	run := make([]mesh.Glyph, 0, len(a.buf))
	for i := range a.buf {
		g := &a.buf[i]
		if g.Image == nil {
			continue
		}
		at, ok := a.slot(g.Image)
		if !ok {
			a.full = true
			return run
		}
		size := g.Image.Bounds().Size()
		run = append(run, mesh.Glyph{X: float32(g.X), Y: float32(g.Y - math.Floor(g.OriginY)), W: float32(size.X), H: float32(size.Y), U: float32(at.X), V: float32(at.Y)})
	}
	a.runs[key] = run
	return run
}

// slot copies the picture of a letter into the atlas, rows of letters below
// each other, and tells where it lies.
func (a *atlas) slot(img *ebiten.Image) (image.Point, bool) {
	if at, ok := a.glyphs[img]; ok {
		return at, true
	}
	size := img.Bounds().Size()
	if a.x+size.X+1 > a.side {
		a.x, a.y, a.h = 0, a.y+a.h+1, 0
	}
	if a.y+size.Y+1 > a.side {
		return image.Point{}, false
	}
	at := image.Pt(a.x, a.y)
	a.x, a.h = a.x+size.X+1, max(a.h, size.Y)
	op := &ebiten.DrawImageOptions{}
	op.GeoM.Translate(float64(at.X), float64(at.Y))
	a.img.DrawImage(img, op)
	a.glyphs[img] = at
	return at, true
}
