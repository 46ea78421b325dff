// Which colours meet on the screen, with the contrast each pair must have, so
// that a test can compute them all (WCAG 2.2, 1.4.3, 1.4.6 and 1.4.11).

package ui

// Pair is two colours that meet on the screen and the contrast they must have.
type Pair struct {
	Name string
	A, B Color
	Min  float64
}

// Pairs lists every pair of the palette that must be told apart: 4.5 for words
// and 3 for the shapes one needs to see, and in the strong palette 7 and 4.5.
func (p *Palette) Pairs() []Pair {
	words, shapes := 4.5, 3.0
	if p.Strong {
		words, shapes = 7, 4.5
	}
	var pairs []Pair
	add := func(least float64, a Color, on string, b Color, what string) {
		pairs = append(pairs, Pair{what + " on " + on, a, b, least})
	}
	for _, g := range []struct {
		name string
		col  Color
	}{{"ground", p.Ground}, {"panel", p.Panel}, {"well", p.Well}, {"shade", p.Shade}, {"tint", p.Tint}} {
		add(words, p.Ink, g.name, g.col, "ink")
		add(words, p.Muted, g.name, g.col, "muted")
		add(words, p.Accent, g.name, g.col, "accent")
		add(shapes, p.Edge, g.name, g.col, "edge")
		add(shapes, p.Focus, g.name, g.col, "focus")
		add(shapes, p.Dark, g.name, g.col, "dark")
		for i := range p.Series {
			add(words, p.Series[i].Col, g.name, g.col, "series") // its name is written in its colour
		}
		for i := range p.Alarm {
			add(shapes, p.Alarm[i].Edge, g.name, g.col, "alarm edge")
		}
	}
	for _, g := range []struct {
		name  string
		col   Color
		muted bool // muted words stand on it too
	}{
		{"well under the pointer", mix(p.Well, p.Ink, hoverPart), true}, {"well pressed", mix(p.Well, p.Ink, pressPart), true},
		{"row under the pointer", mix(p.Shade, p.Ink, hoverPart), true}, {"row pressed", mix(p.Shade, p.Ink, pressPart), true},
		{"tint under the pointer", mix(p.Tint, p.Ink, hoverPart), false}, {"tint pressed", mix(p.Tint, p.Ink, pressPart), false},
		{"hold going on", mix(p.Well, p.Ink, holdPart), true}, {"selected text", mix(p.Well, p.Accent, selectPart), false},
	} {
		add(words, p.Ink, g.name, g.col, "ink")
		if g.muted {
			add(words, p.Muted, g.name, g.col, "muted")
		}
	}
	for _, part := range []float32{0, hoverPart, pressPart} {
		add(words, p.Accent, "tint, running", mix(p.Tint, p.Ink, part), "accent")
		add(words, p.Accent, "pill", mix(p.Well, p.Ink, part), "accent")
		add(words, p.Well, "accent, switched on", mix(p.Accent, p.Ink, part), "words")
		add(shapes, p.Edge, "switch", mix(p.Well, p.Ink, part), "knob")
		add(shapes, p.Accent, "slider", mix(p.Well, p.Ink, part), "thumb")
	}
	add(words, p.OnDark, "dark", p.Dark, "words")
	add(words, p.OnDark, "dark under the pointer", mix(p.Dark, p.OnDark, darkHoverPart), "words")
	for _, a := range p.Alarm {
		add(words, a.OnText, "alarm on", a.On, "words and sign")
		add(words, a.OffText, "alarm off", a.Off, "words")
		add(shapes, a.Edge, "alarm off", a.Off, "edge and sign")
		add(shapes, p.Well, "alarm sign", a.Edge, "strokes")
	}
	return pairs
}
