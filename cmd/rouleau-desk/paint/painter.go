// Package paint puts display lists on the screen and turns what the machine
// reports into inputs. It is the only package beside main that imports ebiten;
// it decides nothing.
package paint

import (
	"github.com/hajimehoshi/ebiten/v2"

	"rouleau/cmd/rouleau-desk/mesh"
	"rouleau/cmd/rouleau-desk/ui"
)

// Painter draws display lists: one mesh, one draw call.
type Painter struct {
	atlas   *atlas
	shader  *ebiten.Shader
	options ebiten.DrawTrianglesShaderOptions
	mesh    mesh.Builder
	verts   []ebiten.Vertex
}

// NewPainter loads the typeface and the shader.
func NewPainter() (*Painter, error) {
	a, err := newAtlas()
	if err != nil {
		return nil, err
	}
	p := &Painter{atlas: a}
	if p.shader, err = newShader(); err != nil {
		return nil, err
	}
	p.options.Images[0] = a.img
	return p, nil
}

// Draw paints a list over the whole of dst.
func (p *Painter) Draw(dst *ebiten.Image, list *ui.List) {
	dst.Fill(list.Ground)
	p.mesh.WhiteU, p.mesh.WhiteV = whiteAt, whiteAt
	p.atlas.full = false
	p.mesh.Build(list, p.atlas)
	// The letters of this frame do not fit beside those of earlier ones: begin
	// anew, and if the frame alone is too much, with more room.
	for grow := false; p.atlas.full && (!grow || p.atlas.side < maxSide); grow = true {
		p.atlas.reset(grow)
		p.options.Images[0] = p.atlas.img
		p.mesh.Build(list, p.atlas)
	}
	if len(p.mesh.Idx) == 0 {
		return
	}
	p.verts = p.verts[:0]
	for i := range p.mesh.Verts {
		v := &p.mesh.Verts[i]
		p.verts = append(p.verts, ebiten.Vertex{DstX: v.X, DstY: v.Y, SrcX: v.U, SrcY: v.V,
			ColorR: v.R, ColorG: v.G, ColorB: v.B, ColorA: v.A,
			Custom0: v.C[0], Custom1: v.C[1], Custom2: v.C[2], Custom3: v.C[3]})
	}
	dst.DrawTrianglesShader32(p.verts, p.mesh.Idx, p.shader, &p.options)
}
