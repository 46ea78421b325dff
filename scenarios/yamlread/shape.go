// This file turns Go types into shapes: what the reader must find in the file
// for each type. A type that cannot be read is refused here, with the reason.

package yamlread

import (
	"fmt"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"gopkg.in/yaml.v3"
)

// Unmarshaler is a type that reads its own node (a clock time, a distribution).
// It reports what it does not like through the Reader.
type Unmarshaler interface {
	UnmarshalAt(node *yaml.Node, r *Reader)
}

// Describer says in a few words what a type expects, for messages and for the
// reference page: "a date, yyyy-mm-dd".
type Describer interface {
	Describe() string
}

// RuleChecker lets a type refuse a rule that makes no sense for it.
type RuleChecker interface {
	CheckRule(rule Rule) error
}

type kind int

const (
	text    kind = iota
	whole        // int and its kin
	real         // float64, float32
	truth        // bool
	list         // slice
	table        // map[string]T or Map[T]
	record       // struct
	pointer      // optional value
	custom       // Unmarshaler
)

// shape is what one Go type wants of a node.
type shape struct {
	kind   kind
	typ    reflect.Type
	elem   *shape  // of list, table, pointer
	fields []field // of record
}

// field is one key of a record.
type field struct {
	key     string
	index   []int
	shape   *shape
	rule    Rule
	doc     string
	example string
}

// types remembers shapes while one is built, which also lets a type contain
// itself. Rules are checked once all shapes they need are complete.
type types struct {
	known     map[reflect.Type]*shape
	unchecked []*shape
}

// sound are the shapes of types without fault, by type: checking the tags of
// the scenario format takes longer than reading a scenario.
var sound sync.Map

// shapeOf gives the shape of a type, or what is wrong with the type or a tag.
func shapeOf(t reflect.Type) (*shape, error) {
	if s, ok := sound.Load(t); ok {
		return s.(*shape), nil
	}
	ts := types{known: map[reflect.Type]*shape{}}
	s, err := ts.complete(t)
	if err == nil {
		sound.Store(t, s)
	}
	return s, err
}

var (
	unmarshalerType = reflect.TypeFor[Unmarshaler]()
	snakeKey        = regexp.MustCompile(`^[a-z][a-z0-9]*(_[a-z0-9]+)*$`)
)

// complete builds the shape of a type and checks all tags in it.
func (ts *types) complete(t reflect.Type) (*shape, error) {
	s, err := ts.build(t)
	for err == nil && len(ts.unchecked) > 0 {
		next := ts.unchecked[0]
		ts.unchecked = ts.unchecked[1:]
		for _, f := range next.fields {
			if err = checkField(f); err != nil {
				err = fmt.Errorf("%s, key %s: %w", next.typ, f.key, err)
				break
			}
		}
	}
	return s, err
}

func (ts *types) build(t reflect.Type) (*shape, error) {
	if s, ok := ts.known[t]; ok {
		return s, nil
	}
	s := &shape{typ: t}
	ts.known[t] = s
	var elem reflect.Type
	switch k := t.Kind(); {
	case k == reflect.Pointer:
		s.kind, elem = pointer, t.Elem()
	case reflect.PointerTo(t).Implements(unmarshalerType):
		s.kind = custom
	case t.Implements(tableType):
		s.kind, elem = table, t.Elem().Field(1).Type
	case k == reflect.Map && t.Key().Kind() == reflect.String:
		s.kind, elem = table, t.Elem()
	case k == reflect.Slice:
		s.kind, elem = list, t.Elem()
	case k == reflect.String:
		s.kind = text
	case k >= reflect.Int && k <= reflect.Uint64:
		s.kind = whole
	case k == reflect.Float32 || k == reflect.Float64:
		s.kind = real
	case k == reflect.Bool:
		s.kind = truth
	case k == reflect.Struct:
		s.kind = record
		ts.unchecked = append(ts.unchecked, s)
		return s, ts.addFields(s, t, nil)
	default:
		return nil, fmt.Errorf("type %s cannot be read from a file", t)
	}
	if elem != nil {
		var err error
		if s.elem, err = ts.build(elem); err != nil {
			return nil, err
		}
	}
	return s, nil
}

