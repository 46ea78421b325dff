package says

import (
	"strings"
	"testing"

	"rouleau/scenarios"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// All that happens in cases that go wrong in every way can be said, and nothing is said with a gap in it.
func TestEverythingHasWords(t *testing.T) {
	kinds, acts := map[sim.OccurrenceKind]int{}, map[sim.Verb]int{}
	for _, k := range [][2]string{{"one-trouble-after-another", "inattentive"}, {"steady-oozing-spine", "overcautious"}, {"circuit-stays-connected", "hasty"},
		{"heparin-pump-and-protamine", "steady"}, {"salvage-declined", "steady"}} {
		sc, err := scenarios.Open(k[0])
		if err != nil {
			t.Fatal(err)
		}
		o, err := operators.Open(k[1])
		if err != nil {
			t.Fatal(err)
		}
		run := play.New(sc.Case(4, false), 4)
		run.ToEnd(o.Play(operators.SheetOf(sc, &run.Case)))
		run.State.Ended = false
		run.Do(sim.Action{Do: sim.Prime, Value: 200}) // which is refused, now that the bench is down
		for i := range run.Log {
			o := &run.Log[i]
			kinds[o.Kind]++
			if o.Kind == sim.Done {
				acts[o.Act.Do]++
			}
			text := Occurrence(o, sc.Lines)
			if strings.TrimSpace(text) == "" || strings.Contains(text, "‹") || strings.Contains(text, "%!") {
				t.Errorf("%s by %s: %+v is said as %q", k[0], k[1], o, text)
			}
			if o.Kind == sim.Said && o.Line >= 0 && text != sc.Lines[o.Line] {
				t.Errorf("%s: line %d is said as %q", k[0], o.Line, text)
			}
		}
	}
	for _, kind := range []sim.OccurrenceKind{sim.Said, sim.Came, sim.Done, sim.Refused, sim.Alarmed, sim.Calmed} {
		if kinds[kind] == 0 {
			t.Errorf("nothing of kind %d happened, so that this test says nothing of it", kind)
		}
	}
	if len(acts) < 35 {
		t.Errorf("only %d different acts were done", len(acts))
	}
}

// An act is said with what it is about, in the digits of the screens.
func TestActsNameTheirObject(t *testing.T) {
	for want, a := range map[string]sim.Action{
		"drip 89.3 drops/min":                               {Do: sim.SetDrip, Value: 89.3333},
		"connected to the patient: bag 1, without a filter": {Do: sim.Hook, On: sim.Bag(0)},
		"sucker to reservoir":                               {Do: sim.Route, Value: float64(sim.ToReservoir)},
	} {
		if got := Act(&a); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
