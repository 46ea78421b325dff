package sim

import "math"

// Whether an act is possible now, why not, and doing it.

// Reason says why an act is not possible now: a key of the catalogue, "" when it is possible.
type Reason string

// rule is one verb: what it asks of its value, how long it keeps the hands busy, whether it may be done and what it does.
type rule struct {
	least, most float64 // of Value; both 0 when the verb has none
	whole       bool    // Value is a whole number
	handsS      float64 // hands are busy this long
	may         func(c *Case, s *State, a Action) Reason
	do          func(c *Case, s *State, a Action, h *Happened)
}

var rules [verbCount]rule

func init() {
	prepareRules()
	collectRules()
	processRules()
	bagRules()
	recordRules()
}

// ValueRange gives the least and the most that a verb's value may be, and whether it must be whole.
func ValueRange(v Verb) (least, most float64, whole bool) {
	if v >= verbCount {
		return 0, 0, false
	}
	r := &rules[v]
	return r.least, r.most, r.whole
}

// May says why an action is not possible now, "" when it is.
func May(c *Case, s *State, a Action) Reason {
	if a.Do == NoVerb || a.Do >= verbCount {
		return "unknown_act"
	}
	if a.On >= partCount {
		return "unknown_part"
	}
	if s.Ended {
		return "case_is_over"
	}
	r := &rules[a.Do]
	if math.IsNaN(a.Value) || a.Value < r.least || a.Value > r.most {
		return "value_out_of_range"
	}
	if r.whole && a.Value != math.Floor(a.Value) {
		return "value_must_be_whole"
	}
	if r.handsS > 0 && s.Tick < s.Bench.HandsUntil && !a.Auto {
		return "hands_are_busy"
	}
	if r.may != nil {
		return r.may(c, s, a)
	}
	return ""
}

// Apply does an action, or says why not and changes nothing but the log.
func Apply(c *Case, s *State, a Action, h *Happened) Reason {
	a.Tick = s.Tick
	if why := May(c, s, a); why != "" {
		h.add(Occurrence{Tick: s.Tick, Kind: Refused, Who: Nobody, Key: string(why), Line: -1, Act: a})
		return why
	}
	h.add(Occurrence{Tick: s.Tick, Kind: Done, Who: Nobody, Key: a.Do.String(), Line: -1, Act: a, Value: a.Value})
	r := &rules[a.Do]
	if r.handsS > 0 && !a.Auto {
		s.Bench.HandsUntil = s.Tick + Ticks(r.handsS)
	}
	r.do(c, s, a, h)
	return ""
}

// first gives the first reason that holds.
func first(reasons ...Reason) Reason {
	for _, r := range reasons {
		if r != "" {
			return r
		}
	}
	return ""
}

// unless gives the reason when the condition does not hold.
func unless(ok bool, why Reason) Reason {
	if ok {
		return ""
	}
	return why
}
