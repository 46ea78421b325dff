package sim

// Alarms: what the bench can sense, by priority.

// Alarm names a condition.
type Alarm uint8

// The alarms. Only what a sensor, a scale or an eye could notice is among them.
const (
	AlarmAir      Alarm = iota // air in the line
	AlarmReaction              // the patient reacts while blood is given
	AlarmBagEmpty              // the bag being given is empty and still open
	AlarmNoPower
	AlarmNoVacuum
	AlarmNoDrip // sucking without anticoagulant
	AlarmReservoirFull
	AlarmNoFlow
	AlarmReservoirEmpty
	AlarmWashEmpty
	AlarmWasteFull
	AlarmBagFull
	AlarmClot
	AlarmFieldHidden
	AlarmLeak
	AlarmInterface
	AlarmLayered
	AlarmExpiring
	AlarmCount
)

var alarmNames = [AlarmCount]string{"air", "reaction", "bag_empty", "no_power", "no_vacuum", "no_drip", "reservoir_full", "no_flow",
	"reservoir_empty", "wash_empty", "waste_full", "bag_full", "clot", "field_hidden", "leak", "interface", "layered", "expiring"}

// String is the catalogue key of the alarm.
func (a Alarm) String() string { return nameOf(alarmNames[:], uint8(a)) }

// Priority of an alarm, as IEC 60601-1-8 sorts them.
type Priority uint8

// The priorities.
const (
	LowPriority Priority = iota
	MediumPriority
	HighPriority
)

var alarmPriority = [AlarmCount]Priority{AlarmAir: HighPriority, AlarmReaction: HighPriority, AlarmBagEmpty: HighPriority,
	AlarmNoPower: HighPriority, AlarmNoVacuum: MediumPriority, AlarmNoDrip: HighPriority, AlarmReservoirFull: HighPriority,
	AlarmNoFlow: MediumPriority, AlarmReservoirEmpty: MediumPriority, AlarmWashEmpty: MediumPriority, AlarmWasteFull: MediumPriority,
	AlarmBagFull: MediumPriority, AlarmClot: MediumPriority, AlarmFieldHidden: MediumPriority, AlarmLeak: HighPriority}

// Priority of the alarm.
func (a Alarm) Priority() Priority {
	if a < AlarmCount {
		return alarmPriority[a]
	}
	return LowPriority
}

// AlarmState is which alarms are on and since when.
type AlarmState struct {
	On    [AlarmCount]bool
	Since [AlarmCount]int64
}

const (
	layeredShare    = 0.20      // [A] clear share of the volume that the eye calls layered
	clotSeenML      = 8.0       // [A] clot on the filter that the eye notices
	undrippedSeenML = 2.0       // [A] sucked without a drip before it is noticed; the alarm stays until anticoagulant runs
	nearFull        = 0.97      // [A] of a waste bag
	expirySoonS     = 30 * 60.0 // [A]
	wasteWarnML     = 300.0     // [A]
	alarmEveryTicks = TicksPerSecond / 2
)

// watchAlarms looks twice a second at what is wrong.
func watchAlarms(c *Case, s *State, h *Happened) {
	if s.Tick%alarmEveryTicks != 0 {
		return
	}
	var on [AlarmCount]bool
	b, p, r := &s.Bench, &s.Pump, &s.Reservoir
	inUse := b.Opened[CollectionSet] && !b.TakenDown && s.Team.Route == ToReservoir
	v := r.Blood.VolumeML()
	clot := s.Filter.Clot.VolumeML() + r.Clot.VolumeML()
	on[AlarmAir] = s.Bowl.AirML >= airStopsML
	on[AlarmReaction] = s.Patient.Reaction && s.Tick > s.Patient.ReactionTick+Ticks(reactionShowsS)
	if g := &s.Giving; g.Bag >= 0 && g.RateMLMin > 0 {
		on[AlarmBagEmpty] = s.Bags[g.Bag].Fluid.VolumeML() <= 0
	}
	on[AlarmNoPower] = !b.Power
	on[AlarmReservoirFull] = v+r.Clot.VolumeML() >= float64(nearFull*c.Faults.ReservoirML)
	on[AlarmNoVacuum] = inUse && s.Team.VacuumMmHg > 0 && s.VacuumMmHg(c) <= 0 && !on[AlarmReservoirFull]
	on[AlarmNoDrip] = inUse && s.Conduct.UndrippedML > undrippedSeenML
	on[AlarmNoFlow] = p.NoFlow
	on[AlarmReservoirEmpty] = p.Mode == PumpFill && v < 20
	on[AlarmWashEmpty] = p.Mode == PumpWash && s.washLeftML() < 50
	on[AlarmWasteFull] = s.Waste.Bag.VolumeML() > c.Faults.WasteCapacityML-wasteWarnML
	if bag := s.productBag(); bag != nil {
		on[AlarmBagFull] = bag.Fluid.VolumeML()+bag.AirML > float64(nearFull*c.Faults.BagCapacityML)
	}
	on[AlarmClot] = clot > clotSeenML
	on[AlarmFieldHidden] = s.Field.Pool.VolumeML() >= poolHidesML-1
	on[AlarmLeak] = s.Bowl.LeakMLMin > 0 && s.Bowl.Spinning
	on[AlarmInterface] = (p.Mode == PumpFill || p.Mode == PumpTopUp) && s.Bowl.Detector.Mean() > detectorStop
	on[AlarmLayered] = v > 200 && r.ClearML > float64(layeredShare*v)
	for i := range s.Bags[:s.BagsUsed] {
		bag := &s.Bags[i]
		if bag.Fluid.VolumeML() > 0 && !bag.Discarded && s.Tick > bag.FirstTick+c.Faults.ExpiryTicks-Ticks(expirySoonS) {
			on[AlarmExpiring] = true
		}
	}
	for a := Alarm(0); a < AlarmCount; a++ {
		if on[a] == s.Alarms.On[a] {
			continue
		}
		s.Alarms.On[a] = on[a]
		kind := Calmed
		if on[a] {
			kind, s.Alarms.Since[a] = Alarmed, s.Tick
		}
		h.add(Occurrence{Tick: s.Tick, Kind: kind, Who: Bench, Key: a.String(), Line: -1, Value: float64(a)})
	}
}

// washLeftML is what the packs on open wash lines still hold.
func (s *State) washLeftML() float64 {
	sum := 0.0
	for _, k := range [...][2]Part{{WashHookA, WashClampA}, {WashHookB, WashClampB}} {
		if i := s.Bench.HookPack[k[0]]; i >= 0 && s.Bench.Open[k[1]] {
			sum += s.Bench.Packs[i].Fluid.VolumeML()
		}
	}
	return sum
}
