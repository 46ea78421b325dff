// Which named key a key of the machine is.

package paint

import (
	"github.com/hajimehoshi/ebiten/v2"

	"rouleau/cmd/rouleau-desk/ui"
)

var named = map[ebiten.Key]ui.Key{
	ebiten.KeyEnter: ui.KeyEnter, ebiten.KeyNumpadEnter: ui.KeyEnter, ebiten.KeySpace: ui.KeySpace,
	ebiten.KeyTab: ui.KeyTab, ebiten.KeyEscape: ui.KeyEscape,
	ebiten.KeyBackspace: ui.KeyBackspace, ebiten.KeyDelete: ui.KeyDelete,
	ebiten.KeyArrowLeft: ui.KeyLeft, ebiten.KeyArrowRight: ui.KeyRight,
	ebiten.KeyArrowUp: ui.KeyUp, ebiten.KeyArrowDown: ui.KeyDown,
	ebiten.KeyHome: ui.KeyHome, ebiten.KeyEnd: ui.KeyEnd,
	ebiten.KeyPageUp: ui.KeyPageUp, ebiten.KeyPageDown: ui.KeyPageDown,
	ebiten.KeyEqual: ui.KeyPlus, ebiten.KeyNumpadAdd: ui.KeyPlus,
	ebiten.KeyMinus: ui.KeyMinus, ebiten.KeyNumpadSubtract: ui.KeyMinus,
	ebiten.KeyComma: ui.KeyComma, ebiten.KeyPeriod: ui.KeyPeriod, ebiten.KeyNumpadDecimal: ui.KeyPeriod,
	ebiten.KeySlash: ui.KeySlash,
}

// keyOf names a key. Letters go by what stands on the key in the person's own
// layout, so that the quick key W is where they see a W.
func keyOf(k ebiten.Key) ui.Key {
	switch {
	case k >= ebiten.KeyA && k <= ebiten.KeyZ:
		if name := ebiten.KeyName(k); len(name) == 1 {
			if key := ui.K(rune(name[0])).Key; key >= ui.KeyA {
				return key
			}
		}
		return ui.KeyA + ui.Key(k-ebiten.KeyA)
	case k >= ebiten.KeyDigit0 && k <= ebiten.KeyDigit9:
		return ui.Key0 + ui.Key(k-ebiten.KeyDigit0)
	case k >= ebiten.KeyNumpad0 && k <= ebiten.KeyNumpad9:
		return ui.Key0 + ui.Key(k-ebiten.KeyNumpad0)
	case k >= ebiten.KeyF1 && k <= ebiten.KeyF12:
		return ui.KeyF1 + ui.Key(k-ebiten.KeyF1)
	}
	return named[k]
}
