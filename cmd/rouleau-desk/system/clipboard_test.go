// The clipboard with programs that are made up: one that answers, one that is missing, one that hangs.

package system

import (
	"errors"
	"testing"
	"time"
)

func TestClipboardReadsAndWrites(t *testing.T) {
	text := make(chan string, 8)
	c := Clipboard{read: func() (string, error) { return "abc", nil }, write: func(s string) error { text <- s; return nil }}
	for range 2 {
		if got, ok := c.Read(); got != "abc" || !ok {
			t.Errorf("read %q, %v", got, ok)
		}
	}
	c.Write("one")
	select {
	case got := <-text:
		if got != "one" {
			t.Errorf("wrote %q", got)
		}
	case <-time.After(5 * time.Second):
		t.Fatal("nothing was written")
	}
}

func TestClipboardThatIsNotThere(t *testing.T) {
	missing := errors.New("no such program")
	c := Clipboard{read: func() (string, error) { return "x", missing }, write: func(string) error { return missing }}
	if got, ok := c.Read(); got != "" || ok {
		t.Errorf("read %q, %v", got, ok)
	}
	c.Write("one")
	c.Write("two")
}

func TestClipboardThatHangs(t *testing.T) {
	answer := make(chan string)
	asked := make(chan struct{}, 8)
	c := Clipboard{read: func() (string, error) { asked <- struct{}{}; return <-answer, nil }, write: func(string) error { select {} }}
	start := time.Now()
	for range 2 {
		if got, ok := c.Read(); ok {
			t.Errorf("read %q", got)
		}
	}
	for range 5 {
		c.Write("never taken")
	}
	if took := time.Since(start); took > 20*pasteWait {
		t.Errorf("it was waited for, %v", took)
	}
	if len(asked) != 1 {
		t.Errorf("asked %d times while the first question was open", len(asked))
	}
	answer <- "late"
	var got string
	for ok := false; !ok && time.Since(start) < 10*time.Second; {
		go func() {
			select {
			case answer <- "fresh":
			case <-time.After(time.Second):
			}
		}()
		got, ok = c.Read()
	}
	if got != "fresh" {
		t.Errorf("read %q, which may be of long ago", got)
	}
}

// The real one, whatever it is here, answers or gives up.
func TestRealClipboardIsPolite(t *testing.T) {
	var c Clipboard
	start := time.Now()
	c.Read()
	if took := time.Since(start); took > 20*pasteWait {
		t.Errorf("it took %v", took)
	}
}
