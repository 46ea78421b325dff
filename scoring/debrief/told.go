package debrief

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"rouleau/assets/words"
	"rouleau/scoring"
)

// What a debrief tells, decided in one place: which decision stands in which group and in which order, what is said of each, and
// the figures of both runs. Page, terminal and window lay it out and decide nothing.

// Group is what came of putting a decision right.
type Group uint8

// The groups, in the order in which they are told.
const (
	Gained  Group = iota // it would have been better
	Better               // it would have been worse: what was done instead was the better way
	Unclear              // nobody can tell: better in one way and worse in another, or the later acts no longer fit
	Same                 // nothing worth telling
)

// How many are told of [A].
const (
	MostMarked = 5 // decisions that have a sign on the timeline
	mostBorne  = 4 // criteria of one decision
)

// Told is what a debrief tells.
type Told struct {
	Lines      []Line  // by group: Gained and Better those of most weight first, the others in order of time
	Left       []Borne // criteria whose lost points no single decision explains, in the order of the grade
	LeftPoints string  // of all of them together
	Scaled     string  // what a point of a part is counted as, "" where it is counted as one
	Figures    []Figure
	Questions  []Question
}

// Line is what is told of one decision.
type Line struct {
	Cost    *Cost
	Group   Group
	Points  string   // more than the person's own, with their sign
	Changes []string // what would have changed beside points, the weightiest first
	Bears   []Borne  // on which criteria, the most first
	More    int      // criteria beyond those
	Sure    string   // from where to where the points go in drawings of the case, "" where it was played in one alone
	Unsure  bool     // the drawings do not agree
}

// Borne is a criterion with points won or lost on it, counted like the points of the whole case.
type Borne struct {
	Criterion int // place among those of the grade
	Points    string
}

// Figure is one figure of both runs in words.
type Figure struct{ Name, Own, Good string }

// Tell says what a debrief tells. The costs are in order; the lines point to them. Criteria of the person's own grade that lost
// points and have no moment get that of a decision that bears on them.
func Tell(d *Debrief, costs []Cost) *Told {
	d.placeCriteria(costs)
	t := &Told{Figures: d.figures(), Questions: Questions(d, costs), Scaled: d.scaled()}
	for i := range costs {
		t.Lines = append(t.Lines, d.line(&costs[i]))
	}
	t.agree()
	slices.SortStableFunc(t.Lines, func(a, b Line) int {
		switch {
		case a.Group != b.Group:
			return cmp.Compare(a.Group, b.Group)
		case a.Group == Better:
			return cmp.Compare(a.Cost.Gain, b.Cost.Gain)
		case a.Group == Unclear || a.Group == Same:
			return cmp.Compare(a.Cost.Decision.Tick, b.Cost.Decision.Tick)
		}
		return 0
	})
	t.Left, t.LeftPoints = d.left(costs)
	return t
}

// Of are the lines of a group.
func (t *Told) Of(g Group) []Line {
	from, _ := slices.BinarySearchFunc(t.Lines, g, func(l Line, g Group) int { return cmp.Compare(l.Group, g) })
	to, _ := slices.BinarySearchFunc(t.Lines, g+1, func(l Line, g Group) int { return cmp.Compare(l.Group, g) })
	return t.Lines[from:to]
}

func (d *Debrief) line(c *Cost) Line {
	l := Line{Cost: c, Group: Same, Points: PointsText(c.Points), Changes: d.changes(&c.With)}
	switch changes := len(l.Changes) > 0; {
	case c.Mattered() && (changes || !Slight(c.Points)):
		l.Group = d.group(c)
	case changes && !Slight(c.Points): // what points gained the patient or the product lost
		l.Group = Unclear
	}
	l.Bears, l.More = d.bears(c)
	if c.Spread.Drawn > 0 {
		l.Sure, l.Unsure = c.Spread.String(), c.Spread.Unsure(c.Points)
	}
	return l
}

// group says whether a decision that matters was a good one.
func (d *Debrief) group(c *Cost) Group {
	switch {
	case d.misfits(&c.With):
		return Unclear
	case c.Gain > 0 && (c.Points >= -slightest || len(c.With.Critical) < len(d.Own.Critical)):
		return Gained
	case c.Gain < 0 && c.Points <= slightest:
		return Better
	}
	return Unclear
}

// misfits says whether the person's later acts no longer fit the course: it came to something that points never make up for and that
// the person had kept clear of, or much of what was washed stayed lying.
func (d *Debrief) misfits(with *Outcome) bool {
	for _, name := range with.Critical {
		if !slices.Contains(d.Own.Critical, name) {
			return true
		}
	}
	return with.ProductML >= d.Own.ProductML && with.GivenML < d.Own.GivenML/2
}

