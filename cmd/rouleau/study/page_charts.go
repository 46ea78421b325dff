package study

import (
	"fmt"
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau/page"
)

// This file draws the charts of the page.

const (
	chartText = 11
	thin      = 1
)

// dashes of limits.
var dashes = ui.Dash{On: 3, Off: 3}

func letters(c *ui.Core, x, base float32, text string, align ui.Align, col ui.Color) {
	c.TextAt(x, base, text, ui.Style{Size: chartText, Align: align, Col: col})
}

// upright is a line from one height to another.
func upright(c *ui.Core, x, from, to float32, col ui.Color, d ui.Dash) {
	c.BeginPath()
	c.To(x, from)
	c.To(x, to)
	c.Line(thin, col, d, false)
}

// histogram draws how often each band of five points was reached: filled from the pass mark on, hollow below.
func histogram(counts [bins]int, mark float64) *page.Drawing {
	const width, height, base, top, step = 330, 120, 100, 20, 330.0 / bins
	most, all := 1, 0
	var each []string
	for i, n := range counts {
		most, all = max(most, n), all+n
		if n > 0 {
			each = append(each, fmt.Sprintf("%d–%d: %d", i*100/bins, (i+1)*100/bins, n))
		}
	}
	says := strings.Join(append([]string{words.Say("study.histogram", all)}, each...), "; ")
	return page.Draw(width, height, says, func(c *ui.Core) {
		for i, n := range counts {
			h := (base - top) * float32(n) / float32(most)
			r := ui.R(float32(i)*step+1.5, base-h, step-3, h)
			switch {
			case n == 0:
			case float64(i*100/bins) >= mark:
				c.Fill(r, 0, c.Pal.Accent)
			default:
				c.Frame(r, 0, thin, c.Pal.Accent)
			}
		}
		x := float32(width * mark / 100)
		c.Segment(0, base, width, base, thin, c.Pal.Edge)
		upright(c, x, top-4, base, c.Pal.Ink, dashes)
		letters(c, 0, 11, words.Say("study.histogram_top", all, most), ui.AlignLeft, c.Pal.Muted)
		if mark > 9 {
			letters(c, 0, 114, "0", ui.AlignLeft, c.Pal.Muted)
		}
		if mark < 88 {
			letters(c, width, 114, "100", ui.AlignRight, c.Pal.Muted)
		}
		letters(c, min(width-12, max(12, x)), 114, fmt.Sprint(mark), ui.AlignCenter, c.Pal.Muted)
	})
}

// bar is one line of a chart of intervals.
type bar struct {
	name string
	*Interval
}

// panel is one of the charts that share their lines; marks are limits that are drawn.
type panel struct {
	title     string
	low, high float64
	marks     []float64
	bars      []bar
}

// Sizes of charts of intervals.
const (
	spansW = 720
	rowH   = 17
	namesW = 190
	panelX = 34 // between panels
	headH  = 34
	dot    = 7.0
)

// spans draws intervals, one line for each name and one panel beside the other.
func spans(panels ...panel) *page.Drawing {
	lines := panels[0].bars
	height := float32(headH + rowH*len(lines) + 6)
	return page.Draw(spansW, height, panels[0].title, func(c *ui.Core) {
		for i, l := range lines {
			letters(c, 0, float32(headH+rowH*i+12), l.name, ui.AlignLeft, c.Pal.Ink)
		}
		wide := float32(spansW-namesW)/float32(len(panels)) - panelX
		for k, p := range panels {
			p.draw(c, namesW+float32(k)*(wide+panelX)+panelX/2, wide, height)
		}
	})
}

func (p *panel) draw(c *ui.Core, left, wide, height float32) {
	at := func(v float64) float32 {
		return left + wide*float32((min(p.high, max(p.low, v))-p.low)/(p.high-p.low))
	}
	letters(c, left, 11, p.title, ui.AlignLeft, c.Pal.Ink)
	for _, tick := range [...]float64{p.low, (p.low + p.high) / 2, p.high} {
		upright(c, at(tick), headH-4, height, c.Pal.Line, ui.Dash{})
		letters(c, at(tick), 26, fmt.Sprintf("%.3g", tick), ui.AlignCenter, c.Pal.Muted)
	}
	for _, mark := range p.marks {
		upright(c, at(mark), headH-4, height, c.Pal.Ink, dashes)
	}
	for i, l := range p.bars {
		if l.Interval == nil || l.N == 0 {
			continue
		}
		y := float32(headH + rowH*i + 8)
		c.Segment(at(l.Low), y, at(l.High), y, 2, c.Pal.Accent)
		c.Disc(ui.R(at(l.Value)-dot/2, y-dot/2, dot, dot), c.Pal.Accent)
	}
}
