// The list of cases as home shows it: the library, files that were opened, and what past results are of.

package app

import (
	"cmp"
	"path/filepath"
	"slices"
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/home"
	"rouleau/cmd/rouleau-desk/keep"
	"rouleau/scenarios"
	"rouleau/scoring/attempt"
)

// known is a case that can be begun.
type known struct {
	key      string
	group    home.Group
	path     string              // of a file of one's own, which is read again before it is begun
	scenario *scenarios.Scenario // nil while the file cannot be played
	broken   string              // why it cannot
}

// is tells whether this is the case of an id.
func (k *known) is(id string) bool { return k.scenario != nil && k.scenario.ID == id }

// goHome shows the home screens with results as they are now.
func (a *App) goHome() {
	a.begun = playing{}
	if a.cases == nil {
		a.library()
		a.recent()
	}
	past, faults := a.folder.Past()
	for _, err := range faults {
		a.tell(err.Error())
	}
	a.recorded(past)
	slices.SortStableFunc(a.cases, func(x, y known) int { return cmp.Compare(x.group, y.group) })
	by := map[string][]keep.Past{}
	for _, p := range past {
		by[p.ScenarioID] = append(by[p.ScenarioID], p)
	}
	a.view.Cases = a.view.Cases[:0]
	for i := range a.cases {
		k := &a.cases[i]
		if k.scenario == nil {
			a.view.Cases = append(a.view.Cases, home.Case{Key: k.key, Group: k.group, Title: filepath.Base(k.path), File: k.path, Broken: k.broken})
			continue
		}
		a.view.Cases = append(a.view.Cases, caseOf(k, by[k.scenario.ID]))
	}
	a.unfinished()
}

// library reads the cases that come with the program.
func (a *App) library() {
	for _, name := range scenarios.Library() {
		sc, err := scenarios.Open(name)
		if err != nil {
			a.tell(err.Error())
			continue
		}
		k := known{key: name, group: home.Library, scenario: sc}
		if sc.Lesson() {
			k.group = home.Lesson
		}
		a.cases = append(a.cases, k)
	}
}

// recorded adds cases that are known from results alone: their files were opened at another time. The record holds the text.
func (a *App) recorded(past []keep.Past) {
	for _, p := range past {
		if slices.ContainsFunc(a.cases, func(k known) bool { return k.is(p.ScenarioID) }) {
			continue
		}
		r, err := attempt.Load(p.Path)
		if err != nil {
			a.tell(err.Error())
			continue
		}
		if sc, faults := scenarios.Parse(r.Scenario.ID, []byte(r.Scenario.Text)); len(faults) == 0 {
			a.cases = append(a.cases, known{key: "record " + sc.ID, group: home.Own, scenario: sc})
		}
	}
}

// add puts a file of one's own into the list, in the place of what was there of the same file or the same case of a record.
func (a *App) add(sc *scenarios.Scenario, name, path string) {
	a.cases = slices.DeleteFunc(a.cases, func(old known) bool { return old.key == "record "+sc.ID })
	if path != "" {
		a.tellError(a.folder.Remember(path))
	}
	k := known{key: fileKey(name), group: home.Own, path: path, scenario: sc}
	a.list(k)
	a.home.ShowCase(k.key)
}

func (a *App) find(key string) *known {
	for i := range a.cases {
		if a.cases[i].key == key {
			return &a.cases[i]
		}
	}
	return nil
}

func caseOf(k *known, past []keep.Past) home.Case {
	s := k.scenario
	c := home.Case{Key: k.key, Group: k.group, Guided: s.Lesson(), Title: s.Title, Level: strings.ReplaceAll(s.Level, "_", " "), Summary: s.Summary, Minutes: s.Minutes,
		Version: s.Version, Cautions: s.Cautions, Speeds: s.Modes.PracticeSpeeds, AssessmentSpeed: max(1, s.Modes.AssessmentSpeed),
		LimitMin: s.Modes.TimeLimitMin, Past: past, File: k.path}
	if k.group == home.Own {
		for _, w := range s.Warnings {
			c.Warnings = append(c.Warnings, words.Say("home.own_warning", w.Line, w.Message))
		}
	}
	for _, o := range s.Objectives {
		c.Objectives = append(c.Objectives, o.Text)
	}
	return c
}
