// What charts are drawn from: the signals a person may choose, their values over the case, and the moments and stretches
// of time that stand above them. The session fills it once a second.

package bench

import (
	"math"
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

// Signal is one thing that can be charted.
type Signal uint8

// The signals: what scales, gauges and people at a bench say, then what nobody there could know.
const (
	SignalReservoir Signal = iota
	SignalClear
	SignalClot
	SignalDripPer100
	SignalDrops
	SignalVacuum
	SignalPool
	SignalBleeding
	SignalDetector
	SignalEffluent
	SignalWash
	SignalFlow
	SignalHeld
	SignalProduct
	SignalGiven
	SignalWaste
	SignalSaline
	SignalAnticoagulant
	SignalDonor
	SignalHb
	SignalHeartRate
	SignalPressure
	SignalLoss
	TrueBleeding
	TrueShed
	TrueHb
	TrueBed
	TrueReservoirHct
	TrueFreeHb
	TrueClotting
	SignalCount

	FirstTruth = TrueBleeding
)

// signalInfo is how a signal is shown.
type signalInfo struct {
	name   string
	unit   string
	digits int
	low    float64
	high   float64 // 0: it grows with the values
	beside Signal  // of a hidden truth, and of what belongs together: drawn in the lane of this one, where that is shown
	within bool    // it belongs to another
}

const alone = SignalCount

var signals = [SignalCount]signalInfo{
	SignalReservoir: {name: "signal.reservoir", unit: "mL"}, SignalClear: {name: "signal.clear", unit: "mL", beside: SignalReservoir, within: true}, SignalClot: {name: "signal.clot", unit: "mL"},
	SignalDripPer100: {name: "signal.drip_per_100", unit: "signal.per_100", high: 40}, SignalDrops: {name: "signal.drops", unit: "signal.drops_min"},
	SignalVacuum: {name: "signal.vacuum", unit: "mmHg"}, SignalPool: {name: "signal.pool", unit: "mL"}, SignalBleeding: {name: "signal.bleeding", unit: "mL/min"},
	SignalDetector: {name: "signal.detector", digits: 2, high: 1.1}, SignalEffluent: {name: "signal.effluent", digits: 2, high: 1},
	SignalWash: {name: "signal.wash", unit: "mL"}, SignalFlow: {name: "signal.flow", unit: "mL/min"}, SignalHeld: {name: "signal.held", unit: "mL"},
	SignalProduct: {name: "signal.product", unit: "mL"}, SignalGiven: {name: "signal.given", unit: "mL", beside: SignalProduct, within: true}, SignalDonor: {name: "signal.donor", high: 2}, SignalWaste: {name: "signal.waste", unit: "mL"},
	SignalSaline: {name: "signal.saline", unit: "mL"}, SignalAnticoagulant: {name: "signal.anticoagulant", unit: "mL"},
	SignalHb: {name: "signal.hb", unit: "g/dL", digits: 1, low: 5, high: 15}, SignalHeartRate: {name: "signal.heart_rate", unit: "signal.per_min", low: 40, high: 160},
	SignalPressure: {name: "signal.pressure", unit: "mmHg", low: 30, high: 120}, SignalLoss: {name: "signal.loss", unit: "mL"},
	TrueBleeding: {name: "signal.true_bleeding", unit: "mL/min", beside: SignalBleeding}, TrueShed: {name: "signal.true_shed", unit: "mL", beside: SignalLoss},
	TrueHb:           {name: "signal.true_hb", unit: "g/dL", digits: 1, low: 5, high: 15, beside: SignalHb},
	TrueBed:          {name: "signal.true_bed", digits: 2, high: 1.1, beside: SignalDetector},
	TrueReservoirHct: {name: "signal.true_hct", digits: 2, high: 0.8, beside: alone}, TrueFreeHb: {name: "signal.true_free_hb", unit: "g/L", digits: 1, beside: alone},
	TrueClotting: {name: "signal.true_clotting", digits: 2, high: 1, beside: alone},
}

// Name is what a signal is called.
func (s Signal) Name() string { return words.Say(signals[s].name) }

// Unit is the unit of a signal in words, "" for a bare share.
func (s Signal) Unit() string {
	if u := signals[s].unit; !strings.HasPrefix(u, "signal.") {
		return u
	}
	return words.Say(signals[s].unit)
}

// joins says in which lane a signal is drawn, where that is shown; itself for one of its own.
func (s Signal) joins() Signal {
	if k := &signals[s]; (s.Truth() || k.within) && k.beside != alone {
		return k.beside
	}
	return s
}

// Truth says whether a signal is what nobody at a bench could know.
func (s Signal) Truth() bool { return s >= FirstTruth }

// Shown is a choice of signals.
type Shown uint32

// Has says whether a signal is among them.
func (s Shown) Has(k Signal) bool { return s&(1<<k) != 0 }

// firstShown is what a new desk charts.
const firstShown Shown = 1<<SignalReservoir | 1<<SignalDripPer100 | 1<<SignalDetector | 1<<SignalHb | 1<<SignalBleeding |
	1<<TrueBleeding | 1<<TrueHb | 1<<TrueBed

// firstLooked is what is charted of a case that has ended: all that a talk about it turns on.
const firstLooked = firstShown | 1<<SignalClear | 1<<SignalClot | 1<<SignalWash | 1<<SignalProduct | 1<<SignalGiven | 1<<SignalDonor

// Charts are the signals over the case so far, and what happened when.
type Charts struct {
	Tracks [SignalCount]ui.Track // of hidden truth empty in an assessment, until it has ended
	StepS  float64               // from one value to the next; 0 means 1
	Marks  []Mark
	Phases []Span // of surgery
	Pump   []Span // what pump and bowl did
	Given  []Span // while blood ran to the patient
	second int
}

// Mark is a moment on the charts.
type Mark struct {
	S     float64
	Text  string // short
	Words string // all of it, shown when it is pointed at; "" when Text says all
	Kind  ui.MarkKind
}

// Span is a stretch of time; it grows while it lasts.
type Span struct {
	FromS, ToS float64
	Text       string
	Fill       ui.BandFill
}

// mostValues bounds what a track may keep: six hours of seconds. A longer case keeps every second value.
const mostValues = 6 * 3600

// Add adds one second. Hidden truth is left out unless truth is set.
func (h *Charts) Add(values *[SignalCount]float64, truth bool) {
	step := int(h.Step())
	if h.second++; (h.second-1)%step != 0 {
		return
	}
	n := SignalCount
	if !truth {
		n = FirstTruth
	}
	for i := range n {
		h.Tracks[i].Add(values[i])
	}
	if h.Tracks[0].Len() < mostValues {
		return
	}
	for i := range h.Tracks {
		h.Tracks[i].Halve()
	}
	h.StepS = 2 * h.Step()
}

// Step is the time from one value to the next.
func (h *Charts) Step() float64 { return max(h.StepS, 1) }

// Extend lets the newest of spans last until now, or begins another one when its words differ. No words end it.
func Extend(spans []Span, now float64, text string, fill ui.BandFill) []Span {
	if n := len(spans); n > 0 && spans[n-1].Text == text && now-spans[n-1].ToS <= 1.5 {
		spans[n-1].ToS = now
		return spans
	}
	if text == "" {
		return spans
	}
	if n := len(spans); n > 0 && now-spans[n-1].ToS <= 1.5 {
		spans[n-1].ToS = now
	}
	return append(spans, Span{FromS: now, ToS: now, Text: text, Fill: fill})
}

// top is the upper end of a signal's scale: fixed, or the next round number above its values.
func (h *Charts) top(s Signal) float64 {
	k := &signals[s]
	_, hi := h.Tracks[s].Range()
	if with := s.joins(); with != s {
		_, other := h.Tracks[with].Range()
		hi = math.Max(nothing(hi), nothing(other))
	}
	if k.high > 0 && !(hi > k.high) {
		return k.high
	}
	if hi = nothing(hi); hi == 0 {
		return 1
	}
	return roundUp(hi)
}

func nothing(v float64) float64 {
	if v != v {
		return 0
	}
	return v
}

// roundUp is the next of 1, 2, 3, 5 times a power of ten.
func roundUp(v float64) float64 {
	p := 1.0
	for p*10 <= v {
		p *= 10
	}
	for p > v && p > 1e-3 {
		p /= 10
	}
	for _, k := range [...]float64{1, 2, 3, 5, 10} {
		if k*p >= v {
			return max(k*p, 1e-2)
		}
	}
	return 10 * p
}
