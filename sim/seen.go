package sim

// What a person at the bench can see or read: the only thing an operator may look at, and all that an assessment shows.

// Seen is the bench through the trainee's eyes. Volumes are read off scales, so they are rounded.
type Seen struct {
	Tick          int64
	PhaseName     string
	PhaseIndex    int
	OperationOver bool

	// the sheet's choices and the bench
	Bench      *BenchState // what was decided, hung, opened; hidden faults are not in it, see Looks
	HandsBusy  bool
	PackLeftML [MaxPacks]float64 // on each pack's scale, to 10 mL
	VacuumMmHg float64           // on the gauge: what really is there
	DropsMin   float64

	// the wound
	PoolML          float64 // by eye, to 10 mL
	BrisknessMLMin  float64 // bleeding by eye, to the next of a few steps
	IrrigationMLMin float64
	SwabsML         float64 // weighed, to 10 mL
	SuckMLMin       float64 // how fast the reservoir fills, to 5 mL/min
	AgentInUse      bool    // something that must be diverted was announced and not yet said to be gone
	SuctionML       float64 // the theatre's own canister, to 50 mL

	// the reservoir
	ReservoirML         float64 // to 10 mL
	ClearML             float64 // the layer on top, by eye, to 20 mL
	ClotML              float64 // on the filter and in the reservoir, by eye, to 5 mL
	AnticoagulantPer100 float64 // drip over what came in, last minutes, mL per 100 mL; -1 unknown

	// the bowl and bags
	Detector                float64 // mean of the last second
	EffluentRed             float64 // 0 clear to 1 dark red, from its cells and free haemoglobin
	BowlEmpty               bool
	BowlHeldML              float64 // contents, by the scale under it, to 5 mL
	WasteML                 float64
	BagML                   [MaxBags]float64 // to 5 mL
	BagAirML                [MaxBags]float64 // by eye, to 10 mL
	Gas                     Gas
	HeartRate, PressureMmHg float64
	Reacting                bool // the monitor shows it
	OpenQuestion            int
	BloodWanted             int
}

// View fills seen from the state. It copies nothing but numbers, so it may be called every tick.
func View(c *Case, s *State, v *Seen) {
	*v = Seen{Tick: s.Tick, Bench: &s.Bench, OpenQuestion: s.Team.OpenQuestion(), BloodWanted: s.Team.BloodWanted()}
	for i := range c.Phases {
		if c.Phases[i].StartTick <= s.Tick {
			v.PhaseIndex, v.PhaseName = i, c.Phases[i].Name
		}
	}
	v.OperationOver = s.Tick >= c.EndTick
	v.HandsBusy = s.Tick < s.Bench.HandsUntil
	for i := range s.Bench.Packs {
		v.PackLeftML[i] = toNearest(s.Bench.Packs[i].Fluid.VolumeML(), 10)
	}
	v.VacuumMmHg, v.DropsMin = s.salvageVacuum(c), s.Drip.DropsMin

	f := &s.Field
	v.PoolML = toNearest(f.Pool.VolumeML(), 10)
	v.BrisknessMLMin = Briskness(f.BleedMLMin)
	v.IrrigationMLMin = toNearest(f.IrrigationRateMLMin, 5)
	v.SwabsML = toNearest(f.Swabs.VolumeML(), 10)
	v.SuckMLMin = toNearest(s.Reservoir.InMLMin, 5)
	v.SuctionML = toNearest(f.Discarded.VolumeML(), 50)
	v.AgentInUse = s.agentAnnounced(c)

	r := &s.Reservoir
	v.ReservoirML = toNearest(r.Blood.VolumeML()+r.Clot.VolumeML(), 10)
	v.ClearML = toNearest(r.ClearML, 20)
	v.ClotML = toNearest(s.Filter.Clot.VolumeML()+r.Clot.VolumeML(), 5)
	v.AnticoagulantPer100 = -1
	if in := r.TakenInML - s.Drip.DrippedML - s.Drip.PrimedML; in > 20 {
		v.AnticoagulantPer100 = 100 * s.Drip.DrippedML / in
	}

	b := &s.Bowl
	if b.Spinning {
		v.Detector = b.Detector.Mean()
	}
	v.EffluentRed = clamp(b.Effluent.Hct*8+b.Effluent.FreeHbGL/8, 0, 1)
	v.BowlHeldML = toNearest(b.ContentsML(), 5)
	v.BowlEmpty = b.ContentsML() <= residualML+0.5
	v.WasteML = toNearest(s.Waste.Bag.VolumeML(), 50)
	for i := range s.Bags[:s.BagsUsed] {
		v.BagML[i] = toNearest(s.Bags[i].Fluid.VolumeML(), 5)
		v.BagAirML[i] = toNearest(s.Bags[i].AirML, 10)
	}
	p := &s.Patient
	v.Gas, v.HeartRate, v.PressureMmHg = p.LastGas, p.HeartRate, p.PressureMmHg
	v.Reacting = s.Alarms.On[AlarmReaction]
}

// brisk are the steps in which an eye tells bleeding, mL/min [A].
var brisk = [...]float64{0, 5, 10, 20, 35, 60, 100, 200, 400}

// Briskness is bleeding as an eye tells it: the nearest of a few steps, mL/min.
func Briskness(mlMin float64) float64 {
	best := brisk[0]
	for _, b := range brisk {
		if abs(b-mlMin) < abs(best-mlMin) {
			best = b
		}
	}
	return best
}

func toNearest(x, step float64) float64 { return step * float64(int64(x/step+0.5)) }

func abs(x float64) float64 { return max(x, -x) }

// agentAnnounced says whether the team knows something in the wound that must not be collected.
func (s *State) agentAnnounced(c *Case) bool {
	ph := phaseAt(c, s.Tick)
	for i := range c.Contaminants {
		if c.Contaminants[i].MustDivert && (s.Field.Agent[i] || ph.ContaminantPerML[i] > 0) {
			return true
		}
	}
	return false
}
