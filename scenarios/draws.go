// This file tells what differs from seed to seed, for those who write cases: every quantity with a spread, and what some seeds
// make of it.

package scenarios

import (
	"reflect"
	"strconv"
	"strings"

	"rouleau/scenarios/yamlread"
)

// Varied is a quantity that a seed draws.
type Varied struct {
	Path        string // of the key, such as phases[2].bleeding_ml_min
	Doc         string // what the key means
	Unit        string
	Spread      yamlread.Quantity
	Least, Most float64 // that the seeds drew
}

// Varies gives every quantity with a spread, in the order of the format, and what the seeds draw for it.
func (s *Scenario) Varies(seeds []uint64) []Varied {
	all := s.quantities()
	// The draws come in an order of their own. A case in which each quantity is fixed at its number says which is which.
	var numbered File
	yamlread.Read(s.Name, s.Source, &numbered)
	next := 0.0
	eachQuantity(reflect.ValueOf(&numbered).Elem(), "", tags{}, func(_ *Varied, q *yamlread.Quantity) {
		*q = yamlread.Quantity{Value: next}
		next++
	})
	var order []int
	d := &drawing{note: func(_ yamlread.Quantity, number float64) { order = append(order, int(number)) }}
	(&Scenario{File: numbered}).draw(d, 0, false)
	for i, seed := range seeds {
		at := 0
		d := &drawing{note: func(_ yamlread.Quantity, value float64) {
			v := &all[order[at]]
			at++
			if i == 0 {
				v.Least, v.Most = value, value
			}
			v.Least, v.Most = min(v.Least, value), max(v.Most, value)
		}}
		s.draw(d, seed, false)
	}
	var spread []Varied
	for _, v := range all {
		if v.Spread.Spread != yamlread.Fixed {
			spread = append(spread, v)
		}
	}
	return spread
}

// quantities are all quantities of a scenario, fixed ones too.
func (s *Scenario) quantities() (all []Varied) {
	eachQuantity(reflect.ValueOf(&s.File).Elem(), "", tags{}, func(v *Varied, q *yamlread.Quantity) {
		v.Spread = *q
		all = append(all, *v)
	})
	return all
}

// tags are what the field says in which a quantity stands.
type tags struct{ doc, unit string }

var quantityType = reflect.TypeFor[yamlread.Quantity]()

// eachQuantity visits every quantity below a value, in the order of the fields.
func eachQuantity(v reflect.Value, path string, t tags, visit func(*Varied, *yamlread.Quantity)) {
	switch {
	case v.Type() == quantityType:
		visit(&Varied{Path: path, Doc: t.doc, Unit: t.unit}, v.Addr().Interface().(*yamlread.Quantity))
	case v.Kind() == reflect.Pointer && !v.IsNil():
		eachQuantity(v.Elem(), path, t, visit)
	case v.Kind() == reflect.Slice:
		for i := range v.Len() {
			e := v.Index(i)
			if key := keyOf(e); key != "" { // an entry of a table
				eachQuantity(e.FieldByName("Value"), path+"."+key, t, visit)
				continue
			}
			eachQuantity(e, path+"["+strconv.Itoa(i)+"]", t, visit)
		}
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			f := v.Type().Field(i)
			key := f.Tag.Get("yaml")
			if key == "" {
				continue
			}
			if path != "" {
				key = path + "." + key
			}
			eachQuantity(v.Field(i), key, tags{f.Tag.Get("doc"), unitOf(f.Tag.Get("rule"))}, visit)
		}
	}
}

// keyOf is the key of an entry of a table, nothing for other values.
func keyOf(v reflect.Value) string {
	if v.Kind() != reflect.Struct || v.NumField() != 2 || v.Type().Field(0).Name != "Key" {
		return ""
	}
	return v.Field(0).String()
}

// unitOf is the unit that a rule names.
func unitOf(rule string) string {
	for word := range strings.SplitSeq(rule, ",") {
		if unit, ok := strings.CutPrefix(word, "unit="); ok {
			return unit
		}
	}
	return ""
}
