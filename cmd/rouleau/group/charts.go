package group

import (
	"strconv"
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau/page"
)

// This file draws the charts of the page.

const (
	chartText = 11
	thin      = 1
	dot       = 8
)

var dashes = ui.Dash{On: 3, Off: 3}

func put(c *ui.Core, x, base float32, text string, align ui.Align, col ui.Color) {
	c.TextAt(x, base, text, ui.Style{Size: chartText, Align: align, Col: col})
}

// Sizes of the chart of kinds.
const (
	barsW  = 960
	barsTo = 700 // where the longest ends; its figures stand behind it
	barRow = 20
	barH   = 12
)

// bars draws what each kind cost.
func bars(f *figures) *page.Drawing {
	shown := f.kinds[:min(mostBars, len(f.kinds))]
	most, names := 0.1, float32(0) // so much at least, that what is next to nothing looks so
	var each []string
	for i := range shown {
		most, names = max(most, shown[i].each), max(names, (ui.Style{Size: chartText}).Width(shown[i].name()))
		each = append(each, words.Say("group.bars_item", shown[i].name(), points(shown[i].each)))
	}
	left := names + 10
	height := float32(barRow*len(shown) + 4)
	return page.Draw(barsW, height, words.Say("group.bars_says", strings.Join(each, "; ")), func(c *ui.Core) {
		for i := range shown {
			k := &shown[i]
			top := float32(barRow*i) + 4
			base := top + barH - 2
			long := (barsTo - left) * float32(max(k.each, 0)/most)
			put(c, names, base, k.name(), ui.AlignRight, c.Pal.Ink)
			c.Fill(ui.R(left, top, long, barH), 0, c.Pal.Accent)
			text := words.Say("group.bars_plain", points(k.each), k.attempts, f.all.attempts)
			if k.critical.attempts > 0 {
				text = words.Say("group.bars_critical", points(k.each), k.attempts, f.all.attempts, k.critical.attempts)
			}
			put(c, left+long+8, base, text, ui.AlignLeft, c.Pal.Muted)
		}
		c.Segment(left, 0, left, height, thin, c.Pal.Edge)
	})
}

// Sizes of the charts of points.
const (
	dotsW    = 420
	dotsX    = 34 // where the axis of points stands
	dotsTop  = 8
	dotsBase = 188
)

// dots draws the points of parts side by side.
func dots(s *section, parts []part, axis string, text func(int) string) *page.Drawing {
	var each []string
	for i := range parts {
		p := &parts[i]
		each = append(each, words.Say("group.points_item", p.label(text), p.points.middle, p.points.low, p.points.high, p.attempts))
	}
	wide := float32(dotsW-dotsX) / float32(len(parts))
	lines := 1 // of labels
	for i := range parts {
		if (ui.Style{Size: chartText}).Width(parts[i].label(text)) > wide-6 {
			lines = 2
		}
	}
	height := float32(dotsBase + 26 + 13*lines)
	at := func(points float64) float32 {
		return dotsBase - (dotsBase-dotsTop)*float32(min(100, max(0, points))/100)
	}
	return page.Draw(dotsW, height, words.Say("group.points_says", axis, strings.Join(each, "; ")), func(c *ui.Core) {
		for mark := 0; mark <= 100; mark += 25 {
			y := at(float64(mark))
			c.Segment(dotsX, y, dotsW, y, thin, c.Pal.Line)
			put(c, dotsX-6, y+4, strconv.Itoa(mark), ui.AlignRight, c.Pal.Muted)
		}
		if !s.lesson {
			c.BeginPath()
			c.To(dotsX, at(s.passMark))
			c.To(dotsW, at(s.passMark))
			c.Line(thin, c.Pal.Ink, dashes, false)
		}
		for i := range parts {
			p := &parts[i]
			x := dotsX + wide*(float32(i)+0.5)
			c.Segment(x, at(p.points.low), x, at(p.points.high), 4, c.Pal.Tint)
			c.Segment(x, at(p.points.low), x, at(p.points.high), 2, c.Pal.Accent)
			c.Disc(ui.R(x-dot/2, at(p.points.middle)-dot/2, dot, dot), c.Pal.Accent)
			if lines == 1 || p.from == p.to {
				put(c, x, dotsBase+16, p.label(text), ui.AlignCenter, c.Pal.Ink)
				continue
			}
			put(c, x, dotsBase+16, text(p.from), ui.AlignCenter, c.Pal.Ink)
			put(c, x, dotsBase+29, words.Say("group.to", text(p.to)), ui.AlignCenter, c.Pal.Ink)
		}
		put(c, dotsX+(dotsW-dotsX)/2, height-6, axis, ui.AlignCenter, c.Pal.Muted)
	})
}
