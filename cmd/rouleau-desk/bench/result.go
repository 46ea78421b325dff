// The result of a case as the last page reads it. Grading itself happens elsewhere.

package bench

// Result is a graded case.
type Result struct {
	Graded    bool
	Pass      bool
	Total     float64  // points of 100
	Reasons   []string // why it was not passed
	Parts     []PartResult
	Scaled    string // how points of the parts make those of 100, "" where they are the same
	Criticals []CriticalResult
	Self      Self
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

// Self is how the person who played saw each objective, beside what was measured of it.
type Self struct {
	Asked     bool // the marks are wanted before anything of the verdict is shown
	Given     bool // they were asked for, and given or left out
	Choices   []string
	Rows      []SelfRow // in the order of the work
	Otherwise string    // what they would do otherwise
	Sum       string    // one line over all rows
	Rule      string    // from where on an objective counts as met
}

// SelfRow is one objective. Places on the scale are 0 for not, 1 for partly, 2 for well, and -1 for none.
type SelfRow struct {
	ID, Part, Text string
	Own            string // the mark in words
	Seen           int    // its place
	Measured       string // in words
	Was            int    // its place
	Points, Of     float64
	Apart          string // how the two stand to each other
	Parts          bool   // they part
}

// Marks are what a person gives before the verdict: for each row a choice, counted from 1, or 0 for none.
type Marks struct {
	Each      []int
	Otherwise string
}
