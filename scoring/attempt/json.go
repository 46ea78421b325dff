package attempt

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// JSON read strictly, with faults in plain words.

type raw = json.RawMessage

// whatIs says what to give in place of what is none.
const whatIs = "an attempt is a file that the window or `rouleau run --out` has saved"

// object reads the keys of a file, or says what is wrong with it.
func object(data []byte) (map[string]raw, string) {
	data = bytes.TrimPrefix(data, []byte("\ufeff")) // some editors put this mark before what they save
	switch text := bytes.TrimSpace(data); {
	case len(text) == 0:
		return nil, "the file is empty: " + whatIs
	case text[0] != '{':
		return nil, "this is not an attempt: it does not begin with {: " + whatIs
	}
	var top map[string]raw
	d := json.NewDecoder(bytes.NewReader(data))
	err := d.Decode(&top)
	if err == nil {
		if _, more := d.Token(); more != io.EOF {
			return nil, place(data, d.InputOffset()) + ": something follows after the end of the attempt"
		}
		return top, keyTwice(data)
	}
	var syntax *json.SyntaxError
	switch {
	case errors.Is(err, io.ErrUnexpectedEOF):
		return nil, place(data, int64(len(data))) + ": the file is cut off here: copy it again from where it came"
	case errors.As(err, &syntax):
		return nil, place(data, syntax.Offset) + ": this is not JSON: " + syntax.Error()
	}
	return nil, "this is not JSON: " + err.Error()
}

// keyTwice says which key of the file stands there twice: one reader would believe the first, another the last. The data is
// known to be one object.
func keyTwice(data []byte) string {
	d := json.NewDecoder(bytes.NewReader(data))
	seen := map[string]bool{}
	_, _ = d.Token() // the brace
	for d.More() {
		token, _ := d.Token()
		key, _ := token.(string)
		if seen[key] {
			return place(data, d.InputOffset()) + ": the key " + clipped(key) + " is there twice"
		}
		seen[key] = true
		var value raw
		if d.Decode(&value) != nil {
			return ""
		}
	}
	return ""
}

// place gives line and column, from one, of a byte of the file.
func place(data []byte, offset int64) string {
	before := data[:min(max(offset-1, 0), int64(len(data)))]
	start := bytes.LastIndexByte(before, '\n') + 1
	return fmt.Sprintf("line %d, column %d", bytes.Count(before, []byte("\n"))+1, utf8.RuneCount(before[start:])+1)
}

// strict reads a value into a Go variable, unknown keys refused, or says what is wrong.
func strict(data raw, into any) string {
	if string(data) == "null" {
		return "there is no value here (null)"
	}
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	err := d.Decode(into)
	if err == nil {
		return ""
	}
	var kind *json.UnmarshalTypeError
	if errors.As(err, &kind) {
		what := "this is a " + kind.Value
		if kind.Field != "" {
			what = kind.Field + " is a " + kind.Value
		}
		return what + ", and not " + wanted(kind.Type.Kind().String())
	}
	text := strings.TrimPrefix(err.Error(), "json: ")
	if key, found := strings.CutPrefix(text, "unknown field "); found {
		return "key " + clipped(key) + " is not known here"
	}
	return text
}

// wanted names a kind of Go variable for people.
func wanted(kind string) string {
	switch kind {
	case "string":
		return "a text"
	case "bool":
		return "true or false"
	case "slice":
		return "a list"
	case "struct", "map":
		return "an object in braces"
	case "float64":
		return "a number"
	}
	return "a whole number"
}
