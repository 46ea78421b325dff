package operators

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"slices"
	"strconv"
	"strings"
	"sync"

	"github.com/agnivade/levenshtein"

	"rouleau/scenarios"
	"rouleau/scenarios/yamlread"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// This file holds the format of an operator, its reading, and the operators of the library.

// File is an operator as its file holds it.
type File struct {
	Format  int      `yaml:"format" rule:"required,min=1,max=1" doc:"version of the operator format"`
	Name    string   `yaml:"name" rule:"required,min=2,max=40" doc:"what this operator is called"`
	Failing string   `yaml:"failing" rule:"required,min=5,max=300" doc:"what it gets wrong, in a sentence"`
	Shows   []string `yaml:"shows" rule:"max=60,each_min=1,each_max=60" doc:"measures in which the failing shows; a study judges a case by this operator only where they are graded"`
	Habits  Habits   `yaml:"habits" doc:"how it works; what is left out is as steady does it"`
	Rules   []Rule   `yaml:"rules" rule:"max=100" doc:"what it does before its habits, the first that holds and is possible"`
}

// Operator is one that was read without faults.
type Operator struct {
	Name    string
	Failing string
	Shows   []string // measures
	Digest  string   // of its file, so that runs of an earlier one are told apart; empty for idle
	play    func(Sheet) play.Actor
}

// Play begins a case.
func (o *Operator) Play(s Sheet) play.Actor { return o.play(s) }

const (
	extension = ".yaml"
	idleName  = "idle"
)

//go:embed library
var library embed.FS

// Library gives the names of the operators that come with the program, the competent one first and idle last.
func Library() []string {
	entries, _ := library.ReadDir("library") // sorted by name
	names := []string{"steady"}
	for _, e := range entries {
		if name := strings.TrimSuffix(e.Name(), extension); name != "steady" {
			names = append(names, name)
		}
	}
	return append(names, idleName)
}

// Open gives an operator of the library, or reads a file: an operator or a script of timed acts. The error holds every fault
// of the file, as yamlread.Faults, or says why it cannot be read.
func Open(nameOrPath string) (*Operator, error) {
	if nameOrPath == idleName {
		return &Operator{Name: idleName, Failing: "Does nothing at all.", play: func(Sheet) play.Actor { return Idle{} }}, nil
	}
	if slices.Contains(Library(), nameOrPath) {
		data, err := library.ReadFile(path.Join("library", nameOrPath+extension))
		if err != nil {
			return nil, err
		}
		o, faults := Parse(nameOrPath+extension, data)
		return o.from(data), faults.Err()
	}
	data, err := readFile(nameOrPath)
	if err != nil {
		return nil, err
	}
	if isScript(data) {
		first, faults := ParseScript(nameOrPath, data)
		if err := faults.Err(); err != nil {
			return nil, err
		}
		o := &Operator{Name: first.Name, play: func(Sheet) play.Actor {
			s, _ := ParseScript(nameOrPath, data) // read without faults above; every run needs its own
			return s
		}}
		return o.from(data), nil
	}
	o, faults := Parse(nameOrPath, data)
	return o.from(data), faults.Err()
}

// from notes what file an operator was read from.
func (o *Operator) from(data []byte) *Operator {
	if o != nil {
		sum := sha256.Sum256(data)
		o.Digest = hex.EncodeToString(sum[:6])
	}
	return o
}

// isScript says whether a file is meant as a script: it has acts and no habits.
func isScript(data []byte) bool {
	acts := false
	for line := range strings.Lines(string(data)) {
		if strings.HasPrefix(line, "habits:") || strings.HasPrefix(line, "failing:") || strings.HasPrefix(line, "rules:") {
			return false
		}
		acts = acts || strings.HasPrefix(line, "acts:")
	}
	return acts
}

