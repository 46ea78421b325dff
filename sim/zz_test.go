package sim

import "testing"

func TestZZ(t *testing.T) {
	for _, stop := range []float64{1400, 1500, 1600, 1700, 1800, 2000} {
		for _, m := range []manner{{matched: true, pool: true, mixed: true, stopDripAtS: stop}, {matched: false, pool: true, mixed: true, stopDripAtS: stop}, {matched: true, stopDripAtS: stop}} {
			o := playAdult(t, m)
			s := o.s
			t.Logf("stop %v %v recovery %.3f bowls %d fclot %.1f rclot %.1f res %.0f hct %.2f hep %.2f A %.2f Af %.2f suck %.0f pool %.0f drapes %.0f", stop, m.matched, o.recovery, o.bowls, s.Filter.Clot.VolumeML(), s.Reservoir.Clot.VolumeML(), s.Reservoir.Blood.VolumeML(), s.Reservoir.Blood.Hct(), s.Reservoir.Blood.PerML(Heparin), s.Reservoir.Activation, s.Filter.Activation, s.Field.SuckedML, s.Field.Pool.VolumeML(), s.Field.Drapes.VolumeML())
		}
	}
}
