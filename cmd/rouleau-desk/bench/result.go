// The result of a case as the last page reads it. Grading itself happens elsewhere.

package bench

// Result is a graded case.
type Result struct {
	Graded    bool
	Pass      bool
	Total     float64  // points of 100
	Reasons   []string // why it was not passed
	Parts     []PartResult
	Criticals []CriticalResult
	SavedAs   string // where the attempt was saved, "" when nowhere
	Fault     string // why it could not be graded or saved, "" when it was
}

// PartResult is one of the parts of the grade with its criteria.
type PartResult struct {
	Name       string
	Points, Of float64
	FloorShare float64 // least share of the points that passes
	Rows       []CriterionResult
}

// CriterionResult is one criterion.
type CriterionResult struct {
	Name, Measured, Target string // Measured is "" where there was nothing to measure
	Points, Of             float64
	Reason, Source         string
	Moment                 Moment
}

// CriticalResult is an error that points never make good.
type CriticalResult struct {
	Name, Reason string
	Mended       bool // stopped, told and mended
	Moment       Moment
}

// Moment is when something turned; Is is false where it has no one moment.
type Moment struct {
	Is bool
	S  float64
}
