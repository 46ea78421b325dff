package forks

import (
	"context"
	"fmt"
	"reflect"
	"strings"
	"testing"
	"time"

	"rouleau/scenarios"
	"rouleau/scoring/attempt"
	"rouleau/scoring/debrief"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

func made(t testing.TB, name, operator string) *debrief.Debrief {
	t.Helper()
	sc, err := scenarios.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	who, err := operators.Open(operator)
	if err != nil {
		t.Fatal(err)
	}
	run := play.New(sc.Case(3, false), 3)
	run.ToEnd(who.Play(operators.SheetOf(sc, &run.Case)))
	return debrief.New(debrief.OfRun(sc, run, false))
}

// Which processor plays which decision changes nothing, and every step is told once, up to the end.
func TestWorkersChangeNothing(t *testing.T) {
	d := made(t, "steady-oozing-spine", "hasty")
	var all [2][]debrief.Cost
	for i, workers := range []int{1, 3} {
		last, whole := 0, 0
		var err error
		all[i], err = Costs(context.Background(), d, Plan{Draws: 1, Workers: workers, Progress: func(done, of int) {
			if done != last+1 || of < done {
				t.Errorf("%d of %d is told after %d", done, of, last)
			}
			last, whole = done, of
		}})
		if err != nil || last != whole || len(all[i]) < 10 {
			t.Fatalf("%d of %d were played, %v", last, whole, err)
		}
	}
	varied := 0
	for i := range all[0] {
		a, b := &all[0][i], &all[1][i]
		if a.Decision.Title != b.Decision.Title || a.Gain != b.Gain || a.Spread != b.Spread || !reflect.DeepEqual(a.With, b.With) {
			t.Errorf("place %d: %q with 1 worker, %q with 3", i, a.Decision.Title, b.Decision.Title)
		}
		if i > 0 && a.Gain > all[0][i-1].Gain {
			t.Errorf("place %d gains more than the one before it", i)
		}
		varied += a.Spread.Drawn
	}
	if varied != mostVaried {
		t.Errorf("%d decisions were played in the other drawing, want %d", varied, mostVaried)
	}
}

// Begin gives what playing the attempt and the good run one after the other gives.
func TestBeginIsTheSameAsOneAfterTheOther(t *testing.T) {
	made := made(t, "first-bowl", "hasty")
	a := attempt.Of(made.Record.Scenario, made.Record.Run, made.Own.Grade, attempt.By{Mode: attempt.Practice})
	rec, err := debrief.Of(a)
	if err != nil {
		t.Fatal(err)
	}
	want, d := debrief.New(rec), (*debrief.Debrief)(nil)
	if d, err = Begin(a); err != nil {
		t.Fatal(err)
	}
	if d.Record.Run.State.Hash() != want.Record.Run.State.Hash() || d.Good.Run.State.Hash() != want.Good.Run.State.Hash() || !reflect.DeepEqual(d.GoodOwn, want.GoodOwn) {
		t.Error("the runs differ")
	}
	if len(d.Decisions) != len(want.Decisions) || len(d.Decisions) == 0 {
		t.Errorf("%d decisions, want %d", len(d.Decisions), len(want.Decisions))
	}
	a.Model = "0"
	if _, err := Begin(a); err == nil {
		t.Error("an attempt of another model is played")
	}
}

func TestBrokenOff(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	n := 0
	_, err := Costs(ctx, made(t, "steady-oozing-spine", "hasty"), Plan{Draws: 3, Workers: 2, Progress: func(int, int) {
		if n++; n == 3 {
			stop()
		}
	}})
	if err == nil || n > 6 {
		t.Errorf("%d were played after all, %v", n, err)
	}
}

// What a worker cannot bear is thrown where the work was asked for, where it becomes a message.
func TestTroubleOfAWorkerIsThrownOn(t *testing.T) {
	defer func() {
		if trouble := recover(); trouble == nil || !strings.Contains(fmt.Sprint(trouble), "cannot be borne") {
			t.Errorf("thrown was %v", trouble)
		}
	}()
	w := work{ctx: context.Background(), plan: Plan{Workers: 2}}
	w.run(5, func(i int) {
		if i == 3 {
			panic("cannot be borne")
		}
	})
}

// BenchmarkDebrief plays the debrief of an attempt of a whole case without other drawings, from playing the attempt again to the
// order of the costs; it tells how many forks, of how many minutes, and what it would take with 40 of them.
func BenchmarkDebrief(b *testing.B) {
	for _, name := range []string{"steady-oozing-spine", "one-trouble-after-another"} {
		b.Run(name, func(b *testing.B) {
			d := made(b, name, "hasty")
			a := attempt.Of(d.Record.Scenario, d.Record.Run, d.Own.Grade, attempt.By{Mode: attempt.Practice})
			forks := time.Duration(0)
			for b.Loop() {
				d, err := Begin(a)
				if err != nil {
					b.Fatal(err)
				}
				began := time.Now()
				if _, err := Costs(context.Background(), d, Plan{}); err != nil {
					b.Fatal(err)
				}
				forks += time.Since(began)
			}
			n := float64(len(d.Decisions))
			once := (b.Elapsed() - forks).Seconds() / float64(b.N)
			b.ReportMetric(n, "forks")
			b.ReportMetric(float64(d.Record.Run.State.Tick)/sim.TicksPerSecond/60, "minutes")
			b.ReportMetric(once+forks.Seconds()/float64(b.N)*40/n, "s/40-forks")
		})
	}
}
