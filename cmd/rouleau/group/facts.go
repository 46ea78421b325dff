package group

import (
	"slices"
	"strings"

	"rouleau/assets/words"
	"rouleau/scoring/attempt"
	"rouleau/scoring/debrief"
)

// This file plays one attempt, and keeps of it the few facts that figures are made of. Nothing in them says who played.

// kind is a kind of decision: what it was about and what was the matter with it.
type kind struct {
	aspect string
	fault  debrief.Fault
}

// found is a kind of decision that cost something in an attempt. Where several of a kind did, their costs do not add up, and
// the one that cost most stands for them.
type found struct {
	kind
	points   float64 // more, with it put right
	gain     float64 // by which decisions are put in order
	critical bool    // with one of them put right, something that points never make up for would not have come about
	title    string  // the decision put right, in words; empty where it would hold words that the person wrote
}

// facts are what is kept of an attempt.
type facts struct {
	points   float64
	passed   bool
	critical bool // something came about that points never make up for
	regraded bool // the grade came out otherwise than the file holds it
	found    []found
}

// play plays the debrief of an attempt. Attempts are played side by side already, so that the decisions of one are played in a row.
func (e *entry) play() {
	defer func() {
		if trouble := recover(); trouble != nil { // one attempt that the program cannot bear does not take all others with it
			e.left = &Left{e.path, Broke, e.path + ": " + words.Say("cli.our_fault", trouble)}
		}
	}()
	rec, err := debrief.Of(e.attempt)
	if err != nil {
		e.left = &Left{e.path, NotTheSame, e.path + ": " + err.Error()}
		return
	}
	d := debrief.New(rec)
	var costs []debrief.Cost
	for i := range d.Decisions {
		costs = append(costs, d.Play(i))
	}
	debrief.Rank(costs)
	var gained []debrief.Cost // as the report of the attempt tells it
	for _, l := range debrief.Tell(d, costs).Of(debrief.Gained) {
		gained = append(gained, *l.Cost)
	}
	e.facts = factsOf(e.attempt, &d.Own, gained)
}

func factsOf(a *attempt.Attempt, own *debrief.Outcome, costs []debrief.Cost) facts {
	f := facts{points: own.Grade.Points, passed: own.Grade.Passed, critical: len(own.Critical) > 0}
	f.regraded = own.Regraded(float64(a.Grade.Points), a.Grade.Passed)
	at := map[kind]int{}
	for i := range costs {
		c := &costs[i]
		if !c.Mattered() || c.Gain <= 0 {
			continue
		}
		freed, _ := debrief.Freed(own, &c.With)
		n := found{kind{c.Decision.Aspect, c.Decision.Fault}, c.Points, c.Gain, len(freed) > 0, c.Decision.Title}
		if personal(n.title, a) {
			n.title = ""
		}
		k, met := at[n.kind]
		if !met {
			at[n.kind] = len(f.found)
			f.found = append(f.found, n)
			continue
		}
		o := &f.found[k]
		n.critical = n.critical || o.critical
		if n.gain > o.gain {
			*o = n
		}
		o.critical = n.critical
	}
	return f
}

// telling is how many letters of a text are enough to know it by.
const telling = 8

// personal says whether a text holds words that the person wrote, who could have put their name there.
func personal(text string, a *attempt.Attempt) bool {
	text = strings.ToLower(text)
	for i := range a.Actions {
		wrote := []rune(strings.ToLower(strings.TrimSpace(a.Actions[i].Text)))
		if len(wrote) > 0 && strings.Contains(text, string(wrote[:min(len(wrote), telling)])) {
			return true
		}
	}
	return false
}

// of finds in an attempt the costliest of some kinds, nil where none cost anything. Any of them can have been critical.
func (f *facts) of(kinds []kind) (costliest *found) {
	critical := false
	for i := range f.found {
		n := &f.found[i]
		if !slices.Contains(kinds, n.kind) {
			continue
		}
		critical = critical || n.critical
		if costliest == nil || n.gain > costliest.gain {
			costliest = n
		}
	}
	if costliest != nil && critical && !costliest.critical {
		other := *costliest
		other.critical = true
		return &other
	}
	return costliest
}
