// This file turns a scenario and a seed into the case that a run plays: every spread is drawn, in the order in which it
// stands here, from a stream of its own that has nothing to do with the chance of the run itself.

package scenarios

import (
	"golang.org/x/exp/rand"

	"rouleau/scenarios/yamlread"
	"rouleau/sim"
	"rouleau/sim/guarded"
)

// apart keeps the stream of the draws away from the stream of the run, which is seeded with the seed itself.
const apart = 0x726f756c65617531

// adultYears is the age from which the blood volume follows height and weight: the table for children ends at 14 years.
const adultYears = 15

// hbPerHct is the haemoglobin in g/dL of blood that were all red cells.
const hbPerHct = 100 * sim.MCHCGPerML

// drawing draws the quantities of one case.
type drawing struct {
	chance rand.PCGSource
	note   func(q yamlread.Quantity, value float64) // called for each, where somebody keeps count
}

func (d *drawing) uniform() float64 { return guarded.Uniform(d.chance.Uint64()) }

func (d *drawing) of(q yamlread.Quantity) float64 {
	value := q.Draw(d.uniform)
	if d.note != nil {
		d.note(q, value)
	}
	return value
}

// maybe draws a quantity that may be left out.
func (d *drawing) maybe(q *yamlread.Quantity) float64 {
	if q == nil {
		return 0
	}
	return d.of(*q)
}

// Case draws the case of a seed. The same scenario and seed give the same bits everywhere.
func (s *Scenario) Case(seed uint64, assessment bool) sim.Case {
	return s.draw(&drawing{}, seed, assessment)
}

func (s *Scenario) draw(d *drawing, seed uint64, assessment bool) sim.Case {
	d.chance.Seed(mixed(seed ^ apart))
	c := sim.Case{
		Patient: d.patient(&s.File),
		Rules: sim.Rules{Assessment: assessment, AutoFill: s.Automatic.StartFilling, AutoStop: s.Automatic.StopFilling,
			AutoWash: s.Automatic.Wash, AutoEmpty: s.Automatic.Empty},
		EndTick:  tickOf(s.Ends),
		LastTick: tickOf(s.Stops),
	}
	for i := range s.Contaminants {
		c.Contaminants = append(c.Contaminants, d.contaminant(&s.Contaminants[i]))
	}
	for i := range s.Phases {
		c.Phases = append(c.Phases, d.phase(&s.Phases[i], s.Contaminants))
	}
	line := 0
	for i := range s.Events {
		e := d.event(&s.Events[i], s.Contaminants)
		if s.Events[i].Says != "" {
			e.Line = line
			line++
		}
		c.Events = append(c.Events, e)
	}
	if s.Right.CliniciansSay != "" {
		line++
		c.TogetherLine = line
	}
	if s.Right.StayUntil != nil {
		c.StayTick = tickOf(*s.Right.StayUntil)
	}
	c.Faults = d.bench(&s.Bench)
	for i := range s.Bench.Packs {
		c.Packs = append(c.Packs, packOf(&s.Bench.Packs[i], s.Day))
	}
	for i := range s.Bench.Before {
		c.Before = append(c.Before, s.Bench.action(&s.Bench.Before[i], s.Day))
	}
	return c
}

// linesOf gives the words of the events that say something, in their order, and what the clinicians answer.
func linesOf(f *File) []string {
	var lines []string
	for i := range f.Events {
		if f.Events[i].Says != "" {
			lines = append(lines, f.Events[i].Says)
		}
	}
	if f.Right.CliniciansSay != "" {
		lines = append(lines, f.Right.CliniciansSay)
	}
	return lines
}

// mixed spreads neighbouring seeds apart, by the finaliser of SplitMix64 (Steele, Lea and Flood 2014, from memory).
func mixed(z uint64) uint64 {
	z += 0x9e3779b97f4a7c15
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

func tickOf(c yamlread.Clock) int64 { return int64(c.Seconds) * sim.TicksPerSecond }

func ticksOfMin(minutes float64) int64 { return sim.Ticks(minutes * 60) }

// bloodVolumeML is the blood volume by age, sex, height and weight.
func bloodVolumeML(sex sim.Sex, years, heightCM, weightKg float64) float64 {
	if years < adultYears {
		return sim.ChildML(sex, years, weightKg)
	}
	return sim.NadlerML(sex, heightCM, weightKg)
}

func (p *Patient) sex() sim.Sex {
	if p.Sex == "female" {
		return sim.Female
	}
	return sim.Male
}

func (d *drawing) patient(f *File) sim.PatientSpec {
	p := &f.Patient
	years, height, weight := d.of(p.AgeYears), d.maybe(p.HeightCM), d.of(p.WeightKg)
	hct := d.maybe(p.Haematocrit)
	hb := d.maybe(p.HaemoglobinGDL)
	if p.Haematocrit == nil {
		hct = hb / hbPerHct
	}
	return sim.PatientSpec{
		BloodVolumeML:    bloodVolumeML(p.sex(), years, height, weight),
		WeightKg:         weight,
		Hct:              hct,
		PlasmaProteinGL:  d.of(p.PlasmaProteinGL),
		PlateletsG9L:     d.of(p.PlateletsE9L),
		FibrinogenGL:     d.of(p.FibrinogenGL),
		ESRMMPerH:        d.of(p.SedimentationMMH),
		CalciumMmolL:     d.of(p.CalciumMmolL),
		PotassiumMmolL:   d.of(p.PotassiumMmolL),
		HeparinIUPerML:   d.of(p.HeparinIUML),
		MaintenanceMLMin: d.of(p.MaintenanceMLMin),
		TransfusionHbGDL: d.of(p.TransfuseBelow),
		PatienceTicks:    ticksOfMin(d.of(p.PatienceMin)),
		ThawTicks:        ticksOfMin(d.of(p.PlasmaThawMin)),
		DonorRefused:     p.DonorRefused,
		HeartRate:        d.of(p.HeartRate),
		MeanPressureMmHg: d.of(p.MeanPressure),
		CircuitAsked:     p.CircuitAsked,
		HeparinForbidden: p.HeparinForbidden,
		SalvageRefused:   p.SalvageRefused,
		RhDNegative:      p.RhDNegative,
	}
}

func (d *drawing) bench(b *Bench) sim.BenchFaults {
	f := sim.BenchFaults{
		NoVacuum:        b.VacuumUnplugged,
		TouchChance:     d.of(b.TouchChance),
		DetectorOffset:  d.of(b.DetectorOffset),
		WasteCapacityML: b.WasteBagML,
		BagCapacityML:   b.ProductBagML,
		ExpiryTicks:     ticksOfMin(b.ProductLifeH * 60),
		LabTicks:        ticksOfMin(d.of(b.LaboratoryMin)),
		StoreTicks:      ticksOfMin(d.of(b.StoreMin)),
		DetectorHaze:    d.of(b.DetectorHaze),
		ReservoirML:     b.ReservoirML,
	}
	for _, name := range b.OpenClamps {
		part, _ := sim.PartNamed(name)
		f.OpenClamps[part] = true
	}
	for _, name := range b.LooseLines {
		part, _ := sim.PartNamed(name)
		f.LooseLines[part] = true
	}
	return f
}

func packOf(p *Pack, day yamlread.Date) sim.PackSpec {
	solution, _ := sim.SolutionNamed(p.Solution)
	on, _ := sim.PartNamed(p.On)
	return sim.PackSpec{Solution: solution, VolumeML: p.VolumeML, Expired: p.Expires.Before(day), Expiry: p.Expires.String(), On: on, InStore: p.InStore}
}
