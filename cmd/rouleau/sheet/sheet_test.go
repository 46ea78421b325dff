package sheet_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rouleau/cmd/rouleau/sheet"
	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
	"rouleau/scoring/book"
	"rouleau/scoring/book/booktest"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
)

func signed(t *testing.T) (*booktest.Bench, *book.Entry) {
	t.Helper()
	sc, err := scenarios.Load(filepath.Join("..", "..", "..", "scoring", "attempt", "testdata", "short.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	run := play.New(sc.Case(3, true), 3)
	run.ToEnd(operators.Idle{})
	a := attempt.Of(sc, run, scoring.Judge(sc, run, scoring.PlayYardstick(sc, 3, true)), attempt.By{Operator: "Jo Example", Mode: attempt.Assessment})
	b := booktest.New(t, &booktest.Memory{Name: "department.example/rouleau"})
	s := booktest.SignOff(t, a.Encode(), booktest.Trainee, booktest.First)
	s.Rated = []book.Rated{{Item: "handover", Level: 1, Anchor: "leaves out what matters"}, {Item: "asepsis", Level: 2, Anchor: "touches nothing"}}
	s.Comments = "stood aside throughout"
	s.Training = []book.Training{{What: "lot", Text: "T-4711"}}
	s.Earlier = []book.Earlier{{Played: "2031-05-01T08:00:00Z", Mode: "practice", Points: 40, Critical: 1}}
	s.Number = 2
	e := b.Must(t, s, a.Encode(), booktest.First)
	b.Must(t, &book.Rating{Of: e.Leaf.ID, Learner: booktest.Trainee, Assessor: booktest.Second, Rated: []book.Rated{{Item: "handover", Level: 2}, {Item: "asepsis", Level: 1}}}, nil, booktest.Second)
	return b, e
}

func TestASheetShowsTheRecordAndNoName(t *testing.T) {
	b, e := signed(t)
	p, err := sheet.Of(b.State, e, false)
	if err != nil {
		t.Fatal(err)
	}
	html, err := p.HTML()
	if err != nil {
		t.Fatal(err)
	}
	so := e.Body.(*book.SignOff)
	for _, want := range []string{booktest.Trainee, booktest.First, e.Leaf.ID, e.Leaf.SHA256, "not yet competent", "leaves out what matters", "the same level for 0 of 2", "never made good by points: 1", so.Scenario.SHA256, "department.example/rouleau"} {
		if !bytes.Contains(html, []byte(want)) {
			t.Errorf("%q is not on the sheet", want)
		}
	}
	for _, c := range so.Criteria {
		if m, _ := scenarios.MeasureNamed(c.Measure); !bytes.Contains(html, []byte(m.Meaning)) {
			t.Errorf("%s is not on the sheet", c.Measure)
		}
	}
	signed, err := b.Newest()
	if root := strings.Split(string(signed), "\n")[2]; err != nil || !bytes.Contains(html, []byte(fmt.Sprintf("%d records: %s", b.Size(), root))) {
		t.Errorf("the root of the newest checkpoint, %s, is not on the sheet (%v)", root, err)
	}
	for _, not := range []string{"Jo Example", "stood aside", "T-4711"} {
		if bytes.Contains(html, []byte(not)) {
			t.Errorf("%q is on the sheet", not)
		}
	}
	pdf, err := p.PDF()
	if err != nil || !bytes.HasPrefix(pdf, []byte("%PDF")) {
		t.Error(err)
	}
	with, _ := sheet.Of(b.State, e, true)
	if html, _ := with.HTML(); !bytes.Contains(html, []byte("stood aside")) || !bytes.Contains(html, []byte("T-4711")) {
		t.Error("comments asked for are not on the sheet")
	}
	if where := os.Getenv("ROULEAU_SHEET"); where != "" { // to look at it
		os.WriteFile(where, pdf, 0o644)
	}
	b.Must(t, &book.Void{Of: e.Leaf.ID, Learner: booktest.Trainee, Assessor: booktest.Second, Reason: "the wrong learner"}, nil, booktest.Second)
	void, _ := sheet.Of(b.State, e, false)
	if html, _ := void.HTML(); !bytes.Contains(html, []byte("void, by record")) {
		t.Error("a void record does not say so")
	}
	if _, err := sheet.Of(b.State, b.Entries[0], false); err == nil || !strings.Contains(err.Error(), "has no sheet") {
		t.Error(err)
	}
}
