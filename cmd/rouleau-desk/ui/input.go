// What a person did since the last frame, as one value. The window's collector
// fills it from the machine, a test writes it by hand.

package ui

// Key is a named key. Letters are those printed on the key of the person's own
// layout, not places on the keyboard.
type Key uint8

// The keys the widgets and screens know.
const (
	KeyNone Key = iota
	KeyEnter
	KeySpace
	KeyTab
	KeyEscape
	KeyBackspace
	KeyDelete
	KeyLeft
	KeyRight
	KeyUp
	KeyDown
	KeyHome
	KeyEnd
	KeyPageUp
	KeyPageDown
	KeyPlus
	KeyMinus
	KeyComma
	KeyPeriod
	KeySlash
	KeyF1
	KeyF2
	KeyF3
	KeyF4
	KeyF5
	KeyF6
	KeyF7
	KeyF8
	KeyF9
	KeyF10
	KeyF11
	KeyF12
	Key0 // Key0 to Key9 are '0' to '9'
	Key1
	Key2
	Key3
	Key4
	Key5
	Key6
	Key7
	Key8
	Key9
	KeyA // KeyA to KeyZ are 'A' to 'Z'
	KeyZ = KeyA + 25
)

// KeyCount is one more than the highest Key.
const KeyCount = int(KeyZ) + 1

// Mods are the modifier keys held.
type Mods uint8

// The modifiers. ModCtrl also stands for the command key of keyboards that have one.
const (
	ModShift Mods = 1 << iota
	ModCtrl
	ModAlt
)

// Chord is a key with its modifiers, for quick keys. The zero Chord is none.
type Chord struct {
	Key  Key
	Mods Mods
}

// K makes the chord of a letter or a digit, K('S') or K('5'), without modifiers.
func K(r rune) Chord {
	switch {
	case r >= 'a' && r <= 'z':
		return Chord{Key: KeyA + Key(r-'a')}
	case r >= 'A' && r <= 'Z':
		return Chord{Key: KeyA + Key(r-'A')}
	case r >= '0' && r <= '9':
		return Chord{Key: Key0 + Key(r-'0')}
	}
	return Chord{}
}

// Ctrl makes the chord of a letter with the control key.
func Ctrl(r rune) Chord {
	c := K(r)
	c.Mods = ModCtrl
	return c
}

// KeyEvent is one press of a key; Repeat marks those the keyboard sends while
// the key stays down.
type KeyEvent struct {
	Key    Key
	Mods   Mods
	Repeat bool
}

// Touch is one finger on the glass.
type Touch struct {
	ID           int
	Pos          Vec
	Began, Ended bool
}

// Input is everything that happened since the last frame. Edges (Pressed,
// Released, Keys, KeysUp) are events: a press and a release inside one frame
// are both set.
type Input struct {
	Size  Vec     // window in logical pixels
	Scale float32 // device pixels per logical pixel

	Pointer   Vec
	PointerIn bool // the pointer is over the window
	Down      bool // the main button is held
	Pressed   bool
	Released  bool
	Wheel     Vec // lines, positive Y shows what is above

	Touches []Touch

	Keys   []KeyEvent
	KeysUp []Key
	Mods   Mods
	Runes  []rune

	Clipboard    string // the text of the system's clipboard, if HasClipboard
	HasClipboard bool

	Dropped []Dropped // files that were dragged onto the window and let go

	DeltaMS float32 // time since the last frame, for cosmetic animation only
}

// Dropped is one file that was dragged onto the window.
type Dropped struct {
	Name  string
	Path  string // where it lies, "" where the system does not say
	Data  []byte
	Fault string // not empty: it was not taken, and this is why
}
