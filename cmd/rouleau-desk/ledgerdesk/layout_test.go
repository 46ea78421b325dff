// Every page of the book at several sizes, also in a language whose words are a third longer: nothing overlaps, nothing is cut, every
// control is large enough.

package ledgerdesk_test

import (
	"fmt"
	"strings"
	"testing"
	"time"
	"unicode"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/ledgerdesk"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau-desk/ui/uitest"
	"rouleau/cmd/rouleau/page"
	"rouleau/scoring/attempt"
	"rouleau/scoring/book"
)

var (
	sizes  = []ui.Vec{{X: 900, Y: 600}, {X: 1024, Y: 640}, {X: 1280, Y: 800}, {X: 1280, Y: 800}, {X: 1920, Y: 1080}, {X: 900, Y: 1200}}
	scales = []float32{1, 1.25, 1, 2, 1, 1}
)

// desk is the pages without a display, with the acts they answered.
type desk struct {
	*uitest.Driver
	desk *ledgerdesk.Desk
	view ledgerdesk.View
	acts []ledgerdesk.Act
	told map[string]bool
}

func sit(v ledgerdesk.View) *desk {
	d := &desk{desk: ledgerdesk.New(), view: v, told: map[string]bool{}}
	d.Driver = uitest.New(sizes[2], func(c *ui.Core) { d.acts = append(d.acts, d.desk.Frame(c, &d.view)...) })
	d.Core.Words = bench.CoreWords()
	return d
}

const long = "An uncommonly long text that somebody wrote with all its circumstances, so that it takes more than a line wherever it stands."

func may(learner, assessor string) string {
	if learner == assessor {
		return long
	}
	return ""
}

// full is a book with much in it.
func full() ledgerdesk.View {
	v := ledgerdesk.View{Who: "P-1", Stage: ledgerdesk.Open, Place: "a folder/" + strings.Repeat("with a long name and no end to it/", 6), MaySign: may}
	b := &v.Book
	b.Origin, b.Root, b.Records, b.Department = "department.example/"+strings.Repeat("practice-", 6), "qgMySC92A+sqoxHJzr7SnQkblIKmKz11yIvq+wZ5Md0=", 12345, "A department with a long name in a large house"
	b.Items = book.StandingItems()
	b.Roles = map[string][]book.Role{}
	c := make([]book.Competency, 7)
	for i := range c {
		c[i] = book.Competency{Name: fmt.Sprint("c", i), Title: "Collecting, washing and giving back under all circumstances", SupervisedCases: i % 2}
	}
	for n := range 40 {
		who := fmt.Sprintf("P-%d", n)
		b.Roles[who] = []book.Role{book.Learner}
		for i := range c {
			st := book.Standing{Learner: who, Competency: &c[i], Shown: (n+i)%3 > 0, Until: time.Date(2031, 5, 14, 0, 0, 0, 0, time.UTC)}
			if st.Due = (n+i)%4 < 2 || !st.Shown; st.Due {
				st.Why = []string{"an incident on 2031-05-14: " + long}
			}
			if !st.Shown {
				st.Missing = []string{"case steady-oozing-spine signed off 0 times of 3", long}
			}
			b.Standing = append(b.Standing, st)
		}
		e := ledgerdesk.Entry{ID: fmt.Sprintf("%032d", n), Title: "A very long title of a case with its circumstances", Learner: "P-1", Assessor: "AS-1", Decided: "2031-05-14T08:30:00Z",
			Due: "2034-05-14", Points: 100, Competent: n%2 == 0, Seconds: n % 2}
		if n%5 == 0 {
			e.State = words.Say("desk_book.state_old")
		}
		b.Entries = append(b.Entries, e)
		b.Waiting = append(b.Waiting, ledgerdesk.Waiting{Path: fmt.Sprint(n), Title: "A very long title of a case with its circumstances", When: "2031-05-13T08:00:00Z", Operator: "some-long-pseudonym-0001", Learner: "P-1",
			Assessment: n%3 > 0, Passed: n%2 == 0, Ended: n%4 > 0, Points: 99.5})
	}
	b.Roles["AS-1"] = []book.Role{book.Assessor}
	b.Agreement, b.RatedPeople = book.Agreement{Items: 40, Same: 31, Kappa: 0.72, Computed: true}, 12
	return v
}

