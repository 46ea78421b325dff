package study

import (
	"fmt"
	"html"
	"strings"

	"rouleau/assets/words"
)

// This file draws the charts of the page, as SVG.

// histogram draws how often each band of five points was reached: filled from the pass mark on, hollow below.
func histogram(counts [bins]int, mark float64) string {
	const width, height, base, top = 280.0, 120.0, 100.0, 20.0
	most, all := 1, 0
	for _, n := range counts {
		most, all = max(most, n), all+n
	}
	var b strings.Builder
	fmt.Fprintf(&b, `<svg viewBox="0 0 %g %g" role="img" aria-label="%s">`, width, height, html.EscapeString(words.Say("study.histogram", all)))
	const step = width / bins
	for i, n := range counts {
		if n == 0 {
			continue
		}
		h, class := (base-top)*float64(n)/float64(most), "hollow"
		if float64(i*100/bins) >= mark {
			class = "bar"
		}
		fmt.Fprintf(&b, `<rect class="%s" x="%.1f" y="%.1f" width="%.1f" height="%.1f"><title>%d–%d: %d</title></rect>`, class, float64(i)*step+1.5, base-h, step-3, h, i*100/bins, (i+1)*100/bins, n)
	}
	x := width * mark / 100
	fmt.Fprintf(&b, `<line class="axis" x1="0" y1="%g" x2="%g" y2="%g"/><line class="mark" x1="%.1f" y1="%g" x2="%.1f" y2="%g"/>`, base, width, base, x, top-4, x, base)
	fmt.Fprintf(&b, `<text x="0" y="11">%s</text>`, html.EscapeString(words.Say("study.histogram_top", all, most)))
	if mark > 8 {
		fmt.Fprintf(&b, `<text x="0" y="114">0</text>`)
	}
	if mark < 88 {
		fmt.Fprintf(&b, `<text x="%g" y="114" text-anchor="end">100</text>`, width)
	}
	fmt.Fprintf(&b, `<text x="%.1f" y="114" text-anchor="middle">%g</text></svg>`, min(width-9, max(9, x)), mark)
	return b.String()
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

// spans draws intervals, one line for each name and one panel beside the other.
func spans(panels ...panel) string {
	const row, names, gap, head, whole = 17.0, 190.0, 34.0, 34.0, 720.0
	lines := panels[0].bars
	height := head + row*float64(len(lines)) + 6
	wide := (whole-names)/float64(len(panels)) - gap
	var b strings.Builder
	fmt.Fprintf(&b, `<svg viewBox="0 0 %g %g" role="img" aria-label="%s">`, whole, height, html.EscapeString(panels[0].title))
	for i, l := range lines {
		fmt.Fprintf(&b, `<text class="ink" x="0" y="%.1f">%s</text>`, head+row*float64(i)+12, html.EscapeString(l.name))
	}
	for k, p := range panels {
		left := names + float64(k)*(wide+gap) + gap/2
		at := func(v float64) float64 { return left + wide*(min(p.high, max(p.low, v))-p.low)/(p.high-p.low) }
		fmt.Fprintf(&b, `<text class="ink" x="%.1f" y="11">%s</text>`, left, html.EscapeString(p.title))
		middle := (p.low + p.high) / 2
		for _, tick := range [...]float64{p.low, middle, p.high} {
			fmt.Fprintf(&b, `<line class="axis" x1="%.1f" y1="%g" x2="%.1f" y2="%g"/><text x="%.1f" y="26" text-anchor="middle">%.3g</text>`, at(tick), head-4, at(tick), height, at(tick), tick)
		}
		for _, mark := range p.marks {
			fmt.Fprintf(&b, `<line class="mark" x1="%.1f" y1="%g" x2="%.1f" y2="%g"/>`, at(mark), head-4, at(mark), height)
		}
		for i, l := range p.bars {
			if l.Interval == nil || l.N == 0 {
				continue
			}
			y := head + row*float64(i) + 8
			fmt.Fprintf(&b, `<g><title>%s: %.3f, %.3f–%.3f, n %d</title><line class="span" x1="%.1f" y1="%.1f" x2="%.1f" y2="%.1f"/><circle class="bar" cx="%.1f" cy="%.1f" r="3.5"/></g>`,
				html.EscapeString(l.name), l.Value, l.Low, l.High, l.N, at(l.Low), y, at(l.High), y, at(l.Value), y)
		}
	}
	b.WriteString("</svg>")
	return b.String()
}
