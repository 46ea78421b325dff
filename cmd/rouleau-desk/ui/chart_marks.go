// What stands above the lanes of a chart: bars of time with their names, and marks of moments. Marks that would lie on
// each other become one with a count; pointing at it, or putting the cursor there, says all of their words.

package ui

import (
	"strconv"
	"strings"
)

const (
	mergePX   = 13 // marks nearer than this become one
	tipsShown = 9  // words of merged marks that are shown
	allRows   = -1
)

// tipKey is what the words of a pointed-at mark depend on.
type tipKey struct {
	chart      ID
	row, first int
	n, marks   int
}

// chartBands draws the rows of bars.
func (c *Core) chartBands(g *Chart, l *chartLayout) {
	rows := g.bandRows()
	if rows == 0 || g.To <= g.From {
		return
	}
	c.rowNames(g, l, l.bands, rows, g.BandNames)
	c.PushClip(l.bands)
	st := Style{Size: l.size - 2, Tab: true}
	for i := range g.Bands {
		b := &g.Bands[i]
		if b.To < g.From || b.From > g.To {
			continue
		}
		row := l.bands.Row(b.Row, rows, 0).InsetXY(0, 2)
		x0, x1 := max(l.x(b.From), l.plot.X-2), min(l.x(b.To), l.plot.Right()+2)
		box := Rect{x0, row.Y, max(x1-x0, 2), row.H}
		st.Col = c.Pal.Ink
		switch b.Fill {
		case BandTint:
			c.Fill(box, 3, c.Pal.Tint)
		case BandHatch:
			c.HatchRect(box, 5, -0.8, 1, c.Pal.Edge)
		case BandDark:
			c.Fill(box, 3, c.Pal.Dark)
			st.Col = c.Pal.OnDark
		default:
			c.Fill(box, 3, c.Pal.Shade)
		}
		c.Frame(box, 3, 1, c.Pal.Edge)
		in := box.InsetXY(5, 0)
		if w := st.Width(b.Label); w <= in.W {
			if b.Fill == BandHatch && b.Label != "" {
				c.Fill(Rect{in.X - 2, in.Y + 2, w + 4, in.H - 4}, 2, c.Pal.Ground)
			}
			c.inner(g.ID, in, b.Label, st)
		}
		if box.Has(c.in.Pointer) && c.under == g.ID {
			c.tipRect, c.tipText, c.tipMore = box, b.Label, c.Clock(b.From)+" – "+c.Clock(b.To)
		}
	}
	c.PopClip()
}

// rowNames writes the names of rows at the left of a head.
func (c *Core) rowNames(g *Chart, l *chartLayout, head Rect, rows int, names []string) {
	if l.compact {
		return
	}
	for i, n := range names {
		r := head.Row(i, rows, 0)
		c.chartName(g, Rect{l.names.X, r.Y, l.names.W - 10, r.H}, n, Style{Size: l.size - 2, Col: c.Pal.Muted})
	}
}

// chartMarks draws the rows of marks.
func (c *Core) chartMarks(t target, g *Chart, l *chartLayout) {
	rows := g.markRows()
	if rows == 0 || g.To <= g.From {
		return
	}
	c.rowNames(g, l, l.head, rows, g.MarkNames)
	for row := range rows {
		r := l.head.Row(row, rows, 0)
		free := l.plot.X
		for i := 0; i < len(g.Marks); {
			m := &g.Marks[i]
			if m.Row != row || m.T < g.From || m.T > g.To {
				i++
				continue
			}
			x, first, n, end := l.x(m.T), i, 0, i
			kind := m.Kind
			for ; i < len(g.Marks); i++ {
				k := &g.Marks[i]
				if k.Row != row {
					continue
				}
				if k.T > g.To || l.x(k.T)-x > mergePX {
					break
				}
				n, end = n+1, i
				kind = max(kind, k.Kind)
			}
			free = c.chartMark(t, g, l, r, first, end, n, kind, free)
		}
	}
	if c.chart.byKeys && t.focused || c.fromTouch {
		c.cursorWords(g, l)
	}
}

// cursorWords shows the words of all marks at the cursor, where no pointer could rest on them.
func (c *Core) cursorWords(g *Chart, l *chartLayout) {
	if !(g.Cursor >= g.From && g.Cursor <= g.To) {
		return
	}
	at, first, n := l.x(g.Cursor), -1, 0
	for i := range g.Marks {
		if x := l.x(g.Marks[i].T); x < at-mergePX/2 || x > at+mergePX/2 {
			continue
		}
		if n++; first < 0 {
			first = i
		}
	}
	if n > 0 {
		c.tipRect = Rect{at - 7, l.head.Y, 14, l.head.H}
		c.tipText, c.tipMore = c.markWords(g, allRows, first, first+n-1, n)
	}
}

