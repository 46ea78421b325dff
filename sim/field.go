package sim

import "math"

// The wound pool, the sucker with its haemolysis, swabs, and where liquid runs away to.

const (
	suctionHalfML   = 15.0   // [A] P at which half the flow is air
	suctionLimit    = 1200.0 // mL/min at 150 mmHg [A]
	suctionLimitAt  = 150.0  // [A] mmHg
	lysisPooled     = 0.0021 // [S] Waters et al. 2007: 0.21 % gentle, pooled
	lysisAir        = 0.0208 // [S] to 2.29 % from a flat surface at 300 mmHg, same
	lysisHct        = 0.40   // [S] same, whole blood
	lysisVacuum     = 300.0  // [S] same, mmHg
	wallSuctionMmHg = 150.0  // [A] the theatre's own suction
	poolHidesML     = 300.0  // [A] the field is hidden, the excess is lost
	skimHighML      = 15.0   // [A] the sucker's marks
	skimLowML       = 2.0    // [A]
	poolHighML      = 80.0   // [A]
	poolLowML       = 25.0   // [A]
	rinseShare      = 0.70   // [A] of the cells in swabs come back
	rinseLysis      = 0.02   // [A]
	rinseS          = 90.0   // [A]
	rinseLeastML    = 150.0  // [A]
	basinMLMin      = 400.0  // [A] how fast the basin of rinse is sucked up
	looseVacuum     = 0.3    // share of the vacuum left by a loose line [A]
)

// SuctionLimitMLMin is the sucker's flow in deep liquid at a vacuum in mmHg, mL/min.
func SuctionLimitMLMin(vacuumMmHg float64) float64 {
	return suctionLimit * math.Sqrt(max(0, vacuumMmHg)/suctionLimitAt)
}

// SuctionLysis is the share of sucked red cells that break, for an air fraction 0–1 and haematocrit of what is sucked.
func SuctionLysis(vacuumMmHg, airFraction, hct float64) float64 {
	dilution := hct / lysisHct
	return float64(lysisPooled*dilution) + float64(lysisAir*airFraction*(vacuumMmHg/lysisVacuum)*dilution)
}

// suck moves what the sucker takes in one tick into line, which is empty, and says how much of it is shed blood. What goes to the
// discard does not stay in the line.
func suck(c *Case, s *State, line *Fluid) (bloodML float64) {
	f := &s.Field
	f.SuckRateMLMin, f.DiscardRateMLMin = 0, 0
	overflow(s)
	high, low := skimHighML, skimLowML
	if s.Team.Pooling {
		high, low = poolHighML, poolLowML
	}
	p := f.Pool.VolumeML()
	if p > high {
		f.SuckerIn = true
	} else if p < low {
		f.SuckerIn = false
	}
	vacuum, toReservoir := s.suctionNow(c)
	if vacuum <= 0 {
		return 0
	}
	patency, lysed := 1.0, s.Stores.LysedML
	if toReservoir {
		patency = s.suckerPatency()
	}
	if f.SuckerIn {
		limit := SuctionLimitMLMin(vacuum) / 60 * patency
		q := limit * p / (p + suctionHalfML)
		mid := max(0, p-float64(q*tickS/2))
		q = limit * mid / (mid + suctionHalfML)
		taken := move(line, &f.Pool, q*tickS)
		if p > 0 {
			bloodML = float64(f.BloodML * min(1, taken/p))
			f.BloodML -= bloodML
		}
		air := suctionHalfML / (mid + suctionHalfML)
		lyse(line, float64(SuctionLysis(vacuum, air, line.Hct())*line.CellsML), &s.Stores.LysedML)
	}
	if s.Team.Basin.VolumeML() > 0 && !s.Team.SecondInUse {
		var rinse Fluid
		move(&rinse, &s.Team.Basin, basinMLMin/60*tickS*patency)
		lyse(&rinse, float64(SuctionLysis(vacuum, 0, rinse.Hct())*rinse.CellsML), &s.Stores.LysedML)
		moveAll(line, &rinse)
	}
	rate := line.VolumeML() / tickS * 60
	if toReservoir {
		f.SuckedLysedML += s.Stores.LysedML - lysed
		f.SuckedCellsML += line.CellsML + (s.Stores.LysedML - lysed)
		f.SuckRateMLMin = rate
		f.SuckedML += line.VolumeML()
		f.SuckedBloodML += bloodML
		return bloodML
	}
	f.DiscardRateMLMin = rate
	moveAll(&f.Discarded, line)
	return 0
}

