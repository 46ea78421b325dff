// This file holds Rule, what a struct tag demands of a value, and the one place
// where such tags are parsed.

package yamlread

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// Rule is the parsed form of a tag such as
//
//	rule:"required,min=0,max=300,unit=mL/min"
//
// Words are parted by commas: required, min=, max=, each_min=, each_max=,
// oneof=a|b|c, unit=, and default= which must come last because it runs to the
// end of the tag. For a text min and max bound the number of characters, for a
// list or a map the number of entries (each_min and each_max then bound every
// entry), for numbers the value, for other types whatever they say. oneof and
// unit reach through a list or a map to its entries.
type Rule struct {
	Required         bool
	Min, Max         string // as written, empty where there is no bound
	EachMin, EachMax string
	OneOf            []string
	Unit             string
	Default          string // the text of a YAML value; empty where there is none
}

// parseRule reads the text of a rule tag.
func parseRule(tag string) (Rule, error) {
	var rule Rule
	rest, default_, found := strings.Cut(tag, "default=")
	if found {
		if default_ == "" {
			return rule, fmt.Errorf("rule %q has an empty default", tag)
		}
		rule.Default = default_
		rest = strings.TrimSuffix(rest, ",")
	}
	if rest == "" {
		return rule, nil
	}
	for word := range strings.SplitSeq(rest, ",") {
		name, value, hasValue := strings.Cut(word, "=")
		if hasValue == (name == "required") || hasValue && value == "" {
			return rule, fmt.Errorf("rule %q: %q is not understood", tag, word)
		}
		switch name {
		case "required":
			rule.Required = true
		case "min":
			rule.Min = value
		case "max":
			rule.Max = value
		case "each_min":
			rule.EachMin = value
		case "each_max":
			rule.EachMax = value
		case "unit":
			rule.Unit = value
		case "oneof":
			rule.OneOf = strings.Split(value, "|")
		default:
			return rule, fmt.Errorf("rule %q: %q is not understood", tag, word)
		}
	}
	if rule.Required && rule.Default != "" {
		return rule, fmt.Errorf("rule %q: what is required has no default", tag)
	}
	return rule, nil
}

// Each is the rule for the entries of a list or a map that has this rule.
func (r Rule) Each() Rule {
	return Rule{Min: r.EachMin, Max: r.EachMax, OneOf: r.OneOf, Unit: r.Unit}
}

// Bounds gives min and max as numbers, infinite where there is no bound.
func (r Rule) Bounds() (lo, hi float64, err error) {
	lo, hi = math.Inf(-1), math.Inf(1)
	if r.Min != "" {
		if lo, err = strconv.ParseFloat(r.Min, 64); err != nil {
			return lo, hi, fmt.Errorf("min=%s is not a number", r.Min)
		}
	}
	if r.Max != "" {
		if hi, err = strconv.ParseFloat(r.Max, 64); err != nil {
			return lo, hi, fmt.Errorf("max=%s is not a number", r.Max)
		}
	}
	if lo > hi {
		return lo, hi, fmt.Errorf("min=%s is above max=%s", r.Min, r.Max)
	}
	return lo, hi, nil
}

// Range says the bounds in words: "0 to 300 mL/min", "at least 1", or nothing.
func (r Rule) Range() string {
	text := between(r.Min, r.Max)
	if text != "" && r.Unit != "" {
		text += " " + r.Unit
	}
	return text
}

// between says two bounds in words, either of which may be missing.
func between(lo, hi string) string {
	switch {
	case lo == "" && hi == "":
		return ""
	case hi == "":
		return "at least " + lo
	case lo == "":
		return "at most " + hi
	case lo == hi:
		return "exactly " + lo
	}
	return lo + " to " + hi
}

// allows tells whether a word is among those of oneof, if there are any.
func (r Rule) allows(word string) bool {
	return len(r.OneOf) == 0 || slices.Contains(r.OneOf, word)
}
