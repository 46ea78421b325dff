// Command bare is the least window of this engine: it fills itself with a colour that changes, so that every frame reaches
// the display, and ends after a number of frames. The frames of our own window are compared with its.
package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"image/color"
	"os"
	"time"

	"github.com/hajimehoshi/ebiten/v2"

	"rouleau/cmd/rouleau-desk/costs"
)

type bare struct {
	recorder      costs.Recorder
	frames, most  int
	width, height int
	began         time.Time
	cost          costs.Cost
}

func (b *bare) Update() error {
	b.began = time.Now()
	start := costs.Begin()
	if b.frames++; b.frames > b.most {
		return ebiten.Termination
	}
	b.cost = start.Since()
	return nil
}

func (b *bare) Draw(screen *ebiten.Image) {
	start := costs.Begin()
	screen.Fill(color.NRGBA{R: uint8(b.frames), G: 200, B: 200, A: 255})
	b.recorder.Frame(b.began, b.cost.Plus(start.Since()), true, false)
}

func (b *bare) Layout(int, int) (int, int) { return b.width, b.height }

func main() {
	b := bare{}
	flag.IntVar(&b.most, "frames", 1500, "how many frames are drawn")
	flag.IntVar(&b.width, "width", 1280, "of the window, in pixels")
	flag.IntVar(&b.height, "height", 800, "of the window, in pixels")
	flag.Parse()
	ebiten.SetWindowSize(b.width, b.height)
	ebiten.SetVsyncEnabled(false)
	ebiten.SetTPS(ebiten.SyncWithFPS)
	err := ebiten.RunGame(&b)
	if err == nil {
		err = json.NewEncoder(os.Stdout).Encode(b.recorder.Report())
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "bare:", err)
		os.Exit(1)
	}
}
