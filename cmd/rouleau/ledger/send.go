package ledger

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"net"
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/shelf"
	"rouleau/scoring/book"
)

// Sending statements to a learning record store. They go into the book's outbox first, so that none is lost when this program, the
// network or the store fails; a statement that was taken is noted at once, and one that is sent again is the same statement.

// Sending is where to send to, and as whom. The secret stands in no error and no log.
type Sending struct {
	Base   string // IRI of the department
	To     string // address of the store, with or without /statements at its end
	User   string
	Secret string
	Wait   func(time.Duration) // between tries; nil: time.Sleep
}

// Sent is what came of it.
type Sent struct {
	Delivered int
	Refused   []Refusal // the store does not take them; they stay in the outbox
	Left      int       // not tried, or the store did not answer; they stay too
	Trouble   string    // why sending stopped, "" where it did not
}

// Refusal is a statement that the store does not take.
type Refusal struct{ Statement, Record, Why string }

// waits are the times between the tries for one statement.
var waits = []time.Duration{time.Second, 2 * time.Second, 4 * time.Second, 8 * time.Second}

const (
	patience    = 30 * time.Second // for one answer
	longestWait = time.Minute      // that a store may ask for
	mostAnswer  = 1 << 20          // bytes of an answer that are read
	mostTrouble = 200              // letters of an answer that are kept
)

// Send puts all statements of the book into the outbox and sends what has not been taken yet.
func (l *Ledger) Send(s Sending) (*Sent, error) {
	to, err := s.address()
	if err != nil {
		return nil, err
	}
	if err := l.Reread(); err != nil {
		return nil, err
	}
	if err := l.post(s.Base); err != nil {
		return nil, err
	}
	letters, err := l.shelf.Unsent()
	if err != nil {
		return nil, err
	}
	if s.Wait == nil {
		s.Wait = time.Sleep
	}
	c := &courier{Sending: s, to: to, client: &http.Client{Timeout: patience, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}}
	out := &Sent{Left: len(letters)}
	for _, letter := range letters {
		got, why := c.deliver(letter)
		switch got {
		case taken:
			err = l.shelf.Delivered(letter.ID)
			out.Delivered++
			out.Left--
		case refused:
			err = l.shelf.Failed(letter.ID, why)
			out.Refused = append(out.Refused, Refusal{letter.ID, l.recordAt(letter.Place), why})
			out.Left--
		case stopped:
			out.Trouble = why
			err = l.shelf.Failed(letter.ID, why)
		}
		if err != nil || got == stopped {
			return out, err
		}
	}
	return out, nil
}

// recordAt is the number of the record at a place, which another workstation may have written a moment before.
func (l *Ledger) recordAt(place int64) string {
	if place >= l.Size() && l.Reread() != nil || place >= l.Size() {
		return "?"
	}
	return l.Entries[place].Leaf.ID
}

// address is where statements go. A secret goes over an open line to this machine only.
func (s *Sending) address() (string, error) {
	u, err := url.Parse(s.To)
	if err != nil || u.Host == "" || u.Scheme != "https" && u.Scheme != "http" || u.RawQuery != "" || u.Fragment != "" {
		return "", wrong("ledger.no_store")
	}
	if u.User != nil {
		return "", wrong("ledger.secret_in_address")
	}
	if ip := net.ParseIP(u.Hostname()); u.Scheme == "http" && u.Hostname() != "localhost" && (ip == nil || !ip.IsLoopback()) {
		return "", wrong("ledger.open_line", u.Hostname())
	}
	if u.Path = strings.TrimSuffix(u.Path, "/"); !strings.HasSuffix(u.Path, "/statements") {
		u.Path += "/statements"
	}
	return u.String(), nil
}

// post puts what is not in the outbox yet into it. All statements of a book have one base: with another, the same people and cases
// would be others to the store.
func (l *Ledger) post(base string) error {
	there, err := l.shelf.Letters()
	if err != nil {
		return err
	}
	if len(there) > 0 {
		var first book.Statement
		if err := json.Unmarshal(there[0].Statement, &first); err != nil {
			return notRight("ledger.outbox_damaged", l.Where())
		}
		if was := first.Actor.Account.HomePage; was != strings.TrimSuffix(base, "/") {
			return wrong("ledger.other_base", was)
		}
	}
	known := map[string]bool{}
	for _, letter := range there {
		known[letter.ID] = true
	}
	all, err := l.statements(base, false)
	if err != nil {
		return err
	}
	var fresh []shelf.Letter
	for _, s := range all {
		if known[s.ID] {
			continue
		}
		data, err := json.Marshal(s.Statement)
		if err != nil {
			return err
		}
		fresh = append(fresh, shelf.Letter{ID: s.ID, Place: s.place, Statement: data})
	}
	return l.shelf.Post(fresh)
}

