// Another language: a catalogue of its own in the place of the English one.

package words

import (
	"errors"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"sync/atomic"
)

// inUse is the catalogue that Say reads; English where it is nil.
var inUse atomic.Pointer[map[string]string]

// Texts is a copy of the English catalogue by key: what a translation starts from.
func Texts() map[string]string { return maps.Clone(texts) }

// places are the places of a text where values are put in.
var places = regexp.MustCompile(`%[0-9.]*[a-zA-Z%]`)

// Use has Say speak from another catalogue; nil brings English back. A key it leaves out stays English. A text whose values
// are not those of the English one, in their order, or whose key nobody says, is a fault: then all faults are told and
// nothing changes.
func Use(other map[string]string) error {
	if other == nil {
		inUse.Store(nil)
		return nil
	}
	whole := Texts()
	var faults []error
	for _, key := range slices.Sorted(maps.Keys(other)) {
		english, ok := texts[key]
		switch want, got := places.FindAllString(english, -1), places.FindAllString(other[key], -1); {
		case !ok:
			faults = append(faults, fmt.Errorf("%s: there is no such key; take the keys of the English catalogue", key))
		case !slices.Equal(want, got):
			faults = append(faults, fmt.Errorf("%s: the values are %q, they must be %q in this order", key, strings.Join(got, " "), strings.Join(want, " ")))
		default:
			whole[key] = other[key]
		}
	}
	if len(faults) > 0 {
		return errors.Join(faults...)
	}
	inUse.Store(&whole)
	return nil
}

// find gives the text of a key in the catalogue in use.
func find(key string) (text string, ok bool) {
	if all := inUse.Load(); all != nil {
		text, ok = (*all)[key]
		return text, ok
	}
	text, ok = texts[key]
	return text, ok
}
