package ledger

import (
	"flag"
	"runtime"
	"sync"
	"testing"
	"time"

	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
	"rouleau/scoring/book"
	"rouleau/scoring/book/booktest"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
)

// How long verifying a book of many records takes.

var records = flag.Int("records", 4, "sign-offs of a whole case in the book that is verified")

const (
	wholeCase = "steady-oozing-spine" // some 95 simulated minutes
	wholeMany = 1000                  // of which it must take
	wholeTime = 3 * time.Minute       // at most, on two processors
)

// wholeAttempts are attempts of steady at a whole case, each with a seed of its own, so that no yardstick serves two.
func wholeAttempts(t *testing.T, n int) [][]byte {
	t.Helper()
	sc, err := scenarios.Open(wholeCase)
	if err != nil {
		t.Fatal(err)
	}
	all := make([][]byte, n)
	seeds := make(chan int)
	var group sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		group.Go(func() {
			for i := range seeds {
				seed := uint64(1000 + i)
				run := play.New(sc.Case(seed, true), seed)
				run.ToEnd(operators.NewSteady(operators.SheetOf(sc, &run.Case)))
				grade := scoring.Judge(sc, run, scoring.YardstickOf(run)) // steady measured by itself
				all[i] = attempt.Of(sc, run, grade, attempt.By{Operator: booktest.Trainee, When: time.Date(2031, 5, 13, 8, 0, 0, 0, time.UTC), Mode: attempt.Assessment}).Encode()
			}
		})
	}
	for i := range n {
		seeds <- i
	}
	close(seeds)
	group.Wait()
	return all
}

func TestVerifyingManyRecords(t *testing.T) {
	b := opened(t)
	for _, data := range wholeAttempts(t, *records) {
		s := booktest.SignOff(t, data, booktest.Trainee, booktest.First)
		b.must(t, s, data, booktest.First)
	}
	b.Close()
	runtime.GC()
	var memory runtime.MemStats
	most := uint64(0)
	began, worked := time.Now(), processorTime()
	v, err := Verify(t.Context(), b.Places, Verification{Progress: func(int, int, time.Time) {
		runtime.ReadMemStats(&memory)
		most = max(most, memory.HeapAlloc)
	}})
	took, work := time.Since(began), processorTime()-worked
	if err != nil || v.Worst() != book.Exact || v.Count(book.Exact) != *records {
		t.Fatal(v, err)
	}
	t.Logf("%d records verified in %v on %d processors, %v of a processor each; %d MB of memory at most", *records, took.Round(time.Millisecond), runtime.GOMAXPROCS(0),
		(work / time.Duration(*records)).Round(time.Millisecond), most>>20)
	if *records >= wholeMany && took > wholeTime*time.Duration(*records)/wholeMany {
		t.Errorf("%d records must take %v at most", wholeMany, wholeTime)
	}
}
