// This file reads mappings into structs: known keys, unknown keys and what was
// probably meant by them, missing keys and defaults.

package yamlread

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"github.com/agnivade/levenshtein"
	"gopkg.in/yaml.v3"
)

func (r *Reader) record(node *yaml.Node, s *shape, v reflect.Value) {
	if node.Kind != yaml.MappingNode {
		r.Fault(node, "this is "+found(node), "a mapping with the keys "+strings.TrimPrefix(oneOf(s.keys()), "one of "))
		return
	}
	given := map[string]bool{}
	meant := map[string]bool{} // keys that an unknown key stands for: not also reported as missing
	merged := slices.ContainsFunc(node.Content, isMerge)
	for i := 0; i+1 < len(node.Content) && !r.doc.full(); i += 2 {
		key, value := node.Content[i], node.Content[i+1]
		if key.Kind != yaml.ScalarNode || isMerge(key) || refused(key) || given[key.Value] {
			continue
		}
		given[key.Value] = true
		f, ok := s.field(key.Value)
		if !ok {
			if near, ok := r.strayed(node, key, value, s); ok {
				meant[near] = true
			} else {
				meant[r.unknown(key, s)] = true
			}
			continue
		}
		inner := r.below(joinKey(r.path, f.key), f.rule)
		inner.doc.spots[inner.path] = spot{placeOf(key), placeOf(value)}
		inner.value(value, f.shape, v.FieldByIndex(f.index))
	}
	for _, f := range s.fields {
		switch {
		case given[f.key]:
		case f.rule.Required && !meant[f.key] && !merged && !r.doc.full():
			at := r.doc.spots[r.path].key
			r.doc.add(Fault{
				Place: at, Path: joinKey(r.path, f.key),
				Message: "missing key " + f.key + r.inside() + meaning(f.doc), Expected: f.key + ": " + f.shape.wants(f.rule),
			})
		default:
			preset(f, v.FieldByIndex(f.index))
		}
	}
}

// inside names the mapping that lacks a key.
func (r *Reader) inside() string {
	if r.path == "" {
		return ""
	}
	if i := strings.LastIndexByte(r.path, '['); strings.HasSuffix(r.path, "]") {
		return " in this entry of " + r.path[:i]
	}
	return " in " + r.path
}

// meaning is what a key means, as an addition to a message.
func meaning(doc string) string {
	if doc == "" {
		return ""
	}
	return " (" + strings.TrimSuffix(doc, ".") + ")"
}

func (s *shape) keys() []string {
	keys := make([]string, len(s.fields))
	for i, f := range s.fields {
		keys[i] = f.key
	}
	return keys
}

// preset gives a field that the file leaves out its default, and the fields of
// a struct left out as a whole theirs. What is behind a pointer stays absent.
func preset(f field, v reflect.Value) {
	if f.rule.Default != "" {
		readSample(f, f.rule.Default, v)
		return
	}
	if f.shape.kind == record {
		for _, inner := range f.shape.fields {
			preset(inner, v.FieldByIndex(inner.index))
		}
	}
}

// try reads the text of a default or example into nothing, to see its faults.
func try(f field, sample string) Faults {
	if sample == "" {
		return nil
	}
	return readSample(f, sample, reflect.New(f.shape.typ).Elem())
}

// readSample reads the text of a YAML value that stands in a tag.
func readSample(f field, sample string, v reflect.Value) Faults {
	doc := newDoc("tag", sample)
	docs, err := parse(strings.NewReader(sample))
	if err != nil || len(docs) != 1 {
		doc.Fault("", "it is not a YAML value", "")
		return doc.Faults()
	}
	r := &Reader{doc: doc, path: f.key, rule: f.rule}
	r.value(docs[0].Content[0], f.shape, v)
	return doc.Faults()
}

