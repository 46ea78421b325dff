package debrief

import (
	"strings"

	"rouleau/assets/words"
	"rouleau/sim"
)

// What a person at the bench could see at a moment, in the words of a question: no more than that.

// seen lists it, what the part of the work is about first.
func seen(v *sim.Seen, part string) string {
	var all []string
	add := func(key string, args ...any) { all = append(all, words.Say(key, args...)) }
	switch part {
	case "processing":
		reservoir(v, add)
		bowl(&v.Pump, add)
	case "returning", "communicating", "recording":
		bags(v, add)
		if part != "returning" {
			reservoir(v, add)
		}
	case "deciding":
		if !v.Bench.Opened[sim.CollectionSet] {
			add("questions.nothing_open")
			break
		}
		reservoir(v, add)
	default:
		reservoir(v, add)
		drip(v, add)
	}
	shown := 0
	for a := range sim.AlarmCount {
		if v.Alarms[a] && shown < alarmsShown {
			add("questions.alarm", words.Say("alarm."+a.String()))
			shown++
		}
	}
	if v.HandsBusy {
		add("questions.hands_busy")
	}
	if v.OpenQuestion != 0 {
		add("questions.question_open")
	}
	return strings.Join(all, ", ")
}

func reservoir(v *sim.Seen, add func(key string, args ...any)) {
	switch {
	case !v.Bench.Opened[sim.CollectionSet]:
		add("questions.nothing_open")
	case v.ClearML >= worthAsking:
		add("questions.layered", v.ReservoirML, min(v.ClearML, v.ReservoirML)) // an eye rounds the one otherwise than the other
	default:
		add("questions.reservoir", v.ReservoirML)
	}
}

func drip(v *sim.Seen, add func(key string, args ...any)) {
	if v.PoolML >= worthAPool {
		add("questions.pool", v.PoolML)
	}
	if !v.Bench.Opened[sim.CollectionSet] {
		return
	}
	add("questions.drip", v.DropsMin)
	if v.Route == sim.ToDiscard {
		add("questions.sucker_away")
	} else {
		add("questions.sucker_here")
	}
}

// underWay says whether a bowl is.
func underWay(p *sim.SeenPump) bool { return p.CycleOpen || pumpKeys[p.Mode] != "" }

var pumpKeys = map[sim.PumpMode]string{sim.PumpFill: "questions.filling", sim.PumpTopUp: "questions.filling", sim.PumpWash: "questions.washing", sim.PumpEmpty: "questions.emptying"}

func bowl(p *sim.SeenPump, add func(key string, args ...any)) {
	switch key := pumpKeys[p.Mode]; {
	case p.Mode == sim.PumpFill || p.Mode == sim.PumpTopUp:
		add(key, p.Detector)
	case p.Mode == sim.PumpWash:
		add(key, p.WashedML)
	case key != "":
		add(key)
	case p.CycleOpen:
		add("questions.bowl_waits", p.HeldML)
	default:
		add("questions.bowl_empty")
	}
}

func bags(v *sim.Seen, add func(key string, args ...any)) {
	if v.Giving.FlowMLMin > 0 && v.Giving.Bag >= 0 {
		add("questions.running", words.Say("part."+sim.Bag(int(v.Giving.Bag)).String()), v.Giving.FlowMLMin)
	}
	for k := range v.BagsUsed {
		if b := &v.Bags[k]; b.ML > 0 && !b.Discarded {
			add("questions.bag", b.ML, words.Say("part."+sim.Bag(k).String()))
		}
	}
	if v.BloodWantedTick >= 0 {
		add("questions.wanted", clock(v.BloodWantedTick))
	}
	if v.Gas.Tick > 0 {
		add("questions.haemoglobin", v.Gas.HbGDL)
	}
}

// readsBack says whether a line only answers the trainee, or is said every so often.
func readsBack(key string) bool {
	return strings.HasPrefix(key, "reads_back") || key == "gas" || key == "patient_looks_well"
}

// said is what somebody had just said before a moment, as a sentence after the others; nothing where nobody had.
func (t *talk) said(tick int64) string {
	last := -1
	for i := range t.rec.Run.Log {
		o := &t.rec.Run.Log[i]
		if o.Tick > tick {
			break
		}
		if o.Kind == sim.Said && o.Tick >= tick-justSaid && !readsBack(o.Key) {
			last = i
		}
	}
	if last < 0 {
		return ""
	}
	o := &t.rec.Run.Log[last]
	text := ""
	switch {
	case o.Line >= 0:
		text = t.rec.Scenario.Lines[o.Line]
	case strings.Contains(words.Say("say."+o.Key), "%"):
		text = words.Say("say."+o.Key, o.Value)
	default:
		text = words.Say("say." + o.Key)
	}
	return " " + words.Say("questions.had_said", words.Say("speaker."+o.Who.String()), text)
}
