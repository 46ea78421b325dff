package ledger

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"rouleau/cmd/rouleau/sheet"
	"rouleau/cmd/rouleau/shelf"
	"rouleau/scoring/book"
	"rouleau/scoring/book/booktest"
	"rouleau/scoring/cells"
)

// full is a book with a record of each kind, in which people have written formulas and a name.
func full(t *testing.T) (*bench, map[string]*book.Entry) {
	t.Helper()
	b := opened(t)
	if err := SetName(b.Keys, booktest.Trainee, planted); err != nil {
		t.Fatal(err)
	}
	e := map[string]*book.Entry{}
	g := signing(t, done{seed: 7, by: planted})
	g.Comments, g.Feedback = "=HYPERLINK(\"x\") "+planted, "+1 "+planted
	g.Rated = []book.Rated{{Item: "handover", Level: 3, Comment: "@" + planted}}
	g.Training = []book.Training{{What: book.TrainingOperator, Text: planted}}
	e["signoff"] = b.signed(t, g)
	e["rating"] = b.must(t, &book.Rating{Of: e["signoff"].Leaf.ID, Learner: booktest.Trainee, Assessor: booktest.Second, Rated: []book.Rated{{Item: "handover", Level: 2, Comment: planted}, {Item: "honesty", Level: 4}}, Comments: planted}, nil, booktest.Second)
	e["case"] = b.must(t, &book.Case{Learner: booktest.Trainee, Assessor: booktest.First, Competency: "=salvage", Date: "2031-05-10"}, nil, booktest.First)
	e["event"] = b.must(t, &book.Event{Learner: booktest.Trainee, By: booktest.First, What: book.EventIncident, Date: "2031-05-11", Reason: planted}, nil, booktest.First)
	idle := signing(t, done{seed: 8, idle: true})
	idle.Outcome, idle.Override = book.Competent, "said by "+planted // against what was computed
	e["idle"] = b.signed(t, idle)
	e["void"] = b.must(t, &book.Void{Of: e["idle"].Leaf.ID, Learner: booktest.Trainee, Assessor: booktest.First, Reason: planted}, nil, booktest.First)
	e["gone"] = b.signed(t, signing(t, done{seed: 9}))
	b.must(t, &book.Forget{Of: e["gone"].Leaf.ID, By: booktest.Admin, Reason: planted}, nil, booktest.Admin)
	return b, e
}

// table reads a CSV file as a program would, by record and column.
func table(t *testing.T, path string) (map[string]map[string]string, []string) {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]map[string]string{}
	for _, row := range rows[1:] {
		line := map[string]string{}
		for i, cell := range row {
			if cell != "" && strings.ContainsAny(cell[:1], "=+@\t\r") {
				t.Errorf("a spreadsheet would run %q", cell)
			}
			line[rows[0][i]] = cell
		}
		out[line["record"]] = line
	}
	return out, rows[0]
}

func TestTheTableForSpreadsheets(t *testing.T) {
	b, e := full(t)
	path := filepath.Join(t.TempDir(), "book.csv")
	n, err := b.CSV(path, false)
	if err != nil || n != 6 {
		t.Fatal(n, err)
	}
	rows, head := table(t, path)
	row := func(key string) map[string]string { return rows[e[key].Leaf.ID] }
	for _, c := range []struct{ of, column, want string }{
		{"signoff", "learner", "P-07"}, {"signoff", "assessor", "AS-1"}, {"signoff", "points", "100"}, {"signoff", "outcome", "competent"}, {"signoff", "state", "in_force"}, {"signoff", "seed", "7"},
		{"signoff", "rated_handover", "3"}, {"signoff", "rated_honesty", ""}, {"signoff", "passed", "true"}, {"signoff", "attempt", "1"}, {"rating", "rated_handover", "2"}, {"rating", "rated_honesty", "4"},
		{"rating", "second_rating_of", e["signoff"].Leaf.ID}, {"case", "competency", "'=salvage"}, {"event", "event", "incident"}, {"idle", "state", "void"}, {"idle", "outcome", "competent"}, {"idle", "overridden", "true"}, {"idle", "passed", "false"},
		{"gone", "state", "deleted"}, {"gone", "learner", ""}, {"gone", "points", ""},
	} {
		if got := row(c.of)[c.column]; got != c.want {
			t.Errorf("%s of %s is %q, want %q", c.column, c.of, got, c.want)
		}
	}
	if slices.Contains(head, "comments") || len(rows) != 6 {
		t.Errorf("%q, %d rows", head, len(rows))
	}
	if n, err = b.CSV(path, true); err != nil || n != 6 {
		t.Fatal(n, err)
	}
	rows, _ = table(t, path)
	if got := row("signoff")["comments"]; cells.Read(got) != "=HYPERLINK(\"x\") "+planted {
		t.Errorf("comments that were asked for are %q", got)
	}
	_, err = b.CSV(filepath.Join(path, "x"), false)
	if err == nil {
		t.Error("a file was made below a file")
	}
	_, err = b.CSV(filepath.Dir(path), false)
	said(t, err, int(shelf.Wrong), "not a file that can be written")
}

