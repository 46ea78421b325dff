package debrief

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"rouleau/assets/words"
	"rouleau/scoring"
)

// lessonTold is a lesson that leaves parts out, in which decisions gained and lost.
func lessonTold(t testing.TB) (*Debrief, []Cost) {
	d, costs, _ := talked(t, "lesson-the-bowl", "hasty", 3)
	Rank(costs)
	return d, costs
}

// Every decision stands once at most, in its group and in the order of that group, and its place leads back to it. Only parts of
// what is told as a whole are left out.
func TestEveryCostIsToldOnce(t *testing.T) {
	d, costs := lessonTold(t)
	for i := range costs { // the worst, and some that change nothing, in an order of time that is not that of their weight
		costs[i].With.Critical, costs[i].Decision.Part = d.Own.Critical, false
		costs[i].Decision.Aspect = strconv.Itoa(i)
		switch i % 4 {
		case 1:
			costs[i].Gain, costs[i].Points = -1-float64(i%2), -1
		case 2:
			costs[i].Gain, costs[i].Points = 0, 0
		case 3:
			costs[i].Gain, costs[i].Points = -1, 1
		}
	}
	Rank(costs)
	told := Tell(d, costs)
	seen := map[int]bool{}
	for i, l := range told.Lines {
		if seen[l.Cost.Place] || d.Decisions[l.Cost.Place].Title != l.Cost.Decision.Title {
			t.Errorf("%q leads to place %d", l.Cost.Decision.Title, l.Cost.Place)
		}
		seen[l.Cost.Place] = true
		want := Same
		switch c := l.Cost; {
		case c.Gain > slightest && c.Points >= -slightest:
			want = Gained
		case c.Gain < -slightest && c.Points <= slightest:
			want = Better
		case c.Gain < -slightest || c.Gain > slightest:
			want = Unclear
		}
		if told := len(l.Changes) > 0 || l.Points != "0"; l.Group != want && (told || l.Group != Same) {
			t.Errorf("%q gains %g, %g points, and is told as %d", l.Cost.Decision.Title, l.Cost.Gain, l.Cost.Points, l.Group)
		}
		if i == 0 || told.Lines[i-1].Group > l.Group {
			continue
		}
		before := told.Lines[i-1].Cost
		if told.Lines[i-1].Group == l.Group && (l.Group == Gained && before.Gain < l.Cost.Gain || l.Group == Better && before.Gain > l.Cost.Gain || l.Group >= Unclear && before.Decision.Tick > l.Cost.Decision.Tick) {
			t.Errorf("%q stands behind %q", l.Cost.Decision.Title, before.Decision.Title)
		}
	}
	if len(seen) != len(d.Decisions) {
		t.Errorf("%d of %d are told", len(seen), len(d.Decisions))
	}
	all := 0
	for _, g := range []Group{Gained, Better, Unclear, Same} {
		lines := told.Of(g)
		all += len(lines)
		if len(lines) == 0 || slices.ContainsFunc(lines, func(l Line) bool { return l.Group != g }) {
			t.Errorf("group %d: %d lines", g, len(lines))
		}
	}
	if all != len(told.Lines) {
		t.Errorf("%d lines in the groups, %d in all", all, len(told.Lines))
	}
}