// unknown reports a key that no field has and answers with the key that was
// probably meant, if any.
func (r *Reader) unknown(key *yaml.Node, s *shape) string {
	got := key.Value
	keys := s.keys()
	expected := func(near string) string {
		if len(keys) == 0 {
			return "no keys here"
		}
		return OneOf(keys, got, near)
	}
	word := snake(got)
	if word != got || !snakeKey.MatchString(got) {
		near := Nearest(word, keys)
		r.FaultNear(key, "key "+shown(got)+" is not known: keys are lower-case words joined by _", expected(near), near)
		return near
	}
	for _, f := range s.fields {
		name, unit, sign := f.split()
		gotName, gotUnit := cutUnit(got)
		if unit == "" || gotName != name || gotUnit == unit {
			continue
		}
		message := fmt.Sprintf("wrong unit: this key is %s (%s)", f.key, sign)
		switch {
		case unitWords[gotUnit] == sign && gotUnit != "":
			message = fmt.Sprintf("the unit is written %s at the end of a key: this key is %s", unit, f.key)
		case gotUnit == "":
			message = fmt.Sprintf("the unit is missing: this key is %s (%s)", f.key, sign)
		}
		r.FaultNear(key, message, f.key+": "+f.shape.wants(f.rule), f.key)
		return f.key
	}
	near := Nearest(got, keys)
	r.FaultNear(key, "key "+shown(got)+" is not known", expected(near), near)
	return near
}

// strayed reports what stands in place of a key within braces through a slip: a blank left out behind a colon, or the rest of
// a text that was cut at its comma. It answers with the key that was meant, if any, and false where nothing strayed.
func (r *Reader) strayed(mapping, key, value *yaml.Node, s *shape) (near string, ok bool) {
	if mapping.Style&yaml.FlowStyle == 0 || value.Tag != "!!null" || value.Value != "" {
		return "", false
	}
	if word, rest, found := strings.Cut(key.Value, ":"); found && rest != "" {
		if _, ok := s.field(word); ok {
			r.Fault(key, "a blank is missing behind the colon", clip(word+": "+rest))
			return word, true
		}
	}
	if _, slip := s.field(Nearest(key.Value, s.keys())); slip && snakeKey.MatchString(key.Value) {
		return "", false
	}
	r.Fault(key, shown(key.Value)+" has no value: is it the rest of a text with a comma?", `key: value; a text with a comma stands in straight quotes, "like, this"`)
	return "", true
}

// snake writes a key as lower-case words joined by _: BleedingMl gives
// bleeding_ml, "wash volume" gives wash_volume.
func snake(key string) string {
	var b strings.Builder
	for i, c := range clip(key) {
		switch {
		case c == '-' || c == ' ' || c == '.':
			b.WriteByte('_')
		case c >= 'A' && c <= 'Z':
			if prev := b.String(); i > 0 && prev[len(prev)-1] >= 'a' && prev[len(prev)-1] <= 'z' {
				b.WriteByte('_')
			}
			b.WriteRune(c - 'A' + 'a')
		default:
			b.WriteRune(c)
		}
	}
	return strings.Trim(b.String(), "_")
}

// Nearest gives the word that a misspelt one is likely to stand for, or "" where
// none is near enough. Of words equally near it is the first.
func Nearest(word string, known []string) string {
	const longest = 64 // a longer word is no slip of the pen
	if len(word) > longest {
		return ""
	}
	best, least := "", 0
	for _, k := range known {
		w, k2 := strings.ToLower(word), strings.ToLower(k)
		short := min(len(w), len(k2))
		d := levenshtein.ComputeDistance(w, k2)
		// Two letters swapped count as two changes, though they are one slip.
		near := d <= max(1, short/3) || d == 2 && sameLetters(w, k2)
		if near && d < short && (best == "" || d < least) {
			best, least = k, d
		}
	}
	if best == "" {
		return nearestByWords(strings.ToLower(word), known)
	}
	return best
}

// nearestByWords gives the one word that is made of all the words of another, such as request_blood for request.
func nearestByWords(word string, known []string) string {
	parts := strings.Split(word, "_")
	only := ""
	for _, k := range known {
		of := strings.Split(k, "_")
		if !slices.ContainsFunc(parts, func(p string) bool { return len(p) < 3 && len(parts) == 1 || !slices.Contains(of, p) }) {
			if only != "" {
				return ""
			}
			only = k
		}
	}
	return only
}

// sameLetters tells whether two words have the same letters in any order.
func sameLetters(a, b string) bool {
	x, y := []byte(a), []byte(b)
	slices.Sort(x)
	slices.Sort(y)
	return slices.Equal(x, y)
}