// addFields adds the fields of a struct, those of an inline struct as if they
// were its own.
func (ts *types) addFields(s *shape, t reflect.Type, at []int) error {
	for i := range t.NumField() {
		sf := t.Field(i)
		key, options, _ := strings.Cut(sf.Tag.Get("yaml"), ",")
		index := append(slices.Clone(at), i)
		switch {
		case key == "-" || !sf.IsExported() && sf.Tag == "":
			continue
		case options == "inline" && sf.Type.Kind() == reflect.Struct && (sf.IsExported() || sf.Anonymous):
			if err := ts.addFields(s, sf.Type, index); err != nil {
				return err
			}
			continue
		case !sf.IsExported():
			return fmt.Errorf("%s.%s has tags but cannot be set", t, sf.Name)
		}
		f, err := ts.newField(sf, key, index)
		if err != nil {
			return fmt.Errorf("%s.%s: %w", t, sf.Name, err)
		}
		if _, taken := s.field(key); taken {
			return fmt.Errorf("%s.%s: key %s is taken by another field", t, sf.Name, key)
		}
		s.fields = append(s.fields, f)
	}
	return nil
}

func (ts *types) newField(sf reflect.StructField, key string, index []int) (field, error) {
	f := field{key: key, index: index, doc: sf.Tag.Get("doc"), example: sf.Tag.Get("example")}
	if !snakeKey.MatchString(key) {
		return f, fmt.Errorf("the tag yaml:%q is not a lower-case key with words joined by _", key)
	}
	var err error
	if f.rule, err = parseRule(sf.Tag.Get("rule")); err != nil {
		return f, err
	}
	f.shape, err = ts.build(sf.Type)
	return f, err
}

// checkField refuses tags that contradict the type or each other.
func checkField(f field) error {
	if err := f.shape.checkRule(f.rule); err != nil {
		return err
	}
	if u := f.rule.Unit; u != "" && !endsInUnit(f.key, u) {
		return fmt.Errorf("unit %s: the key %s must end in _%s", u, f.key, unitWord(u))
	}
	for _, sample := range []string{f.rule.Default, f.example} {
		if faults := try(f, sample); len(faults) > 0 {
			return fmt.Errorf("the default or example %s breaks the rule: %s", sample, faults[0].Message)
		}
	}
	return nil
}

// field finds a field by its key.
func (s *shape) field(key string) (field, bool) {
	i := slices.IndexFunc(s.fields, func(f field) bool { return f.key == key })
	if i < 0 {
		return field{}, false
	}
	return s.fields[i], true
}

// checkRule refuses bounds that the kind cannot have.
func (s *shape) checkRule(rule Rule) error {
	bounded := rule.Min != "" || rule.Max != ""
	switch s.kind {
	case pointer:
		return s.elem.checkRule(rule)
	case list, table:
		if err := countBounds(rule); err != nil {
			return err
		}
		return s.elem.checkRule(rule.Each())
	}
	if rule.EachMin != "" || rule.EachMax != "" {
		return fmt.Errorf("each_min and each_max need a list or a map")
	}
	if len(rule.OneOf) > 0 && s.kind != text && s.kind != whole {
		return fmt.Errorf("oneof needs texts or whole numbers")
	}
	switch s.kind {
	case custom:
		if c, ok := reflect.New(s.typ).Interface().(RuleChecker); ok {
			return c.CheckRule(rule)
		}
	case text:
		return countBounds(rule)
	case whole, real:
		_, _, err := rule.Bounds()
		return err
	case truth, record:
		if bounded {
			return fmt.Errorf("min and max mean nothing for %s", s.typ)
		}
	}
	return nil
}

// countBounds refuses bounds of a length that are no whole numbers.
func countBounds(rule Rule) error {
	for _, bound := range []string{rule.Min, rule.Max} {
		if _, err := strconv.ParseUint(bound, 10, 31); bound != "" && err != nil {
			return fmt.Errorf("%s is not a number of characters or entries", bound)
		}
	}
	_, _, err := rule.Bounds()
	return err
}
