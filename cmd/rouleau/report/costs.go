package report

import (
	"slices"
	"strings"
	"sync"
	"unicode/utf8"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/chart"
	"rouleau/cmd/rouleau/page"
	"rouleau/scoring/debrief"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// This file holds what each decision cost: those that would have gained, ranked, and the costliest with both courses.

// mostCharted is how many have a chart and a letter on the timeline.
const mostCharted = debrief.MostMarked

// letter names a decision by its rank: A to Z, then AA, AB and so on.
func letter(i int) string {
	if i < 26 {
		return string(rune('A' + i))
	}
	return letter(i/26-1) + letter(i%26)
}

// costs are the decisions that would have gained, ranked, and the first of them with their courses; and the rest. Like the
// verdict they are shut until one has marked for oneself.
func (r *Report) costs() []page.Block {
	rest := r.rest()
	gained := r.Told.Of(debrief.Gained)
	if len(gained) == 0 {
		rest.ID, rest.Head = "costs", words.Say("report.costs_head")
		rest.Text = append([]string{words.Say("report.line_nothing")}, rest.Text...)
		return []page.Block{rest}
	}
	b := page.Block{ID: "costs", Head: words.Say("report.costs_head"), Folded: r.shut()}
	b.Text = []string{strings.TrimSpace(words.Say("report.costs_lead") + " " + r.Told.Scaled)}
	b.Table = &page.Table{Head: []string{"", words.Say("report.decision"), words.Say("report.time"), words.Say("report.would_change"), words.Say("report.points"), words.Say("report.how_sure")},
		Right: []bool{2: true, 4: true, 5: false}, Share: []int{4, 36, 7, 30, 7, 16}}
	for i := range gained {
		l, name := &gained[i], letter(i)
		if i < mostCharted {
			name = page.Ref("d"+name, name)
		}
		b.Table.Add(name, l.Cost.Decision.Title, at(l.Cost.Decision.Tick), r.changed(l), l.Points, sure(l))
	}
	b.Beside = &page.Beside{Across: 2, Share: []int{45, 55}, Blocks: r.charted(gained)}
	if rest.Table == nil && len(rest.List) == 0 {
		return []page.Block{b}
	}
	return []page.Block{b, rest}
}

// changed is what a decision put right would have changed; where that is points alone, on which criteria, those of most weight in
// words.
func (r *Report) changed(l *debrief.Line) string {
	if len(l.Changes) > 0 {
		return strings.Join(l.Changes, ", ")
	}
	if len(l.Bears) == 0 && l.Points != debrief.PointsText(0) {
		return words.Say("report.trifles")
	}
	var parts []string
	kept := l.Bears[:min(mostLeading, len(l.Bears))]
	for i := range kept {
		if i > 0 && utf8.RuneCountInString(r.grade().Criteria[kept[0].Criterion].Meaning) > briefly {
			break
		}
		parts = append(parts, r.borneLine(&kept[i]))
	}
	if n := len(l.Bears) + l.More - len(parts); n > 0 {
		parts = append(parts, less(n))
	}
	return strings.Join(parts, "; ")
}

// How much is said of criteria where there is little room: so many, and one alone if it takes more letters.
const (
	mostLeading = 2
	briefly     = 70
)

// less says that so many more criteria change by less than those before, "" for none.
func less(n int) string {
	if n == 0 {
		return ""
	}
	return count(n, "report.less_one", "report.less")
}

// sure is how sure a cost is; one that is not catches the eye.
func sure(l *debrief.Line) string {
	if l.Unsure {
		return page.Sign(page.Slight, words.Say("report.unsure_word")) + " " + l.Sure
	}
	return l.Sure
}

// charted are the costliest decisions, each in words and then with its course beside the person's own.
func (r *Report) charted(gained []debrief.Line) (blocks []page.Block) {
	gained = gained[:min(mostCharted, len(gained))]
	runs := make([]*play.Run, len(gained))
	var group sync.WaitGroup
	for i := range gained {
		group.Go(func() { runs[i] = r.Debrief.Course(gained[i].Cost.Place) })
	}
	group.Wait()
	own := &chart.Course{Name: words.Say("report.own"), Run: r.Debrief.Record.Run}
	explained := false
	for i := range gained {
		l, d := &gained[i], &gained[i].Cost.Decision
		ch := chart.Beside(d.Title, own, &chart.Course{Name: words.Say("report.right"), Run: runs[i]}, sim.Seconds(d.Tick))
		text := page.Block{ID: "d" + letter(i), Text: []string{page.Strong(words.Say("report.lettered", letter(i), d.Title)), told(l)}, List: r.borneLines(l.Bears, less(l.More))}
		drawn := page.Block{Drawing: &page.Drawing{List: ch.List(), Says: ch.Title}}
		switch {
		case !ch.Differ():
			drawn = page.Block{Text: []string{words.Say("report.alike")}}
		case !explained:
			drawn.Caption, explained = words.Say("report.charted_caption", ch.Caption), true
		}
		blocks = append(blocks, text, drawn)
	}
	return blocks
}

// told is what a decision put right would have changed, in a sentence, with how sure that is.
func told(l *debrief.Line) string {
	parts := slices.Concat(l.Changes, []string{words.Say("told.points", l.Points)})
	text := words.Say("report.sentence", at(l.Cost.Decision.Tick), strings.Join(parts, ", ")) + "."
	if l.Sure != "" {
		text += " " + words.Say("report.how_sure_here", sure(l))
	}
	return text
}
