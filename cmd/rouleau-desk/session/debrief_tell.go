// What a debrief tells, put into the words of the page: each decision with what it cost and how sure that is, both runs in
// figures, and the questions for the talk.

package session

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/debrief"
	"rouleau/sim"
)

// teller is a debrief that has been played, on its way to the page.
type teller struct {
	sc    *scenarios.Scenario
	d     *debrief.Debrief
	costs []debrief.Cost // in order
	total float64        // points that the page shows as the grade
}

// slightest is the difference in points below which none is told.
const slightest = 0.05

func (t *teller) tell() *bench.Told {
	told := &bench.Told{Heed: t.heed(), Good: coursesOf(t.d.Record.Run, t.d.Good.Run, words.Say("report.good")), Figures: t.figures()}
	told.Costs = append(t.decisions(), t.left()...)
	for _, q := range debrief.Questions(t.d, t.costs) {
		told.Questions = append(told.Questions, bench.TalkQuestion{Stage: q.Stage.String(), Text: q.Text, At: momentOf(q.Tick)})
	}
	return told
}

// heed is what whoever reads on has to know first.
func (t *teller) heed() (all []string) {
	run, own := t.d.Record.Run, t.d.Own.Grade.Points
	if !run.State.Ended {
		all = append(all, words.Say("report.unfinished", clockWords(run.State.Tick)), words.Say("report.good_unfinished"))
	}
	if math.Abs(own-t.total) > slightest {
		all = append(all, words.Say("desk_debrief.other_grade", points(t.total), points(own)))
	}
	return all
}

// decisions are all of them: those that would have gained, those that would have made things worse with the worst first, and in
// order of time those that would have changed nothing worth telling.
func (t *teller) decisions() []bench.Cost {
	var groups [bench.CostLeft][]bench.Cost
	for i := range t.costs {
		k := t.cost(&t.costs[i])
		groups[k.Group] = append(groups[k.Group], k)
	}
	slices.Reverse(groups[bench.CostBetter])
	slices.SortStableFunc(groups[bench.CostSame], func(a, b bench.Cost) int { return cmp.Compare(a.At.S, b.At.S) })
	return slices.Concat(groups[:]...)
}

func (t *teller) cost(c *debrief.Cost) bench.Cost {
	k := bench.Cost{Group: bench.CostSame, Place: t.place(c), Points: gained(c.Points), Title: sentence(c.Decision.Title), Bears: t.bears(c), At: momentOf(c.Decision.Tick)}
	switch {
	case c.Mattered() && c.Gain > 0:
		k.Group = bench.CostGained
	case c.Mattered():
		k.Group = bench.CostBetter
	}
	k.Changes = strings.Join(t.changes(c), ", ")
	if c.Spread.Drawn > 0 {
		k.Sure, k.Unsure = spread(c.Spread), c.Spread.Unsure(c.Points)
	}
	return k
}

// spread says how far points differ from drawing to drawing, the person's own among them.
func spread(s debrief.Spread) string {
	least, most := gained(s.Least), gained(s.Most)
	if least == most {
		return words.Say("desk_debrief.range_one", least, s.Drawn+1)
	}
	return words.Say("desk_debrief.range", least, most, s.Drawn+1)
}

// place is where a decision stands among those that were found: its cost has been put in another order since.
func (t *teller) place(c *debrief.Cost) int {
	return slices.IndexFunc(t.d.Decisions, func(d debrief.Decision) bool {
		return d.Aspect == c.Decision.Aspect && d.Tick == c.Decision.Tick && d.Done == c.Decision.Done && d.Title == c.Decision.Title
	})
}

// changes is what would have changed beside points. Nobody passes or fails a lesson.
func (t *teller) changes(c *debrief.Cost) []string {
	return slices.DeleteFunc(debrief.Changes(&t.d.Own, &c.With), func(text string) bool {
		return text == words.Say("changes.points", debrief.PointsText(c.Points)) ||
			t.sc.Lesson() && (text == words.Say("changes.passed") || text == words.Say("changes.not_passed"))
	})
}

// mostBorne are the criteria that are told of one decision.
const mostBorne = 3

