// The act that a step asks for, as somebody would do it who does just what the lesson says.

package coach

import (
	"rouleau/scenarios"
	"rouleau/sim"
)

// Asks gives the act that a step of a lesson waits for, false where it waits for something else.
func Asks(sc *scenarios.Scenario, step int) (sim.Action, bool) {
	g := NewGuide(sc)
	if g == nil || step < 0 || step >= len(g.steps) || g.steps[step].Until.Act == nil {
		return sim.Action{}, false
	}
	return g.asks(g.steps[step].Until.Act), true
}

// asks is the act a step asks for, with a value that will do.
func (g *Guide) asks(u *scenarios.UntilAct) sim.Action {
	do, on := named(u)
	a := sim.Action{Do: do, On: on}
	least, most, whole := sim.ValueRange(do)
	if u.AtLeast != nil {
		least = *u.AtLeast
	}
	if u.AtMost != nil {
		most = *u.AtMost
	}
	switch {
	case do == sim.Hang && u.Choice != "":
		for i := len(g.packs) - 1; i >= 0; i-- {
			if g.will(u, do, float64(i)) {
				a.Value = float64(i)
			}
		}
	case u.Choice != "":
		a.Value, _ = scenarios.ValueNamed(do, u.Choice)
	case u.AtLeast != nil && u.AtMost != nil && !whole:
		a.Value = (least + most) / 2
	case u.AtLeast == nil && u.AtMost != nil:
		a.Value = most
	default:
		a.Value = least
	}
	return a
}
