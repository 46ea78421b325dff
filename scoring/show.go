package scoring

import (
	"strconv"

	"rouleau/assets/words"
	"rouleau/scenarios"
)

// How measured values are written for people.

// Show writes a value with as many digits as make sense: 0.58, 24.5, 312, and small ones so that they are told from their
// neighbours: 0.006 is not 0.01.
func Show(v float64) string {
	digits := 2
	switch a := max(v, -v); {
	case a >= 100:
		digits = 0
	case a >= 10:
		digits = 1
	case a > 0 && a < 0.001:
		digits = 5
	case a > 0 && a < 0.02:
		digits = 3
	}
	s := strconv.FormatFloat(v, 'f', digits, 64)
	if digits > 0 {
		for s[len(s)-1] == '0' {
			s = s[:len(s)-1]
		}
		if s[len(s)-1] == '.' {
			s = s[:len(s)-1]
		}
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// ShowUnit writes a measured value with its unit: yes or no, a bare share, or a number with its unit.
func ShowUnit(v float64, unit string) string {
	switch unit {
	case scenarios.YesNo:
		if v == 1 {
			return words.Say("target.yes")
		}
		return words.Say("target.no")
	case scenarios.Share, "ratio", "":
		return Show(v)
	}
	return Show(v) + " " + unit
}
