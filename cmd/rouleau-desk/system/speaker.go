// Package system reaches what the computer offers beside a window and files: a sound device, the clipboard, and files dropped
// on the window. What is not there is done without: nothing here waits for long, panics or ends the program.
package system

import (
	"sync"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/sound"
)

var _ sound.Player = (*Speaker)(nil)

// device is an open sound device. Neither call waits.
type device interface {
	play(samples []int16) // instead of what is being played
	hush()
	fault() string // nothing, or in words why it no longer plays
}

// Speaker is the sound device of the computer. Its zero value is ready, and silent until Open.
type Speaker struct {
	open func() (device, string) // by default the system's; a test puts its own

	mu      sync.Mutex
	opening bool
	device  device
	why     string
	waiting []int16 // to be played when the device is open
}

// Open begins to look for the device and returns at once. If there was none before, it looks again.
func (s *Speaker) Open() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.look()
	if s.opening || s.device != nil {
		return
	}
	open := s.open
	if open == nil {
		open = openDevice
	}
	s.opening, s.why = true, ""
	go func() {
		d, why := guarded(open)
		s.mu.Lock()
		defer s.mu.Unlock()
		s.opening, s.device, s.why = false, d, why
		if d != nil && s.waiting != nil {
			d.play(s.waiting)
		}
		s.waiting = nil
	}()
}

// guarded turns a panic of a driver into a reason: a fault in sound must not end a case.
func guarded(open func() (device, string)) (d device, why string) {
	defer func() {
		if fault := recover(); fault != nil {
			d, why = nil, words.Say("sound.no_device", fault)
		}
	}()
	return open()
}

// look lets go of a device that has stopped.
func (s *Speaker) look() {
	if s.device == nil {
		return
	}
	if why := s.device.fault(); why != "" {
		s.device, s.why = nil, why
	}
}

// Play plays samples, instead of what is being played.
func (s *Speaker) Play(samples []int16) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.look()
	switch {
	case s.device != nil:
		s.device.play(samples)
	case s.opening:
		s.waiting = samples
	}
}

// Hush is silent at once.
func (s *Speaker) Hush() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.waiting = nil
	if s.device != nil {
		s.device.hush()
	}
}

// Why says in words why nothing can be heard, or nothing.
func (s *Speaker) Why() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.look()
	return s.why
}
