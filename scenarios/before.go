// This file holds what a colleague has done at the bench before the case: how such an act is read, and the check that it is one
// that the bench allows.

package scenarios

import (
	"fmt"
	"slices"

	"rouleau/scenarios/yamlread"
	"rouleau/sim"
)

// action is an act as the model takes it.
func (b *Bench) action(a *Act, day yamlread.Date) sim.Action {
	verb, _ := sim.VerbNamed(a.Do)
	part, _ := sim.PartNamed(a.On)
	out := sim.Action{Do: verb, On: part}
	switch {
	case verb == sim.Hang && a.Choice != "":
		out.Value = float64(slices.IndexFunc(b.Packs, func(p Pack) bool { return p.Solution == a.Choice && !p.Expires.Before(day) }))
	case a.Choice != "":
		out.Value, _ = ValueNamed(verb, a.Choice)
	case a.Value != nil:
		out.Value = *a.Value
	}
	return out
}

// before checks the acts one by one, and where the whole file could be read also whether the bench allows them in this order.
func (c *checker) before() {
	for i := range c.f.Bench.Before {
		if path := fmt.Sprintf("bench.before[%d]", i); c.sound(path) {
			a := &c.f.Bench.Before[i]
			c.act(path, &UntilAct{Do: a.Do, On: a.On, Choice: a.Choice}, number{"value", a.Value})
			verb, known := sim.VerbNamed(a.Do)
			if known && HasValue(verb) && a.Choice == "" && a.Value == nil {
				c.Fault(path, a.Do+" needs a value", "choice or value beside it")
			}
		}
	}
	if len(c.f.Bench.Before) == 0 || len(c.Faults()) > 0 {
		return
	}
	drawn := (&Scenario{File: *c.f}).Case(1, false)
	acts := drawn.Before
	drawn.Before = nil
	s := sim.Start(&drawn, 1)
	drawn.Before = acts
	if done, why := sim.Before(&drawn, &s); why != "" {
		c.Fault(fmt.Sprintf("bench.before[%d]", done), fmt.Sprintf("the bench refuses this act after those before it (%s)", why), "acts in the order in which a person can do them")
	}
}
