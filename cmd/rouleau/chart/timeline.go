package chart

import (
	"math"
	"strconv"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// This file lays out the whole case of one trainee: what could be seen while it was played, and apart from it what could not.

// Story is one course with what is to be told of it.
type Story struct {
	Title      string
	Course     *Course                        // one that was watched
	MostClotML float64                        // the most clot that a criterion allows, not a number where there is none
	More       []Moments                      // explained elsewhere, such as those of criteria; signs other than plain numbers are best
	Says       func(o *sim.Occurrence) string // an occurrence in words
}

// Timeline is the chart of a story, and all that was done, alarmed and said in it, row by row in order of time. Each has its tick;
// those of most weight have a number too.
func Timeline(s *Story) (*Chart, []Named) {
	co := s.Course
	t := &teller{co: co, c: &co.Run.Case, ch: &Chart{Title: s.Title, Caption: words.Say("course.timeline_caption"), Moments: s.More,
		EndS: max(endS(co), 60), form: timeSheet}}
	named := t.happened(s.Says)
	t.bands()
	t.seen(s.MostClotML)
	t.hidden()
	return t.ch, named
}

type teller struct {
	co *Course
	c  *sim.Case
	ch *Chart
}

func (t *teller) bands() {
	bowls := t.bowls()
	t.row(words.Say("course.bowl"), bowls)
	t.row(words.Say("course.suction"), t.suction())
	if len(t.co.Other) > 0 {
		t.ch.Caption = words.Say("course.also", t.ch.Caption, words.Say("course.two_caption"))
	}
	for i := range t.c.Contaminants {
		t.row(words.Say("course.wound", t.c.Contaminants[i].Name), t.co.Wound[i])
	}
	t.ch.Rows = append(t.ch.Rows, phases(t.c, t.ch.EndS))
}

func (t *teller) row(name string, spans []Span) {
	if len(spans) > 0 {
		t.ch.Rows = append(t.ch.Rows, Row{Name: name, Spans: spans})
	}
}

// bowls are the steps of each bowlful; the first of them with room for it has its number. Where one has none in any, the numbers
// stand above.
func (t *teller) bowls() []Span {
	spans := t.co.spans(pump)
	above := Moments{Name: words.Say("course.bowlful")}
	unitS := t.ch.EndS / float64(timeSheet.width-timeSheet.names-timeSheet.ends)
	unplaced, last, placed := 0, 0, true
	for i := range spans {
		k := &spans[i]
		n := 1
		for _, cy := range t.co.Run.State.Cycles[:t.co.Run.State.CycleUsed] {
			if cy.DoneTick > 0 && sim.Seconds(cy.DoneTick) <= k.FromS {
				n++
			}
		}
		number := strconv.Itoa(n)
		if n != last {
			above.At = append(above.At, Moment{S: k.FromS, Text: number})
			if !placed {
				unplaced++
			}
			last, placed = n, false
		}
		if !placed && float64((ui.Style{Size: small, Tab: true}).Width(number)+10)*unitS <= k.ToS-k.FromS {
			k.Text, k.Short, placed = words.Say("course.bowl_step", n, k.Text), number, true
		}
	}
	if !placed {
		unplaced++
	}
	if unplaced > 0 && len(spans) > 0 {
		t.ch.Moments = append(t.ch.Moments, above)
		return t.co.spans(pump)
	}
	return spans
}

// suction says where it goes, with what a second sucker takes.
func (t *teller) suction() []Span {
	second := map[int64]bool{}
	for _, s := range t.co.Other {
		for at := s.FromS; at < s.ToS; at++ {
			second[int64(at)] = true
		}
	}
	return t.co.spans(func(k *play.Sample) (string, Fill) {
		if second[k.Tick/sim.TicksPerSecond] && k.ToReservoir {
			return words.Say("course.two_suckers"), Tint
		}
		return sucker(k)
	})
}

// seen are the lanes of what could be seen: as an eye, a scale or a screen tells it, not as it is.
func (t *teller) seen(mostClotML float64) {
	add := func(lane Lane) {
		if len(lane.Curves) > 0 {
			t.ch.Lanes = append(t.ch.Lanes, lane)
		}
	}
	add(t.wound())
	add(t.reservoir())
	drip := dripLane("course.per_100", t.co.per100())
	drip.tall = 36
	add(one(drip, t.co.per100()))
	clot := Lane{Name: words.Say("course.clot_seen"), Unit: "mL", tall: 28}
	if !math.IsNaN(mostClotML) {
		clot.Zones = []Zone{{mostClotML, mostClotML, words.Say("course.most", mostClotML)}}
	}
	add(one(clot, t.co.values(clotSeen)))
	add(one(Lane{Name: words.Say("course.detector"), Digits: 1, Most: 1.2, tall: 28}, t.co.glanced(func(g *glance) float64 { return g.detector })))
	add(one(Lane{Name: words.Say("course.washed"), Unit: "mL", tall: 28}, t.co.glanced(func(g *glance) float64 { return g.washedML })))
	bags := one(Lane{Name: words.Say("course.product"), Unit: "mL", tall: 35}, t.co.values(func(k *play.Sample) float64 { return nearest(k.ProductML, 5) }))
	if v := t.co.values(func(k *play.Sample) float64 { return nearest(k.GivenML, 5) }); anything(v) {
		bags.Curves = append(bags.Curves, Curve{Name: words.Say("course.given_ml"), Values: v, Look: 1})
	}
	add(bags)
	hb := one(t.hbLane(words.Say("course.hb_gas")), t.gas())
	trigger := t.co.values(func(*play.Sample) float64 { return t.c.Patient.TransfusionHbGDL })
	hb.Curves, hb.Zones = append(hb.Curves, Curve{Name: words.Say("course.trigger_line"), Values: trigger, Look: limitLook}), nil
	add(hb)
}

// one is a lane with one curve, if there is anything to draw.
func one(lane Lane, values []float64) Lane {
	if anything(values) {
		lane.Curves = []Curve{{Name: lane.Name, Values: values}}
	}
	return lane
}

// wound is what runs into it: bleeding as an eye tells it, and what dilutes it.
func (t *teller) wound() Lane {
	lane := one(Lane{Name: words.Say("course.bleeding_seen"), Unit: "mL/min"}, t.co.values(func(k *play.Sample) float64 { return sim.Briskness(k.BleedMLMin) }))
	if v := t.co.glanced(func(g *glance) float64 { return nearest(g.irrigation, 5) }); anything(v) {
		lane.Curves = append(lane.Curves, Curve{Name: words.Say("course.irrigation"), Values: v, Look: 2})
	}
	v := t.co.values(func(k *play.Sample) float64 { return phaseAt(t.c, k.Tick).BodyFluidMLMin })
	if anything(v) {
		lane.Curves = append(lane.Curves, Curve{Name: words.Say("course.body_fluid"), Values: v, Look: 3})
	}
	lane.tall = max(34, float32(len(lane.Curves))*nameH+5)
	return lane
}

// reservoir is its content as layers: clot, cells, and what is clear on top, by an eye at its wall.
func (t *teller) reservoir() Lane {
	all := t.co.values(reservoirSeen)
	lane := one(Lane{Name: words.Say("course.reservoir"), Unit: "mL", tall: 60}, all)
	if len(lane.Curves) == 0 {
		return lane
	}
	clot, cells, clear := make([]float64, len(all)), make([]float64, len(all)), make([]float64, len(all))
	for i := range t.co.Run.Trace {
		k := &t.co.Run.Trace[i]
		clot[i] = min(nearest(k.ReservoirClotML, 5), all[i])
		clear[i] = min(nearest(k.ClearML, 20), all[i]-clot[i])
		if k.ReservoirHct < leastHct { // such as the prime alone
			clear[i] = all[i] - clot[i]
		}
		cells[i] = all[i] - clot[i] - clear[i]
	}
	lane.layers = []layer{{words.Say("course.layer_clot"), clot, black}, {words.Say("course.layer_cells"), cells, middle}, {words.Say("course.layer_clear"), clear, light}}
	return lane
}

// As a person at the bench reads them; compare sim.View.
func reservoirSeen(k *play.Sample) float64 { return nearest(k.ReservoirML+k.ReservoirClotML, 10) }
func clotSeen(k *play.Sample) float64      { return nearest(k.FilterClotML+k.ReservoirClotML, 5) }

func nearest(x, step float64) float64 { return step * math.Floor(x/step+0.5) }

// gas is what the last blood gas said.
func (t *teller) gas() []float64 {
	v := t.co.values(func(*play.Sample) float64 { return math.NaN() })
	for _, o := range t.co.Run.Log {
		if o.Kind == sim.Said && o.Key == "gas" {
			for i := int(o.Tick/sim.TicksPerSecond) + 1; i < len(v); i++ { // a second is noted before it passes
				v[i] = o.Value
			}
		}
	}
	return v
}

// hbLane is a lane of haemoglobin, with the same scale whoever tells it. It does not begin at nothing.
func (t *teller) hbLane(name string) Lane {
	trigger := t.c.Patient.TransfusionHbGDL
	least, most := trigger, trigger
	for _, v := range append(t.gas(), t.co.values(hb)...) {
		least, most = min(least, orLeast(v, least)), max(most, orLeast(v, most))
	}
	return Lane{Name: name, Unit: "g/dL", Digits: 1, tall: 46, Least: max(math.Floor(least-0.5), 0), Most: math.Ceil(most + 0.2), Zones: []Zone{{From: trigger, To: trigger}}}
}

func hb(k *play.Sample) float64 { return k.HbGDL }

// hidden are the lanes of what could not be seen, each with what was seen of it.
func (t *teller) hidden() {
	add := func(lane Lane, truth []float64, names ...Curve) {
		if !anything(truth) {
			return
		}
		lane.Curves = append([]Curve{{Name: lane.Name, Values: truth, Look: unseenLook}}, names...)
		t.ch.Hidden = append(t.ch.Hidden, lane)
	}
	add(Lane{Name: words.Say("course.hct_whole"), Digits: 2, tall: 35},
		t.co.values(func(k *play.Sample) float64 { return orGap(k.ReservoirHct, k.ReservoirML >= leastML) }),
		Curve{Name: words.Say("course.hct_below"), Values: t.co.values(hctBelow), Look: unseenOtherLook})
	add(Lane{Name: words.Say("course.activation"), Digits: 2, Most: 1, tall: 28}, t.co.values(func(k *play.Sample) float64 { return k.FilterActivation }))
	add(Lane{Name: words.Say("course.bed_short"), Digits: 1, Most: 1.2, tall: 35},
		t.co.values(func(k *play.Sample) float64 { return orGap(k.FillFraction, k.FillFraction >= leastBed) }),
		Curve{Name: words.Say("course.detector"), Values: t.co.glanced(func(g *glance) float64 { return g.detector })})
	add(t.hbLane(words.Say("course.hb_true")), t.co.values(hb), Curve{Name: words.Say("course.hb_gas"), Values: t.gas()})
}

const (
	leastHct = 0.01 // an eye takes what has fewer cells for clear
	leastML  = 20.0 // in the reservoir: the haematocrit of less says nothing
	leastBed = 0.04 // of the bowl: less is what stays in it after emptying
)

// hctBelow is the haematocrit under the clear layer, which is what is drawn first.
func hctBelow(k *play.Sample) float64 {
	low := k.ReservoirML - k.ClearML
	return orGap(min(k.ReservoirHct*k.ReservoirML/max(low, 1), 1), low >= leastML)
}

func orGap(v float64, is bool) float64 {
	if is {
		return v
	}
	return math.NaN()
}
