// This file holds Quantity, a number that a scenario fixes or lets vary, and
// the drawing of its value.

package yamlread

import (
	"fmt"

	"gopkg.in/yaml.v3"

	"rouleau/sim/guarded"
)

// Spread tells how the value of a Quantity is found.
type Spread int

const (
	Fixed   Spread = iota // Value
	Uniform               // any number from Min to Max
	Normal                // normal with Mean and SD, cut off at Min and Max
	Choice                // one of Choices, each as likely
)

// Quantity is a number, or a distribution from which each run draws its own:
//
//	20
//	{uniform: [15, 25]}
//	{normal: {mean: 20, sd: 4, min: 10, max: 30}}
//	{choice: [15, 20, 30]}
type Quantity struct {
	Spread   Spread
	Value    float64
	Mean, SD float64
	Min, Max float64 // of Uniform and Normal
	Choices  []float64
}

const quantityForm = "a number or a spread {uniform: [a, b]}, {normal: {mean, sd, min, max}} or {choice: [a, b, c]}"

// spreadForm is the mapping that stands for a distribution.
type spreadForm struct {
	Uniform []float64 `yaml:"uniform" rule:"min=2,max=2"`
	Normal  *struct {
		Mean float64 `yaml:"mean" rule:"required"`
		SD   float64 `yaml:"sd" rule:"required"`
		Min  float64 `yaml:"min" rule:"required"`
		Max  float64 `yaml:"max" rule:"required"`
	} `yaml:"normal"`
	Choice []float64 `yaml:"choice" rule:"min=1,max=100"`
}

// Low and High are the least and the greatest value that Draw can give.
func (q Quantity) Low() float64 { lo, _ := q.reach(); return lo }

// High is the greatest value that Draw can give.
func (q Quantity) High() float64 { _, hi := q.reach(); return hi }

func (q Quantity) reach() (lo, hi float64) {
	switch q.Spread {
	case Uniform, Normal:
		return q.Min, q.Max
	case Choice:
		lo, hi = q.Choices[0], q.Choices[0]
		for _, c := range q.Choices {
			lo, hi = min(lo, c), max(hi, c)
		}
		return lo, hi
	}
	return q.Value, q.Value
}

// redraws bounds the search for a normal value between Min and Max.
const redraws = 64

// Draw gives one value. u gives numbers from 0 up to, not including, 1; how
// often it is called depends on the spread (not at all for a fixed number), so
// callers give each quantity a stream of its own if one must not shift another.
func (q Quantity) Draw(u func() float64) float64 {
	switch q.Spread {
	case Uniform:
		return min(q.Min+float64(u()*(q.Max-q.Min)), q.Max)
	case Choice:
		i := int(u() * float64(len(q.Choices)))
		return q.Choices[min(i, len(q.Choices)-1)]
	case Normal:
		return q.drawNormal(u)
	}
	return q.Value
}

// drawNormal draws anew while the value lies outside Min and Max or the pair
// of draws makes no normal numbers; after the last try it takes the nearer bound.
func (q Quantity) drawNormal(u func() float64) float64 {
	x := q.Mean
	for range redraws {
		u1, u2 := u(), u()
		z, _, ok := guarded.NormalPair(bits(u1), bits(u2))
		if !ok {
			continue
		}
		x = q.Mean + float64(q.SD*z)
		if x >= q.Min && x <= q.Max {
			return x
		}
	}
	return min(max(x, q.Min), q.Max)
}

// bits undoes guarded.Uniform: the top 53 bits of the draw come back exactly.
func bits(u float64) uint64 { return uint64(u*(1<<53)) << 11 }

// Describe says what a file must hold for a Quantity.
func (Quantity) Describe() string { return quantityForm }

// Form is the mapping that stands for a distribution.
func (Quantity) Form() any { return spreadForm{} }

// CheckRule wants min and max to be numbers.
func (Quantity) CheckRule(rule Rule) error {
	_, _, err := rule.Bounds()
	return err
}

// UnmarshalAt reads a number or a distribution whose every value keeps to the
// rule's min and max.
func (q *Quantity) UnmarshalAt(node *yaml.Node, r *Reader) {
	wanted := r.Wanted(*q)
	if node.Kind != yaml.MappingNode {
		if x, ok := r.Number(node, wanted); ok {
			*q = Quantity{Value: x}
		}
		return
	}
	var form spreadForm
	if !r.Decode(node, &form) {
		return
	}
	if len(node.Content) != 2 {
		r.Fault(node, fmt.Sprintf("a spread has one key, not %d", len(node.Content)/2), "one of uniform, normal, choice")
		return
	}
	switch {
	case form.Uniform != nil:
		q.readUniform(form, r, wanted)
	case form.Choice != nil:
		q.readChoice(form, r, wanted)
	case form.Normal != nil:
		q.readNormal(form, r, wanted)
	} // else its one key was refused, and that is reported already
}

func (q *Quantity) readUniform(form spreadForm, r *Reader, wanted string) {
	a, b := form.Uniform[0], form.Uniform[1]
	ok := within(r, ".uniform[0]", a, wanted)
	ok = within(r, ".uniform[1]", b, wanted) && ok
	if !(a < b) {
		r.FaultAt(".uniform[1]", "the second number is not above the first", "uniform: [least, greatest], or a plain number")
		return
	}
	if ok {
		*q = Quantity{Spread: Uniform, Min: a, Max: b}
	}
}

func (q *Quantity) readChoice(form spreadForm, r *Reader, wanted string) {
	ok := true
	for i, c := range form.Choice {
		ok = within(r, fmt.Sprintf(".choice[%d]", i), c, wanted) && ok
	}
	if ok {
		*q = Quantity{Spread: Choice, Choices: form.Choice}
	}
}

func (q *Quantity) readNormal(form spreadForm, r *Reader, wanted string) {
	n := form.Normal
	ok := within(r, ".normal.min", n.Min, wanted)
	ok = within(r, ".normal.max", n.Max, wanted) && ok
	if !(n.SD > 0) {
		r.FaultAt(".normal.sd", "the standard deviation is not above 0", "a number above 0, or a plain number instead of the spread")
		ok = false
	}
	if !(n.Min < n.Max) {
		r.FaultAt(".normal.max", "max is not above min", "a number above min")
		return
	}
	if n.Mean < n.Min || n.Mean > n.Max {
		r.FaultAt(".normal.mean", "the mean lies outside min and max", "a number between min and max")
		return
	}
	if ok {
		*q = Quantity{Spread: Normal, Mean: n.Mean, SD: n.SD, Min: n.Min, Max: n.Max}
	}
}

// within reports a value of a distribution that the rule does not allow.
func within(r *Reader, below string, x float64, wanted string) bool {
	lo, hi, _ := r.rule.Bounds()
	if x >= lo && x <= hi {
		return true
	}
	r.FaultAt(below, fmt.Sprintf("%g is too %s", x, tooWhat(x < lo)), wanted)
	return false
}
