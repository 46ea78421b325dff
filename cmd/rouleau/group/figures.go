package group

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"rouleau/scoring/debrief"
)

// This file makes the figures of a section: of all its attempts, and of each kind of decision that cost something in them.

// figures are those of a section.
type figures struct {
	all     part
	kinds   []kindFigures // that cost something to enough people, the costliest first
	unnamed int           // kinds that cost something to fewer, each alone
	numbers []part        // by the number of the attempt
	months  []part
	again   again
}

// part is some of the attempts of a section.
type part struct {
	from, to int // numbers of attempts, or months
	attempts int
	people   int
	passed   int
	critical guarded // in which something came about that points never make up for
	points   summary
	occurred []int // in how many attempts each kind cost something
}

// few says whether figures of a part are no more than an impression.
func (p *part) few() bool { return p.attempts < firmAttempts || p.people < firmPeople }

// summary is how values lie.
type summary struct {
	mean, low, middle, high float64 // low and high bound the middle half
}

// kindFigures are those of a kind of decision.
type kindFigures struct {
	kind
	attempts, people int // in which and to whom it cost something
	points           summary
	each             float64 // points lost by it, over all attempts of the section
	gain             float64 // of all together, by which kinds are put in order
	critical         guarded // attempts in which it brought about what points never make up for
	example          example
	all              []kind // that are taken together here: the kind alone, or those of a part of the work that fewer people had
}

// guarded is a number of attempts that is told only where enough people made them.
type guarded struct {
	attempts int
	hidden   bool // fewer people did
}

// countOf counts attempts.
func countOf(entries []*entry, least int, counts func(e *entry) bool) guarded {
	var those []*entry
	for _, e := range entries {
		if counts(e) {
			those = append(those, e)
		}
	}
	if n := peopleOf(those); n > 0 && n < least {
		return guarded{hidden: true}
	}
	return guarded{attempts: len(those)}
}

// example is one decision of a kind, the most ordinary one.
type example struct {
	title  string // empty where there is none that may be shown
	person int
	number int
}

// quantile is the value below which a share of sorted values lies, between two of them in proportion (type 7 of Hyndman and
// Fan, Am Stat 1996;50:361–365, from memory).
func quantile(sorted []float64, share float64) float64 {
	at := share * float64(len(sorted)-1)
	below := int(math.Floor(at))
	above := min(below+1, len(sorted)-1)
	return sorted[below] + float64((at-float64(below))*(sorted[above]-sorted[below]))
}

// summaryOf summarises values, of which there is one at least.
func summaryOf(values []float64) summary {
	sorted := slices.Sorted(slices.Values(values))
	sum := 0.0
	for _, v := range sorted {
		sum += v
	}
	return summary{sum / float64(len(sorted)), quantile(sorted, 0.25), quantile(sorted, 0.5), quantile(sorted, 0.75)}
}

// figuresOf makes the figures of attempts, with groups of so many people at least.
func figuresOf(entries []*entry, least int) *figures {
	f := &figures{}
	f.kinds, f.unnamed = kindsOf(entries, least)
	f.all = f.part(entries, least)
	f.numbers = f.parts(entries, least, numberOf)
	f.months = f.parts(entries, least, monthOf)
	f.again = f.againOf(entries, least)
	return f
}

// part makes the figures of some attempts.
func (f *figures) part(entries []*entry, least int) part {
	p := part{attempts: len(entries), people: peopleOf(entries), occurred: make([]int, len(f.kinds))}
	p.critical = countOf(entries, least, func(e *entry) bool { return e.critical })
	var points []float64
	for _, e := range entries {
		points = append(points, e.points)
		if e.passed {
			p.passed++
		}
		for i := range f.kinds {
			if e.of(f.kinds[i].all) != nil {
				p.occurred[i]++
			}
		}
	}
	p.points = summaryOf(points)
	return p
}

// kindsOf are the kinds of decisions that cost something to so many people at least, the costliest first. The others are taken together
// by part of the work, where that makes as many people; of these it is said how many there are.
func kindsOf(entries []*entry, least int) (named []kindFigures, unnamed int) {
	with := map[kind][]*entry{}
	var met []kind
	for _, e := range entries {
		for i := range e.found {
			k := e.found[i].kind
			if with[k] == nil {
				met = append(met, k)
			}
			with[k] = append(with[k], e)
		}
	}
	var rare [debrief.WorkCount][]kind
	for _, k := range met {
		if peopleOf(with[k]) < least {
			work := debrief.WorkOf(k.aspect)
			rare[work], unnamed = append(rare[work], k), unnamed+1
			continue
		}
		named = append(named, kindOf(k, []kind{k}, entries, least))
	}
	for work, kinds := range rare {
		if len(kinds) < 2 {
			continue
		}
		if k := kindOf(kind{aspect: otherAspects[work]}, kinds, entries, least); k.people >= least {
			k.example = example{} // it would tell of what so few had
			named = append(named, k)
		}
	}
	slices.SortFunc(named, func(a, b kindFigures) int {
		return cmp.Or(cmp.Compare(b.gain, a.gain), strings.Compare(a.aspect, b.aspect), cmp.Compare(a.fault, b.fault))
	})
	return named, unnamed
}

// kindOf makes the figures of kinds that are taken together from the attempts in which one of them cost something.
func kindOf(k kind, all []kind, entries []*entry, least int) kindFigures {
	f := kindFigures{kind: k, all: all}
	var those []*entry
	for _, e := range entries {
		if e.of(all) != nil {
			those = append(those, e)
		}
	}
	f.attempts, f.people = len(those), peopleOf(those)
	f.critical = countOf(those, least, func(e *entry) bool { return e.of(all).critical })
	var points []float64
	sum := 0.0
	for _, e := range those {
		n := e.of(all)
		points, sum, f.gain = append(points, n.points), sum+n.points, f.gain+n.gain
	}
	f.points, f.each = summaryOf(points), sum/float64(len(entries))
	nearest := math.Inf(1)
	for _, e := range those {
		n := e.of(all)
		if apart := math.Abs(n.points - f.points.middle); n.title != "" && apart < nearest {
			nearest, f.example = apart, example{n.title, e.person, e.number}
		}
	}
	return f
}
