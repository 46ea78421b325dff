// The pictures show what the list says, where it says it.

package raster_test

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"testing"

	"rouleau/cmd/rouleau-desk/raster"
	"rouleau/cmd/rouleau-desk/ui"
)

func drawn(draw func(*ui.Core)) *ui.List {
	c := ui.New(ui.Paper())
	c.Begin(ui.Input{Size: ui.Vec{X: 200, Y: 100}, Scale: 1})
	draw(c)
	l, _ := c.End()
	return l
}

// inked counts pixels in a box that are darker than the paper.
func inked(img *image.RGBA, x0, y0, x1, y1 int) (n int) {
	for y := y0; y < y1; y++ {
		for x := x0; x < x1; x++ {
			if img.RGBAAt(x, y).G < 128 {
				n++
			}
		}
	}
	return n
}

func TestShapesStandWhereTheListSays(t *testing.T) {
	black := color.NRGBA{A: 255}
	for name, k := range map[string]struct {
		draw        func(*ui.Core)
		least, most int // inked pixels within 10,10 to 60,60
	}{
		"rectangle": {func(c *ui.Core) { c.Fill(ui.R(20, 20, 20, 10), 0, black) }, 200, 200},
		"outline":   {func(c *ui.Core) { c.Stroke(ui.R(20, 20, 20, 20), 0, 2, black) }, 120, 180},
		"disc":      {func(c *ui.Core) { c.Disc(ui.R(20, 20, 20, 20), black) }, 290, 330},
		"line":      {func(c *ui.Core) { c.Segment(15, 30, 55, 30, 2, black) }, 78, 82},
		"dashes": {func(c *ui.Core) {
			c.BeginPath()
			c.To(15, 30)
			c.To(55, 30)
			c.Line(2, black, ui.Dash{On: 5, Off: 5}, false)
		}, 36, 44},
		"ring":    {func(c *ui.Core) { c.Ring(ui.Vec{X: 30, Y: 30}, 5, 10, 0, 6.2832, black) }, 215, 255},
		"hatch":   {func(c *ui.Core) { c.HatchRect(ui.R(20, 20, 20, 20), 4, 0, 2, black) }, 120, 320},
		"clipped": {func(c *ui.Core) { c.PushClip(ui.R(0, 0, 30, 100)); c.Fill(ui.R(20, 20, 20, 10), 0, black); c.PopClip() }, 100, 100},
		"letter":  {func(c *ui.Core) { c.TextAt(20, 50, "H", ui.Style{Size: 30, Weight: ui.SemiBold, Col: black}) }, 150, 420},
	} {
		img := raster.Of(drawn(k.draw), 1)
		if n := inked(img, 10, 10, 60, 60); n < k.least || n > k.most {
			t.Errorf("%s: %d pixels are inked, want %d to %d", name, n, k.least, k.most)
		}
		if n := inked(img, 61, 0, 200, 100); n > 0 {
			t.Errorf("%s: %d pixels are inked where nothing stands", name, n)
		}
	}
}

func TestPicturesScaleAndAreFiles(t *testing.T) {
	l := drawn(func(c *ui.Core) { c.Fill(ui.R(20, 20, 20, 10), 0, color.NRGBA{A: 255}) })
	out, err := raster.PNG(l, 2)
	if err != nil {
		t.Fatal(err)
	}
	img, err := png.Decode(bytes.NewReader(out))
	if err != nil || img.Bounds().Dx() != 400 || img.Bounds().Dy() != 200 {
		t.Fatalf("%v, %v", img.Bounds(), err)
	}
	if r, _, _, _ := img.At(60, 50).RGBA(); r != 0 {
		t.Error("the rectangle is not where it belongs at twice the size")
	}
	again, err := raster.PNG(l, 2)
	if err != nil || !bytes.Equal(out, again) {
		t.Error("the same list gives another picture")
	}
}
