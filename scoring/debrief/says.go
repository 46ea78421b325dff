package debrief

import (
	"fmt"

	"rouleau/assets/words"
)

// What a decision put right would have changed, in words, for product, patient and score.

// From how large a difference on it is told [A]: less is within what nobody would notice.
const (
	tellClotML    = 2.0
	tellProductML = 20.0
	tellCellsML   = 10.0
	tellHbGDL     = 0.1
)

// changes says what another outcome has otherwise than the person's own beside points, the weightiest first. It is empty where
// nothing differs. Nobody passes or fails a lesson.
func (d *Debrief) changes(other *Outcome) (all []string) {
	own := &d.Own
	say := func(key string, args ...any) { all = append(all, words.Say("changes."+key, args...)) }
	freed, brought := Freed(own, other)
	for _, name := range freed {
		say("no_" + name)
	}
	for i, name := range brought {
		text := words.Say("changes.new_" + name)
		if i == 0 && len(freed) > 0 {
			text = words.Say("changes.but", text)
		}
		all = append(all, text)
	}
	switch {
	case d.Record.Scenario.Lesson():
	case other.Grade.Passed && !own.Grade.Passed:
		say("passed")
	case own.Grade.Passed && !other.Grade.Passed:
		say("not_passed")
	}
	switch d := other.MostClotML - own.MostClotML; {
	case d < -tellClotML && other.MostClotML < tellClotML/2:
		say("no_clot", own.MostClotML)
	case d < -tellClotML:
		say("less_clot", -d)
	case d > tellClotML:
		say("more_clot", d)
	}
	switch d := other.Bowls - own.Bowls; {
	case d == 1:
		say("one_more_bowl")
	case d > 1:
		say("more_bowls", d)
	case d == -1:
		say("one_bowl_less")
	case d < -1:
		say("fewer_bowls", -d)
	}
	if d := other.ProductML - own.ProductML; d > tellProductML || d < -tellProductML {
		say(moreOrLess("product", d), size(d))
	}
	if d := other.GivenCells - own.GivenCells; d > tellCellsML || d < -tellCellsML {
		say(moreOrLess("cells", d), size(d))
	}
	if d := other.LowestHbGDL - own.LowestHbGDL; d >= tellHbGDL || d <= -tellHbGDL {
		say(moreOrLess("hb", d), size(d))
	}
	switch d := other.DonorUnits - own.DonorUnits; {
	case d == 1 || d == -1:
		say(moreOrLess("unit", float64(d)))
	case d != 0:
		say(moreOrLess("units", float64(d)), max(d, -d))
	}
	return all
}

// PointsText is a gain in points with its sign: +11, −0.4. What would be shown as nothing is 0.
func PointsText(d float64) string {
	if Slight(d) {
		return "0"
	}
	text := fmt.Sprintf("%.1f", size(d))
	if size(d) >= 9.95 {
		text = fmt.Sprintf("%.0f", size(d))
	}
	if d > 0 {
		return "+" + text
	}
	return "\u2212" + text // a minus, which is as wide as the plus
}

func moreOrLess(what string, d float64) string {
	if d > 0 {
		return "more_" + what
	}
	return "less_" + what
}

func size(d float64) float64 { return max(d, -d) }

// Slight says whether a difference in points is too small to be told.
func Slight(d float64) bool { return size(d) < slightest }
