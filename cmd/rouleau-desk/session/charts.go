// What the charts show of a case: once a second a value of each signal, and as it happens the marks and stretches of time.

package session

import (
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

// marked are the acts that stand as marks on the charts.
var marked = map[sim.Verb]string{sim.Fill: "mark.fill", sim.Wash: "mark.wash", sim.Empty: "mark.empty", sim.Mix: "mark.mix", sim.Prime: "mark.prime",
	sim.GiveRate: "mark.give", sim.Route: "mark.route", sim.SetDrip: "mark.drip", sim.Hook: "mark.hook", sim.EstimateLoss: "mark.estimate",
	sim.Sample: "mark.sample", sim.SetVacuum: "mark.vacuum", sim.ReplaceSet: "mark.replace", sim.StopAll: "mark.stop"}

const (
	sameMarkS = 30   // a value turned in steps within it is one mark
	mostMarks = 4000 // a case of a day has a few hundred
)

// mark puts what happened on the charts. The line has it in words.
func (s *Session) mark(o *sim.Occurrence, l *bench.Line) {
	m := bench.Mark{S: sim.Seconds(o.Tick), Words: l.Text}
	switch o.Kind {
	case sim.Done:
		if marked[o.Act.Do] == "" {
			return
		}
		m.Text = words.Say(marked[o.Act.Do])
	case sim.Alarmed:
		m.Kind, m.Text, m.Words = ui.MarkAlarm, words.Say("alarm."+o.Key), ""
	case sim.Said:
		m.Kind = ui.MarkSaid
	default:
		return
	}
	all := s.charts.Marks
	if n := len(all); n > 0 && m.Kind == ui.MarkAct && all[n-1].Text == m.Text && m.S-all[n-1].S < sameMarkS {
		all[n-1] = m
		return
	}
	if len(all) < mostMarks {
		s.charts.Marks = append(all, m)
	}
}

// sample adds one second to the charts.
func (s *Session) sample() {
	seen := &s.seen
	sim.View(&s.Run.Case, &s.Run.State, seen)
	k := second{atS: sim.Seconds(seen.Tick), phase: seen.PhaseName, pump: pumpWord(seen), fill: pumpFill(seen)}
	if seen.Giving.FlowMLMin > 0 {
		k.given = words.Say("chart.given")
	}
	s.seenSignals(&k.values, seen)
	s.trueSignals(&k.values)
	if s.View.Watching {
		s.filmSecond(&k)
	}
	s.chart(&k)
}

// chart puts one second on the charts.
func (s *Session) chart(k *second) {
	s.charts.Add(&k.values, !s.options.Assessment)
	if s.options.Assessment {
		s.whole.Add(&k.values, true)
	}
	h := &s.charts
	h.Phases = bench.Extend(h.Phases, k.atS, k.phase, ui.BandPlain)
	h.Pump = bench.Extend(h.Pump, k.atS, k.pump, k.fill)
	h.Given = bench.Extend(h.Given, k.atS, k.given, ui.BandPlain)
}

// reveal shows, after the end, what an assessment kept back.
func (s *Session) reveal() {
	if !s.options.Assessment {
		return
	}
	for i := bench.FirstTruth; i < bench.SignalCount; i++ {
		s.charts.Tracks[i] = s.whole.Tracks[i]
	}
}

func pumpWord(seen *sim.Seen) string {
	switch seen.Pump.Mode {
	case sim.PumpFill:
		return words.Say("chart.fill")
	case sim.PumpWash:
		return words.Say("chart.wash")
	case sim.PumpEmpty:
		return words.Say("chart.empty")
	case sim.PumpDrawBack, sim.PumpSendBack, sim.PumpTopUp:
		return words.Say("chart.back")
	}
	return ""
}

func pumpFill(seen *sim.Seen) ui.BandFill {
	switch seen.Pump.Mode {
	case sim.PumpFill:
		return ui.BandDark
	case sim.PumpWash:
		return ui.BandHatch
	}
	return ui.BandPlain
}

// seenSignals are what a person at the bench could read.
func (s *Session) seenSignals(v *[bench.SignalCount]float64, seen *sim.Seen) {
	v[bench.SignalReservoir], v[bench.SignalClear], v[bench.SignalClot] = seen.ReservoirML, seen.ClearML, seen.ClotML
	v[bench.SignalDripPer100], v[bench.SignalDrops] = s.trail.Add(seen), seen.DropsMin
	v[bench.SignalVacuum], v[bench.SignalPool], v[bench.SignalBleeding] = seen.VacuumMmHg, seen.PoolML, seen.BriskMLMin
	v[bench.SignalDetector] = orGap(seen.Pump.Detector, seen.Pump.Detector > 0) // it reads only while the bowl spins
	v[bench.SignalEffluent] = orGap(seen.Pump.EffluentRed, seen.Pump.EffluentMLMin > 0)
	v[bench.SignalWash], v[bench.SignalFlow], v[bench.SignalHeld] = seen.Pump.WashedML, seen.Pump.FlowMLMin, seen.Pump.HeldML
	v[bench.SignalGiven], v[bench.SignalWaste], v[bench.SignalDonor] = seen.Giving.GivenML, seen.WasteML, float64(seen.DonorUnits)
	for i := range seen.Bags[:seen.BagsUsed] {
		v[bench.SignalProduct] += seen.Bags[i].ML
	}
	for i, p := range s.View.Packs {
		switch {
		case p.Solution.FitToWash():
			v[bench.SignalSaline] += seen.Bench.PackLeftML[i]
		case p.Solution == seen.Bench.Anticoagulant:
			v[bench.SignalAnticoagulant] += seen.Bench.PackLeftML[i]
		}
	}
	v[bench.SignalHb] = orGap(seen.Gas.HbGDL, seen.Gas.Tick >= 0 && seen.Gas.HbGDL > 0)
	v[bench.SignalHeartRate], v[bench.SignalPressure] = seen.HeartRate, seen.PressureMmHg
	v[bench.SignalLoss] = orGap(seen.EstimateML, seen.EstimateML >= 0)
}

// trueSignals are what nobody there could know.
func (s *Session) trueSignals(v *[bench.SignalCount]float64) {
	st := &s.Run.State
	v[bench.TrueBleeding], v[bench.TrueShed], v[bench.TrueHb] = st.Field.BleedMLMin, st.Patient.ShedML, st.Patient.Blood.HbGPerDL()
	v[bench.TrueBed] = orGap(st.Bowl.FillFraction(), st.Bowl.ContentsML() > 0)
	held := st.Reservoir.Blood.VolumeML() > 0
	v[bench.TrueReservoirHct] = orGap(st.Reservoir.Blood.Hct(), held)
	v[bench.TrueFreeHb] = orGap(st.Reservoir.Blood.PerL(sim.FreeHb), held)
	v[bench.TrueClotting] = st.Filter.Activation
}

// orGap is a value where there is one.
func orGap(v float64, is bool) float64 {
	if is {
		return v
	}
	return math.NaN()
}
