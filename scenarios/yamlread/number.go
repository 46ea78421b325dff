// This file reads numbers strictly: one way to write them, so that no number
// means one thing to the author and another to a program. Each refusal says
// why, and gives the mended number where it can be known.

package yamlread

import (
	"regexp"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"
)

var (
	strictNumber = regexp.MustCompile(`^-?(0|[1-9][0-9]*)(\.[0-9]+)?([eE][+-]?[0-9]+)?$`)
	strictWhole  = regexp.MustCompile(`^-?(0|[1-9][0-9]*)$`)
	notFinite    = regexp.MustCompile(`(?i)^[+-]?\.?(nan|inf|infinity)$`)
	leadingZero  = regexp.MustCompile(`^[+-]?0[0-9]+(\.[0-9]*)?$`)
	otherBase    = regexp.MustCompile(`(?i)^[+-]?0[xob][0-9a-f_]+$`)
	grouped      = regexp.MustCompile(`^[+-]?[0-9]+([_' ][0-9]+)+(\.[0-9]+)?$`)
	thousands    = regexp.MustCompile(`^[+-]?[1-9][0-9]{0,2}(,[0-9]{3})+(\.[0-9]+)?$`)
	comma        = regexp.MustCompile(`^[+-]?[0-9]+,[0-9]+$`)
	bareDot      = regexp.MustCompile(`^([+-]?)([0-9]*)\.([0-9]*)$`)
	plusSign     = regexp.MustCompile(`^\+[0-9]+(\.[0-9]+)?$`)
	withUnit     = regexp.MustCompile(`^([+-]?[0-9]+(?:\.[0-9]+)?) ?([A-Za-z%°µμ][A-Za-z0-9%°µμ/²³ ]*)$`)
)

// hugest leaves room for sums and differences of two numbers to stay finite.
const hugest = 1e300

// readNumber gives the number a text stands for. Otherwise problem says what
// is wrong with it and better how it should be written, if that is plain.
func readNumber(s string) (x float64, problem, better string) {
	if strictNumber.MatchString(s) {
		x, err := strconv.ParseFloat(s, 64)
		if err != nil || x < -hugest || x > hugest {
			return 0, "is too large to compute with", ""
		}
		if x == 0 {
			x = 0 // drops the sign of -0, which would show in hashes
		}
		return x, "", ""
	}
	switch {
	case notFinite.MatchString(s):
		return 0, "is not a finite number", ""
	case leadingZero.MatchString(s):
		return 0, "begins with 0, which some programs take for base eight", ""
	case otherBase.MatchString(s):
		return 0, "is not in base ten", ""
	case grouped.MatchString(s):
		return 0, "has its digits in groups", strings.NewReplacer("_", "", "'", "", " ", "").Replace(s)
	case thousands.MatchString(s):
		return 0, "has a comma", strings.ReplaceAll(s, ",", "")
	case comma.MatchString(s):
		return 0, "has a comma", strings.Replace(s, ",", ".", 1)
	case plusSign.MatchString(s):
		return 0, "has a plus sign", s[1:]
	}
	if m := withUnit.FindStringSubmatch(s); m != nil && len(s) < 40 {
		return 0, "has a unit: the unit stands in the key", m[1]
	}
	if m := bareDot.FindStringSubmatch(s); m != nil && m[2]+m[3] != "" {
		whole, part := m[2], m[3]
		if whole == "" {
			whole = "0"
		}
		if part == "" {
			part = "0"
		}
		return 0, "has no digit on one side of the point", strings.TrimPrefix(m[1], "+") + whole + "." + part
	}
	return 0, "is not a number", ""
}

// finite reads any number that is finite, whatever the rule.
func (r *Reader) finite(node *yaml.Node, wanted string) (float64, bool) {
	s, ok := r.Scalar(node, wanted)
	if !ok {
		return 0, false
	}
	x, problem, better := readNumber(s)
	if problem == "" && quoted(node) {
		problem, better = "is in quotes, which makes it a text", s
	}
	if strings.Count(s, ",") == 1 && thousands.MatchString(s) && !r.holds(better) {
		// Three digits behind a comma are thousands, unless only a fraction can be meant here.
		if fraction := strings.Replace(s, ",", ".", 1); r.holds(fraction) {
			better = fraction
		}
	}
	if m := withUnit.FindStringSubmatch(s); m != nil && better == m[1] {
		better = r.inUnit(m[1], strings.TrimSpace(m[2]))
	}
	if better != "" && !r.holds(better) {
		better = "" // it would be refused as well
	}
	if problem != "" {
		r.FaultNear(node, clip(s)+" "+problem, wanted, better)
		return 0, false
	}
	return x, true
}

// times is how many of the unit of a key one of another unit is, for those that people are likely to write.
var times = map[[2]string]float64{
	{"l", "ml"}: 1000, {"dl", "ml"}: 100, {"cl", "ml"}: 10, {"m", "cm"}: 100, {"mm", "cm"}: 0.1, {"g", "kg"}: 0.001, {"g", "mg"}: 1000,
	{"h", "min"}: 60, {"hours", "min"}: 60, {"s", "min"}: 1.0 / 60, {"min", "s"}: 60, {"months", "years"}: 1.0 / 12,
	{"l/min", "ml/min"}: 1000, {"g/l", "g/dl"}: 0.1, {"g/dl", "g/l"}: 10, {"kpa", "mmhg"}: 7.5, {"%", ""}: 0.01, {"%", "fraction"}: 0.01, {"%", "share"}: 0.01,
}

// inUnit gives a number that was written with a unit as the key wants it, or nothing where that is not known.
func (r *Reader) inUnit(number, unit string) string {
	have, want := strings.ToLower(unit), strings.ToLower(r.rule.Unit)
	x, problem, _ := readNumber(number)
	factor, known := times[[2]string{have, want}]
	switch {
	case problem != "":
		return ""
	case known:
		return strconv.FormatFloat(float64(x*factor), 'g', 6, 64)
	case have == want || want == "" || strings.HasPrefix(want, have):
		return number
	}
	return ""
}

// bare are the units that people write numbers in without saying so, by the unit of the key, with what they are in it.
var bare = map[string]float64{
	"":         0.01, // a share in per cent
	"fraction": 0.01,
	"cm":       100, // metres
	"g/dL":     0.1, // g/L
	"kg":       0.001,
}

// otherUnit gives a number outside the bounds as it would be in the unit of the key, where it is likely to be in the usual
// other one; nothing where it is not.
func (r *Reader) otherUnit(x, lo, hi float64) string {
	factor, known := bare[r.rule.Unit]
	share := factor == 0.01
	if !known || share && !(lo >= 0 && hi <= 1 && x >= 2) || (x > hi) != (factor < 1) {
		return ""
	}
	if better := strconv.FormatFloat(float64(x*factor), 'g', 6, 64); r.holds(better) {
		return better
	}
	return ""
}

// holds tells whether a number keeps to the bounds of the rule.
func (r *Reader) holds(number string) bool {
	x, problem, _ := readNumber(number)
	lo, hi, _ := r.rule.Bounds()
	return problem == "" && x >= lo && x <= hi
}
