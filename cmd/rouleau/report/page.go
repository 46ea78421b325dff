package report

import (
	"strings"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/page"
	"rouleau/scenarios/yamlread"
	"rouleau/scoring/attempt"
	"rouleau/sim"
)

// This file puts the page together: what it is about at the top, the questions and how it was found at the end.

// Page is the whole debrief, in the order in which it is read: oneself first, then the verdict, what happened, what a good run
// looks like, what each decision cost, and what to talk about.
func (r *Report) Page() *page.Page {
	p := &page.Page{Title: words.Say("report.title", r.scenario().Title), Lead: []string{r.scenario().Summary, words.Say("report.feedback_page")}}
	p.Blocks = append(p.Blocks, page.Block{Beside: &page.Beside{Blocks: []page.Block{r.about(), contents()}}}, r.self(), r.judged())
	p.Blocks = append(p.Blocks, r.timeline()...)
	p.Blocks = append(p.Blocks, r.besideGood())
	p.Blocks = append(p.Blocks, r.costs()...)
	p.Blocks = append(p.Blocks, r.questions(), r.method())
	return p
}

// at is a time of the case as people read it.
func at(tick int64) string { return yamlread.Clock{Seconds: int(tick / sim.TicksPerSecond)}.String() }

// who played, as the attempt has it.
func who(a *attempt.Attempt) string {
	if a.Operator == "" {
		return words.Say("report.nobody")
	}
	return a.Operator
}

// about is what was played, by whom, when and how.
func (r *Report) about() page.Block {
	a, sc := r.Attempt, r.scenario()
	b := page.Block{}
	add := func(key string, lines ...string) {
		if len(lines) > 0 {
			b.Pairs = append(b.Pairs, page.Pair{Name: words.Say(key), Lines: lines})
		}
	}
	when := a.When
	if t, err := time.Parse(time.RFC3339, a.When); err == nil {
		when = words.Say("report.utc", t.UTC().Format("2006-01-02 15:04"))
	}
	mode := words.Say("report.practice")
	if a.Assessment() {
		mode = words.Say("report.assessment")
	}
	add("report.about_case", words.Say("report.case_seed", sc.ID, sc.Version, a.Seed))
	add("report.about_who", words.Say("report.who_when", who(a), when))
	add("report.about_mode", words.Say("report.mode_length", mode, at(a.LengthTicks), sim.ModelVersion))
	add("report.about_breaks", strings.Join(breaks(a), "; "))
	add("report.about_heed", r.warnings()...)
	if len(sc.Cautions) > 0 {
		add("report.about_cautions", strings.Join(sc.Cautions, " "))
	}
	return b
}

// contents lead to the sections and say what each is for.
func contents() page.Block {
	b := page.Block{Head: words.Say("report.contents_head")}
	for _, k := range [...]struct{ id, name, is string }{
		{"self", "report.contents_self", "report.contents_self_is"}, {"verdict", "report.contents_verdict", "report.contents_verdict_is"},
		{"timeline", "report.contents_timeline", "report.contents_timeline_is"}, {"good", "report.contents_good", "report.contents_good_is"},
		{"costs", "report.contents_costs", "report.contents_costs_is"}, {"questions", "report.contents_questions", "report.contents_questions_is"},
		{"method", "report.contents_method", "report.contents_method_is"},
	} {
		b.Pairs = append(b.Pairs, page.Pair{Name: page.Ref(k.id, words.Say(k.name)), Lines: []string{words.Say(k.is)}})
	}
	return b
}

// breaks are what came between the person and the case.
func breaks(a *attempt.Attempt) (lines []string) {
	if n := a.Breaks.Interruptions; n > 0 {
		lines = append(lines, count(n, "report.interrupted_once", "report.interrupted"))
	}
	if s := float64(a.Breaks.LetGoS); s > 0 {
		lines = append(lines, words.Say("report.let_go", s))
	}
	if a.Breaks.TakenOver {
		lines = append(lines, words.Say("report.taken_over"))
	}
	if len(lines) == 0 {
		lines = []string{words.Say("report.no_breaks")}
	}
	return lines
}

// questions are those for the talk, by its stages. They tell what happened, and are shut like the verdict.
func (r *Report) questions() page.Block {
	b := page.Block{ID: "questions", Head: words.Say("report.questions_head"), Text: []string{words.Say("report.questions_lead")}, Folded: r.shut()}
	stage := ""
	for _, q := range r.Told.Questions {
		text := q.Text
		if of := q.Stage.String(); of != stage {
			stage, text = of, words.Say("report.stage", page.Strong(of), text)
		}
		b.List = append(b.List, text)
	}
	return b
}

// method says how all of it was found, and what to make of it.
func (r *Report) method() page.Block {
	drawn := words.Say("report.method_not_drawn")
	if r.Draws > 0 {
		drawn = words.Say("report.method_drawn", r.Draws)
	}
	return page.Block{ID: "method", Head: words.Say("report.method_head"), Text: []string{strings.Join([]string{words.Say("report.method_fork"), words.Say("report.method_hand"), drawn,
		words.Say("report.method_order"), words.Say("report.method_limits"), words.Say("report.method_hash", r.scenario().Hash(), sim.ModelVersion)}, " ")}}
}
