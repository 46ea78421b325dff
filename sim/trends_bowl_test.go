package sim

// Trends that must come out of the bowl, whatever the equations: rows of the design paper, section 11, one test each.

import (
	"math"
	"testing"
)

// bowlTrial is the standard bowl at 300/300 mL/min from a feed of haematocrit 0.18, washed with 1000 mL; change differs from it.
func bowlTrial(change func(t *BowlTrial)) BowlResult {
	t := BowlTrial{Shape: StandardBowl.Shape(), FeedHct: 0.18, FeedProtein: 20, FillMLMin: 300, StopFraction: fullBed, WashMLMin: 300, WashML: 1000}
	if change != nil {
		change(&t)
	}
	return TryBowl(t)
}

// falls fails the test unless each value lies below the one before it.
func falls(t *testing.T, what string, values ...float64) {
	t.Helper()
	for i := 1; i < len(values); i++ {
		if !(values[i] < values[i-1]) {
			t.Errorf("%s does not fall: %v", what, values)
			return
		}
	}
}

// left is the share of a solute fed that is still in the bowl.
func left(r BowlResult) float64 { return 1 - r.SoluteRemoval }

// [S] Quality Management in Blood Salvage, Transfus Med Hemother 2004: fast filling and fast washing make a worse product.
func TestTrendSlowerFillingRaisesHaematocrit(t *testing.T) {
	var hct []float64
	for _, rate := range []float64{100, 150, 200, 300, 450, 600, 900} {
		hct = append(hct, bowlTrial(func(b *BowlTrial) { b.FillMLMin = rate }).ProductHct)
	}
	falls(t, "product haematocrit with the filling rate", hct...)
}

// [S] the same source, for the washing rate.
func TestTrendFastWashLosesCellsAndSlowWashCleansBetter(t *testing.T) {
	at := func(rate float64) BowlResult { return bowlTrial(func(b *BowlTrial) { b.WashMLMin = rate }) }
	for _, rate := range []float64{150, 300, 400, 450} {
		within(t, "cells lost by washing at an ordinary rate", at(rate).WashLoss, 0, 0.001)
	}
	falls(t, "recovery beyond 500 mL/min", at(450).Recovery, at(550).Recovery, at(600).Recovery, at(800).Recovery, at(1000).Recovery)
	falls(t, "product haematocrit beyond 500 mL/min", at(450).ProductHct, at(550).ProductHct, at(600).ProductHct, at(800).ProductHct)
	falls(t, "what is left, the slower the wash", left(at(800)), left(at(600)), left(at(450)), left(at(300)), left(at(150)))
}

// [P] common practice.
func TestTrendProductHaematocrit(t *testing.T) {
	for hct := 0.15; hct < 0.255; hct += 0.025 {
		r := bowlTrial(func(b *BowlTrial) { b.FeedHct, b.FeedProtein = hct, 110*hct })
		within(t, "product haematocrit", r.ProductHct, 0.55, 0.65)
	}
}

// [S] Quality Management in Blood Salvage 2004: part-filled bowls make a worse product.
func TestTrendPartFilledBowl(t *testing.T) {
	var hct, carried []float64
	for _, feed := range []float64{0, 500, 400, 300, 200, 140} { // 0: filled to the interface
		r := bowlTrial(func(b *BowlTrial) { b.FeedML = feed })
		fed := r.FeedML * (1 - 0.18)
		hct = append(hct, r.ProductHct)
		carried = append(carried, -left(r)*fed/(r.ProductHct*200))
	}
	falls(t, "product haematocrit with less feed", hct...)
	falls(t, "minus what is carried over per mL of cells, with less feed", carried...)
}

// [P] common practice: what comes in beyond a full bed goes straight through.
func TestTrendPastTheInterface(t *testing.T) {
	past := func(feed float64) BowlResult {
		return bowlTrial(func(b *BowlTrial) { b.StopFraction, b.FeedML, b.WashML = 1.01, feed, 0 })
	}
	var recovery, growing []float64
	before := past(650)
	for feed := 700.0; feed <= 1000; feed += 50 {
		r := past(feed)
		recovery = append(recovery, r.Recovery)
		lost := (r.FillLoss*r.FeedML - before.FillLoss*before.FeedML) / (r.FeedML - before.FeedML)
		growing = append(growing, -lost)
		before = r
	}
	falls(t, "recovery with what is fed past the interface", recovery...)
	falls(t, "minus the share lost of each further 50 mL", growing[:4]...) // then all of it is lost
	if growing[len(growing)-1] > -0.95 {
		t.Errorf("of the last 50 mL only %.2f goes to waste", -growing[len(growing)-1])
	}
}

