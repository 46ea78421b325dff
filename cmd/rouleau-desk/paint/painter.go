// Package paint puts display lists on the screen and turns what the machine
// reports into inputs. It is the only package beside main that imports ebiten;
// it decides nothing.
package paint

import (
	"unsafe"

	"github.com/hajimehoshi/ebiten/v2"

	"rouleau/cmd/rouleau-desk/glyphs"
	"rouleau/cmd/rouleau-desk/mesh"
	"rouleau/cmd/rouleau-desk/ui"
)

// Painter draws display lists: one mesh, one draw call.
type Painter struct {
	atlas   *atlas
	shader  *ebiten.Shader
	options ebiten.DrawTrianglesShaderOptions
	mesh    mesh.Builder
	frames  int // so far, up to roomFrames
}

// NewPainter makes the atlas and the shader.
func NewPainter() (*Painter, error) {
	ui.LoadTypeface()
	shader, err := newShader()
	if err != nil {
		return nil, err
	}
	p := &Painter{atlas: newAtlas(), shader: shader}
	p.mesh.Verts, p.mesh.Idx = make([]mesh.Vertex, mostVertices), make([]uint32, mostIndices)
	return p, nil
}

// Draw paints a list over the whole of dst.
func (p *Painter) Draw(dst *ebiten.Image, list *ui.List) {
	size := dst.Bounds().Size()
	p.mesh.Width, p.mesh.Height = float32(size.X), float32(size.Y) // the ground is part of the mesh: one draw call less
	p.mesh.WhiteU, p.mesh.WhiteV = glyphs.WhiteAt, glyphs.WhiteAt
	p.atlas.Full = false
	p.mesh.Build(list, p.atlas)
	// The letters of this frame do not fit beside those of earlier ones: begin
	// anew, and if the frame alone is too much, with more room.
	for grow := false; p.atlas.Full && (!grow || p.atlas.MayGrow()); grow = true {
		p.atlas.Reset(grow)
		p.mesh.Build(list, p.atlas)
	}
	p.atlas.load()
	p.options.Images[0] = p.atlas.img
	p.makeRoom(dst)
	dst.DrawTrianglesShader32(vertices(p.mesh.Verts), p.mesh.Idx, p.shader, &p.options)
}

// The vertices of a mesh are those of the engine by other names: twelve numbers in the same order. These do not compile
// where their sizes differ.
var (
	_ [unsafe.Sizeof(mesh.Vertex{}) - unsafe.Sizeof(ebiten.Vertex{})]struct{}
	_ [unsafe.Sizeof(ebiten.Vertex{}) - unsafe.Sizeof(mesh.Vertex{})]struct{}
)

// vertices gives a mesh to the engine as it lies; copying it would be a good part of the cost of a frame.
func vertices(v []mesh.Vertex) []ebiten.Vertex {
	return unsafe.Slice((*ebiten.Vertex)(unsafe.Pointer(unsafe.SliceData(v))), len(v))
}
