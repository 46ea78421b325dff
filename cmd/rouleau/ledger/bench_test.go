package ledger

import (
	"fmt"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"rouleau/cmd/rouleau/shelf"
	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
	"rouleau/scoring/book"
	"rouleau/scoring/book/booktest"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
)

// What the tests share: a book with people in it whose keys lie in memory, so that no test waits for passphrases, and attempts at a
// case of a few minutes.

const (
	origin  = "department.example/practice"
	planted = "Robin Plantedname" // of P-07; it must show nowhere
)

// bench is an open ledger with the keys of its people.
type bench struct {
	*Ledger
	signers map[string]*book.Signer
}

// opened is a ledger over a new book in a folder.
func opened(t testing.TB) *bench {
	t.Helper()
	where := filepath.Join(t.TempDir(), "book")
	s, err := shelf.Create(where, origin)
	if err != nil {
		t.Fatal(err)
	}
	b := booktest.New(t, s)
	s.Close()
	old := now
	now = func() time.Time {
		b.Clock = b.Clock.Add(time.Minute)
		return b.Clock
	}
	t.Cleanup(func() { now = old })
	return &bench{reopened(t, Places{where, where}), b.Keys}
}

func reopened(t testing.TB, p Places) *Ledger {
	t.Helper()
	l, err := Open(p)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { l.Close() })
	return l
}

// must writes a record that has to be allowed.
func (b *bench) must(t testing.TB, body any, attachment []byte, who string) *book.Entry {
	t.Helper()
	e, err := b.Write(body, attachment, b.signers[who])
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// signed drafts a sign-off and writes it.
func (b *bench) signed(t testing.TB, g Signing) *book.Entry {
	t.Helper()
	d, err := b.Draft(g)
	if err != nil {
		t.Fatal(err)
	}
	return b.must(t, d.SignOff, d.Attempt, g.Assessor)
}

// short is the case, as it is.
var short = sync.OnceValues(func() (*scenarios.Scenario, error) {
	return scenarios.Load(filepath.Join("..", "..", "..", "scoring", "attempt", "testdata", "short.yaml"))
})

// done is an attempt at the short case: by steady, or by idle, who does not pass.
type done struct {
	seed uint64
	by   string // as the file says who played
	when time.Time
	idle bool
	mode string
}

var made sync.Map // of done to bytes: nothing is played twice

func attemptOf(t testing.TB, d done) []byte {
	t.Helper()
	if d.when.IsZero() {
		d.when = time.Date(2031, 5, 13, 8, 0, 0, 0, time.UTC)
	}
	if d.mode == "" {
		d.mode = attempt.Assessment
	}
	if data, ok := made.Load(d); ok {
		return data.([]byte)
	}
	sc, err := short()
	if err != nil {
		t.Fatal(err)
	}
	assessment := d.mode == attempt.Assessment
	run := play.New(sc.Case(d.seed, assessment), d.seed)
	name := "steady"
	if d.idle {
		name = "idle"
	}
	o, err := operators.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	run.ToEnd(o.Play(operators.SheetOf(sc, &run.Case)))
	grade := scoring.Judge(sc, run, scoring.PlayYardstick(sc, d.seed, assessment))
	data := attempt.Of(sc, run, grade, attempt.By{Operator: d.by, When: d.when, Mode: d.mode}).Encode()
	made.Store(d, data)
	return data
}

// file puts an attempt into a folder.
func file(t testing.TB, folder, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(folder, name)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// signing is a sign-off as computed, of an attempt at the short case by P-07.
func signing(t testing.TB, d done) Signing {
	t.Helper()
	if d.by == "" {
		d.by = booktest.Trainee
	}
	g := Signing{Attempt: file(t, t.TempDir(), fmt.Sprintf("a-%d.json", d.seed), attemptOf(t, d)), Learner: booktest.Trainee, Assessor: booktest.First, For: "perfusionist", Outcome: book.Competent}
	if d.idle {
		g.Outcome = book.NotYet
	}
	return g
}

// change gives an attempt changed by somebody who can seal.
func change(t testing.TB, data []byte, how func(a *attempt.Attempt)) []byte {
	t.Helper()
	a, err := attempt.Parse("attempt", data)
	if err != nil {
		t.Fatal(err)
	}
	how(a)
	return a.PlayedBy(a.Operator).Encode()
}