// agree leaves out the parts of what is told as a whole, unless they gained something of their own, and says of no kind of decision
// that it was a mistake at one time and the better way at another.
func (t *Told) agree() {
	gained := map[string]bool{}
	whole := map[string]bool{}
	for i := range t.Lines {
		d, group := &t.Lines[i].Cost.Decision, t.Lines[i].Group
		gained[d.Aspect] = gained[d.Aspect] || group == Gained
		whole[d.Aspect] = whole[d.Aspect] || !d.Part && group <= Better
	}
	t.Lines = slices.DeleteFunc(t.Lines, func(l Line) bool {
		return l.Group != Gained && l.Cost.Decision.Part && whole[l.Cost.Decision.Aspect]
	})
	for i := range t.Lines {
		if l := &t.Lines[i]; l.Group == Better && gained[l.Cost.Decision.Aspect] {
			l.Group = Unclear
		}
	}
}

// bears says on which criteria a decision bears, those that weigh most first, and on how many more.
func (d *Debrief) bears(c *Cost) (all []Borne, more int) {
	own, whole := d.Own.Grade.Criteria, d.whole()
	change := func(i int) float64 { return whole * (c.With.Grade.Criteria[i].Points - own[i].Points) }
	var at []int
	for i := range own {
		if !Slight(change(i)) {
			at = append(at, i)
		}
	}
	slices.SortStableFunc(at, func(a, b int) int { return cmp.Compare(size(change(b)), size(change(a))) })
	for _, i := range at[:min(mostBorne, len(at))] {
		all = append(all, Borne{i, PointsText(change(i))})
	}
	return all, len(at) - len(all)
}

// left are the criteria whose lost points none of the decisions, put right alone, would have brought back even in part.
func (d *Debrief) left(costs []Cost) (all []Borne, sum string) {
	own, whole, lost := d.Own.Grade.Criteria, d.whole(), 0.0
	for i := range own {
		short := own[i].Of - own[i].Points
		if short > slightest && !slices.ContainsFunc(costs, func(c Cost) bool { return c.With.Grade.Criteria[i].Points > own[i].Points+slightest }) {
			all = append(all, Borne{i, PointsText(-whole * short)})
			lost += float64(whole * short)
		}
	}
	return all, Score(lost)
}

// whole is how many points of the case a point of a criterion is: more than one where the case leaves parts out.
func (d *Debrief) whole() float64 {
	if of := d.Own.Grade.Of(); of > 0 && of < 100 {
		return 100 / of
	}
	return 1
}

// scaled says so.
func (d *Debrief) scaled() string {
	if d.whole() == 1 {
		return ""
	}
	return words.Say("told.scaled", scoring.Show(d.Own.Grade.Of()), d.whole())
}

// figures sets both runs side by side.
func (d *Debrief) figures() (rows []Figure) {
	add := func(key string, of func(o *Outcome) string) {
		rows = append(rows, Figure{words.Say(key), of(&d.Own), of(&d.GoodOwn)})
	}
	amount := func(key string, parts float64, of func(o *Outcome) float64) {
		add(key, func(o *Outcome) string { return scoring.ShowUnit(math.Round(parts*of(o))/parts, "mL") })
	}
	add("told.figure_points", func(o *Outcome) string { return Score(o.Grade.Points) })
	if !d.Record.Scenario.Lesson() {
		add("told.figure_passed", func(o *Outcome) string {
			if o.Grade.Passed {
				return words.Say("target.yes")
			}
			return words.Say("target.no")
		})
	}
	add("told.figure_errors", func(o *Outcome) string { return strconv.Itoa(len(o.Critical)) })
	add("told.figure_bowls", func(o *Outcome) string { return strconv.Itoa(o.Bowls) })
	amount("told.figure_product", 1, func(o *Outcome) float64 { return o.ProductML })
	amount("told.figure_given", 1, func(o *Outcome) float64 { return o.GivenML })
	amount("told.figure_cells", 1, func(o *Outcome) float64 { return o.GivenCells })
	add("told.figure_recovery", func(o *Outcome) string { return words.Say("told.percent", math.Round(100*o.Recovery)) })
	amount("told.figure_clot", 10, func(o *Outcome) float64 { return o.MostClotML })
	add("told.figure_lowest_hb", func(o *Outcome) string { return words.Say("told.hb", o.LowestHbGDL) })
	add("told.figure_end_hb", func(o *Outcome) string { return words.Say("told.hb", o.EndHbGDL) })
	add("told.figure_donor", func(o *Outcome) string { return strconv.Itoa(o.DonorUnits) })
	add("told.figure_end", func(o *Outcome) string { return clock(o.EndTick) })
	return rows
}

// Regraded says whether a grade that was kept is another one than this program comes to.
func (o *Outcome) Regraded(points float64, passed bool) bool {
	return passed != o.Grade.Passed || !Slight(points-o.Grade.Points)
}

// Score is a number of points in words, rounded down so that nothing looks better than it is.
func Score(points float64) string { return scoring.Show(math.Floor(float64(10*points)+1e-6) / 10) }
