// This file draws what happens in a case: contaminants, phases and events.

package scenarios

import (
	"slices"

	"rouleau/sim"
)

// kindsOf are the names of the kinds of events, in the order of the model's constants.
var kindsOf = [...]struct {
	name string
	kind sim.EventKind
}{
	{"say", sim.EventSay},
	{"ask_loss", sim.EventAskLoss},
	{"ask", sim.EventAsk},
	{"request_blood", sim.EventRequestBlood},
	{"agent_on", sim.EventAgentOn},
	{"agent_off", sim.EventAgentOff},
	{"detector_fault", sim.EventDetectorFault},
	{"vacuum_lost", sim.EventVacuumLost},
	{"vacuum_back", sim.EventVacuumBack},
	{"power_lost", sim.EventPowerLost},
	{"power_back", sim.EventPowerBack},
	{"bowl_leak", sim.EventBowlLeak},
	{"reaction", sim.EventReaction},
	{"heparin", sim.EventHeparin},
	{"protamine", sim.EventProtamine},
	{"touch", sim.EventTouch},
	{"bypass", sim.EventBypass},
	{"pump_blood", sim.EventPumpBlood},
	{"line_loosens", sim.EventLineLoose},
}

// kind is the model's kind of an event, 0 for a name it does not know.
func (e *Event) kind() sim.EventKind {
	for _, k := range kindsOf {
		if k.name == e.Kind {
			return k.kind
		}
	}
	return 0
}

func contaminantIndex(all []Contaminant, name string) int {
	return slices.IndexFunc(all, func(c Contaminant) bool { return c.Name == name })
}

func (d *drawing) contaminant(c *Contaminant) sim.ContaminantSpec {
	return sim.ContaminantSpec{AgentPerML: d.of(c.AgentPerML), Name: c.Label, Unit: c.Unit, BoundShare: c.BoundShare,
		Procoagulant: c.Procoagulant, MustDivert: c.MustDivert, LimitPerML: c.LimitPerML, HaemostatFull: c.HaemostatFull}
}

func (d *drawing) phase(p *Phase, contaminants []Contaminant) sim.Phase {
	fluid, _ := sim.SolutionNamed(p.IrrigationFluid)
	ph := sim.Phase{Name: p.Name, StartTick: tickOf(p.Starts), BleedMLMin: d.of(p.BleedingMLMin),
		IrrigationMLMin: d.of(p.IrrigationMLMin), Irrigation: fluid, SwabShare: d.of(p.SwabShare), DrapeShare: d.of(p.DrapeShare),
		FatMLPerML: d.of(p.FatShare), LysedShare: d.of(p.LysedShare)}
	ph.BodyFluidMLMin = d.of(p.BodyFluidMLMin)
	for _, e := range p.ContaminantPerML {
		ph.ContaminantPerML[contaminantIndex(contaminants, e.Key)] = d.of(e.Value)
	}
	return ph
}

func (d *drawing) event(e *Event, contaminants []Contaminant) sim.EventSpec {
	who, _ := sim.SpeakerNamed(e.Who)
	spec := sim.EventSpec{Kind: e.kind(), Who: who, Line: -1, Within: ticksOfMin(e.WithinMin)}
	if e.At != nil {
		spec.At = tickOf(*e.At)
	}
	spec.At += ticksOfMin(d.of(e.LaterByMin))
	if w := e.When; w != nil {
		spec.When, spec.Threshold = d.condition(w)
	}
	switch spec.Kind {
	case sim.EventAgentOn, sim.EventAgentOff:
		spec.Value = float64(contaminantIndex(contaminants, e.Agent))
	case sim.EventAsk:
		if e.RightAnswer != nil && *e.RightAnswer {
			spec.Value = 1
		}
	case sim.EventDetectorFault:
		spec.Value = d.maybe(e.DetectorOffset)
	case sim.EventBowlLeak:
		spec.Value = d.maybe(e.LeakMLMin)
	case sim.EventHeparin:
		spec.Value = d.maybe(e.HeparinIU)
	case sim.EventProtamine:
		spec.Value = d.maybe(e.ProtamineMG)
	case sim.EventLineLoose:
		line, _ := sim.PartNamed(e.Line)
		spec.Value = float64(line)
	case sim.EventBypass:
		spec.Value = d.maybe(e.PumpML)
	}
	return spec
}

func (d *drawing) condition(w *Condition) (sim.Trigger, float64) {
	switch {
	case w.HaemoglobinBelow != nil:
		return sim.WhenHbBelow, d.of(*w.HaemoglobinBelow)
	case w.ShedAbove != nil:
		return sim.WhenShedAbove, d.of(*w.ShedAbove)
	case w.GivenAbove != nil:
		return sim.WhenGiving, d.of(*w.GivenAbove)
	case w.ProductAbove != nil:
		return sim.WhenProduct, d.of(*w.ProductAbove)
	}
	return sim.AtTime, 0
}
