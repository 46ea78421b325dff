package cli

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"slices"
	"strconv"
	"strings"

	"rouleau/assets/words"
	"rouleau/scenarios/yamlread"
	"rouleau/scoring/attempt"
)

// Files of cases: the list of testdata/reference, read strictly, every fault with the case and the field it is in.

// givenCase is a case as the file holds it.
type givenCase struct {
	input  json.RawMessage // written back as it came
	module *module
	values values
}

// readCases gives the cases, or every fault.
func readCases(data []byte) (cases []givenCase, faults []string) {
	var list []json.RawMessage
	if err := json.Unmarshal(data, &list); err != nil {
		return nil, []string{listFault(data, err)}
	}
	for i, raw := range list {
		r := caseReading{place: fmt.Sprintf("cases[%d]", i)}
		one := r.read(raw)
		faults = append(faults, r.faults...)
		cases = append(cases, one)
	}
	return cases, faults
}

// listFault says why a file is no list of cases.
func listFault(data []byte, err error) string {
	switch syntax, isSyntax := err.(*json.SyntaxError); {
	case len(bytes.TrimSpace(data)) == 0:
		return words.Say("cli.cases_empty")
	case isSyntax:
		before := data[:min(max(syntax.Offset-1, 0), int64(len(data)))]
		column := syntax.Offset - 1 - int64(bytes.LastIndexByte(before, '\n'))
		return words.Say("cli.cases_json", bytes.Count(before, []byte("\n"))+1, column, syntax)
	}
	return words.Say("cli.cases_no_list")
}

// caseReading reads one case.
type caseReading struct {
	place  string
	faults []string
}

func (r *caseReading) fault(field, text string) {
	r.faults = append(r.faults, r.place+field+": "+text)
}

func (r *caseReading) read(raw json.RawMessage) (one givenCase) {
	var top map[string]json.RawMessage
	if json.Unmarshal(raw, &top) != nil || top == nil {
		r.fault("", words.Say("cli.case_object"))
		return one
	}
	known := []string{"module", "input", "expect", "result"} // the last two are for who compares
	for _, key := range slices.Sorted(maps.Keys(top)) {
		if !slices.Contains(known, key) {
			r.fault("."+key, withNearest(words.Say("cli.case_key"), yamlread.Nearest(key, known)))
		}
	}
	var name string
	if json.Unmarshal(top["module"], &name) != nil {
		r.fault(".module", words.Say("cli.case_module", strings.Join(moduleNames(), ", ")))
		return one
	}
	m, nearest := moduleNamed(name)
	if m == nil {
		r.fault(".module", withNearest(words.Say("cli.case_module", strings.Join(moduleNames(), ", ")), nearest))
		return one
	}
	var input map[string]json.RawMessage
	if json.Unmarshal(top["input"], &input) != nil || input == nil {
		r.fault(".input", words.Say("cli.case_input"))
		return one
	}
	one = givenCase{top["input"], m, values{}}
	count := len(r.faults)
	r.fields(m, "", input, one.values)
	if len(r.faults) == count {
		for _, f := range m.complete(one.values, func(path string) string { return r.place + ".input." + path }) {
			r.faults = append(r.faults, f)
		}
	}
	return one
}

// fields reads the values of an object and of the objects in it.
func (r *caseReading) fields(m *module, prefix string, object map[string]json.RawMessage, into values) {
	for _, key := range slices.Sorted(maps.Keys(object)) {
		path := prefix + key
		if f := m.field(path); f != nil {
			if x, ok := f.fromJSON(object[key]); ok {
				into[path] = x
			} else {
				r.fault(".input."+path, words.Say("cli.case_value", shortened(object[key]), f.wanted()))
			}
			continue
		}
		var inner map[string]json.RawMessage
		switch group := m.group(path + "."); {
		case group && json.Unmarshal(object[key], &inner) == nil && inner != nil:
			r.fields(m, path+".", inner, into)
		case group:
			r.fault(".input."+path, words.Say("cli.case_group"))
		default:
			r.fault(".input."+path, withNearest(words.Say("cli.case_field", m.name), m.nearest(prefix, key)))
		}
	}
}

