// Trying again from a moment of a past attempt: what was done until then is taken as it was, the rest is dropped, and the person
// plays on from there as practice.

package session

import (
	"errors"
	"fmt"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/says"
	"rouleau/scenarios"
	"rouleau/sim"
)

// TryFrom opens a case at a moment of a past attempt at it, before the acts of that tick: paused at the bench, or at its case
// sheet where the moment is the first. The seed of the options must be that of the attempt. The new session has its own run and
// journal; with an error there is none, nothing was written, and what the attempt is shown by is as it was.
func TryFrom(sc *scenarios.Scenario, r *Recorded, tick int64, o Options) (*Session, error) {
	if r.Stale != "" {
		return nil, errors.New(r.Stale)
	}
	tick = min(max(tick, 0), r.End)
	o.Assessment, o.Watch = false, nil
	s := &Session{scenario: sc, options: o}
	s.start(bench.Sheet)
	s.journal, s.guide = nil, nil
	if err := s.playTo(tick, r); err != nil {
		return nil, err
	}
	if tick > 0 {
		s.View.Screen, s.begun, s.View.Paused = bench.AtBench, true, true
	}
	s.takeOver()
	s.keepFromStart()
	at := clockWords(tick)
	s.note(words.Say("log.try_again", at))
	if sc.Lesson() {
		s.note(words.Say("log.try_lesson"))
	}
	s.keep()
	s.Refresh()
	return s, nil
}

// playTo does what a past attempt did before a tick, and says where it comes out otherwise.
func (s *Session) playTo(tick int64, r *Recorded) error {
	acts, hashes := r.Acts, r.Hashes
	for now := int64(0); now < tick; now = s.Run.State.Tick {
		for ; len(acts) > 0 && acts[0].Tick <= now; acts = acts[1:] {
			if why := s.Run.Do(acts[0]); why != "" {
				return errors.New(words.Say("again.refused", clockWords(now), says.Act(&acts[0]), words.Say("why."+string(why))))
			}
		}
		for ; len(hashes) > 0 && hashes[0].Tick <= now; hashes = hashes[1:] {
			if hashes[0].Tick == now && hashes[0].Is != s.Run.State.Hash() {
				return errors.New(words.Say("again.parts", clockWords(now)))
			}
		}
		if s.Run.State.Ended {
			break
		}
		s.Tick()
	}
	if s.Run.State.Ended {
		return errors.New(words.Say("again.over", clockWords(tick)))
	}
	return nil
}

// takeOver notes that what was done so far is another attempt's.
func (s *Session) takeOver() {
	s.View.TakenOver, s.guide = true, nil
	s.readLog()
	s.charts.Marks = append(s.charts.Marks, bench.Mark{S: sim.Seconds(s.Run.State.Tick), Text: words.Say("mark.try_again")})
}

// clockWords is the time of a tick as the clock of the case shows it.
func clockWords(tick int64) string {
	t := tick / sim.TicksPerSecond
	return fmt.Sprintf("%d:%02d:%02d", t/3600, t/60%60, t%60)
}
