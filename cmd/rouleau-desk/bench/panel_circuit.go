// The controls of circuits: one that must stay connected to the patient, and the pump that the patient was on.

package bench

import (
	"rouleau/assets/words"
	"rouleau/sim"
)

// circuit joins bag and patient before blood is in the bag, and shows whether they are joined.
func (s *stack) circuit() {
	v := &s.v.Seen
	if v.CircuitAsked || v.Giving.Joined {
		state := words.Say("panel.circuit_open")
		if v.Giving.Joined {
			state = words.Say("panel.circuit_joined")
		}
		s.read(words.Say("panel.circuit"), state)
	}
	s.hold(words.Say("panel.join_circuit"), on(sim.JoinCircuit, sim.NoPart, 1))
}

// pumpBlood takes over what a pump's circuit holds, when it is offered.
func (s *stack) pumpBlood() {
	v := &s.v.Seen
	if v.PumpOffered {
		s.say(words.Say("panel.pump_offered"), true)
		s.act(words.Say("panel.take_pump"), on(sim.TakePumpBlood, sim.NoPart, 0), running(v.PumpRuns, words.Say("panel.going_on")))
	}
	if v.PumpBloodML > 0 {
		s.read(words.Say("panel.pump_taken"), s.num(v.PumpBloodML, 0, "mL"))
	}
}
