// The words that widgets say by themselves.

package bench

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

// CoreWords are the words of key caps and hold buttons, from the catalogue.
func CoreWords() ui.Words {
	return ui.Words{HoldToConfirm: words.Say("key.hold"), AgainToConfirm: words.Say("key.again"), Decimal: words.Say("key.decimal"), More: words.Say("key.more"),
		Enter: words.Say("key.enter"), Space: words.Say("key.space"), Tab: words.Say("key.tab"), Escape: words.Say("key.escape"),
		Backspace: words.Say("key.backspace"), Delete: words.Say("key.delete"), Home: words.Say("key.home"), End: words.Say("key.end"),
		PageUp: words.Say("key.page_up"), PageDown: words.Say("key.page_down"), Shift: words.Say("key.shift"), Ctrl: words.Say("key.ctrl"),
		Alt: words.Say("key.alt")}
}
