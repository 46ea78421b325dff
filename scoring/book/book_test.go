package book_test

import (
	"bytes"
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

// What the rules forbid is refused, with its reason, and nothing is written.
func TestWhatIsNotAllowedIsRefused(t *testing.T) {
	b, m, e := full(t)
	id := e["signoff"].Leaf.ID
	b.Must(t, &book.Key{Person: booktest.Second, Role: book.Learner}, nil, booktest.Admin) // an assessor who also learns
	own := b.Must(t, booktest.SignOff(t, file(t), booktest.Second, booktest.First), file(t), booktest.First).Leaf.ID
	before := len(m.All)
	good := func(change func(s *book.SignOff)) *book.SignOff {
		s := booktest.SignOff(t, file(t), booktest.Trainee, booktest.First)
		change(s)
		return s
	}
	b.Keys["stranger"], _ = book.NewSigner(bytes.NewReader(make([]byte, 32)))
	for name, c := range map[string]struct {
		body any
		who  string
		want string
	}{
		"one's own":            {good(func(s *book.SignOff) { s.Learner = booktest.First }), booktest.First, "no one signs their own"},
		"for somebody else":    {good(func(s *book.SignOff) { s.Assessor = booktest.Second }), booktest.First, "it names AS-2 and is signed by AS-1"},
		"an administrator's":   {good(func(s *book.SignOff) { s.Assessor = booktest.Admin }), booktest.Admin, "only an assessor may"},
		"a stranger's":         {good(func(s *book.SignOff) {}), "stranger", "is not of this book"},
		"an unknown learner":   {good(func(s *book.SignOff) { s.Learner = "P-99" }), booktest.First, "no learner of this book"},
		"no reason":            {good(func(s *book.SignOff) { s.Outcome = book.NotYet }), booktest.First, "say why in the override"},
		"nothing overridden":   {good(func(s *book.SignOff) { s.Override = "because" }), booktest.First, "nothing to override"},
		"an outcome unknown":   {good(func(s *book.SignOff) { s.Outcome = "fine" }), booktest.First, "is no outcome"},
		"earlier ones hidden":  {good(func(s *book.SignOff) { s.Number = 3 }), booktest.First, "lists 0 before it"},
		"practice":             {good(func(s *book.SignOff) { s.Mode = "practice" }), booktest.First, "practice shows no competence"},
		"a rating by oneself":  {&book.Rating{Of: id, Learner: booktest.Trainee, Assessor: booktest.First, Rated: []book.Rated{{"handover", 3, "", ""}}}, booktest.First, "a second rater is somebody else"},
		"a level unknown":      {&book.Rating{Of: id, Learner: booktest.Trainee, Assessor: booktest.Second, Rated: []book.Rated{{"handover", 9, "", ""}}}, booktest.Second, "has level 9"},
		"a person by another":  {&book.Key{Person: "P-10", Role: book.Learner}, booktest.First, "only an administrator"},
		"a name for a code":    {&book.Key{Person: "Jane Miller", Role: book.Learner}, booktest.Admin, "is no code"},
		"the last one":         {&book.Key{Person: booktest.Admin, Role: book.Administrator, Ended: true}, booktest.Admin, "the last administrator"},
		"a void of nothing":    {&book.Void{Of: "00", Learner: booktest.Trainee, Assessor: booktest.First, Reason: "mistaken"}, booktest.First, "there is no record"},
		"a void unexplained":   {&book.Void{Of: id, Learner: booktest.Trainee, Assessor: booktest.First}, booktest.First, "the reason is missing"},
		"a plan by another":    {&book.PlanText{By: booktest.First, YAML: "format: 1"}, booktest.First, "only an administrator"},
		"deleting a key":       {&book.Forget{Of: b.Entries[1].Leaf.ID, By: booktest.Admin, Reason: "wish"}, booktest.Admin, "cannot be deleted"},
		"an event unknown":     {&book.Event{By: booktest.First, What: "party", Date: "2031-01-01", Reason: "x"}, booktest.First, "is no event"},
		"a case of one's own":  {&book.Case{Learner: booktest.First, Assessor: booktest.First, Competency: "salvage", Date: "2031-05-10"}, booktest.First, "no one signs their own"},
		"a case of nobody":     {&book.Case{Learner: "P-99", Assessor: booktest.First, Competency: "salvage", Date: "2031-05-10"}, booktest.First, "no learner of this book"},
		"a case by another":    {&book.Case{Learner: booktest.Trainee, Assessor: booktest.Admin, Competency: "salvage", Date: "2031-05-10"}, booktest.Admin, "only an assessor may"},
		"a case for nothing":   {&book.Case{Learner: booktest.Trainee, Assessor: booktest.First, Date: "2031-05-10"}, booktest.First, "the competency is missing"},
		"one's own event":      {&book.Event{Learner: booktest.Second, By: booktest.Second, What: book.EventAway, Date: "2031-01-01", Reason: "x"}, booktest.Second, "no one signs their own"},
		"an event unexplained": {&book.Event{By: booktest.First, What: book.EventAway, Date: "2031-01-01"}, booktest.First, "the reason is missing"},
		"an event of another":  {&book.Event{By: booktest.Second, What: book.EventAway, Date: "2031-01-01", Reason: "x"}, booktest.First, "it names AS-2 and is signed by AS-1"},
		"one's own rated":      {&book.Rating{Of: own, Learner: booktest.Second, Assessor: booktest.Second, Rated: []book.Rated{{"handover", 3, "", ""}}}, booktest.Second, "no one signs their own"},
		"another's rated":      {&book.Rating{Of: id, Learner: booktest.Other, Assessor: booktest.Second, Rated: []book.Rated{{"handover", 3, "", ""}}}, booktest.Second, "is none of P-08"},
		"a rating of nothing":  {&book.Rating{Of: id, Learner: booktest.Trainee, Assessor: booktest.Second}, booktest.Second, "nothing is rated"},
		"one's own made void":  {&book.Void{Of: own, Learner: booktest.Second, Assessor: booktest.Second, Reason: "mistaken"}, booktest.Second, "no one signs their own"},
		"a void of a plan":     {&book.Void{Of: e["plan"].Leaf.ID, Assessor: booktest.First, Reason: "mistaken"}, booktest.First, "cannot be made void"},
		"deleting by another":  {&book.Forget{Of: id, By: booktest.First, Reason: "wish"}, booktest.First, "only an administrator may"},
		"deleting unexplained": {&book.Forget{Of: id, By: booktest.Admin}, booktest.Admin, "the reason is missing"},
		"a real lot":           {good(func(s *book.SignOff) { s.Training = []book.Training{{"patient", "x"}} }), booktest.First, "kept for practice: lot, operator or incident"},
		"an empty lot":         {good(func(s *book.SignOff) { s.Training = []book.Training{{"lot", ""}} }), booktest.First, "the lot is missing"},
		"a mark from nowhere":  {good(func(s *book.SignOff) { s.MarkSetBy = "" }), booktest.First, "pass mark was set is missing"},
		"for no role":          {good(func(s *book.SignOff) { s.For = "" }), booktest.First, "role that the learner trains for is missing"},
		"rated twice":          {good(func(s *book.SignOff) { s.Rated = []book.Rated{{"handover", 3, "", ""}, {"handover", 2, "", ""}} }), booktest.First, "rated twice"},
		"no zone":              {good(func(s *book.SignOff) { s.Date = "2031-05-14T10:00:00" }), booktest.First, "has no zone"},
		"in place of another":  {good(func(s *book.SignOff) { s.Supersedes = own }), booktest.First, "is no sign-off of P-07"},
		"in place of nothing":  {good(func(s *book.SignOff) { s.Supersedes = "00" }), booktest.First, "there is no record 00 to supersede"},
		"in place of an event": {good(func(s *book.SignOff) { s.Supersedes = e["event"].Leaf.ID }), booktest.First, "is no sign-off of P-07"},
		"too much said":        {good(func(s *book.SignOff) { s.Feedback = strings.Repeat("x", 4001) }), booktest.First, "4000 are the most"},
		"a role twice":         {&book.Key{Person: booktest.Trainee, Role: book.Learner}, booktest.Admin, "is learner already"},
		"a role unknown":       {&book.Key{Person: "P-11", Role: "chief"}, booktest.Admin, "is no role"},
		"an end of nobody":     {&book.Key{Person: "P-11", Role: book.Learner, Ended: true}, booktest.Admin, "is no learner of this book"},
		"a key twice":          {&book.Key{Person: "AS-3", Role: book.Assessor, Public: b.Keys[booktest.First].Public()}, booktest.Admin, "this key is of the book already"},
		"no key":               {&book.Key{Person: "AS-3", Role: book.Assessor}, booktest.Admin, "this is no public key"},
		"a date unreadable":    {&book.Case{Learner: booktest.Trainee, Assessor: booktest.First, Competency: "salvage", Date: "10.5.2031"}, booktest.First, "is no date"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := b.Write(c.body, file(t), b.Keys[c.who])
			if _, ok := c.body.(*book.SignOff); !ok {
				_, err = b.Write(c.body, nil, b.Keys[c.who])
			}
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("%v, want %q", err, c.want)
			}
			if int(b.Size()) != before || len(m.All) != before {
				t.Errorf("%d records in the book, %d in the store", b.Size(), len(m.All))
			}
		})
	}
}

func TestAnEndedKeySignsNothing(t *testing.T) {
	b, _, _ := full(t)
	b.Must(t, &book.Key{Person: booktest.First, Role: book.Assessor, Ended: true, Reason: "left"}, nil, booktest.Admin)
	_, err := b.Write(booktest.SignOff(t, file(t), booktest.Trainee, booktest.First), file(t), b.Keys[booktest.First])
	if err == nil || !strings.Contains(err.Error(), "had ended") {
		t.Error(err)
	}
}

// A record that was deleted has its own verdict, the book stays whole, and what it said is nowhere any more.
func TestDeletingLeavesASaltedHash(t *testing.T) {
	b, m, e := full(t)
	id := e["signoff"].Leaf.ID
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
	// without the word of the book it is damage
	m.All[e["case"].Seq].Body = nil
	if c, _ = book.Read(m); c.Findings[e["case"].Seq].Verdict != book.Broken {
		t.Error("a body taken out was not found")
	}
	if _, err := book.Open(m, nil, time.Now); err == nil || !strings.Contains(err.Error(), "nothing is written to a damaged book") {
		t.Error(err)
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
