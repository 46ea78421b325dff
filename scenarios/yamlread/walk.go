// This file lists the fields of a type with everything their tags say, for the
// reference page and the schema that are generated from the same types.

package yamlread

import (
	"reflect"
	"slices"
)

// Field describes one key that a file may hold.
type Field struct {
	Path    string       // such as phases[].bleeding_ml_min or stocks.*.volume_ml
	Key     string       // the last word of the path
	Type    reflect.Type // Go type, a pointer where the tag's type is one
	Rule    Rule
	Doc     string // what the key means
	Example string // the text of a YAML value; empty where there is none
	Wants   string // what is expected in words: "a number, 0 to 300 mL/min"
	Depth   int    // 1 for the keys of the file itself
}

// Walk calls visit for every key below a struct type, parents before children,
// in the order of the Go fields. A type within itself is entered only once.
// The error tells what is wrong with the type or its tags.
func Walk(t reflect.Type, visit func(Field)) error {
	s, err := shapeOf(t)
	if err != nil {
		return err
	}
	walk(s, "", nil, visit)
	return nil
}

func walk(s *shape, path string, inside []*shape, visit func(Field)) {
	switch s.kind {
	case pointer:
		walk(s.elem, path, inside, visit)
	case list:
		walk(s.elem, path+"[]", inside, visit)
	case table:
		walk(s.elem, joinKey(path, "*"), inside, visit)
	case record:
		if slices.Contains(inside, s) {
			return
		}
		inside = append(inside, s)
		for _, f := range s.fields {
			at := joinKey(path, f.key)
			visit(Field{
				Path: at, Key: f.key, Type: f.shape.typ, Rule: f.rule,
				Doc: f.doc, Example: f.example, Wants: f.shape.wants(f.rule), Depth: len(inside),
			})
			walk(f.shape, at, inside, visit)
		}
	}
}
