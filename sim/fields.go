package sim

import (
	"encoding/binary"
	"hash/fnv"
	"math"
	"reflect"
	"strconv"
)

// The state as a list of named numbers: for its hash, and to say in which quantity two runs part.

// Fields calls visit for every number of the state with its name and its bits, in a fixed order.
func (s *State) Fields(visit func(name string, bits uint64)) {
	walk(reflect.ValueOf(s).Elem(), "", visit)
}

// Hash is the FNV-1a hash of every number of the state.
func (s *State) Hash() uint64 {
	h := fnv.New64a()
	var b [8]byte
	hashWalk(reflect.ValueOf(s).Elem(), func(bits uint64) {
		binary.LittleEndian.PutUint64(b[:], bits)
		h.Write(b[:])
	})
	return h.Sum64()
}

// bitsOf gives the bits of a plain number.
func bitsOf(v reflect.Value) (uint64, bool) {
	switch v.Kind() {
	case reflect.Float64:
		return math.Float64bits(v.Float()), true
	case reflect.Bool:
		if v.Bool() {
			return 1, true
		}
		return 0, true
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		return uint64(v.Int()), true
	case reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		return v.Uint(), true
	}
	return 0, false
}

func walk(v reflect.Value, name string, visit func(string, uint64)) {
	if bits, ok := bitsOf(v); ok {
		visit(name, bits)
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			f := v.Type().Field(i)
			child := name
			if !f.Anonymous {
				child = join(name, f.Name)
			}
			walk(v.Field(i), child, visit)
		}
	case reflect.Array:
		for i := range v.Len() {
			walk(v.Index(i), name+"["+strconv.Itoa(i)+"]", visit)
		}
	default:
		panic("sim: the state must be made of plain values only, " + name + " is a " + v.Kind().String())
	}
}

func hashWalk(v reflect.Value, visit func(uint64)) {
	if bits, ok := bitsOf(v); ok {
		visit(bits)
		return
	}
	if v.Kind() == reflect.Struct {
		for i := range v.NumField() {
			hashWalk(v.Field(i), visit)
		}
		return
	}
	for i := range v.Len() {
		hashWalk(v.Index(i), visit)
	}
}

func join(a, b string) string {
	if a == "" {
		return b
	}
	return a + "." + b
}
