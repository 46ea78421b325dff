package group

import (
	"fmt"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/page"
	"rouleau/scoring/attempt"
	"rouleau/scoring/debrief"
)

// This file puts the page together: what a teacher reads first stands first.

// Page is the whole page.
func (g *Group) Page() *page.Page {
	p := &page.Page{Title: words.Say("group.title"), Lead: []string{words.Say("group.lead_feedback"), g.counts()}}
	if g.wishes.Programs {
		p.Lead = append(p.Lead, words.Say("group.lead_programs"))
	}
	p.Blocks = append(p.Blocks, g.rule(), page.Block{Head: words.Say("group.overview_head"), Table: g.overview()})
	for _, s := range g.told() {
		p.Blocks = append(p.Blocks, g.section(s)...)
	}
	p.Blocks = append(p.Blocks, g.leftOut(), g.how())
	return p
}

// told are the sections with figures.
func (g *Group) told() (all []*section) {
	for _, s := range g.sections {
		if s.figures != nil {
			all = append(all, s)
		}
	}
	return all
}

// counts says how many attempts of how many people there are, and since when.
func (g *Group) counts() string {
	var all []*entry
	for _, s := range g.told() {
		all = append(all, s.entries...)
	}
	from, to := monthOf.of(all[0]), monthOf.of(all[0])
	for _, e := range all {
		from, to = min(from, monthOf.of(e)), max(to, monthOf.of(e))
	}
	when := words.Say("group.lead_month", monthText(from))
	if to > from {
		when = words.Say("group.lead_months", monthText(from), monthText(to))
	}
	return words.Say("group.lead_counts", attempts(len(all)), people(peopleOf(all)), when)
}

func attempts(n int) string {
	if n == 1 {
		return words.Say("group.attempt_one")
	}
	return words.Say("group.attempts_many", n)
}

func people(n int) string {
	if n == 1 {
		return words.Say("group.person_one")
	}
	return words.Say("group.people_many", n)
}

// rule says who can be seen on the page.
func (g *Group) rule() page.Block {
	text := words.Say("group.rule", LeastPeople, LeastPeople)
	if g.wishes.Small {
		text = words.Say("group.rule_small")
	}
	return page.Block{Note: true, Text: []string{page.Strong(words.Say("group.rule_head")) + ": " + text}}
}

// names of a section: its case, and how it was played.
func (s *section) name() string {
	if s.text != "" {
		return words.Say("group.case_text", s.id, s.version, s.text)
	}
	return words.Say("group.case_named", s.id, s.version)
}

func (s *section) modeName() string {
	switch {
	case s.lesson:
		return words.Say("group.mode_lesson")
	case s.mode == attempt.Assessment:
		return words.Say("group.mode_assessment")
	}
	return words.Say("group.mode_practice")
}

// anchor is where the section stands on the page.
func (s *section) anchor() string {
	return fmt.Sprintf("%s-%d%s-%s", s.id, s.version, s.text, s.mode)
}

// size says how many attempts of how many people a section has, and that they are few where they are.
func (s *section) size() string {
	key := "group.firm"
	if s.figures.all.few() {
		key = "group.impression"
	}
	return words.Say(key, attempts(s.figures.all.attempts), people(s.figures.all.people))
}

// results say how many passed, and how points lie.
func (s *section) results() string {
	all := &s.figures.all
	judged := words.Say("group.passes", words.Say("group.of", all.passed, all.attempts), s.passMark)
	switch {
	case all.critical.hidden:
		judged += " " + words.Say("group.criticals_few", LeastPeople)
	case all.critical.attempts == 0:
		judged += " " + words.Say("group.criticals_none")
	case all.critical.attempts == 1:
		judged += " " + words.Say("group.critical_one")
	default:
		judged += " " + words.Say("group.criticals", all.critical.attempts)
	}
	if s.lesson {
		judged = words.Say("group.lesson_judges")
	}
	return judged + " " + words.Say("group.line_points", all.points.middle, all.points.low, all.points.high)
}

// section is the part of the page about one case in one mode. One with charts has sheets of its own.
func (g *Group) section(s *section) []page.Block {
	f := s.figures
	all := append([]page.Block{{ID: s.anchor(), Head: words.Say("group.section_head", s.title, s.modeName()), Sheet: len(f.kinds) > 0 || len(f.numbers) > 1,
		Text: []string{s.name() + ". " + page.Strong(s.size()) + " " + s.results(), g.better(s)}}}, g.kinds(s)...)
	if len(f.numbers) > 1 { // else it has been said that nobody came again
		all = append(all, g.byNumber(s))
	}
	return append(all, g.byMonth(s))
}

// under is a text with what it is about before it.
func under(head, text string) string { return page.Strong(head) + " " + text }

// better says whether the same people had more points the last time.
func (g *Group) better(s *section) string {
	a := &s.figures.again
	switch {
	case a.people == 0 && g.wishes.Small:
		return words.Say("group.again_nobody")
	case a.people == 0:
		return words.Say("group.again_few", LeastPeople)
	}
	text := words.Say("group.again", people(a.people), a.more, a.fewer, debrief.PointsText(a.change.middle))
	if a.people < firmPeople {
		text += " " + words.Say("group.again_impression")
	}
	return text
}

// leftOut counts what was left out, by why.
func (g *Group) leftOut() page.Block {
	b := page.Block{Head: words.Say("group.left_head")}
	for why := range Why(len(whyKeys)) {
		if n := g.count(why); n > 0 {
			b.List = append(b.List, words.Say("group.left_count", why, n))
		}
	}
	if len(b.List) == 0 {
		b.Text = []string{words.Say("group.left_none")}
	}
	return b
}

func (g *Group) count(why Why) (n int) {
	for i := range g.Left {
		if g.Left[i].Why == why {
			n++
		}
	}
	return n
}

// how says how it was made.
func (g *Group) how() page.Block {
	b := page.Block{Head: words.Say("group.how_head"), List: []string{words.Say("group.how_played"), words.Say("group.how_figures", firmAttempts, firmPeople)}}
	regraded := 0
	for _, s := range g.told() {
		for _, e := range s.entries {
			if e.regraded {
				regraded++
			}
		}
	}
	switch {
	case regraded == 1:
		b.List = append(b.List, words.Say("group.how_regraded_one"))
	case regraded > 1:
		b.List = append(b.List, words.Say("group.how_regraded", regraded))
	}
	return b
}
