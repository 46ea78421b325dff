// Package group makes the view of a class for who teaches it: over many attempts of many people, which decisions cost most in
// each case, and whether it gets better. Nobody is named: people are letters of the page's own, and groups so small that a
// person could be told from them have no figures. This file holds what a group is and how it is played.
package group

import (
	"context"
	"errors"
	"runtime"
	"slices"
	"strings"
	"sync"
)

// LeastPeople is how many people a figure is made of at least [A]: of one it is that person's own, and of two either could
// work out the other's.
const LeastPeople = 3

// Below these a figure is called an impression [A].
const (
	firmAttempts = 10
	firmPeople   = 5
)

// Wishes say whose attempts count and how they are played.
type Wishes struct {
	Programs bool                // operators of the library count as people
	Small    bool                // there are figures of fewer than three people too
	Workers  int                 // attempts played at once; 0 for as many as there are processors
	Progress func(done, all int) // called after each attempt; nil for nobody
}

// least is how many people figures are made of.
func (w *Wishes) least() int {
	if w.Small {
		return 1
	}
	return LeastPeople
}

// Group is a class whose attempts have been played.
type Group struct {
	Left     []Left // attempts left out, in order of their paths
	wishes   Wishes
	sections []*section
	people   []string // what each is called on the page
}

// Why no figures can be given.
var (
	ErrNobody = errors.New("no attempt can be used")
	ErrFew    = errors.New("no part has enough people")
)

// Play plays the debriefs of the attempts of a folder. What cannot be played is left out. The group is given with an error too,
// so that what was left out can be told.
func (f *Folder) Play(ctx context.Context, w Wishes) (*Group, error) {
	g := &Group{wishes: w, Left: slices.Clone(f.left), sections: sectionsOf(f.entries)}
	var work []*entry
	for _, s := range g.sections {
		if peopleOf(s.entries) >= w.least() { // of the others nothing would be told
			work = append(work, s.entries...)
		}
	}
	if err := playAll(ctx, work, w); err != nil {
		return g, err
	}
	for _, e := range work {
		if e.left != nil {
			g.Left = append(g.Left, *e.left)
		}
	}
	g.sort()
	g.sections = slices.DeleteFunc(g.sections, func(s *section) bool {
		s.entries = slices.DeleteFunc(s.entries, func(e *entry) bool { return e.left != nil })
		return len(s.entries) == 0
	})
	if len(g.sections) == 0 {
		return g, ErrNobody
	}
	g.call(f.people)
	told := false
	for _, s := range g.sections {
		if peopleOf(s.entries) >= w.least() {
			s.figures = figuresOf(s.entries, w.least())
			told = true
		}
	}
	if !told {
		return g, ErrFew
	}
	return g, nil
}

func (g *Group) sort() {
	slices.SortStableFunc(g.Left, func(a, b Left) int { return strings.Compare(a.Path, b.Path) })
}

// playAll plays attempts, as many at once as there are workers. Each hangs on itself alone, so that it is the same whoever plays it.
func playAll(ctx context.Context, work []*entry, w Wishes) error {
	workers := w.Workers
	if workers <= 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	next := make(chan *entry)
	var group sync.WaitGroup
	var lock sync.Mutex
	done := 0
	for range min(workers, len(work)) {
		group.Go(func() {
			for e := range next {
				if ctx.Err() != nil {
					continue
				}
				e.play()
				lock.Lock()
				if done++; w.Progress != nil {
					w.Progress(done, len(work))
				}
				lock.Unlock()
			}
		})
	}
	for _, e := range work {
		next <- e
	}
	close(next)
	group.Wait()
	return ctx.Err()
}

// call gives letters to the people of whom anything is told, in the order of what cannot be guessed without the files: neither
// who began first nor whose name comes first can be read from them.
func (g *Group) call(all []person) {
	g.people = make([]string, len(all))
	var order []int
	for _, s := range g.sections {
		for _, e := range s.entries {
			if peopleOf(s.entries) >= g.wishes.least() && !slices.Contains(order, e.person) {
				order = append(order, e.person)
			}
		}
	}
	slices.SortFunc(order, func(a, b int) int { return strings.Compare(all[a].seal, all[b].seal) })
	for i, p := range order {
		g.people[p] = letters(i)
	}
}

// letters are A to Z, then AA, AB and so on.
func letters(i int) string {
	if i < 26 {
		return string(rune('A' + i))
	}
	return letters(i/26-1) + string(rune('A'+i%26))
}
