package ledger

import (
	"bytes"
	"errors"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"rouleau/cmd/rouleau/shelf"
	"rouleau/scoring/attempt"
	"rouleau/scoring/book"
	"rouleau/scoring/book/booktest"
)

// said checks that an error says what is expected; kind is whose fault it is, -1 for a rule of the book.
func said(t *testing.T, err error, kind int, want string) {
	t.Helper()
	got := -1
	var worded *shelf.Trouble
	if errors.As(err, &worded) {
		got = int(worded.Kind)
	}
	if err == nil || got != kind || !strings.Contains(err.Error(), want) {
		t.Errorf("%v (kind %d), want kind %d and %q", err, got, kind, want)
	}
}

const rule = -1

func TestASignOffSaysAllThatIsAsked(t *testing.T) {
	b := opened(t)
	if err := SetName(b.Keys, booktest.Trainee, planted); err != nil {
		t.Fatal(err)
	}
	g := signing(t, done{seed: 7, by: strings.ToLower(planted)})
	g.Rated = []book.Rated{{Item: "handover", Level: 3}, {Item: "honesty", Level: 4, Comment: "at once"}}
	g.Comments, g.Feedback = "calm", "talked through"
	g.Training = []book.Training{{What: "lot", Text: "T-1"}}
	d, err := b.Draft(g)
	if err != nil {
		t.Fatal(err)
	}
	if len(d.Warnings) > 0 {
		t.Errorf("warned of %q", d.Warnings)
	}
	s := d.SignOff
	if s.Learner != booktest.Trainee || s.Assessor != booktest.First || s.For != "perfusionist" || s.Number != 1 || len(s.Earlier) != 0 || s.Due != "2034-05-14" || s.Points != 100 || !s.Passed ||
		!strings.Contains(s.MarkSetBy, "75 points of 100") || s.Rated[0].Anchor != book.StandingItems()[2].Anchors[2] || s.Rated[1].Comment != "at once" || len(s.Criteria) != 6 {
		t.Errorf("%+v", s)
	}
	if bytes.Contains(bytes.ToLower(d.Attempt), []byte(strings.ToLower(planted))) || !bytes.Contains(d.Attempt, []byte(`"operator": "P-07"`)) {
		t.Error("the attempt still holds the name of who played")
	}
	a, err := attempt.Parse("a", d.Attempt)
	if err != nil || !a.Sealed() {
		t.Error("the attempt is not whole", err)
	}
	b.must(t, s, d.Attempt, booktest.First)
	v, err := Verify(t.Context(), b.Places, Verification{})
	if err != nil || v.Count(book.Exact) != 1 || v.Worst() > book.Exact {
		t.Error(v, err)
	}
}

func TestWhatTheAssessorShouldLookAt(t *testing.T) {
	b := opened(t)
	if err := SetName(b.Keys, booktest.Trainee, planted); err != nil {
		t.Fatal(err)
	}
	g := signing(t, done{seed: 7, by: "somebody else"})
	g.Comments, g.Feedback = "Mrs Miller was first", "as Robin knows"
	g.Rated = []book.Rated{{Item: "asepsis", Level: 3, Comment: "patient 12345678"}}
	data := attemptOf(t, done{seed: 7, by: "somebody else"})
	data = change(t, data, func(a *attempt.Attempt) {
		a.Breaks = attempt.Breaks{Interruptions: 2, LetGoS: 3}
		a.Checkpoints[4].Values[2] = attempt.Exact(math.Nextafter(float64(a.Checkpoints[4].Values[2]), 1e9))
	})
	g.Attempt = file(t, t.TempDir(), "a.json", data)
	d, err := b.Draft(g)
	if err != nil {
		t.Fatal(err)
	}
	all := strings.Join(d.Warnings, "\n")
	for _, want := range []string{"does not say that P-07 has played", "with other bits", "interrupted 2 times, and 3.0 s", `"Mrs Miller" looks like somebody's name`, `"Robin" is a name of somebody`, `"12345678" looks like somebody's number`} {
		if !strings.Contains(all, want) {
			t.Errorf("not warned of: %s\n%s", want, all)
		}
	}
	if strings.Contains(all, "somebody else") || len(d.Warnings) != 6 {
		t.Errorf("%q", d.Warnings)
	}
	// a model that is not here cannot be played again: that is said, and nothing is graded anew
	g = signing(t, done{seed: 7})
	g.Attempt = file(t, t.TempDir(), "a.json", change(t, attemptOf(t, done{seed: 7, by: booktest.Trainee}), func(a *attempt.Attempt) { a.Model = "0" }))
	if d, err = b.Draft(g); err != nil || len(d.Warnings) != 1 || !strings.Contains(d.Warnings[0], "played with model 0") {
		t.Error(d, err)
	}
}

