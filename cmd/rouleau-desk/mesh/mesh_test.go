// Tests of the mesh by its cover: triangles are sampled at pixel centres and the
// painted area is compared with what geometry says.

package mesh

import (
	"math"
	"testing"

	"rouleau/cmd/rouleau-desk/ui"
)

const side = 400

// raster is the cover of each pixel after painting the mesh in order.
type raster [side][side]float64

func paint(b *Builder) *raster {
	var r raster
	for i := 0; i+2 < len(b.Idx); i += 3 {
		p, q, s := b.Verts[b.Idx[i]], b.Verts[b.Idx[i+1]], b.Verts[b.Idx[i+2]]
		det := float64((q.X-p.X)*(s.Y-p.Y) - (s.X-p.X)*(q.Y-p.Y))
		if det == 0 {
			continue
		}
		lo := func(a, b, c float32) int { return int(min(max(math.Floor(float64(min(a, b, c))), 0), side)) }
		hi := func(a, b, c float32) int { return int(min(max(math.Ceil(float64(max(a, b, c))), 0), side)) }
		for y := lo(p.Y, q.Y, s.Y); y < hi(p.Y, q.Y, s.Y); y++ {
			for x := lo(p.X, q.X, s.X); x < hi(p.X, q.X, s.X); x++ {
				// Off the exact centre, so that no sample lies on a shared edge.
				px, py := float64(x)+0.50013, float64(y)+0.50007
				u := ((px-float64(p.X))*float64(s.Y-p.Y) - float64(s.X-p.X)*(py-float64(p.Y))) / det
				v := (float64(q.X-p.X)*(py-float64(p.Y)) - (px-float64(p.X))*float64(q.Y-p.Y)) / det
				if u < 0 || v < 0 || u+v > 1 {
					continue
				}
				a := float64(p.A) + u*float64(q.A-p.A) + v*float64(s.A-p.A)
				if p.U < 0 {
					a *= float64(Cover(&p, float32(x)+0.5, float32(y)+0.5))
				}
				r[y][x] = a + r[y][x]*(1-a)
			}
		}
	}
	return &r
}

func (r *raster) sum() (s float64) {
	for y := range r {
		for x := range r[y] {
			s += r[y][x]
		}
	}
	return s
}

func build(scale float32, draw func(c *ui.Core)) *Builder {
	c := ui.New(ui.Paper())
	c.Begin(ui.Input{Size: ui.Vec{X: side / scale, Y: side / scale}, Scale: scale})
	draw(c)
	l, _ := c.End()
	b := &Builder{}
	b.Build(l, noGlyphs{})
	return b
}

type noGlyphs struct{}

func (noGlyphs) Run(string, float32, ui.Weight, bool) []Glyph {
	return []Glyph{{X: 0, Y: -10, W: 8, H: 10, U: 32, V: 64}}
}

var ink = ui.Color{A: 255}

func poly(c *ui.Core, xy ...float32) {
	c.BeginPath()
	for i := 0; i < len(xy); i += 2 {
		c.To(xy[i], xy[i+1])
	}
}

