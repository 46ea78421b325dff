package debrief

import (
	"cmp"
	"slices"

	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// The hand plays the person's own later acts in a course that has become another one. Where nothing has changed it does what
// the person did at the same ticks, so a fork that changes nothing is the same run to the bit. Where something has changed it
// keeps to what the person went by: a filling is stopped at the same reading and not at the same second, what cannot be done yet
// is tried again, what makes no sense any more is left out, and when all else is done what was left over is worked off as
// the person worked before.

// line is a line of work whose acts keep their order; those of another line do not wait for them.
type line uint8

const (
	apart   line = iota // each act for itself
	pumping             // bowl, pump, lines, waste
	giving              // bags and the patient
	closing             // the tidy end
	lines
)

// step is one act that the hand has before it.
type step struct {
	act   sim.Action
	own   int   // which of the person's acts it is or goes by, -1 for one put in
	due   int64 // at the earliest, before the lag of its line
	until int64 // then it is given up
	order int   // among those of one tick
	stop  *StopAt
	again int64         // not before this tick once more
	asked *sim.Question // that it answered
	ran   int           // one more than the act that let the blood run in during which it was done, 0 for none
	tried bool          // it has had to wait
	done  bool
}

// hand is what is still to be done.
type hand struct {
	rec      *Record
	edit     *Edit
	queue    [lines][]step
	lag      [lines]int64
	doneAt   []int64      // when each of the person's acts was done here, -1 for not yet
	lastDone [lines]int64 // tick of the act done last
	lastDue  [lines]int64 // and when it was due
	near     []place
	seen     sim.Seen
	seenAt   int64
	steady   *operators.Steady
	reflexAt int64 // not before this tick again
	askedAt  int64 // when it last asked whether the field is clear, on its own
	still    stood // of the pump in this course
	begun    bool
	waste    sim.PumpMode // what the pump did when the waste bag was full, to go on with it
	emptied  int8         // the pack that was taken down empty
	drained  int8         // the same of anticoagulant
	bed      bed          // of the own act asked about last
	byEye    bool         // the person goes by the bed and not by the detector

	leakAct   int     // the person's act that stopped a leaking bowl, -1 for none, 0 not looked for yet
	leakAfter int64   // and how long after the alarm
	short     int     // the bowl that ran out of blood
	filledOn  int     // the bowl that the hand went on with filling
	fullAgain int     // and the one that it filled on until it was full
	endedWash int     // the bowl whose wash was stopped by hand
	extra     int     // bowls and returns added so far
	bowls     [][]int // acts of each of the person's own whole bowls
	returns   [][]int // and returns
}

// How long an act that is not possible is tried again, in ticks [A].
const (
	patience     = 120 * sim.TicksPerSecond
	linePatience = 15 * 60 * sim.TicksPerSecond
	endPatience  = 45 * 60 * sim.TicksPerSecond
)

// newHand begins with the person's acts from one of them on.
func newHand(rec *Record, e *Edit, from int) *hand {
	h := &hand{rec: rec, edit: e, seenAt: -1, emptied: -1, drained: -1}
	h.bowls, h.returns, h.byEye = rec.bowls(), rec.returns(), rec.byEye()
	h.doneAt = slices.Repeat([]int64{-1}, len(rec.Run.Actions))
	put := func(l line, s step) {
		if s.until == 0 {
			s.until = s.due + [lines]int64{apart: patience, pumping: linePatience, giving: linePatience, closing: endPatience}[l]
			if bidesClear(&s.act) || s.act.Do == sim.Unhang || s.act.Do == sim.Hang { // they wait for a field, or for a wash
				s.until = s.due + linePatience
			}
		}
		h.queue[l] = append(h.queue[l], s)
	}
	for _, a := range e.Add {
		s := step{act: a.Act, own: -1, due: a.Act.Tick, order: -1}
		if a.PatienceS > 0 {
			s.until = a.Act.Tick + int64(a.PatienceS)*sim.TicksPerSecond
		}
		put(apart, s) // it waits for nothing but itself
	}
	for i := from; i < len(rec.Run.Actions); i++ {
		if e.drops(i) {
			continue
		}
		s := step{act: rec.Run.Actions[i], own: i, due: rec.Run.Actions[i].Tick, order: i}
		for k := range e.Swap {
			if e.Swap[k].Own == i {
				s.act, s.due = e.Swap[k].Act, e.Swap[k].Act.Tick
			}
		}
		l := rec.lineOf(&s)
		for k := range e.First {
			if e.First[k].Own == i {
				for _, a := range e.First[k].Acts {
					put(l, step{act: a, own: -1, due: s.due, order: i}) // in the line of what waits for it
				}
			}
		}
		for k := range e.Stops {
			if e.Stops[k].Own == i {
				s.stop = &e.Stops[k]
			}
		}
		s.asked = rec.answered(&s)
		if k := rec.letRun(i); k >= from && !e.drops(k) {
			s.ran = k + 1
		}
		if s.asked != nil || s.ran > 0 || afterGiving(&s.act) {
			s.until = rec.Run.Case.LastTick
		}
		put(l, s)
	}
	for l := range h.queue {
		slices.SortStableFunc(h.queue[l], func(a, b step) int { return cmp.Compare(a.due, b.due) })
	}
	return h
}

// lineOf is the line of work that an act belongs to.
func (rec *Record) lineOf(s *step) line {
	a := &s.act
	switch a.Do {
	case sim.Fill, sim.Wash, sim.Empty, sim.DrawBack, sim.SendBack, sim.TopUp, sim.StopPump, sim.StopAll, sim.ChangeWaste, sim.ClearLine,
		sim.NewBag, sim.Mix:
		return pumping
	case sim.MixBag, sim.Label, sim.ExpelAir, sim.HandOver, sim.Identify, sim.Hook, sim.Unhook, sim.GiveRate, sim.Squeeze:
		return giving
	case sim.Sample:
		if a.On >= sim.FirstBag {
			return giving
		}
	case sim.TakeDown, sim.Reconcile, sim.EndCase:
		return closing
	case sim.EstimateLoss:
		if s.own >= 0 && rec.moments[s.own].seen.OpenQuestion != sim.EventAskLoss && a.Tick >= rec.Run.Case.EndTick {
			return closing
		}
	}
	return apart
}

// view is what can be seen in this tick.
func (h *hand) view(r *play.Run) *sim.Seen {
	if h.seenAt != r.State.Tick {
		sim.View(&r.Case, &r.State, &h.seen)
		h.seenAt = r.State.Tick
	}
	return &h.seen
}

// tick does what is due before a tick passes.
func (h *hand) tick(r *play.Run) {
	if h.edit.Good > 0 && r.State.Tick >= h.edit.Good {
		h.good(r)
		return
	}
	whole := r.State.Tick%sim.TicksPerSecond == 0
	switch {
	case whole && h.begun:
		h.still = h.still.next(&r.State)
	case whole:
		h.still, h.begun = h.rec.stoodAt(r.State.Tick), true
	}
	if rule := h.rule(r); rule != nil && whole {
		rule.Act(h.view(r), func(a sim.Action) sim.Reason { h.seenAt = -1; return r.Do(a) })
	}
	if whole {
		h.listen(r)
		h.endsFilling(r)
		h.reacts(r)
		h.owns(r)
		h.supply(r)
		h.keepsDripping(r)
		h.leaks(r)
		h.more(r)
	}
	h.gather(r)
	var waits [lines]bool
	done := false
	for _, k := range h.near {
		s := &h.queue[k.line][k.at]
		if waits[k.line] || k.line != apart && !h.isDue(r, k.line, s) {
			waits[k.line] = waits[k.line] || k.line != apart
			continue
		}
		if s.tried && !whole && r.State.Tick != s.due {
			waits[k.line] = k.line != apart
			continue // what has to wait is tried once a second
		}
		h.try(r, k.line, s)
		s.tried, done = true, done || s.done
		waits[k.line] = k.line != apart && !s.done
	}
	if done {
		for l := range h.queue {
			h.queue[l] = slices.DeleteFunc(h.queue[l], func(s step) bool { return s.done })
		}
	}
}

// rule is the edit's rule in its time, nil where there is none now.
func (h *hand) rule(r *play.Run) *Rule {
	if rule := h.edit.Rule; rule != nil && r.State.Tick >= rule.From && r.State.Tick < rule.Until {
		return rule
	}
	return nil
}

// leaves says whether a line of work is left to the rule now.
func (h *hand) leaves(r *play.Run, l line) bool {
	rule := h.rule(r)
	return rule != nil && rule.Does == l
}

// place is where a step stands.
type place struct {
	line line
	at   int
}

// gather lists the steps that may be due, those that were put in first and then in the person's order.
func (h *hand) gather(r *play.Run) {
	h.near = h.near[:0]
	for l := range h.queue {
		if q := h.queue[l]; line(l) != apart && (len(q) == 0 || q[0].due > r.State.Tick && r.State.Tick%sim.TicksPerSecond != 0 || !h.isDue(r, line(l), &q[0])) {
			continue // what may come before its own time is looked at once a second
		}
		for i := range h.queue[l] {
			if s := &h.queue[l][i]; s.due > r.State.Tick && i > 0 || line(l) == apart && s.due > r.State.Tick {
				break
			}
			h.near = append(h.near, place{line(l), i})
		}
	}
	if len(h.near) > 1 {
		slices.SortStableFunc(h.near, func(a, b place) int {
			return cmp.Compare(h.queue[a.line][a.at].order, h.queue[b.line][b.at].order)
		})
	}
}

// try does an act, keeps it for later, or gives it up.
func (h *hand) try(r *play.Run, l line, s *step) {
	ready, moot := h.ready(r, l, s)
	if ready && !moot {
		a := h.adapted(r, s)
		why := sim.May(&r.Case, &r.State, a)
		if why == "" {
			if l == pumping {
				h.setFirst(r, s)
			}
			if h.stopsDry(r, s) {
				h.short = r.State.CycleUsed
			}
			if r.State.Pump.Mode == sim.PumpWash && (a.Do == sim.StopPump || a.Do == sim.StopAll) {
				h.endedWash = r.State.CycleUsed
			}
			r.Do(a)
			h.seenAt, s.done = -1, true
			h.lastDone[l], h.lastDue[l] = r.State.Tick, s.due
			if s.own >= 0 {
				h.doneAt[s.own] = r.State.Tick
				h.lag[l] = r.State.Tick - s.due
			}
			if h.askedInVain(r, s) && r.State.Tick < s.until {
				s.again, s.done = r.State.Tick+clearAgain, false
			}
			return
		}
		moot = s.own >= 0 && (h.hopeless(r, why) || h.nothingToClear(r, s, why))
		if l == pumping && !moot {
			h.reflex(r, why)
			h.makesRoom(r, s, why)
		}
	}
	until := s.until
	if l == pumping || l == giving { // its turn has only come
		until = max(until, h.lastDone[l]+linePatience)
	}
	s.done = moot || r.State.Tick >= until
}

// hopeless says whether a refusal will stay one.
func (h *hand) hopeless(r *play.Run, why sim.Reason) bool {
	switch why {
	case "bag_is_discarded", "no_more_bags", "no_more_cycles", "no_more_samples", "taken_down", "not_allowed_here", "case_is_over",
		"pump_stands", "everything_stands", "bowl_is_empty", "set_is_open", "pack_hangs_already", "hook_is_taken", "hook_is_empty", "line_is_connected":
		return true
	case "no_such_bag", "bag_is_empty", "nothing_in_bag":
		return !h.fills(r)
	}
	return false
}

// adapted is an act with what its value has to be here: what a person writes down goes by what there is to be seen.
func (h *hand) adapted(r *play.Run, s *step) sim.Action {
	a := s.act
	if s.own < 0 {
		return a
	}
	if h.hardlyWashed(r, s) {
		a.Do = sim.SendBack
		return a
	}
	if own := h.rec.Run.Actions[s.own]; a.Value != own.Value || a.Item != own.Item || a.On != own.On { // put right by the edit
		return a
	}
	m := &h.rec.moments[s.own]
	switch a.Do {
	case sim.Hang:
		k := int(a.Value)
		if h.view(r).Bench.PackLeftML[k] < lowWashML && m.seen.Bench.PackLeftML[k] >= lowWashML { // it was needed sooner here
			if fresh := h.packLike(r, k, r.State.Bench.Packs[k].Solution); fresh >= 0 {
				a.Value = float64(fresh)
			}
		}
	case sim.Reconcile:
		a.Value = max(0, a.Value+(sim.TallyTruth(&r.State)[a.Item]-m.tally[a.Item]))
	case sim.EstimateLoss:
		a.Value = max(0, a.Value+(r.State.Patient.ShedML-m.shed))
	}
	_, most, _ := sim.ValueRange(a.Do)
	a.Value = min(a.Value, max(most, s.act.Value))
	return a
}

// good lets steady play on.
func (h *hand) good(r *play.Run) {
	if h.steady == nil {
		h.steady = operators.NewSteady(operators.SheetOf(h.rec.Scenario, &r.Case))
	}
	if r.State.Tick%sim.TicksPerSecond == 0 {
		h.steady.Act(h.view(r), func(a sim.Action) sim.Reason { h.seenAt = -1; return r.Do(a) })
	}
}
