// This file holds Doc, the outcome of one reading: the faults, and where in
// the file each value was written, so that later checks can point at it.

package yamlread

import (
	"slices"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// maxFaults bounds what one file can make us collect and print. A file with
// more slips than this is not a scenario with slips but some other file.
const maxFaults = 1000

// spot is where a value stands, and where its key does (the value itself for
// an item of a list).
type spot struct{ key, value Place }

// Doc is what reading one file found. It is never nil, also for a bad file.
type Doc struct {
	name   string
	lines  []string
	spots  map[string]spot // looked up by path, never iterated
	faults Faults
	more   bool
}

func newDoc(name, text string) *Doc {
	return &Doc{name: name, lines: splitLines(text), spots: map[string]spot{}}
}

// Name is the file name that faults carry.
func (d *Doc) Name() string { return d.name }

// At tells where the value of a path such as phases[2].bleeding_ml_min stands.
// For a value the file does not hold (left out, or filled by a default) it is
// the place of the nearest thing around it that the file does hold.
func (d *Doc) At(path string) Place {
	if s, ok := d.spots[path]; ok {
		return s.value
	}
	for path != "" {
		path = parent(path)
		if s, ok := d.spots[path]; ok {
			return s.key
		}
	}
	return Place{1, 1}
}

// Has tells whether the file itself gives a value for the path.
func (d *Doc) Has(path string) bool {
	_, ok := d.spots[path]
	return ok
}

// Fault adds a fault at the place of a path. Expected may be empty.
func (d *Doc) Fault(path, message, expected string) {
	d.FaultNear(path, message, expected, "")
}

// FaultNear is Fault with the word that was probably meant.
func (d *Doc) FaultNear(path, message, expected, nearest string) {
	d.add(Fault{Place: d.At(path), Path: path, Message: message, Expected: expected, Nearest: nearest})
}

// Faults gives all faults so far in the order of their places.
func (d *Doc) Faults() Faults {
	fs := slices.Clone(d.faults)
	fs.sort()
	if d.more {
		last := fs[len(fs)-1]
		last.Message, last.Expected, last.Nearest = "there are more faults than these: mend them first, then check again", "", ""
		fs = append(fs, last)
	}
	return fs
}

// add completes a fault with the file name and its source line.
func (d *Doc) add(f Fault) {
	if len(d.faults) >= maxFaults {
		d.more = true
		return
	}
	f.File = d.name
	// The parser places what is missing at the end of a file on a line after the last.
	if last := len(d.lines); f.Line > last {
		f.Place = Place{last, utf8.RuneCountInString(d.lines[last-1]) + 1}
	}
	f.Source = d.lines[f.Line-1]
	d.faults = append(d.faults, f)
}

// full tells that looking for further faults is of no use.
func (d *Doc) full() bool { return d.more }

// placeOf is where a node begins.
func placeOf(node *yaml.Node) Place { return Place{max(node.Line, 1), max(node.Column, 1)} }

// parent cuts the last step, a key or an index, off a path.
func parent(path string) string {
	return path[:max(strings.LastIndexAny(path, ".["), 0)]
}

// joinKey makes the path of a key below a path.
func joinKey(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// splitLines cuts text where YAML 1.1 counts a line end, so that line numbers
// agree with those of the parser.
func splitLines(text string) []string {
	var lines []string
	start := 0
	for i, c := range text {
		if i < start {
			continue
		}
		width := 0
		switch c {
		case '\r':
			width = 1
			if strings.HasPrefix(text[i+1:], "\n") {
				width = 2
			}
		case '\n':
			width = 1
		case '\u0085':
			width = 2
		case '\u2028', '\u2029':
			width = 3
		}
		if width > 0 {
			lines = append(lines, text[start:i])
			start = i + width
		}
	}
	return append(lines, text[start:])
}
