package group

import (
	"slices"
	"strconv"

	"rouleau/assets/words"
	"rouleau/scoring/debrief"
)

// This file parts attempts by time: by the month they were made in, and by how many the person had made before. Parts with too few
// people are joined with the next, so that none can be worked out from the others.

// Most columns that a sheet has room for.
const mostParts = 6

// scale is what attempts are parted by.
type scale struct {
	of      func(e *entry) int
	earlier bool // where there are too many parts, the first are joined and not the last
}

var (
	numberOf = scale{of: func(e *entry) int { return e.number }}
	monthOf  = scale{of: func(e *entry) int { return month(e.attempt.When) }, earlier: true}
)

// month counts months from a date and time that has been read without faults.
func month(when string) int {
	y, _ := strconv.Atoi(when[:4])
	m, _ := strconv.Atoi(when[5:7])
	return 12*y + m - 1
}

// monthText is a month as 2031-05.
func monthText(month int) string { return words.Say("group.month", month/12, month%12+1) }

// parts parts attempts.
func (f *figures) parts(entries []*entry, least int, by scale) (all []part) {
	places := map[int][]*entry{}
	var order []int
	for _, e := range entries {
		at := by.of(e)
		if places[at] == nil {
			order = append(order, at)
		}
		places[at] = append(places[at], e)
	}
	slices.Sort(order)
	var groups [][]*entry
	open := false // the last group has too few people yet
	for _, at := range order {
		if open {
			groups[len(groups)-1] = append(groups[len(groups)-1], places[at]...)
		} else {
			groups = append(groups, places[at])
		}
		open = peopleOf(groups[len(groups)-1]) < least
	}
	if n := len(groups); open && n > 1 {
		groups = append(groups[:n-2], append(groups[n-2], groups[n-1]...))
	}
	for len(groups) > mostParts {
		i := len(groups) - 2
		if by.earlier {
			i = 0
		}
		groups[i] = append(groups[i], groups[i+1]...)
		groups = slices.Delete(groups, i+1, i+2)
	}
	for _, g := range groups {
		p := f.part(g, least)
		p.from, p.to = by.of(g[0]), by.of(g[0])
		for _, e := range g {
			p.from, p.to = min(p.from, by.of(e)), max(p.to, by.of(e))
		}
		all = append(all, p)
	}
	return all
}

// again sets the first attempt of each person beside their last. Parts by number hold other people each, as not all come again,
// so that only this says whether the same people got better.
type again struct {
	people      int // with two attempts or more; 0 where they are too few
	more, fewer int // who have more points the last time, and fewer; a difference that is not shown is none
	change      summary
	first, last []int // of them, to how many each kind cost something
}

func (f *figures) againOf(entries []*entry, least int) again {
	a := again{first: make([]int, len(f.kinds)), last: make([]int, len(f.kinds))}
	byPerson := map[int][]*entry{}
	var order []int
	for _, e := range entries {
		if byPerson[e.person] == nil {
			order = append(order, e.person)
		}
		byPerson[e.person] = append(byPerson[e.person], e)
	}
	var changes []float64
	for _, who := range order {
		own := byPerson[who]
		if len(own) < 2 {
			continue
		}
		first, last := own[0], own[len(own)-1]
		change := last.points - first.points
		changes = append(changes, change)
		switch {
		case debrief.Slight(change):
		case change > 0:
			a.more++
		default:
			a.fewer++
		}
		for i := range f.kinds {
			if first.of(f.kinds[i].all) != nil {
				a.first[i]++
			}
			if last.of(f.kinds[i].all) != nil {
				a.last[i]++
			}
		}
	}
	if len(changes) < least || len(changes) == 0 {
		return again{}
	}
	a.people, a.change = len(changes), summaryOf(changes)
	return a
}
