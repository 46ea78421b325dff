// Identity of widgets: an explicit hash of words and numbers, so that a widget
// keeps its focus and state from frame to frame whatever stands around it.

package ui

// ID names one widget. The zero ID names nothing.
type ID uint64

const (
	fnvOffset = 14695981039346656037
	fnvPrime  = 1099511628211
)

// Name makes an ID from a string.
func Name(s string) ID { return ID(fnvOffset).With(s) }

// With makes the ID of a child named s.
func (id ID) With(s string) ID {
	h := uint64(id)
	for i := 0; i < len(s); i++ {
		h = (h ^ uint64(s[i])) * fnvPrime
	}
	// One more step keeps With("ab") and With("a").With("b") apart.
	return ID((h ^ 0xff) * fnvPrime)
}

// At makes the ID of child number n.
func (id ID) At(n int) ID {
	h := uint64(id)
	v := uint64(n)
	for range 8 {
		h = (h ^ (v & 0xff)) * fnvPrime
		v >>= 8
	}
	return ID((h ^ 0xfe) * fnvPrime)
}