func judged() *ledgerdesk.Review {
	a := &attempt.Attempt{When: "2031-05-13T08:00:00Z", Operator: "P-1", Seed: 18446744073709551615, Breaks: attempt.Breaks{Interruptions: 3, LetGoS: 12.5}}
	a.Scenario.Version = 12
	g := &a.Grade
	g.Points, g.PassMark = 74.9, 75
	g.Critical = []attempt.Critical{{Name: "x", Reason: long}, {Name: "y", Reason: "short", Mended: true}}
	for i := range 6 {
		p := attempt.PartGrade{Part: fmt.Sprint(i), Title: "Deciding and preparing", Points: 5, Of: 15, Floor: 9, Reached: i%2 > 0}
		g.Parts = append(g.Parts, p)
		for k := range 5 {
			g.Criteria = append(g.Criteria, attempt.CriterionGrade{Part: p.Part, Meaning: long, Measured: k > 0, Value: 0.25, Unit: "mL/min", Target: "at most 0.1 mL/min", Points: attempt.Exact(k), Of: 4, Reason: long})
		}
	}
	return &ledgerdesk.Review{Waiting: ledgerdesk.Waiting{Path: "a", Title: long, Operator: "P-1", Learner: "P-1", Assessment: true}, Attempt: a, Role: "perfusionist", Due: "2034-05-14"}
}

func drafted() *ledgerdesk.Draft {
	b := &book.SignOff{Learner: "P-1", Assessor: "AS-1", For: "perfusionist", Played: "2031-05-13T08:00:00Z", Points: 74.9, PassMark: 75, Outcome: book.Competent, Override: long, Comments: long, Feedback: long, Due: "2034-05-14", Number: 3}
	b.Scenario = book.Scenario{ID: "steady-oozing-spine", Version: 12}
	b.Earlier = []book.Earlier{{Played: "2031-05-12T08:00:00Z", Points: 12}, {Played: "2031-05-11T08:00:00Z", Points: 99, Passed: true}}
	b.Rated = []book.Rated{{Item: "handover", Level: 3, Anchor: long, Comment: long}, {Item: "asepsis", Level: 1, Anchor: "short"}}
	b.Critical = []book.Critical{{Reason: long}}
	return &ledgerdesk.Draft{Record: b, Warnings: []string{long, "short"}, Fault: long}
}

func recorded(v *ledgerdesk.View) *ledgerdesk.Record {
	t := &page.Table{Head: []string{"criterion", "measured", "target", "points", "reason and source"}, Right: []bool{false, true, false, true}, Share: []int{26, 13, 16, 9, 36}}
	plain := &page.Table{Head: []string{"part", "points"}, Right: []bool{false, true}}
	for i := range 30 {
		if i%10 == 0 {
			t.Rows = append(t.Rows, page.Row{Group: long})
		}
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{{Text: long}, {Text: "12.5 mL/min"}, {Text: "at most 0.1"}, {Text: "1.5 of 5.0"}, {Text: page.Sign(page.Grave, long), Small: long}}})
		plain.Add("collecting", "12.5")
	}
	p := &page.Page{Title: "t", Lead: []string{long}, Blocks: []page.Block{{Head: "What was decided", Pairs: []page.Pair{{Name: "outcome", Lines: []string{long, "more"}}, {Name: "why decided otherwise", Lines: []string{long}}}},
		{Beside: &page.Beside{Blocks: []page.Block{{Head: "Parts", Table: plain}}}}, {Head: "Every criterion", Text: []string{page.Strong("Strong") + " " + long}, List: []string{long}, Table: t}}}
	return &ledgerdesk.Record{Entry: v.Book.Entries[0], Page: p, Fault: long}
}

// faults looks at the page at each size.
func (d *desk) faults(t *testing.T, where string) {
	t.Helper()
	for i, size := range sizes {
		d.Size, d.Scale = size, scales[i]
		d.Move(ui.Vec{X: 1, Y: 1})
		d.Idle()
		d.Idle()
		fields := map[ui.ID]bool{}
		for _, m := range d.List.Marks {
			if m.Kind == ui.KindTextField {
				fields[m.ID] = true // words longer than a field are scrolled in it
			}
		}
		list := *d.List
		list.Marks = nil
		for _, m := range d.List.Marks {
			place := strings.HasSuffix(m.Label, d.view.Place) || strings.HasPrefix(m.Label, d.view.Book.Origin) && d.view.Book.Origin != "" // may be longer than any line
			if !fields[m.Owner] && !place {
				list.Marks = append(list.Marks, m)
			}
			if text := m.Label + m.Value + m.Why; strings.Contains(text, "‹") || strings.Contains(text, "%!") {
				t.Errorf("%s: words are missing in %s", where, text)
			}
		}
		for _, f := range uitest.Faults(&list) {
			if key := fmt.Sprint(size, f); !d.told[key] {
				t.Errorf("%.0f × %.0f, %s: %s", size.X, size.Y, where, f)
				d.told[key] = true
			}
		}
	}
	d.Size, d.Scale = sizes[2], 1
	d.Idle()
}

