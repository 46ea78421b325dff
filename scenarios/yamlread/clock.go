// This file holds Clock, a span or point of simulated time in whole seconds.

package yamlread

import (
	"fmt"
	"regexp"
	"strconv"

	"gopkg.in/yaml.v3"
)

// Clock is a time written 1:05:00 (hours, minutes, seconds) or 65:00 (minutes,
// seconds). It remembers which, so that it prints as it was written; compare
// times by Seconds.
type Clock struct {
	Seconds int
	Short   bool // written without hours
}

const clockForm = "a time, h:mm:ss or mm:ss"

var (
	longClock  = regexp.MustCompile(`^(0|[1-9][0-9]?):([0-5][0-9]):([0-5][0-9])$`)
	shortClock = regexp.MustCompile(`^([0-9][0-9]):([0-5][0-9])$`)
	halfClock  = regexp.MustCompile(`^([0-9]):([0-5][0-9])$`)
	bareClock  = regexp.MustCompile(`^[1-5]?[0-9]$`)
	zeroClock  = regexp.MustCompile(`^0([0-9]:[0-5][0-9]:[0-5][0-9])$`)
	looseClock = regexp.MustCompile(`^([0-9]{1,2}):([0-9]{1,2}):([0-9]{1,2})$`)
)

// parseClock reads a time. Otherwise better is how it was probably meant.
func parseClock(s string) (c Clock, better string, ok bool) {
	if m := longClock.FindStringSubmatch(s); m != nil {
		return Clock{Seconds: number(m[1])*3600 + number(m[2])*60 + number(m[3])}, "", true
	}
	if m := shortClock.FindStringSubmatch(s); m != nil {
		return Clock{Seconds: number(m[1])*60 + number(m[2]), Short: true}, "", true
	}
	if m := zeroClock.FindStringSubmatch(s); m != nil {
		return c, m[1], false
	}
	if m := looseClock.FindStringSubmatch(s); m != nil {
		// 70 minutes are an hour and ten, and a nought may be missing.
		better = Clock{Seconds: number(m[1])*3600 + number(m[2])*60 + number(m[3])}.String()
		if !longClock.MatchString(better) {
			better = ""
		}
		return c, better, false
	}
	if m := halfClock.FindStringSubmatch(s); m != nil {
		// 1:30 can be minutes or hours: both readings are offered.
		return c, "0:0" + s + " or " + s + ":00", false
	}
	if m := bareClock.FindString(s); m != "" {
		// Most such numbers are minutes.
		return c, fmt.Sprintf("0:%02d:00 or 0:00:%02d", number(m), number(m)), false
	}
	return c, "", false
}

// number reads digits that a pattern has let through, four at most.
func number(digits string) int {
	n, _ := strconv.Atoi(digits)
	return n
}

// String writes the time as it was read.
func (c Clock) String() string {
	h, m, s := c.Seconds/3600, c.Seconds/60%60, c.Seconds%60
	if c.Short {
		return fmt.Sprintf("%02d:%02d", c.Seconds/60, s)
	}
	return fmt.Sprintf("%d:%02d:%02d", h, m, s)
}

// Describe says what a file must hold for a Clock.
func (Clock) Describe() string { return clockForm }

// CheckRule wants min and max to be written as times.
func (Clock) CheckRule(rule Rule) error {
	for _, bound := range []string{rule.Min, rule.Max} {
		if _, _, ok := parseClock(bound); bound != "" && !ok {
			return fmt.Errorf("%s is not %s", bound, clockForm)
		}
	}
	return nil
}

// UnmarshalAt reads a time within min and max.
func (c *Clock) UnmarshalAt(node *yaml.Node, r *Reader) {
	wanted := r.Wanted(*c)
	s, ok := r.Scalar(node, wanted)
	if !ok {
		return
	}
	got, better, ok := parseClock(s)
	if !ok {
		r.FaultNear(node, "this is "+found(node)+", not a time", wanted, better)
		return
	}
	if lo, _, ok := parseClock(r.rule.Min); ok && got.Seconds < lo.Seconds {
		r.Fault(node, s+" is too early or too short", wanted)
		return
	}
	if hi, _, ok := parseClock(r.rule.Max); ok && got.Seconds > hi.Seconds {
		r.Fault(node, s+" is too late or too long", wanted)
		return
	}
	*c = got
}
