// The debrief as the last page reads it: what would have happened otherwise. It is played elsewhere, while the page is read.

package bench

import "rouleau/cmd/rouleau-desk/ui"

// DebriefStep is how far a debrief has come.
type DebriefStep uint8

// The steps.
const (
	DebriefShut    DebriefStep = iota // nobody has asked for it
	DebriefPlaying                    // the case is being played otherwise
	DebriefTold
	DebriefNone // there can be none
)

// Debrief is the debrief of the case that has ended.
type Debrief struct {
	Step      DebriefStep
	Why       string // there can be none
	Done, All int    // times that the case is played otherwise
	Drawings  bool   // these are of other drawings of the case, to say how sure a cost is
	Told      *Told  // what came of it
}

// Told is what a debrief tells. What it holds does not change, but that the courses of a decision come when they are asked for.
type Told struct {
	Heed      []string // to be known before anything else
	Scaled    string   // how points of the parts are counted here, "" where they are the same
	Costs     []Cost   // of each group those that weigh most first
	Good      *Courses // the person's own course and that of steady in the same case
	Figures   []Figure
	Questions []TalkQuestion
}

// CostGroup is what came of putting a decision right.
type CostGroup uint8

// The groups, in the order in which they are told.
const (
	CostGained  CostGroup = iota // it would have been better
	CostBetter                   // it would have been worse: what was done instead was the better way
	CostUnclear                  // nobody can tell
	CostSame                     // nothing worth telling
	CostLeft                     // no decision: points of a criterion that none explains
)

// Cost is what one decision cost.
type Cost struct {
	Group   CostGroup
	Place   int    // among the decisions that were found, to ask for its courses by; -1 for no decision
	Points  string // more than the person's own, with their sign
	Title   string // the decision put right
	Changes string // what would have changed beside points, "" for nothing
	Sure    string // how sure that is, "" where it was played in one drawing alone
	Unsure  bool   // the drawings do not agree
	Bears   string // on which criteria
	Marked  bool   // it has a mark on the timeline
	At      Moment // when it should have been taken, or the moment of a criterion
	Courses *Courses
}

// Courses are two courses of a case over each other, in what they visibly differ in.
type Courses struct {
	Names   [2]string // of the first, drawn whole, and of the second, drawn dashed
	EndS    float64
	Part    Moment // at which they part
	Differ  bool   // an eye can tell them apart
	Lanes   []CourseLane
	Rows    []string // names of the rows of bars
	Bars    []ui.ChartBand
	Targets []ui.ChartZone
}

// CourseLane is one quantity of both, one value a second.
type CourseLane struct {
	Name, Unit  string
	Digits      int
	Least, Most float64
	Values      [2]ui.Track
}

// Figure is one figure of both runs.
type Figure struct{ Name, Own, Good string }

// TalkQuestion is one question for the talk.
type TalkQuestion struct {
	Stage string
	Text  string
	At    Moment // that it is about
}