func (d *desk) click(t *testing.T, label string) {
	t.Helper()
	d.Idle()
	if err := d.Click(label); err != nil {
		t.Fatal(err)
	}
	d.Idle()
}

// everyPage looks at all of them.
func everyPage(t *testing.T) {
	t.Helper()
	d := sit(ledgerdesk.View{Place: "a folder", MaySign: may})
	d.faults(t, "opening")
	d.view.Stage, d.view.Fault = ledgerdesk.Shut, long
	d.faults(t, "shut")
	d.view.Stage = ledgerdesk.NoBook
	d.faults(t, "no book")
	d.view.Book.Origin = full().Book.Origin
	d.faults(t, "a book that was begun")

	d = sit(full())
	d.faults(t, "learner")
	for _, who := range []string{"", "AS-1", "X-1"} {
		d.view.Who = who
		d.faults(t, "learner "+who)
	}
	d.view.Notice = long
	d.view.Work = ledgerdesk.Work{Text: words.Say("desk_book.costing"), Done: 12, All: 3456, Told: true, Stops: true}
	d.faults(t, "at work")
	d.view.Work = ledgerdesk.Work{}
	d.click(t, words.Say("desk_book.tab_assessor"))
	d.faults(t, "assessor")
	d.click(t, words.Say("desk_book.tab_educator"))
	d.view.NoCost, d.view.Class = long, recorded(&d.view).Page
	d.view.Check = &ledgerdesk.Check{Records: 12345, Root: d.view.Book.Root, Counts: []string{long, long}, Findings: []string{long, "short"}}
	for _, part := range []string{"desk_book.part_stand", "desk_book.part_due", "desk_book.part_cost", "desk_book.part_book"} {
		d.click(t, words.Say(part))
		d.faults(t, part)
	}
	d.view.Notice = ""
	d.view.Review = judged()
	d.faults(t, "review")
	d.Core.SetScroll(ui.Name("book column").With("said"), 1e6)
	d.faults(t, "review, below")
	d.view.Draft = drafted()
	d.faults(t, "to sign")
	d.view.Review, d.view.Draft = nil, nil
	d.view.Signed = &ledgerdesk.Signed{ID: d.view.Book.Entries[0].ID, Verdict: words.Say("book_cli.verdict_mismatch"), What: long, Root: d.view.Book.Root, Records: 12345, Log: []string{long}}
	d.faults(t, "signed")
	d.click(t, words.Say("desk_book.save_sheet"))
	d.faults(t, "saving a sheet")
	d.Key(ui.KeyEscape)
	d.view.Record, d.view.Signed = recorded(&d.view), nil
	d.faults(t, "record")
	d.view.Record.State = ""
	d.click(t, words.Say("desk_book.rate"))
	d.faults(t, "second rating")
	d.Core.SetScroll(ui.Name("book column").With("second"), 1e6)
	d.faults(t, "second rating, below")
}

func TestNothingOverlapsOnAnyPage(t *testing.T) { everyPage(t) }

// stretch is the share by which texts become longer in other languages.
const stretch = 0.35

func TestLongWordsFitToo(t *testing.T) {
	texts := words.Texts()
	for key, text := range texts {
		if strings.HasPrefix(key, "key.") {
			continue
		}
		tokens, owed := strings.Split(text, " "), 0.0
		for i, token := range tokens {
			word := strings.TrimFunc(token, func(r rune) bool { return !unicode.IsLetter(r) })
			if word == "" || strings.ContainsAny(token, "%×\n") {
				continue
			}
			letters := []rune(word)
			owed += stretch * float64(len(letters)+1)
			n := min(int(owed), len(letters))
			owed -= float64(n)
			tokens[i] = strings.Replace(token, word, word+strings.ToLower(string(letters[len(letters)-n:])), 1)
		}
		texts[key] = strings.Join(tokens, " ")
	}
	if err := words.Use(texts); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { words.Use(nil) })
	everyPage(t)
}
