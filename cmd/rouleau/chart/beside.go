package chart

import (
	"fmt"
	"math"

	"rouleau/assets/words"
	"rouleau/scoring/play"
)

// This file sets two courses of one case beside each other: only that in which they visibly differ, on half a sheet, so that
// several comparisons stand on one page.

// Beside is the chart of two courses over each other, with the moment at which they part, not a number for none. The first is
// drawn whole, the second dashed. Of the courses their names and runs are needed alone; the names are best short.
func Beside(title string, first, second *Course, partS float64) *Chart {
	ch := &Chart{Title: title, Caption: words.Say("course.beside_caption"), EndS: max(endS(first), endS(second), 60), form: halfSheet, key: []string{first.Name, second.Name}}
	if !math.IsNaN(partS) {
		at := int(max(partS, 0))
		ch.part = &part{s: min(max(partS, 0), ch.EndS), text: words.Say("course.parts", fmt.Sprintf("%d:%02d:%02d", at/3600, at/60%60, at%60))}
	}
	both := [2]*Course{first, second}
	for _, row := range []struct {
		name string
		say  func(*play.Sample) (string, Fill)
		told bool // whoever reads the chart is told of a difference in it
	}{{"course.sucker", sucker, false}, {"course.bowl", pump, first.bowlfuls() != second.bowlfuls()}} {
		if !row.told && !bandsDiffer(first, second, row.say) {
			continue
		}
		for _, co := range both {
			ch.Rows = append(ch.Rows, Row{Name: words.Say("course.of", words.Say(row.name), co.Name), Spans: co.spans(row.say)})
		}
	}
	var lanes []besideLane
	for _, k := range compared(first, second) {
		values := [2][]float64{k.of(first), k.of(second)}
		for i, co := range both {
			k.lane.Curves = append(k.lane.Curves, Curve{Name: k.lane.Name, Values: values[i], Look: i, ends: co.Name})
		}
		k.fit()
		much := apartness(values[0], values[1], &k.lane)
		if k.steps {
			much *= stepsPart
		}
		if much > 0 || k.always {
			lanes = append(lanes, besideLane{k.lane, much, k.always})
		}
	}
	ch.Lanes = most(lanes)
	return ch
}

// besideLane is a lane with how much two courses differ in it.
type besideLane struct {
	Lane
	much   float64
	always bool
}

// mostLanes are drawn at most: whoever worked otherwise in everything differs in everything.
const mostLanes = 5

// most are the lanes in which two courses differ most, in their order.
func most(lanes []besideLane) (kept []Lane) {
	for i := range lanes {
		before := 0 // lanes that go before this one
		for j := range lanes {
			if i != j && (lanes[j].always || lanes[j].much > lanes[i].much || lanes[j].much == lanes[i].much && j < i) {
				before++
			}
		}
		if lanes[i].always || before < mostLanes {
			kept = append(kept, lanes[i].Lane)
		}
	}
	return kept
}

// quantity is something two courses may differ in.
type quantity struct {
	lane   Lane
	of     func(*Course) []float64
	reach  float64 // its scale reaches as far at least, or a trifle would fill it
	steps  bool    // it goes up and down with every bowlful: what comes of it tells more
	always bool    // it is drawn where it does not differ, too
}

// bowlfuls is how many went into a bag.
func (co *Course) bowlfuls() (n int) {
	s := &co.Run.State
	for i := range s.Cycles[:s.CycleUsed] {
		if s.Cycles[i].Bag >= 0 {
			n++
		}
	}
	return n
}

