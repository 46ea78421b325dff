package study

import (
	"bufio"
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"rouleau/scenarios"
	"rouleau/scenarios/yamlread"
	"rouleau/scoring/study"
)

// This file reads the results of people from CSV.

// person is somebody's first attempt.
type person struct {
	name     string
	attempt  int
	passed   bool
	points   float64
	shares   []float64 // not a number where a criterion was not measured
	critical []string
}

const (
	cohortColumns  = "person, attempt, passed and points"
	criticalColumn = "critical" // names with spaces between, may be left out
	mostCohort     = 16 << 20   // bytes
	mostFaults     = 20         // told at once
)

// columns are where in a line what stands.
type columns struct {
	need     [4]int // person, attempt, passed, points
	critical int    // -1 for none
	criteria []int  // places among the criteria of the case
	at       []int  // and in the line
}

// faults are what is not right in a file, a line for each, told in one go.
type faults struct {
	lines []string
	more  bool
}

func (fs *faults) Error() string {
	if fs.more {
		return strings.Join(fs.lines, "\n") + "\nthere are more faults than these: mend them first, then try again"
	}
	return strings.Join(fs.lines, "\n")
}

// add keeps one more fault, up to the most that are told at once.
func (fs *faults) add(format string, args ...any) {
	if len(fs.lines) < mostFaults {
		fs.lines = append(fs.lines, fmt.Sprintf(format, args...))
	} else {
		fs.more = true
	}
}

func (fs *faults) err() error {
	if len(fs.lines) == 0 {
		return nil
	}
	return fs
}

// ReadCohort reads a CSV with the columns person, attempt, passed, points, if it is known critical, and for each criterion,
// as far as they are known, the share of its points, 0 to 1, or nothing where it was not measured. It adds the figures of
// first attempts. The name is what faults call the file; the error tells all of them, up to a cap.
func (f *Figures) ReadCohort(name string, from io.Reader, t *study.Table) error {
	limited := &io.LimitedReader{R: from, N: mostCohort + 1}
	text := bufio.NewReader(limited)
	if mark, _ := text.Peek(3); bytes.Equal(mark, []byte("\xef\xbb\xbf")) {
		text.Discard(3) // some spreadsheets begin with a mark of the encoding
	}
	r := csv.NewReader(text)
	head, err := r.Read()
	if err != nil {
		return fmt.Errorf("%s:1: the first line cannot be read (%w): it must name the columns %s, with commas between", name, err, cohortColumns)
	}
	var wrong faults
	in := f.columns(name, head, &wrong)
	if slices.Contains(in.need[:], -1) {
		return wrong.err() // without these no line says anything
	}
	var people []person
	where := map[string]int{} // line of each attempt of each person
	later, lines := 0, 0
	for ; ; lines++ {
		fields, err := r.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if bad := (*csv.ParseError)(nil); errors.As(err, &bad) {
			wrong.add("%s:%d: this line cannot be read (%v): every line has the %d fields of the first, with commas between and text with a comma in quotes", name, bad.Line, bad.Err, len(head))
			continue
		}
		if err != nil {
			return fmt.Errorf("%s: the file cannot be read (%w)", name, err)
		}
		line, _ := r.FieldPos(0)
		p, said := in.person(fields, head)
		for _, fault := range said {
			wrong.add("%s:%d: %s", name, line, fault)
		}
		if len(said) > 0 {
			continue
		}
		key := strconv.Itoa(p.attempt) + " " + p.name
		if before, twice := where[key]; twice {
			wrong.add("%s:%d: attempt %d of %q stands in line %d already: give each attempt its own number, or leave one out", name, line, p.attempt, p.name, before)
			continue
		}
		where[key] = line
		if p.attempt != 1 {
			later++
			continue
		}
		people = append(people, p)
	}
	if limited.N <= 0 {
		return fmt.Errorf("%s: the file is larger than %d MiB: leave out lines of other cases", name, mostCohort>>20)
	}
	if lines == 0 {
		wrong.add("%s:2: there is nobody in the file: a line for each attempt comes after the first", name)
	}
	if err := wrong.err(); err != nil {
		return err
	}
	f.cohort(people, later, in.criteria, t)
	return nil
}

// columns finds what stands where; a column that must be there and is not has the place -1.
func (f *Figures) columns(name string, head []string, wrong *faults) columns {
	in := columns{critical: slices.Index(head, criticalColumn)}
	known := []string{"person", "attempt", "passed", "points", criticalColumn}
	for i, column := range known[:4] {
		in.need[i] = slices.Index(head, column)
		if in.need[i] >= 0 {
			continue
		}
		if len(head) == 1 && strings.ContainsAny(head[0], ";\t") {
			between := map[bool]string{true: "semicolons", false: "tabs"}[strings.Contains(head[0], ";")]
			wrong.add("%s:1: the column %s is missing: there must be %s, with commas between and not %s", name, column, cohortColumns, between)
			return in // one cause for all that is missing
		}
		wrong.add("%s:1: the column %s is missing: there must be %s", name, column, cohortColumns)
	}
	for k := range f.Criteria {
		known = append(known, f.Criteria[k].Name)
	}
	for i, column := range head {
		k, near := slices.Index(known, column), yamlread.Nearest(column, known)
		switch {
		case slices.Index(head, column) < i:
			wrong.add("%s:1: the column %s stands there twice: leave one out", name, column)
		case k < 0 && near != "":
			wrong.add("%s:1: there is no criterion %q in this case: nearest is %s; correct it, or leave the column out", name, column, near)
		case k < 0:
			wrong.add("%s:1: there is no criterion %q in this case: leave the column out", name, column)
		case k >= 5:
			in.criteria, in.at = append(in.criteria, k-5), append(in.at, i)
		}
	}
	return in
}

// person reads one line; each fault says which field cannot be and what can.
func (in *columns) person(fields, head []string) (p person, said []string) {
	say := func(at int, want string) {
		said = append(said, fmt.Sprintf("column %s: %q is not %s", head[at], fields[at], want))
	}
	number := func(at int, most float64) float64 {
		x, err := strconv.ParseFloat(strings.TrimSpace(fields[at]), 64)
		if err != nil || !within(x, most) {
			say(at, fmt.Sprintf("a number from 0 to %g, with a point before tenths", most))
		}
		return x
	}
	var bad, worse error
	if p.name = strings.TrimSpace(fields[in.need[0]]); p.name == "" {
		say(in.need[0], "a name or number of a person: write one, such as P01, the same for all attempts of one person")
	}
	if p.attempt, bad = strconv.Atoi(strings.TrimSpace(fields[in.need[1]])); bad != nil || p.attempt < 1 {
		say(in.need[1], "the number of an attempt, 1 for the first")
	}
	if p.passed, worse = strconv.ParseBool(strings.ToLower(strings.TrimSpace(fields[in.need[2]]))); worse != nil {
		say(in.need[2], "true or false")
	}
	p.points = number(in.need[3], 100)
	for _, i := range in.at {
		share := math.NaN() // not measured
		if strings.TrimSpace(fields[i]) != "" {
			share = number(i, 1)
		}
		p.shares = append(p.shares, share)
	}
	if in.critical >= 0 {
		p.critical = strings.Fields(fields[in.critical])
		for _, name := range p.critical {
			if !slices.Contains(scenarios.CriticalNames(), name) {
				near := yamlread.Nearest(name, scenarios.CriticalNames())
				if near == "" {
					near = scenarios.CriticalNames()[0]
				}
				say(in.critical, "made of names such as "+near+", with spaces between")
			}
		}
	}
	return p, said
}
