// Package scenarios says what a training case is: it reads one from a YAML file, reports everything that is wrong with it
// at once, holds the library of cases, and draws from a seed the [sim.Case] that a run plays.
//
// The Go types that the file is read into are the format itself: keys, rules and meanings stand in their tags, from which
// the reference page and the schema are made. This file holds the top of the format.
package scenarios

//go:generate go run rouleau/cmd/rouleau schema --page --out FORMAT.md

import (
	"crypto/sha256"
	"encoding/hex"

	"rouleau/scenarios/yamlread"
)

// FormatVersion is the version of the format this package reads.
const FormatVersion = 1

// File is a scenario as its file holds it.
type File struct {
	Format       int            `yaml:"format" rule:"required,min=1,max=1" doc:"version of the scenario format" example:"1"`
	ID           string         `yaml:"id" rule:"required,min=3,max=60" doc:"name of the case, lower-case words joined by -; never reused for another case" example:"steady-oozing-spine"`
	Title        string         `yaml:"title" rule:"required,min=3,max=80" doc:"title shown to the trainee"`
	Version      int            `yaml:"version" rule:"required,min=1,max=9999" doc:"counted up with each change that can change a grade" example:"1"`
	Level        string         `yaml:"level" rule:"required,oneof=first_steps|routine|demanding" doc:"how hard the case is"`
	Minutes      int            `yaml:"minutes" rule:"required,min=3,max=720" doc:"time a trainee should set aside at the pace of the operation" example:"90"`
	Summary      string         `yaml:"summary" rule:"required,min=10,max=200" doc:"one sentence for the list of cases" example:"A long operation that oozes steadily."`
	Day          yamlread.Date  `yaml:"day" rule:"required" doc:"invented day of the operation; packs that expire before it are expired" example:"2031-05-14"`
	Ends         yamlread.Clock `yaml:"operation_ends" rule:"required,min=0:01:00,max=12:00:00" doc:"when the operation is over" example:"1:15:00"`
	Stops        yamlread.Clock `yaml:"case_stops" rule:"required,min=0:02:00,max=13:00:00" doc:"when the case is stopped at the latest; the time after the operation is for finishing" example:"1:35:00"`
	Story        Story          `yaml:"story" rule:"required" doc:"what the case sheet says"`
	Objectives   []Objective    `yaml:"objectives" rule:"required,min=1,max=20" doc:"what the trainee should learn or show"`
	Right        Right          `yaml:"right" rule:"required" doc:"what should be decided before anything is opened, and why"`
	Patient      Patient        `yaml:"patient" rule:"required" doc:"the simulated patient"`
	Contaminants []Contaminant  `yaml:"contaminants" rule:"max=4" doc:"what gets into the wound and does not belong in a vein"`
	Phases       []Phase        `yaml:"phases" rule:"required,min=1,max=12" doc:"parts of the operation, in order"`
	Events       []Event        `yaml:"events" rule:"max=48" doc:"what happens once, at a time or on a condition"`
	Bench        Bench          `yaml:"bench" rule:"required" doc:"what stands on the bench, and what is wrong with it"`
	Automatic    Automatic      `yaml:"automatic" doc:"single steps that the trainee may turn on; a step left out is not allowed"`
	Modes        Modes          `yaml:"modes" doc:"rules of practice and assessment"`
	Pass         Pass           `yaml:"pass" doc:"what is needed to pass"`
	Recovery     Recovery       `yaml:"recovery" doc:"what a competent operator gives back here where no swabs are rinsed; a study looks at it, nobody is graded by it"`
	Criteria     []Criterion    `yaml:"criteria" rule:"required,min=1,max=60" doc:"what is graded, against which target"`
	Hints        []Hint         `yaml:"hints" rule:"max=40" doc:"help in practice, in three steps"`
	Guidance     []Step         `yaml:"guidance" rule:"max=60" doc:"steps of a guided lesson; a scenario with them is for practice only"`
	Cautions     []string       `yaml:"cautions" rule:"max=10,each_min=3,each_max=300" doc:"what the trainee must not take from this case"`
	Sources      []string       `yaml:"sources" rule:"max=30,each_min=3,each_max=300" doc:"where doses and limits of the story come from"`
}

// Scenario is a scenario that was read without faults.
type Scenario struct {
	File
	Name     string          // of the file, as faults and warnings give it
	Source   []byte          // the file, line ends as LF
	Lines    []string        // words said by events; sim.Occurrence.Line and sim.Question.Line index it
	Warnings yamlread.Faults // legal but suspicious
}

// Hash is the SHA-256 of the file with line ends as LF, so that a checkout on another system is the same scenario.
func (s *Scenario) Hash() string {
	sum := sha256.Sum256(s.Source)
	return hex.EncodeToString(sum[:])
}