// No page says two things of one kind of decision, nor praises what came of acts that no longer fit.
func TestNothingIsSaidTwoWays(t *testing.T) {
	d, costs := lessonTold(t)
	if len(costs) < 4 {
		t.Fatal("too few decisions")
	}
	d.Own.Critical, d.Own.ProductML, d.Own.GivenML = nil, 500, 400
	for i := range costs {
		costs[i].With.Critical, costs[i].With.ProductML, costs[i].With.GivenML = nil, 500, 400
		costs[i].Gain, costs[i].Points, costs[i].Decision.Part, costs[i].Decision.Aspect = -2, -2, false, strconv.Itoa(i)
	}
	costs[0].Gain, costs[0].Points = 3, 3 // a whole and its part
	costs[1].Decision.Aspect, costs[1].Decision.Part = costs[0].Decision.Aspect, true
	costs[2].With.Critical = []string{"unwashed_given"}
	costs[3].With.GivenML = 0
	part, spoilt, lying := costs[1].Decision.Title, costs[2].Decision.Title, costs[3].Decision.Title
	told := Tell(d, costs)
	for _, l := range told.Lines {
		switch title := l.Cost.Decision.Title; {
		case title == part && l.Cost.Place == costs[1].Place:
			t.Error("a part is told beside its whole")
		case (title == spoilt || title == lying) && l.Group == Better:
			t.Errorf("%q is praised", title)
		}
	}
	if n := len(told.Of(Unclear)); n != 2 {
		t.Errorf("%d are unclear", n)
	}
	costs[0].Gain, costs[0].Points, costs[1].Gain, costs[1].Points = -3, -3, -2, -2 // a whole that was the better way
	if lines := Tell(d, costs).Lines; slices.ContainsFunc(lines, func(l Line) bool { return l.Cost.Place == costs[1].Place }) {
		t.Error("a part is praised beside its whole")
	}
	costs[0].Gain, costs[0].Points = 3, 3
	costs[1].Decision.Part = false
	if n := len(Tell(d, costs).Of(Unclear)); n != 3 {
		t.Errorf("%d are unclear where one kind of decision helped and did harm", n)
	}
}

// pointsIn is the number that a text of points says.
func pointsIn(t *testing.T, text string) float64 {
	p, err := strconv.ParseFloat(strings.Replace(text, "\u2212", "-", 1), 64)
	if err != nil {
		t.Fatalf("%q is no number of points", text)
	}
	return p
}

// Points by criterion add up to those of the decision, and of the case, where criteria have fewer than a hundred together too.
func TestPointsByCriterionAddUp(t *testing.T) {
	d, costs := lessonTold(t)
	told, n := Tell(d, costs), 0
	if d.whole() <= 1 {
		t.Fatalf("a point counts %g; this test wants a case that leaves parts out", d.whole())
	}
	if !strings.Contains(told.Scaled, scoring.Show(d.Own.Grade.Of())+" points") {
		t.Errorf("of the scale is said %q", told.Scaled)
	}
	for _, l := range told.Lines {
		if l.More > 0 {
			continue
		}
		sum := 0.0
		for _, b := range l.Bears {
			sum += pointsIn(t, b.Points)
			n++
		}
		if math.Abs(sum-pointsIn(t, l.Points)) > 0.6 {
			t.Errorf("%q: %s points, by criterion %v", l.Cost.Decision.Title, l.Points, l.Bears)
		}
	}
	if n == 0 {
		t.Error("nothing bears on a criterion")
	}
	bare := Tell(d, nil) // without decisions all lost points are unexplained
	if got := 100 - pointsIn(t, bare.LeftPoints); math.Abs(got-d.Own.Grade.Points) > 0.5 || len(bare.Left) <= len(told.Left) {
		t.Errorf("%s points are lost of %g, %d criteria, of %d with decisions", bare.LeftPoints, d.Own.Grade.Points, len(bare.Left), len(told.Left))
	}
	for _, b := range told.Left {
		if c := d.Own.Grade.Criteria[b.Criterion]; math.Abs(pointsIn(t, b.Points)+d.whole()*(c.Of-c.Points)) > 0.5 {
			t.Errorf("%s lost %s, has %g of %g", c.Meaning, b.Points, c.Points, c.Of)
		}
	}
}

// A cost whose figures differ by less than is told counts as one that changes nothing.
func TestWhatIsNotToldChangesNothing(t *testing.T) {
	d, _ := lessonTold(t)
	c := Cost{With: d.Own, Gain: -0.2}
	for _, k := range []struct {
		hb, points float64
		want       Group
	}{{-0.05, 0, Same}, {-0.2, 0, Better}, {-0.05, -0.2, Better}, {-0.05, -0.04, Same}} {
		c.With.LowestHbGDL, c.Points = d.Own.LowestHbGDL+k.hb, k.points
		if l := d.line(&c); l.Group != k.want {
			t.Errorf("%+v: group %d, %v", k, l.Group, l.Changes)
		}
	}
}

