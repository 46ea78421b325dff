package sim
import "testing"
func dump(t testing.TB, b *bench) {
	s:=&b.s
	t.Logf("%.0f s mode %d noflow %v spin %v bowl cells %.2f clear %.2f bed %.2f air %.1f | res %.1f hct %.3f clot %.1f fclot %.1f toninc %.0f clear %.1f | pool %.1f hct %.3f waste %.1f floor %.1f bag0 %.1f lysed %.1f shed %.0f suck %.1f vac %.0f limit %.0f", Seconds(s.Tick), s.Pump.Mode, s.Pump.NoFlow, s.Bowl.Spinning, s.Bowl.CellsML, s.Bowl.Clear.ML, s.Bowl.BedML(), s.Bowl.AirML,
	 s.Reservoir.Blood.VolumeML(), s.Reservoir.Blood.Hct(), s.Reservoir.Clot.VolumeML(), s.Filter.Clot.VolumeML(), s.Reservoir.Blood.PerL(Tonicity), s.Reservoir.ClearML,
	 s.Field.Pool.VolumeML(), s.Field.Pool.Hct(), s.Waste.Bag.VolumeML(), s.Field.Floor.VolumeML(), s.Bags[0].Fluid.VolumeML(), s.Stores.LysedML, s.Patient.ShedML, s.Field.SuckRateMLMin, s.VacuumMmHg(&b.c), s.outletLimit())
}
