package cli

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"rouleau/assets/words"
	"rouleau/scenarios/yamlread"
)

// What a module asks for: fields with their kinds, bounds and defaults, and the values of one case.

type kind uint8

const (
	number  kind = iota
	numbers      // a list
	word
	truth
)

// field is one thing a module asks for.
type field struct {
	path        string // in the file, such as feed.hct
	kind        kind
	required    bool
	initial     any // what it is when left out; nil for nothing
	least, most float64
	unit        string
	choices     []string
	doc         string // key of the catalogue
}

// flag is the field's name on the command line.
func (f *field) flag() string { return strings.NewReplacer(".", "-", "_", "-").Replace(f.path) }

// usage is the help of its flag.
func (f *field) usage() string {
	text := words.Say(f.doc) + ": " + f.wanted()
	switch {
	case f.required:
		text += " " + words.Say("cli.required")
	case f.initial != nil:
		text += " " + words.Say("cli.default", show(f.initial))
	}
	return text
}

// wanted says what the field takes.
func (f *field) wanted() string {
	switch f.kind {
	case word:
		return strings.Join(f.choices, ", ")
	case truth:
		return words.Say("cli.kind_bool")
	}
	unit := f.unit
	if unit != "" {
		unit = " " + unit
	}
	if f.kind == numbers {
		return words.Say("cli.wanted_numbers", bound(f.least), bound(f.most), unit)
	}
	return words.Say("cli.wanted_number", bound(f.least), bound(f.most), unit)
}

func bound(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// within tells whether a number lies within the bounds.
func (f *field) within(x float64) bool { return x >= f.least && x <= f.most }

// parse reads what was typed.
func (f *field) parse(text string) (any, bool) {
	switch f.kind {
	case word:
		return text, f.allows(text)
	case truth:
		return text == "true", text == "true" || text == "false"
	case numbers:
		var list []float64
		for part := range strings.SplitSeq(text, ",") {
			x, err := strconv.ParseFloat(strings.TrimSpace(part), 64)
			if err != nil || !f.within(x) {
				return nil, false
			}
			list = append(list, x)
		}
		return list, true
	}
	x, err := strconv.ParseFloat(text, 64)
	return x, err == nil && f.within(x)
}

func (f *field) allows(text string) bool {
	for _, c := range f.choices {
		if c == text {
			return true
		}
	}
	return false
}

// nearest is the choice that was probably meant.
func (f *field) nearest(text string) string {
	if f.kind != word {
		return ""
	}
	return yamlread.Nearest(text, f.choices)
}

// values are the values of one case by path.
type values map[string]any

func (v values) number(path string) float64 {
	x, _ := v[path].(float64)
	return x
}

func (v values) word(path string) string {
	s, _ := v[path].(string)
	return s
}

func (v values) truth(path string) bool {
	b, _ := v[path].(bool)
	return b
}

func (v values) numbers(path string) []float64 {
	list, _ := v[path].([]float64)
	return list
}

// show gives a value for a table, "" where there is none.
func (v values) show(f field) string {
	x, ok := v[f.path]
	if !ok {
		return ""
	}
	return show(x)
}

func show(x any) string {
	switch x := x.(type) {
	case float64:
		return strconv.FormatFloat(x, 'f', -1, 64)
	case []float64:
		var parts []string
		for _, y := range x {
			parts = append(parts, strconv.FormatFloat(y, 'f', -1, 64))
		}
		return strings.Join(parts, ",")
	}
	return fmt.Sprint(x)
}

// complete puts in what was left out and tells what is missing or does not fit together; name writes a path for messages.
func (m *module) complete(in values, name func(path string) string) (faults []string) {
	for i := range m.fields {
		f := &m.fields[i]
		switch _, there := in[f.path]; {
		case there:
		case f.required:
			faults = append(faults, words.Say("cli.field_missing", name(f.path), f.wanted()))
		case f.initial != nil:
			in[f.path] = f.initial
		}
	}
	if len(faults) == 0 && m.check != nil {
		faults = m.check(in, name)
	}
	return faults
}

// byHand reads what was typed for the flags.
func (m *module) byHand(given map[string]string) (values, []string) {
	in := values{}
	var faults []string
	name := func(path string) string { return "--" + (&field{path: path}).flag() }
	for i := range m.fields {
		f := &m.fields[i]
		text, there := given[f.path]
		if !there {
			continue
		}
		x, ok := f.parse(text)
		if !ok {
			faults = append(faults, withNearest(words.Say("cli.field_value", name(f.path), strconv.Quote(text), f.wanted()), f.nearest(text)))
		}
		in[f.path] = x
	}
	return in, append(faults, m.complete(in, name)...)
}

// compute runs the module. An answer that is no number is a fault of ours, caught at the top.
func (m *module) compute(in values) []result {
	results := m.run(in)
	for _, r := range results {
		if math.IsNaN(r.value) || math.IsInf(r.value, 0) {
			panic(words.Say("cli.not_finite", m.name, r.name))
		}
	}
	return results
}
