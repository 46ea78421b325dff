// The debrief of a case that has ended: the case is played otherwise beside the window, on what processors it leaves free, and
// what comes of it is put into the view between two frames. It begins when the page asks for it and is broken off when the page
// is left.

package session

import (
	"context"
	"errors"
	"runtime"
	"sync/atomic"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/forks"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/scoring/debrief"
)

// otherwise is a debrief on its way. Its goroutines write to the channels and the counts alone.
type otherwise struct {
	ctx    context.Context
	stop   context.CancelFunc
	record func() (*debrief.Record, error)
	shown  shownGrade
	draws  int
	heed   string // what has to be known first, "" for nothing

	done, all, first atomic.Int64  // plays; first are those that are not of other drawings
	told             chan findings // holds one
	courses          chan pair     // holds one

	found  findings
	wanted int // row of the told whose courses are asked for, -1 for none
	busy   bool
}

// findings are what came of it.
type findings struct {
	debrief *debrief.Debrief
	said    *debrief.Told
	told    *bench.Told // the same in the terms of the page
	err     error
}

// pair is both courses of one row.
type pair struct {
	row     int
	courses *bench.Courses
}

// openDebrief begins to play. Nothing of it is shown before the verdict is.
func (s *Session) openDebrief() {
	v := &s.View
	if v.Screen != bench.Graded || v.Result.Self.Asked || v.Debrief.Step != bench.DebriefShut {
		return
	}
	sc, run, assessment := s.scenario, s.Run, s.options.Assessment
	o := &otherwise{draws: s.options.Draws, shown: shownGrade{v.Result.Total, v.Result.Pass}, told: make(chan findings, 1), courses: make(chan pair, 1), wanted: -1}
	o.record = func() (*debrief.Record, error) { return debrief.OfRun(sc, run, assessment), nil }
	if w := s.options.Watch; w != nil && w.Record != nil {
		o.record, o.heed = w.Record, w.Heed
	}
	o.ctx, o.stop = context.WithCancel(context.Background())
	s.otherwise, v.Debrief = o, bench.Debrief{Step: bench.DebriefPlaying}
	go func() { o.told <- o.play() }()
}

// play does all that takes long.
func (o *otherwise) play() (p findings) {
	defer func() {
		if trouble := recover(); trouble != nil { // the case and its grade stand: only its debrief is missing
			p = findings{err: errors.New(words.Say("debrief.our_fault", trouble))}
		}
	}()
	rec, err := o.record()
	if err != nil {
		return findings{err: err}
	}
	p.debrief = debrief.New(rec)
	plan := forks.Plan{Draws: o.draws, Workers: max(1, runtime.GOMAXPROCS(0)-1), Progress: o.progress} // one is left to the window
	costs, err := forks.Costs(o.ctx, p.debrief, plan)
	if err != nil {
		return findings{err: err}
	}
	p.said = debrief.Tell(p.debrief, costs)
	t := teller{d: p.debrief, told: p.said, shown: o.shown}
	p.told = t.tell()
	if o.heed != "" {
		p.told.Heed = append([]string{o.heed}, p.told.Heed...)
	}
	return p
}

// breath is how long play stands still after each fork where it shares its one processor with the window.
const breath = 8 * time.Millisecond

func (o *otherwise) progress(done, all int) {
	o.first.CompareAndSwap(0, int64(all))
	o.done.Store(int64(done))
	o.all.Store(int64(all))
	if runtime.GOOS == "js" {
		time.Sleep(breath)
	}
}

// lookAtDebrief takes over what has come since the last frame.
func (s *Session) lookAtDebrief() {
	o := s.otherwise
	if o == nil {
		return
	}
	v := &s.View.Debrief
	select {
	case o.found = <-o.told:
		o.stop()
		*v = bench.Debrief{Step: bench.DebriefTold, Told: o.found.told}
		if d := o.found.debrief; o.found.err == nil { // which has found some
			found := ResultOf(&d.Own.Grade)
			placed(&s.View.Result, &found)
		}
		if err := o.found.err; err != nil {
			*v = bench.Debrief{Step: bench.DebriefNone, Why: err.Error()}
		}
	case c := <-o.courses:
		v.Told.Costs[c.row].Courses, o.busy = c.courses, false
	default:
	}
	if v.Step == bench.DebriefPlaying {
		first := int(o.first.Load())
		v.Done, v.All = int(o.done.Load()), int(o.all.Load())
		if v.Drawings = v.All > first; v.Drawings {
			v.Done, v.All = v.Done-first, v.All-first
		}
	}
	o.begin(v.Told)
}

// showCourses asks for the courses of a row. Only the newest wish counts.
func (s *Session) showCourses(row int) {
	if o, t := s.otherwise, s.View.Debrief.Told; o != nil && t != nil && row >= 0 && row < len(t.Costs) {
		o.wanted = row
		o.begin(t)
	}
}

// begin plays the course that is wanted, unless one is being played.
func (o *otherwise) begin(t *bench.Told) {
	row := o.wanted
	if o.busy || row < 0 {
		return
	}
	o.wanted = -1
	place := t.Costs[row].Place
	if place < 0 || t.Costs[row].Courses != nil {
		return
	}
	o.busy = true
	d := o.found.debrief
	go func() { o.courses <- pair{row, decisionCourses(d, place)} }()
}

// closeDebrief breaks off what is being played and forgets all of it.
func (s *Session) closeDebrief() {
	if s.otherwise != nil {
		s.otherwise.stop()
		s.otherwise, s.View.Debrief = nil, bench.Debrief{}
	}
}

// Debriefed is the debrief that has been played, with what it tells; nil while there is none.
func (s *Session) Debriefed() (*debrief.Debrief, *debrief.Told) {
	if o := s.otherwise; o != nil && o.found.told != nil {
		return o.found.debrief, o.found.said
	}
	return nil, nil
}
