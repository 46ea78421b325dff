package ledger

import (
	"bytes"
	"encoding/csv"
	"slices"
	"strconv"
	"strings"

	"rouleau/scoring/book"
	"rouleau/scoring/cells"
)

// Exports: CSV for spreadsheets, statements for learning record stores. People stand in them by their codes; what people have written
// is left out unless it is asked for.

// CSV writes a line for every record about a learner and gives how many there are.
func (l *Ledger) CSV(file string, texts bool) (int, error) {
	var items []string // that anybody was rated in
	for _, e := range l.Entries {
		for _, r := range ratedIn(e) {
			if !slices.Contains(items, r.Item) {
				items = append(items, r.Item)
			}
		}
	}
	slices.Sort(items)
	head := []string{"record", "kind", "written", "state", "learner", "assessor", "second_rating_of", "for", "date", "due", "scenario", "version", "scenario_sha256",
		"model", "seed", "mode", "played", "length_s", "interruptions", "let_go_s", "taken_over", "attempt", "points", "pass_mark", "passed", "outcome", "overridden",
		"critical", "supersedes", "competency", "event"}
	for _, it := range items {
		head = append(head, cells.Text("rated_"+it))
	}
	if texts {
		head = append(head, "override", "comments", "feedback", "reason", "rated_comments", "training")
	}
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.UseCRLF = true // RFC 4180
	if err := w.Write(head); err != nil {
		return 0, err
	}
	n := 0
	for _, e := range l.Entries {
		row := rowOf(e)
		if row == nil {
			continue
		}
		for _, it := range items {
			row["rated_"+it] = levelIn(e, it)
		}
		var line []string
		for _, h := range head {
			line = append(line, row[cells.Read(h)])
		}
		if err := w.Write(line); err != nil {
			return 0, err
		}
		n++
	}
	w.Flush()
	if err := w.Error(); err != nil {
		return 0, err
	}
	return n, Place(file, b.Bytes())
}

// StateOf says what became of a record.
func StateOf(e *book.Entry) string {
	switch {
	case e.ForgottenBy != "":
		return "deleted"
	case e.VoidedBy != "":
		return "void"
	case e.SupersededBy != "":
		return "superseded"
	}
	return "in_force"
}

// rowOf is the line of a record by column, nil for one that is about no learner. Of a deleted one nothing is left but that there was
// one.
func rowOf(e *book.Entry) map[string]string {
	row := map[string]string{"record": e.Leaf.ID, "kind": string(e.Leaf.Kind), "written": e.Leaf.At, "state": StateOf(e)}
	text := func(key, value string) { row[key] = cells.Text(value) }
	switch b := e.Body.(type) {
	case *book.SignOff:
		for key, value := range map[string]string{"learner": b.Learner, "assessor": b.Assessor, "for": b.For, "date": b.Date, "due": b.Due, "scenario": b.Scenario.ID,
			"scenario_sha256": b.Scenario.SHA256, "model": b.Model, "seed": b.Seed, "mode": b.Mode, "played": b.Played, "outcome": string(b.Outcome), "critical": criticalOf(b),
			"supersedes": b.Supersedes, "override": b.Override, "comments": b.Comments, "feedback": b.Feedback, "rated_comments": commentsOf(b.Rated), "training": trainingOf(b)} {
			text(key, value)
		}
		for key, value := range map[string]float64{"length_s": b.LengthS, "let_go_s": b.Breaks.LetGoS, "points": b.Points, "pass_mark": b.PassMark,
			"version": float64(b.Scenario.Version), "interruptions": float64(b.Breaks.Interruptions), "attempt": float64(b.Number)} {
			row[key] = cells.Number(value)
		}
		for key, value := range map[string]bool{"taken_over": b.Breaks.TakenOver, "passed": b.Passed, "overridden": b.Override != ""} {
			row[key] = strconv.FormatBool(value)
		}
	case *book.Rating:
		text("learner", b.Learner)
		text("assessor", b.Assessor)
		text("second_rating_of", b.Of)
		text("comments", b.Comments)
		text("rated_comments", commentsOf(b.Rated))
	case *book.Case:
		text("learner", b.Learner)
		text("assessor", b.Assessor)
		text("competency", b.Competency)
		text("date", b.Date)
	case *book.Event:
		text("learner", b.Learner)
		text("assessor", b.By)
		text("event", b.What)
		text("date", b.Date)
		text("reason", b.Reason)
	case nil:
		if e.Leaf.Kind == book.KindPlan || e.Leaf.Kind == book.KindKey {
			return nil
		}
	default:
		return nil
	}
	return row
}

func ratedIn(e *book.Entry) []book.Rated {
	switch b := e.Body.(type) {
	case *book.SignOff:
		return b.Rated
	case *book.Rating:
		return b.Rated
	}
	return nil
}

func levelIn(e *book.Entry, item string) string {
	for _, r := range ratedIn(e) {
		if r.Item == item {
			return strconv.Itoa(r.Level)
		}
	}
	return ""
}

func criticalOf(b *book.SignOff) string {
	var all []string
	for _, c := range b.Critical {
		if !c.Mended {
			all = append(all, c.Name)
		}
	}
	return strings.Join(all, ";")
}

func commentsOf(rated []book.Rated) string {
	var all []string
	for _, r := range rated {
		if r.Comment != "" {
			all = append(all, r.Item+": "+r.Comment)
		}
	}
	return strings.Join(all, "; ")
}

func trainingOf(b *book.SignOff) string {
	var all []string
	for _, t := range b.Training {
		all = append(all, t.What+": "+t.Text)
	}
	return strings.Join(all, "; ")
}

// XAPI writes the statements of all records to a file and gives how many there are.
func (l *Ledger) XAPI(file, base string, comments bool) (int, error) {
	all, err := l.statements(base, comments)
	if err != nil {
		return 0, err
	}
	plain := []book.Statement{}
	for _, s := range all {
		plain = append(plain, s.Statement)
	}
	data, err := indented(plain)
	if err != nil {
		return 0, err
	}
	return len(plain), Place(file, data)
}

// placed is a statement with the place of the record it tells of.
type placed struct {
	book.Statement
	place int64
}

// statements are those of the whole book, in its order.
func (l *Ledger) statements(base string, comments bool) (all []placed, err error) {
	for _, e := range l.Entries {
		some, err := l.Statements(e, base, comments)
		if err != nil {
			return nil, wrongCall(err)
		}
		for _, s := range some {
			all = append(all, placed{s, e.Seq})
		}
	}
	return all, nil
}
