package book_test

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/gowebpki/jcs"

	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
	"rouleau/scoring/book"
	"rouleau/scoring/book/booktest"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
)

// recorded is an assessment of a few minutes as steady plays it.
var recorded = sync.OnceValues(func() ([]byte, error) {
	sc, err := scenarios.Load(filepath.Join("..", "attempt", "testdata", "short.yaml"))
	if err != nil {
		return nil, err
	}
	run := play.New(sc.Case(7, true), 7)
	run.ToEnd(operators.NewSteady(operators.SheetOf(sc, &run.Case)))
	grade := scoring.Judge(sc, run, scoring.PlayYardstick(sc, 7, true))
	return attempt.Of(sc, run, grade, attempt.By{Operator: "P-07", When: time.Date(2031, 5, 14, 8, 0, 0, 0, time.UTC), Mode: attempt.Assessment}).Encode(), nil
})

func file(t testing.TB) []byte {
	t.Helper()
	data, err := recorded()
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// full is a book with a record of each kind in it.
func full(t testing.TB) (*booktest.Bench, *booktest.Memory, map[string]*book.Entry) {
	t.Helper()
	m := &booktest.Memory{Name: "department.example/rouleau"}
	b := booktest.New(t, m)
	plan, err := os.ReadFile("testdata/plan.yaml")
	if err != nil {
		t.Fatal(err)
	}
	e := map[string]*book.Entry{}
	e["plan"] = b.Must(t, &book.PlanText{By: booktest.Admin, YAML: string(plan)}, nil, booktest.Admin)
	s := booktest.SignOff(t, file(t), booktest.Trainee, booktest.First)
	s.Rated = []book.Rated{{"handover", 3, "complete, and asks whether it was understood", ""}, {"asepsis", 2, "touches nothing", "once unsure"}}
	s.Comments, s.Feedback = "a calm assessment", "talked through the second bowl"
	s.Training = []book.Training{{"lot", "T-4711"}}
	e["signoff"] = b.Must(t, s, file(t), booktest.First)
	e["rating"] = b.Must(t, &book.Rating{Of: e["signoff"].Leaf.ID, Learner: booktest.Trainee, Assessor: booktest.Second, Rated: []book.Rated{{"handover", 3, "", ""}, {"asepsis", 3, "", ""}}}, nil, booktest.Second)
	e["case"] = b.Must(t, &book.Case{Learner: booktest.Trainee, Assessor: booktest.First, Competency: "salvage", Date: "2031-05-10"}, nil, booktest.First)
	e["event"] = b.Must(t, &book.Event{Learner: booktest.Other, By: booktest.First, What: book.EventIncident, Date: "2031-05-11", Reason: "a near miss with a label"}, nil, booktest.First)
	return b, m, e
}

func TestABookThatWasNotTouchedIsSound(t *testing.T) {
	b, m, e := full(t)
	c, err := book.Read(m)
	if err != nil {
		t.Fatal(err)
	}
	if len(c.Log) > 0 {
		t.Error(c.Log)
	}
	for i := range c.Findings {
		f := c.Replay(int64(i))
		want := book.Sound
		if f.ID == e["signoff"].Leaf.ID {
			want = book.Exact
		}
		if f.Verdict != want {
			t.Errorf("record %d: %s (%s), want %s", i, f.Verdict, f.What, want)
		}
	}
	root, _ := b.Root()
	if again, _ := c.State.Root(); again != root || b.Size() != 10 {
		t.Errorf("%d records, roots %v and %v", b.Size(), root, again)
	}
}

// alike draws numbers that all begin with the same digits.
type alike struct{ booktest.Chance }

func (a *alike) Read(b []byte) (int, error) {
	n, err := a.Chance.Read(b)
	b[0], b[1] = 0xab, 0xcd
	return n, err
}

func TestARecordIsFoundByItsBeginning(t *testing.T) {
	b, m, e := full(t)
	other, err := book.Open(m, &alike{booktest.Chance{N: 1000}}, func() time.Time { return b.Clock.Add(time.Hour) })
	if err != nil {
		t.Fatal(err)
	}
	var ids []string
	for range 2 {
		one, err := other.Write(&book.Event{By: booktest.First, What: book.EventAway, Date: "2031-01-01", Reason: "x"}, nil, b.Keys[booktest.First])
		if err != nil {
			t.Fatal(err)
		}
		ids = append(ids, one.Leaf.ID)
	}
	id := e["case"].Leaf.ID
	for text, want := range map[string]string{id: id, id[:8]: id, id[:4]: id, id[:3]: "", id + "0": "", "": "", "abcd": "", ids[0]: ids[0], ids[1][:16]: ids[1]} {
		if got := other.Find(text); (got == nil) != (want == "") || got != nil && got.Leaf.ID != want {
			t.Errorf("%q gives %v, want %q", text, got, want)
		}
	}
}

// A record that was deleted has its own verdict, the book stays whole, and what it said is nowhere any more.
func TestDeletingLeavesASaltedHash(t *testing.T) {
	b, m, e := full(t)
	id := e["signoff"].Leaf.ID
	whole := m.All[e["signoff"].Seq]
	b.Must(t, &book.Forget{Of: id, By: booktest.Admin, Reason: "on the learner's wish"}, nil, booktest.Admin)
	c, err := book.Read(m)
	if err != nil || len(c.Log) > 0 {
		t.Fatal(err, c.Log)
	}
	for _, f := range c.Findings {
		if want := map[bool]book.Verdict{true: book.Forgotten, false: book.Sound}[f.ID == id]; f.Verdict != want {
			t.Errorf("%d: %s (%s), want %s", f.Seq, f.Verdict, f.What, want)
		}
	}
	row := m.All[e["signoff"].Seq]
	if row.Body != nil || row.Attachment != nil || !bytes.Contains(row.Leaf, []byte(`"salt":"`)) {
		t.Error("the record is still there, or its leaf has no salt")
	}
	for _, r := range m.All {
		if bytes.Contains(r.Body, []byte("a calm assessment")) {
			t.Error("what it said is still there")
		}
	}
	// what is put back, or left half, is damage
	for _, put := range []book.Row{whole, {Leaf: whole.Leaf, Signature: whole.Signature, Attachment: whole.Attachment}, {Leaf: whole.Leaf, Signature: whole.Signature, Body: whole.Body}} {
		m.All[e["signoff"].Seq] = put
		if c, _ = book.Read(m); c.Findings[e["signoff"].Seq].Verdict != book.Broken {
			t.Errorf("%s: what was deleted is there again", c.Findings[e["signoff"].Seq].Verdict)
		}
	}
	m.All[e["signoff"].Seq] = row
	// without the word of the book it is damage
	m.All[e["case"].Seq].Body = nil
	if c, _ = book.Read(m); c.Findings[e["case"].Seq].Verdict != book.Broken {
		t.Error("a body taken out was not found")
	}
	if _, err := book.Open(m, nil, time.Now); err == nil || !strings.Contains(err.Error(), "nothing is written to a damaged book") {
		t.Error(err)
	}
}

// A book that somebody else damages while it is open is not written to, however often it is tried.
func TestADamagedBookStaysSo(t *testing.T) {
	b, m, e := full(t)
	row := m.All[e["case"].Seq]
	row.Signature = m.All[e["signoff"].Seq].Signature
	m.All = append(m.All, row)
	for range 3 {
		var damaged *book.Damaged
		if err := b.Reread(); !errors.As(err, &damaged) || damaged.Seq != int64(len(m.All)-1) {
			t.Errorf("read as %v", err)
		}
	}
}

func TestAProofShowsOneRecordAndNoOther(t *testing.T) {
	b, _, e := full(t)
	p, err := b.Prove(e["signoff"], true)
	if err != nil {
		t.Fatal(err)
	}
	l, c, err := book.CheckProof(p)
	if err != nil || l.ID != e["signoff"].Leaf.ID || c.Size != b.Size() {
		t.Fatal(l, c, err)
	}
	if strings.Contains(p.Body, "near miss") || strings.Contains(p.Leaf, booktest.Other) {
		t.Error("another record shows")
	}
	for name, change := range map[string]func(p *book.Proof){
		"another place": func(p *book.Proof) { p.Seq++ },
		"a body":        func(p *book.Proof) { p.Body = strings.Replace(p.Body, "calm", "wild", 1) },
		"a leaf":        func(p *book.Proof) { p.Leaf = strings.Replace(p.Leaf, "2031", "2032", 1) },
		"a hash":        func(p *book.Proof) { p.Path[0] = strings.Repeat("0", 64) },
		"a checkpoint":  func(p *book.Proof) { p.Checkpoint = strings.Replace(p.Checkpoint, "\n10\n", "\n11\n", 1) },
		"a signature":   func(p *book.Proof) { p.Signature = strings.Repeat("0", 128) },
		"no key":        func(p *book.Proof) { p.LogKeys = nil },
	} {
		q := *p
		q.Path = append([]string{}, p.Path...)
		change(&q)
		if _, _, err := book.CheckProof(&q); err == nil {
			t.Errorf("%s: a changed proof holds", name)
		}
	}
}

func TestTheNewestCheckpointIsOfTheWholeBook(t *testing.T) {
	b, m, _ := full(t)
	signed, err := b.Newest()
	if err != nil || !strings.HasPrefix(string(signed), "department.example/rouleau\n10\n") {
		t.Fatalf("%s %v", signed, err)
	}
	last := len(m.Kept) - 1
	for name, change := range map[string]func(){
		"missing":         func() { m.Kept = m.Kept[:last] },
		"another's":       func() { m.Kept[last].Signed = m.Kept[last-1].Signed },
		"changed":         func() { m.Kept[last].Signed = bytes.Replace(signed, []byte("\n10\n"), []byte("\n11\n"), 1) },
		"of another size": func() { m.Kept[last].Size++ },
	} {
		old := slices.Clone(m.Kept)
		change()
		if _, err := b.Newest(); err == nil || !strings.Contains(err.Error(), "verify the book") {
			t.Errorf("%s: %v", name, err)
		}
		m.Kept = old
	}
}

func TestAClockSetBackIsRefused(t *testing.T) {
	b, _, _ := full(t)
	b.Clock = b.Clock.Add(-24 * time.Hour)
	one := &book.Case{Learner: booktest.Trainee, Assessor: booktest.First, Competency: "salvage", Date: "2031-05-10"}
	size := b.Size()
	_, err := b.Write(one, nil, b.Keys[booktest.First])
	if err == nil || !strings.Contains(err.Error(), "set the clock right") || b.Size() != size {
		t.Error(err, b.Size())
	}
	// it was the clock of whoever wrote last that was wrong: once that is said, all goes on, for everybody
	b.ClockIsRight = true
	b.Must(t, one, nil, booktest.First)
	b.ClockIsRight = false
	b.Must(t, one, nil, booktest.First)
	// the clocks of two workstations may be a little apart
	b.Clock = b.Clock.Add(-2 * time.Minute)
	b.Must(t, one, nil, booktest.First)
	if c, err := book.Read(b.Store); err != nil || c.Broken() != "" {
		t.Error(err, c.Broken())
	}
}

// Records are written as RFC 8785 says, so that the same record has the same bytes in every program.
func TestRecordsAreCanonical(t *testing.T) {
	_, m, _ := full(t)
	for i, r := range m.All {
		for name, text := range map[string][]byte{"leaf": r.Leaf, "body": r.Body} {
			if got, err := jcs.Transform(text); err != nil || !bytes.Equal(got, text) {
				t.Errorf("the %s of record %d is not canonical: %v\n%s", name, i, err, text)
			}
		}
	}
	spaced := bytes.Replace(m.All[3].Leaf, []byte(`{"`), []byte(`{ "`), 1)
	m.All[3].Leaf = spaced
	if c, err := book.Read(m); err != nil || !strings.Contains(c.Findings[3].What, "not in canonical form") {
		t.Error(c.Findings[3], err)
	}
}
