package sim

// What the trainee did that a judge will ask about, counted as it happens.

// Conduct is the count. Volumes are mL given to the patient while something was wrong.
type Conduct struct {
	AfterRefusalML       float64 // collected although the patient declined
	ForbiddenHeparinIU   float64 // heparin drawn although forbidden
	DivertMissedML       float64 // liquid collected while something that must be diverted was in it
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
	PartedGivenML        float64 // from a circuit that had been parted, to a patient who declined that
	JoinedBloodML        float64 // shed blood collected while the circuit was joined to the patient
	Partings             int     // how often a joined circuit was parted
	ProtectedML          float64 // shed blood that met enough anticoagulant in the filter
	AfterProtamineML     float64 // shed blood collected after protamine
	AfterProtectedML     float64 // of it, what met enough anticoagulant
	HeparinAfterIU       float64 // heparin that washed blood brought the patient after protamine
	BlockedTicks         int64   // the pump turned and nothing flowed
	LooseFedML           float64 // fed to the bowl through a loose outlet line
	WatchedTimes         int     // looks at the patient while washed blood ran in
	EstimateML           float64 // the last estimate of blood loss, -1 for none
	EstimateTick         int64
	EstimateTruthML      float64              // shed blood when it was made
	FalseAlarms          int                  // declarations of what had not happened
	UndrippedML          float64              // blood sucked since anticoagulant last ran
	Cause                [incidentCount]bool  // there was reason to tell of it, though nothing came of it
	Met                  [incidentCount]int64 // first tick at which it happened, 0 for never
	Told                 [incidentCount]int64 // first tick at which it was declared, 0 for never
}

// tell notes that an incident was declared. Declaring what has not happened is counted apart, and excuses nothing later.
func (k *Conduct) tell(i Incident, tick int64) {
	switch {
	case k.Met[i] == 0 && k.Cause[i]:
		// told before harm was done: nothing to excuse, and no false alarm
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
	switch {
	case s.Drip.RateMLMin > 0:
		k.UndrippedML = 0
	case s.Field.SuckRateMLMin > 0:
		k.UndrippedML += float64(s.Field.SuckRateMLMin / 60 * tickS)
	}
	if k.UndrippedML > undrippedML {
		k.meet(IncidentAnticoagulant, s.Tick)
	}
	if s.Tick%alarmEveryTicks == 0 {
		k.causes(s)
	}
	if s.Filter.Clot.VolumeML()+s.Reservoir.Clot.VolumeML() > fragmentsFromML {
		k.meet(IncidentClot, s.Tick)
	}
}

// causes notes what an honest trainee may tell of before it becomes an incident.
func (k *Conduct) causes(s *State) {
	on := &s.Alarms.On
	for _, c := range [...]struct {
		there bool
		of    Incident
	}{
		{on[AlarmAir], IncidentAir}, {on[AlarmNoPower] || on[AlarmNoVacuum] || on[AlarmLeak], IncidentEquipment}, {on[AlarmClot], IncidentClot},
		{on[AlarmNoDrip], IncidentAnticoagulant}, {s.Bowl.Detector.Offset != 0 || s.Bowl.Detector.Misread > MisreadSeen, IncidentEquipment},
	} {
		k.Cause[c.of] = k.Cause[c.of] || c.there
	}
	for i := range s.Bags[:s.BagsUsed] {
		f := &s.Bags[i].Flaws
		k.Cause[IncidentProduct] = k.Cause[IncidentProduct] || f.UnwashedML > 0 || f.WrongML > 0
	}
}

// MisreadSeen is by how much a detector must be off for an eye to be sure of it [A].
const MisreadSeen = 0.05

// undrippedML is what may be sucked without a drip before it is an incident [A].
const undrippedML = 50.0

// divertFloor is the concentration, as a share of HaemostatFull or LimitPerML, above which the pool counts as carrying it.
const divertFloor = 0.1 // [A]

// diverting says whether the pool now carries contaminant i in an amount that must not be collected.
func (s *State) diverting(c *Case, i int) bool {
	spec := &c.Contaminants[i]
	v := s.Field.Pool.VolumeML()
	mark := max(spec.HaemostatFull, spec.LimitPerML)
	return v > 0 && mark > 0 && !s.closed() && s.Field.Pool.Contaminant(i)/v > divertFloor*mark
}

// closed says whether the wound is closed and dry; the little that clings to it is no longer sucked.
func (s *State) closed() bool {
	return s.Team.OverSaid && s.Field.BleedMLMin <= 0 && s.Field.Pool.VolumeML() <= skimHighML
}
