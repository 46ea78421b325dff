// The clipboard of the system. On Linux it is reached through a small program of the person's own (xclip, xsel, wl-copy),
// which may be missing, slow, or hang with the program that owns the text: so it is given a moment, and no more.

package system

import "time"

const (
	pasteWait = 300 * time.Millisecond // a paste may keep the window waiting this long
	mostPaste = 1 << 20                // bytes; text fields take far less
)

// Clipboard reads and writes the text of the clipboard. Where it does not answer, Read gives nothing, and the window keeps
// cut text to itself. Its zero value is ready.
type Clipboard struct {
	read  func() (string, error) // by default the system's; a test puts its own
	write func(string) error

	asked  chan string // a question that is still open
	writes chan string
}

// Read gives the text, and whether there is any.
func (c *Clipboard) Read() (string, bool) {
	read := c.read
	if read == nil {
		read = readClipboard
	}
	if c.asked == nil {
		asked := make(chan string, 1)
		c.asked = asked
		go func() {
			defer close(asked)
			if text, err := read(); err == nil && text != "" && len(text) <= mostPaste {
				asked <- text
			}
		}()
	}
	wait := time.NewTimer(pasteWait)
	defer wait.Stop()
	select {
	case text, ok := <-c.asked:
		c.asked = nil
		return text, ok
	case <-wait.C:
		// The question stays open, and nothing more is asked before it is answered; that answer is then of an earlier moment and
		// must not be taken for one.
		c.forget()
		return "", false
	}
}

// forget lets a late answer go to nobody, while it still holds back further questions.
func (c *Clipboard) forget() {
	late := c.asked
	done := make(chan string)
	c.asked = done
	go func() {
		for range late {
		}
		close(done)
	}()
}

// Write gives text to the clipboard, without waiting for it. Of several that wait, the newest wins.
func (c *Clipboard) Write(text string) {
	if c.writes == nil {
		c.writes = make(chan string, 1)
		write := c.write
		if write == nil {
			write = writeClipboard
		}
		go func() {
			for text := range c.writes {
				_ = write(text) // a clipboard that is not there is no fault: the window has the text itself
			}
		}()
	}
	select {
	case <-c.writes:
	default:
	}
	c.writes <- text
}
