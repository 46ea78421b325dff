// The speaker with a device that is made up: it opens beside the frames, plays what waited, and says why it cannot.

package system

import (
	"strings"
	"sync"
	"testing"
	"time"
)

type fakeDevice struct {
	mu     sync.Mutex
	did    []string
	failed string
}

func (f *fakeDevice) do(what string) {
	f.mu.Lock()
	defer f.mu.Unlock()
	f.did = append(f.did, what)
}

func (f *fakeDevice) play(s []int16) { f.do("play " + string(rune('0'+s[0]))) }
func (f *fakeDevice) hush()          { f.do("hush") }

func (f *fakeDevice) fault() string {
	f.mu.Lock()
	defer f.mu.Unlock()
	return f.failed
}

func (f *fakeDevice) all() string {
	f.mu.Lock()
	defer f.mu.Unlock()
	return strings.Join(f.did, ", ")
}

// settle waits until the speaker has ended looking for a device.
func settle(t *testing.T, s *Speaker) {
	t.Helper()
	for range 500 {
		s.mu.Lock()
		opening := s.opening
		s.mu.Unlock()
		if !opening {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	t.Fatal("the device was not opened in five seconds")
}

func TestSpeakerPlays(t *testing.T) {
	f := &fakeDevice{}
	ready := make(chan struct{})
	opened := 0
	s := Speaker{open: func() (device, string) { opened++; <-ready; return f, "" }}
	s.Play([]int16{1}) // before it was opened: silent
	s.Open()
	s.Open()
	s.Play([]int16{2})
	s.Play([]int16{3}) // instead of the one before
	close(ready)
	settle(t, &s)
	s.Play([]int16{4})
	s.Hush()
	s.Open() // it is open
	settle(t, &s)
	if got := f.all(); got != "play 3, play 4, hush" || opened != 1 || s.Why() != "" {
		t.Errorf("did %s, opened %d times, why %q", got, opened, s.Why())
	}
}

func TestWhatWasHushedWhileOpeningIsNotPlayed(t *testing.T) {
	f := &fakeDevice{}
	ready := make(chan struct{})
	s := Speaker{open: func() (device, string) { <-ready; return f, "" }}
	s.Open()
	s.Play([]int16{1})
	s.Hush()
	close(ready)
	settle(t, &s)
	if got := f.all(); got != "" {
		t.Errorf("did %s", got)
	}
}

func TestSpeakerWithoutADeviceSaysWhyAndLooksAgain(t *testing.T) {
	f := &fakeDevice{}
	found := false
	s := Speaker{open: func() (device, string) {
		if !found {
			return nil, "none"
		}
		return f, ""
	}}
	s.Open()
	settle(t, &s)
	s.Play([]int16{1})
	s.Hush()
	if s.Why() != "none" {
		t.Errorf("why: %q", s.Why())
	}
	found = true
	s.Open()
	settle(t, &s)
	s.Play([]int16{2})
	if f.all() != "play 2" || s.Why() != "" {
		t.Errorf("did %s, why %q", f.all(), s.Why())
	}
	f.mu.Lock()
	f.failed = "pulled out"
	f.mu.Unlock()
	s.Play([]int16{3})
	if f.all() != "play 2" || s.Why() != "pulled out" {
		t.Errorf("did %s, why %q", f.all(), s.Why())
	}
}

func TestADriverThatPanicsEndsNothing(t *testing.T) {
	s := Speaker{open: func() (device, string) { panic("driver") }}
	s.Open()
	settle(t, &s)
	s.Play([]int16{1})
	if why := s.Why(); !strings.Contains(why, "driver") {
		t.Errorf("why: %q", why)
	}
}
