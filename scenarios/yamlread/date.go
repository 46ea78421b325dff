// This file holds Date, a calendar day, such as the expiry of a pack.

package yamlread

import (
	"fmt"
	"regexp"
	"strings"
	"time"

	"gopkg.in/yaml.v3"
)

// Date is a calendar day. The zero Date is no day.
type Date struct{ Year, Month, Day int }

const dateForm = "a date, yyyy-mm-dd"

// Other ways to write a day that can mean only one. Days and months parted by slashes can mean two.
var (
	dotted  = regexp.MustCompile(`^([0-9]{1,2})\. ?([0-9]{1,2})\. ?([0-9]{4})$`)
	slashed = regexp.MustCompile(`^([0-9]{4})[-/.]([0-9]{1,2})[-/.]([0-9]{1,2})$`)
)

// parseDate reads a day that exists, of a year from 1800 to 2999.
func parseDate(s string) (Date, bool) {
	t, err := time.Parse(time.DateOnly, s)
	if err != nil || t.Year() < 1800 || t.Year() > 2999 {
		return Date{}, false
	}
	return Date{t.Year(), int(t.Month()), t.Day()}, true
}

// String writes the date as yyyy-mm-dd.
func (d Date) String() string { return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Day) }

// Before tells whether d is an earlier day than e.
func (d Date) Before(e Date) bool { return strings.Compare(d.String(), e.String()) < 0 }

// Describe says what a file must hold for a Date.
func (Date) Describe() string { return dateForm }

// CheckRule wants min and max to be written as dates.
func (Date) CheckRule(rule Rule) error {
	for _, bound := range []string{rule.Min, rule.Max} {
		if _, ok := parseDate(bound); bound != "" && !ok {
			return fmt.Errorf("%s is not %s", bound, dateForm)
		}
	}
	return nil
}

// UnmarshalAt reads a date within min and max.
func (d *Date) UnmarshalAt(node *yaml.Node, r *Reader) {
	wanted := r.Wanted(*d)
	s, ok := r.Scalar(node, wanted)
	if !ok {
		return
	}
	got, ok := parseDate(s)
	if !ok {
		better := ""
		if m := dotted.FindStringSubmatch(s); m != nil {
			better = fmt.Sprintf("%s-%02d-%02d", m[3], number(m[2]), number(m[1]))
		} else if m := slashed.FindStringSubmatch(s); m != nil {
			better = fmt.Sprintf("%s-%02d-%02d", m[1], number(m[2]), number(m[3]))
		}
		if _, ok := parseDate(better); !ok {
			better = ""
		}
		r.FaultNear(node, "this is "+found(node)+", not a day of the calendar", wanted, better)
		return
	}
	lo, hasLo := parseDate(r.rule.Min)
	hi, hasHi := parseDate(r.rule.Max)
	if hasLo && got.Before(lo) || hasHi && hi.Before(got) {
		r.Fault(node, s+" is outside the days allowed", wanted)
		return
	}
	*d = got
}
