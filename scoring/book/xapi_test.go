package book_test

import (
	"encoding/json"
	"strings"
	"testing"

	"rouleau/scoring/book"
	"rouleau/scoring/book/booktest"
)

const base = "https://department.example/practice"

func statements(t *testing.T, b *booktest.Bench, e *book.Entry, comments bool) []book.Statement {
	t.Helper()
	all, err := b.Statements(e, base, comments)
	if err != nil {
		t.Fatal(err)
	}
	return all
}

func TestStatementsSayWhatWasDecided(t *testing.T) {
	b, _, e := full(t)
	all := statements(t, b, e["signoff"], false)
	if len(all) != 3 || !strings.HasSuffix(all[0].Verb.ID, "/attempted") || !strings.HasSuffix(all[1].Verb.ID, "/completed") || !strings.HasSuffix(all[2].Verb.ID, "/passed") {
		t.Fatalf("%+v", all)
	}
	r := all[2].Result
	if r.Score == nil || !*r.Success || !*r.Completion || !strings.HasPrefix(r.Duration, "PT") || all[2].Context.Instructor.Account.Name != booktest.First || all[2].Actor.Account.Name != booktest.Trainee {
		t.Errorf("%+v", r)
	}
	// the same every time, also out of a book that was read anew
	again, err := book.Open(b.Store, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	once, err := again.Statements(again.Find(e["signoff"].Leaf.ID), base, false)
	if err != nil {
		t.Fatal(err)
	}
	first, _ := json.Marshal(all)
	second, _ := json.Marshal(once)
	if string(first) != string(second) {
		t.Error("the statements of a record are not the same twice")
	}
	if strings.Contains(string(first), "calm") || strings.Contains(string(first), `"response"`) {
		t.Error("comments go out without being asked for")
	}
	if with, _ := json.Marshal(statements(t, b, e["signoff"], true)); !strings.Contains(string(with), "a calm assessment") {
		t.Error("comments do not go out where they are asked for")
	}
	if none := statements(t, b, e["event"], false); none != nil {
		t.Errorf("an event makes statements: %v", none)
	}
}

// No score contradicts the verdict.
func TestNoScoreContradictsTheVerdict(t *testing.T) {
	b, _, _ := full(t)
	for name, c := range map[string]struct {
		change func(s *book.SignOff)
		scored bool
		verb   string
	}{
		"failed for an error":      {func(s *book.SignOff) { s.Passed, s.Outcome = false, book.NotYet }, false, "failed"},
		"passed against the mark":  {func(s *book.SignOff) { s.Points, s.Passed, s.Override = 60, false, "seen at the bench" }, false, "passed"},
		"failed under the mark":    {func(s *book.SignOff) { s.Points, s.Passed, s.Outcome = 60, false, book.NotYet }, true, "failed"},
		"a hair under the mark":    {func(s *book.SignOff) { s.Points, s.PassMark, s.Passed, s.Outcome = 74.999, 75, false, book.NotYet }, true, "failed"},
		"passed, as computed":      {func(s *book.SignOff) {}, true, "passed"},
		"failed though it was met": {func(s *book.SignOff) { s.Outcome, s.Override = book.NotYet, "helped by others" }, false, "failed"},
	} {
		s := booktest.SignOff(t, file(t), booktest.Other, booktest.First)
		c.change(s)
		all := statements(t, b, b.Must(t, s, file(t), booktest.First), false)
		last := all[len(all)-1]
		if !strings.HasSuffix(last.Verb.ID, "/"+c.verb) || (last.Result.Score != nil) != c.scored {
			t.Errorf("%s: %s with %+v", name, last.Verb.ID, last.Result.Score)
		}
		if k := last.Result.Score; k != nil && c.verb == "failed" && k.Raw >= s.PassMark {
			t.Errorf("%s: failed with %g of %g", name, k.Raw, s.PassMark)
		}
	}
}

func TestAVoidRecordTakesItsStatementsBack(t *testing.T) {
	b, _, e := full(t)
	sent := statements(t, b, e["signoff"], false)
	v := b.Must(t, &book.Void{Of: e["signoff"].Leaf.ID, Learner: booktest.Trainee, Assessor: booktest.Second, Reason: "the wrong learner"}, nil, booktest.Second)
	back := statements(t, b, v, false)
	if len(back) != len(sent) {
		t.Fatalf("%d are taken back of %d", len(back), len(sent))
	}
	for i := range back {
		if !strings.HasSuffix(back[i].Verb.ID, "/voided") || back[i].Object.ID != sent[i].ID || back[i].Object.ObjectType != "StatementRef" {
			t.Errorf("%+v", back[i])
		}
	}
}

func TestABaseIRIIsChecked(t *testing.T) {
	b, _, e := full(t)
	for _, bad := range []string{"", "department", "ftp://x.example", "https://", "https://x.example/?a=b"} {
		if _, err := b.Statements(e["signoff"], bad, false); err == nil || !strings.Contains(err.Error(), "no base IRI") {
			t.Errorf("%q: %v", bad, err)
		}
	}
}
