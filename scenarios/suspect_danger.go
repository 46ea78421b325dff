// This file looks for events that would do harm or go on for ever, which is allowed, since a case may be about just that.

package scenarios

import (
	"fmt"
	"slices"
	"strings"

	"rouleau/scenarios/yamlread"
	"rouleau/sim"
)

// span gives the first and the last second at which an event can come. One that waits for a condition can come late.
func (f *File) span(e *Event) (first, last int) {
	if e.At != nil {
		first = e.At.Seconds + int(60*e.LaterByMin.Low())
		last = e.At.Seconds + int(60*e.LaterByMin.High())
	}
	if e.When != nil || e.At == nil {
		last = max(f.Stops.Seconds, first)
	}
	return first, last
}

// begun gives the kind of event that one ends, "" where it ends none.
func (e *Event) begun() string {
	switch e.kind() {
	case sim.EventAgentOff, sim.EventVacuumBack, sim.EventPowerBack:
		return strings.NewReplacer("_off", "_on", "_back", "_lost").Replace(e.Kind)
	}
	return ""
}

// ofWhat says what is brought or ended beside the kind.
func (e *Event) ofWhat() string {
	if e.Agent == "" {
		return e.Kind
	}
	return e.Kind + " of " + e.Agent
}

// clockOf writes seconds as files do.
func clockOf(seconds int) string { return yamlread.Clock{Seconds: seconds}.String() }

// endsTooSoon reports an event that is over before anything that it could end has begun.
func (c *checker) endsTooSoon(i int, e *Event) {
	soonest := -1 // of what it could end
	for k := range c.f.Events[:i] {
		b := &c.f.Events[k]
		if b.Kind != e.begun() || b.Agent != e.Agent {
			continue
		}
		if !c.sound(at("events", k, "at"), at("events", k, "later_by_min"), at("events", k, "when")) {
			return
		}
		if first, _ := c.f.span(b); soonest < 0 || first < soonest {
			soonest = first
		}
	}
	if soonest < 0 || !c.sound(at("events", i, "at"), at("events", i, "later_by_min"), at("events", i, "when")) {
		return
	}
	if _, last := c.f.span(e); last < soonest {
		c.Fault(at("events", i, "at"), e.ofWhat()+" comes before "+e.begun()+" and so ends nothing", "a time after "+clockOf(soonest))
	}
}

// dangers looks for heparin where it is forbidden, and for agents that do not end or may end before they begin.
func (c *checker) dangers() {
	forbidden := c.f.Patient.HeparinForbidden
	if forbidden && c.f.Patient.HeparinIUML.High() > 0 {
		c.Fault("patient.heparin_iu_ml", "heparin would harm this patient (heparin_forbidden), who has some in the blood before the case", "no heparin, or a patient who may have it")
	}
	for i := range c.f.Events {
		e := &c.f.Events[i]
		switch {
		case e.kind() == sim.EventHeparin && forbidden:
			c.Fault(at("events", i, "kind"), "the event gives heparin to a patient whom heparin would harm (heparin_forbidden)", "no such event, or a patient who may have heparin")
		case e.kind() == sim.EventAgentOn && !c.ended(e):
			c.Fault(at("events", i, "agent"), e.Agent+" is never ended: it comes with the blood as long as the patient bleeds", "an event agent_off of "+e.Agent+" after it")
		case e.begun() != "":
			c.mayEndTooSoon(i, e)
		}
	}
}

// ended tells whether an agent can be ended after it was brought.
func (c *checker) ended(on *Event) bool {
	first, _ := c.f.span(on)
	return slices.ContainsFunc(c.f.Events, func(e Event) bool {
		_, last := c.f.span(&e)
		return e.kind() == sim.EventAgentOff && e.Agent == on.Agent && last >= first
	})
}

// mayEndTooSoon finds an end that some seeds draw before the beginning.
func (c *checker) mayEndTooSoon(i int, e *Event) {
	for k := i - 1; k >= 0; k-- {
		b := &c.f.Events[k]
		if b.Kind != e.begun() || b.Agent != e.Agent {
			continue
		}
		first, _ := c.f.span(e)
		if _, last := c.f.span(b); first < last && e.When == nil && b.When == nil {
			c.Fault(at("events", i, "at"), fmt.Sprintf("with some seeds %s comes before its %s, which can be as late as %s", e.ofWhat(), e.begun(), clockOf(last)),
				"a time after "+clockOf(last))
		}
		return
	}
}
