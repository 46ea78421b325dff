package study

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"sync"
	"time"

	"github.com/natefinch/atomic"

	"rouleau/scenarios"
	"rouleau/scoring/operators"
	"rouleau/scoring/study"
)

// This file plays the runs of a study on all processors and keeps what is finished, so that a stopped study goes on.

// RunsFile is the name of the file of finished runs in the folder of a study.
const RunsFile = "runs.csv"

const saveEvery = 2 * time.Second // what a stop in mid-study can lose

// Plan is what a study plays.
type Plan struct {
	Scenario   *scenarios.Scenario
	Operators  []*operators.Operator
	Seeds      []uint64
	Assessment bool
	Folder     string // where finished runs are kept; empty for nowhere
	Workers    int    // seeds played at once; 0 for as many as there are processors
	// Progress is called from time to time, by one at a time; it may be nil.
	Progress func(done, all int, since time.Time)
}

// Run plays what is not finished and gives all rows of the plan.
func (p *Plan) Run() (*study.Table, error) {
	t := &study.Table{Criteria: study.Columns(p.Scenario)}
	if p.Folder != "" {
		kept, err := p.kept()
		if err != nil {
			return nil, err
		}
		t.Rows = kept
	}
	todo := p.todo(t.Rows)
	if err := p.play(t, todo); err != nil {
		return nil, err
	}
	t.Rows = slices.DeleteFunc(t.Rows, func(r study.Row) bool { return !slices.Contains(p.Seeds, r.Seed) || !p.has(r.Operator) })
	slices.SortFunc(t.Rows, study.Less)
	return t, nil
}

func (p *Plan) has(name string) bool {
	return slices.ContainsFunc(p.Operators, func(o *operators.Operator) bool { return o.Name == name })
}

// kept reads the finished runs of an earlier call.
func (p *Plan) kept() ([]study.Row, error) {
	if err := os.MkdirAll(p.Folder, 0o777); err != nil {
		return nil, fmt.Errorf("%s: no folder can be made there (%w): give the path of a folder that you may write to", p.Folder, err)
	}
	t, err := ReadRuns(p.Folder)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	want := study.Identity(p.Scenario, p.Assessment)
	for _, r := range t.Rows {
		if r.Case != want {
			return nil, fmt.Errorf("%s: the runs kept here are of another study (%s, and this is %s): give another folder, or remove the file", filepath.Join(p.Folder, RunsFile), r.Case, want)
		}
		if len(r.Criteria) != len(p.Scenario.Criteria) {
			return nil, fmt.Errorf("%s: the runs kept here have other criteria: give another folder, or remove the file", filepath.Join(p.Folder, RunsFile))
		}
	}
	// an operator whose file has changed since plays anew
	return slices.DeleteFunc(t.Rows, func(r study.Row) bool {
		return slices.ContainsFunc(p.Operators, func(o *operators.Operator) bool { return o.Name == r.Operator && o.Digest != r.Digest })
	}), nil
}

// ReadRuns reads the finished runs in a folder.
func ReadRuns(folder string) (*study.Table, error) {
	name := filepath.Join(folder, RunsFile)
	f, err := os.Open(name)
	if err != nil {
		return nil, fmt.Errorf("%s: there are no runs to read (%w): give the folder of a study", name, err)
	}
	defer f.Close()
	return study.Read(name, f)
}

// WriteRuns puts the rows in place at once, whole or not at all.
func WriteRuns(folder string, t *study.Table) error {
	var b bytes.Buffer
	if err := t.Write(&b); err != nil {
		return err
	}
	return Place(filepath.Join(folder, RunsFile), b.Bytes())
}

// Place puts a file in place at once, whole or not at all, for all to read.
func Place(path string, content []byte) error {
	if err := atomic.WriteFile(path, bytes.NewReader(content)); err != nil {
		return err
	}
	return os.Chmod(path, 0o644)
}

// task is what is left to play of one seed.
type task struct {
	seed uint64
	who  []*operators.Operator
}

func (p *Plan) todo(done []study.Row) []task {
	type key struct {
		seed uint64
		name string
	}
	have := map[key]bool{}
	for _, r := range done {
		have[key{r.Seed, r.Operator}] = true
	}
	var out []task
	for _, seed := range p.Seeds {
		t := task{seed: seed}
		for _, o := range p.Operators {
			if !have[key{seed, o.Name}] {
				t.who = append(t.who, o)
			}
		}
		if len(t.who) > 0 {
			out = append(out, t)
		}
	}
	return out
}

// play shares the seeds out. Which worker takes which seed changes nothing: a run depends on its seed alone, and rows are
// sorted.
func (p *Plan) play(t *study.Table, todo []task) error {
	workers := p.Workers
	if workers <= 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	tasks, finished := make(chan task), make(chan []study.Row)
	var group sync.WaitGroup
	for range min(workers, len(todo)) {
		group.Go(func() {
			for k := range tasks {
				finished <- study.Play(p.Scenario, k.seed, k.who, p.Assessment)
			}
		})
	}
	go func() {
		for _, k := range todo {
			tasks <- k
		}
		close(tasks)
		group.Wait()
		close(finished)
	}()
	began, saved, done := time.Now(), time.Now(), 0
	var failed error
	for rows := range finished {
		t.Rows = append(t.Rows, rows...)
		done++
		if p.Progress != nil {
			p.Progress(done, len(todo), began)
		}
		if p.Folder != "" && failed == nil && time.Since(saved) > saveEvery {
			failed = WriteRuns(p.Folder, t)
			saved = time.Now()
		}
	}
	if p.Folder != "" && failed == nil {
		failed = WriteRuns(p.Folder, t)
	}
	if failed != nil {
		return fmt.Errorf("%s: the finished runs could not be kept (%w)", p.Folder, failed)
	}
	return nil
}
