// Marks: what each widget says about itself beside drawing, so that a test can
// find it by its label, press it, and measure overlap, truncation and size.

package ui

// Kind is the kind of thing a Mark describes.
type Kind uint8

// The kinds of marks.
const (
	KindText Kind = iota
	KindPanel
	KindButton
	KindHold
	KindSlider
	KindStepper
	KindCheckbox
	KindToggle
	KindChoice // one option of a choice
	KindTab    // one tab of a strip
	KindList   // a scrolled list as a whole
	KindRow    // one row of a list
	KindTextField
	KindHit // a part of a drawing that can be pressed
	KindChart
	KindBadge
	KindKeyCap
	KindAlarm
	KindScroll // a scrolled area as a whole
	KindOverlay
)

var kindNames = [...]string{"text", "panel", "button", "hold", "slider", "stepper", "checkbox",
	"toggle", "choice", "tab", "list", "row", "text field", "hit", "chart", "badge", "key cap",
	"alarm", "scroll", "overlay"}

// String names the kind for test messages.
func (k Kind) String() string { return kindNames[k] }

// Mark describes one widget or one run of text.
type Mark struct {
	ID      ID
	Rect    Rect // where it stands; for controls this is the target
	Shown   Rect // the part of Rect that is not clipped away
	Kind    Kind
	Label   string
	Value   string // what a value control shows
	Why     string // why it cannot be used now
	Enabled bool
	On      bool // ticked, selected or running
	Focus   int  // place in the order of focus, -1 if it takes none
	Layer   int  // 0 for the screen, 1 and up for overlays
	Owner   ID   // the widget this text belongs to, 0 if it stands alone
	Cut     bool // the text did not fit and ends in an ellipsis
}

// Target reports whether the mark is something a finger must be able to hit.
func (m *Mark) Target() bool {
	switch m.Kind {
	case KindButton, KindHold, KindSlider, KindStepper, KindCheckbox, KindToggle, KindChoice,
		KindTab, KindRow, KindTextField, KindHit, KindAlarm:
		return true
	}
	return false
}