// What comes about anew is told as it is, and with a "but" where something else was spared.
func TestWhatIsSparedAndBrought(t *testing.T) {
	d, _ := lessonTold(t)
	say := func(key string) string { return words.Say("changes." + key) }
	for _, k := range []struct{ own, with, want []string }{
		{nil, []string{"air_given"}, []string{say("new_air_given")}},
		{[]string{"clot_given"}, nil, []string{say("no_clot_given")}},
		{[]string{"clot_given"}, []string{"air_given", "unwashed_given"}, []string{say("no_clot_given"), words.Say("changes.but", say("new_air_given")), say("new_unwashed_given")}},
		{[]string{"clot_given"}, []string{"clot_given"}, nil},
	} {
		own := d.Own
		own.Critical = k.own
		with := own
		with.Critical = k.with
		with.Grade.Passed = !own.Grade.Passed // a lesson has nobody pass
		of := &Debrief{Record: d.Record, Own: own}
		if got := of.changes(&with); !slices.Equal(got, k.want) {
			t.Errorf("%v to %v: %q, want %q", k.own, k.with, got, k.want)
		}
	}
}

// How sure a cost is: in how many drawings, from where to where, and whether they disagree.
func TestHowSureACostIs(t *testing.T) {
	d, _ := lessonTold(t)
	for _, k := range []struct {
		spread Spread
		points float64
		want   string
		unsure bool
	}{
		{Spread{}, 4, "", false},
		{Spread{Drawn: 3, Least: -1, Most: 4}, 4, "from \u22121.0 to +4.0 points in 4 drawings of the case", true},
		{Spread{Drawn: 3, Least: 4, Most: 5}, 4, "from +4.0 to +5.0 points in 4 drawings of the case", false},
		{Spread{Drawn: 7, Least: 2.01, Most: 2.04}, 2, "+2.0 points in each of 8 drawings of the case", false},
		{Spread{Drawn: 1, Least: 0.01, Most: 0.04}, 0, "0 points in each of 2 drawings of the case", false},
	} {
		if l := d.line(&Cost{With: d.Own, Points: k.points, Spread: k.spread}); l.Sure != k.want || l.Unsure != k.unsure {
			t.Errorf("%+v: %q, unsure: %t", k.spread, l.Sure, l.Unsure)
		}
	}
}

// Figures are those of both outcomes, in digits that make sense, and points never as more than they are.
func TestFigures(t *testing.T) {
	d, _ := lessonTold(t)
	d.Own.MostClotML, d.Own.EndTick, d.Own.Recovery = 3.14, 754*20+13, 0.456
	got := map[string]string{}
	for _, f := range d.figures() {
		got[f.Name] = f.Own
	}
	for key, want := range map[string]string{"told.figure_clot": "3.1 mL", "told.figure_end": "0:12:34", "told.figure_recovery": "46 %", "told.figure_points": Score(d.Own.Grade.Points)} {
		if got[words.Say(key)] != want {
			t.Errorf("%s: %q, want %q", key, got[words.Say(key)], want)
		}
	}
	if _, is := got[words.Say("told.figure_passed")]; is {
		t.Error("a lesson is passed or not")
	}
	for _, k := range []struct{ got, want string }{{Score(74.96), "74.9"}, {Score(75), "75"}, {Score(9.999), "9.9"}, {Score(0), "0"},
		{PointsText(0.04), "0"}, {PointsText(-0.04), "0"}, {PointsText(-1), "\u22121.0"}, {PointsText(11), "+11"}} {
		if k.got != k.want {
			t.Errorf("%q, want %q", k.got, k.want)
		}
	}
}

func TestAnotherGradeIsSeen(t *testing.T) {
	o := Outcome{Grade: scoring.Grade{Points: 75, Passed: true}}
	if o.Regraded(75.04, true) || !o.Regraded(75, false) || !o.Regraded(75.06, true) || !o.Regraded(74.9, true) {
		t.Error("points that are shown alike are another grade, or others are not")
	}
}
