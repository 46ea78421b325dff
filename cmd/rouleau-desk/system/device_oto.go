//go:build windows || darwin || js

// The sound device of the systems on which oto needs nothing beside the system itself.

package system

import (
	"bytes"
	"encoding/binary"
	"sync"
	"time"

	"github.com/ebitengine/oto/v3"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/sound"
)

type otoDevice struct {
	context *oto.Context
	player  *oto.Player // of the newest samples
}

// A program may make only one context, so one that was made is kept.
var (
	otoOnce    sync.Once
	otoContext *oto.Context
	otoFault   error
)

func openDevice() (device, string) {
	otoOnce.Do(func() {
		// When it is ready is not waited for: a browser is so only after the person's first press.
		otoContext, _, otoFault = oto.NewContext(&oto.NewContextOptions{
			SampleRate: sound.Rate, ChannelCount: 1, Format: oto.FormatSignedInt16LE, BufferSize: 100 * time.Millisecond})
	})
	if otoFault != nil {
		return nil, words.Say("sound.no_device", otoFault)
	}
	d := &otoDevice{context: otoContext}
	if why := d.fault(); why != "" {
		return nil, why
	}
	return d, ""
}

func (d *otoDevice) play(samples []int16) {
	d.hush()
	data := make([]byte, 0, 2*len(samples))
	for _, s := range samples {
		data = binary.LittleEndian.AppendUint16(data, uint16(s))
	}
	d.player = d.context.NewPlayer(bytes.NewReader(data))
	d.player.Play()
}

func (d *otoDevice) hush() {
	if d.player != nil {
		d.player.Pause()
		d.player = nil
	}
}

func (d *otoDevice) fault() string {
	if err := d.context.Err(); err != nil {
		return words.Say("sound.no_device", err)
	}
	return ""
}
