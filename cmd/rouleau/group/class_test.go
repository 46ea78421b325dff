package group

import (
	"bytes"
	"context"
	"encoding/csv"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// planted is a part of every name, note and file of the class: it must stand nowhere in what is made.
const planted = "zanzibar"

// noting plays as an operator does, and writes a note of its own.
type noting struct {
	play.Actor
	text string
	done bool
}

func (n *noting) Act(seen *sim.Seen, do func(sim.Action) sim.Reason) {
	n.Actor.Act(seen, do)
	if !n.done && seen.Tick > 240*sim.TicksPerSecond {
		n.done = do(sim.Action{Tick: seen.Tick, Do: sim.Note, Text: n.text}) == ""
	}
}

// attend saves an attempt at a case of twelve minutes that somebody played as an operator does.
func attend(t *testing.T, path, who, as string, day int, seed uint64) *attempt.Attempt {
	t.Helper()
	sc, err := scenarios.Open("infection-in-the-field")
	if err != nil {
		t.Fatal(err)
	}
	o, err := operators.Open(as)
	if err != nil {
		t.Fatal(err)
	}
	run := play.New(sc.Case(seed, false), seed)
	run.ToEnd(&noting{Actor: o.Play(operators.SheetOf(sc, &run.Case)), text: planted + " " + who[len(who)-1:]})
	grade := scoring.Judge(sc, run, scoring.PlayYardstick(sc, seed, false))
	a := attempt.Of(sc, run, grade, attempt.By{Operator: who, When: time.Date(2031, 5, day, 8, 0, 0, 0, time.UTC), Mode: attempt.Practice})
	if err := a.Save(path); err != nil {
		t.Fatal(err)
	}
	return a
}

// class makes a folder with attempts of three people, and one of each that has to be left out.
func class(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	at := func(name string) string { return filepath.Join(dir, planted+"-"+name+".json") }
	if err := os.Mkdir(filepath.Join(dir, "other"), 0o755); err != nil {
		t.Fatal(err)
	}
	first := attend(t, at("1"), planted+" A", "hasty", 4, 1)
	attend(t, at("2"), planted+" B", "hasty", 3, 2)
	attend(t, filepath.Join(dir, "other", planted+"-3.json"), planted+" C", "hasty", 2, 3)
	attend(t, at("4"), " "+planted+" A ", "steady", 31, 4)
	attend(t, at("program"), "hasty", "hasty", 1, 5)
	attend(t, at("nobody"), "trainee", "hasty", 1, 6)
	put := func(name string, content []byte) {
		if err := os.WriteFile(at(name), content, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	save := func(name string, change func(a *attempt.Attempt)) {
		a := *first
		change(&a)
		if err := a.PlayedBy(planted + " " + name).Save(at(name)); err != nil {
			t.Fatal(err)
		}
	}
	whole := first.Encode()
	put("twice", whole)
	put("cut", whole[:len(whole)/2])
	put("changed", bytes.Replace(whole, []byte(planted+" A"), []byte(planted+" Z"), 1))
	save("model", func(a *attempt.Attempt) { a.Model = "another" })
	save("taken", func(a *attempt.Attempt) { a.Breaks.TakenOver = true })
	save("open", func(a *attempt.Attempt) { a.Ended = false })
	save("parts", func(a *attempt.Attempt) { a.Actions = a.Actions[1:] })
	return dir
}

func played(t *testing.T, dir string, w Wishes) *Group {
	t.Helper()
	f, err := Read(dir, w)
	if err != nil {
		t.Fatal(err)
	}
	g, err := f.Play(context.Background(), w)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// made is everything that is made of a group, without what was left out.
func made(t *testing.T, g *Group) string {
	t.Helper()
	html, err := g.Page().HTML()
	if err != nil {
		t.Fatal(err)
	}
	pdf, err := g.Page().PDF()
	if err != nil {
		t.Fatal(err)
	}
	table, err := g.CSV()
	if err != nil {
		t.Fatal(err)
	}
	return strings.Join([]string{string(html), string(table), strings.Join(g.Lines(), "\n"), string(pdf)}, "\n")
}

// A class goes the whole way: who counts, what is left out and why, that nobody's name comes through, and that the same files
// give the same bytes, however many play them.
func TestAClass(t *testing.T) {
	dir := class(t)
	g := played(t, dir, Wishes{Workers: 1})
	var why []string
	for _, l := range g.Left {
		why = append(why, fmt.Sprintf("%s %d", strings.TrimSuffix(strings.TrimPrefix(filepath.Base(l.Path), planted+"-"), ".json"), l.Why))
		if l.Why.fault() != (l.Detail != "") || l.Detail != "" && !strings.Contains(l.Detail, l.Path) {
			t.Errorf("%s: %q does not say which file, or says more than it should", l.Path, l.Detail)
		}
	}
	want := []string{fmt.Sprint("changed ", Unsealed), fmt.Sprint("cut ", Unreadable), fmt.Sprint("model ", OtherModel), fmt.Sprint("nobody ", Nameless), fmt.Sprint("open ", Unfinished),
		fmt.Sprint("parts ", NotTheSame), fmt.Sprint("program ", Program), fmt.Sprint("taken ", TakenOver), fmt.Sprint("twice ", Twice)}
	if len(g.Left) != len(want) {
		t.Errorf("left out: %v", why)
	}
	for i, l := range g.Left {
		if got := fmt.Sprint(strings.TrimSuffix(strings.TrimPrefix(filepath.Base(l.Path), planted+"-"), ".json"), " ", l.Why); i < len(want) && got != want[i] {
			t.Errorf("left out: %s, want %s", got, want[i])
		}
	}
	if len(g.sections) != 1 || g.sections[0].figures == nil {
		t.Fatalf("%d sections", len(g.sections))
	}
	s := g.sections[0]
	if s.figures.all.attempts != 4 || s.figures.all.people != 3 || s.entries[3].number != 2 || s.entries[3].person != s.entries[2].person {
		t.Errorf("%+v", s.figures.all)
	}
	note := slices.IndexFunc(s.figures.kinds, func(k kindFigures) bool { return k.aspect == "note" })
	if note < 0 || s.figures.kinds[note].people != 3 {
		t.Fatalf("their notes say nothing, and that is not found: %+v", s.figures.kinds)
	}
	if e := s.figures.kinds[note].example; e.title != "" {
		t.Errorf("an example holds what a person wrote: %q", e.title)
	}
	if !slices.ContainsFunc(s.figures.kinds, func(k kindFigures) bool { return k.example.title != "" }) {
		t.Error("no kind has an example")
	}
	text := made(t, g)
	if strings.Contains(strings.ToLower(text), planted) {
		t.Error("a name, a note or a file comes through")
	}
	if !strings.Contains(strings.ToLower(strings.Join(g.LeftLines(), " ")), planted) {
		t.Error("this test looks for what was never there")
	}
	if again := made(t, played(t, dir, Wishes{Workers: 4})); again != text {
		t.Error("the same files give other bytes")
	}
	letters := slices.Sorted(slices.Values(g.people))
	if !slices.Equal(slices.DeleteFunc(letters, func(l string) bool { return l == "" }), []string{"A", "B", "C"}) {
		t.Errorf("people are called %v", letters)
	}
	if more := played(t, dir, Wishes{Programs: true}); more.sections[0].figures.all.people != 4 || !strings.Contains(made(t, more), "programs") {
		t.Error("programs do not count where it was asked for")
	}
}

// Of two people nothing is told, unless it was asked for; then the page says what it is.
func TestTooFewPeople(t *testing.T) {
	dir := t.TempDir()
	attend(t, filepath.Join(dir, "a.json"), planted+" A", "hasty", 4, 1)
	attend(t, filepath.Join(dir, "b.json"), planted+" B", "hasty", 5, 1)
	f, err := Read(dir, Wishes{})
	if err != nil {
		t.Fatal(err)
	}
	calls := 0
	if g, err := f.Play(context.Background(), Wishes{Progress: func(int, int) { calls++ }}); !errors.Is(err, ErrFew) || g == nil || calls != 0 {
		t.Errorf("%v, played %d", err, calls)
	}
	g := played(t, dir, Wishes{Small: true, Progress: func(done, all int) {
		if calls++; done != calls || all != 2 {
			t.Errorf("%d of %d", done, all)
		}
	}})
	text := made(t, g)
	if calls != 2 || !strings.Contains(text, "2 attempts of 2 people: no more than an impression") || !strings.Contains(text, "keep it to yourself") {
		t.Errorf("played %d", calls)
	}
	for _, bad := range []string{"least 3 people", "than 3 people"} {
		if strings.Contains(text, bad+":") || strings.Contains(text, "to at "+bad) {
			t.Errorf("the page still says %q", bad)
		}
	}
	empty, err := Read(t.TempDir(), Wishes{})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := empty.Play(context.Background(), Wishes{}); !errors.Is(err, ErrNobody) {
		t.Error(err)
	}
	if _, err := Read(filepath.Join(dir, "nowhere"), Wishes{}); !errors.Is(err, os.ErrNotExist) {
		t.Error(err)
	}
	stopped, stop := context.WithCancel(context.Background())
	stop()
	if _, err := f.Play(stopped, Wishes{Small: true}); !errors.Is(err, context.Canceled) {
		t.Error(err)
	}
}

// An attempt that the program cannot bear is left out, and the others are played.
func TestOneAttemptDoesNotTakeTheOthersWithIt(t *testing.T) {
	e := &entry{path: "a.json"} // without an attempt in it, which nothing that was read is
	e.play()
	if e.left == nil || e.left.Why != Broke || !strings.Contains(e.left.Detail, "a.json") {
		t.Errorf("%+v", e.left)
	}
}

// hand is a page with two cases and one too small, from figures that were not played.
func hand() *Group {
	g := &Group{people: []string{"A", "B", "C", "D"}}
	whole := &section{id: "case-one", title: "Case <one>", version: 2, mode: attempt.Assessment, passMark: 75, entries: small()}
	whole.figures = figuresOf(whole.entries, LeastPeople)
	lesson := &section{id: "lesson", title: "A lesson", version: 1, mode: attempt.Practice, lesson: true, entries: small()}
	lesson.figures = figuresOf(lesson.entries, LeastPeople)
	g.sections = []*section{whole, {id: "case-two", title: "Case two", version: 1, mode: attempt.Practice, entries: small()[:2]}, lesson}
	return g
}

// What the page says, figure by figure.
func TestThePageSaysIt(t *testing.T) {
	html, err := hand().Page().HTML()
	if err != nil {
		t.Fatal(err)
	}
	text := regexp.MustCompile(`\s+`).ReplaceAllString(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(string(html), " "), " ")
	for _, want := range []string{
		"not an assessment of people", "16 attempts of 4 people, made from 2031-03 to 2031-05.",
		"Case &lt;one&gt; case-one, version 2 assessment 8 4 5 of 8 70.0 59.5 – 82.5", "Case two case-two, version 1 practice fewer than 3 people: no figures – – – –",
		"8 attempts of 4 people: no more than an impression. 5 of 8 passed, which takes 75 points, every part over its floor, and nothing that points never make up for. What points never make up for came about, but to fewer than 3 people. Points: middle 70.0, middle half 59.5 to 82.5.",
		"Of 3 people with two attempts or more, 1 had more points the last time than the first and 1 had fewer; the middle change is 0 points.",
		"labelling a bag in full: left out 3 of 8 3 of 4 5.0 5.0 1.9 few label five B, attempt 2",
		"anticoagulant drip after the bleeding: late 4 of 8 3 of 4 5.5 5.0 2.8 – six B, attempt 1",
		"One kind cost something to fewer than 3 people and is not named.",
		"number of the attempt 1 2–3 same people, first → last attempts 4 4 people 4 3 people 3 people",
		"passed 2 of 4 3 of 4 labelling a bag in full: left out 1 of 4 2 of 4 1 → 2 of 3 anticoagulant drip after the bleeding: late 3 of 4 1 of 4 3 → 0 of 3",
		"month of the attempt 2031-03 2031-04–2031-05 attempts 3 3 people 5 4 people",
		"A lesson judges nobody", "Nothing was left out.",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on the page", want)
		}
	}
	if strings.Contains(text, "choice of the bowl") {
		t.Error("what is one person's own is named")
	}
	if t.Failed() {
		t.Log(text)
	}
	for _, forbidden := range []string{"<script", "src=", "url(http", "@import", "%!"} {
		if strings.Contains(string(html), forbidden) {
			t.Errorf("the page holds %s", forbidden)
		}
	}
}

// A spreadsheet reads the table: every row has all columns, and what is not told has no figures.
func TestTheTable(t *testing.T) {
	content, err := hand().CSV()
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(content)).ReadAll() // which fails where a row is shorter
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(string(content), "\n")
	if len(rows) != 1+15+1+15 || !slices.Equal(rows[0], columns) {
		t.Errorf("%d rows", len(rows))
	}
	for _, want := range []string{
		"case-one,2,,assessment,false,all,,,8,4,5,,71.63,59.5,70.02,82.5,,,,,,,,,",
		"case-one,2,,assessment,false,all,,,8,4,,,,,,,label,left_out,labelling a bag in full: left out,3,3,5,5,1.88,",
		"case-one,2,,assessment,false,number,2,3,4,3,3,,78.26,67.03,80.02,91.25,,,,,,,,,",
		"case-one,2,,assessment,false,month,2031-04,2031-05,5,4,,,,,,,drip,late,anticoagulant drip after the bleeding: late,1,,,,,",
		"case-two,1,,practice,false,,,,,,,,,,,,,,,,,,,,",
		"lesson,1,,practice,true,all,,,8,4,,,71.63,59.5,70.02,82.5,,,,,,,,,",
	} {
		if !slices.Contains(lines, want) {
			t.Errorf("no row %q", want)
		}
	}
	if t.Failed() {
		t.Log(string(content))
	}
}

func TestLetters(t *testing.T) {
	for i, want := range map[int]string{0: "A", 25: "Z", 26: "AA", 51: "AZ", 52: "BA", 701: "ZZ", 702: "AAA"} {
		if got := letters(i); got != want {
			t.Errorf("%d: %s, want %s", i, got, want)
		}
	}
}

// Letters follow neither names nor who began first: with other seals the same people have other letters.
func TestLettersTellNothing(t *testing.T) {
	g := hand()
	g.call([]person{{"a", "d"}, {"b", "c"}, {"c", "b"}, {"d", "a"}})
	if !slices.Equal(g.people, []string{"D", "C", "B", "A"}) {
		t.Errorf("%v", g.people)
	}
	g.call([]person{{"a", "b"}, {"b", "d"}, {"c", "a"}, {"d", "c"}})
	if !slices.Equal(g.people, []string{"B", "D", "A", "C"}) {
		t.Errorf("%v", g.people)
	}
}

// Two texts of one case and version stand apart, and say so; assessment stands before practice, lessons last.
func TestSectionsStandApart(t *testing.T) {
	make := func(id, text, mode string) *entry {
		sc, err := scenarios.Open(id)
		if err != nil {
			t.Fatal(err)
		}
		e := &entry{attempt: &attempt.Attempt{Mode: mode, Scenario: attempt.Scenario{ID: id, Version: sc.Version, Text: string(sc.Source), SHA256: strings.Repeat(text, 32)}}}
		return e
	}
	var got []string
	for _, s := range sectionsOf([]*entry{make("first-bowl", "0a", attempt.Practice), make("infection-in-the-field", "1b", attempt.Practice), make("infection-in-the-field", "2c", attempt.Practice),
		make("infection-in-the-field", "1b", attempt.Assessment), make("salvage-declined", "3d", attempt.Practice)}) {
		got = append(got, s.name()+", "+s.modeName())
	}
	if want := []string{"infection-in-the-field, version 1, text 1b1b1b1b, assessment", "infection-in-the-field, version 1, text 1b1b1b1b, practice",
		"infection-in-the-field, version 1, text 2c2c2c2c, practice", "salvage-declined, version 1, practice", "first-bowl, version 1, guided lesson"}; !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
}
