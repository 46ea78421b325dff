package book_test

import (
	"math"
	"strings"
	"testing"

	"rouleau/scoring/attempt"
	"rouleau/scoring/book"
	"rouleau/scoring/book/booktest"
)

// What somebody with a key and without scruples could sign: a record that says otherwise than its attempt, or an attempt that does
// not come out so.

func TestARecordThatIsNotItsAttempt(t *testing.T) {
	b, m, _ := full(t)
	want := map[int64]string{}
	for _, c := range []struct {
		change func(s *book.SignOff)
		want   string
	}{
		{func(s *book.SignOff) { s.Scenario.ID = "another" }, "names another scenario"},
		{func(s *book.SignOff) { s.Scenario.Version++ }, "names another scenario"},
		{func(s *book.SignOff) { s.Scenario.SHA256 = strings.Repeat("0", 64) }, "names another scenario"},
		{func(s *book.SignOff) { s.Model = "0" }, "how it was played"},
		{func(s *book.SignOff) { s.Seed = "8" }, "how it was played"},
		{func(s *book.SignOff) { s.Played = "2031-05-13T08:00:00Z" }, "how it was played"},
		{func(s *book.SignOff) { s.LengthS++ }, "how it was played"},
		{func(s *book.SignOff) { s.Breaks.Interruptions++ }, "how it was played"},
		{func(s *book.SignOff) { s.Breaks.TakenOver = true }, "how it was played"},
		{func(s *book.SignOff) { s.Mode, s.Outcome, s.Override = "practice", book.NotYet, "practice" }, "how it was played"},
		{func(s *book.SignOff) { s.Points = math.Nextafter(s.Points, 0) }, "the record has"},
		{func(s *book.SignOff) { s.PassMark-- }, "the record has"},
		{func(s *book.SignOff) { s.Passed, s.Outcome = false, book.NotYet }, "the record has"},
		{func(s *book.SignOff) { s.Criteria[0].Points-- }, "a criterion of the record"},
		{func(s *book.SignOff) { s.Criteria[1].Reason = "well done" }, "a criterion of the record"},
		{func(s *book.SignOff) { s.Criteria = s.Criteria[1:] }, "a criterion of the record"},
		{func(s *book.SignOff) { s.Critical = append(s.Critical, book.Critical{Name: "air_given"}) }, "errors that points never make good"},
		{func(s *book.SignOff) { s.Parts[0].Reached = !s.Parts[0].Reached }, "sums of the parts"},
	} {
		s := booktest.SignOff(t, file(t), booktest.Trainee, booktest.First)
		c.change(s)
		want[b.Must(t, s, file(t), booktest.First).Seq] = c.want
	}
	c, err := book.Read(m)
	if err != nil || c.Broken() != "" {
		t.Fatal(err, c.Broken()) // as bytes, all is as it was signed
	}
	for seq, what := range want {
		if f := c.Replay(seq); f.Verdict != book.Mismatch || !strings.Contains(f.What, what) {
			t.Errorf("record %d: %s (%s), want a mismatch and %q", seq, f.Verdict, f.What, what)
		}
	}
}

func TestAnAttemptThatComesOutOtherwise(t *testing.T) {
	b, m, _ := full(t)
	type found struct {
		verdict book.Verdict
		what    string
	}
	want := map[int64]found{}
	for _, c := range []struct {
		change  func(a *attempt.Attempt)
		verdict book.Verdict
		what    string
	}{
		{func(a *attempt.Attempt) { a.Model = "0" }, book.NoModel, "it was played with model version 0 and this program has"},
		{func(a *attempt.Attempt) {
			a.Checkpoints[4].Values[2] = attempt.Exact(math.Nextafter(float64(a.Checkpoints[4].Values[2]), 1e9))
		}, book.SameDecision, "tick"},
		{func(a *attempt.Attempt) { a.Grade.Points = 99 }, book.Mismatch, "the grade parts in points: 99 recorded"},
		{func(a *attempt.Attempt) { a.Actions = a.Actions[:len(a.Actions)-3] }, book.Mismatch, ""},
	} {
		a, err := attempt.Parse("attempt", file(t))
		if err != nil {
			t.Fatal(err)
		}
		c.change(a)
		data := a.PlayedBy(a.Operator).Encode() // sealed anew
		want[b.Must(t, booktest.SignOff(t, data, booktest.Other, booktest.First), data, booktest.First).Seq] = found{c.verdict, c.what}
	}
	careless, err := attempt.Parse("attempt", file(t))
	if err != nil {
		t.Fatal(err)
	}
	careless.When = "2031-05-13T08:00:00Z" // and the seal left as it was
	want[b.Must(t, booktest.SignOff(t, careless.Encode(), booktest.Other, booktest.First), careless.Encode(), booktest.First).Seq] = found{book.Mismatch, "the seal of the attempt does not fit it"}
	c, err := book.Read(m)
	if err != nil || c.Broken() != "" {
		t.Fatal(err, c.Broken())
	}
	for seq, w := range want {
		f := c.Replay(seq)
		if f.Verdict != w.verdict || f.What == "" || !strings.Contains(f.What, w.what) {
			t.Errorf("record %d: %s (%s), want %s and %q", seq, f.Verdict, f.What, w.verdict, w.what)
		}
	}
}
