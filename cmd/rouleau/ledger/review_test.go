package ledger

import (
	"strings"
	"testing"

	"rouleau/cmd/rouleau/shelf"
	"rouleau/scoring/book"
	"rouleau/scoring/book/booktest"
)

// Who could sign is known before anybody tries.
func TestWhoMaySign(t *testing.T) {
	b := opened(t)
	if err := shelf.SaveKey(b.Keys, booktest.First, book.Assessor, b.signers[booktest.First], "four words together"); err != nil {
		t.Fatal(err)
	}
	if err := b.MaySign(booktest.Trainee, booktest.First); err != nil {
		t.Error(err)
	}
	if err := b.MaySign("", booktest.First); err != nil {
		t.Error(err)
	}
	for _, c := range []struct {
		learner, assessor, want string
		kind                    shelf.Kind
	}{
		{booktest.First, booktest.First, "no one signs their own", shelf.NotRight},
		{booktest.Trainee, "Robin", "is no code", shelf.Wrong},
		{booktest.Trainee, booktest.Other, "P-08 is no assessor of this book", shelf.NotRight},
		{"P-99", booktest.First, "P-99 is no learner of this book", shelf.NotRight},
		{booktest.Trainee, booktest.Second, "there is no key of AS-2 as assessor here", shelf.Wrong},
	} {
		said(t, b.MaySign(c.learner, c.assessor), int(c.kind), c.want)
	}
}

// A learner is found by code or by name, in whatever case and spacing, and nobody else is.
func TestTheLearnerOfAnAttempt(t *testing.T) {
	b := opened(t)
	names := map[string]string{booktest.Trainee: planted, booktest.First: "An Assessor"}
	for operator, want := range map[string]string{booktest.Trainee: booktest.Trainee, " " + strings.ToUpper(planted): booktest.Trainee, "An Assessor": "", booktest.First: "", "steady": "", "": ""} {
		if got := b.LearnerNamed(operator, names); got != want {
			t.Errorf("%q is %q, want %q", operator, got, want)
		}
	}
}

// One record is verified by itself, within the book as it is stored; and when it is due again is what the book then says.
func TestOneRecordVerified(t *testing.T) {
	b := opened(t)
	due := b.DueOf("short-and-brisk")
	e := b.signed(t, signing(t, done{seed: 7}))
	if got := e.Body.(*book.SignOff).Due; got != due {
		t.Errorf("it is due again %s, and %s was said before", got, due)
	}
	other := b.must(t, &book.Case{Learner: booktest.Trainee, Assessor: booktest.First, Competency: "salvage", Date: "2031-05-14"}, nil, booktest.First)
	root, err := b.Root()
	if err != nil {
		t.Fatal(err)
	}
	one, err := VerifyOne(b.Places, e.Leaf.ID[:8])
	if err != nil || one.Verdict != book.Exact || one.Seq != e.Seq || len(one.Log) > 0 || one.Root != root.String() || int64(one.Records) != b.Size() {
		t.Errorf("%+v %v", one, err)
	}
	if one, err = VerifyOne(b.Places, other.Leaf.ID); err != nil || one.Verdict != book.Sound {
		t.Errorf("%+v %v", one, err)
	}
	_, err = VerifyOne(b.Places, "00000000")
	said(t, err, int(shelf.Wrong), "there is no record 00000000")
	_, err = VerifyOne(Places{Book: t.TempDir()}, e.Leaf.ID)
	said(t, err, int(shelf.Wrong), "there is no book in this folder")
}
