// Package forks plays the decisions of a debrief on several processors at once, for the command line and for the window. Which
// processor plays which changes nothing: a fork hangs on its decision alone, and all of them are put in order afterwards.
package forks

import (
	"context"
	"fmt"
	"runtime"
	"sync"
	"sync/atomic"

	"rouleau/scoring/attempt"
	"rouleau/scoring/debrief"
)

// What is varied: the decisions that matter most, as long as they are worth it. Of these every one is played in each other
// drawing, which takes longer than a fork, because it begins at the start of the case.
const (
	mostVaried  = 5
	worthPoints = 0.5
)

// Plan says how the decisions are played.
type Plan struct {
	Draws    int                 // other drawings of the case in which the costliest decisions are played too; 0 for none
	Workers  int                 // at once; 0 for as many as there are processors
	Progress func(done, all int) // called after each; nil for nobody
}

// Begin plays an attempt again and, at the same time, the good run of its case.
func Begin(a *attempt.Attempt) (*debrief.Debrief, error) {
	var rec, good *debrief.Record
	var trouble, none error
	both := work{ctx: context.Background(), plan: Plan{Workers: 2}}
	both.run(2, func(i int) {
		if i == 0 {
			rec, trouble = debrief.Of(a)
		} else {
			good, none = debrief.GoodOf(a)
		}
	})
	switch {
	case trouble != nil:
		return nil, trouble
	case none != nil:
		return nil, none
	}
	return debrief.Against(rec, good), nil
}

// Costs plays every decision of a debrief and gives what each cost, in order. It ends early, without a result, when the context does.
func Costs(ctx context.Context, d *debrief.Debrief, plan Plan) ([]debrief.Cost, error) {
	if plan.Workers <= 0 {
		plan.Workers = runtime.GOMAXPROCS(0)
	}
	n := len(d.Decisions)
	costs, others := make([]debrief.Cost, n), make([]*debrief.Other, plan.Draws)
	w := &work{ctx: ctx, plan: plan, all: n + plan.Draws + min(mostVaried, n)*plan.Draws}
	// the latest begin last: what is short fills the gaps at the end
	w.run(plan.Draws+n, func(i int) {
		if i < plan.Draws {
			others[i] = d.Other(i + 1)
			return
		}
		costs[i-plan.Draws] = d.Play(i - plan.Draws)
	})
	varied := debrief.Leading(costs, mostVaried, worthPoints)
	gains := make([][]float64, len(varied))
	for i := range gains {
		gains[i] = make([]float64, plan.Draws)
	}
	w.all = n + plan.Draws + len(varied)*plan.Draws
	w.run(len(varied)*plan.Draws, func(i int) {
		gains[i/plan.Draws][i%plan.Draws] = d.Again(varied[i/plan.Draws], others[i%plan.Draws])
	})
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	for i, k := range varied {
		costs[k].Spread = debrief.SpreadOf(costs[k].Points, gains[i])
	}
	debrief.Rank(costs)
	return costs, nil
}

// work counts what has been played.
type work struct {
	ctx  context.Context
	plan Plan
	lock sync.Mutex
	done int
	all  int
}

// run does n things, as many at once as there are workers. What one of them cannot bear is thrown where run was called, as if it had
// been done there.
func (w *work) run(n int, do func(i int)) {
	next := make(chan int)
	var group sync.WaitGroup
	var trouble atomic.Value
	for range min(w.plan.Workers, n) {
		group.Go(func() {
			for i := range next {
				if w.ctx.Err() != nil || trouble.Load() != nil {
					continue
				}
				func() {
					defer func() {
						if t := recover(); t != nil {
							trouble.CompareAndSwap(nil, fmt.Sprint(t))
						}
					}()
					do(i)
					w.tell()
				}()
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	group.Wait()
	if t := trouble.Load(); t != nil {
		panic(t)
	}
}

func (w *work) tell() {
	w.lock.Lock()
	defer w.lock.Unlock()
	w.done++
	if w.plan.Progress != nil {
		w.plan.Progress(w.done, w.all)
	}
}
