//go:build linux && (amd64 || arm64 || loong64)

// The sound device on Linux, by the ALSA library. It is loaded at run time, so that neither building nor starting the
// program needs it, and a computer without it is merely silent.

package system

import (
	"fmt"
	"sync"
	"unsafe"

	"github.com/ebitengine/purego"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/sound"
)

const alsaLibrary = "libasound.so.2"

// Values of ALSA's headers, which this file stands in for.
const (
	alsaPlayback    = 0
	alsaNonblock    = 1
	alsaInt16LE     = 2
	alsaInterleaved = 3
	alsaLatencyUS   = 100_000
)

// chunk is how many samples are handed over at a time: how long a hush may take to be noticed.
const chunk = sound.Rate / 50

// alsa is the library's functions, and the device opened with them.
type alsa struct {
	open      func(pcm *uintptr, name string, stream, mode int32) int32
	setParams func(pcm uintptr, format, access int32, channels, rate uint32, resample int32, latencyUS uint32) int32
	nonblock  func(pcm uintptr, on int32) int32
	write     func(pcm uintptr, samples unsafe.Pointer, frames uint64) int64
	recover   func(pcm uintptr, fault, silent int32) int32
	prepare   func(pcm uintptr) int32
	drop      func(pcm uintptr) int32
	drain     func(pcm uintptr) int32
	close     func(pcm uintptr) int32
	text      func(fault int32) string
	onFault   func(handler uintptr) int32

	pcm uintptr

	mu      sync.Mutex
	changed *sync.Cond
	left    []int16 // still to be handed over
	dropped bool    // what was handed over is to be forgotten
	failed  string
}

func openDevice() (device, string) { return openALSA(alsaLibrary) }

// quiet takes the library's messages, which else go to the terminal: what matters of them is in Why. Such handlers are never
// freed, so there is one for all.
var quiet = sync.OnceValue(func() uintptr {
	return purego.NewCallback(func(file, line, function, fault, format uintptr) uintptr { return 0 })
})

func openALSA(library string) (device, string) {
	lib, err := purego.Dlopen(library, purego.RTLD_NOW|purego.RTLD_GLOBAL)
	if err != nil {
		return nil, words.Say("sound.no_library", library)
	}
	a := &alsa{}
	a.changed = sync.NewCond(&a.mu)
	for _, f := range []struct {
		fn   any
		name string
	}{
		{&a.open, "snd_pcm_open"}, {&a.setParams, "snd_pcm_set_params"}, {&a.nonblock, "snd_pcm_nonblock"},
		{&a.write, "snd_pcm_writei"}, {&a.recover, "snd_pcm_recover"}, {&a.prepare, "snd_pcm_prepare"},
		{&a.drop, "snd_pcm_drop"}, {&a.drain, "snd_pcm_drain"}, {&a.close, "snd_pcm_close"},
		{&a.text, "snd_strerror"}, {&a.onFault, "snd_lib_error_set_handler"},
	} {
		at, err := purego.Dlsym(lib, f.name)
		if err != nil {
			return nil, words.Say("sound.old_library", library, f.name)
		}
		purego.RegisterFunc(f.fn, at)
	}
	a.onFault(quiet())
	// A device that is busy would be waited for, without end: so it is opened without waiting, and only then made to wait.
	if code := a.open(&a.pcm, "default", alsaPlayback, alsaNonblock); code < 0 {
		return nil, words.Say("sound.no_device", a.text(code))
	}
	code := a.setParams(a.pcm, alsaInt16LE, alsaInterleaved, 1, sound.Rate, 1, alsaLatencyUS)
	if code >= 0 {
		code = a.nonblock(a.pcm, 0)
	}
	if code < 0 {
		a.close(a.pcm)
		return nil, words.Say("sound.no_device", a.text(code))
	}
	go a.run()
	return a, ""
}

// run hands samples to the device until it fails.
func (a *alsa) run() {
	for {
		part, drop, last := a.next()
		if drop {
			a.drop(a.pcm)
			a.prepare(a.pcm)
		}
		if err := a.hand(part); err != nil {
			a.close(a.pcm)
			a.mu.Lock()
			a.failed = words.Say("sound.stopped", err)
			a.mu.Unlock()
			return
		}
		if last {
			a.drain(a.pcm)
			a.prepare(a.pcm)
		}
	}
}

// next waits for something to do. Last marks the end of what there is to play.
func (a *alsa) next() (part []int16, drop, last bool) {
	a.mu.Lock()
	defer a.mu.Unlock()
	for len(a.left) == 0 && !a.dropped {
		a.changed.Wait()
	}
	n := min(chunk, len(a.left))
	part, drop, last = a.left[:n], a.dropped, n > 0 && n == len(a.left)
	a.left, a.dropped = a.left[n:], false
	return part, drop, last
}

func (a *alsa) hand(part []int16) error {
	for tries := 0; len(part) > 0; {
		n := a.write(a.pcm, unsafe.Pointer(&part[0]), uint64(len(part)))
		if n > 0 {
			part, tries = part[n:], 0
			continue
		}
		if code := a.recover(a.pcm, int32(n), 1); code < 0 {
			return fmt.Errorf("%s", a.text(code))
		}
		if tries++; tries > 20 {
			return fmt.Errorf("%s", a.text(int32(n)))
		}
	}
	return nil
}

func (a *alsa) play(samples []int16) {
	a.mu.Lock()
	defer a.mu.Unlock()
	a.dropped = a.dropped || len(a.left) > 0
	a.left = samples
	a.changed.Signal()
}

func (a *alsa) hush() {
	a.mu.Lock()
	defer a.mu.Unlock()
	a.left, a.dropped = nil, true
	a.changed.Signal()
}

func (a *alsa) fault() string {
	a.mu.Lock()
	defer a.mu.Unlock()
	return a.failed
}
