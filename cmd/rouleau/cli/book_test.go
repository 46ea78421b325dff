package cli

import (
	"io"
	"math"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
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

// What the commands of the book end with where a script cannot bring it about: records that somebody with a key has forged, and what
// a record store answers.

// assessed is a passed assessment at a case of a few minutes.
func assessed(t *testing.T) *attempt.Attempt {
	t.Helper()
	sc, err := scenarios.Load(filepath.Join("..", "..", "..", "scoring", "attempt", "testdata", "short.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	run := play.New(sc.Case(7, true), 7)
	run.ToEnd(operators.NewSteady(operators.SheetOf(sc, &run.Case)))
	grade := scoring.Judge(sc, run, scoring.YardstickOf(run))
	return attempt.Of(sc, run, grade, attempt.By{Operator: booktest.Trainee, When: time.Date(2031, 5, 13, 8, 0, 0, 0, time.UTC), Mode: attempt.Assessment})
}

// bookWith is a book in a folder with sign-offs of attempts, as somebody with a key can write them.
func bookWith(t *testing.T, all ...*attempt.Attempt) string {
	t.Helper()
	where := filepath.Join(t.TempDir(), "book")
	s, err := shelf.Create(where, "department.example/practice")
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	b := booktest.New(t, s)
	for _, a := range all {
		data := a.PlayedBy(a.Operator).Encode()
		b.Must(t, booktest.SignOff(t, data, booktest.Trainee, booktest.First), data, booktest.First)
	}
	return where
}

func TestVerifyTellsVerdictsApart(t *testing.T) {
	good, bits, model, grade := assessed(t), assessed(t), assessed(t), assessed(t)
	bits.Checkpoints[3].Values[1] = attempt.Exact(math.Nextafter(float64(bits.Checkpoints[3].Values[1]), 1e9))
	model.Model = "0"
	grade.Grade.Points = 99
	for name, c := range map[string]struct {
		all  []*attempt.Attempt
		code int
		want []string
	}{
		"exact":          {[]*attempt.Attempt{good}, 0, []string{"     1  exact: ", "     5  sound: ", "everything is as it was written"}},
		"other bits":     {[]*attempt.Attempt{good, bits}, 4, []string{"     1  same decisions: ", "record 7 (", "), same decisions: between tick"}},
		"no model":       {[]*attempt.Attempt{bits, model}, 5, []string{"     1  model not here: ", "it was played with model version 0"}},
		"otherwise":      {[]*attempt.Attempt{bits, model, grade}, 6, []string{"     1  MISMATCH: ", "the grade parts in points: 99 recorded, 100 now", "AN ATTEMPT COMES OUT OTHERWISE"}},
		"nothing played": {[]*attempt.Attempt{bits, model, grade}, 0, []string{"     8  sound: ", "no attempt was played again"}},
	} {
		args := []string{"book", "verify", "--book", bookWith(t, c.all...)}
		if name == "nothing played" {
			args = append(args, "--no-replay")
		}
		out, errs, code := call(t, args...)
		flat := strings.Join(strings.Fields(out), " ")
		for _, want := range c.want {
			if !strings.Contains(out, want) && !strings.Contains(flat, want) {
				t.Errorf("%s: no %q in\n%s", name, want, out)
			}
		}
		if code != c.code || errs != "" {
			t.Errorf("%s: ended with %d, want %d: %s", name, code, c.code, errs)
		}
	}
}

// The help says what each exit code means.
func TestVerifySaysWhatItsExitCodesMean(t *testing.T) {
	out, _, _ := call(t, "book", "verify", "--help")
	flat := strings.Join(strings.Fields(out), " ")
	for _, want := range []string{"0 all is as written", "1 something is not as it was written", "6 an attempt comes out otherwise", "5 one was played with a model", "4 one comes to the same decisions with other bits"} {
		if !strings.Contains(flat, want) {
			t.Errorf("no %q in\n%s", want, out)
		}
	}
}

// A book that was last written to by somebody whose clock was years ahead can be written to again, once somebody says so.
func TestAClockThatWasAhead(t *testing.T) {
	where := filepath.Join(t.TempDir(), "book")
	s, err := shelf.Create(where, "department.example/practice")
	if err != nil {
		t.Fatal(err)
	}
	b := booktest.New(t, s) // in 2031
	b.Clock = time.Date(2231, 1, 1, 0, 0, 0, 0, time.UTC)
	b.Must(t, &book.Event{By: booktest.First, What: book.EventAway, Date: "2031-05-11", Reason: "x"}, nil, booktest.First)
	s.Close()
	const phrase = "four words make one"
	if err := shelf.SaveKey(where, booktest.First, book.Assessor, b.Keys[booktest.First], phrase); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "phrase")
	if err := os.WriteFile(file, []byte(phrase), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		more []string
		code int
		errs string
	}{{nil, 1, "was last written to at 2231-01-01T00:01:00Z: set the clock right; if it is right, and the other one was not, add --clock-is-right"}, {[]string{"--clock-is-right"}, 0, ""}, {nil, 0, ""}} {
		_, errs, code := call(t, append([]string{"book", "event", "away", "--everybody", "--reason", "x", "--as", booktest.First, "--passphrase-file", file, "--book", where}, c.more...)...)
		if code != c.code || !strings.Contains(strings.Join(strings.Fields(errs), " "), c.errs) || (c.errs == "") != (errs == "") {
			t.Errorf("%v: %d %s", c.more, code, errs)
		}
	}
	if out, errs, code := call(t, "book", "verify", "--book", where); code != 0 {
		t.Error(out, errs, code)
	}
}

func TestSendingTellsWhatBecameOfIt(t *testing.T) {
	const secret = "nobody may read this"
	file := filepath.Join(t.TempDir(), "secret")
	if err := os.WriteFile(file, []byte(secret+"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	answer := http.StatusOK
	store := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if _, got, _ := r.BasicAuth(); got != secret {
			t.Errorf("the secret came as %q", got)
		}
		w.WriteHeader(answer)
		io.WriteString(w, "answered with "+secret)
	}))
	defer store.Close()
	where := bookWith(t, assessed(t))
	for _, c := range []struct {
		answer, code int
		out, errs    string
	}{
		{http.StatusUnauthorized, 3, "taken by the store: 0; still in the outbox: 3", "it does not let practice in; see user and secret; what was not taken stays in the outbox"},
		{http.StatusBadRequest, 1, "the record store answers 400: answered with …", "statements that the store refuses: 3; they stay in the outbox"},
		{http.StatusOK, 0, "taken by the store: 3; still in the outbox: 0", ""},
		{http.StatusOK, 0, "taken by the store: 0; still in the outbox: 0", ""},
	} {
		answer = c.answer
		out, errs, code := call(t, "book", "send", "--book", where, "--base", "https://department.example/practice", "--to", store.URL+"/xapi", "--user", "practice", "--secret-file", file)
		flat := strings.Join(strings.Fields(out), " ")
		if code != c.code || !strings.Contains(flat, c.out) || !strings.Contains(strings.Join(strings.Fields(errs), " "), c.errs) || (c.errs == "") != (errs == "") {
			t.Errorf("answered %d, ended with %d: %s\n%s", c.answer, code, out, errs)
		}
		if strings.Contains(out+errs, secret) {
			t.Errorf("the secret is told: %s %s", out, errs)
		}
	}
}

// What a book says is shown and not obeyed by the terminal.
func TestABookIsShownTamed(t *testing.T) {
	where := filepath.Join(t.TempDir(), "book")
	s, err := shelf.Create(where, "department.example/practice")
	if err != nil {
		t.Fatal(err)
	}
	b := booktest.New(t, s)
	e := b.Must(t, &book.Event{By: booktest.First, What: book.EventIncident, Date: "2031-05-11", Reason: "red \x1b[31m alert"}, nil, booktest.First)
	s.Close()
	out, errs, code := call(t, "book", "show", e.Leaf.ID, "--book", where)
	if code != 0 || errs != "" || strings.Contains(out, "\x1b") || !strings.Contains(out, "red \ufffd[31m alert") {
		t.Errorf("%d %q %q", code, out, errs)
	}
}
