package ledger

import (
	"bytes"
	"context"
	"errors"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"rouleau/cmd/rouleau/shelf"
	"rouleau/scoring/attempt"
	"rouleau/scoring/book"
	"rouleau/scoring/book/booktest"
)

// forged puts a sign-off of any attempt into the book, as somebody with a key and without scruples could.
func (b *bench) forged(t *testing.T, data []byte) string {
	t.Helper()
	s := booktest.SignOff(t, data, booktest.Trainee, booktest.First)
	return b.must(t, s, data, booktest.First).Leaf.ID
}

// Every verdict is told, wherever it stands in the book, however many play, and the worst one decides.
func TestEveryVerdictIsTold(t *testing.T) {
	b := opened(t)
	good := attemptOf(t, done{seed: 7, by: booktest.Trainee})
	want := map[string]book.Verdict{}
	exact := b.forged(t, good)
	want[exact] = book.Exact
	verify := func(workers int) *Verified {
		t.Helper()
		told := 0
		v, err := Verify(t.Context(), b.Places, Verification{Workers: workers, Progress: func(done, all int, since time.Time) {
			told++
			if done != told || done > all {
				t.Errorf("told %d of %d as the %d.", done, all, told)
			}
		}})
		if err != nil {
			t.Fatal(err)
		}
		if told != v.Replayed {
			t.Errorf("progress was told %d times of %d", told, v.Replayed)
		}
		for _, f := range v.Findings {
			if w, ok := want[f.ID]; ok && f.Verdict != w || !ok && f.Verdict != book.Sound {
				t.Errorf("record %d: %s (%s), want %s", f.Seq, f.Verdict, f.What, w)
			}
			if (f.What == "") != (f.Verdict <= book.Exact) {
				t.Errorf("record %d, %s, says %q", f.Seq, f.Verdict, f.What)
			}
		}
		return v
	}
	if v := verify(1); v.Worst() != book.Exact || len(v.Log) > 0 {
		t.Error(v)
	}
	gone := b.forged(t, attemptOf(t, done{seed: 8, by: booktest.Trainee}))
	b.must(t, &book.Forget{Of: gone, By: booktest.Admin, Reason: "on wish"}, nil, booktest.Admin)
	want[gone] = book.Forgotten
	if v := verify(1); v.Worst() != book.Forgotten {
		t.Error(v.Worst())
	}
	want[b.forged(t, change(t, good, func(a *attempt.Attempt) {
		a.Checkpoints[4].Values[2] = attempt.Exact(math.Nextafter(float64(a.Checkpoints[4].Values[2]), 1e9))
	}))] = book.SameDecision
	if v := verify(2); v.Worst() != book.SameDecision {
		t.Error(v.Worst())
	}
	want[b.forged(t, change(t, good, func(a *attempt.Attempt) { a.Model = "0" }))] = book.NoModel
	if v := verify(2); v.Worst() != book.NoModel {
		t.Error(v.Worst())
	}
	want[b.forged(t, change(t, good, func(a *attempt.Attempt) { a.Grade.Points = 99 }))] = book.Mismatch
	v := verify(3)
	if v.Worst() != book.Mismatch || v.Replayed != 4 || v.Count(book.Exact) != 1 {
		t.Error(v.Worst(), v.Replayed)
	}
	if quick, err := Verify(t.Context(), b.Places, Verification{NoReplay: true}); err != nil || quick.Replayed != 0 || quick.Worst() != book.Forgotten {
		t.Error(quick, err)
	}
}

// What is changed in the file of the book is found without opening it, and nothing more is written to it.
func TestADamagedFileIsFound(t *testing.T) {
	b := opened(t)
	g := signing(t, done{seed: 7})
	g.Comments = "a calm hand throughout"
	b.signed(t, g)
	b.Close()
	path := filepath.Join(b.Places.Book, shelf.FileName)
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for _, flip := range []string{"a calm hand", `"operator": "P-07"`, `"kind":"signoff"`, origin + "\n5\n"} {
		changed := bytes.Clone(data)
		at := bytes.Index(changed, []byte(flip))
		if at < 0 {
			t.Fatalf("%q is not in the file", flip)
		}
		changed[at+3] ^= 1
		if err := os.WriteFile(path, changed, 0o600); err != nil {
			t.Fatal(err)
		}
		v, err := Verify(t.Context(), b.Places, Verification{})
		if err != nil || v.Worst() != book.Broken {
			t.Errorf("%q: %v %v", flip, v, err)
		}
		l, err := Open(b.Places)
		if strings.Contains(flip, "\n5\n") { // a checkpoint is compared by verify alone
			if err != nil {
				t.Error(err)
			}
			l.Close()
			continue
		}
		if err == nil || !strings.Contains(err.Error(), "nothing is written to a damaged book") {
			t.Errorf("%q: %v", flip, err)
		}
	}
}

