// Tests of the text field: typing, caret, selection, clipboard.

package ui_test

import (
	"testing"

	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau-desk/ui/uitest"
)

type fieldScreen struct {
	text    string
	entered int
	pressed int
	why     string
	most    int
}

func (s *fieldScreen) draw(c *ui.Core) {
	if c.Button(ui.Button{ID: ui.Name("b"), Rect: ui.R(10, 10, 100, 40), Label: "Wash", Key: ui.K('W')}) {
		s.pressed++
	}
	var in bool
	s.text, in = c.TextField(ui.TextField{ID: ui.Name("f"), Rect: ui.R(10, 100, 200, ui.TextFieldHeight), Label: "Note",
		Text: s.text, Key: ui.K('N'), Why: s.why, Most: s.most})
	if in {
		s.entered++
	}
}

func TestTextFieldKeys(t *testing.T) {
	s := &fieldScreen{}
	d := uitest.New(window, s.draw)
	shift := func(k ui.Key) { d.Chord(ui.Chord{Key: k, Mods: ui.ModShift}) }
	check := func(what, want string) {
		t.Helper()
		d.Idle()
		if s.text != want {
			t.Errorf("%s: %q, want %q", what, s.text, want)
		}
	}
	d.Type("n")
	check("the quick key leaves no letter", "")
	d.Type("swab now")
	check("typing", "swab now")
	if s.pressed != 0 {
		t.Errorf("typing w pressed the button %d times", s.pressed)
	}
	d.Key(ui.KeyLeft, ui.KeyBackspace)
	check("left, backspace", "swab nw")
	d.Type("ö")
	check("typing inside", "swab nöw")
	d.Key(ui.KeyBackspace, ui.KeyDelete)
	check("backspace and delete", "swab n")
	d.Key(ui.KeyHome, ui.KeyDelete)
	check("home, delete", "wab n")
	shift(ui.KeyEnd)
	d.Type("x")
	check("typing over a selection", "x")
	d.Type("yz")
	d.Chord(ui.Ctrl('A'))
	d.Chord(ui.Ctrl('C'))
	d.Key(ui.KeyEnd)
	d.Chord(ui.Ctrl('V'))
	check("copy and paste", "xyzxyz")
	shift(ui.KeyLeft)
	d.Chord(ui.Ctrl('X'))
	d.Key(ui.KeyHome)
	d.Chord(ui.Ctrl('V'))
	check("cut and paste", "zxyzxy")
	if got, ok := d.Core.TakeClipboard(); got != "z" || !ok {
		t.Errorf("the clipboard holds %q, %v", got, ok)
	}
	d.Frame(ui.Input{Keys: []ui.KeyEvent{{Key: ui.K('V').Key, Mods: ui.ModCtrl}}, Mods: ui.ModCtrl, Clipboard: "a\nb\x00", HasClipboard: true})
	check("paste from the system, made one line", "za bxyzxy")
	d.Key(ui.KeyEnter)
	if s.entered != 1 {
		t.Errorf("Enter was told %d times", s.entered)
	}
	d.Chord(ui.Chord{Key: ui.KeyBackspace, Mods: ui.ModCtrl})
	check("a word back", "za xyzxy")
	d.Key(ui.KeyTab, ui.KeyTab)
	d.Type("q")
	check("reached by Tab, typing replaces the whole", "q")
}

func TestTextFieldPointerSelectsAndFingerPlacesTheCaret(t *testing.T) {
	s := &fieldScreen{text: "abcdef"}
	d := uitest.New(window, s.draw)
	y := float32(100 + 42)
	x := func(n int) float32 { return 20 + ui.TextWidth(s.text[:n], ui.SizeBody, ui.Regular, false) }
	d.Drag(ui.Vec{X: x(1), Y: y}, ui.Vec{X: x(4), Y: y})
	d.Type("-")
	if s.text != "a-ef" {
		t.Errorf("dragging selects wrongly: %q", s.text)
	}
	d.TapAt(ui.Vec{X: x(3), Y: y})
	d.Type("+")
	if s.text != "a-e+f" {
		t.Errorf("a tap places the caret wrongly: %q", s.text)
	}
	s.why = "the case is closed"
	d.ClickAt(ui.Vec{X: x(3), Y: y})
	d.Type("!")
	if s.text != "a-e+f" || !d.HasText("the case is closed") {
		t.Errorf("a sleeping field took letters: %q", s.text)
	}
}

func TestTwoPressesTakeAWordAndThreeAll(t *testing.T) {
	s := &fieldScreen{text: "to wash: twice"}
	d := uitest.New(window, s.draw)
	y := float32(100 + 42)
	at := func(n int) ui.Vec {
		return ui.Vec{X: 20 + ui.TextWidth(s.text[:n], ui.SizeBody, ui.Regular, false), Y: y}
	}
	d.ClickAt(at(5))
	d.ClickAt(at(5))
	d.Chord(ui.Ctrl('C'))
	if got, _ := d.Core.TakeClipboard(); got != "wash" {
		t.Errorf("two presses take %q, want the word", got)
	}
	d.ClickAt(at(5))
	d.Chord(ui.Ctrl('C'))
	if got, _ := d.Core.TakeClipboard(); got != s.text {
		t.Errorf("three presses take %q, want all", got)
	}
	d.Wait(600)
	d.ClickAt(at(5))
	d.Wait(600)
	d.ClickAt(at(5))
	d.Type("!")
	if s.text != "to wa!sh: twice" {
		t.Errorf("slow presses take a word: %q", s.text)
	}
	// Two presses and a drag take whole words, in either direction.
	s.text = "to wash: twice"
	d.Wait(600)
	d.ClickAt(at(11))
	d.Drag(at(11), at(4))
	d.Chord(ui.Ctrl('C'))
	if got, _ := d.Core.TakeClipboard(); got != "wash: twice" {
		t.Errorf("two presses and a drag take %q", got)
	}
	// The place behind the last letter belongs to the last word.
	d.Wait(600)
	d.ClickAt(at(len(s.text)))
	d.ClickAt(at(len(s.text)))
	d.Chord(ui.Ctrl('X'))
	d.Idle()
	if s.text != "to wash: " {
		t.Errorf("the last word is not taken: %q", s.text)
	}
	// A press with Shift goes on from where the caret was.
	d.Wait(600)
	d.ClickAt(at(2))
	d.Wait(600)
	d.Frame(ui.Input{Pointer: at(7), PointerIn: true, Down: true, Pressed: true, Mods: ui.ModShift})
	d.Frame(ui.Input{Pointer: at(7), PointerIn: true, Released: true, Mods: ui.ModShift})
	d.Chord(ui.Ctrl('C'))
	if got, _ := d.Core.TakeClipboard(); got != " wash" {
		t.Errorf("a press with Shift takes %q", got)
	}
}

func TestTextFieldBoundAndLongText(t *testing.T) {
	s := &fieldScreen{most: 40}
	d := uitest.New(window, s.draw)
	d.Type("n")
	for range 6 {
		d.Type("überlang ")
	}
	if n := len([]rune(s.text)); n != 40 {
		t.Errorf("%d letters, want 40", n)
	}
	// The caret at the end is inside the field.
	for _, op := range d.List.Ops {
		if op.Kind == ui.OpRect && op.Rect.W < 2 && (op.Rect.X < 10 || op.Rect.X > 210) {
			t.Errorf("the caret stands at %g, outside the field", op.Rect.X)
		}
	}
}
