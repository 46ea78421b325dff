package chart

import (
	"cmp"
	"fmt"
	"slices"

	"rouleau/assets/words"
	"rouleau/sim"
)

// This file finds what happened in a run, and which of it is worth a number on the timeline: a case has hundreds of acts and words,
// and the timeline has no room for as many.

// Named is one thing that happened, which a number on the timeline may stand for.
type Named struct {
	Number     int     // 0 where it has none
	Row        string  // what row it stands in
	FromS, ToS float64 // the same where it did not last
	Times      int     // how often it happened in that time
	Text       string
}

// At most so many have a number in one row; together they have two figures.
const (
	mostActs   = 40
	mostAlarms = 20
	mostSaid   = 39
)

const sameS = 120 // what comes again within it is told once

// event is one thing that happened, or the same one several times within a short while.
type event struct {
	from, to int64 // ticks
	times    int
	key      string // the same for what counts as the same
	weight   int    // what is weightier gets a number first
	place    int    // among those of its row
	last     sim.Occurrence
}

// happened adds the rows of acts, alarms and words.
func (t *teller) happened(says func(*sim.Occurrence) string) (named []Named) {
	acts, alarms, said, number := t.acts(), t.alarms(), t.said(), 0
	for _, row := range []struct {
		m    Moments
		list []event
		most int
	}{
		{Moments{Name: words.Say("chart.row_acts"), strip: acts.strip, counts: acts.counts}, acts.list, mostActs},
		{Moments{Name: words.Say("chart.row_alarms"), strip: alarms.strip, counts: alarms.counts}, alarms.list, mostAlarms},
		{Moments{Name: words.Say("chart.row_said"), strip: said.strip, counts: said.counts}, said.list, mostSaid},
	} {
		if len(row.m.strip) == 0 {
			continue
		}
		numbered := weightiest(row.list, row.most)
		slices.SortStableFunc(row.list, func(a, b event) int { return cmp.Compare(a.from, b.from) })
		for i := range row.list {
			e := &row.list[i]
			n := Named{Row: row.m.Name, FromS: sim.Seconds(e.from), ToS: sim.Seconds(e.to), Times: e.times, Text: says(&e.last)}
			if numbered[e.place] {
				number++
				n.Number = number
				row.m.At = append(row.m.At, Moment{S: n.FromS, number: n.Number})
			}
			named = append(named, n)
		}
		t.ch.Moments = append(t.ch.Moments, row.m)
	}
	return named
}

// weightiest are the places of the events that get a number. Of equal weight the first of a kind goes before the second of
// another.
func weightiest(list []event, most int) map[int]bool {
	type ranked struct {
		event
		nth int
	}
	seen := map[string]int{}
	all := make([]ranked, 0, len(list))
	for i := range list {
		e := &list[i]
		e.place = i
		all = append(all, ranked{*e, seen[e.kind()]})
		seen[e.kind()]++
	}
	slices.SortStableFunc(all, func(a, b ranked) int {
		return cmp.Or(cmp.Compare(b.weight, a.weight), cmp.Compare(a.nth, b.nth), cmp.Compare(a.from, b.from))
	})
	kept := map[int]bool{}
	for _, e := range all[:min(most, len(all))] {
		if e.weight > 0 {
			kept[e.place] = true
		}
	}
	return kept
}

func (e *event) kind() string {
	if e.last.Kind == sim.Done {
		return e.last.Act.Do.String()
	}
	return e.key
}

// again adds an occurrence to the newest event that is the same, or begins another one.
func again(list []event, e event) []event {
	for i := len(list) - 1; i >= 0; i-- {
		k := &list[i]
		if k.key != e.key {
			if e.last.Kind == sim.Done { // acts count as one only while no other comes between
				break
			}
			continue
		}
		if e.from-k.to > sameS*sim.TicksPerSecond {
			break
		}
		k.to, k.times, k.last = max(k.to, e.to), k.times+1, e.last
		return list
	}
	return append(list, e)
}

// happenings are a row before its numbers.
type happenings struct {
	list   []event
	strip  []tick
	counts []string
}

func (h *happenings) add(e event, kind tickKind) {
	e.times = 1
	h.list = again(h.list, e)
	h.strip = append(h.strip, tick{sim.Seconds(e.from), sim.Seconds(e.to), kind})
}

