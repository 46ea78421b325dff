package page

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

// This file writes a page as HTML.

// The colours of a page. Every text on every ground keeps a contrast of 4.5 at least, which a test computes.
var (
	white  = ui.Color{R: 255, G: 255, B: 255, A: 255}
	ink    = ui.Color{R: 0x1b, G: 0x1f, B: 0x24, A: 255}
	soft   = ui.Color{R: 0x4f, G: 0x59, B: 0x63, A: 255}
	line   = ui.Color{R: 0xcd, G: 0xd3, B: 0xd9, A: 255}
	shade  = ui.Color{R: 0xf1, G: 0xf3, B: 0xf5, A: 255}
	bad    = ui.Color{R: 0x8f, G: 0x2a, B: 0x17, A: 255}
	accent = ui.Color{R: 0x0b, G: 0x5c, B: 0x85, A: 255}
)

// deepest is how much of the accent stands behind a cell with the strongest tint.
const deepest = 0.35

// tint is the ground of a cell.
func tint(strength float64) ui.Color {
	part := deepest * min(max(strength, 0), 1)
	mix := func(of, over uint8) uint8 { return uint8(float64(of) + part*(float64(over)-float64(of)) + 0.5) }
	return ui.Color{R: mix(white.R, accent.R), G: mix(white.G, accent.G), B: mix(white.B, accent.B), A: 255}
}

func hex(c ui.Color) string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

//go:embed page.css
var style string

//go:embed page.html
var layout string

// form is the page without what belongs to one page only, which HTML puts in.
var form = template.Must(template.New("page").Funcs(own(nil, nil)).Parse(layout))

// placed is a block with how deep in others it lies.
type placed struct {
	Block
	Level int
}

// own are the functions of one page: the names it has, and how many drawings and questions there were.
func own(anchors map[string]bool, count map[string]int) template.FuncMap {
	next := func(of string) int {
		count[of]++
		return count[of]
	}
	return template.FuncMap{
		"style": func() template.CSS {
			return template.CSS(fmt.Sprintf(":root{color-scheme:light;--ink:%s;--soft:%s;--line:%s;--shade:%s;--bad:%s;--accent:%s}\n%s",
				hex(ink), hex(soft), hex(line), hex(shade), hex(bad), hex(accent), style))
		},
		"caution": func() string { return words.Say("cli.caution") },
		"rich":    func(text string) template.HTML { return rich(text, anchors) },
		"plain":   plain,
		"clean":   clean,
		"fault": func(text string) string {
			lines := strings.Split(text, "\n")
			for i := range lines {
				lines[i] = clean(lines[i])
			}
			return strings.Join(lines, "\n")
		},
		"right":   (*Table).right,
		"drawing": func(d *Drawing) template.HTML { return d.svg(next("drawing")) },
		"number":  func() int { return next("question") },
		"top":     func(b Block) placed { return placed{b, 2} },
		"under": func(p placed, b Block) placed {
			if p.Head == "" {
				return placed{b, p.Level}
			}
			return placed{b, min(p.Level+1, 6)}
		},
		"head": func(p placed) template.HTML {
			return template.HTML(fmt.Sprintf("<h%d>%s</h%d>", p.Level, rich(p.Head, anchors), p.Level))
		},
		"tint": func(strength float64) template.CSS { return template.CSS("background:" + hex(tint(strength))) },
		"columns": func(b *Beside) template.CSS {
			var widths strings.Builder
			for _, part := range b.shares() {
				fmt.Fprintf(&widths, " minmax(0,%.4gfr)", part*100)
			}
			return template.CSS("--columns:" + strings.TrimSpace(widths.String()))
		},
	}
}

// plain is a text without what is marked in it.
func plain(text string) string {
	var b strings.Builder
	for _, r := range runs(text) {
		b.WriteString(r.text)
	}
	return b.String()
}

// HTML is the page as a file.
func (p *Page) HTML() ([]byte, error) {
	t, err := form.Clone()
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	err = t.Funcs(own(p.anchors(), map[string]int{})).Execute(&b, p)
	return b.Bytes(), err
}