func TestCoverIsTheAreaOfTheShape(t *testing.T) {
	const pi = math.Pi
	for _, c := range []struct {
		name string
		draw func(c *ui.Core)
		want float64
	}{
		{"rectangle", func(c *ui.Core) { c.Fill(ui.R(20, 30, 50, 40), 0, ink) }, 2000},
		{"rounded rectangle", func(c *ui.Core) { c.Fill(ui.R(20, 30, 50, 40), 10, ink) }, 2000 - (4-pi)*100},
		{"pill", func(c *ui.Core) { c.Fill(ui.R(20, 30, 100, 40), 50, ink) }, 60*40 + pi*400},
		{"disc", func(c *ui.Core) { c.Disc(ui.R(20, 20, 80, 80), ink) }, pi * 1600},
		{"ellipse", func(c *ui.Core) { c.Disc(ui.R(20, 20, 120, 60), ink) }, pi * 60 * 30},
		{"outline", func(c *ui.Core) { c.Stroke(ui.R(20, 20, 100, 60), 0, 4, ink) }, 104*64 - 96*56},
		{"frame lies inside", func(c *ui.Core) { c.Frame(ui.R(20, 20, 100, 60), 0, 4, ink) }, 100*60 - 92*52},
		{"circle line", func(c *ui.Core) { c.Circle(ui.R(50, 50, 80, 80), 6, ink) }, pi * (43*43 - 37*37)},
		{"ring", func(c *ui.Core) { c.Ring(ui.Vec{X: 100, Y: 100}, 30, 60, 0, 2*pi, ink) }, pi * (3600 - 900)},
		{"half a ring", func(c *ui.Core) { c.Ring(ui.Vec{X: 100, Y: 100}, 30, 60, 0, pi, ink) }, pi / 2 * (3600 - 900)},
		{"half a ring backwards", func(c *ui.Core) { c.Ring(ui.Vec{X: 100, Y: 100}, 30, 60, 0, -pi, ink) }, pi / 2 * (3600 - 900)},
		{"level line", func(c *ui.Core) { c.Segment(20, 50, 120, 50, 2, ink) }, 200},
		{"slanting line", func(c *ui.Core) { c.Segment(20, 50, 100, 110, 5, ink) }, 500},
		{"line with a right angle", func(c *ui.Core) { poly(c, 20, 20, 120, 20, 120, 100); c.Line(10, ink, ui.Dash{}, false) }, 100*10 + 75*10 + 5*5 + pi/4*25},
		{"triangle", func(c *ui.Core) { poly(c, 20, 20, 120, 20, 20, 100); c.Polygon(ink) }, 4000},
		{"triangle, the other way round", func(c *ui.Core) { poly(c, 20, 100, 120, 20, 20, 20); c.Polygon(ink) }, 4000},
		{"L, not convex", func(c *ui.Core) { poly(c, 20, 20, 60, 20, 60, 80, 120, 80, 120, 120, 20, 120); c.Polygon(ink) }, 40*60 + 100*40},
		{"comb", func(c *ui.Core) {
			poly(c, 20, 20, 40, 20, 40, 80, 60, 80, 60, 20, 80, 20, 80, 80, 100, 80, 100, 20, 120, 20, 120, 120, 20, 120)
			c.Polygon(ink)
		}, 3*20*60 + 100*40},
		{"raw triangles", func(c *ui.Core) { poly(c, 20, 20, 60, 20, 20, 60, 100, 100, 140, 100, 100, 140); c.Triangles(ink) }, 1600},
		{"dashes", func(c *ui.Core) { poly(c, 20, 50, 120, 50); c.Line(4, ink, ui.Dash{On: 6, Off: 4}, false) }, 60 * 4},
		{"dashes round a corner", func(c *ui.Core) { poly(c, 20, 20, 120, 20, 120, 120); c.Line(4, ink, ui.Dash{On: 5, Off: 5}, false) }, 100 * 4},
		{"hatch", func(c *ui.Core) { c.HatchRect(ui.R(20, 20, 100, 100), 10, pi/4, 2, ink) }, 100 * 100 * 2 / 10},
	} {
		for _, scale := range []float32{1, 2} {
			got := paint(build(scale, c.draw)).sum() / float64(scale*scale)
			if math.Abs(got-c.want) > 0.03*c.want {
				t.Errorf("%s at scale %g covers %.1f, want %.1f", c.name, scale, got, c.want)
			}
		}
	}
}

func TestRulesAndFramesAreCrisp(t *testing.T) {
	for _, scale := range []float32{1, 1.25, 1.5, 2, 2.5} {
		r := paint(build(scale, func(c *ui.Core) {
			c.Fill(ui.R(10.3, 10.4, 30.2, 20.7), 0, ink)
			c.Frame(ui.R(10.3, 40.4, 30.2, 20.7), 0, 1, ink)
			c.Segment(50.2, 10.7, 70, 10.7, 1, ink)
		}))
		for y := range r {
			for x := range r[y] {
				if a := r[y][x]; a > 0.02 && a < 0.98 && x < int(48*scale) {
					t.Fatalf("scale %g: pixel %d,%d is half covered: %.2f", scale, x, y, a)
				}
			}
		}
	}
}

func TestMovingDashesMove(t *testing.T) {
	at := func(phase float32) *raster {
		return paint(build(1, func(c *ui.Core) {
			poly(c, 20, 50, 180, 50)
			c.Line(4, ink, ui.Dash{On: 10, Off: 10, Phase: phase}, false)
		}))
	}
	if a, b := at(0)[50][25], at(10)[50][25]; a < 0.9 || b > 0.1 {
		t.Errorf("pixel in the first dash: %g, half a period on: %g", a, b)
	}
	if a, b := at(3)[50][31], at(0)[50][31]; a < 0.9 || b > 0.1 {
		t.Error("a growing phase should move dashes towards the end of the line")
	}
	for _, p := range []float32{-7, 20, 1e6} {
		if s := at(p).sum(); math.Abs(s-320) > 20 {
			t.Errorf("phase %g covers %g, want 320", p, s)
		}
	}
}

