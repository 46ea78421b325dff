package report

import (
	"cmp"
	"slices"
	"strings"
	"sync"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/chart"
	"rouleau/cmd/rouleau/page"
	"rouleau/scoring/debrief"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// This file holds what each decision cost: those that would have gained, ranked, and the costliest with both courses.

// How many are told of. Lists that go on are not read.
const (
	mostCharted = 5
	mostRanked  = 15
	mostBorne   = 4 // criteria of one decision
)

// letter names a decision by its rank.
func letter(i int) string { return string(rune('A' + i)) }

// costs are the decisions that would have gained, ranked, and the first of them with their courses; and the rest. Like the
// verdict they are shut until one has marked for oneself.
func (r *Report) costs() []page.Block {
	rest := r.rest()
	gained := r.gained()
	if len(gained) == 0 {
		rest.ID, rest.Head, rest.Sheet = "costs", words.Say("report.costs_head"), true
		rest.Text = append([]string{words.Say("report.line_nothing")}, rest.Text...)
		return []page.Block{rest}
	}
	b := page.Block{ID: "costs", Head: words.Say("report.costs_head"), Sheet: true, Folded: r.shut()}
	b.Text = []string{words.Say("report.costs_lead")}
	b.Table = &page.Table{Head: []string{"", words.Say("report.decision"), words.Say("report.time"), words.Say("report.would_change"), words.Say("report.points"), words.Say("report.how_sure")},
		Right: []bool{2: true, 4: true, 5: false}, Share: []int{3, 37, 7, 29, 7, 17}}
	kept, more := cut(gained, mostRanked)
	for i, c := range kept {
		name := letter(i)
		if i < mostCharted {
			name = page.Ref("d"+name, name)
		}
		b.Table.Rows = append(b.Table.Rows, page.Row{Cells: []page.Cell{{Text: name}, {Text: c.Decision.Title}, {Text: at(c.Decision.Tick)}, {Text: r.changed(c)}, {Text: gain(c.Points)}, {Text: sure(c)}}})
	}
	if more != "" {
		b.Table.Rows = append(b.Table.Rows, page.Row{Cells: []page.Cell{{}, {Text: more}, {}, {}, {}, {}}})
	}
	b.Beside = &page.Beside{Across: 2, Share: []int{45, 55}, Blocks: r.charted(gained)}
	if rest.Table == nil && len(rest.List) == 0 {
		return []page.Block{b}
	}
	return []page.Block{b, rest}
}

// changed is what a decision put right would have changed; where that is points alone, of which criteria.
func (r *Report) changed(c *debrief.Cost) string {
	if changes := r.changes(c); len(changes) > 0 {
		return strings.Join(changes, ", ")
	}
	var signs []string
	for _, k := range r.borne(c) {
		signs = append(signs, page.Ref(criterionSign(k.i), criterionSign(k.i)))
	}
	if len(signs) == 0 {
		return ""
	}
	kept, more := cut(signs, mostBorne)
	return words.Say("report.points_of", strings.Join(kept, ", ")) + strings.TrimRight(" "+more, " ")
}

// sure is how sure a cost is; one that is not catches the eye.
func sure(c *debrief.Cost) string {
	if c.Spread.Unsure(c.Points) {
		return page.Sign(page.Slight, words.Say("report.unsure_word")) + " " + spread(c)
	}
	return spread(c)
}

// charted are the costliest decisions, each in words and then with its course beside the person's own.
func (r *Report) charted(gained []*debrief.Cost) (blocks []page.Block) {
	gained = gained[:min(mostCharted, len(gained))]
	runs := make([]*play.Run, len(gained))
	var group sync.WaitGroup
	for i, c := range gained {
		group.Go(func() { runs[i] = r.Debrief.Course(r.place(c)) })
	}
	group.Wait()
	own := &chart.Course{Name: words.Say("report.own"), Run: r.Debrief.Record.Run}
	explained := false
	for i, c := range gained {
		ch := chart.Beside(c.Decision.Title, own, &chart.Course{Name: words.Say("report.right"), Run: runs[i]}, sim.Seconds(c.Decision.Tick))
		told := page.Block{ID: "d" + letter(i), Text: []string{page.Strong(words.Say("report.lettered", letter(i), c.Decision.Title)), r.told(c)}, List: r.borneLines(c)}
		drawn := page.Block{Drawing: &page.Drawing{List: ch.List(), Says: ch.Title}}
		switch {
		case alike(ch, &r.Debrief.Own, &c.With):
			drawn = page.Block{Text: []string{words.Say("report.alike")}}
		case !explained:
			drawn.Caption, explained = words.Say("report.charted_caption", ch.Caption), true
		}
		blocks = append(blocks, told, drawn)
	}
	return blocks
}

// place is where a decision stands among those found; a cost has been put in another order since.
func (r *Report) place(c *debrief.Cost) int {
	return slices.IndexFunc(r.Debrief.Decisions, func(d debrief.Decision) bool {
		return d.Aspect == c.Decision.Aspect && d.Tick == c.Decision.Tick && d.Done == c.Decision.Done && d.Title == c.Decision.Title
	})
}

// told is what a decision put right would have changed, in a sentence, with how sure that is.
func (r *Report) told(c *debrief.Cost) string {
	parts := append(r.changes(c), words.Say("changes.points", gain(c.Points)))
	text := words.Say("report.sentence", at(c.Decision.Tick), strings.Join(parts, ", ")) + "."
	if c.Spread.Drawn > 0 {
		text += " " + words.Say("report.how_sure_here", sure(c))
	}
	return text
}

// borne is a criterion that a decision put right would have brought or cost points.
type borne struct {
	i int
	d float64
}

// borne are all of them, the most first.
func (r *Report) borne(c *debrief.Cost) (all []borne) {
	own := r.grade().Criteria
	for i := range own {
		if d := c.With.Grade.Criteria[i].Points - own[i].Points; d > slightest || d < -slightest {
			all = append(all, borne{i, d})
		}
	}
	slices.SortStableFunc(all, func(a, b borne) int { return cmp.Compare(max(b.d, -b.d), max(a.d, -a.d)) })
	return all
}

func (r *Report) borneLines(c *debrief.Cost) (lines []string) {
	kept, more := cut(r.borne(c), mostBorne)
	for _, k := range kept {
		lines = append(lines, words.Say("report.borne", page.Ref(criterionSign(k.i), criterionSign(k.i)), r.grade().Criteria[k.i].Meaning, gain(k.d)))
	}
	if more != "" {
		lines = append(lines, more)
	}
	return lines
}