func (m *module) field(path string) *field {
	i := slices.IndexFunc(m.fields, func(f field) bool { return f.path == path })
	if i < 0 {
		return nil
	}
	return &m.fields[i]
}

// group tells whether fields stand in an object of that name.
func (m *module) group(prefix string) bool {
	return slices.ContainsFunc(m.fields, func(f field) bool { return strings.HasPrefix(f.path, prefix) })
}

// nearest is the key, at one level of the input, that was probably meant.
func (m *module) nearest(prefix, key string) string {
	var known []string
	for _, f := range m.fields {
		if prefix == "" && strings.ReplaceAll(f.path, ".", "_") == key {
			return f.path // written as the flag is, though it belongs into an object
		}
		if rest, ok := strings.CutPrefix(f.path, prefix); ok {
			name, _, _ := strings.Cut(rest, ".")
			known = append(known, name)
		}
	}
	return yamlread.Nearest(key, known)
}

// fromJSON reads a value of the field.
func (f *field) fromJSON(raw json.RawMessage) (any, bool) {
	if string(raw) == "null" {
		return nil, false
	}
	switch f.kind {
	case word:
		var s string
		err := json.Unmarshal(raw, &s)
		return s, err == nil && f.allows(s)
	case truth:
		var b bool
		err := json.Unmarshal(raw, &b)
		return b, err == nil
	case numbers:
		var list []float64
		err := json.Unmarshal(raw, &list)
		return list, err == nil && !slices.ContainsFunc(list, func(x float64) bool { return !f.within(x) })
	}
	var x float64
	err := json.Unmarshal(raw, &x)
	return x, err == nil && f.within(x)
}

func shortened(raw json.RawMessage) string {
	const most = 40
	if r := []rune(string(raw)); len(r) > most {
		return string(r[:most]) + "…"
	}
	return string(raw)
}

// writeCases computes the cases and prints them one a line.
func writeCases(w io.Writer, cases []givenCase) {
	io.WriteString(w, "[")
	for i, c := range cases {
		if i > 0 {
			io.WriteString(w, ",")
		}
		var input bytes.Buffer
		if err := json.Compact(&input, c.input); err != nil {
			panic(err) // it was read as JSON before; caught at the top as a fault of ours
		}
		fmt.Fprintf(w, "\n  {%q: %q, %q: %s, %q: %s}", "module", c.module.name, "input", input.Bytes(), "result", resultJSON(c.module.compute(c.values)))
	}
	io.WriteString(w, "\n]\n")
}

// resultJSON is the answer with its numbers to the last bit, in the order of the module.
func resultJSON(results []result) []byte {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, r := range results {
		if i > 0 {
			b.WriteString(", ")
		}
		b.WriteString(strconv.Quote(r.name) + ": " + attempt.Exact(r.value).String())
	}
	b.WriteByte('}')
	return b.Bytes()
}

// MarshalJSON gives a case by hand in the shape of a file of cases.
func (c *computed) MarshalJSON() ([]byte, error) {
	nested := map[string]any{} // json sorts the keys
	for _, path := range slices.Sorted(maps.Keys(c.input)) {
		group, key, grouped := strings.Cut(path, ".")
		if !grouped {
			nested[path] = c.input[path]
			continue
		}
		inner, _ := nested[group].(map[string]any)
		if inner == nil {
			inner = map[string]any{}
			nested[group] = inner
		}
		inner[key] = c.input[path]
	}
	return json.Marshal(struct {
		Module string          `json:"module"`
		Input  map[string]any  `json:"input"`
		Result json.RawMessage `json:"result"`
	}{c.module.name, nested, resultJSON(c.result)})
}