// acts are those of the trainee's own hands; what automatic steps did stands in the row of the bowl.
func (t *teller) acts() (h happenings) {
	done, refused := 0, 0
	for _, o := range t.co.Run.Log {
		switch {
		case o.Kind == sim.Done && !o.Act.Auto:
			done++
			h.add(event{from: o.Tick, to: o.Tick, key: actKey(&o.Act), weight: actWeight(o.Act.Do), last: o}, tickWhole)
		case o.Kind == sim.Refused && !o.Act.Auto:
			refused++
			h.strip = append(h.strip, tick{sim.Seconds(o.Tick), sim.Seconds(o.Tick), tickLow})
		}
	}
	h.counts = append(h.counts, words.Say("course.done", done))
	if refused > 0 { // what was refused is in no attempt that was saved
		t.ch.Caption = words.Say("course.also", t.ch.Caption, words.Say("course.refused_caption"))
		h.counts = append(h.counts, words.Say("course.refused", refused))
	}
	return h
}

// actKey is the same for acts that are one: a value turned in steps is, another question is not.
func actKey(a *sim.Action) string {
	switch a.Do {
	case sim.Ask, sim.Declare, sim.Answer, sim.Route, sim.Decide, sim.Hang, sim.Reconcile:
		return fmt.Sprint(a.Do, a.On, a.Item, a.Value)
	case sim.Inspect, sim.Connect, sim.Clamp:
		return fmt.Sprint(a.Do)
	}
	return fmt.Sprint(a.Do, a.On)
}

// actWeight says how much an act decides. The steps of a bowlful stand in a row of their own.
func actWeight(v sim.Verb) int {
	switch v {
	case sim.Decide, sim.Route, sim.Prime, sim.SetDrip, sim.SetVacuum, sim.Mix, sim.Answer, sim.Ask, sim.ReplaceSet, sim.DiscardIt, sim.DrawBack, sim.SendBack, sim.TopUp,
		sim.HandOver, sim.Hook, sim.JoinCircuit, sim.TakePumpBlood, sim.Declare, sim.EstimateLoss, sim.TakeDown, sim.EndCase, sim.GiveRate, sim.ClearLine:
		return 3
	case sim.OpenSet, sim.ChooseAnticoagulant, sim.ChooseBowl, sim.TestVacuum, sim.Identify, sim.Label, sim.ExpelAir, sim.Sample, sim.NewBag, sim.Hang, sim.Unhook,
		sim.SetFillRate, sim.SetWashRate, sim.SetWashVolume, sim.ChangeWaste, sim.Note:
		return 2
	case sim.Fill, sim.Wash, sim.Empty, sim.StopPump, sim.StopAll, sim.Reconcile:
		return 0
	}
	return 1
}

// alarms are stretches from when they came until they went.
func (t *teller) alarms() (h happenings) {
	since := map[string]int{} // places in the strip
	end := t.co.Run.State.Tick
	for _, o := range t.co.Run.Log {
		switch o.Kind {
		case sim.Alarmed:
			p := priorityOf(o.Key)
			h.add(event{from: o.Tick, to: end, key: o.Key, weight: 1 + int(p), last: o}, barLow+tickKind(p))
			since[o.Key] = len(h.strip) - 1
		case sim.Calmed:
			i, on := since[o.Key]
			if !on {
				continue
			}
			delete(since, o.Key)
			h.strip[i].toS = sim.Seconds(o.Tick)
			for k := len(h.list) - 1; k >= 0; k-- {
				if h.list[k].key == o.Key {
					h.list[k].to = o.Tick
					break
				}
			}
		}
	}
	h.counts = []string{words.Say("course.alarms", len(h.strip))}
	return h
}

func priorityOf(key string) sim.Priority {
	for a := sim.Alarm(0); a < sim.AlarmCount; a++ {
		if a.String() == key {
			return a.Priority()
		}
	}
	return sim.LowPriority
}

// said are the words of the team.
func (t *teller) said() (h happenings) {
	for _, o := range t.co.Run.Log {
		if o.Kind != sim.Said {
			continue
		}
		h.add(event{from: o.Tick, to: o.Tick, key: fmt.Sprint(o.Key, o.Line), weight: saidWeight(&o), last: o}, tickWhole)
	}
	h.counts = []string{words.Say("course.words", len(h.strip))}
	return h
}

// saidWeight says how much a word asks of who hears it: what the case brings most, an answer to a question least.
func saidWeight(o *sim.Occurrence) int {
	if o.Line >= 0 {
		return 4
	}
	switch o.Key {
	case "wants_blood", "gives_donor_unit", "gives_plasma", "oozes_everywhere", "urine_is_dark", "rhythm_changes", "calcium_is_low", "patient_reacts",
		"agent_coming", "field_is_clear", "operation_over", "fluid_has_come":
		return 3
	case "gas", "sample_ready", "takes_second", "back_to_first", "irrigates_again":
		return 2
	case "patient_looks_well", "field_is_not_clear", "swabs_rinsed":
		return 0
	}
	return 1
}