// The name of a learner, planted in the file of names, in every text and in the attempt, is in nothing that leaves the book unasked.
func TestANameShowsNowhere(t *testing.T) {
	b, e := full(t)
	folder := t.TempDir()
	if _, err := b.CSV(filepath.Join(folder, "a.csv"), false); err != nil {
		t.Fatal(err)
	}
	if _, err := b.XAPI(filepath.Join(folder, "a.json"), "https://department.example/practice", false); err != nil {
		t.Fatal(err)
	}
	if _, err := b.ProveTo(e["signoff"].Leaf.ID, false, filepath.Join(folder, "proof.json")); err != nil {
		t.Fatal(err)
	}
	signed, err := b.Newest()
	if err != nil {
		t.Fatal(err)
	}
	file(t, folder, "checkpoint.txt", signed)
	sheetOf(t, b, e["signoff"], false, folder, "signoff")
	sheetOf(t, b, e["idle"], false, folder, "idle")
	if err := b.post("https://department.example/practice"); err != nil {
		t.Fatal(err)
	}
	letters, err := b.shelf.Letters()
	if err != nil || len(letters) == 0 {
		t.Fatal(letters, err)
	}
	for i, l := range letters {
		file(t, folder, "letter"+string(rune('a'+i)), l.Statement)
	}
	files, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	holds := func(data []byte) bool {
		return bytes.Contains(bytes.ToLower(data), []byte("plantedname")) || bytes.Contains(data, []byte("Robin"))
	}
	for _, f := range files {
		data, err := os.ReadFile(filepath.Join(folder, f.Name()))
		if err != nil {
			t.Fatal(err)
		}
		if holds(data) {
			t.Errorf("the name shows in %s", f.Name())
		}
		if info, err := f.Info(); err != nil || runtime.GOOS != "windows" && info.Mode().Perm() != 0o600 {
			t.Errorf("%s may be read by others: %v %v", f.Name(), info.Mode(), err)
		}
	}
	if data, err := e["signoff"].Attachment(); err != nil || holds(data) {
		t.Error("the name is in the attempt that is kept")
	}
	// the test can fail: where comments are asked for, the name that somebody wrote into one shows
	path := filepath.Join(folder, "asked.json")
	if _, err := b.XAPI(path, "https://department.example/practice", true); err != nil {
		t.Fatal(err)
	}
	if data, _ := os.ReadFile(path); !holds(data) {
		t.Error("comments that were asked for are not there")
	}
	for _, path := range sheetOf(t, b, e["idle"], true, folder, "asked") {
		if data, _ := os.ReadFile(path); !holds(data) {
			t.Errorf("the reason that was asked for is not in %s", filepath.Base(path))
		}
	}
}

// sheetOf puts the sheet of a record into a folder: the page, and the text that somebody reads in the PDF.
func sheetOf(t *testing.T, b *bench, e *book.Entry, comments bool, folder, name string) []string {
	t.Helper()
	p, err := sheet.Of(b.State, e, comments)
	if err != nil {
		t.Fatal(err)
	}
	html, err := p.HTML()
	if err != nil {
		t.Fatal(err)
	}
	pdf, err := p.PDF()
	if err != nil {
		t.Fatal(err)
	}
	text, err := exec.Command("pdftotext", file(t, t.TempDir(), "a.pdf", pdf), "-").Output()
	if err != nil || !bytes.Contains(text, []byte(booktest.Trainee)) {
		t.Fatalf("the PDF cannot be read with pdftotext, which cmd/test.sh brings along: %v %s", err, text)
	}
	return []string{file(t, folder, name+".html", html), file(t, folder, name+".txt", text)}
}

func TestStatementsAsAFile(t *testing.T) {
	b, _ := full(t)
	path := filepath.Join(t.TempDir(), "a.json")
	n, err := b.XAPI(path, "https://department.example/practice/", false)
	if err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var all []book.Statement
	if err := json.Unmarshal(data, &all); err != nil || len(all) != n || n != 3+3+3+4 { // two sign-offs, what takes the void one back, and the deleted one
		t.Errorf("%d statements, %d in the file, %v", n, len(all), err)
	}
	_, err = b.XAPI(path, "nowhere", false)
	said(t, err, int(shelf.Wrong), "is no base IRI")
}

func TestNamesAreKeptApart(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "keys")
	if names, err := Names(folder); err != nil || len(names) != 0 {
		t.Error(names, err)
	}
	for code, name := range map[string]string{"P-07": "  Robin   of the\tWard ", "P-08": "x: y", "P-09": "to go"} {
		if err := SetName(folder, code, name); err != nil {
			t.Fatal(err)
		}
	}
	if err := SetName(folder, "P-09", ""); err != nil {
		t.Fatal(err)
	}
	if names, err := Names(folder); err != nil || len(names) != 2 || names["P-07"] != "Robin of the Ward" || names["P-08"] != "x: y" {
		t.Error(names, err)
	}
	if info, err := os.Stat(filepath.Join(folder, namesFile)); err != nil || info.Mode().Perm()&0o077 != 0 {
		t.Error(info.Mode(), err)
	}
	said(t, SetName(folder, "Robin", "x"), int(shelf.Wrong), "is no code")
	file(t, folder, namesFile, []byte("[1, 2"))
	_, err := Names(folder)
	said(t, err, int(shelf.NotRight), "the names cannot be read")
	said(t, SetName(folder, "P-07", "x"), int(shelf.NotRight), "the names cannot be read")
}