// overflow lets a pool that hides the field run onto the drapes.
func overflow(s *State) {
	f := &s.Field
	if p := f.Pool.VolumeML(); p > poolHidesML {
		lost := p - poolHidesML
		move(&f.Drapes, &f.Pool, lost)
		f.BloodML -= float64(f.BloodML * lost / p)
	}
}

// suctionNow is the vacuum at the sucker's tip, mmHg, and whether it leads to the reservoir.
func (s *State) suctionNow(c *Case) (vacuum float64, toReservoir bool) {
	if s.Team.Route == ToDiscard || s.Team.SecondInUse {
		return wallSuctionMmHg, false
	}
	return s.VacuumMmHg(c), true
}

// VacuumMmHg is the vacuum on the salvage line, mmHg: zero when anything in the chain is missing.
func (s *State) VacuumMmHg(c *Case) float64 {
	b := &s.Bench
	if !b.Opened[CollectionSet] || !b.Connected[SuctionLine] || !b.Connected[VacuumLine] || !b.VacuumSource || !b.VacuumPlugged ||
		b.TakenDown || s.Reservoir.Blood.VolumeML()+s.Reservoir.Clot.VolumeML() >= c.Faults.ReservoirML {
		return 0
	}
	v := s.Team.VacuumMmHg
	if b.Loose[VacuumLine] || b.Loose[SuctionLine] {
		v *= looseVacuum
	}
	return v
}

// carryingHaemostat is the effect, 0–1, of topical haemostats in the pool on the blood sucked from it.
func carryingHaemostat(c *Case, pool *Fluid) float64 {
	effect := 0.0
	for i := range c.Contaminants {
		spec := &c.Contaminants[i]
		if v := pool.VolumeML(); spec.Procoagulant && v > 0 && spec.HaemostatFull > 0 {
			effect = max(effect, min(1, pool.Contaminant(i)/v/spec.HaemostatFull))
		}
	}
	return effect
}

// collect runs sucker, drip, filter and reservoir for one tick.
func collect(c *Case, s *State) {
	effect := carryingHaemostat(c, &s.Field.Pool)
	var line, passed Fluid
	blood := suck(c, s, &line)
	drip(c, s, &line)
	s.runPumpBlood(c, &line)
	if s.Bench.Opened[CollectionSet] {
		s.Filter.LysedShare = joinedShare(s.Filter.LysedShare, s.Filter.Content.CellsML, s.Field.LysedShare, line.CellsML)
		if line.VolumeML() > 0 || s.Filter.Content.ML > 0 {
			stepFilter(&s.Filter, &line, &passed, float64(blood*effect), tickS)
		}
		s.countProtected(blood)
		r := &s.Reservoir
		r.Breached = r.Breached || s.Bench.Breached[CollectionSet] && passed.VolumeML() > 0
		r.InMLMin = passed.VolumeML() / tickS * 60
		r.LysedShare = joinedShare(r.LysedShare, r.Blood.CellsML, s.Filter.LysedShare, passed.CellsML)
		mixing := s.Tick < r.MixUntil
		stepReservoir(r, &passed, s.Filter.Activation, c.Patient.ESRMMPerH, tickS, mixing)
		lyseOsmotic(&r.Blood, &r.LysedShare, &s.Stores.LysedML, tickS)
	}
}

// drip adds anticoagulant to the line: drops while the salvage line is under vacuum, or a prime running in.
func drip(c *Case, s *State, line *Fluid) {
	d := &s.Drip
	d.RateMLMin = 0
	k := s.Bench.HookPack[AnticoagulantHook]
	if k < 0 || !s.Bench.Open[DripClamp] || s.VacuumMmHg(c) <= 0 {
		return
	}
	rate := d.DropsMin / dropsPerML
	priming := d.PrimeLeftML > 0
	if priming {
		rate = primeMLMin
	}
	var in Fluid
	want := rate / 60 * tickS
	if priming {
		want = min(want, d.PrimeLeftML)
	}
	got := move(&in, &s.Bench.Packs[k].Fluid, want)
	if priming {
		d.PrimeLeftML -= got
		if got <= 0 {
			d.PrimeLeftML = 0
		}
	}
	switch {
	case !s.Bench.Packs[k].Solution.Anticoagulant():
		d.OtherML += got
		s.Conduct.meet(IncidentWrongFluid, s.Tick)
	case priming:
		d.PrimedML += got
	default:
		d.DrippedML += got
	}
	d.RateMLMin = got / tickS * 60
	if c.Patient.HeparinForbidden {
		s.Conduct.ForbiddenHeparinIU += in.In[Heparin]
	}
	through(&d.Line, &in, line, dripLineML)
}
