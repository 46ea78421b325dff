package study

import (
	"testing"

	"rouleau/scenarios"
	"rouleau/scoring/operators"
	"rouleau/sim"
)

// A small sample of the rules that the table in scenarios shows over 200 seeds: see rules.go.
func TestLibraryKeepsTheRules(t *testing.T) {
	who := library(t)
	judged := 0
	for _, name := range scenarios.Library() {
		sc, err := scenarios.Open(name)
		if err != nil {
			t.Fatal(err)
		}
		if sc.Lesson() {
			continue
		}
		judged++
		plan := Plan{Scenario: sc, Operators: who, Seeds: []uint64{11, 12}}
		table, err := plan.Run()
		if err != nil {
			t.Fatal(err)
		}
		f := Of(sc, who, table)
		if sc.Right.RightDecision() == sim.SetUpToProcess && (f.Recovery.Without == nil || f.Recovery.Steady.Value > 1) {
			t.Errorf("%s: %+v", name, f.Recovery)
		}
		for _, broken := range f.Broken() {
			t.Errorf("%s: %s", name, broken)
		}
	}
	if judged == 0 {
		t.Error("no case was looked at")
	}
}

func library(t *testing.T) []*operators.Operator {
	t.Helper()
	var who []*operators.Operator
	for _, name := range operators.Library() {
		o, err := operators.Open(name)
		if err != nil {
			t.Fatal(err)
		}
		who = append(who, o)
	}
	o, err := operators.Unrinsed()
	if err != nil {
		t.Fatal(err)
	}
	return append(who, o)
}
