package group

import (
	"cmp"
	"slices"
	"strings"

	"rouleau/scoring/attempt"
)

// This file sorts attempts into the parts of the page: one text of one case, in one mode.

// section is such a part.
type section struct {
	id, title string
	version   int
	text      string // the beginning of the hash of the text, where another text has the same name and version
	mode      string
	lesson    bool
	passMark  float64
	entries   []*entry // in order of time
	figures   *figures // nil where fewer people played than figures are made of
}

// key is what tells sections apart.
type key struct{ hash, mode string }

func keyOf(a *attempt.Attempt) key { return key{a.Scenario.SHA256, a.Mode} }

// shownHash is how much of a hash is shown.
const shownHash = 8

// sectionsOf are cases before lessons, by name, version and text, and assessment before practice.
func sectionsOf(entries []*entry) (all []*section) {
	at := map[key]*section{}
	hashes := map[string]*section{} // parsing a text takes longer than finding it
	for _, e := range entries {
		a := e.attempt
		s := at[keyOf(a)]
		if s == nil {
			s = &section{id: a.Scenario.ID, version: a.Scenario.Version, text: a.Scenario.SHA256, mode: a.Mode, passMark: float64(a.Grade.PassMark)}
			if o := hashes[s.text]; o != nil {
				s.title, s.lesson = o.title, o.lesson
			} else {
				sc := scenarioOf(a)
				s.title, s.lesson, hashes[s.text] = sc.Title, sc.Lesson(), s
			}
			at[keyOf(a)] = s
			all = append(all, s)
		}
		s.entries = append(s.entries, e)
	}
	slices.SortFunc(all, func(a, b *section) int {
		return cmp.Or(byTruth(a.lesson, b.lesson), strings.Compare(a.id, b.id), cmp.Compare(a.version, b.version), strings.Compare(a.text, b.text), strings.Compare(a.mode, b.mode))
	})
	var twins []*section
	for _, s := range all {
		if slices.ContainsFunc(all, func(o *section) bool { return o.id == s.id && o.version == s.version && o.text != s.text }) {
			twins = append(twins, s)
		}
	}
	for _, s := range all {
		if s.text = s.text[:shownHash]; !slices.Contains(twins, s) {
			s.text = ""
		}
	}
	return all
}

// byTruth puts no before yes.
func byTruth(a, b bool) int {
	switch {
	case a == b:
		return 0
	case b:
		return -1
	}
	return 1
}
