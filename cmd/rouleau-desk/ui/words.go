// The few words widgets say by themselves. Callers set them from their
// catalogue; an empty word is not shown.

package ui

// Words are set once by the caller, in the person's language.
type Words struct {
	HoldToConfirm  string // under a hold button
	AgainToConfirm string // after the first Enter on a hold button
	Decimal        string // between whole and parts, "." if empty
	More           string // behind a mark of a chart that stands for others too, with %d for how many

	// Names on key caps.
	Enter, Space, Tab, Escape, Backspace, Delete string
	Home, End, PageUp, PageDown                  string
	Shift, Ctrl, Alt                             string
}

// keyName is what stands on a key cap.
func (w *Words) keyName(k Key) string {
	switch k {
	case KeyEnter:
		return w.Enter
	case KeySpace:
		return w.Space
	case KeyTab:
		return w.Tab
	case KeyEscape:
		return w.Escape
	case KeyBackspace:
		return w.Backspace
	case KeyDelete:
		return w.Delete
	case KeyHome:
		return w.Home
	case KeyEnd:
		return w.End
	case KeyPageUp:
		return w.PageUp
	case KeyPageDown:
		return w.PageDown
	}
	return keySigns[k]
}

// keySigns are names that need no translation.
var keySigns = func() (s [KeyCount]string) {
	const letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
	const digits = "0123456789"
	for i := range 26 {
		s[int(KeyA)+i] = letters[i : i+1]
	}
	for i := range 10 {
		s[int(Key0)+i] = digits[i : i+1]
	}
	names := [...]string{"F1", "F2", "F3", "F4", "F5", "F6", "F7", "F8", "F9", "F10", "F11", "F12"}
	for i, n := range names {
		s[int(KeyF1)+i] = n
	}
	s[KeyLeft], s[KeyRight], s[KeyUp], s[KeyDown] = "←", "→", "↑", "↓"
	s[KeyPlus], s[KeyMinus], s[KeyComma], s[KeyPeriod], s[KeySlash] = "+", "−", ",", ".", "/"
	return s
}()
