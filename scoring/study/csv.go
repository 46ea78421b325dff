package study

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"rouleau/scenarios"
	"rouleau/scoring/cells"
)

// This file holds rows as CSV. What is text there never begins with a sign that a spreadsheet would take for a formula.

// Table is rows with the names of their criteria.
type Table struct {
	Criteria []string
	Rows     []Row
}

// fixed are the columns before those of the criteria.
func fixed() []string {
	head := []string{"case", "seed", "operator", "operator_file", "passed", "points"}
	for _, p := range scenarios.Parts {
		head = append(head, p.Name)
	}
	return append(head, "recovery", "length_s", "donor_units", "critical")
}

// Less is the order of rows: by seed, then by operator.
func Less(a, b Row) int {
	switch {
	case a.Seed < b.Seed:
		return -1
	case a.Seed > b.Seed:
		return 1
	}
	return strings.Compare(a.Operator, b.Operator)
}

// Write writes the rows in their order.
func (t *Table) Write(to io.Writer) error {
	w := csv.NewWriter(to)
	w.Write(append(fixed(), t.Criteria...))
	rows := slices.Clone(t.Rows)
	slices.SortFunc(rows, Less)
	for i := range rows {
		r := &rows[i]
		line := []string{cells.Text(r.Case), strconv.FormatUint(r.Seed, 10), cells.Text(r.Operator), cells.Text(r.Digest), strconv.FormatBool(r.Passed), cells.Number(r.Points)}
		for _, p := range r.Parts {
			line = append(line, cells.Number(p))
		}
		line = append(line, cells.Number(r.Recovery), cells.Number(r.LengthS), strconv.Itoa(r.DonorUnits), strings.Join(r.Critical, " "))
		for _, c := range r.Criteria {
			line = append(line, cells.Number(c))
		}
		w.Write(line)
	}
	w.Flush()
	return w.Error()
}

// mend is what can be done about a file of runs that was damaged.
const mend = "the file is damaged; take this line out and its run is played again, or remove the file"

// Read reads rows as Write wrote them; the name is what faults call the file. A file in which anything is not as Write writes
// it is refused: figures of half-read runs would look like any others.
func Read(name string, from io.Reader) (*Table, error) {
	r := csv.NewReader(from)
	head, err := r.Read()
	if err != nil {
		return nil, fmt.Errorf("%s:1: the first line cannot be read (%w): give a runs.csv that a study wrote, or remove the file", name, err)
	}
	want := fixed()
	if len(head) <= len(want) || !slices.Equal(head[:len(want)], want) {
		return nil, fmt.Errorf("%s:1: these are not the columns of a study: give a runs.csv that a study wrote, or remove the file", name)
	}
	t := &Table{Criteria: head[len(want):]}
	type key struct {
		seed     uint64
		operator string
	}
	where := map[key]int{}
	for {
		fields, err := r.Read()
		if errors.Is(err, io.EOF) {
			return t, nil
		}
		if bad := (*csv.ParseError)(nil); errors.As(err, &bad) {
			return nil, fmt.Errorf("%s:%d: this line cannot be read (%w): %s", name, bad.Line, bad.Err, mend)
		}
		if err != nil {
			return nil, fmt.Errorf("%s: the file cannot be read (%w)", name, err)
		}
		line, _ := r.FieldPos(0)
		row, fault := rowOf(fields, head)
		if fault != "" {
			return nil, fmt.Errorf("%s:%d: %s: %s", name, line, fault, mend)
		}
		k := key{row.Seed, row.Operator}
		if before, twice := where[k]; twice {
			return nil, fmt.Errorf("%s:%d: seed %d played by %s stands in line %d already: %s", name, line, row.Seed, row.Operator, before, mend)
		}
		where[k] = line
		t.Rows = append(t.Rows, row)
	}
}

// rowOf reads one line; the fault names the first column that could not be read.
func rowOf(f, head []string) (r Row, fault string) {
	say := func(at int, want string) {
		if fault == "" {
			fault = fmt.Sprintf("column %s: %q is not %s", head[at], f[at], want)
		}
	}
	number := func(at int, most float64) float64 {
		x, err := strconv.ParseFloat(f[at], 64)
		if err != nil || !(x >= 0 && x <= most) {
			say(at, fmt.Sprintf("a number from 0 to %g", most))
		}
		return x
	}
	var err, notYes error
	if r.Case, r.Operator, r.Digest = cells.Read(f[0]), cells.Read(f[2]), cells.Read(f[3]); r.Case == "" || r.Operator == "" {
		say(0, "followed by a seed and an operator")
	}
	if r.Seed, err = strconv.ParseUint(f[1], 10, 64); err != nil {
		say(1, "a seed")
	}
	if r.Passed, notYes = strconv.ParseBool(f[4]); notYes != nil {
		say(4, "true or false")
	}
	r.Points = number(5, 100+rounding)
	at := 6
	for _, p := range scenarios.Parts {
		r.Parts = append(r.Parts, number(at, p.Points+rounding))
		at++
	}
	r.Recovery, r.LengthS, r.DonorUnits = number(at, 1+rounding), number(at+1, longestS), int(number(at+2, mostUnits))
	r.Critical = strings.Fields(f[at+3])
	for i := at + 4; i < len(f); i++ {
		r.Criteria = append(r.Criteria, number(i, 1+rounding))
	}
	return r, fault
}

const (
	rounding  = 1e-9   // of sums of points
	longestS  = 100000 // no case is longer, 13 h at most
	mostUnits = 1000
)
