// Asking on the case sheet: what surgeon and anaesthetist say to collecting here, and that a no has to be talked about.

package bench

import (
	"rouleau/assets/words"
	"rouleau/sim"
)

// together asks the two before anything is decided; the answer stays on the sheet.
func (s *stack) together() {
	v := s.v
	s.head(words.Say("sheet.together"))
	s.ask(sim.DecideTogether)
	if v.Seen.Together {
		text := words.Say("say.leaves_it_to_the_sheet")
		if i := v.Seen.TogetherLine; i >= 0 && i < len(v.Story.Lines) {
			text = v.Story.Lines[i]
		}
		s.say(words.Say("log.quoted", text), true)
	}
	if s.d.picked.decision == sim.DoNotSalvage && v.Seen.Tick < v.Seen.StayTick {
		s.say(words.Line("sheet.stay", s.c.Clock(sim.Seconds(v.Seen.StayTick))), false)
	}
}
