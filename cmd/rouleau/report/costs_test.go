package report

import (
	"fmt"
	"html"
	"slices"
	"strings"
	"testing"

	"rouleau/assets/words"
	"rouleau/scoring/debrief"
)

// section is what stands on the page between a section's id and the next one.
func section(t *testing.T, r *Report, from, to string) string {
	t.Helper()
	_, text, found := strings.Cut(pageOf(t, r), fmt.Sprintf(`<section id="%s"`, from))
	text, _, whole := strings.Cut(text, fmt.Sprintf(`<section id="%s"`, to))
	if !found || !whole {
		t.Fatalf("there is no section %s before %s", from, to)
	}
	return html.UnescapeString(text)
}

// Every decision that was played is told once in the group that it belongs to, and the costliest have a chart and a sign on the
// timeline.
func TestEveryDecisionIsTold(t *testing.T) {
	r := hasty(t)
	gained, worse, same := r.gained(), r.worse(), r.same()
	if len(gained)+len(worse)+len(same) != len(r.Costs) || len(gained) <= mostCharted {
		t.Fatalf("%d gained, %d worse, %d the same, of %d", len(gained), len(worse), len(same), len(r.Costs))
	}
	text := section(t, r, "costs", "questions")
	place := 0
	for i, c := range gained[:min(mostRanked, len(gained))] {
		k := strings.Index(text[place:], c.Decision.Title)
		if k < 0 {
			t.Fatalf("%q is not told in its place", c.Decision.Title)
		}
		place += k
		if i < mostCharted {
			for _, want := range []string{`id="d` + letter(i) + `"`, `<title>` + c.Decision.Title} {
				if !strings.Contains(text, want) {
					t.Errorf("%s is missing for %q", want, c.Decision.Title)
				}
			}
			if at := fmt.Sprintf(`<tr id="at-%s">`, letter(i)); !strings.Contains(pageOf(t, r), at) {
				t.Errorf("%q is not on the timeline", c.Decision.Title)
			}
		}
	}
	if got := strings.Count(text, "<svg "); got > mostCharted || got < 1 {
		t.Errorf("%d charts", got)
	}
	for _, c := range slices.Concat(worse[:min(mostWorse, len(worse))], same[:min(mostSame, len(same))]) {
		if !strings.Contains(text, c.Decision.Title) {
			t.Errorf("%q is not told", c.Decision.Title)
		}
	}
	for _, c := range worse {
		if c.Gain >= 0 {
			t.Errorf("%q gains %g and stands with what was done better", c.Decision.Title, c.Gain)
		}
	}
	if left := r.Debrief.Unexplained(r.Costs); len(left) > 0 && !strings.Contains(text, words.Say("report.unexplained_why")) {
		t.Errorf("%d criteria are left unexplained and the page does not say so", len(left))
	}
}

// The course that is drawn for a cost is the one that was judged for it.
func TestTheRightCourseIsDrawn(t *testing.T) {
	r := hasty(t)
	for _, c := range r.gained()[:mostCharted] {
		if run := r.Debrief.Course(r.place(c)); run.State.Tick != c.With.EndTick || run.State.Giving.GivenML != c.With.GivenML {
			t.Errorf("%q: the course ends at %d with %g mL given, and was judged to end at %d with %g", c.Decision.Title, run.State.Tick, run.State.Giving.GivenML, c.With.EndTick, c.With.GivenML)
		}
	}
}

// Lists that go on are cut, with how many more there are.
func TestLongListsAreCut(t *testing.T) {
	base := lesson(t)
	r := *base
	r.Costs = nil
	for i := range 60 {
		for _, c := range base.Costs {
			c.Decision.Tick += int64(i)
			r.Costs = append(r.Costs, c)
		}
	}
	debrief.Rank(r.Costs)
	for i := range r.Costs {
		r.Costs[i].Decision = r.Costs[0].Decision // one that can be drawn
	}
	text := section(t, &r, "costs", "questions")
	for name, more := range map[string]int{"gained": len(r.gained()) - mostRanked, "worse": len(r.worse()) - mostWorse} {
		if more <= 0 || !strings.Contains(text, words.Say("report.line_more", more)) {
			t.Errorf("%s: that there are %d more is not said", name, more)
		}
	}
	if n := len(r.Lines()); n > 40 {
		t.Errorf("the terminal is told %d lines", n)
	}
}

// How sure a cost is stands beside it: in how many drawings, from where to where, and whether they disagree.
func TestHowSureACostIs(t *testing.T) {
	for _, k := range []struct {
		spread debrief.Spread
		points float64
		want   []string
		unsure bool
	}{
		{debrief.Spread{}, 4, nil, false},
		{debrief.Spread{Drawn: 3, Least: -1, Most: 4}, 4, []string{"from \u22121.0 to +4.0 points in this and 3 other drawings"}, true},
		{debrief.Spread{Drawn: 3, Least: 4, Most: 5}, 4, []string{"from +4.0 to +5.0 points"}, false},
		{debrief.Spread{Drawn: 7, Least: 2.01, Most: 2.04}, 2, []string{"+2.0 points in this and 7 other drawings"}, false},
		{debrief.Spread{Drawn: 1, Least: 0.01, Most: 0.04}, 0, []string{"0 points"}, false},
	} {
		c := &debrief.Cost{Points: k.points, Spread: k.spread}
		got := sure(c)
		for _, want := range k.want {
			if !strings.Contains(got, want) {
				t.Errorf("%+v: %q, want %q in it", k.spread, got, want)
			}
		}
		if unsure := strings.Contains(got, words.Say("report.unsure_word")); unsure != k.unsure || k.want == nil && got != "" {
			t.Errorf("%+v: %q", k.spread, got)
		}
	}
}

// A cost whose figures differ by less than is told counts as one that changes nothing.
func TestWhatIsNotToldChangesNothing(t *testing.T) {
	r := *lesson(t)
	c := debrief.Cost{With: r.Debrief.Own, Gain: -0.2}
	c.With.LowestHbGDL -= 0.05
	r.Costs = []debrief.Cost{c}
	if len(r.worse()) != 0 || len(r.same()) != 1 {
		t.Errorf("%d worse, %d the same", len(r.worse()), len(r.same()))
	}
	r.Costs[0].With.LowestHbGDL -= 0.2
	if len(r.worse()) != 1 || len(r.same()) != 0 {
		t.Errorf("with a haemoglobin that is lower: %d worse, %d the same", len(r.worse()), len(r.same()))
	}
}
