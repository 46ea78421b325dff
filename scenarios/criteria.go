// This file holds how a case is graded: parts, criteria and their targets.

package scenarios

// Part is one of the six parts of the work, with the points it always has.
type Part struct {
	Name   string // as files write it
	Title  string
	Points float64
}

// Parts are the six parts in the order of the work. Their points add up to 100.
var Parts = [...]Part{
	{"deciding", "Deciding and preparing", 15},
	{"collecting", "Collecting", 20},
	{"processing", "Processing", 25},
	{"returning", "Returning", 20},
	{"communicating", "Communicating", 10},
	{"recording", "Recording", 10},
}

// Criterion is one thing that is graded. Full points lie from Least to Most; beyond them points fall in a straight line to
// none over the soft width, or at once where there is none.
type Criterion struct {
	Measure   string   `yaml:"measure" rule:"required,min=1,max=60" doc:"what is measured, a name from the list of measures"`
	Part      string   `yaml:"part" rule:"required,oneof=deciding|collecting|processing|returning|communicating|recording" doc:"part of the work whose points it takes from"`
	Points    float64  `yaml:"points" rule:"required,min=0.5,max=25" doc:"points for meeting the target; those of a part add up to 15, 20, 25, 20, 10 and 10"`
	Objective string   `yaml:"objective" rule:"required,min=1,max=40" doc:"objective it shows"`
	Least     *float64 `yaml:"least" doc:"least value that meets the target, in the unit of the measure"`
	SoftBelow float64  `yaml:"soft_below" rule:"min=0,max=100000" doc:"width below least over which points fall to none"`
	Most      *float64 `yaml:"most" doc:"greatest value that meets the target, in the unit of the measure"`
	SoftAbove float64  `yaml:"soft_above" rule:"min=0,max=100000" doc:"width above most over which points fall to none"`
	Note      string   `yaml:"note" rule:"required,min=5,max=400" doc:"why it matters, in plain words, shown with the grade"`
	Source    string   `yaml:"source" rule:"required,min=3,max=200" doc:"where the target comes from, or: common practice"`
}

// Share is how much of the points a value earns, 0 to 1.
func (c *Criterion) Share(value float64) float64 {
	switch {
	case value != value:
		return 0
	case c.Least != nil && value < *c.Least:
		return edge(*c.Least-value, c.SoftBelow)
	case c.Most != nil && value > *c.Most:
		return edge(value-*c.Most, c.SoftAbove)
	}
	return 1
}

// edge falls from 1 to 0 as the distance from the target grows to width.
func edge(off, width float64) float64 {
	if width <= 0 || off >= width {
		return 0
	}
	return 1 - off/width
}