func TestCheckpointsKeptElsewhere(t *testing.T) {
	b := opened(t)
	folder := t.TempDir()
	signed, err := b.Newest()
	if err != nil {
		t.Fatal(err)
	}
	mine := file(t, folder, "mine.txt", bytes.ReplaceAll(append(signed, '\n'), []byte("\n"), []byte("\r\n"))) // as it came by mail
	e := b.signed(t, signing(t, done{seed: 7}))
	if v, err := Verify(t.Context(), b.Places, Verification{NoReplay: true, Against: []string{mine}}); err != nil || v.Worst() != book.Sound || v.Kept != 1 {
		t.Error(v, err)
	}
	other := opened(t)
	theirs, err := other.Newest()
	if err != nil {
		t.Fatal(err)
	}
	if v, err := Verify(t.Context(), b.Places, Verification{NoReplay: true, Against: []string{mine, file(t, folder, "theirs.txt", bytes.Replace(theirs, []byte("\n5\n"), []byte("\n4\n"), 1))}}); err != nil || v.Worst() != book.Broken ||
		!strings.Contains(v.Log[0], "checkpoint 2 kept elsewhere") {
		t.Error(v, err)
	}
	_, err = Verify(t.Context(), b.Places, Verification{Against: []string{"nothing"}})
	said(t, err, int(shelf.Wrong), "nothing: it cannot be read")
	_, err = Verify(t.Context(), b.Places, Verification{Against: []string{signing(t, done{seed: 7}).Attempt}})
	said(t, err, int(shelf.Wrong), "this is no checkpoint")

	proof := filepath.Join(folder, "proof.json")
	if _, err := b.ProveTo(e.Leaf.ID[:8], true, proof); err != nil {
		t.Fatal(err)
	}
	newest, err := b.Newest()
	if err != nil {
		t.Fatal(err)
	}
	kept := file(t, folder, "kept.txt", newest)
	if _, got, c, err := CheckProof(proof, kept); err != nil || got.Leaf.ID != e.Leaf.ID || c.Size != b.Size() || got.Body.(*book.SignOff).Points != 100 {
		t.Error(got, c, err)
	}
	_, _, _, err = CheckProof(proof, mine)
	said(t, err, int(shelf.NotRight), "is not the one in")
	_, _, _, err = CheckProof(proof, proof)
	said(t, err, int(shelf.Wrong), "this is no checkpoint")
	if _, err := b.ProveTo(e.Leaf.ID, false, proof); err != nil {
		t.Fatal(err)
	}
	if p, got, _, err := CheckProof(proof, ""); err != nil || p.Body != "" || got.Body != nil {
		t.Error(got, err)
	}
	data, _ := os.ReadFile(proof)
	for _, c := range [][2]string{{`"seq": 5`, `"seq": 4`}, {`"schema"`, `"shema"`}, {`{`, `[`}} {
		bad := file(t, folder, "bad.json", bytes.Replace(data, []byte(c[0]), []byte(c[1]), 1))
		_, _, _, err := CheckProof(bad, "")
		said(t, err, int(shelf.NotRight), "bad.json: ")
	}
	_, err = b.ProveTo(e.Leaf.ID, false, filepath.Join(folder, "none", "proof.json"))
	said(t, err, int(shelf.Wrong), "is not there; make it first")
}

// Verifying that is stopped plays no more attempts and gives no half a verdict.
func TestVerifyingIsStopped(t *testing.T) {
	b := opened(t)
	for seed := range uint64(3) {
		b.forged(t, attemptOf(t, done{seed: 7 + seed, by: booktest.Trainee}))
	}
	ctx, stop := context.WithCancel(t.Context())
	told := 0
	v, err := Verify(ctx, b.Places, Verification{Workers: 1, Progress: func(int, int, time.Time) {
		told++
		stop()
	}})
	if v != nil || !errors.Is(err, context.Canceled) || told != 1 {
		t.Errorf("%v %v after %d", v, err, told)
	}
}
