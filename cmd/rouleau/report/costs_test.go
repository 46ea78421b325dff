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
	gained, better, same := r.Told.Of(debrief.Gained), r.Told.Of(debrief.Better), r.Told.Of(debrief.Same)
	if len(gained)+len(better)+len(same) != len(r.Debrief.Decisions) || len(gained) <= mostCharted || len(better) == 0 || len(same) == 0 {
		t.Fatalf("%d gained, %d better, %d the same, of %d", len(gained), len(better), len(same), len(r.Debrief.Decisions))
	}
	text := section(t, r, "costs", "questions")
	place := 0
	for i, l := range gained[:min(mostRanked, len(gained))] {
		c := l.Cost
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
	for _, l := range slices.Concat(better[:min(mostBetter, len(better))], same[:min(mostSame, len(same))]) {
		if !strings.Contains(text, l.Cost.Decision.Title) {
			t.Errorf("%q is not told", l.Cost.Decision.Title)
		}
	}
	if left := r.Told.Left; len(left) > 0 && !strings.Contains(text, words.Say("report.unexplained_why")) {
		t.Errorf("%d criteria are left unexplained and the page does not say so", len(left))
	}
}

// The course that is drawn for a cost is the one that was judged for it.
func TestTheRightCourseIsDrawn(t *testing.T) {
	r := hasty(t)
	for _, l := range r.Told.Of(debrief.Gained)[:mostCharted] {
		c := l.Cost
		if run := r.Debrief.Course(c.Place); run.State.Tick != c.With.EndTick || run.State.Giving.GivenML != c.With.GivenML {
			t.Errorf("%q: the course ends at %d with %g mL given, and was judged to end at %d with %g", c.Decision.Title, run.State.Tick, run.State.Giving.GivenML, c.With.EndTick, c.With.GivenML)
		}
	}
}

// Lists that go on are cut, with how many more there are.
func TestLongListsAreCut(t *testing.T) {
	base := lesson(t)
	r := *base
	var costs []debrief.Cost
	for range 60 {
		for _, l := range base.Told.Lines {
			costs = append(costs, *l.Cost)
		}
	}
	debrief.Rank(costs)
	r.Told = debrief.Tell(r.Debrief, costs)
	text := section(t, &r, "costs", "questions")
	for group, most := range map[debrief.Group]int{debrief.Gained: mostRanked, debrief.Better: mostBetter} {
		if more := len(r.Told.Of(group)) - most; more <= 0 || !strings.Contains(text, words.Say("report.line_more", more)) {
			t.Errorf("group %d: that there are %d more is not said", group, more)
		}
	}
	if n := len(r.Lines()); n > 40 {
		t.Errorf("the terminal is told %d lines", n)
	}
}

// How sure a cost is stands beside it, and what is unsure is marked.
func TestHowSureACostIs(t *testing.T) {
	l := &debrief.Line{Sure: "from 1 to 2"}
	if got := sure(l); got != l.Sure {
		t.Errorf("%q", got)
	}
	l.Unsure = true
	if got := sure(l); !strings.Contains(got, words.Say("report.unsure_word")) || !strings.HasSuffix(got, l.Sure) {
		t.Errorf("unsure: %q", got)
	}
}

// Points by criterion are counted like those of the decision, also where a case leaves parts out.
func TestPointsByCriterionAddUp(t *testing.T) {
	r := nothing(t)
	if r.points() >= 100 {
		t.Fatalf("the case grades %g points; this test wants one that leaves parts out", r.points())
	}
	text, n := section(t, r, "costs", "questions"), 0
	for _, l := range r.Told.Of(debrief.Gained) {
		for _, b := range l.Bears {
			n++
			if want := r.grade().Criteria[b.Criterion].Meaning + ": " + b.Points; !strings.Contains(text, want) {
				t.Errorf("%q is not told of %q", want, l.Cost.Decision.Title)
			}
		}
	}
	for _, b := range r.Told.Left {
		if want := r.grade().Criteria[b.Criterion].Meaning + ": " + b.Points; !strings.Contains(text, want) {
			t.Errorf("%q is not told", want)
		}
	}
	if n == 0 {
		t.Error("no decision bears on a criterion")
	}
}
