package report

import (
	"bytes"
	"context"
	"fmt"
	"html"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/forks"
	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
	"rouleau/scoring/debrief"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// attemptOf is an attempt that an operator played; a stop is when they left it, 0 for never.
func attemptOf(t testing.TB, name, who string, seed uint64, stop int64) *attempt.Attempt {
	t.Helper()
	sc, err := scenarios.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	o, err := operators.Open(who)
	if err != nil {
		t.Fatal(err)
	}
	run := play.New(sc.Case(seed, false), seed)
	run.ToEnd(o.Play(operators.SheetOf(sc, &run.Case)))
	if stop > 0 {
		whole := run
		run = play.New(sc.Case(seed, false), seed)
		run.Again(whole.Actions, stop-1, nil)
	}
	g := scoring.Judge(sc, run, scoring.PlayYardstick(sc, seed, false))
	return attempt.Of(sc, run, g, attempt.By{Operator: who, When: time.Date(2031, 5, 14, 8, 30, 0, 0, time.UTC), Mode: attempt.Practice})
}

// marked puts marks into an attempt, one after the other of all there are.
func marked(t testing.TB, a *attempt.Attempt) *attempt.Attempt {
	t.Helper()
	sc, faults := scenarios.Parse("case.yaml", []byte(a.Scenario.Text))
	if err := faults.Err(); err != nil {
		t.Fatal(err)
	}
	a.Self = &attempt.Self{Otherwise: "Look at the lines before the first blood."}
	for i, o := range attempt.Objectives(sc) {
		a.Self.Marks = append(a.Self.Marks, attempt.ObjectiveMark{Objective: o.ID, Mark: attempt.Mark(i % int(attempt.MarkCount))})
	}
	return a
}

func of(t testing.TB, a *attempt.Attempt, plan forks.Plan) *Report {
	t.Helper()
	r, err := Of(context.Background(), a, plan)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// pages are those made so far.
var pages sync.Map

func pageOf(t testing.TB, r *Report) string {
	t.Helper()
	if text, is := pages.Load(r); is {
		return text.(string)
	}
	made, err := r.Page().HTML()
	if err != nil {
		t.Fatal(err)
	}
	pages.Store(r, string(made))
	return string(made)
}

// one plays something for all tests that want it.
func one[T any](make func(t testing.TB) T) func(t testing.TB) T {
	var (
		once sync.Once
		made T
	)
	return func(t testing.TB) T {
		t.Helper()
		once.Do(func() { made = make(t) })
		return made
	}
}

var (
	hasty = one(func(t testing.TB) *Report {
		return of(t, attemptOf(t, "steady-oozing-spine", "hasty", 3, 0), forks.Plan{Draws: 1})
	})
	lesson  = one(func(t testing.TB) *Report { return of(t, attemptOf(t, "first-bowl", "hasty", 2, 0), forks.Plan{}) })
	stopped = one(func(t testing.TB) *Report {
		return of(t, marked(t, attemptOf(t, "first-bowl", "hasty", 2, 700*sim.TicksPerSecond)), forks.Plan{})
	})
	declined = one(func(t testing.TB) *Report {
		return of(t, attemptOf(t, "salvage-declined", "steady", 2, 0), forks.Plan{})
	})
	nothing = one(func(t testing.TB) *Report {
		return of(t, attemptOf(t, "salvage-declined", "idle", 2, 0), forks.Plan{Draws: 1})
	})
	perfect = one(func(t testing.TB) *Report {
		return of(t, attemptOf(t, "steady-oozing-spine", "steady", 3, 0), forks.Plan{})
	})
	reaction = one(func(t testing.TB) *Report {
		return of(t, attemptOf(t, "one-trouble-after-another", "inattentive", 5, 0), forks.Plan{})
	})
)

// all kinds of attempts.
func all(t *testing.T) map[string]*Report {
	return map[string]*Report{"a case not passed": hasty(t), "a lesson": lesson(t), "an unfinished lesson, marked": stopped(t), "a case without collecting": declined(t),
		"an idle run": nothing(t), "a perfect run": perfect(t), "an error that points never make good": reaction(t)}
}

func TestThePageHoldsEveryCriterion(t *testing.T) {
	for name, r := range all(t) {
		text := pageOf(t, r)
		g := r.grade()
		for i := range g.Criteria {
			c := &g.Criteria[i]
			_, row, found := strings.Cut(text, fmt.Sprintf(`<tr id="c%d">`, i+1))
			row, _, _ = strings.Cut(row, "</tr>")
			row = html.UnescapeString(row)
			if !found {
				t.Errorf("%s: %s has no row", name, c.Measure)
				continue
			}
			wanted := []string{c.Meaning, target(c), debrief.Score(c.Points) + " of " + debrief.Score(c.Of), strings.TrimSuffix(strings.TrimSpace(c.Reason), ":"), c.Source}
			if c.Tick >= 0 {
				wanted = append(wanted, fmt.Sprintf(`<a href="#at-c%d">%s</a>`, i+1, at(c.Tick)))
			}
			if !c.Measured {
				wanted = append(wanted, words.Say("result.nothing_measured"))
			}
			for _, w := range wanted {
				if !strings.Contains(row, w) {
					t.Errorf("%s: the row of %s does not hold %q:\n%s", name, c.Measure, w, row)
				}
			}
		}
		for i := range g.Critical {
			if !strings.Contains(html.UnescapeString(text), g.Critical[i].Reason) {
				t.Errorf("%s: the error %q is not told", name, g.Critical[i].Name)
			}
		}
	}
}

// Every link leads to something on the page, every id stands once, nothing is loaded from elsewhere.
func TestThePageIsWhole(t *testing.T) {
	for name, r := range all(t) {
		text := pageOf(t, r)
		ids := map[string]bool{}
		for _, m := range regexp.MustCompile(` id="([^"]*)"`).FindAllStringSubmatch(text, -1) {
			if ids[m[1]] {
				t.Errorf("%s: the id %s stands twice", name, m[1])
			}
			ids[m[1]] = true
		}
		links := regexp.MustCompile(`(?:href="|url\()([^")]*)`).FindAllStringSubmatch(text, -1)
		for _, m := range links {
			if to, here := strings.CutPrefix(m[1], "#"); !here || !ids[to] {
				t.Errorf("%s: a link leads to %q", name, m[1])
			}
		}
		for _, section := range []string{"self", "verdict", "timeline", "good", "costs", "questions", "method"} {
			if !ids[section] || !strings.Contains(text, `href="#`+section+`"`) {
				t.Errorf("%s: the section %s, or the way to it, is missing", name, section)
			}
		}
		text = strings.ReplaceAll(text, `xmlns="http://www.w3.org/2000/svg"`, "") // the name of the format, which nothing fetches
		for _, bad := range []string{"<script", "<link", "<img", "<iframe", "@import", "src=", "http:", "https:", "javascript:", "‹", "%!", "NaN", "<no value>"} {
			if k := strings.Index(text, bad); k >= 0 {
				t.Errorf("%s: the page holds %q: %.80s", name, bad, text[k:])
			}
		}
	}
}

// Without marks whoever played is asked first: nothing above what is shut tells of the verdict.
func TestOneMarksBeforeTheVerdict(t *testing.T) {
	text := pageOf(t, hasty(t))
	n := len(attempt.Objectives(hasty(t).scenario()))
	if got := strings.Count(text, `<input type="radio"`); got != 4*n {
		t.Errorf("%d choices for %d objectives", got, n)
	}
	form, verdict := strings.Index(text, `id="self"`), strings.Index(text, `id="verdict"`)
	if form < 0 || verdict < form {
		t.Error("the form does not come before the verdict")
	}
	open := regexp.MustCompile(`(?s)<details>.*?</details>`).ReplaceAllString(text, "")
	for _, told := range []string{words.Say("report.not_reached"), "points of 100", hasty(t).opening(), hasty(t).Told.Of(debrief.Gained)[0].Cost.Decision.Title, hasty(t).Told.Questions[1].Text, "<svg", `id="at-A"`, `id="m1"`} {
		if strings.Contains(open, told) {
			t.Errorf("%q can be read before anything has been opened", told)
		}
		if !strings.Contains(html.UnescapeString(text), told) {
			t.Errorf("%q cannot be read at all", told)
		}
	}
	r := stopped(t)
	text = pageOf(t, r)
	if strings.Contains(text, "<details>") || strings.Contains(text, "<input") {
		t.Error("with marks there is still a form, or something shut")
	}
	for _, b := range debrief.SideBySide(r.scenario(), r.grade(), r.Attempt.Self) {
		if b.Own != attempt.NotMarked && !strings.Contains(text, b.Apart.String()) {
			t.Errorf("that %s is %q is not told", b.Objective.ID, b.Apart)
		}
	}
	if !strings.Contains(text, r.Attempt.Self.Otherwise) {
		t.Error("what they would do otherwise is not told")
	}
}

// The same attempt gives the same bytes, however many play at once.
func TestTheSameAttemptGivesTheSamePage(t *testing.T) {
	var first [2][]byte
	for i, workers := range []int{1, 2, 2} {
		p := of(t, attemptOf(t, "first-bowl", "hasty", 2, 0), forks.Plan{Draws: 1, Workers: workers}).Page()
		text, err := p.HTML()
		if err != nil {
			t.Fatal(err)
		}
		pdf, err := p.PDF()
		if err != nil {
			t.Fatal(err)
		}
		if i == 0 {
			first = [2][]byte{text, pdf}
		}
		if !bytes.Equal(text, first[0]) || !bytes.Equal(pdf, first[1]) {
			t.Errorf("page %d, by %d workers, is another one", i+1, workers)
		}
	}
	if !bytes.HasPrefix(first[1], []byte("%PDF-")) || len(first[1]) < 50_000 {
		t.Errorf("the PDF has %d bytes and begins with %q", len(first[1]), first[1][:8])
	}
}
