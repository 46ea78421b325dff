// Reading a journal back. Whatever the bytes are, the answer is a record that can be played again, or the place of the
// damage. A last line that was being written when the program ended is left out without a word.

package journal

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"rouleau/assets/words"
	"rouleau/scenarios"
	"rouleau/scoring/attempt"
	"rouleau/sim"
)

// MaxBytes is the size over which a file is refused; thirteen hours with a line a tick are less.
const MaxBytes = 128 << 20

// Kind sorts the lines of a record.
type Kind uint8

// The kinds.
const (
	Act Kind = iota + 1
	Window
	Note
	Resumed
	Reached // with a hash of the state; the others are summed up in the record
)

// Line is one line in the order in which it was written.
type Line struct {
	Number  int // in the file, from 1
	Kind    Kind
	Tick    int64
	Act     sim.Action
	Refused sim.Reason
	Do      string // of Window
	What    string
	Value   int
	Text    string // of Note
	When    string // of Resumed
	Hash    uint64 // of Reached
}

// Record is what a journal holds.
type Record struct {
	Head    Head
	Lines   []Line
	Reached int64 // tick to which the case had come
	Spent   time.Duration
	Lost    time.Duration
	Resumed int  // times
	Saved   bool // the attempt is safe elsewhere

	bytes int64 // of whole lines
}

// Damage is a journal that cannot be read: where, why and what to do.
type Damage struct {
	File string
	Line int
	Why  string
}

func (d *Damage) Error() string { return words.Say("journal.damaged", d.File, d.Line, d.Why) }

// Open opens a journal to go on with it. It is locked until it is closed or removed.
func Open(path string) (*Journal, error) {
	if _, err := os.Stat(path); err != nil {
		return nil, errors.New(words.Say("journal.unread", path, reasonOf(err)))
	}
	l, err := lockFor(path)
	if errors.Is(err, errBusy) {
		return nil, errors.New(words.Say("journal.busy", path))
	}
	if err != nil {
		return nil, errors.New(words.Say("journal.not_opened", path, reasonOf(err)))
	}
	r, err := Read(path)
	if err != nil {
		l.release(false)
		return nil, err
	}
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err == nil {
		if err = f.Truncate(r.bytes); err != nil {
			f.Close()
		}
	}
	if err != nil {
		l.release(false)
		return nil, errors.New(words.Say("journal.not_opened", path, reasonOf(err)))
	}
	return &Journal{head: r.Head, record: r, path: path, folder: filepath.Dir(path), lock: l, file: f, size: r.bytes, saved: r.Saved, sync: startSync(f)}, nil
}

// Read reads a journal and leaves it as it is.
func Read(path string) (*Record, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, errors.New(words.Say("journal.unread", path, reasonOf(err)))
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, MaxBytes+1))
	if err != nil {
		return nil, errors.New(words.Say("journal.unread", path, reasonOf(err)))
	}
	return Parse(path, data)
}

// Parse reads a journal from bytes; the name is what a damage calls the file.
func Parse(name string, data []byte) (*Record, error) {
	r := &Record{}
	if len(data) > MaxBytes {
		return nil, &Damage{name, 1, words.Say("journal.too_large", MaxBytes>>20)}
	}
	// a power cut may leave a file longer than what came to the disk, filled with zeros
	rest := bytes.TrimRight(data, "\x00")
	for number := 1; ; number++ {
		end := bytes.IndexByte(rest, '\n')
		if end < 0 {
			break
		}
		if why := r.line(number, rest[:end]); why != "" {
			return nil, &Damage{name, number, why}
		}
		r.bytes += int64(end) + 1
		rest = rest[end+1:]
	}
	if r.bytes == 0 {
		return nil, &Damage{name, 1, words.Say("journal.no_head")}
	}
	return r, nil
}

