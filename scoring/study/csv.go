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
		line := []string{plain(r.Case), strconv.FormatUint(r.Seed, 10), plain(r.Operator), plain(r.Digest), strconv.FormatBool(r.Passed), digits(r.Points)}
		for _, p := range r.Parts {
			line = append(line, digits(p))
		}
		line = append(line, digits(r.Recovery), digits(r.LengthS), strconv.Itoa(r.DonorUnits), strings.Join(r.Critical, " "))
		for _, c := range r.Criteria {
			line = append(line, digits(c))
		}
		w.Write(line)
	}
	w.Flush()
	return w.Error()
}

// plain keeps a spreadsheet from taking a text for a formula.
func plain(text string) string {
	if text != "" && strings.ContainsAny(text[:1], "=+-@\t\r'") {
		return "'" + text
	}
	return text
}

// unplain takes back what plain did.
func unplain(text string) string { return strings.TrimPrefix(text, "'") }

func digits(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }

// Read reads rows as Write wrote them; the name is what faults call the file.
func Read(name string, from io.Reader) (*Table, error) {
	r := csv.NewReader(from)
	head, err := r.Read()
	if err != nil {
		return nil, fmt.Errorf("%s: the first line cannot be read (%w): give a runs.csv that a study wrote", name, err)
	}
	want := fixed()
	if len(head) <= len(want) || !slices.Equal(head[:len(want)], want) {
		return nil, fmt.Errorf("%s:1: these are not the columns of a study: give a runs.csv that a study wrote", name)
	}
	t := &Table{Criteria: head[len(want):]}
	for {
		fields, err := r.Read()
		if errors.Is(err, io.EOF) {
			return t, nil
		}
		if err != nil {
			return nil, fmt.Errorf("%s: %w: give a runs.csv that a study wrote", name, err)
		}
		line, _ := r.FieldPos(0)
		row, bad := rowOf(fields, len(want))
		if bad != "" {
			return nil, fmt.Errorf("%s:%d: %q cannot be read in this place: give a runs.csv that a study wrote", name, line, bad)
		}
		t.Rows = append(t.Rows, row)
	}
}

// rowOf reads one line; bad is the field that could not be read.
func rowOf(f []string, head int) (r Row, bad string) {
	number := func(text string) float64 {
		x, err := strconv.ParseFloat(text, 64)
		if (err != nil || x != x || x > 1e12 || x < -1e12) && bad == "" {
			bad = text
		}
		return x
	}
	var err, notYes error
	r.Case, r.Operator, r.Digest = unplain(f[0]), unplain(f[2]), unplain(f[3])
	if r.Seed, err = strconv.ParseUint(f[1], 10, 64); err != nil {
		bad = f[1]
	}
	if r.Passed, notYes = strconv.ParseBool(f[4]); notYes != nil {
		bad = f[4]
	}
	r.Points = number(f[5])
	at := 6
	for range scenarios.Parts {
		r.Parts = append(r.Parts, number(f[at]))
		at++
	}
	r.Recovery, r.LengthS, r.DonorUnits = number(f[at]), number(f[at+1]), int(number(f[at+2]))
	r.Critical = strings.Fields(f[at+3])
	for _, text := range f[head:] {
		r.Criteria = append(r.Criteria, number(text))
	}
	return r, bad
}
