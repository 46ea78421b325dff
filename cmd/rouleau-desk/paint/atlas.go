// The atlas: the sheet of letters as a picture of the display, so that text costs four vertices a letter and no draw call.

package paint

import (
	"github.com/hajimehoshi/ebiten/v2"

	"rouleau/cmd/rouleau-desk/glyphs"
)

type atlas struct {
	*glyphs.Sheet
	img  *ebiten.Image
	turn int // of the sheet, when the picture was last emptied
}

func newAtlas() *atlas {
	s := glyphs.New()
	return &atlas{s, ebiten.NewImage(s.Side, s.Side), s.Turn}
}

// load brings the picture up to the sheet.
func (a *atlas) load() {
	switch {
	case a.img.Bounds().Dx() != a.Side:
		a.img.Deallocate()
		a.img = ebiten.NewImage(a.Side, a.Side)
	case a.turn != a.Turn:
		a.img.Clear()
	}
	a.turn = a.Turn
	if r, pixels := a.Fresh(); !r.Empty() {
		a.img.SubImage(r).(*ebiten.Image).WritePixels(pixels)
	}
}