// bears says on which criteria a decision bears, those that weigh most first.
func (t *teller) bears(c *debrief.Cost) string {
	own, whole := t.d.Own.Grade.Criteria, t.whole()
	change := func(i int) float64 { return whole * (c.With.Grade.Criteria[i].Points - own[i].Points) }
	var all []int
	for i := range own {
		if math.Abs(change(i)) > slightest {
			all = append(all, i)
		}
	}
	slices.SortStableFunc(all, func(a, b int) int { return cmp.Compare(math.Abs(change(b)), math.Abs(change(a))) })
	var parts []string
	for _, i := range all[:min(mostBorne, len(all))] {
		parts = append(parts, words.Say("desk_debrief.borne", gained(change(i)), short(own[i].Meaning)))
	}
	if more := len(all) - mostBorne; more > 0 {
		parts = append(parts, words.Say("report.line_more", more))
	}
	return strings.Join(parts, "; ")
}

// whole is how many points of 100 a point of a criterion is: of a lesson that leaves parts out it is more than one.
func (t *teller) whole() float64 {
	of := 0.0
	for i := range t.d.Own.Grade.Parts {
		of += t.d.Own.Grade.Parts[i].Of
	}
	if of <= 0 || of >= 100 {
		return 1
	}
	return 100 / of
}

// short is a meaning without what stands behind its first comma, which tells how it is measured.
func short(meaning string) string {
	head, _, _ := strings.Cut(meaning, ",")
	return head
}

// left are the criteria whose lost points no single decision explains.
func (t *teller) left() (rows []bench.Cost) {
	for _, c := range t.d.Unexplained(t.costs) {
		measured := words.Say("result.nothing_measured")
		if c.Measured {
			measured = words.Say("result.measured", scoring.ShowUnit(c.Value, c.Unit))
		}
		rows = append(rows, bench.Cost{Group: bench.CostLeft, Place: -1, Points: gained(t.whole() * (c.Points - c.Of)), Title: sentence(c.Meaning), Changes: measured,
			Bears: words.Say("result.target", c.Target), Sure: c.Reason, At: momentOf(c.Tick)})
	}
	return rows
}

// figures sets both runs side by side.
func (t *teller) figures() (rows []bench.Figure) {
	add := func(key string, of func(o *debrief.Outcome) string) {
		rows = append(rows, bench.Figure{Name: words.Say(key), Own: of(&t.d.Own), Good: of(&t.d.GoodOwn)})
	}
	amount := func(key string, of func(o *debrief.Outcome) float64) {
		add(key, func(o *debrief.Outcome) string { return scoring.ShowUnit(math.Round(of(o)), "mL") })
	}
	hb := func(v float64) string { return words.Say("report.hb", v) }
	add("report.figure_points", func(o *debrief.Outcome) string { return points(o.Grade.Points) })
	if !t.sc.Lesson() {
		add("report.figure_passed", func(o *debrief.Outcome) string {
			if o.Grade.Passed {
				return words.Say("target.yes")
			}
			return words.Say("target.no")
		})
	}
	add("report.figure_errors", func(o *debrief.Outcome) string { return strconv.Itoa(len(o.Critical)) })
	add("report.figure_bowls", func(o *debrief.Outcome) string { return strconv.Itoa(o.Bowls) })
	amount("report.figure_product", func(o *debrief.Outcome) float64 { return o.ProductML })
	amount("report.figure_given", func(o *debrief.Outcome) float64 { return o.GivenML })
	amount("report.figure_cells", func(o *debrief.Outcome) float64 { return o.GivenCells })
	add("report.figure_recovery", func(o *debrief.Outcome) string { return words.Say("report.percent", math.Round(100*o.Recovery)) })
	amount("report.figure_clot", func(o *debrief.Outcome) float64 { return o.MostClotML })
	add("report.figure_lowest_hb", func(o *debrief.Outcome) string { return hb(o.LowestHbGDL) })
	add("report.figure_end_hb", func(o *debrief.Outcome) string { return hb(o.EndHbGDL) })
	add("report.figure_donor", func(o *debrief.Outcome) string { return strconv.Itoa(o.DonorUnits) })
	add("report.figure_end", func(o *debrief.Outcome) string { return clockWords(o.EndTick - o.EndTick%sim.TicksPerSecond) })
	return rows
}

// points is a number of points, rounded down so that nothing looks better than it is.
func points(p float64) string { return scoring.Show(math.Floor(10*p+1e-6) / 10) }

// gained is a difference in points with its sign.
func gained(p float64) string {
	if math.Abs(p) < slightest {
		return "0"
	}
	return debrief.PointsText(p)
}

// sentence begins with a large letter.
func sentence(text string) string {
	r, n := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(r)) + text[n:]
}
