// Package says puts what happened on the bench into words, for the log of the window and for pages about a case.
package says

import (
	"math"
	"math/bits"
	"strconv"
	"strings"

	"rouleau/assets/words"
	"rouleau/sim"
)

// Occurrence is one occurrence in words, whoever speaks left out. The lines are those of the scenario.
func Occurrence(o *sim.Occurrence, lines []string) string {
	switch o.Kind {
	case sim.Said:
		if o.Line >= 0 && o.Line < len(lines) {
			return lines[o.Line]
		}
		return filled("say."+o.Key, o.Value)
	case sim.Came:
		text := Came(o)
		if o.Act.On != sim.NoPart {
			text = words.Say("part."+o.Act.On.String()) + ": " + text
		}
		return text
	case sim.Done:
		text := Act(&o.Act)
		if o.Act.Auto {
			text = words.Say("log.automatic", text)
		}
		return text
	case sim.Refused:
		return words.Say("log.refused", Act(&o.Act), words.Say("why."+o.Key))
	case sim.Alarmed:
		return words.Say("log.alarm", words.Say("alarm."+o.Key))
	case sim.Calmed:
		return words.Say("log.calm", words.Say("alarm."+o.Key))
	}
	return ""
}

// Came is what came about by itself, without the part it came about at.
func Came(o *sim.Occurrence) string { return filled("came."+o.Key, o.Value) }

// filled is a text with the value put in, if it asks for one.
func filled(key string, value float64) string {
	if strings.Contains(words.Say(key), "%.") {
		return words.Say(key, value)
	}
	return words.Say(key)
}

// Act names an act with what it is about.
func Act(a *sim.Action) string {
	if a.Do == sim.Clamp { // the clamp and how it stands now say it all
		return objectOf(a)
	}
	text := words.Say("act." + a.Do.String())
	if object := objectOf(a); object != "" {
		return text + " " + object
	}
	return text
}

func objectOf(a *sim.Action) string {
	part := ""
	if a.On != sim.NoPart {
		part = words.Say("part." + a.On.String())
	}
	number := strconv.FormatFloat(math.Round(10*a.Value)/10, 'f', -1, 64) // the screens show no more digits
	switch a.Do {
	case sim.Watch, sim.Unhook, sim.Fill, sim.Wash, sim.Empty, sim.StopAll, sim.StopPump, sim.Mix, sim.TestVacuum, sim.NewBag, sim.ChangeWaste, sim.TakeDown, sim.EndCase, sim.TakePumpBlood:
		return ""
	case sim.Decide:
		return words.Say("decision." + sim.Decision(a.Value).String())
	case sim.ChooseAnticoagulant:
		return words.Say("solution." + sim.Solution(a.Value).String())
	case sim.ChooseBowl:
		return words.Say("bowl." + sim.BowlKind(a.Value).String())
	case sim.Ask:
		return words.Say("log.quoted", words.Say("request."+sim.Request(a.Value).String()))
	case sim.Declare:
		return words.Say("incident." + sim.Incident(a.Value).String())
	case sim.Route:
		if sim.Destination(a.Value) == sim.ToReservoir {
			return words.Say("part.reservoir")
		}
		return words.Say("bench.theatre_suction")
	case sim.Clamp:
		return part + " " + yesNo(a.Value, "bench.open", "bench.closed")
	case sim.Answer:
		return yesNo(a.Value, "top.yes", "top.no")
	case sim.AutoStop, sim.AutoWash, sim.AutoEmpty, sim.Squeeze:
		return yesNo(a.Value, "log.on", "log.off")
	case sim.Label, sim.HandOver:
		return part + ", " + words.Say("panel.of", bits.OnesCount8(uint8(a.Value)), sim.LabelFieldCount)
	case sim.Identify:
		return part + ", " + words.Say("panel.people", int(a.Value))
	case sim.JoinCircuit:
		return yesNo(a.Value, "log.with_filter", "log.without_filter")
	case sim.Hook:
		return part + ", " + yesNo(a.Value, "log.with_filter", "log.without_filter")
	case sim.Reconcile:
		return words.Say("tally."+sim.TallyItem(a.Item).String()) + " " + number + " mL"
	case sim.Note:
		return words.Say("log.quoted", a.Text)
	case sim.SetDrip:
		return words.Say("bench.drops", number)
	case sim.SetVacuum:
		return words.Say("bench.mmhg", number)
	case sim.SetFillRate, sim.SetWashRate, sim.SetEmptyRate, sim.GiveRate:
		return number + " mL/min"
	case sim.SetWashVolume, sim.Prime, sim.EstimateLoss, sim.AutoFillAt:
		return number + " mL"
	}
	return part
}

func yesNo(value float64, yes, no string) string {
	if value != 0 {
		return words.Say(yes)
	}
	return words.Say(no)
}
