// Running on to the next thing worth attention, in practice: in slices small enough that the window stays alive, and at most
// ten minutes of the case.

package session

import (
	"fmt"
	"slices"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/sim"
)

const (
	jumpSlice   = 20 * sim.TicksPerSecond  // in one frame
	jumpAtMost  = 600 * sim.TicksPerSecond // in one jump
	jumpReadyML = 800.0                    // in the reservoir, about what a bowlful needs [A]
	jumpFull    = 0.85                     // of the reservoir [A]
	jumpPackML  = 100.0                    // left in a pack that hangs [A]
)

// jump is a running on that is under way.
type jump struct {
	from int64
	log  int   // lines of the run's log that were there before
	was  signs // a tick ago
}

// signs are what changes by itself and is worth a look.
type signs struct {
	pump                           sim.PumpMode
	hands, mixing, braking, giving bool
	phase                          int
	reservoir                      int // marks reached
	low                            [sim.MaxPacks]bool
}

func (s *Session) signs() signs {
	c, st := &s.Run.Case, &s.Run.State
	g := signs{pump: st.Pump.Mode, hands: st.Tick < st.Bench.HandsUntil, mixing: st.Tick < st.Reservoir.MixUntil,
		braking: st.Bowl.BrakeUntil > 0, giving: st.Giving.FlowMLMin > 0}
	for i := range c.Phases {
		if c.Phases[i].StartTick <= st.Tick {
			g.phase = i
		}
	}
	held := st.Reservoir.Blood.VolumeML()
	for _, mark := range [...]float64{jumpReadyML, jumpFull * s.View.Limits.ReservoirML} {
		if held >= mark {
			g.reservoir++
		}
	}
	for i := range st.Bench.Packs {
		p := &st.Bench.Packs[i]
		g.low[i] = p.Used && p.Fluid.VolumeML() < jumpPackML
	}
	return g
}

// jumpToNext begins to run on. An assessment has one pace.
func (s *Session) jumpToNext() {
	v := &s.View
	if s.options.Assessment || !s.mayRun() || s.guideStands() || v.Screen != bench.AtBench {
		return
	}
	v.Jumping, s.owed = true, 0
	s.jump = jump{from: s.Run.State.Tick, log: len(s.Run.Log), was: s.signs()}
}

// runOn lets a slice of time pass, or less when something comes.
func (s *Session) runOn() {
	for range jumpSlice {
		if !s.mayRun() || s.guideStands() {
			s.endJump("")
			break
		}
		s.Tick()
		s.watchEnds()
		if why := s.worth(); why != "" {
			s.endJump(why)
			break
		}
	}
}

// worth says what has come in the last tick that is worth attention: a key of the log, "" for nothing.
func (s *Session) worth() string {
	if s.Run.State.Ended {
		return "log.jump_end"
	}
	fresh := s.Run.Log[s.jump.log:]
	s.jump.log = len(s.Run.Log)
	why := ""
	for i := range fresh {
		switch o := &fresh[i]; {
		case o.Kind == sim.Said:
			return "log.jump_said"
		case o.Kind == sim.Alarmed:
			return "log.jump_alarm"
		case o.Kind == sim.Came, o.Kind == sim.Done && o.Act.Auto:
			why = "log.jump_step"
		}
	}
	was, now := s.jump.was, s.signs()
	s.jump.was = now
	switch {
	case was.pump == sim.PumpEmpty && now.pump == sim.PumpIdle:
		return "log.jump_bag"
	case why != "":
		return why
	case was.pump != sim.PumpIdle && now.pump == sim.PumpIdle, was.mixing && !now.mixing, was.braking && !now.braking, was.giving && !now.giving:
		return "log.jump_step"
	case was.hands && !now.hands:
		return "log.jump_hands"
	case now.phase != was.phase:
		return "log.jump_phase"
	case now.low != was.low:
		return "log.jump_supply"
	case now.reservoir > was.reservoir:
		return "log.jump_reservoir"
	case s.Run.State.Tick-s.jump.from >= jumpAtMost:
		return "log.jump_all"
	}
	return ""
}

// endJump goes back to the pace of the operation, so that what has come can be read. Without a reason it was stopped by hand.
func (s *Session) endJump(why string) {
	v := &s.View
	v.Jumping = false
	if slices.Contains(v.Speeds, 1) && v.Speed != 1 {
		v.Speed = 1
		s.keepWindow(bench.Act{Do: bench.SetSpeed, Value: 1})
	}
	if why != "" {
		gone := (s.Run.State.Tick - s.jump.from) / sim.TicksPerSecond
		s.note(words.Say("log.jumped", fmt.Sprintf("%d:%02d", gone/60, gone%60), words.Say(why)))
	}
}
