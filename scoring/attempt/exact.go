package attempt

import (
	"bytes"
	"fmt"
	"math"
	"strconv"
)

// Numbers that survive a file to the last bit.

// Exact is a number that is the same to the last bit after it has been written and read: the shortest decimals that stand for
// it alone, and a word where JSON has no number.
type Exact float64

// MarshalJSON writes the number.
func (x Exact) MarshalJSON() ([]byte, error) {
	if f := float64(x); math.IsNaN(f) || math.IsInf(f, 0) {
		return []byte(strconv.Quote(strconv.FormatFloat(f, 'g', -1, 64))), nil
	}
	return []byte(x.String()), nil
}

// String writes the number without an exponent as long as that is short.
func (x Exact) String() string {
	f := float64(x)
	if a := math.Abs(f); a != 0 && (a < 1e-6 || a >= 1e15) {
		return strconv.FormatFloat(f, 'e', -1, 64)
	}
	return strconv.FormatFloat(f, 'f', -1, 64)
}

// UnmarshalJSON reads what MarshalJSON writes.
func (x *Exact) UnmarshalJSON(data []byte) error {
	switch text := string(bytes.Trim(data, `"`)); {
	case data[0] != '"' && data[0] != '-' && (data[0] < '0' || data[0] > '9'):
		return fmt.Errorf("%s is not a number", clipped(string(data)))
	case data[0] == '"' && text != "NaN" && text != "+Inf" && text != "-Inf":
		return fmt.Errorf("%s is not a number: leave out the quotes", clipped(string(data)))
	default:
		f, err := strconv.ParseFloat(text, 64)
		if err != nil {
			return fmt.Errorf("%s is too large to compute with", clipped(text))
		}
		*x = Exact(f)
		return nil
	}
}

// same compares bits, so that no number is equal to itself only.
func (x Exact) same(y Exact) bool {
	return math.Float64bits(float64(x)) == math.Float64bits(float64(y))
}

// clipped shortens a piece of a file for a message.
func clipped(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		return string(r[:most]) + "…"
	}
	return s
}