func TestWhatNobodyCanSignFor(t *testing.T) {
	b := opened(t)
	good := attemptOf(t, done{seed: 7, by: booktest.Trainee})
	folder := t.TempDir()
	for name, c := range map[string]struct {
		data []byte
		kind int
		want string
	}{
		"changed.json": {bytes.Replace(good, []byte(`"passed": true`), []byte(`"passed": false`), 1), int(shelf.NotRight), "changed after it was saved"},
		"forged.json": {change(t, attemptOf(t, done{seed: 7, idle: true}), func(a *attempt.Attempt) { a.Grade.Passed, a.Grade.Points = true, 99 }), int(shelf.NotRight),
			"the grade parts in passed: true recorded, false now"},
		"other.json": {[]byte("{}"), rule, "this is not an attempt"},
	} {
		g := signing(t, done{seed: 7})
		g.Attempt = file(t, folder, name, c.data)
		_, err := b.Draft(g)
		said(t, err, c.kind, c.want)
	}
	g := signing(t, done{seed: 7})
	g.Attempt = filepath.Join(folder, "nothing.json")
	_, err := b.Draft(g)
	said(t, err, int(shelf.Wrong), "there is no such file")
	for name, c := range map[string]struct {
		change func(g *Signing)
		want   string
	}{
		"an item unknown":   {func(g *Signing) { g.Rated = []book.Rated{{Item: "handovr", Level: 1}} }, `"handovr" is no item that is rated: asepsis, closed_loop, handover, honesty. Did you mean handover?`},
		"a level unknown":   {func(g *Signing) { g.Rated = []book.Rated{{Item: "handover", Level: 5}} }, "handover is rated from 1 to 4: 1 leaves out"},
		"a record unknown":  {func(g *Signing) { g.Supersedes = "ffff" }, "there is no record ffff"},
		"a folder unknown":  {func(g *Signing) { g.Earlier = filepath.Join(folder, "none") }, "there is no such folder"},
		"a level too small": {func(g *Signing) { g.Rated = []book.Rated{{Item: "handover"}} }, "handover is rated from 1 to 4"},
	} {
		g := signing(t, done{seed: 7})
		c.change(&g)
		_, err := b.Draft(g)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if b.Size() != 5 {
		t.Errorf("%d records", b.Size())
	}
}

func TestEarlierAttemptsAreFound(t *testing.T) {
	b := opened(t)
	if err := SetName(b.Keys, booktest.Trainee, planted); err != nil {
		t.Fatal(err)
	}
	at := func(day int) time.Time { return time.Date(2031, 5, day, 8, 0, 0, 0, time.UTC) }
	folder := t.TempDir()
	first := done{seed: 1, by: planted, when: at(1), idle: true, mode: attempt.Practice}
	second := done{seed: 2, by: booktest.Trainee, when: at(2), idle: true}
	third := done{seed: 3, by: "steady", when: at(3)}
	file(t, folder, "first.json", attemptOf(t, first))
	file(t, folder, "later.json", attemptOf(t, done{seed: 9, by: booktest.Trainee, when: at(9)}))
	file(t, folder, "of-another.json", attemptOf(t, done{seed: 1, by: "P-08", when: at(1)}))
	file(t, folder, "notes.txt", []byte("nothing"))
	for name, other := range map[string]string{"settings.json": `{"scale": 2}`, "list.json": `[{"scenario": 1}]`, "case.json": `{"scenario": {"id": "another-case"}}`} {
		file(t, folder, name, []byte(other)) // something else that lies there is passed over
	}
	file(t, folder, "broken.json", []byte("{"))
	file(t, folder, "changed.json", bytes.Replace(attemptOf(t, done{seed: 4, by: booktest.Trainee, when: at(1).Add(time.Hour)}), []byte(`"ended": true`), []byte(`"ended":  true`), 1))
	file(t, folder, "careless.json", bytes.Replace(attemptOf(t, done{seed: 4, by: booktest.Trainee, when: at(1).Add(time.Hour)}), []byte(`"pass_mark": 75`), []byte(`"pass_mark": 74`), 1))
	// the second is signed off with the first as an earlier one; signing off the third finds both in the book
	g := signing(t, second)
	g.Earlier = folder
	d, err := b.Draft(g)
	if err != nil {
		t.Fatal(err)
	}
	if s := d.SignOff; s.Number != 3 || len(s.Earlier) != 2 || s.Earlier[0].Mode != attempt.Practice || s.Earlier[0].Passed || s.Earlier[1].Played != "2031-05-01T09:00:00Z" {
		t.Errorf("%d: %+v", s.Number, s.Earlier)
	}
	all := strings.Join(d.Warnings, "\n")
	if len(d.Warnings) != 2 || !strings.Contains(all, "broken.json cannot be read") || !strings.Contains(all, "careless.json was changed") {
		t.Errorf("%q", d.Warnings)
	}
	b.must(t, d.SignOff, d.Attempt, booktest.First)
	g = signing(t, third)
	if d, err = b.Draft(g); err != nil || d.SignOff.Number != 4 || d.SignOff.Earlier[2].Played != "2031-05-02T08:00:00Z" || len(d.SignOff.Earlier) != 3 {
		t.Fatal(d, err)
	}
	// with the folder none is counted twice, though the second lies there too, marked by the learner after the case
	if err := os.Remove(filepath.Join(folder, "broken.json")); err != nil {
		t.Fatal(err)
	}
	path := file(t, folder, "second.json", attemptOf(t, second))
	sc, err := short()
	if err != nil {
		t.Fatal(err)
	}
	var marks []attempt.ObjectiveMark
	for _, o := range attempt.Objectives(sc) {
		marks = append(marks, attempt.ObjectiveMark{Objective: o.ID, Mark: attempt.NotWell})
	}
	if err := attempt.KeepSelf(path, attempt.Self{Marks: marks}); err != nil {
		t.Fatal(err)
	}
	g.Earlier = folder
	if d, err = b.Draft(g); err != nil || d.SignOff.Number != 4 {
		t.Fatal(d.SignOff.Earlier, err)
	}
	// those of a void record are not the learner's
	id := b.Entries[5].Leaf.ID
	b.must(t, &book.Void{Of: id, Learner: booktest.Trainee, Assessor: booktest.Second, Reason: "the wrong learner"}, nil, booktest.Second)
	g.Earlier = ""
	if d, err = b.Draft(g); err != nil || d.SignOff.Number != 1 {
		t.Fatal(d.SignOff.Earlier, err)
	}
}

// One attempt is one person's.
func TestAnAttemptIsSignedOffForOne(t *testing.T) {
	b := opened(t)
	e := b.signed(t, signing(t, done{seed: 7, by: "steady"}))
	g := signing(t, done{seed: 7, by: "steady"})
	g.Learner = booktest.Other
	_, err := b.Draft(g)
	said(t, err, int(shelf.NotRight), "signed off already for P-07, in record "+e.Leaf.ID)
	b.must(t, &book.Void{Of: e.Leaf.ID, Learner: booktest.Trainee, Assessor: booktest.First, Reason: "the wrong learner"}, nil, booktest.First)
	if again := b.signed(t, g); again.Learner() != booktest.Other {
		t.Error(again.Learner())
	}
}

func TestAnAttemptIsSignedOffOnce(t *testing.T) {
	b := opened(t)
	e := b.signed(t, signing(t, done{seed: 7}))
	g := signing(t, done{seed: 7})
	g.Assessor = booktest.Second
	_, err := b.Draft(g)
	said(t, err, int(shelf.NotRight), "add --supersedes "+e.Leaf.ID[:8])
	g.Supersedes, g.Outcome, g.Override = e.Leaf.ID[:6], book.NotYet, "helped"
	again := b.signed(t, g)
	if e := b.Find(e.Leaf.ID); e.SupersededBy != again.Leaf.ID {
		t.Error("it was not superseded")
	}
	if got := again.Body.(*book.SignOff); got.Number != 1 || got.Due != "2031-05-14" {
		t.Errorf("attempt %d, due %s: who is not competent yet is due at once", got.Number, got.Due)
	}
}

const plan = `format: 1
department: D-1
items:
  - {name: calm, title: Keeps calm, anchors: [is not, is], needs: 2}
competencies:
  - {name: salvage, title: All of it, scenarios: [{id: short-and-brisk}], items: [calm], interval_months: 24}
  - {name: washing, title: Washing, scenarios: [{id: short-and-brisk}], interval_months: 12}
  - {name: other, title: Another, scenarios: [{id: another-case}], interval_months: 6}
`

func TestThePlanSetsIntervalAndItems(t *testing.T) {
	b := opened(t)
	b.must(t, &book.PlanText{By: booktest.Admin, YAML: plan}, nil, booktest.Admin)
	g := signing(t, done{seed: 7})
	g.Rated = []book.Rated{{Item: "calm", Level: 2}}
	d, err := b.Draft(g)
	if err != nil || d.SignOff.Due != "2032-05-14" || d.SignOff.Rated[0].Anchor != "is" || len(d.Warnings) > 0 {
		t.Fatal(d, err)
	}
	g.Rated = nil
	if d, err = b.Draft(g); err != nil || len(d.Warnings) != 1 || d.Warnings[0] != "the plan asks for calm beside this case, and it is not rated: 1 is not; 2 is" {
		t.Error(d.Warnings, err)
	}
	g.Rated = []book.Rated{{Item: "calm", Level: 2}}
	g.Due = "2031-12-01"
	if d, err = b.Draft(g); err != nil || d.SignOff.Due != g.Due {
		t.Error(d, err)
	}
	g.Rated = []book.Rated{{Item: "handover", Level: 2}}
	_, err = b.Draft(g)
	said(t, err, int(shelf.Wrong), `"handover" is no item that is rated: calm`)
	_, err = b.CountCase(booktest.Trainee, "wshing", "", As{Person: booktest.First})
	said(t, err, int(shelf.Wrong), `"wshing" is no competency of the plan in force: salvage, washing, other. Did you mean washing?`)
	if names := b.Items(); !slices.ContainsFunc(names, func(it book.Item) bool { return it.Name == "calm" }) {
		t.Error(names)
	}
}
