package debrief

import (
	"cmp"
	"slices"
	"strings"

	"rouleau/assets/words"
	"rouleau/scoring"
	"rouleau/sim"
)

// Questions for the person who leads the talk after a case. [S] INACSL Standards Committee, Healthcare Simulation Standards of
// Best Practice: The Debriefing Process, Clin Simul Nurs 2021;58:27–32: a person leads it, it is safe to speak, and it goes from
// reactions through analysis to a summary. So each question is open, asks for the trainee's own view of a moment with what could
// be seen then, and says neither what was right nor what it cost. How many of each there are is an assumption of ours.

// Stage is where in the talk a question belongs.
type Stage uint8

// The stages.
const (
	Reaction Stage = iota
	Analysis
	Summary
)

var stageKeys = [...]string{"questions.reaction", "questions.analysis", "questions.summary"}

// String names the stage for people.
func (s Stage) String() string { return words.Say(stageKeys[s]) }

// Question is one question.
type Question struct {
	Stage Stage
	Tick  int64 // the moment it is about, -1 for none
	Text  string
}

const (
	mostMoments = 3 // decisions that are asked about
	leastAsked  = 5 // questions in all
	sameMoment  = 60 * sim.TicksPerSecond
	justSaid    = 2 * 60 * sim.TicksPerSecond
	worthAsking = 20.0 // mL: less of a layer or a pool is no sight
	worthAPool  = 50.0
	alarmsShown = 2
	worthATalk  = 0.5 // of gain: a smaller matter is left to the trainee
)

// talk is what the questions are made from.
type talk struct {
	d    *Debrief
	rec  *Record
	asks []Question
}

// Questions are five to eight, in the order of the talk. The same debrief and costs give the same questions.
func Questions(d *Debrief, costs []Cost) []Question {
	t := &talk{d: d, rec: d.Record}
	ranked := slices.Clone(costs)
	Rank(ranked)
	ranked = slices.DeleteFunc(ranked, func(c Cost) bool { return c.Gain < worthATalk })
	t.decisions(ranked)
	t.critical()
	t.team(ranked)
	t.well()
	t.fill()
	slices.SortStableFunc(t.asks, func(a, b Question) int { return cmp.Compare(a.Tick, b.Tick) })
	all := []Question{{Stage: Reaction, Tick: -1, Text: words.Say("questions.first", t.rec.Scenario.Title)}}
	all = append(all, t.asks...)
	return append(all, Question{Stage: Summary, Tick: -1, Text: words.Say("questions.last", t.moments())})
}

// ask puts a question about a moment: what there was, and what is asked.
func (t *talk) ask(tick int64, about, prompt string) {
	t.asks = append(t.asks, Question{Stage: Analysis, Tick: tick, Text: about + " " + words.Say(prompt)})
}

// askAt puts one about a moment and a part of the work, with what could be seen and had just been said, if that was not told yet.
func (t *talk) askAt(tick int64, part, prompt string) {
	about := words.Say("questions.stay", clock(tick))
	if !t.near(tick) {
		about = t.look("questions.moment", part, tick, clock(tick))
	}
	t.ask(tick, about, prompt)
}

// look leads to a moment or a stretch of time that begins there: to what is looked at, what could be seen and had just been said.
func (t *talk) look(key, part string, tick int64, times ...any) string {
	v := t.rec.seenAt(tick)
	at := partKeys[part]
	if part == "processing" && !underWay(&v.Pump) {
		at = "questions.set_up"
	}
	return words.Say(key, append(times, words.Say(at), seen(v, part))...) + t.said(tick)
}

var partKeys = map[string]string{"deciding": "questions.deciding", "collecting": "questions.collecting", "processing": "questions.processing",
	"returning": "questions.returning", "communicating": "questions.communicating", "recording": "questions.recording"}

// near says whether a moment is asked about already.
func (t *talk) near(tick int64) bool {
	return slices.ContainsFunc(t.asks, func(q Question) bool { return max(q.Tick-tick, tick-q.Tick) < sameMoment })
}

// decisions asks about those that stand first, each of another kind: first what was seen and thought, at last what the trainee
// would do otherwise.
func (t *talk) decisions(ranked []Cost) {
	var chosen []Decision
	for i := range ranked {
		d := ranked[i].Decision
		if len(chosen) == mostMoments || slices.ContainsFunc(chosen, func(o Decision) bool { return o.Aspect == d.Aspect }) {
			continue
		}
		d.Tick = t.begins(&d)
		if !slices.ContainsFunc(chosen, func(o Decision) bool { return max(o.Tick-d.Tick, d.Tick-o.Tick) < sameMoment }) {
			chosen = append(chosen, d)
		}
	}
	slices.SortStableFunc(chosen, func(a, b Decision) int { return cmp.Compare(a.Tick, b.Tick) })
	for i := range chosen {
		d, key := &chosen[i], "questions.noticed"
		switch {
		case len(chosen) == 1:
			key = "questions.noticed_otherwise"
		case i == len(chosen)-1:
			key = "questions.otherwise"
		case i > 0:
			key = "questions.thought"
		}
		part := t.partOf(d)
		if d.Fault == Late && d.Done > d.Tick+sameMoment {
			t.ask(d.Tick, t.look("questions.span", part, d.Tick, clock(d.Tick), clock(d.Done)), key)
			continue
		}
		t.askAt(d.Tick, part, key)
	}
}

