// This file holds Reader, what a type that reads its own node works with, and
// the words for what was found and what was wanted.

package yamlread

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"github.com/agnivade/levenshtein"
	"gopkg.in/yaml.v3"
)

// Reader stands at one value of the file: it knows its path and its rule, and
// takes faults.
type Reader struct {
	doc  *Doc
	path string
	rule Rule
}

// Path is the path of the value, such as phases[2].bleeding_ml_min.
func (r *Reader) Path() string { return r.path }

// Rule is what the tag of the field demands.
func (r *Reader) Rule() Rule { return r.rule }

// Wanted says what is expected here, the bounds of the rule included.
func (r *Reader) Wanted(d Describer) string {
	if bounds := r.rule.Range(); bounds != "" {
		return d.Describe() + ", " + bounds
	}
	return d.Describe()
}

// Fault reports a fault at a node. Expected may be empty.
func (r *Reader) Fault(node *yaml.Node, message, expected string) {
	r.FaultNear(node, message, expected, "")
}

// FaultNear is Fault with the word that was probably meant.
func (r *Reader) FaultNear(node *yaml.Node, message, expected, nearest string) {
	r.doc.add(Fault{Place: placeOf(node), Path: r.path, Message: message, Expected: expected, Nearest: nearest})
}

// FaultAt reports a fault at a path below this value, such as .uniform[0].
func (r *Reader) FaultAt(below, message, expected string) {
	path := r.path + below
	if r.path == "" {
		path = strings.TrimPrefix(path, ".")
	}
	r.doc.Fault(path, message, expected)
}

// Scalar gives the text of a plain or quoted value. For a list or a mapping it
// reports that wanted was expected, and answers false.
func (r *Reader) Scalar(node *yaml.Node, wanted string) (string, bool) {
	if node.Kind != yaml.ScalarNode {
		r.Fault(node, "this is "+found(node), wanted)
		return "", false
	}
	return node.Value, true
}

// Number gives a finite number within the rule's min and max; wanted describes
// the value for messages.
func (r *Reader) Number(node *yaml.Node, wanted string) (float64, bool) {
	x, ok := r.finite(node, wanted)
	if !ok {
		return 0, false
	}
	lo, hi, _ := r.rule.Bounds()
	if x < lo || x > hi {
		r.FaultNear(node, clip(node.Value)+" is too "+tooWhat(x < lo), wanted, r.otherUnit(x, lo, hi))
		return 0, false
	}
	return x, true
}

// Decode reads a node into the value that into points to, as if it stood at
// this path itself: the way to let a type have a second, structured form. It
// answers false after a fault.
func (r *Reader) Decode(node *yaml.Node, into any) bool {
	target := reflect.ValueOf(into).Elem()
	s, err := shapeOf(target.Type())
	if err != nil {
		r.Fault(node, "a fault of this program, not of the file: "+err.Error(), "")
		return false
	}
	before := len(r.doc.faults)
	inner := *r
	inner.rule = Rule{}
	inner.fill(node, s, target)
	return len(r.doc.faults) == before && !r.doc.full()
}

// below is a reader for a part of this value.
func (r *Reader) below(path string, rule Rule) *Reader {
	return &Reader{doc: r.doc, path: path, rule: rule}
}

// found says what a node is, for "this is …".
func found(node *yaml.Node) string {
	switch {
	case node.Kind == yaml.SequenceNode:
		return "a list"
	case node.Kind == yaml.MappingNode:
		return "a mapping"
	case node.Kind != yaml.ScalarNode:
		return "an alias"
	case quoted(node):
		return "the text " + shown(node.Value)
	case node.Tag == "!!null":
		return "nothing"
	}
	return shown(node.Value)
}

// quoted tells that the author marked a value as text.
func quoted(node *yaml.Node) bool {
	return node.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle|yaml.LiteralStyle|yaml.FoldedStyle) != 0
}

// wants says what a shape with a rule expects.
func (s *shape) wants(rule Rule) string {
	what, bounds := "", rule.Range()
	switch s.kind {
	case pointer:
		return s.elem.wants(rule)
	case custom:
		what = "a value"
		if d, ok := reflect.New(s.typ).Interface().(Describer); ok {
			what = d.Describe()
		}
	case text:
		what = "text"
		if bounds = between(rule.Min, rule.Max); bounds != "" {
			return "text of " + bounds + " " + plural("character", bounds)
		}
	case whole:
		what = "a whole number"
	case real:
		what = "a number"
	case truth:
		what = "true or false"
	case record:
		what = "a mapping of keys to values"
	case list, table:
		what = "a list"
		if s.kind == table {
			what = "a mapping of names to values"
		}
		if bounds = between(rule.Min, rule.Max); bounds != "" {
			what += " of " + bounds
		}
		each := s.elem.wants(rule.Each())
		if s.elem.kind == record {
			each = "a mapping"
		}
		return what + ", each " + each
	}
	if len(rule.OneOf) > 0 {
		return oneOf(rule.OneOf)
	}
	if bounds == "" {
		return what
	}
	return what + ", " + bounds
}

// MostListed is how many words a message lists: all situations, and all habits of an operator, which stand nowhere else at hand.
const MostListed = 50

// oneOf lists words for "expected", not more than can be taken in.
func oneOf(words []string) string {
	if len(words) == 1 {
		return words[0]
	}
	if len(words) > MostListed {
		const begun = 20
		return fmt.Sprintf("one of %s and %d more", strings.Join(words[:begun], ", "), len(words)-begun)
	}
	return "one of " + strings.Join(words, ", ")
}

// OneOf lists words for "expected" beside the word that was found. Of a long list only the nearest are given where the word
// that was meant is known, since then nobody reads the rest.
func OneOf(words []string, found, nearest string) string {
	const few, close = 12, 4
	if nearest == "" || len(words) <= few {
		return oneOf(words)
	}
	near := slices.Clone(words)
	far := make(map[string]int, len(words))
	for _, w := range words {
		far[w] = levenshtein.ComputeDistance(clip(found), w)
	}
	far[nearest] = -1
	slices.SortStableFunc(near, func(a, b string) int { return far[a] - far[b] })
	return "one of " + strings.Join(near[:close], ", ") + " and others"
}

// plural gives the form of a word that goes with a number at the end of a text.
func plural(word, count string) string {
	if count == "1" || strings.HasSuffix(count, " 1") {
		return word
	}
	return word + "s"
}

func tooWhat(small bool) string {
	if small {
		return "small"
	}
	return "large"
}
