package group

import (
	"bytes"
	"encoding/csv"
	"math"
	"strconv"

	"rouleau/scoring/cells"
)

// This file writes the figures as CSV, one row for each part of a section, and in it one for each kind of decision. What is not told
// on the page is not told here: a cell without a figure is empty.

var columns = []string{"case", "version", "text", "mode", "lesson", "part", "from", "to", "attempts", "people", "passed", "critical",
	"points_mean", "points_low_quartile", "points_median", "points_high_quartile", "aspect", "fault", "decision",
	"mattered_attempts", "mattered_people", "cost_mean", "cost_median", "cost_over_all", "critical_attempts"}

// CSV is the table.
func (g *Group) CSV() ([]byte, error) {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.Write(columns)
	for _, s := range g.sections {
		head := []string{cells.Text(s.id), strconv.Itoa(s.version), s.text, s.mode, strconv.FormatBool(s.lesson)}
		if s.figures == nil {
			w.Write(filled(head))
			continue
		}
		f := s.figures
		s.rows(w, append(head[:len(head):len(head)], "all", "", ""), &f.all, true)
		for i := range f.numbers {
			p := &f.numbers[i]
			s.rows(w, append(head[:len(head):len(head)], "number", numberText(p.from), numberText(p.to)), p, false)
		}
		for i := range f.months {
			p := &f.months[i]
			s.rows(w, append(head[:len(head):len(head)], "month", monthText(p.from), monthText(p.to)), p, false)
		}
	}
	w.Flush()
	return b.Bytes(), w.Error()
}

// rows are those of one part: its own, and one for each kind. Costs are told of the whole section only.
func (s *section) rows(w *csv.Writer, head []string, p *part, whole bool) {
	passed, critical := strconv.Itoa(p.passed), p.critical.text()
	if s.lesson {
		passed, critical = "", ""
	}
	head = append(head, strconv.Itoa(p.attempts), strconv.Itoa(p.people))
	w.Write(filled(append(head[:len(head):len(head)], passed, critical, figure(p.points.mean), figure(p.points.low), figure(p.points.middle), figure(p.points.high))))
	for i := range s.figures.kinds {
		k := &s.figures.kinds[i]
		row := append(head[:len(head):len(head)], "", "", "", "", "", "", cells.Text(k.aspect), k.faultText(), cells.Text(k.name()), strconv.Itoa(p.occurred[i]))
		if whole {
			row = append(row, strconv.Itoa(k.people), figure(k.points.mean), figure(k.points.middle), figure(k.each), k.critical.text())
		}
		w.Write(filled(row))
	}
}

// faultText is what was the matter; kinds that are taken together have nothing in common.
func (k kind) faultText() string {
	if k.together() {
		return ""
	}
	return k.fault.String()
}

// text is a number of attempts, empty where too few people made them.
func (c guarded) text() string {
	if c.hidden {
		return ""
	}
	return strconv.Itoa(c.attempts)
}

// filled is a row with all its columns.
func filled(row []string) []string {
	return append(row[:len(row):len(row)], make([]string, len(columns)-len(row))...)
}

// figure is a number with no more digits than are worth anything: all of them could tell whose it is.
func figure(x float64) string { return cells.Number(math.Round(100*x) / 100) }
