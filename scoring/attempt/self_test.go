package attempt

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"rouleau/scenarios"
)

// Marks of one's own in an attempt file.

// kept is the recorded attempt as a file, and marks for all its objectives.
func kept(t *testing.T) (path string, s Self) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "a.json")
	if err := os.WriteFile(path, file(t), 0o600); err != nil {
		t.Fatal(err)
	}
	sc, err := scenarios.Load(short)
	if err != nil {
		t.Fatal(err)
	}
	for i, o := range Objectives(sc) {
		s.Marks = append(s.Marks, ObjectiveMark{o.ID, Mark(i % int(MarkCount))})
	}
	if len(s.Marks) < 3 {
		t.Fatalf("only %d objectives", len(s.Marks))
	}
	s.Otherwise = "Look at the <clamp> first & ask sooner"
	return path, s
}

func loaded(t *testing.T, path string) *Attempt {
	t.Helper()
	a, err := Load(path)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func TestMarksAreKeptAndSealed(t *testing.T) {
	path, s := kept(t)
	with := s
	with.Otherwise = "  " + s.Otherwise + " \xff "
	if err := KeepSelf(path, with); err != nil {
		t.Fatal(err)
	}
	a := loaded(t, path)
	if a.Self == nil || !slices.Equal(a.Self.Marks, s.Marks) || a.Self.Otherwise != s.Otherwise+" \ufffd" || !a.Sealed() {
		t.Fatalf("kept %+v, sealed %v", a.Self, a.Sealed())
	}
	for _, m := range s.Marks {
		if got := a.Self.Of(m.Objective); got != m.Mark {
			t.Errorf("%s is marked %v, want %v", m.Objective, got, m.Mark)
		}
	}
	if r := replayed(t, a); !r.Same() || len(r.Wording) > 0 {
		t.Error("with marks it is not played again as it was")
	}
	if again := read(t, a.Encode()); !bytes.Equal(again.Encode(), a.Encode()) {
		t.Error("written twice, it is not the same")
	}
	// All but the marks and the seal is as it was, byte for byte.
	a.Self = nil
	a.Seal = a.seal()
	if !bytes.Equal(a.Encode(), file(t)) {
		t.Error("the marks change more than their key and the seal")
	}
}

// A careless change of a mark shows in the seal.
func TestTheSealCoversTheMarks(t *testing.T) {
	path, s := kept(t)
	s.Marks[0].Mark = WentWell
	if err := KeepSelf(path, s); err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	changed := bytes.Replace(data, []byte(`"mark": "well"`), []byte(`"mark": "not_well"`), 1)
	if bytes.Equal(changed, data) {
		t.Fatal("there is no mark to change")
	}
	if a := read(t, changed); a.Sealed() || replayed(t, a).Same() {
		t.Error("a changed mark does not show")
	}
}

func TestMarksAreGivenOnceAndOnlyToAWholeFile(t *testing.T) {
	path, s := kept(t)
	if err := KeepSelf(path, s); err != nil {
		t.Fatal(err)
	}
	before, _ := os.ReadFile(path)
	if err := KeepSelf(path, s); err == nil || !strings.Contains(err.Error(), "were marked before") {
		t.Errorf("given twice: %v", err)
	}
	if after, _ := os.ReadFile(path); !bytes.Equal(before, after) {
		t.Error("a refused second time changed the file")
	}
	path, s = kept(t)
	changed := bytes.Replace(file(t), []byte(`"operator": "steady"`), []byte(`"operator": "someone"`), 1)
	if err := os.WriteFile(path, changed, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := KeepSelf(path, s); err == nil || !strings.Contains(err.Error(), "was changed after it was saved") {
		t.Errorf("given to a changed file: %v", err)
	}
	if err := KeepSelf(filepath.Join(t.TempDir(), "none.json"), s); err == nil || !strings.Contains(err.Error(), "there is no such file") {
		t.Errorf("given to no file: %v", err)
	}
	for name, spoil := range map[string]func(s *Self){
		"long":    func(s *Self) { s.Otherwise = strings.Repeat("ä", MostOtherwise+1) },
		"missing": func(s *Self) { s.Marks = s.Marks[1:] },
		"unknown": func(s *Self) {
			s.Marks = append(slices.Clone(s.Marks[1:]), ObjectiveMark{s.Marks[0].Objective, MarkCount})
		},
	} {
		path, s := kept(t)
		spoil(&s)
		if err := KeepSelf(path, s); err == nil {
			t.Errorf("%s: marks that cannot be read again are kept", name)
		}
		if after, _ := os.ReadFile(path); !bytes.Equal(after, file(t)) {
			t.Errorf("%s: refused marks changed the file", name)
		}
	}
}

// A disk that fails leaves the attempt as it was saved at the end of the case.
func TestMarksThatCannotBeSavedLeaveTheAttempt(t *testing.T) {
	path, s := kept(t)
	old := writeWhole
	defer func() { writeWhole = old }()
	writeWhole = func(string, []byte) error { return os.ErrDeadlineExceeded }
	if err := KeepSelf(path, s); err == nil || !strings.Contains(err.Error(), "kept without the marks") {
		t.Errorf("a full disk: %v", err)
	}
	if after, _ := os.ReadFile(path); !bytes.Equal(after, file(t)) {
		t.Error("the attempt is not as it was")
	}
}

func TestFaultsOfMarks(t *testing.T) {
	path, s := kept(t)
	if err := KeepSelf(path, s); err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	good := string(data)
	first, second := s.Marks[0].Objective, s.Marks[1].Objective
	with := func(self any) string {
		text, err := json.Marshal(self)
		if err != nil {
			t.Fatal(err)
		}
		from, to := strings.Index(good, "  \"self\": "), strings.Index(good, "  \"seal\": ")
		return good[:from] + "  \"self\": " + string(text) + ",\n" + good[to:]
	}
	marks := func(change func(m []ObjectiveMark) []ObjectiveMark) string {
		return with(Self{Marks: change(slices.Clone(s.Marks))})
	}
	for name, c := range map[string]struct{ file, want string }{
		"no object":     {with([]int{1}), "self: this is a array, and not an object in braces"},
		"null":          {with(nil), "self: there is no value here"},
		"another key":   {with(map[string]any{"marks": s.Marks, "remark": ""}), `self: key "remark" is not known here`},
		"no marks":      {with(map[string]any{"otherwise": ""}), "self.marks: the objective " + first + " is missing: add it"},
		"another mark":  {strings.Replace(good, `"mark": "well"`, `"mark": "wel"`, 1), `.mark: "wel" is not a mark: not_marked, well, partly, not_well or did_not_come_up (nearest: well)`},
		"a number":      {strings.Replace(good, `"mark": "well"`, `"mark": 1`, 1), "self.marks[1]: mark is a number, and not a text"},
		"another name":  {strings.Replace(good, `"objective": "`+first+`",`+"\n        \"mark\"", `"objective": "`+first+`s",`+"\n        \"mark\"", 1), "self.marks[0].objective: \"" + first + "s\" is not an objective that this scenario grades: take it out (nearest: " + first + ")"},
		"twice":         {marks(func(m []ObjectiveMark) []ObjectiveMark { return append(m, m[1]) }), "\"" + second + "\" is marked twice: take one of the two out"},
		"one too few":   {marks(func(m []ObjectiveMark) []ObjectiveMark { return slices.Delete(m, 1, 2) }), "self.marks: the objective " + second + " is missing: add it, as not_marked"},
		"a long line":   {with(Self{Marks: s.Marks, Otherwise: strings.Repeat("ü", 401)}), "self.otherwise: the line has 401 characters, and at most 400 are kept: shorten it"},
		"several lines": {with(Self{Marks: s.Marks, Otherwise: "one\ntwo"}), "self.otherwise: this is more than one line: put a space"},
	} {
		_, err := Parse("a.json", []byte(c.file))
		if err == nil || !strings.Contains(err.Error(), "a.json: self") || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s:\n%v\nwant %q", name, err, c.want)
		}
	}
	if _, err := Parse("a.json", []byte(with(Self{Marks: s.Marks, Otherwise: strings.Repeat("ü", 400)}))); err != nil {
		t.Errorf("400 characters are too many: %v", err)
	}
}

// Objectives that no criterion shows are not asked about, and the parts of the work give the order.
func TestObjectivesAreThoseGraded(t *testing.T) {
	sc, err := scenarios.Load(short)
	if err != nil {
		t.Fatal(err)
	}
	var ids []string
	for _, o := range Objectives(sc) {
		ids = append(ids, o.ID)
	}
	if want := []string{"whole_case", "clean_bowls", "bring_it_back", "keep_a_record"}; !slices.Equal(ids, want) {
		t.Errorf("%v, want %v", ids, want)
	}
}
