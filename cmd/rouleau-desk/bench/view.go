// What the screens read: one value, filled by the session before each frame. Screens draw from it and never touch the
// simulation; what may be done and why not is asked through May.

package bench

import "rouleau/sim"

// Screen is what the window shows.
type Screen uint8

// The screens, in the order a case goes through them.
const (
	Cautions Screen = iota
	Sheet
	AtBench
	Graded
)

// View is all a frame is drawn from.
type View struct {
	Screen      Screen
	Story       Story
	Seen        sim.Seen
	Drawn       Drawn
	Truth       Truth
	ShowTruth   bool // only ever in practice
	Packs       []Pack
	Limits      Limits
	May         func(sim.Action) sim.Reason
	Assessment  bool
	Speed       int
	Speeds      []int // to choose from in practice
	MayTruth    bool  // hidden truth may be shown in practice
	Paused      bool
	Behind      bool    // the window could not keep up and let time go
	TimeLeftS   float64 // that an assessment may still take, on the wall
	TimeOver    bool    // it was over before the case had ended, and the case stands still
	Watching    bool    // a recorded attempt is being played; acts by hand are refused
	Recorded    Recorded
	Jumping     bool    // time runs on to the next thing worth attention
	Interrupted int     // times the case was resumed after the window had gone
	TakenOver   bool    // the case was begun by another attempt and gone on with from one of its moments
	LostS       float64 // of the case's time that a late window let go
	Notice      string  // a line the window wants shown: where something was saved, or why not
	BusyLeftS   float64
	Log         []Line
	Said        []Line
	Question    Question
	Alarms      []Alarm // on now, most urgent first
	Charts      *Charts
	Tally       [sim.TallyItems]float64 // as written
	Heard       [64]string              // what the last look at each part brought to light
	Hints       []Hint                  // that apply now, in practice
	Guide       Guide                   // of a lesson, in practice
	Result      Result
	Debrief     Debrief
	Home        string // what the way home is called where it is no way to the home screen, else ""
}

// Recorded is the attempt that is watched, as a whole.
type Recorded struct {
	EndS  float64
	ActsS []float64 // when something was done
	Stale string    // why it cannot be tried again from its moments, "" where it can
	Heed  string    // what has to be known before its result, "" for nothing
}

// Story is the case as people read it.
type Story struct {
	Title, Level string
	Minutes      int
	Seed         uint64
	Text         string
	Sheet        []SheetRow
	Objectives   []string
	Never        []string // refusals and allergies, which must stay in sight at the bench
	Lines        []string // what people say, by index
}

// SheetRow is one line of the case sheet.
type SheetRow struct {
	Label, Text string
	Weighty     bool // consent, contraindications, allergies: must not be overlooked
}

// Pack is a pack of fluid as printed on it.
type Pack struct {
	Solution sim.Solution
	VolumeML float64
	Expiry   string
}

// Limits are sizes of vessels and times, as written on them.
type Limits struct {
	ReservoirML, WasteML, BagML float64
	ExpiryS, EndS               float64
}

// Drawn is what the section drawing shows of liquids and flows. The session fills it with what a person could see: the bed
// comes from the detector unless hidden truth is shown.
type Drawn struct {
	Pool, Suction               Liquid
	Canister                    Liquid
	ReservoirClear              Liquid
	ReservoirLow                Liquid
	Outlet                      Liquid
	Bed, Supernatant, BowlMixed Liquid
	Effluent, Waste             Liquid
	Bags                        [sim.MaxBags]Liquid
	BedShare                    float64 // of the bowl, 0–1
	HeldShare                   float64 // of the bowl, 0–1
	OuterCM, InnerCM            float64
	BowlML, RPM                 float64
	SuckMLMin, DiscardMLMin     float64 // flows that move the dashes
	DripMLMin, FeedMLMin        float64
	WashMLMin, EffluentMLMin    float64
	ProductMLMin                float64
	OutletBackMLMin             float64 // bowl sent back to the reservoir
	DrawBackMLMin               float64
	GiveMLMin                   float64
	FromDetector                bool // the bed is drawn as an eye at the bench sees it, not as it is
}

// Truth is what nobody at a bench could know. Zero in an assessment.
type Truth struct {
	ReservoirHct, ReservoirLowHct float64
	ReservoirFreeHbGL             float64
	FilterActivation              float64
	BedShare                      float64
	BowlHct                       float64
	BagHct                        [sim.MaxBags]float64
	BagFreeHbGL                   [sim.MaxBags]float64
	HbGDL                         float64
	BleedMLMin                    float64
	ShedML                        float64
}

// Line is one line of the log, or something said.
type Line struct {
	S    float64 // seconds
	Who  string  // who says it, "" for acts and the bench
	Text string
	Kind sim.OccurrenceKind
	Auto bool

	Alarm string  // of an alarm and its end: which it is
	LastS float64 // when it came last
	Times int     // how often it came in a short while, when it is more than once
}

// Question is what somebody wants answered.
type Question struct {
	Open      bool
	Who, Text string
	Loss      bool // wants an estimate of the loss
	SinceS    float64
}

// Hint is help in three steps: where to look, what it means, what a good operator would do.
type Hint struct {
	When  string
	Steps []string
}

// Alarm is one alarm that is on.
type Alarm struct {
	Is     sim.Alarm
	SinceS float64
	Known  bool // acknowledged
}
