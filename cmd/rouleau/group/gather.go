package group

import (
	"cmp"
	"errors"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"rouleau/assets/words"
	"rouleau/scenarios"
	"rouleau/scoring/attempt"
	"rouleau/scoring/operators"
	"rouleau/sim"
)

// This file gathers the attempts of a folder, tells people apart and sorts out what cannot be counted.

// Folder is what was found in a folder.
type Folder struct {
	Paths   []string // of all files that were looked at
	entries []*entry
	people  []person
	left    []Left
}

// person is one who played. What they are called stays in here.
type person struct {
	name string
	seal string // of the first attempt
}

// entry is an attempt that counts, until it has been played and what is told of it is known.
type entry struct {
	path    string
	attempt *attempt.Attempt
	person  int // in Folder.people
	number  int // of the person's attempts at the same case in the same mode, from 1
	left    *Left
	facts
}

// Left is an attempt that was left out.
type Left struct {
	Path   string
	Why    Why
	Detail string // what is the matter with the file; it may hold its name and what stands in it
}

// Why says why an attempt was left out.
type Why uint8

// The reasons. Those up to Broke are faults of a file or of the program; the others are as they should be.
const (
	Unreadable Why = iota
	Unsealed
	OtherModel
	NotTheSame
	Broke
	Twice
	Program
	TakenOver
	Nameless
	Unfinished
)

var whyKeys = [...]string{"group.left_unreadable", "group.left_unsealed", "group.left_other_model", "group.left_not_the_same", "group.left_broke",
	"group.left_twice", "group.left_program", "group.left_taken_over", "group.left_nameless", "group.left_unfinished"}

// fault says whether something is the matter with the file.
func (w Why) fault() bool { return w <= Broke }

// String is the reason in words.
func (w Why) String() string { return words.Say(whyKeys[w]) }

// Read reads the attempts of a folder and of all folders in it. The error is for a folder that cannot be read at all.
func Read(dir string, w Wishes) (*Folder, error) {
	f := &Folder{}
	err := fs.WalkDir(os.DirFS(dir), ".", func(name string, d fs.DirEntry, err error) error {
		at := filepath.Join(dir, filepath.FromSlash(name))
		switch {
		case err != nil && name == ".":
			return err
		case err != nil:
			f.left = append(f.left, Left{at, Unreadable, at + ": " + reason(err)})
			return nil
		case strings.HasPrefix(d.Name(), ".") && name != ".":
			if d.IsDir() {
				return fs.SkipDir
			}
		case !d.IsDir() && path.Ext(name) == ".json":
			f.Paths = append(f.Paths, at)
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	f.load(w)
	f.number()
	return f, nil
}

// reason is what the machine says, without the name of the file.
func reason(err error) string {
	if inner := (*fs.PathError)(nil); errors.As(err, &inner) {
		err = inner.Err
	}
	return err.Error()
}

// load reads the files and leaves out what is nobody's own.
func (f *Folder) load(w Wishes) {
	seals, programs, somebody := map[string]bool{}, operators.Library(), words.Say("desk.somebody")
	for _, at := range f.Paths {
		leave := func(why Why, detail string) { f.left = append(f.left, Left{at, why, detail}) }
		a, err := attempt.Load(at)
		if err != nil {
			leave(Unreadable, err.Error())
			continue
		}
		name := strings.TrimSpace(a.Operator)
		if !a.Sealed() {
			leave(Unsealed, at+": "+Unsealed.String())
			continue
		}
		switch {
		case seals[a.Seal]:
			leave(Twice, "")
		case a.Breaks.TakenOver:
			leave(TakenOver, "")
		case name == "" || name == somebody:
			leave(Nameless, "")
		case !w.Programs && slices.Contains(programs, name):
			leave(Program, "")
		default:
			f.entries = append(f.entries, &entry{path: at, attempt: a})
		}
		seals[a.Seal] = true
	}
}

// number tells people apart and counts the attempts of each at a case, in order of time. Attempts of another model and those
// broken off are counted too, so that the next is no first one; then they are left out.
func (f *Folder) number() {
	slices.SortFunc(f.entries, func(a, b *entry) int { // times are all written alike, in UTC
		return cmp.Or(strings.Compare(a.attempt.When, b.attempt.When), strings.Compare(a.attempt.Seal, b.attempt.Seal))
	})
	known := map[string]int{}
	type course struct {
		person int
		of     key
	}
	counted := map[course]int{}
	for _, e := range f.entries {
		a, name := e.attempt, strings.TrimSpace(e.attempt.Operator)
		if _, met := known[name]; !met {
			known[name] = len(f.people)
			f.people = append(f.people, person{name, a.Seal})
		}
		e.person = known[name]
		c := course{e.person, keyOf(a)}
		counted[c]++
		e.number = counted[c]
	}
	f.entries = slices.DeleteFunc(f.entries, func(e *entry) bool {
		a := e.attempt
		switch {
		case a.Model != sim.ModelVersion:
			f.left = append(f.left, Left{e.path, OtherModel, e.path + ": " + words.Say("debrief.other_model", a.Model, sim.ModelVersion)})
		case !a.Ended:
			f.left = append(f.left, Left{e.path, Unfinished, ""})
		default:
			return false
		}
		return true
	})
}

// peopleOf is how many people attempts are of.
func peopleOf(entries []*entry) int {
	met := map[int]bool{}
	for _, e := range entries {
		met[e.person] = true
	}
	return len(met)
}

// scenarioOf is the case of an attempt that was read without faults, and so has one.
func scenarioOf(a *attempt.Attempt) *scenarios.Scenario {
	sc, _ := scenarios.Parse(a.Scenario.ID+".yaml", []byte(a.Scenario.Text))
	return sc
}
