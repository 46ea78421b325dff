package sim

// The anticoagulant line and the filter of the reservoir, where anticoagulant must meet blood in time.

const (
	dropsPerML       = 20.0   // [S] ISO 8536-4:2020 §7.8
	dripLineML       = 15.0   // [A] what the anticoagulant line holds
	filterML         = 60.0   // [A] what the filter holds
	filterRipeningS  = 120.0  // [C] wound blood arrives ready to clot
	clottingS        = 180.0  // [C]
	haemostatPush    = 0.6    // [A] activation brought by blood that carries a topical haemostat
	haemostatClots   = 1.0    // [A] clotting that anticoagulant no longer forbids where a haemostat's thrombin has come in
	filterSlowClotML = 30.0   // [A] clot in the filter beyond which it holds back the sucker
	outletFullMLMin  = 1000.0 // [A]
	outletBlockML    = 60.0   // [A] clot that shuts the outlet
	primeMLMin       = 600.0  // [A] rate at which a prime runs in
)

// DripLine is the line from the anticoagulant pack to the sucker's line.
type DripLine struct {
	DropsMin    float64 // set by the roller
	Line        Fluid   // what the line holds, up to 15 mL
	PrimeLeftML float64 // still to run in of the prime asked for
	PrimedML    float64 // anticoagulant run in as prime
	DrippedML   float64 // anticoagulant drawn from packs by the drip
	OtherML     float64 // anything else drawn by mistake
	RateMLMin   float64 // now, out of the pack
}

// Filter is the reservoir's filter: the newest 60 mL, and what has clotted in it.
type Filter struct {
	Content    Fluid
	Activation float64 // Af, 0–1
	Clot       Fluid
	Haemostat  float64 // share, 0–1, of the content that came with a topical haemostat
	LysedShare float64 // osmotic, of the cells in it
}

// through pushes in through a place that holds capML: half before and half after the push out, so that the step is of
// second order. What overflows goes to out.
func through(place, in, out *Fluid, capML float64) {
	move(place, in, in.VolumeML()/2)
	throughSecondHalf(place, in, out, capML)
}

// throughSecondHalf is what is left of through when half of in has come.
func throughSecondHalf(place, in, out *Fluid, capML float64) {
	if over := place.VolumeML() + in.VolumeML() - capML; over > 0 {
		move(out, place, over)
	}
	moveAll(place, in)
}

// stepFilter takes what the sucker's line brings in one step of dt seconds, of which carryingML is shed blood that carries a
// topical haemostat with effect 0–1 folded in, and gives what the filter passes on.
func stepFilter(f *Filter, in, out *Fluid, carryingML, dt float64) {
	inML := in.VolumeML()
	a := f.Activation
	move(&f.Content, in, inML/2)
	g := clottingOf(&f.Content.Liquid, 1) // of the middle of the step
	throughSecondHalf(&f.Content, in, out, filterML)
	if inML > 0 { // what comes in mixes with the content
		turn := min(1, inML/filterML)
		f.Haemostat += float64(turn * (1 - float64(turn/2)) * (carryingML/inML - f.Haemostat))
	}
	g += float64((1 - g) * haemostatClots * f.Haemostat)
	newPerS, pushPerS := inML/dt/filterML, float64(carryingML/dt/filterML*haemostatPush)
	rate := func(a float64) float64 { return float64(g*(1-a))/filterRipeningS - float64(newPerS*a) + pushPerS }
	k1 := rate(a)
	k2 := rate(a + float64(dt*k1))
	f.Activation = clamp(a+float64(dt/2*(k1+k2)), 0, 1)
	mid := (a + f.Activation) / 2
	clot := filterML * (f.Content.PerL(Protein) / normalProteinGPerL) * mid * mid * mid * g / clottingS * dt
	move(&f.Clot, &f.Content, clot)
}

// outletLimitMLMin is what clot leaves of the reservoir's outlet, mL/min.
func outletLimitMLMin(clotML float64) float64 {
	return outletFullMLMin * max(0, 1-clotML/outletBlockML)
}

// suckerPatency is the share of the sucker's flow that clot lets through, once the filter holds much of it.
func (s *State) suckerPatency() float64 {
	if s.Filter.Clot.VolumeML() > filterSlowClotML {
		return s.outletLimit() / outletFullMLMin
	}
	return 1
}
