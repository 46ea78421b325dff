package operators

import "rouleau/scoring/play"

// This file holds steady without one of its habits: no operator of the library and nobody's failing, but a run to compare with.

// WithoutRinsing is the name of steady where no swabs are rinsed: what a case gives back then is what published cases without
// rinsing are compared with, and the rest came from the swabs.
const WithoutRinsing = "steady-without-rinsing"

// Unrinsed is steady without rinsing swabs.
func Unrinsed() (*Operator, error) {
	steady, err := Open("steady")
	if err != nil {
		return nil, err
	}
	h := competent()
	h.RinsesSwabs = false
	return &Operator{Name: WithoutRinsing, Failing: "None. As steady, and no swabs are rinsed.", Digest: steady.Digest,
		play: func(s Sheet) play.Actor { return withHabits(s, h, nil) }}, nil
}
