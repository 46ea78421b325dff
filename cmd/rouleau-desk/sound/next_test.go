// What is heard when: the most urgent alone, nothing that was acknowledged, and bursts at their intervals.

package sound_test

import (
	"slices"
	"testing"
	"time"

	"rouleau/cmd/rouleau-desk/sound"
	"rouleau/sim"
)

const (
	high   = sim.AlarmAir
	high2  = sim.AlarmNoDrip
	medium = sim.AlarmClot
	low    = sim.AlarmLayered
)

type ear struct {
	t      *testing.T
	state  sound.State
	alarms sound.Alarms
	now    time.Duration
	heard  []string
}

// frames runs time on by seconds, 60 frames each, and notes what is ordered, with its time.
func (e *ear) frames(seconds float64) {
	for end := e.now + time.Duration(seconds*float64(time.Second)); e.now < end; e.now += time.Second / 60 {
		var o sound.Order
		e.state, o = sound.Next(e.state, &e.alarms, e.now)
		if o.Hush {
			e.heard = append(e.heard, "hush")
		}
		for _, p := range priorities {
			if b := sound.Burst(p); len(o.Play) > 0 && &o.Play[0] == &b[0] {
				e.heard = append(e.heard, [...]string{"low", "medium", "high"}[p])
			}
		}
	}
}

func (e *ear) want(what string, heard ...string) {
	e.t.Helper()
	if !slices.Equal(e.heard, heard) {
		e.t.Errorf("%s: heard %v, want %v", what, e.heard, heard)
	}
	e.heard = nil
}

func TestPrioritiesAreTheCores(t *testing.T) {
	for a, want := range map[sim.Alarm]sim.Priority{high: sim.HighPriority, high2: sim.HighPriority, medium: sim.MediumPriority, low: sim.LowPriority} {
		if a.Priority() != want {
			t.Errorf("%v is no longer of priority %d: choose another for these tests", a, want)
		}
	}
}

func TestABurstComesAgain(t *testing.T) {
	for _, a := range []sim.Alarm{high, medium, low} {
		p := sound.PatternOf(a.Priority())
		e := ear{t: t}
		e.frames(2)
		e.want("without alarms")
		e.alarms.On[a] = true
		e.frames(3*p.LengthS() + 2*p.EveryS - 0.5)
		if len(e.heard) != 3 {
			t.Errorf("%v: %v in three bursts' time", a, e.heard)
		}
	}
}

func TestOnlyTheMostUrgentIsHeard(t *testing.T) {
	e := ear{t: t}
	e.alarms.On[low] = true
	e.frames(0.1)
	e.want("low", "low")
	e.alarms.On[medium] = true
	e.frames(0.1)
	e.want("medium breaks off low", "hush", "medium")
	e.alarms.On[high] = true
	e.frames(0.1)
	e.want("high breaks off medium", "hush", "high")
	e.frames(60)
	if slices.ContainsFunc(e.heard, func(s string) bool { return s != "high" }) || len(e.heard) < 5 {
		t.Errorf("while a high one is on: %v", e.heard)
	}
}

func TestAcknowledgedIsSilentUntilANewOne(t *testing.T) {
	e := ear{t: t}
	e.alarms.On[high] = true
	e.frames(0.5)
	e.want("on", "high")
	e.alarms.Known[high] = true
	e.frames(60)
	e.want("acknowledged", "hush")
	e.alarms.On[high2] = true
	e.frames(0.5)
	e.want("a new one", "high")
	e.alarms.Known[high2] = true
	e.frames(60)
	e.want("acknowledged too", "hush")
	// The same alarm, gone and come again, is a new one; whoever acknowledges forgets it when it goes.
	e.alarms.On[high], e.alarms.Known[high] = false, false
	e.frames(1)
	e.alarms.On[high] = true
	e.frames(0.5)
	e.want("come again", "high")
}

func TestTheLesserIsHeardAfterTheGreaterWasAcknowledged(t *testing.T) {
	e := ear{t: t}
	e.alarms.On[high], e.alarms.On[medium] = true, true
	e.frames(0.5)
	e.alarms.Known[high] = true
	e.frames(0.5)
	e.want("acknowledged", "high", "hush")
	e.frames(1)
	e.want("after a breath", "medium")
}

func TestABegunBurstIsPlayedToItsEnd(t *testing.T) {
	e := ear{t: t}
	e.alarms.On[high], e.alarms.On[medium] = true, true
	e.frames(0.5)
	e.alarms.On[high] = false
	e.frames(sound.PatternOf(sim.HighPriority).LengthS())
	e.want("gone by itself", "high")
	e.frames(1)
	e.want("then the lesser", "medium")
	e.alarms.On[medium] = false
	e.frames(60)
	e.want("all gone")
}

func TestAnotherOfTheSamePriorityDoesNotWaitItsTurn(t *testing.T) {
	p := sound.PatternOf(sim.LowPriority)
	e := ear{t: t}
	e.alarms.On[low] = true
	e.frames(p.LengthS() + 3)
	e.want("the first", "low")
	e.alarms.On[sim.AlarmExpiring] = true
	e.frames(0.5)
	e.want("another", "low")
	e.frames(p.LengthS() + p.EveryS - 1)
	e.want("then at the interval")
}

// A window that stood still for long does not make up for what was not played.
func TestAStalledWindowPlaysOnce(t *testing.T) {
	e := ear{t: t}
	e.alarms.On[high] = true
	e.frames(0.1)
	e.now += time.Hour
	e.frames(1)
	e.want("after an hour", "high", "high")
}

type fakePlayer struct{ did []string }

func (f *fakePlayer) Open()        { f.did = append(f.did, "open") }
func (f *fakePlayer) Play([]int16) { f.did = append(f.did, "play") }
func (f *fakePlayer) Hush()        { f.did = append(f.did, "hush") }
func (f *fakePlayer) Why() string  { return "" }

func TestRinger(t *testing.T) {
	var f fakePlayer
	now := time.Unix(1e9, 0)
	r := sound.Ringer{}
	alarms := sound.Alarms{On: [sim.AlarmCount]bool{high: true}}
	r.Frame(true, &alarms, now) // without a player nothing happens
	r.Player = &f
	r.Frame(false, &alarms, now)
	if len(f.did) > 0 {
		t.Errorf("with sound off: %v", f.did)
	}
	for i, c := range []struct {
		on     bool
		alarms *sound.Alarms
	}{{true, &alarms}, {true, &alarms}, {true, nil}, {true, nil}, {true, &alarms}, {false, &alarms}, {false, &alarms}, {true, nil}} {
		r.Frame(c.on, c.alarms, now.Add(time.Duration(i)*time.Second/60))
	}
	if want := []string{"open", "play", "hush", "play", "hush", "open"}; !slices.Equal(f.did, want) {
		t.Errorf("did %v, want %v", f.did, want)
	}
}

func TestAFrameAllocatesNothing(t *testing.T) {
	var f fakePlayer
	r := sound.Ringer{Player: &f}
	alarms := sound.Alarms{On: [sim.AlarmCount]bool{low: true}}
	now := time.Unix(1e9, 0)
	r.Frame(true, &alarms, now)
	if n := testing.AllocsPerRun(100, func() { r.Frame(true, &alarms, now) }); n != 0 {
		t.Errorf("%g allocations a frame", n)
	}
}
