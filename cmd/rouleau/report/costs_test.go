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
	gained := r.Told.Of(debrief.Gained)
	others := slices.Concat(r.Told.Of(debrief.Better), r.Told.Of(debrief.Unclear), r.Told.Of(debrief.Same))
	if len(gained)+len(others) != len(r.Told.Lines) || len(gained) <= mostCharted || len(others) == 0 {
		t.Fatalf("%d gained and %d others, of %d", len(gained), len(others), len(r.Told.Lines))
	}
	text := section(t, r, "costs", "questions")
	place := 0
	for i, l := range gained {
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
	for _, l := range others {
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

// A page holds all decisions, however many there are; a terminal says how many more.
func TestLongListsStandOnThePageAlone(t *testing.T) {
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
	for _, g := range []debrief.Group{debrief.Gained, debrief.Better, debrief.Same} {
		lines, rows := r.Told.Of(g), 0
		titles := map[string]bool{}
		for i := range lines {
			if title := lines[i].Cost.Decision.Title; !titles[title] {
				titles[title], rows = true, rows+strings.Count(text, "<td>"+title+"</td>")
			}
		}
		if rows < len(lines) {
			t.Errorf("group %d: %d of %d are told", g, rows, len(lines))
		}
	}
	lines := r.Lines()
	if more := len(r.Told.Of(debrief.Gained)) - mostLines; more <= 0 || !slices.Contains(lines, words.Say("report.line_more", more)) {
		t.Errorf("a terminal is not told that there are %d more", more)
	}
	if len(lines) > 40 {
		t.Errorf("the terminal is told %d lines", len(lines))
	}
	for i, want := range map[int]string{0: "A", 25: "Z", 26: "AA", 52: "BA"} {
		if got := letter(i); got != want {
			t.Errorf("letter %d is %s", i, got)
		}
	}
}

// What a decision changes in points alone is said in words: the criteria of most weight, and of how many others.
func TestPointsAloneAreSaidInWords(t *testing.T) {
	r := hasty(t)
	l := &debrief.Line{Bears: []debrief.Borne{{Criterion: 0, Points: "+2.0"}, {Criterion: 1, Points: "+1.0"}, {Criterion: 2, Points: "+0.5"}}, More: 4}
	got := r.changed(l)
	if want := r.grade().Criteria[0].Meaning + ": +2.0"; !strings.Contains(got, want) {
		t.Errorf("%q does not say %q", got, want)
	}
	if strings.Contains(got, "+0.5") || !strings.HasSuffix(got, words.Say("report.less", 5)) && !strings.HasSuffix(got, words.Say("report.less", 6)) {
		t.Errorf("%q", got)
	}
	if l.Changes = []string{"one more bowl", "no clot"}; r.changed(l) != "one more bowl, no clot" {
		t.Errorf("%q", r.changed(l))
	}
	if got := r.changed(&debrief.Line{Bears: l.Bears[:1]}); strings.Contains(got, ";") {
		t.Errorf("%q", got)
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
