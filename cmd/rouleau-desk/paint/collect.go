// Collecting what a person did: edges of keys and buttons, the wheel, fingers,
// typed letters and dropped files become one ui.Input, here and nowhere else.

package paint

import (
	"time"

	"github.com/hajimehoshi/ebiten/v2"
	"github.com/hajimehoshi/ebiten/v2/inpututil"

	"rouleau/cmd/rouleau-desk/system"
	"rouleau/cmd/rouleau-desk/ui"
)

// Ticks until a key that stays down repeats, and from repeat to repeat.
const (
	repeatAfter = 28
	repeatEvery = 3
)

// Collector gathers inputs; its buffers are reused, so an Input is good until
// the next call.
type Collector struct {
	keys    []ebiten.Key
	events  []ui.KeyEvent
	ups     []ui.Key
	runes   []rune
	ids     []ebiten.TouchID
	touches []ui.Touch
	drops   system.Drops
	last    time.Time
}

// Collect returns what happened since the last call. The window is so many
// device pixels large, and scale of them are a logical one.
func (c *Collector) Collect(width, height, scale float64) ui.Input {
	now := time.Now()
	in := ui.Input{Size: ui.Vec{X: float32(width / scale), Y: float32(height / scale)}, Scale: float32(scale)}
	if !c.last.IsZero() {
		in.DeltaMS = float32(now.Sub(c.last).Seconds() * 1000)
	}
	c.last = now
	at := func(x, y int) ui.Vec { return ui.Vec{X: float32(float64(x) / scale), Y: float32(float64(y) / scale)} }

	x, y := ebiten.CursorPosition()
	in.Pointer = at(x, y)
	in.PointerIn = x >= 0 && y >= 0 && float64(x) < width && float64(y) < height
	in.Down = ebiten.IsMouseButtonPressed(ebiten.MouseButtonLeft)
	in.Pressed = inpututil.IsMouseButtonJustPressed(ebiten.MouseButtonLeft)
	in.Released = inpututil.IsMouseButtonJustReleased(ebiten.MouseButtonLeft)
	wx, wy := ebiten.Wheel()
	in.Wheel = ui.Vec{X: float32(wx), Y: float32(wy)}

	in.Mods = mods()
	c.collectKeys(in.Mods)
	in.Keys, in.KeysUp = c.events, c.ups
	c.runes = ebiten.AppendInputChars(c.runes[:0])
	in.Runes = c.runes
	c.collectTouches(at)
	in.Touches = c.touches
	in.Dropped = c.drops.Frame(ebiten.DroppedFiles())
	return in
}

// mods are the modifiers held, or pressed and let go since the last call.
func mods() (m ui.Mods) {
	for _, k := range [...]struct {
		key ebiten.Key
		mod ui.Mods
	}{{ebiten.KeyShift, ui.ModShift}, {ebiten.KeyControl, ui.ModCtrl}, {ebiten.KeyMeta, ui.ModCtrl}, {ebiten.KeyAlt, ui.ModAlt}} {
		if ebiten.IsKeyPressed(k.key) || inpututil.IsKeyJustPressed(k.key) {
			m |= k.mod
		}
	}
	return m
}

func (c *Collector) collectKeys(m ui.Mods) {
	c.events, c.ups = c.events[:0], c.ups[:0]
	c.keys = inpututil.AppendJustPressedKeys(c.keys[:0])
	for _, k := range c.keys {
		if key := keyOf(k); key != ui.KeyNone {
			c.events = append(c.events, ui.KeyEvent{Key: key, Mods: m})
		}
	}
	c.keys = inpututil.AppendPressedKeys(c.keys[:0])
	for _, k := range c.keys {
		if d := inpututil.KeyPressDuration(k); d >= repeatAfter && (d-repeatAfter)%repeatEvery == 0 {
			if key := keyOf(k); key != ui.KeyNone {
				c.events = append(c.events, ui.KeyEvent{Key: key, Mods: m, Repeat: true})
			}
		}
	}
	c.keys = inpututil.AppendJustReleasedKeys(c.keys[:0])
	for _, k := range c.keys {
		if key := keyOf(k); key != ui.KeyNone {
			c.ups = append(c.ups, key)
		}
	}
}

func (c *Collector) collectTouches(at func(x, y int) ui.Vec) {
	c.touches = c.touches[:0]
	c.ids = ebiten.AppendTouchIDs(c.ids[:0])
	for _, id := range c.ids {
		x, y := ebiten.TouchPosition(id)
		c.touches = append(c.touches, ui.Touch{ID: int(id), Pos: at(x, y), Began: inpututil.TouchPressDuration(id) == 1})
	}
	c.ids = inpututil.AppendJustReleasedTouchIDs(c.ids[:0])
	for _, id := range c.ids {
		x, y := inpututil.TouchPositionInPreviousTick(id)
		c.touches = append(c.touches, ui.Touch{ID: int(id), Pos: at(x, y), Ended: true})
	}
}
