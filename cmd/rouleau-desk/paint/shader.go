// The shader: letters and polygons come from the atlas, boxes and pieces of
// lines are computed for each pixel. It says what mesh.Cover says, where the
// tests are.

package paint

import (
	"fmt"

	"github.com/hajimehoshi/ebiten/v2"
)

func newShader() (*ebiten.Shader, error) {
	s, err := ebiten.NewShader([]byte(shaderText))
	if err != nil {
		return nil, fmt.Errorf("the drawing program of the window does not compile: %w; build it again", err)
	}
	return s, nil
}

const shaderText = `//kage:unit pixels
package main

func Fragment(dst vec4, src vec2, color vec4, c vec4) vec4 {
	s := src - imageSrc0Origin()
	if s.x >= -0.5 {
		return imageSrc0UnsafeAt(src) * color
	}
	p := dst.xy - imageDstOrigin()
	if s.x > -19999 {
		return color * box(p, -1-s.x, s.y, c)
	}
	return color * line(p, -20000-s.x, s.y, c)
}

func box(p vec2, r float, half float, c vec4) float {
	q := abs(p-c.xy) - c.zw + r
	d := max(q.x, q.y)
	if r > 0 {
		d = length(max(q, 0)) + min(d, 0) - r
	}
	if half > 0 {
		d = abs(d) - half
	}
	return clamp(0.5-d, 0, 1)
}

func line(p vec2, ends float, half float, c vec4) float {
	e := c.zw - c.xy
	l := max(length(e), 0.0001)
	d := e / l
	q := p - c.xy
	t := dot(q, d)
	s := abs(q.x*d.y - q.y*d.x)
	past := 0.0
	blunt := 1.0
	if t < l/2 {
		if abs(ends-2) < 0.5 || ends < 0.5 {
			blunt = clamp(t+0.5, 0, 1)
		} else {
			past = max(-t, 0)
		}
	} else {
		if ends < 1.5 {
			blunt = clamp(l-t+0.5, 0, 1)
		} else {
			past = max(t-l, 0)
		}
	}
	return clamp(half+0.5-length(vec2(s, past)), 0, 1) * blunt
}
`
