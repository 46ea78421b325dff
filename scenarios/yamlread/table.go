// This file reads mappings with free names: into Map, whose entries are sorted,
// or into a Go map.

package yamlread

import (
	"maps"
	"reflect"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// Map is a mapping with free keys, sorted by key: deterministic code can range
// over it, which it must not do over a Go map.
type Map[T any] []Entry[T]

// Entry is one key of a Map and its value.
type Entry[T any] struct {
	Key   string
	Value T
}

// Get gives the value of a key.
func (m Map[T]) Get(key string) (T, bool) {
	i, ok := slices.BinarySearchFunc(m, key, func(e Entry[T], key string) int { return strings.Compare(e.Key, key) })
	if !ok {
		var none T
		return none, false
	}
	return m[i].Value, true
}

// isTable tells a Map from other slices, whatever its T.
func (Map[T]) isTable() {}

var tableType = reflect.TypeFor[interface{ isTable() }]()

func (r *Reader) table(node *yaml.Node, s *shape, v reflect.Value) {
	if node.Kind != yaml.MappingNode {
		r.Fault(node, "this is "+found(node), s.wants(r.rule))
		return
	}
	r.count(node, len(node.Content)/2, s)
	given := map[string]reflect.Value{}
	for i := 0; i+1 < len(node.Content) && !r.doc.full(); i += 2 {
		key, value := node.Content[i], node.Content[i+1]
		if key.Kind != yaml.ScalarNode || isMerge(key) || refused(key) || given[key.Value].IsValid() {
			continue
		}
		if !snakeKey.MatchString(key.Value) {
			near := snake(key.Value)
			if !snakeKey.MatchString(near) {
				near = ""
			}
			r.FaultNear(key, "key "+shown(key.Value)+" is not a plain name", "lower-case words joined by _", near)
			continue
		}
		inner := r.below(joinKey(r.path, key.Value), r.rule.Each())
		inner.doc.spots[inner.path] = spot{placeOf(key), placeOf(value)}
		item := reflect.New(s.elem.typ).Elem()
		inner.value(value, s.elem, item)
		given[key.Value] = item
	}
	store(s, v, given)
}

// store puts the entries into the Go map, or sorted into the Map.
func store(s *shape, v reflect.Value, given map[string]reflect.Value) {
	keys := slices.Sorted(maps.Keys(given))
	if s.typ.Kind() == reflect.Map {
		v.Set(reflect.MakeMapWithSize(s.typ, len(keys)))
		for _, key := range keys {
			v.SetMapIndex(reflect.ValueOf(key).Convert(s.typ.Key()), given[key])
		}
		return
	}
	entries := reflect.MakeSlice(s.typ, len(keys), len(keys))
	for i, key := range keys {
		entries.Index(i).Field(0).SetString(key)
		entries.Index(i).Field(1).Set(given[key])
	}
	v.Set(entries)
}
