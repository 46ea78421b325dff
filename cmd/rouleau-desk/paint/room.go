// Room in the engine's buffers, made before it is needed. They grow whenever a frame has more vertices than any before, and
// the memory they then take for the first time costs several milliseconds in the middle of a case; here it costs them while
// the window opens.

package paint

import "github.com/hajimehoshi/ebiten/v2"

const (
	mostVertices = 32768 // more than a frame of the largest window has
	mostIndices  = mostVertices / 4 * 6
	roomFrames   = 4 // the engine works on more than one frame at once, each with buffers of its own
)

// makeRoom draws triangles without area in the first frames.
func (p *Painter) makeRoom(dst *ebiten.Image) {
	if p.frames >= roomFrames {
		return
	}
	p.frames++
	dst.DrawTrianglesShader32(make([]ebiten.Vertex, mostVertices), make([]uint32, mostIndices), p.shader, &p.options)
}
