package group

import (
	"slices"
	"strconv"
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/page"
	"rouleau/scoring/debrief"
)

// This file makes the tables of the page.

// How much of the kinds is shown: the rest stands in the CSV.
const (
	mostKinds  = 15 // in the table of a section
	mostBars   = 10
	mostFollow = 6 // followed over time
)

// table is a table whose first column names and whose others hold figures.
func table(heads ...string) *page.Table {
	t := &page.Table{Named: true, Head: heads}
	for i := range heads {
		t.Right = append(t.Right, i > 0)
	}
	return t
}

func cell(text string) page.Cell { return page.Cell{Text: text} }

func count(n int) page.Cell { return cell(strconv.Itoa(n)) }

// share is how many of how many, tinted the more they are.
func share(n, of int) page.Cell {
	return page.Cell{Text: words.Say("group.of", n, of), Tint: float64(n) / float64(of)}
}

// points is a figure in points.
func points(v float64) string {
	text := words.Say("group.points_figure", max(v, -v))
	if v < 0 && text != words.Say("group.points_figure", 0.0) {
		return "\u2212" + text // a minus, which is as wide as a figure
	}
	return text
}

// middle is the middle of points over their middle half.
func middle(s summary) page.Cell {
	return page.Cell{Text: points(s.middle), Small: words.Say("group.half", s.low, s.high)}
}

// overview names all sections, those without figures too.
func (g *Group) overview() *page.Table {
	t := table(words.Say("group.case"), words.Say("group.mode"), words.Say("group.attempts"), words.Say("group.people"), words.Say("group.passed"), words.Say("group.points_middle"))
	t.Right[1] = false
	for _, s := range g.sections {
		name := page.Cell{Text: s.title, Small: s.name()}
		if s.figures == nil {
			none := cell(words.Say("group.none"))
			mode := page.Cell{Text: s.modeName(), Small: words.Say("group.few_people", LeastPeople)}
			t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{name, mode, none, none, none, none}})
			continue
		}
		name.Text = page.Ref(s.anchor(), s.title)
		all := &s.figures.all
		passed := cell(words.Say("group.of", all.passed, all.attempts))
		if s.lesson {
			passed = cell(words.Say("group.none"))
		}
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{name, cell(s.modeName()), count(all.attempts), count(all.people), passed, middle(all.points)}})
	}
	return t
}

// kinds are the chart and the table of what cost most.
func (g *Group) kinds(s *section) []page.Block {
	f := s.figures
	head := words.Say("group.kinds_head")
	var after []string
	switch {
	case f.unnamed == 1:
		after = append(after, words.Say("group.kinds_unnamed_one", LeastPeople))
	case f.unnamed > 1:
		after = append(after, words.Say("group.kinds_unnamed", f.unnamed, LeastPeople))
	}
	switch {
	case len(f.kinds) == 0 && g.wishes.Small:
		return []page.Block{{Text: []string{under(head, words.Say("group.no_kinds_small"))}}}
	case len(f.kinds) == 0:
		return []page.Block{{Text: []string{under(head, words.Say("group.no_kinds", LeastPeople))}, List: after}}
	}
	if more := len(f.kinds) - mostKinds; more > 0 {
		after = append(after, words.Say("group.kinds_more", more))
	}
	note := words.Say("group.kinds_note")
	if slices.ContainsFunc(f.kinds, func(k kindFigures) bool { return min(k.points.mean, k.points.middle) < 0 }) {
		note += " " + words.Say("group.kinds_below")
	}
	chart := page.Block{Text: []string{under(head, note)}, Drawing: bars(f), Caption: words.Say("group.bars_caption", f.all.attempts)}
	return []page.Block{chart, {Table: g.kindTable(f), List: after}}
}

func (g *Group) kindTable(f *figures) *page.Table {
	t := table(words.Say("group.decision"), words.Say("group.mattered_attempts"), words.Say("group.mattered_people"), words.Say("group.cost_mean"),
		words.Say("group.cost_middle"), words.Say("group.cost_each"), words.Say("group.critical"), words.Say("group.example"))
	t.Right[7] = false
	t.Share = []int{23, 10, 8, 8, 8, 9, 8, 26}
	for i := range f.kinds[:min(mostKinds, len(f.kinds))] {
		k := &f.kinds[i]
		example := cell(words.Say("group.none"))
		if k.example.title != "" {
			example = page.Cell{Text: k.example.title, Small: words.Say("group.example_of", g.people[k.example.person], k.example.number)}
		}
		critical := cell(words.Say("group.none"))
		switch {
		case k.critical.hidden:
			critical = cell(words.Say("group.few_short"))
		case k.critical.attempts > 0:
			critical = cell(page.Sign(page.Grave, strconv.Itoa(k.critical.attempts)))
		}
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{cell(k.name()), share(k.attempts, f.all.attempts), cell(words.Say("group.of", k.people, f.all.people)),
			cell(points(k.points.mean)), cell(points(k.points.middle)), cell(points(k.each)), critical, example}})
	}
	return t
}

