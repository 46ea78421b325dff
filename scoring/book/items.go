package book

import "rouleau/assets/words"

// What only a person can judge, where a department's plan names no items of its own: each with the words for its levels, so that two
// assessors mean the same by a number.

// standing are the keys of the words: name, title and anchors from the lowest level up.
var standing = []struct {
	name, title string
	anchors     []string
}{
	{"asepsis", "rated.asepsis", []string{"rated.asepsis_low", "rated.asepsis_fair", "rated.asepsis_good", "rated.asepsis_best"}},
	{"closed_loop", "rated.closed_loop", []string{"rated.closed_loop_low", "rated.closed_loop_fair", "rated.closed_loop_good", "rated.closed_loop_best"}},
	{"handover", "rated.handover", []string{"rated.handover_low", "rated.handover_fair", "rated.handover_good", "rated.handover_best"}},
	{"honesty", "rated.honesty", []string{"rated.honesty_low", "rated.honesty_fair", "rated.honesty_good", "rated.honesty_best"}},
}

// enough is the level of a standing item that is asked for: good.
const enough = 3

// StandingItems are those that hold where no plan names others.
func StandingItems() []Item {
	var all []Item
	for _, s := range standing {
		it := Item{Name: s.name, Title: words.Say(s.title), Needs: enough}
		for _, key := range s.anchors {
			it.Anchors = append(it.Anchors, words.Say(key))
		}
		all = append(all, it)
	}
	return all
}

// Items are what may be rated by the plan in force.
func (s *State) Items() []Item {
	if p := s.Plan(); p != nil {
		return p.Items
	}
	return StandingItems()
}
