// Alarms in the drawing: the part that an alarm is about carries its sign, so that eyes need not go from the row of time to
// the bench and search.

package bench

import (
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

const alarmSign = 26 // side of the sign, in pixels

// alarmed puts the sign of the most urgent alarm that is about a part onto it.
func (g *scene) alarmed(p sim.Part, r ui.Rect) {
	for i := range g.v.Alarms {
		a := &g.v.Alarms[i]
		if g.about(a.Is) != p {
			continue
		}
		at := ui.R(r.X+3, r.Y+3, alarmSign, alarmSign)
		switch p {
		case sim.PumpPart: // as small as the sign itself
			at = r.Place(alarmSign, alarmSign, 0.5, 0.5)
		case sim.WasteBag: // words stand in it
			at.X, at.Y = r.X, r.Y-alarmSign-2
		}
		g.c.AlarmSign(at, priority(a.Is), a.Known)
		return
	}
}

// about is the part of the drawing where the cause of an alarm is seen; NoPart where it has no one place.
func (g *scene) about(a sim.Alarm) sim.Part {
	switch a {
	case sim.AlarmAir, sim.AlarmNoFlow, sim.AlarmNoPower:
		return sim.PumpPart
	case sim.AlarmReaction, sim.AlarmBagEmpty:
		return sim.PatientPart
	case sim.AlarmNoVacuum, sim.AlarmReservoirFull, sim.AlarmReservoirEmpty, sim.AlarmClot, sim.AlarmLayered:
		return sim.ReservoirPart
	case sim.AlarmNoDrip:
		return sim.AnticoagulantHook
	case sim.AlarmWashEmpty:
		if !g.v.Seen.Bench.Open[sim.WashClampA] && g.v.Seen.Bench.Open[sim.WashClampB] {
			return sim.WashHookB
		}
		return sim.WashHookA
	case sim.AlarmWasteFull:
		return sim.WasteBag
	case sim.AlarmBagFull:
		if i := g.v.newest(); i >= 0 {
			return sim.Bag(i)
		}
	case sim.AlarmFieldHidden:
		return sim.FieldPart
	case sim.AlarmInterface:
		return sim.BowlPart
	}
	return sim.NoPart
}
