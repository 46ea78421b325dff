// What a debrief tells, put into the terms of the page: each decision with what it cost and how sure that is, both runs in
// figures, and the questions for the talk. What is told, in which order and group, is the debrief's own choice.

package session

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/scoring"
	"rouleau/scoring/debrief"
)

// teller is a debrief that has been played, on its way to the page.
type teller struct {
	d     *debrief.Debrief
	told  *debrief.Told
	shown shownGrade
}

// shownGrade is the grade that the page shows.
type shownGrade struct {
	points float64
	passed bool
}

func (t *teller) tell() *bench.Told {
	to := &bench.Told{Heed: t.heed(), Scaled: t.told.Scaled, Good: coursesOf(t.d.Record.Run, t.d.Good.Run, words.Say("report.good"))}
	for i := range t.told.Lines {
		to.Costs = append(to.Costs, t.cost(&t.told.Lines[i], i))
	}
	for i := range t.told.Left {
		to.Costs = append(to.Costs, t.left(&t.told.Left[i]))
	}
	for _, f := range t.told.Figures {
		to.Figures = append(to.Figures, bench.Figure(f))
	}
	for _, q := range t.told.Questions {
		to.Questions = append(to.Questions, bench.TalkQuestion{Stage: q.Stage.String(), Text: q.Text, At: momentOf(q.Tick)})
	}
	return to
}

// heed is what whoever reads on has to know first.
func (t *teller) heed() (all []string) {
	run, own := t.d.Record.Run, &t.d.Own
	if !run.State.Ended {
		all = append(all, words.Say("report.unfinished", clockWords(run.State.Tick)), words.Say("report.good_unfinished"))
	}
	if own.Regraded(t.shown.points, t.shown.passed) {
		all = append(all, words.Say("desk_debrief.other_grade", debrief.Score(t.shown.points), debrief.Score(own.Grade.Points)))
	}
	return all
}

var costGroups = [...]bench.CostGroup{debrief.Gained: bench.CostGained, debrief.Better: bench.CostBetter, debrief.Unclear: bench.CostUnclear,
	debrief.Same: bench.CostSame}

// cost is the row of a decision, which is the nth of all.
func (t *teller) cost(l *debrief.Line, nth int) bench.Cost {
	d := &l.Cost.Decision
	var bears []string
	for _, b := range l.Bears {
		bears = append(bears, words.Say("desk_debrief.borne", b.Points, short(t.d.Own.Grade.Criteria[b.Criterion].Meaning)))
	}
	if l.More > 0 {
		bears = append(bears, words.Say("desk_debrief.more", l.More))
	}
	return bench.Cost{Group: costGroups[l.Group], Place: l.Cost.Place, Points: l.Points, Title: sentence(d.Title), Changes: strings.Join(l.Changes, ", "), Sure: l.Sure, Unsure: l.Unsure,
		Bears: strings.Join(bears, "; "), At: momentOf(d.Tick), Marked: l.Group == debrief.Gained && nth < debrief.MostMarked}
}

// short is a meaning without what stands behind its first comma, which tells how it is measured.
func short(meaning string) string {
	head, _, _ := strings.Cut(meaning, ",")
	return head
}

// left is the row of a criterion whose lost points no single decision explains.
func (t *teller) left(b *debrief.Borne) bench.Cost {
	c := &t.d.Own.Grade.Criteria[b.Criterion]
	measured := words.Say("result.nothing_measured")
	if c.Measured {
		measured = words.Say("result.measured", scoring.ShowUnit(c.Value, c.Unit))
	}
	return bench.Cost{Group: bench.CostLeft, Place: -1, Points: b.Points, Title: sentence(c.Meaning), Changes: measured,
		Bears: words.Say("result.target", c.Target), Sure: c.Reason, At: momentOf(c.Tick)}
}

// sentence begins with a large letter.
func sentence(text string) string {
	r, n := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(r)) + text[n:]
}
