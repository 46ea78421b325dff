package sim

import "testing"

func TestQuick(t *testing.T) {
	t.Logf("%+v", TryBowl(BowlTrial{Shape: StandardBowl.Shape(), FeedHct: .18, FeedProtein: 20, FillMLMin: 300, StopFraction: .93, WashMLMin: 300, WashML: 1000}))
	t.Logf("%+v", TryBowl(BowlTrial{Shape: StandardBowl.Shape(), FeedHct: .18, FeedProtein: 20, FillMLMin: 300, StopFraction: .93, WashMLMin: 800, WashML: 1000}))
	t.Logf("%+v", TryBowl(BowlTrial{Shape: StandardBowl.Shape(), FeedHct: .38, FeedProtein: 65, FillMLMin: 300, StopFraction: .93, WashMLMin: 300, WashML: 1000}))
	t.Logf("%+v", TryFilter(FilterTrial{25, .25, 45, 1.6, 15, HeparinSolution, true, 45}))
	t.Logf("%+v", TryReservoir(ReservoirTrial{1500, .18, 25, 1.2, 0, 1.0, 20, 1200, 0, 0, nil}))
	t.Logf("%+v", TryReservoir(ReservoirTrial{900, .2, 40, 9, 0, 1.4, 60, 7200, 0, 0, nil}))
	t.Logf("%+v", TryPatient(PatientTrial{5000, .41, 40, 45, "crystalloid"}))
}