// compared are the quantities that are looked at, in the order of the way of blood.
func compared(first, second *Course) []quantity {
	const high = 38
	trigger := first.Run.Case.Patient.TransfusionHbGDL
	donors := first.Run.State.Patient.DonorUnits != second.Run.State.Patient.DonorUnits
	lane := func(name, unit string, digits int) Lane {
		return Lane{Name: words.Say(name), Unit: unit, Digits: digits, tall: high}
	}
	drip, bed, clotting, hbs := dripLane("course.per_100", first.per100(), second.per100()), lane("course.bed_short", "", 2), lane("course.activation", "", 2), lane("course.hb", "g/dL", 1)
	drip.tall = high
	bed.Most, clotting.Most = 1.2, 1
	hbs.Least, hbs.Most, hbs.Zones, hbs.tall = math.Floor(trigger-0.5), trigger, []Zone{{trigger, trigger, ""}}, 52
	return []quantity{
		{lane: lane("course.bleeding", "mL/min", 0), reach: 20, of: of(func(k *play.Sample) float64 { return k.BleedMLMin })},
		{lane: drip, of: (*Course).per100},
		{lane: clotting, of: of(func(k *play.Sample) float64 { return k.FilterActivation })},
		{lane: lane("course.clot", "mL", 1), reach: 10, of: of(func(k *play.Sample) float64 { return k.FilterClotML + k.ReservoirClotML })},
		{lane: lane("course.reservoir", "mL", 0), reach: 200, steps: true, of: of(func(k *play.Sample) float64 { return k.ReservoirML })},
		{lane: bed, steps: true, of: of(func(k *play.Sample) float64 { return k.FillFraction })},
		{lane: lane("course.lysed", "mL", 0), reach: 20, of: of(func(k *play.Sample) float64 { return k.LysedML })},
		{lane: lane("course.product", "mL", 0), reach: 200, of: of(func(k *play.Sample) float64 { return k.ProductML })},
		{lane: lane("course.given_ml", "mL", 0), reach: 200, of: of(func(k *play.Sample) float64 { return k.GivenML })},
		{lane: lane("course.donor", "", 0), reach: 1, always: donors, of: of(func(k *play.Sample) float64 { return float64(k.DonorUnits) })},
		{lane: hbs, of: of(hb), always: true},
	}
}

// fit lets the scale reach beyond all values.
func (k *quantity) fit() {
	lane := &k.lane
	if k.reach > 0 {
		lane.Most = max(lane.reach(), k.reach)
	}
	if lane.Least == 0 {
		return
	}
	for _, c := range lane.Curves {
		for _, v := range c.Values {
			lane.Least, lane.Most = min(lane.Least, math.Floor(orLeast(v, lane.Least))), max(lane.Most, math.Ceil(orLeast(v, lane.Most)))
		}
	}
}

const (
	visiblePart = 0.08 // of a lane's height: less lies in one line on paper
	visibleS    = 60.0 // for so long
	bandsS      = 90.0
	stepsPart   = 0.25 // of what they would count for
)

// apartness is how far two curves lie apart in the mean while both last, as a share of the lane's height; 0 where no eye would
// tell them apart.
func apartness(a, b []float64, lane *Lane) float64 {
	least, most := lane.scale()
	visible, sum, n := 0.0, 0.0, 0.0
	for i := range min(len(a), len(b)) {
		d := math.Abs(min(max(a[i], least), most)-min(max(b[i], least), most)) / (most - least)
		if math.IsNaN(d) {
			continue
		}
		n, sum = n+1, sum+d
		if d >= visiblePart {
			visible++
		}
	}
	if visible < visibleS {
		return 0
	}
	return sum / n
}

// Differ says whether an eye could tell the two courses of a chart apart anywhere.
func (ch *Chart) Differ() bool {
	for i := range ch.Lanes {
		if ch.Lanes[i].differ() {
			return true
		}
	}
	return len(ch.Rows) > 0
}

// slightestPart is the part of a lane's height below which two curves lie on each other.
const slightestPart = 0.02

// differ says whether the two curves of a lane can be told apart anywhere, or one goes on well beyond the other.
func (lane *Lane) differ() bool {
	a, b := lane.Curves[0].Values, lane.Curves[1].Values
	if n := float64(len(a) - len(b)); max(n, -n) > visibleS {
		return true
	}
	least, most := lane.scale()
	for i := range min(len(a), len(b)) {
		if math.Abs(a[i]-b[i]) > slightestPart*(most-least) || math.IsNaN(a[i]) != math.IsNaN(b[i]) {
			return true
		}
	}
	return false
}

// bandsDiffer says whether bands do.
func bandsDiffer(a, b *Course, say func(*play.Sample) (string, Fill)) bool {
	apart := 0.0
	for i := range min(len(a.Run.Trace), len(b.Run.Trace)) {
		one, _ := say(&a.Run.Trace[i])
		if other, _ := say(&b.Run.Trace[i]); one != other {
			apart++
		}
	}
	return apart >= bandsS
}
