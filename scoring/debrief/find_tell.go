package debrief

import (
	"slices"

	"rouleau/scoring/play"
	"rouleau/sim"
)

// Decisions in communicating and recording: what they all share is how the bench looked at a moment, and how soon people speak.

var telling = slices.Concat(communicating, recording)

var communicating = []aspect{
	{name: "warn_of_agent", measures: []string{"warned_of_agent"}, find: findWarn},
	{name: "ask_clear", measures: []string{"asked_about_agent", "agent_collected_ml"}, critical: []string{"contaminated_given"}, find: findAskClear},
	{name: "answer", measures: []string{"questions_answered_share", "loss_estimate_error"}, find: findAnswers},
	{name: "hand_over", measures: []string{"handover_complete_share"}, find: findHandOver},
	{name: "tell_reason", measures: []string{"reason_told"}, find: findTellReason},
	{name: "tell_clotting", measures: []string{"clotting_told_after_ml"}, find: findTellClotting},
	{name: "send_for_fluid", measures: []string{"saline_left_when_sent_for_ml"}, find: findSendForFluid},
	{name: "anti_d", measures: []string{"anti_d_asked"}, find: findAntiD},
	{name: "fetal_test", measures: []string{"fetal_test_asked"}, find: findFetalTest},
}

var recording = []aspect{
	{name: "last_loss", measures: []string{"loss_estimate_error"}, find: findLastLoss},
	{name: "tally", measures: []string{"tally_error", "tally_lines_written"}, find: findTally},
	{name: "declare", measures: []string{"incidents_declared_share", "wrong_pack_told"}, critical: mendedByTelling(), find: findDeclare},
	{name: "false_alarm", measures: []string{"incidents_declared_share"}, find: findFalseAlarms},
	{name: "wrong_pack_told", measures: []string{"wrong_pack_told"}, find: findWrongPackTold},
	{name: "note", measures: []string{"decision_noted"}, find: findNote},
}

const (
	soonSaid    = 15 * sim.TicksPerSecond // from hearing or seeing something to saying something [A]
	mostOfAKind = 8                       // decisions of one aspect
)

// seenAt is how the bench looked at a tick, before the acts of that tick.
func (rec *Record) seenAt(tick int64) *sim.Seen {
	s := rec.onFrom(rec.markBefore(tick), func(s *sim.State) bool { return s.Tick >= tick })
	var v sim.Seen
	sim.View(&rec.Run.Case, &s, &v)
	return &v
}

// onFrom plays on from a mark until something is so, or to the end.
func (rec *Record) onFrom(m *play.Mark, until func(s *sim.State) bool) sim.State {
	s, acts := m.State, rec.Run.Actions[m.Acts():]
	var h sim.Happened
	for !until(&s) && !s.Ended {
		for len(acts) > 0 && acts[0].Tick <= s.Tick {
			sim.Apply(&rec.Run.Case, &s, acts[0], &h)
			acts = acts[1:]
		}
		sim.Step(&rec.Run.Case, &s, &h)
		h.List = h.List[:0]
	}
	return s
}

// heard is the first tick from a tick on at which one of these lines of the catalogue was said, -1 for never.
func (rec *Record) heard(from int64, keys ...string) int64 {
	for i := range rec.Run.Log {
		if o := &rec.Run.Log[i]; o.Tick >= from && o.Kind == sim.Said && o.Key != "" && slices.Contains(keys, o.Key) {
			return o.Tick
		}
	}
	return -1
}

// given is the first tick at which so much washed blood had run in, -1 for never.
func (rec *Record) given(ml float64) int64 {
	for i := range rec.Run.Trace {
		if rec.Run.Trace[i].GivenML >= ml {
			return rec.Run.Trace[i].Tick
		}
	}
	return -1
}

// firstBlood is when the first blood was shed, the end where none was.
func (rec *Record) firstBlood() int64 {
	for i := range rec.Run.Trace {
		if rec.Run.Trace[i].ShedML > 0 {
			return rec.Run.Trace[i].Tick
		}
	}
	return rec.lastTick
}

// ends is the person's act that ended the case, -1 where it was never ended.
func (f *finding) ends() int { return f.first(f.c.EndTick, does(sim.EndCase)) }

// inTime keeps a moment within what was played.
func (f *finding) inTime(tick int64) int64 {
	last := f.rec.lastTick - sim.TicksPerSecond
	if i := f.first(0, does(sim.EndCase)); i >= 0 {
		last = f.acts[i].Tick
	}
	return max(0, min(tick, last))
}

// some are the decisions of an aspect, and before them all of them as one where there are several.
func some(single []Decision, text string) []Decision {
	if len(single) < 2 {
		return single
	}
	whole := Decision{Fault: single[0].Fault, Title: text, Tick: single[0].Tick, Done: -1}
	for i := range single {
		e := &single[i].Edit
		if single[i].Fault != whole.Fault {
			whole.Fault = Wrong
		}
		whole.Tick = min(whole.Tick, single[i].Tick)
		whole.Edit.Drop = append(whole.Edit.Drop, e.Drop...)
		whole.Edit.Swap = append(whole.Edit.Swap, e.Swap...)
		whole.Edit.First = append(whole.Edit.First, e.First...)
		whole.Edit.Add = append(whole.Edit.Add, e.Add...)
	}
	for i := range single {
		single[i].Part = true
	}
	return append([]Decision{whole}, single[:min(len(single), mostOfAKind-1)]...)
}

// saying is a decision in which something more is said at a moment.
func saying(tick int64, what sim.Verb, value float64) Edit {
	return Edit{Add: []Add{{Act: act(tick, what, sim.NoPart, value)}}}
}