// chartMark draws one mark that stands for n, and returns where words may stand next.
func (c *Core) chartMark(t target, g *Chart, l *chartLayout, r Rect, first, end, n int, kind MarkKind, free float32) float32 {
	x, last := l.x(g.Marks[first].T), l.x(g.Marks[end].T)
	if kind == MarkAct || kind == MarkPoint {
		c.BeginPath()
		c.To(x, l.plot.Y)
		c.To(x, l.plot.Bottom())
		c.Line(1, c.Pal.Edge, Dash{On: 2, Off: 3}, false)
	}
	c.markShape(kind, x, r.Y+r.H-7)
	p := c.in.Pointer
	pointed := t.over && !c.fromTouch && p.X >= x-7 && p.X <= max(last, x)+7 && r.Has(Vec{r.X, p.Y})
	if pointed {
		c.tipRect = Rect{x - 7, r.Y, last - x + 14, r.H}
		c.tipText, c.tipMore = c.markWords(g, g.Marks[first].Row, first, end, n)
	}
	return c.markLabel(g, l, r, x, first, end, n, free)
}

// markLabel writes the name of a mark behind it, and how many more it stands for. Words that would run into each other, or
// into the next mark, give way; pointing says them.
func (c *Core) markLabel(g *Chart, l *chartLayout, r Rect, x float32, first, end, n int, free float32) float32 {
	small := Style{Size: l.size - 2}
	at, base, most := max(x+7, l.x(g.Marks[end].T)+2), r.Y+small.Size-1, min(l.nextMark(g, end), l.plot.Right())
	more, mw := "", float32(0)
	if n > 1 {
		more = c.moreWords(n - 1)
		mw = small.Width(more)
	}
	label := g.Marks[first].Label
	w := small.Width(label)
	if w > 0 && mw > 0 {
		w += 4
	}
	if at < free || at+w+mw+4 > most {
		label, w = "", 0
	}
	if at < free || at+w+mw+2 > most || w+mw == 0 {
		return max(free, x+7)
	}
	c.TextAt(at, base, label, small)
	c.TextAt(at+w, base, more, Style{Size: small.Size, Weight: SemiBold, Tab: true})
	return at + w + mw + 8
}

// moreWords say how many more a mark stands for.
func (c *Core) moreWords(n int) string {
	s := &c.chart
	for len(s.more) <= n {
		s.more = append(s.more, strings.Replace(c.Words.More, "%d", strconv.Itoa(len(s.more)), 1))
	}
	return s.more[n]
}

// nextMark is where the mark after one stands in its row.
func (l *chartLayout) nextMark(g *Chart, end int) float32 {
	for i := end + 1; i < len(g.Marks); i++ {
		if g.Marks[i].Row == g.Marks[end].Row {
			return l.x(g.Marks[i].T) - 5
		}
	}
	return l.plot.Right()
}

func (c *Core) markShape(kind MarkKind, x, y float32) {
	switch kind {
	case MarkAct:
		c.BeginPath()
		c.To(x-4, y-3)
		c.To(x+4, y-3)
		c.To(x, y+4)
		c.Polygon(c.Pal.Edge)
	case MarkSaid:
		c.Circle(R(x-4, y-4, 8, 8), 1.6, c.Pal.Edge)
	case MarkAlarm:
		c.BeginPath()
		c.To(x, y-5)
		c.To(x+5, y)
		c.To(x, y+5)
		c.To(x-5, y)
		c.Polygon(c.Pal.Ink)
	default:
		c.Frame(R(x-4.5, y-4.5, 9, 9), 1, 2, c.Pal.Ink)
	}
}

// markWords are the words of a mark that stands for n, made anew only when another is pointed at.
func (c *Core) markWords(g *Chart, row, first, end, n int) (head, rest string) {
	s := &c.chart
	key := tipKey{g.ID, row, first, n, len(g.Marks)}
	if key == s.named {
		return s.tipHead, s.tipRest
	}
	s.named, s.tipHead, s.tipRest = key, "", ""
	shown := 0
	for i := first; i <= end; i++ {
		m := &g.Marks[i]
		if row != allRows && m.Row != row {
			continue
		}
		text := m.Words
		if text == "" {
			text = m.Label
		}
		line := c.Clock(m.T) + "  " + text
		switch {
		case shown == 0:
			s.tipHead = line
		case shown == tipsShown:
			s.tipRest += "\n+ " + strconv.Itoa(n-shown)
			return s.tipHead, s.tipRest
		case s.tipRest != "":
			s.tipRest += "\n" + line
		default:
			s.tipRest = line
		}
		shown++
	}
	return s.tipHead, s.tipRest
}