func TestClipCutsEverything(t *testing.T) {
	b := build(1, func(c *ui.Core) {
		c.PushClip(ui.R(50, 50, 40, 40))
		c.Fill(ui.R(0, 0, 200, 200), 20, ink)
		c.Text(ui.R(85, 40, 100, 20), "x", ui.Style{})
		c.Disc(ui.R(60, 60, 200, 10), ink)
		c.PushClip(ui.R(80, 80, 100, 100))
		c.Fill(ui.R(0, 0, 200, 200), 0, ink)
		c.PopClip()
		c.PopClip()
		c.Fill(ui.R(150, 150, 10, 10), 0, ink)
	})
	r := paint(b)
	if s := r.sum(); math.Abs(s-1700) > 1 {
		t.Errorf("clipped cover is %g, want 40 × 40 and 10 × 10", s)
	}
	// A letter that is cut keeps its picture in place: texture moves with it.
	for _, v := range b.Verts {
		if v.U > 0 && (math.Abs(float64(v.U-32-(v.X-85))) > 1e-3 || v.X > 200) {
			t.Errorf("a clipped letter has texture %g at %g", v.U, v.X)
		}
	}
}

func TestTheGroundCoversThePicture(t *testing.T) {
	c := ui.New(ui.Paper())
	c.Begin(ui.Input{Size: ui.Vec{X: side, Y: side}, Scale: 1})
	c.Fill(ui.R(10, 10, 20, 20), 0, ink)
	l, _ := c.End()
	b := &Builder{Width: 300, Height: 200}
	b.Build(l, noGlyphs{})
	corners := map[ui.Vec]bool{}
	for _, i := range b.Idx[:6] {
		v := &b.Verts[i]
		corners[ui.Vec{X: v.X, Y: v.Y}] = true
		if g := c.Pal.Ground; math.Abs(float64(v.R)-float64(g.R)/255) > 1e-6 || v.A != 1 || v.U != b.WhiteU {
			t.Errorf("the ground is painted with %+v, want %v", *v, g)
		}
	}
	for _, p := range []ui.Vec{{}, {X: 300}, {X: 300, Y: 200}, {Y: 200}} {
		if !corners[p] {
			t.Errorf("the ground does not reach %v", p)
		}
	}
}

func TestThinLinesArePaleNotGone(t *testing.T) {
	if s := paint(build(1, func(c *ui.Core) { c.Segment(20, 20, 100, 80, 0.5, ink) })).sum(); math.Abs(s-50) > 5 {
		t.Errorf("half a pixel wide, 100 long covers %g, want 50", s)
	}
}

func TestSpikesDoNotExplode(t *testing.T) {
	b := build(1, func(c *ui.Core) {
		poly(c, 20, 100, 60, 20, 60.5, 100, 61, 20, 100, 100, 100, 100, 99.999, 100)
		c.Line(2, ink, ui.Dash{}, false)
		poly(c, 20, 100, 60, 20, 60.5, 100, 61, 20, 100, 100)
		c.Polygon(ink)
	})
	for _, v := range b.Verts {
		if !(v.X > 10 && v.X < 110 && v.Y > 8 && v.Y < 110) {
			t.Errorf("a vertex lies at %g, %g", v.X, v.Y)
		}
	}
}

func TestPolygonThatCrossesItselfEnds(t *testing.T) {
	build(1, func(c *ui.Core) { poly(c, 20, 20, 100, 100, 100, 20, 20, 100, 60, 10); c.Polygon(ink) })
}

func TestRebuildingAllocatesNothing(t *testing.T) {
	c := ui.New(ui.Paper())
	c.Begin(ui.Input{Size: ui.Vec{X: side, Y: side}, Scale: 1})
	poly(c, 20, 20, 60, 20, 60, 80, 120, 80, 120, 120, 20, 120)
	c.Polygon(ink)
	c.Line(2, ink, ui.Dash{On: 3, Off: 3}, true)
	c.Hatch(5, 0.7, 1, ink)
	c.Fill(ui.R(10, 10, 300, 300), 12, ink)
	c.Ring(ui.Vec{X: 100, Y: 100}, 30, 60, 0, 3, ink)
	l, _ := c.End()
	b := &Builder{}
	b.Build(l, noGlyphs{})
	if n := testing.AllocsPerRun(50, func() { b.Build(l, noGlyphs{}) }); n != 0 {
		t.Errorf("%g allocations", n)
	}
}

func BenchmarkBuild(b *testing.B) {
	c := ui.New(ui.Paper())
	c.Begin(ui.Input{Size: ui.Vec{X: 1280, Y: 800}, Scale: 1})
	for s := range 6 {
		c.BeginPath()
		for i := range 600 {
			c.To(float32(i)*2, 100+float32(s)*50+20*float32(math.Sin(float64(i)/9)))
		}
		c.Line(2, ink, ui.Dash{On: 9, Off: 4}, false)
	}
	for i := range 300 {
		c.Fill(ui.R(float32(i%20)*60, float32(i/20)*40, 50, 30), 6, ink)
	}
	l, _ := c.End()
	m := &Builder{}
	b.ReportAllocs()
	for b.Loop() {
		m.Build(l, noGlyphs{})
	}
	b.ReportMetric(float64(len(m.Verts)), "vertices")
}