// Parse reads an operator; the name is what faults call the file. With faults there is no operator.
func Parse(name string, data []byte) (*Operator, yamlread.Faults) {
	var f File
	doc := yamlread.Read(name, data, &f)
	for i, m := range f.Shows {
		if _, ok := scenarios.MeasureNamed(m); !ok {
			known := scenarios.MeasureNames()
			doc.FaultNear("shows["+strconv.Itoa(i)+"]", "there is no measure of this name", "the name of a measure, such as "+list(alike(m, known)), yamlread.Nearest(m, known))
		}
	}
	fields(doc, "habits.hand_over", sim.HandOver, f.Habits.HandOver)
	fields(doc, "habits.label", sim.Label, f.Habits.Label)
	var rules []habitRule
	for i := range f.Rules {
		rules = append(rules, f.Rules[i].read(doc, "rules["+strconv.Itoa(i)+"]"))
	}
	if faults := doc.Faults(); len(faults) > 0 {
		return nil, faults
	}
	return &Operator{Name: f.Name, Failing: f.Failing, Shows: f.Shows, play: func(s Sheet) play.Actor { return withHabits(s, f.Habits, rules) }}, nil
}

// alike gives the few names most like a word: those with a part of it first, then those with the fewest letters to change.
func alike(word string, known []string) []string {
	const few, longest = 4, 60
	word = strings.ToLower(word[:min(longest, len(word))])
	parts := strings.Split(word, "_")
	far := func(name string) int {
		d := levenshtein.ComputeDistance(word, name)
		for _, p := range parts {
			if len(p) > 2 && strings.Contains(name, p) {
				d -= longest
			}
		}
		return d
	}
	names := slices.Clone(known)
	slices.SortStableFunc(names, func(a, b string) int { return far(a) - far(b) })
	return names[:min(few, len(names))]
}

// fields looks at a set of fields in words.
func fields(doc *yamlread.Doc, place string, do sim.Verb, word string) {
	if _, ok := scenarios.ValueNamed(do, word); !ok && doc.Has(place) {
		doc.FaultNear(place, "this is not a set of fields", list(scenarios.ValueWords(do))+", joined by +", yamlread.Nearest(word, scenarios.ValueWords(do)))
	}
}

// read turns names into what the model knows.
func (r *Rule) read(doc *yamlread.Doc, place string) habitRule {
	act := ScriptAct{Do: r.Do, On: r.On, Value: r.Value}
	if !doc.Has(place+".holds") && !doc.Has(place+".reads") {
		doc.Fault(place, "this rule does not say when", "holds: a situation, or reads: something that can be read")
	}
	if u := r.Reads; u != nil {
		var known []string
		for _, v := range scenarios.Visibles {
			known = append(known, v.Name)
		}
		if !slices.Contains(known, u.What) && doc.Has(place+".reads.what") {
			doc.FaultNear(place+".reads.what", "nothing of this name can be read", list(known), yamlread.Nearest(u.What, known))
		}
		if u.AtLeast == nil && u.AtMost == nil {
			doc.Fault(place+".reads", "this does not say how much", "at_least, at_most or both")
		}
	}
	return habitRule{holds: r.Holds, reads: r.Reads, every: int64(r.EveryS) * sim.TicksPerSecond, act: act.action(doc, place)}
}

// competent gives the habits of steady.
var competent = sync.OnceValue(func() Habits {
	var f File
	data, err := library.ReadFile("library/steady" + extension)
	if faults := yamlread.Decode("steady"+extension, data, &f); err != nil || len(faults) > 0 {
		panic(fmt.Sprintf("the operator steady cannot be read: %v %v", err, faults)) // a test reads every file of the library
	}
	return f.Habits
})

// folder is a path at which a folder stands.
type folder string

func (f folder) Error() string {
	return string(f) + ": this is a folder: give the path of a script or an operator"
}
func (f folder) Is(target error) bool { return target == fs.ErrInvalid }

// readFile gives the content of a file, or what to do where there is none.
func readFile(file string) ([]byte, error) {
	data, err := yamlread.ReadFile(file)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("%s: there is no such file (%w): give %s, or the path of a script or an operator", file, fs.ErrNotExist, list(Library()))
	}
	if err == nil {
		return data, nil
	}
	if info, bad := os.Stat(file); bad == nil && info.IsDir() {
		return nil, folder(file)
	}
	if inner := (*fs.PathError)(nil); errors.As(err, &inner) {
		err = inner.Err
	}
	return nil, fmt.Errorf("%s: the file cannot be read (%w): check that it is a file and that you may read it", file, err)
}
