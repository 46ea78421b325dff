// Package trace writes the trace of a run for other programs: CSV, a row a second, truth included.
package trace

import (
	"encoding/csv"
	"io"
	"strconv"

	"rouleau/scenarios/yamlread"
	"rouleau/scoring/cells"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// column is a column with the unit in its name.
type column struct {
	name string
	of   func(t *play.Sample) string
}

// number is a column of numbers.
func number(name string, of func(t *play.Sample) float64) column {
	return column{name, func(t *play.Sample) string { return cells.Number(of(t)) }}
}

// columns are all there are, in their order. What has no unit is a share from 0 to 1, a count, or yes and no as 1 and 0.
var columns = []column{
	number("time_s", func(t *play.Sample) float64 { return sim.Seconds(t.Tick) }),
	{"clock", func(t *play.Sample) string { return cells.Text(clock(t.Tick)) }},
	number("bleed_ml_min", func(t *play.Sample) float64 { return t.BleedMLMin }),
	number("pool_ml", func(t *play.Sample) float64 { return t.PoolML }),
	number("suck_ml_min", func(t *play.Sample) float64 { return t.SuckMLMin }),
	number("sucked_ml", func(t *play.Sample) float64 { return t.SuckedML }),
	number("sucked_blood_ml", func(t *play.Sample) float64 { return t.SuckedBloodML }),
	{"to_reservoir", func(t *play.Sample) string { return yes(t.ToReservoir) }},
	number("vacuum_mmhg", func(t *play.Sample) float64 { return t.VacuumMmHg }),
	number("drip_drops_min", func(t *play.Sample) float64 { return t.DropsMin }),
	number("drip_ml", func(t *play.Sample) float64 { return t.DripML }),
	number("primed_ml", func(t *play.Sample) float64 { return t.PrimedML }),
	number("reservoir_ml", func(t *play.Sample) float64 { return t.ReservoirML }),
	number("reservoir_hct", func(t *play.Sample) float64 { return t.ReservoirHct }),
	number("clear_layer_ml", func(t *play.Sample) float64 { return t.ClearML }),
	number("filter_clot_ml", func(t *play.Sample) float64 { return t.FilterClotML }),
	number("reservoir_clot_ml", func(t *play.Sample) float64 { return t.ReservoirClotML }),
	number("filter_activation", func(t *play.Sample) float64 { return t.FilterActivation }),
	number("fill_fraction", func(t *play.Sample) float64 { return t.FillFraction }),
	number("detector_fraction", func(t *play.Sample) float64 { return t.Detector }),
	{"pump_mode", func(t *play.Sample) string { return cells.Text(pump(t.PumpMode)) }},
	number("pump_flow_ml_min", func(t *play.Sample) float64 { return t.FlowMLMin }),
	number("product_ml", func(t *play.Sample) float64 { return t.ProductML }),
	number("waste_ml", func(t *play.Sample) float64 { return t.WasteML }),
	number("given_ml", func(t *play.Sample) float64 { return t.GivenML }),
	number("give_ml_min", func(t *play.Sample) float64 { return t.GiveMLMin }),
	number("patient_hb_g_dl", func(t *play.Sample) float64 { return t.HbGDL }),
	number("patient_hct", func(t *play.Sample) float64 { return t.Hct }),
	number("blood_volume_ml", func(t *play.Sample) float64 { return t.BloodVolumeML }),
	number("shed_ml", func(t *play.Sample) float64 { return t.ShedML }),
	number("heart_rate_per_min", func(t *play.Sample) float64 { return t.HeartRate }),
	number("pressure_mmhg", func(t *play.Sample) float64 { return t.PressureMmHg }),
	{"donor_units", func(t *play.Sample) string { return strconv.Itoa(t.DonorUnits) }},
	number("lysed_ml", func(t *play.Sample) float64 { return t.LysedML }),
}

// clock is the time of the case as people read it.
func clock(tick int64) string {
	return yamlread.Clock{Seconds: int(tick / sim.TicksPerSecond)}.String()
}

func yes(is bool) string {
	if is {
		return "1"
	}
	return "0"
}

// modes are the words for what the pump does.
var modes = [...]string{sim.PumpIdle: "idle", sim.PumpFill: "fill", sim.PumpWash: "wash", sim.PumpEmpty: "empty",
	sim.PumpDrawBack: "draw_back", sim.PumpSendBack: "send_back", sim.PumpTopUp: "top_up"}

func pump(mode sim.PumpMode) string {
	if int(mode) < len(modes) {
		return modes[mode]
	}
	return strconv.Itoa(int(mode))
}

// Write writes the trace of a run.
func Write(w io.Writer, run *play.Run) error {
	out := csv.NewWriter(w)
	line := make([]string, len(columns))
	for i := range columns {
		line[i] = columns[i].name
	}
	out.Write(line)
	for k := range run.Trace {
		for i := range columns {
			line[i] = columns[i].of(&run.Trace[k])
		}
		out.Write(line)
	}
	out.Flush()
	return out.Error()
}
