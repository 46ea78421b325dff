package attempt

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"rouleau/scenarios"
	"rouleau/scenarios/yamlread"
)

// How the person who played saw each objective, marked before the verdict was shown. The file holds it under a key of its own,
// `self`, which is left out where nobody was asked; nothing that is played again depends on it.

// Mark is how one objective was seen.
type Mark uint8

// The marks.
const (
	NotMarked Mark = iota // asked, and left out
	WentWell
	WentPartly
	NotWell
	DidNotComeUp
	MarkCount
)

var markNames = [MarkCount]string{"not_marked", "well", "partly", "not_well", "did_not_come_up"}

// String is the mark's name in the file.
func (m Mark) String() string {
	if m >= MarkCount {
		return "unknown"
	}
	return markNames[m]
}

// MarshalText writes the name.
func (m Mark) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// Self holds a mark for each of [Objectives], and one line.
type Self struct {
	Marks     []ObjectiveMark `json:"marks"`
	Otherwise string          `json:"otherwise"` // what they would do otherwise, at most [MostOtherwise] characters
}

// ObjectiveMark is the mark of one objective.
type ObjectiveMark struct {
	Objective string `json:"objective"` // its id
	Mark      Mark   `json:"mark"`
}

// MostOtherwise is how many characters the line may have.
const MostOtherwise = 400

// Of is the mark of an objective. Where nobody was asked, it is [NotMarked].
func (s *Self) Of(objective string) Mark {
	if s != nil {
		for _, m := range s.Marks {
			if m.Objective == objective {
				return m.Mark
			}
		}
	}
	return NotMarked
}

// Objectives are those of a scenario that a criterion shows, in the order of the work: part by part, and in a part as the
// author lists them.
func Objectives(sc *scenarios.Scenario) []scenarios.Objective {
	var all []scenarios.Objective
	for _, p := range scenarios.Parts {
		for _, o := range sc.Objectives {
			if o.Part == p.Name && slices.ContainsFunc(sc.Criteria, func(c scenarios.Criterion) bool { return c.Objective == o.ID }) {
				all = append(all, o)
			}
		}
	}
	return all
}

// KeepSelf puts the marks into the file of an attempt and seals it anew. They are given once: a file that holds some, or was
// changed since it was written, stays as it is.
func KeepSelf(path string, s Self) error {
	a, err := Load(path)
	if err != nil {
		return err
	}
	switch {
	case a.Self != nil:
		return fmt.Errorf("%s: the objectives were marked before: the marks in the file stay", path)
	case !a.Sealed():
		return fmt.Errorf("%s: the file was changed after it was saved, so no marks are put into it: use the file as it was", path)
	}
	s.Otherwise = strings.TrimSpace(valid(s.Otherwise))
	sc, faults := scenarios.Parse(a.Scenario.ID+".yaml", []byte(a.Scenario.Text))
	if err := faults.Err(); err != nil {
		return err
	}
	found := &Faults{File: path}
	for i, m := range s.Marks {
		if m.Mark >= MarkCount {
			found.add(fmt.Sprintf("self.marks[%d].mark", i), "this mark is not known")
		}
	}
	found.self(sc, &s)
	if err := found.err(); err != nil {
		return err
	}
	a.Self = &s
	a.Seal = a.seal()
	if err := a.Save(path); err != nil {
		return fmt.Errorf("%w; the attempt is kept without the marks", err)
	}
	return nil
}

// readSelf reads the marks where there are some.
func (r *reading) readSelf(sc *scenarios.Scenario) {
	if _, ok := r.top["self"]; !ok {
		return
	}
	var in struct {
		Marks     []raw  `json:"marks"`
		Otherwise string `json:"otherwise"`
	}
	if !r.get("self", &in) {
		return
	}
	s, before := &Self{Marks: []ObjectiveMark{}, Otherwise: in.Otherwise}, len(r.faults.List)
	for i, row := range in.Marks {
		place := fmt.Sprintf("self.marks[%d]", i)
		var m struct {
			Objective string `json:"objective"`
			Mark      string `json:"mark"`
		}
		if message := strict(row, &m); message != "" {
			r.faults.add(place, message)
			continue
		}
		k := slices.Index(markNames[:], m.Mark)
		if k < 0 {
			r.faults.near(place+".mark", fmt.Sprintf("%q is not a mark: %s", clipped(m.Mark), oneOf(markNames[:])), yamlread.Nearest(m.Mark, markNames[:]))
		}
		s.Marks = append(s.Marks, ObjectiveMark{m.Objective, Mark(max(0, k))})
	}
	if len(r.faults.List) == before && sc != nil {
		r.faults.self(sc, s)
	}
	r.a.Self = s
}

// oneOf lists words of which one is meant.
func oneOf(words []string) string {
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

// self looks for marks that are not those of a scenario's objectives, and a line that is too long or not one.
func (fs *Faults) self(sc *scenarios.Scenario, s *Self) {
	var ids []string
	for _, o := range Objectives(sc) {
		ids = append(ids, o.ID)
	}
	marked := map[string]bool{}
	for i, m := range s.Marks {
		place := fmt.Sprintf("self.marks[%d].objective", i)
		switch {
		case !slices.Contains(ids, m.Objective):
			fs.near(place, fmt.Sprintf("%q is not an objective that this scenario grades: take it out", clipped(m.Objective)), yamlread.Nearest(m.Objective, ids))
		case marked[m.Objective]:
			fs.add(place, fmt.Sprintf("%q is marked twice: take one of the two out", clipped(m.Objective)))
		}
		marked[m.Objective] = true
	}
	for _, id := range ids {
		if !marked[id] {
			fs.add("self.marks", fmt.Sprintf("the objective %s is missing: add it, as not_marked where it was left out", id))
		}
	}
	if n := utf8.RuneCountInString(s.Otherwise); n > MostOtherwise {
		fs.add("self.otherwise", fmt.Sprintf("the line has %d characters, and at most %d are kept: shorten it", n, MostOtherwise))
	}
	if strings.ContainsFunc(s.Otherwise, unicode.IsControl) {
		fs.add("self.otherwise", "this is more than one line: put a space where a line break, a tab or another control character stands")
	}
}
