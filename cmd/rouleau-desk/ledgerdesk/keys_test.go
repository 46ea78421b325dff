// Keys on the pages: the page keys turn what is read unless a list has them, and Escape goes one page back at a time.

package ledgerdesk_test

import (
	"testing"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ledgerdesk"
	"rouleau/cmd/rouleau-desk/ui"
)

func TestPageKeysTurnWhatIsRead(t *testing.T) {
	d := sit(full())
	d.Size = sizes[0]
	d.Idle()
	d.Idle()
	area := ui.Name("book column").With("standing")
	d.Key(ui.KeyPageDown)
	turned := d.Core.ScrollOffset(area)
	if turned == 0 {
		t.Error("the standing of a learner cannot be read to its end with keys")
	}
	d.Core.Focus(ui.Name("book rows").With("mine"))
	d.Key(ui.KeyPageDown)
	if now := d.Core.ScrollOffset(area); now != turned {
		t.Error("a key that moves in a list turns the page too")
	}
}

func TestEscapeGoesOnePageBack(t *testing.T) {
	d := sit(full())
	back := func(want ledgerdesk.Verb, what string) {
		t.Helper()
		d.acts = nil
		d.Idle()
		d.Key(ui.KeyEscape)
		if len(d.acts) != 1 || d.acts[0].Do != want {
			t.Errorf("from %s: %+v", what, d.acts)
		}
	}
	back(ledgerdesk.Leave, "the tabs")
	d.view.Review = judged()
	back(ledgerdesk.LookAway, "an attempt")
	d.view.Draft = drafted()
	back(ledgerdesk.BackToForm, "what is to be signed")
	d.view.Draft, d.view.Review, d.view.Signed = nil, nil, &ledgerdesk.Signed{ID: "1"}
	back(ledgerdesk.Understood, "what was signed")
	d.view.Signed, d.view.Record = nil, recorded(&d.view)
	back(ledgerdesk.ShowNone, "a record")
	d.view.Record.State = ""
	d.click(t, words.Say("desk_book.rate"))
	d.acts = nil
	d.Key(ui.KeyEscape)
	d.Idle()
	if len(d.acts) != 0 || d.HasText(words.Say("desk_book.second_text")) {
		t.Errorf("from a second rating: %+v", d.acts)
	}
	back(ledgerdesk.ShowNone, "the record again")
}

// While something goes on beside the window nothing else is asked of the book, and the page says so.
func TestNothingIsAskedOfABusyBook(t *testing.T) {
	d := sit(full())
	d.view.Work = ledgerdesk.Work{Text: "at work"}
	d.view.Review = judged()
	d.view.Draft = drafted()
	d.Idle()
	d.Core.Focus(ui.Name("book phrase"))
	d.Type("a passphrase")
	d.Key(ui.KeyEnter)
	if len(d.acts) != 0 {
		t.Errorf("%+v", d.acts)
	}
	if m, err := d.At(words.Say("desk_book.sign")); err != nil || m.Why != words.Say("desk_book.busy") {
		t.Errorf("%+v %v", m, err)
	}
	d.Key(ui.KeyEscape)
	if m, err := d.At(words.Say("desk_book.back")); err != nil || m.Why != words.Say("desk_book.busy") || len(d.acts) != 0 {
		t.Errorf("the way back: %+v %v %+v", m, err, d.acts)
	}
	d.view.Work = ledgerdesk.Work{}
	d.Core.Focus(ui.Name("book phrase"))
	d.Key(ui.KeyEnter)
	if len(d.acts) != 1 || d.acts[0].Do != ledgerdesk.Sign || d.acts[0].Phrase != "a passphrase" {
		t.Errorf("%+v", d.acts)
	}
	d.acts = nil
	d.view.Draft.Tries++ // it was the wrong one
	d.Idle()
	d.Key(ui.KeyEnter)
	if len(d.acts) != 0 {
		t.Errorf("a wrong passphrase is tried again: %+v", d.acts)
	}
}
