// Geometry of the window: points, rectangles, and the cutters screens are laid
// out with. Everything is in logical pixels; the painter alone knows the scale.

package ui

// Vec is a point or a size in logical pixels.
type Vec struct{ X, Y float32 }

// Add returns v + o.
func (v Vec) Add(o Vec) Vec { return Vec{v.X + o.X, v.Y + o.Y} }

// Sub returns v - o.
func (v Vec) Sub(o Vec) Vec { return Vec{v.X - o.X, v.Y - o.Y} }

// Rect is a rectangle: its upper left corner and its size.
type Rect struct{ X, Y, W, H float32 }

// R makes a rectangle.
func R(x, y, w, h float32) Rect { return Rect{x, y, w, h} }

// Right is the x of the right edge.
func (r Rect) Right() float32 { return r.X + r.W }

// Bottom is the y of the lower edge.
func (r Rect) Bottom() float32 { return r.Y + r.H }

// Center is the middle of the rectangle.
func (r Rect) Center() Vec { return Vec{r.X + r.W/2, r.Y + r.H/2} }

// Empty reports whether the rectangle covers nothing.
func (r Rect) Empty() bool { return r.W <= 0 || r.H <= 0 }

// Has reports whether p lies in the rectangle; the right and lower edges do not
// belong to it, so that neighbours never both claim a press.
func (r Rect) Has(p Vec) bool {
	return p.X >= r.X && p.X < r.X+r.W && p.Y >= r.Y && p.Y < r.Y+r.H
}

// Inset takes d off every side; a negative d grows the rectangle.
func (r Rect) Inset(d float32) Rect { return r.InsetXY(d, d) }

// InsetXY takes dx off left and right and dy off top and bottom.
func (r Rect) InsetXY(dx, dy float32) Rect {
	r.X, r.W = r.X+dx, max(0, r.W-2*dx)
	r.Y, r.H = r.Y+dy, max(0, r.H-2*dy)
	return r
}

// Move shifts the rectangle.
func (r Rect) Move(dx, dy float32) Rect { return Rect{r.X + dx, r.Y + dy, r.W, r.H} }

// Intersect is the part both rectangles share; empty if they share none.
func (r Rect) Intersect(o Rect) Rect {
	x0, y0 := max(r.X, o.X), max(r.Y, o.Y)
	x1, y1 := min(r.Right(), o.Right()), min(r.Bottom(), o.Bottom())
	if x1 <= x0 || y1 <= y0 {
		return Rect{X: x0, Y: y0}
	}
	return Rect{x0, y0, x1 - x0, y1 - y0}
}

// Union is the smallest rectangle around both; an empty one adds nothing.
func (r Rect) Union(o Rect) Rect {
	if r.Empty() {
		return o
	}
	if o.Empty() {
		return r
	}
	x0, y0 := min(r.X, o.X), min(r.Y, o.Y)
	return Rect{x0, y0, max(r.Right(), o.Right()) - x0, max(r.Bottom(), o.Bottom()) - y0}
}

// CutTop takes a strip of height h off the top of r and returns it.
func (r *Rect) CutTop(h float32) Rect {
	h = min(h, r.H)
	c := Rect{r.X, r.Y, r.W, h}
	r.Y, r.H = r.Y+h, r.H-h
	return c
}

// CutBottom takes a strip of height h off the bottom of r and returns it.
func (r *Rect) CutBottom(h float32) Rect {
	h = min(h, r.H)
	r.H -= h
	return Rect{r.X, r.Y + r.H, r.W, h}
}

// CutLeft takes a strip of width w off the left of r and returns it.
func (r *Rect) CutLeft(w float32) Rect {
	w = min(w, r.W)
	c := Rect{r.X, r.Y, w, r.H}
	r.X, r.W = r.X+w, r.W-w
	return c
}

// CutRight takes a strip of width w off the right of r and returns it.
func (r *Rect) CutRight(w float32) Rect {
	w = min(w, r.W)
	r.W -= w
	return Rect{r.X + r.W, r.Y, w, r.H}
}

// Col is cell i of n equal columns with a gap between them.
func (r Rect) Col(i, n int, gap float32) Rect {
	w := (r.W - gap*float32(n-1)) / float32(n)
	return Rect{r.X + float32(i)*(w+gap), r.Y, w, r.H}
}

// Row is cell i of n equal rows with a gap between them.
func (r Rect) Row(i, n int, gap float32) Rect {
	h := (r.H - gap*float32(n-1)) / float32(n)
	return Rect{r.X, r.Y + float32(i)*(h+gap), r.W, h}
}

// Place puts a box of size w × h inside r; ax and ay say where: 0 at the left or
// top, 0.5 in the middle, 1 at the right or bottom.
func (r Rect) Place(w, h, ax, ay float32) Rect {
	return Rect{r.X + (r.W-w)*ax, r.Y + (r.H-h)*ay, w, h}
}