// byNumber is how it goes from attempt to attempt.
func (g *Group) byNumber(s *section) page.Block {
	f, axis := s.figures, words.Say("group.number_axis")
	t := g.partTable(s, f.numbers, axis, numberText)
	note := words.Say("group.numbers_note")
	if a := &f.again; a.people > 0 {
		note += " " + words.Say("group.again_note")
		t.Head, t.Right = append(t.Head, words.Say("group.again_column")), append(t.Right, true)
		add := func(row int, text string) { t.Rows[row].Cells = append(t.Rows[row].Cells, cell(text)) }
		add(0, people(a.people))
		add(1, words.Say("group.again_points", debrief.PointsText(a.change.middle)))
		row := 2
		if !s.lesson {
			add(row, "")
			row++
		}
		for i := range f.kinds[:min(mostFollow, len(f.kinds))] {
			add(row+i, words.Say("group.again_kind", a.first[i], a.last[i], a.people))
		}
	}
	return g.parted(s, f.numbers, under(words.Say("group.numbers_head"), note), t, axis, numberText)
}

// byMonth is how it goes from month to month.
func (g *Group) byMonth(s *section) page.Block {
	f, head, axis := s.figures, words.Say("group.months_head"), words.Say("group.month_axis")
	switch {
	case len(f.months) < 2 && g.wishes.Small:
		return page.Block{Text: []string{under(head, words.Say("group.one_month_small"))}}
	case len(f.months) < 2:
		return page.Block{Text: []string{under(head, words.Say("group.one_month", LeastPeople))}}
	}
	return g.parted(s, f.months, under(head, words.Say("group.months_note")), g.partTable(s, f.months, axis, monthText), axis, monthText)
}

// parted is a chart of points beside the table of the same parts, with which of them rest on few.
func (g *Group) parted(s *section, parts []part, note string, t *page.Table, axis string, text func(int) string) page.Block {
	var few []string
	for i := range parts {
		if parts[i].few() {
			few = append(few, parts[i].label(text))
		}
	}
	switch {
	case len(few) == len(parts):
		note += " " + words.Say("group.parts_impression_all", firmAttempts, firmPeople)
	case len(few) > 0:
		note += " " + words.Say("group.parts_impression", firmAttempts, firmPeople, strings.Join(few, ", "))
	}
	caption := words.Say("group.points_caption", s.passMark)
	if s.lesson {
		caption = words.Say("group.points_caption_lesson")
	}
	t.Share = []int{34}
	for range t.Head[1:] { // all alike, and not so wide that the names are squeezed or figures stand far apart
		t.Share = append(t.Share, max(66/(len(t.Head)-1), 1))
	}
	chart := page.Block{Text: []string{note}, Drawing: dots(s, parts, axis, text), Caption: caption}
	return page.Block{Beside: &page.Beside{Share: []int{34, 66}, Blocks: []page.Block{chart, {Table: t}}}}
}

func numberText(n int) string { return strconv.Itoa(n) }

// label is what a part is called.
func (p *part) label(text func(int) string) string {
	if p.from == p.to {
		return text(p.from)
	}
	return words.Say("group.range", text(p.from), text(p.to))
}

// partTable sets parts side by side: a row for attempts, points, passing, and each of the costliest kinds.
func (g *Group) partTable(s *section, parts []part, axis string, text func(int) string) *page.Table {
	heads := []string{axis}
	for i := range parts {
		heads = append(heads, parts[i].label(text))
	}
	t := table(heads...)
	row := func(name string, of func(p *part) page.Cell) {
		r := page.Row{Cells: []page.Cell{cell(name)}}
		for i := range parts {
			r.Cells = append(r.Cells, of(&parts[i]))
		}
		t.Rows = append(t.Rows, r)
	}
	row(words.Say("group.attempts"), func(p *part) page.Cell { return page.Cell{Text: strconv.Itoa(p.attempts), Small: people(p.people)} })
	row(words.Say("group.points_middle"), func(p *part) page.Cell { return middle(p.points) })
	if !s.lesson {
		row(words.Say("group.passed"), func(p *part) page.Cell { return cell(words.Say("group.of", p.passed, p.attempts)) })
	}
	for i := range s.figures.kinds[:min(mostFollow, len(s.figures.kinds))] {
		row(s.figures.kinds[i].name(), func(p *part) page.Cell { return share(p.occurred[i], p.attempts) })
	}
	return t
}
