package debrief

import "slices"

// Parts of the work, so that decisions of different kinds can be told together.

// Work is the part of the work that a kind of decision belongs to.
type Work uint8

// The parts of the work, in its order.
const (
	Preparing Work = iota
	Collecting
	Processing
	Returning
	Telling
	WorkCount
)

// works are the kinds of decisions of each part.
var works = [WorkCount][]aspect{preparing, collecting, processing, returning, telling}

// WorkOf says to which part of the work a kind of decision belongs.
func WorkOf(name string) Work {
	for w := range WorkCount {
		if slices.ContainsFunc(works[w], func(k aspect) bool { return k.name == name }) {
			return w
		}
	}
	return Telling
}