// line takes one line in, or says what is wrong with it.
func (r *Record) line(number int, text []byte) string {
	if tick, ok := plainReached(text); ok && number > 1 {
		return r.at(tick)
	}
	var l line
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(&l); err != nil {
		return words.Say("journal.no_json", strings.TrimPrefix(err.Error(), "json: "))
	}
	if _, more := d.Token(); more != io.EOF {
		return words.Say("journal.more")
	}
	if number == 1 {
		return r.head(&l)
	}
	out := Line{Number: number}
	switch {
	case l.Act != nil:
		out.Kind, out.Tick, out.Refused = Act, l.Act.Tick, sim.Reason(l.Act.Refused)
		var why string
		if out.Act, why = l.Act.action(); why != "" {
			return why
		}
	case l.Window != nil:
		out.Kind, out.Tick, out.Do, out.Value, out.What = Window, l.Window.Tick, l.Window.Do, l.Window.Value, l.Window.What
	case l.Note != nil:
		out.Kind, out.Tick, out.Text = Note, l.Note.Tick, l.Note.Text
	case l.Resumed != nil:
		out.Kind, out.Tick, out.When = Resumed, l.Resumed.Tick, l.Resumed.When
		r.Resumed++
	case l.Saved != nil:
		r.Saved = *l.Saved
		return ""
	case l.Reached != nil:
		return r.reached(&l.reachedLine, out)
	default:
		return words.Say("journal.not_known")
	}
	r.Lines = append(r.Lines, out)
	return r.at(out.Tick)
}

func (r *Record) reached(l *reachedLine, out Line) string {
	r.Spent, r.Lost = max(r.Spent, ms(l.SpentMS)), max(r.Lost, ms(l.LostMS))
	if l.Hash != "" {
		hash, err := strconv.ParseUint(l.Hash, 16, 64)
		if err != nil {
			return words.Say("journal.no_hash", l.Hash)
		}
		out.Kind, out.Tick, out.Hash = Reached, *l.Reached, hash
		r.Lines = append(r.Lines, out)
	}
	return r.at(*l.Reached)
}

// ms bounds what a file may say of a time, so that sums of it stay times.
func ms(n int64) time.Duration {
	const longest = 1 << 40
	return time.Duration(min(max(n, 0), longest)) * time.Millisecond
}

// at checks that time only goes on.
func (r *Record) at(tick int64) string {
	if tick < r.Reached {
		return words.Say("journal.backwards", tick, r.Reached)
	}
	r.Reached = tick
	return ""
}

func (r *Record) head(l *line) string {
	if l.Head == nil {
		return words.Say("journal.no_head")
	}
	r.Head = *l.Head
	h := &r.Head
	switch {
	case h.Format != FormatVersion:
		return words.Say("journal.format", h.Format, FormatVersion)
	case h.Mode != attempt.Practice && h.Mode != attempt.Assessment:
		return words.Say("journal.mode", h.Mode)
	}
	return ""
}

// plainReached reads the most frequent line without the machinery of JSON.
func plainReached(text []byte) (tick int64, ok bool) {
	digits, ok := bytes.CutPrefix(text, []byte(reachedStart))
	if !ok || len(digits) < 2 || len(digits) > 16 || digits[len(digits)-1] != '}' {
		return 0, false
	}
	for _, c := range digits[:len(digits)-1] {
		if c < '0' || c > '9' {
			return 0, false
		}
		tick = tick*10 + int64(c-'0')
	}
	return tick, true
}

func (a *actLine) action() (out sim.Action, why string) {
	out = sim.Action{Tick: a.Tick, Value: float64(a.Value), Text: a.Text}
	var known bool
	if out.Do, known = sim.VerbNamed(a.Do); !known {
		return out, words.Say("journal.no_act", a.Do)
	}
	if out.On, known = sim.PartNamed(a.On); !known {
		return out, words.Say("journal.no_part", a.On)
	}
	if a.Item != "" {
		item, known := sim.TallyItemNamed(a.Item)
		if !known {
			return out, words.Say("journal.no_item", a.Item)
		}
		out.Item = uint8(item)
	}
	return out, ""
}

// Scenario reads the scenario that the head holds, and says why the case cannot be gone on with when it cannot.
func (r *Record) Scenario() (*scenarios.Scenario, error) {
	h := &r.Head
	if h.Model != sim.ModelVersion {
		return nil, errors.New(words.Say("journal.model", h.Model, sim.ModelVersion))
	}
	sc, faults := scenarios.Parse(h.Scenario.ID+".yaml", []byte(h.Scenario.Text))
	if err := faults.Err(); err != nil {
		return nil, errors.New(words.Say("journal.scenario", err))
	}
	if sc.Hash() != h.Scenario.SHA256 {
		return nil, errors.New(words.Say("journal.changed"))
	}
	return sc, nil
}