// [P] and [S] Richtlinie Hämotherapie, AABB Standards: ≥ 95 % after two bowl volumes at ordinary rates, ≥ 98 % after five at
// 300 mL/min from a feed of 0.15–0.20; less from a thick feed and when washed fast.
func TestTrendRemoval(t *testing.T) {
	for _, hct := range []float64{0.15, 0.18, 0.20} {
		feed := func(b *BowlTrial) { b.FeedHct, b.FeedProtein = hct, 110*hct }
		for _, rate := range []float64{150, 200, 300, 400} {
			r := bowlTrial(func(b *BowlTrial) { feed(b); b.WashMLMin, b.WashML = rate, 400 })
			within(t, "removal after two volumes", r.SoluteRemoval, 0.95, 1)
		}
		within(t, "removal after five volumes", bowlTrial(feed).SoluteRemoval, 0.98, 1)
	}
	at := func(hct, rate float64) float64 {
		return bowlTrial(func(b *BowlTrial) { b.FeedHct, b.FeedProtein, b.WashMLMin = hct, 170*hct, rate }).SoluteRemoval
	}
	falls(t, "removal with a thicker feed", at(0.10, 300), at(0.18, 300), at(0.28, 300), at(0.38, 300))
	falls(t, "removal with a faster wash", at(0.18, 150), at(0.18, 300), at(0.18, 450), at(0.18, 600), at(0.18, 800))
}

// The same row: concentrating alone removes most, so the concentration left is the stricter measure. Half of what is left
// shows as much less than a point of removal and as half the concentration.
func TestTrendConcentrationIsTheStricterMeasure(t *testing.T) {
	concentration := func(r BowlResult) float64 { return left(r) * r.FeedML * (1 - 0.18) / (200 * (1 - r.ProductHct)) } // fed at 1
	unwashed := bowlTrial(func(b *BowlTrial) { b.WashML = 0 })
	within(t, "removal by concentrating alone", unwashed.SoluteRemoval, 0.80, 0.95)
	within(t, "concentration left by concentrating alone", concentration(unwashed), 0.75, 1)
	little, enough := bowlTrial(func(b *BowlTrial) { b.WashML = 200 }), bowlTrial(nil)
	within(t, "removal, five volumes over one", enough.SoluteRemoval/little.SoluteRemoval, 1, 1.04)
	within(t, "concentration left, five volumes over one", concentration(enough)/concentration(little), 0, 0.5)
}

// [S] Radvan et al., Transfus Med Hemother 2002;29:125: real washing clears less than an ideal model. Here the ideal is a plug
// that pushes all the liquid of the bowl out before it.
func TestTrendWorseThanAPlug(t *testing.T) {
	unwashed := bowlTrial(func(b *BowlTrial) { b.WashML = 0 })
	liquid := 200 * (1 - unwashed.ProductHct)
	for _, ml := range []float64{20, 40, 60, 100, 200, 1000} {
		r := bowlTrial(func(b *BowlTrial) { b.WashML = ml })
		kept, plug := left(r)/left(unwashed), math.Max(0, 1-ml/liquid)
		if !(kept > plug) {
			t.Errorf("%g mL: %.4f of the solute stays, an ideal plug leaves %.4f", ml, kept, plug)
		}
	}
}

// [S] bound contaminants are not washed out (bacteria, tumour and fetal cells, cement: the source list, reasons to divert,
// Anesthesiology 2000;92:1531 and 2003;99:652 [M]); what is dissolved is.
func TestTrendBoundContaminantsStay(t *testing.T) {
	b := Bowl{Kind: StandardBowl}
	blood := plainBlood(200, 0.60, 40, 1, 0, 0)
	blood.Bound[0], blood.In[Dissolved0] = 60, 40
	b.pourBack(&blood)
	var out Fluid
	var lysed float64
	for range Ticks(200) {
		in := Saline.Of(1000.0 / 200 * tickS)
		b.spin(&in, &out, flowWash, tickS, &lysed)
	}
	near(t, "bound, after five volumes", b.Bound[0], 60, 0.002) // what spinning breaks sets its share free
	all := b.asFluid()
	within(t, "dissolved, after five volumes", all.In[Dissolved0], 0, 6)
	near(t, "in all", all.Contaminant(0)+out.Contaminant(0), 100, 1e-9)
}
