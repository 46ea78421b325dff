package book

// The kinds of records and what each holds.

// Kind is what a record is about.
type Kind string

// The kinds.
const (
	KindKey     Kind = "key"     // a person's key and role, or their end
	KindSignOff Kind = "signoff" // an attempt that was judged
	KindRating  Kind = "rating"  // a second rater's view of one
	KindVoid    Kind = "void"    // a record that no longer counts
	KindForget  Kind = "forget"  // a record whose body was deleted
	KindCase    Kind = "case"    // a supervised real case, counted, without anything about a patient
	KindEvent   Kind = "event"   // an incident, new equipment, a time away: what makes somebody due again
	KindPlan    Kind = "plan"    // the department's plan in force from then on
)

// Role is what a person may do in the book.
type Role string

// The roles.
const (
	Learner       Role = "learner"
	Assessor      Role = "assessor"
	Administrator Role = "administrator"
)

// Key is a person's public key and role. Only an administrator writes one; the first of a book is signed by itself.
type Key struct {
	Person string `json:"person"` // pseudonymous code
	Role   Role   `json:"role"`
	Public string `json:"public"` // Ed25519, hexadecimal
	Ended  bool   `json:"ended"`  // from now on it signs nothing
	Reason string `json:"reason"`
}

// SignOff is an attempt with what was decided on it.
type SignOff struct {
	Learner    string      `json:"learner"`
	Assessor   string      `json:"assessor"`
	For        string      `json:"for"`  // the role that the learner trains for
	Date       string      `json:"date"` // of the decision, RFC 3339 with its zone
	Scenario   Scenario    `json:"scenario"`
	Model      string      `json:"model"` // version of the equations
	Seed       string      `json:"seed"`  // decimal; JSON numbers are too short for it
	Mode       string      `json:"mode"`
	Played     string      `json:"played"`   // when, as the attempt says
	LengthS    float64     `json:"length_s"` // of the case as it was played
	Breaks     Breaks      `json:"breaks"`
	Number     int         `json:"number"`  // of this learner's attempts at the scenario, from 1
	Earlier    []Earlier   `json:"earlier"` // all before it
	Criteria   []Criterion `json:"criteria"`
	Critical   []Critical  `json:"critical"`
	Parts      []Part      `json:"parts"`
	Points     float64     `json:"points"`
	PassMark   float64     `json:"pass_mark"`
	MarkSetBy  string      `json:"mark_set_by"` // how the pass mark was set
	Passed     bool        `json:"passed"`      // as computed
	Outcome    Outcome     `json:"outcome"`     // as decided
	Override   string      `json:"override"`    // why the assessor decided otherwise than computed, "" where not
	Rated      []Rated     `json:"rated"`       // what only a person can judge
	Comments   string      `json:"comments"`
	Feedback   string      `json:"feedback"` // that was given
	Due        string      `json:"due"`      // date on which it is to be shown again, yyyy-mm-dd
	Supersedes string      `json:"supersedes"`
	Training   []Training  `json:"training"`
	AttemptSHA string      `json:"attempt_sha256"` // salted, of the attachment
}

// Scenario names the case.
type Scenario struct {
	ID      string `json:"id"`
	Version int    `json:"version"`
	SHA256  string `json:"sha256"`
}

// Breaks are what came between the person and the case, as the attempt says.
type Breaks struct {
	Interruptions int     `json:"interruptions"`
	LetGoS        float64 `json:"let_go_s"`
	TakenOver     bool    `json:"taken_over"`
}

// Earlier is an attempt before the one signed off.
type Earlier struct {
	Played   string  `json:"played"`
	Mode     string  `json:"mode"`
	Points   float64 `json:"points"`
	Passed   bool    `json:"passed"`
	Critical int     `json:"critical"` // errors that points never make good
	Seal     string  `json:"seal"`     // of its file
}

// Criterion is one thing that was graded, with its evidence.
type Criterion struct {
	Measure   string  `json:"measure"`
	Part      string  `json:"part"`
	Objective string  `json:"objective"`
	Measured  bool    `json:"measured"`
	Value     float64 `json:"value"`
	Unit      string  `json:"unit"`
	Target    string  `json:"target"`
	Points    float64 `json:"points"`
	Of        float64 `json:"of"`
	Reason    string  `json:"reason"`
	Source    string  `json:"source"`
	AtS       float64 `json:"at_s"` // the moment it turned on, seconds of the case, -1 for none
}

// Critical is an error that points never make good.
type Critical struct {
	Name   string  `json:"name"`
	Amount float64 `json:"amount"`
	Reason string  `json:"reason"`
	Mended bool    `json:"mended"`
	AtS    float64 `json:"at_s"`
}

// Part sums one part of the work.
type Part struct {
	Part    string  `json:"part"`
	Points  float64 `json:"points"`
	Of      float64 `json:"of"`
	Floor   float64 `json:"floor"`
	Reached bool    `json:"reached"`
}

// Outcome is what was decided.
type Outcome string

// The outcomes.
const (
	Competent Outcome = "competent"
	NotYet    Outcome = "not_yet"
)

// Rated is an item that only a person can judge, on a scale with words for each level.
type Rated struct {
	Item    string `json:"item"`  // of the plan, or one of the standing items
	Level   int    `json:"level"` // 1 to the number of anchors
	Anchor  string `json:"anchor"`
	Comment string `json:"comment"`
}

// Training is something of the case that is kept to practise keeping it: never a real lot, operator or incident.
type Training struct {
	What string `json:"what"` // one of the kinds of training items
	Text string `json:"text"`
}

// Rating is a second rater's view of a record.
type Rating struct {
	Of       string  `json:"of"` // id of the signed-off record
	Learner  string  `json:"learner"`
	Assessor string  `json:"assessor"`
	Rated    []Rated `json:"rated"`
	Comments string  `json:"comments"`
}

// Void takes a record out of force.
type Void struct {
	Of       string `json:"of"`
	Learner  string `json:"learner"` // of that record
	Assessor string `json:"assessor"`
	Reason   string `json:"reason"`
}

// Forget says that the body of a record was deleted, and on whose wish.
type Forget struct {
	Of     string `json:"of"`
	By     string `json:"by"`
	Reason string `json:"reason"`
}

// Case is a supervised real case that counts towards a competency. It holds nothing about a patient.
type Case struct {
	Learner    string `json:"learner"`
	Assessor   string `json:"assessor"` // who supervised
	Competency string `json:"competency"`
	Date       string `json:"date"` // yyyy-mm-dd
}

// Event makes a person due again, or all of them.
type Event struct {
	Learner string `json:"learner"` // "" for everybody
	By      string `json:"by"`
	What    string `json:"what"` // incident, equipment, away
	Date    string `json:"date"` // yyyy-mm-dd
	Reason  string `json:"reason"`
}

// PlanText is a department's plan, as its YAML stands.
type PlanText struct {
	By   string `json:"by"`
	YAML string `json:"yaml"`
}