// courier carries one statement after the other.
type courier struct {
	Sending
	to     string
	client *http.Client
}

// outcome is what became of a statement.
type outcome uint8

const (
	taken   outcome = iota
	refused         // this one, whatever is tried
	stopped         // nothing more can be sent now
)

// deliver sends one statement, again and again while the store does not answer or asks for time.
func (c *courier) deliver(letter shelf.Letter) (outcome, string) {
	for try := 0; ; try++ {
		status, answer, after, err := c.ask(http.MethodPost, c.to, letter.Statement)
		switch {
		case err != nil:
		case status == http.StatusOK || status == http.StatusNoContent:
			return taken, ""
		case status == http.StatusConflict && c.hasTheSame(letter):
			return taken, ""
		case status == http.StatusUnauthorized || status == http.StatusForbidden:
			return stopped, words.Say("ledger.not_let_in", status, c.User)
		case status >= 300 && status < 400 || status == http.StatusNotFound || status == http.StatusMethodNotAllowed:
			return stopped, words.Say("ledger.not_a_store", status)
		case status >= 400 && status < 500 && status != http.StatusTooManyRequests && status != http.StatusRequestTimeout:
			return refused, words.Say("ledger.refused", status, c.hushed(answer))
		}
		if try == len(waits) {
			if err != nil {
				return stopped, words.Say("ledger.no_answer", try+1, c.hushed([]byte(reason(err))))
			}
			return stopped, words.Say("ledger.ill", status, try+1, c.hushed(answer))
		}
		c.Wait(max(waits[try], after))
	}
}

// ask sends a request and reads the answer.
func (c *courier) ask(method, to string, body []byte) (status int, answer []byte, after time.Duration, err error) {
	r, err := http.NewRequest(method, to, bytes.NewReader(body))
	if err != nil {
		return 0, nil, 0, err
	}
	r.SetBasicAuth(c.User, c.Secret)
	r.Header.Set("X-Experience-API-Version", book.XAPIVersion)
	if body != nil {
		r.Header.Set("Content-Type", "application/json")
	}
	got, err := c.client.Do(r)
	if err != nil {
		return 0, nil, 0, err
	}
	defer got.Body.Close()
	answer, err = io.ReadAll(io.LimitReader(got.Body, mostAnswer))
	if s, bad := strconv.Atoi(got.Header.Get("Retry-After")); bad == nil && s > 0 {
		after = min(time.Duration(s)*time.Second, longestWait)
	}
	return got.StatusCode, answer, after, err
}

// hasTheSame asks, after a conflict, whether the store has the very statement already.
func (c *courier) hasTheSame(letter shelf.Letter) bool {
	status, theirs, _, err := c.ask(http.MethodGet, c.to+"?statementId="+url.QueryEscape(letter.ID), nil)
	return err == nil && status == http.StatusOK && sameStatement(letter.Statement, theirs)
}

// sameStatement says whether all that we said stands in what a store gives back; it adds things of its own.
func sameStatement(ours, theirs []byte) bool {
	var a, b any
	return json.Unmarshal(ours, &a) == nil && json.Unmarshal(theirs, &b) == nil && within(a, b, "")
}

// within says whether one value holds all of another. Times may be written otherwise.
func within(a, b any, key string) bool {
	switch x := a.(type) {
	case map[string]any:
		y, ok := b.(map[string]any)
		for k, v := range x {
			if ok {
				ok = within(v, y[k], k)
			}
		}
		return ok
	case string:
		y, ok := b.(string)
		if !ok || x == y || key != "timestamp" {
			return ok && x == y
		}
		s, bad := time.Parse(time.RFC3339, x)
		t, worse := time.Parse(time.RFC3339, y)
		return bad == nil && worse == nil && s.Equal(t)
	}
	return a == b // numbers, truth and null; our statements hold no lists
}

// reason is an error of the network without the address, which our own words give.
func reason(err error) string {
	if inner := (*url.Error)(nil); errors.As(err, &inner) {
		err = inner.Err
	}
	return err.Error()
}

// hushed is the answer of a store as it may be shown: short, on one line, and without the secret even where the store gives it back.
func (c *courier) hushed(answer []byte) string {
	text := strings.Join(strings.Fields(strings.ToValidUTF8(string(answer), "\ufffd")), " ")
	if c.Secret != "" {
		text = strings.ReplaceAll(text, c.Secret, "…")
	}
	if r := []rune(text); len(r) > mostTrouble {
		text = string(r[:mostTrouble]) + "…"
	}
	return text
}
