// This file holds Format: a file without faults in the canonical order and
// layout, with the author's comments and line breaks in texts kept.

package yamlread

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// Former is an Unmarshaler with a structured second form: Form gives a value of
// the struct it decodes a mapping into, so that its keys can be put in order.
type Former interface {
	Form() any
}

// Format lays a file out anew: keys in the order of the Go fields, two blanks a
// level, one way to quote. What was on one line stays on one line, and what was
// a block stays one. The second reading of the result is compared with the
// first, so that layout can never change a case. With faults there is no result.
func Format(name string, data []byte, into any) ([]byte, Faults) {
	doc := Read(name, data, into)
	if faults := doc.Faults(); len(faults) > 0 {
		return nil, faults
	}
	_, root := open(name, data)
	s, err := shapeOf(reflect.TypeOf(into).Elem())
	if err != nil {
		return nil, broken(name, err).Faults()
	}
	source := commented(doc.lines, root)
	p := printer{source: source}
	p.file(root, s)
	out := []byte(p.String())
	if err := sameContent(name, out, into, source); err != nil {
		return nil, broken(name, err).Faults()
	}
	return out, nil
}

// sameContent reads the result back and compares values and comments.
func sameContent(name string, out []byte, want any, source *remarks) error {
	got := reflect.New(reflect.TypeOf(want).Elem())
	doc := Read(name, out, got.Interface())
	if faults := doc.Faults(); len(faults) > 0 {
		return fmt.Errorf("the file laid out anew could not be read (%s)", faults[0].Message)
	}
	if !reflect.DeepEqual(got.Interface(), want) {
		return fmt.Errorf("the file laid out anew would mean something else")
	}
	_, root := open(name, out)
	if again := commented(doc.lines, root); !slices.Equal(again.texts(), source.texts()) {
		return fmt.Errorf("the file laid out anew would have lost a comment")
	}
	return nil
}

// pair is one key of a mapping with its value.
type pair struct{ key, value *yaml.Node }

// ordered gives the pairs of a mapping as its shape has them: those of a record
// in the order of its fields, those with free names by name.
func ordered(node *yaml.Node, s *shape) []pair {
	pairs := make([]pair, 0, len(node.Content)/2)
	for i := 0; i+1 < len(node.Content); i += 2 {
		pairs = append(pairs, pair{node.Content[i], node.Content[i+1]})
	}
	switch {
	case s == nil:
	case s.kind == record:
		keys := s.keys()
		slices.SortStableFunc(pairs, func(a, b pair) int { return slices.Index(keys, a.key.Value) - slices.Index(keys, b.key.Value) })
	case s.kind == table:
		slices.SortStableFunc(pairs, func(a, b pair) int { return strings.Compare(a.key.Value, b.key.Value) })
	}
	return pairs
}

// inner is the shape of what stands behind a key, nil where nothing is known.
func (s *shape) inner(key string) *shape {
	switch {
	case s == nil:
		return nil
	case s.kind == record:
		if f, ok := s.field(key); ok {
			return f.shape.plain()
		}
	case s.kind == table:
		return s.elem.plain()
	}
	return nil
}

// item is the shape of the items of a list.
func (s *shape) item() *shape {
	if s == nil || s.kind != list {
		return nil
	}
	return s.elem.plain()
}

// plain passes over pointers, and gives a type that reads itself the shape of
// its structured form.
func (s *shape) plain() *shape {
	for s.kind == pointer {
		s = s.elem
	}
	if s.kind == custom {
		f, ok := reflect.New(s.typ).Interface().(Former)
		if !ok {
			return nil
		}
		form, err := shapeOf(reflect.TypeOf(f.Form()))
		if err != nil {
			return nil
		}
		return form
	}
	return s
}