// begins is the moment a decision turns on. One that is put right over a time by a rule turns on the first act that it brings.
func (t *talk) begins(d *Decision) int64 {
	if d.Edit.Rule == nil {
		return d.Tick
	}
	own, other := t.rec.Run.Actions, t.rec.fork(&d.Edit).Actions
	for i := range min(len(own), len(other)) {
		if own[i] != other[i] {
			return wholeSecond(min(own[i].Tick, other[i].Tick))
		}
	}
	return d.Tick
}

// partOf is the part of the work that a decision belongs to.
func (t *talk) partOf(d *Decision) string {
	for _, g := range [...]struct {
		part    string
		aspects []aspect
	}{{"deciding", preparing}, {"collecting", collecting}, {"processing", processing}, {"returning", returning}, {"communicating", communicating}} {
		if slices.ContainsFunc(g.aspects, func(a aspect) bool { return a.name == d.Aspect }) {
			return g.part
		}
	}
	return "recording"
}

// critical asks about one thing that points never make up for, at the moment at which it came about.
func (t *talk) critical() {
	at := slices.IndexFunc(t.d.Own.Grade.Critical, func(c scoring.Critical) bool { return !c.Mended })
	if at < 0 {
		return
	}
	c := &t.d.Own.Grade.Critical[at]
	t.askAt(c.Tick, concerns[c.Name].part, criticalPrompts[c.Name])
}

// criticalPrompts are what is asked about each, in words that leave the answer to the trainee.
var criticalPrompts = map[string]string{
	"collected_after_refusal": "questions.agreed", "heparin_forbidden": "questions.which_fluid", "anticoagulant_given": "questions.which_fluid",
	"wrong_wash_given": "questions.which_fluid", "contaminated_given": "questions.way_of_blood", "unwashed_given": "questions.way_of_blood",
	"haemolysed_given": "questions.way_of_blood", "clot_given": "questions.way_of_blood", "breach_used": "questions.way_of_blood",
	"pressure_on_bag": "questions.running_in", "air_given": "questions.running_in", "through_reaction": "questions.running_in",
	"circuit_parted": "questions.agreed", "not_identified": "questions.whose_bag", "unlabelled_given": "questions.whose_bag",
	"expired_given": "questions.whose_bag", "concealed": "questions.who_knew",
}

// team asks about talking: the decision of most weight there, or else the first thing that the team wanted to know.
func (t *talk) team(ranked []Cost) {
	for i := range ranked {
		d := &ranked[i].Decision
		of := func(a aspect) bool { return a.name == d.Aspect }
		if !t.near(d.Tick) && (d.Aspect == "declare" || slices.ContainsFunc(communicating, of)) {
			t.askAt(d.Tick, "communicating", "questions.who_needed")
			return
		}
	}
	team := &t.rec.Run.State.Team
	for i := range team.Questions[:team.QuestionCount] {
		if q := &team.Questions[i]; q.Kind != sim.EventRequestBlood && q.Line >= 0 && !t.near(q.AskedTick) {
			about := words.Say("questions.was_asked", clock(q.AskedTick), words.Say("speaker."+q.Who.String()), t.rec.Scenario.Lines[q.Line])
			t.ask(q.AskedTick, about, "questions.how_heard")
			return
		}
	}
	t.askAt(wholeSecond(t.rec.lastTick/2), "communicating", "questions.who_needed")
}

func wholeSecond(tick int64) int64 { return tick - tick%sim.TicksPerSecond }

// fill asks about moments of every case where there were too few others: what came first, the fullest reservoir.
func (t *talk) fill() {
	first := "collecting"
	if !t.rec.Run.State.Bench.Opened[sim.CollectionSet] {
		first = "deciding"
	}
	for _, m := range [...]struct {
		part string
		tick int64
	}{{first, t.rec.firstBlood()}, {"processing", t.fullest()}, {"communicating", t.rec.lastTick / 3}} {
		if len(t.asks)+2 >= leastAsked {
			return
		}
		if tick := wholeSecond(m.tick); !t.near(tick) {
			t.askAt(tick, m.part, "questions.noticed_otherwise")
		}
	}
}

// fullest is when the reservoir held most.
func (t *talk) fullest() (tick int64) {
	most := -1.0
	for i := range t.rec.Run.Trace {
		if s := &t.rec.Run.Trace[i]; s.ReservoirML > most {
			most, tick = s.ReservoirML, s.Tick
		}
	}
	return tick
}

// moments are the times asked about, as a list in a sentence.
func (t *talk) moments() string {
	var times []string
	for _, q := range t.asks {
		if c := clock(q.Tick); !slices.Contains(times, c) {
			times = append(times, c)
		}
	}
	return strings.Join(times, ", ")
}
