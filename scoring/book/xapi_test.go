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

// Only what nobody mended counts among the errors that points never make good.
func TestStatementsCountWhatWasNotMended(t *testing.T) {
	b, _, _ := full(t)
	s := booktest.SignOff(t, file(t), booktest.Other, booktest.First)
	s.Passed, s.Outcome = false, book.NotYet
	s.Critical = []book.Critical{{Name: "air_given"}, {Name: "unlabelled_bag", Mended: true}}
	for _, st := range statements(t, b, b.Must(t, s, file(t), booktest.First), false) {
		if n := st.Context.Extensions[base+"/extensions/critical"]; n != 1 {
			t.Errorf("%v errors, want 1", n)
		}
	}
}

// What no longer counts is taken back: a void record, one that was superseded, and one that was deleted, of which nobody can tell any
// more whether it was passed or failed.
func TestWhatNoLongerCountsIsTakenBack(t *testing.T) {
	b, _, e := full(t)
	old := e["signoff"].Leaf.ID
	sent := statements(t, b, e["signoff"], false)
	takesBack := func(name string, back []book.Statement, sent ...string) {
		t.Helper()
		if len(back) != len(sent) {
			t.Fatalf("%s: %d are taken back of %d", name, len(back), len(sent))
		}
		for i := range back {
			if !strings.HasSuffix(back[i].Verb.ID, "/voided") || back[i].Object.ID != sent[i] || back[i].Object.ObjectType != "StatementRef" {
				t.Errorf("%s: %+v", name, back[i])
			}
		}
	}
	ids := []string{sent[0].ID, sent[1].ID, sent[2].ID}
	s := booktest.SignOff(t, file(t), booktest.Trainee, booktest.Second)
	s.Outcome, s.Override, s.Supersedes = book.NotYet, "helped by others", old
	newer := b.Must(t, s, file(t), booktest.Second)
	all := statements(t, b, newer, false)
	takesBack("superseded", all[:3], ids...)
	if len(all) != 6 || !strings.HasSuffix(all[5].Verb.ID, "/failed") {
		t.Fatalf("%+v", all)
	}
	v := b.Must(t, &book.Void{Of: newer.Leaf.ID, Learner: booktest.Trainee, Assessor: booktest.First, Reason: "the wrong learner"}, nil, booktest.First)
	takesBack("void", statements(t, b, v, false), all[3].ID, all[4].ID, all[5].ID)
	f := b.Must(t, &book.Forget{Of: old, By: booktest.Admin, Reason: "on wish"}, nil, booktest.Admin)
	back := statements(t, b, f, false)
	takesBack("deleted", back[:3], ids...)
	if len(back) != 4 {
		t.Errorf("%d of a deleted record, of which nobody can tell whether it was passed", len(back))
	}
	other := b.Must(t, &book.Void{Of: e["case"].Leaf.ID, Learner: booktest.Trainee, Assessor: booktest.Second, Reason: "counted twice"}, nil, booktest.Second)
	if none := statements(t, b, other, false); none != nil {
		t.Errorf("a case has no statements, and some are taken back: %v", none)
	}
}

func TestABaseIRIIsChecked(t *testing.T) {
	b, _, e := full(t)
	for _, bad := range []string{"", "department", "ftp://x.example", "https://", "https://x.example/?a=b"} {
		if _, err := b.Statements(e["signoff"], bad, false); err == nil || !strings.Contains(err.Error(), "no base IRI") {
			t.Errorf("%q: %v", bad, err)
		}
	}
	for _, good := range []string{"https://department.example/practice", "https://department.example/practice/", "http://department.example"} {
		if err := book.ValidBase(good); err != nil {
			t.Error(err)
		}
	}
}
