package sim

// What the trainee did that a judge will ask about, counted as it happens.

// Conduct is the count. Volumes are mL given to the patient while something was wrong.
type Conduct struct {
	AfterRefusalML       float64 // collected although the patient declined
	ForbiddenHeparinIU   float64 // heparin drawn although forbidden
	DivertMissedML       float64 // shed blood collected while something that must be diverted was in it
	SqueezedTicks        int64
	HaemolysedGivenML    float64
	UnidentifiedGivenML  float64
	UnlabelledGivenML    float64
	ExpiredGivenML       float64
	UnwashedGivenML      float64
	WrongWashGivenML     float64
	BreachedGivenML      float64
	ReactionGivenML      float64
	UnfilteredGivenML    float64
	ContaminatedGivenML  float64
	AnticoagulantGivenML float64
	ClotGivenML          float64
	WatchedTimes         int     // looks at the patient while washed blood ran in
	EstimateML           float64 // the last estimate of blood loss, -1 for none
	EstimateTick         int64
	EstimateTruthML      float64              // shed blood when it was made
	FalseAlarms          int                  // declarations of what had not happened
	Met                  [incidentCount]int64 // first tick at which it happened, 0 for never
	Told                 [incidentCount]int64 // first tick at which it was declared, 0 for never
}

// tell notes that an incident was declared. Declaring what has not happened is counted apart, and excuses nothing later.
func (k *Conduct) tell(i Incident, tick int64) {
	switch {
	case k.Met[i] == 0:
		k.FalseAlarms++
	case k.Told[i] == 0:
		k.Told[i] = max(1, tick)
	}
}

// meet notes that an incident happened.
func (k *Conduct) meet(i Incident, tick int64) {
	if k.Met[i] == 0 {
		k.Met[i] = max(1, tick)
	}
}

// oversee counts what goes wrong in collecting during one tick.
func oversee(c *Case, s *State) {
	k := &s.Conduct
	if ml := float64(s.Field.SuckRateMLMin / 60 * tickS); ml > 0 {
		if c.Patient.SalvageRefused {
			k.AfterRefusalML += ml
		}
		for i := range c.Contaminants {
			if c.Contaminants[i].MustDivert && s.diverting(c, i) {
				k.DivertMissedML += ml
				k.meet(IncidentContaminant, s.Tick)
				break
			}
		}
	}
	if s.Alarms.On[AlarmNoDrip] && s.Tick > s.Alarms.Since[AlarmNoDrip]+Ticks(noDripS) {
		k.meet(IncidentAnticoagulant, s.Tick)
	}
	if s.Filter.Clot.VolumeML()+s.Reservoir.Clot.VolumeML() > fragmentsFromML {
		k.meet(IncidentClot, s.Tick)
	}
}

// noDripS is how long suction may go on without a drip before it is an incident [A].
const noDripS = 60.0

// divertFloor is the concentration, as a share of HaemostatFull or LimitPerML, above which the pool counts as carrying it.
const divertFloor = 0.1 // [A]

// diverting says whether the pool now carries contaminant i in an amount that must not be collected.
func (s *State) diverting(c *Case, i int) bool {
	spec := &c.Contaminants[i]
	v := s.Field.Pool.VolumeML()
	mark := max(spec.HaemostatFull, spec.LimitPerML)
	return v > 0 && mark > 0 && s.Field.Pool.Contaminant(i)/v > divertFloor*mark
}
