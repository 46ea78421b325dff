// A monkey at the window: whatever comes in, in whatever order, nothing breaks.

package ui_test

import (
	"math/rand/v2"
	"testing"

	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau-desk/ui/uitest"
)

func TestAnyInputIsSurvived(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	text, modal := "", false
	d := uitest.New(window, func(c *ui.Core) {
		gallery(c)
		text, _ = c.TextField(ui.TextField{ID: ui.Name("live"), Rect: ui.R(620, 545, 160, 40), Text: text, Most: 12, Label: "live"})
		if modal {
			c.BeginOverlay(ui.Name("m"), ui.R(200, 200, 300, 200), true)
			c.Button(ui.Button{ID: ui.Name("ok"), Rect: ui.R(220, 240, 100, 40), Label: "ok"})
			c.EndOverlay()
		}
	})
	runes := []rune("0123456789.,-+wWä\x00\n")
	for range 4000 {
		in := ui.Input{Pointer: ui.Vec{X: r.Float32()*900 - 50, Y: r.Float32()*700 - 50}, PointerIn: r.IntN(4) > 0,
			Down: r.IntN(2) == 0, Pressed: r.IntN(3) == 0, Released: r.IntN(3) == 0, DeltaMS: r.Float32()*300 - 20,
			Wheel: ui.Vec{Y: float32(r.IntN(7) - 3)}, Mods: ui.Mods(r.IntN(8))}
		for range r.IntN(4) {
			in.Keys = append(in.Keys, ui.KeyEvent{Key: ui.Key(r.IntN(ui.KeyCount)), Mods: in.Mods, Repeat: r.IntN(3) == 0})
			in.Runes = append(in.Runes, runes[r.IntN(len(runes))])
		}
		for id := range r.IntN(3) {
			in.Touches = append(in.Touches, ui.Touch{ID: id, Pos: in.Pointer, Began: r.IntN(2) == 0, Ended: r.IntN(3) == 0})
		}
		if r.IntN(50) == 0 {
			modal = !modal
		}
		d.Size = ui.Vec{X: float32(r.IntN(1000)), Y: float32(r.IntN(800))}
		d.Frame(in)
		if n := len([]rune(text)); n > 12 {
			t.Fatalf("the field holds %d letters", n)
		}
	}
}
