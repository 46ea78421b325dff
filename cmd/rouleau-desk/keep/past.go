// Past results: what the files of finished attempts say of themselves, read without reading all of them.

package keep

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"gopkg.in/yaml.v3"

	"rouleau/assets/words"
)

// Past is one attempt as its file says. Whether the file is whole and was not changed shows when it is opened.
type Past struct {
	ScenarioID, Title, Mode, Operator, When, Path string
	Version                                       int
	Seed                                          uint64
	Points                                        float64
	Passed, Ended                                 bool
	TakenOver                                     bool // begun by another attempt
}

// fileKey tells a file from what it was before: who writes it changes its size or its time.
type fileKey struct {
	name string
	size int64
	time int64
}

// headed is what was read of a file once.
type headed struct {
	past Past
	err  error
}

// Past lists the attempts of the folder, newest first, and says which files could not be read. A file read before is not read
// again.
func (f *Folder) Past() ([]Past, []error) {
	entries, err := os.ReadDir(f.attempts())
	if err != nil {
		return nil, []error{errors.New(words.Say("keep.past_unread", f.attempts(), reason(err)))}
	}
	var all []Past
	var faults []error
	f.tail = make([]byte, mostTail)
	defer func() { f.tail = nil }()
	seen := make(map[fileKey]headed, len(entries))
	for _, e := range entries {
		info, err := e.Info()
		if err != nil || !info.Mode().IsRegular() || filepath.Ext(e.Name()) != ".json" {
			continue
		}
		key := fileKey{e.Name(), info.Size(), info.ModTime().UnixNano()}
		h, known := f.cache[key]
		if !known {
			path := filepath.Join(f.attempts(), e.Name())
			if h.past, h.err = f.read(path); h.err != nil {
				h.err = errors.New(words.Say("keep.past_damaged", path, h.err))
			}
		}
		seen[key] = h
		if h.err != nil {
			faults = append(faults, h.err)
			continue
		}
		all = append(all, h.past)
	}
	f.cache = seen
	slices.SortStableFunc(all, func(a, b Past) int { return strings.Compare(b.When+b.Path, a.When+a.Path) })
	return all, faults
}

// What is read of a file: its head holds scenario and seed, its tail the grade; acts and checkpoints lie between.
const (
	headBytes = 512 << 10 // more than the largest scenario
	tailBytes = 32 << 10  // the grade of most scenarios
	mostTail  = 1 << 20   // of any
)

var gradeKey = []byte("\n  \"grade\": ")

func (f *Folder) read(path string) (Past, error) {
	file, err := os.Open(path)
	if err != nil {
		return Past{}, reason(err)
	}
	defer file.Close()
	p := Past{Path: path}
	if err := f.head(io.LimitReader(file, headBytes), &p); err != nil {
		return Past{}, err
	}
	info, err := file.Stat()
	if err != nil {
		return Past{}, reason(err)
	}
	cutOff := errors.New(words.Say("keep.cut_off"))
	for most := int64(tailBytes); ; most *= 4 {
		tail := f.tail[:min(info.Size(), most, mostTail)]
		if _, err := file.ReadAt(tail, info.Size()-int64(len(tail))); err != nil && err != io.EOF {
			return Past{}, reason(err)
		}
		if !bytes.HasSuffix(bytes.TrimSpace(tail), []byte("}")) {
			return Past{}, cutOff
		}
		if at := bytes.LastIndex(tail, gradeKey); at >= 0 {
			if grade(tail[at+len(gradeKey):], &p) != nil {
				return Past{}, cutOff
			}
			return p, nil
		}
		if most >= min(info.Size(), mostTail) {
			return Past{}, cutOff
		}
	}
}

// head reads the keys before the acts.
func (f *Folder) head(r io.Reader, p *Past) error {
	bad := errors.New(words.Say("keep.no_attempt"))
	d := json.NewDecoder(r)
	if open, err := d.Token(); err != nil || open != json.Delim('{') {
		return bad
	}
	var scenario struct {
		ID, SHA256, Text string
		Version          int
	}
	var seed string
	var breaks struct {
		TakenOver bool `json:"taken_over"`
	}
	into := map[string]any{"when": &p.When, "mode": &p.Mode, "breaks": &breaks, "operator": &p.Operator, "scenario": &scenario, "seed": &seed, "ended": &p.Ended}
	for left := len(into); left > 0; {
		key, err := d.Token()
		name, ok := key.(string)
		if err != nil || !ok {
			return bad
		}
		to := into[name]
		if to == nil {
			to = new(json.RawMessage)
		} else {
			left--
		}
		if err := d.Decode(to); err != nil {
			return bad
		}
	}
	n, err := strconv.ParseUint(seed, 10, 64)
	if err != nil || scenario.ID == "" {
		return bad
	}
	p.Seed, p.ScenarioID, p.Version, p.TakenOver = n, scenario.ID, scenario.Version, breaks.TakenOver
	p.Title = f.title(scenario.SHA256, scenario.Text, scenario.ID)
	return nil
}

// grade reads the first two keys of the grade.
func grade(from []byte, p *Past) error {
	d := json.NewDecoder(bytes.NewReader(from))
	if open, err := d.Token(); err != nil || open != json.Delim('{') {
		return errors.New("no object")
	}
	found := 0
	for found < 2 && d.More() {
		key, err := d.Token()
		if err != nil {
			return err
		}
		switch key {
		case "passed":
			err = d.Decode(&p.Passed)
			found++
		case "points":
			err = d.Decode(&p.Points)
			found++
		default:
			err = d.Decode(new(json.RawMessage))
		}
		if err != nil {
			return err
		}
	}
	if found < 2 {
		return errors.New("no points")
	}
	return nil
}

// title is the title of a scenario, read once for each text.
func (f *Folder) title(hash, text, id string) string {
	if t, ok := f.titles[hash]; ok {
		return t
	}
	var top struct {
		Title string `yaml:"title"`
	}
	if err := yaml.Unmarshal([]byte(text), &top); err != nil || top.Title == "" {
		top.Title = id
	}
	f.titles[hash] = top.Title
	return top.Title
}

func whoLetter(r rune) bool {
	return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '-' || r == '_' || r == '.'
}
