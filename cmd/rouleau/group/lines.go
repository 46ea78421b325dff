package group

import (
	"strings"

	"rouleau/assets/words"
)

// This file tells a terminal the figures in a few lines.

// mostLines is how many kinds of a section a terminal is told.
const mostLines = 5

// Lines are the figures, each line a paragraph of its own. Lines that belong under the one before begin with a dash. Like the
// page they name nobody.
func (g *Group) Lines() (lines []string) {
	lines = append(lines, g.counts())
	for _, s := range g.told() {
		f := s.figures
		lines = append(lines, words.Say("group.line_section", s.name(), s.modeName(), s.size())+" "+s.results())
		for i := range f.kinds[:min(mostLines, len(f.kinds))] {
			k := &f.kinds[i]
			line := words.Say("group.line_kind", k.name(), k.attempts, attempts(f.all.attempts), people(k.people), points(k.points.mean), points(k.each))
			if k.critical.attempts > 0 {
				line += words.Say("group.line_critical", k.critical.attempts)
			}
			lines = append(lines, "- "+line)
		}
		lines = append(lines, "- "+g.better(s))
	}
	return append(lines, words.Say("group.line_feedback"))
}

// LeftLines say what was left out: each file with which something is the matter, and how many others. They hold names of files,
// and what stands in these, so they are for who has the files.
func (g *Group) LeftLines() (lines []string) {
	var others []string
	for _, l := range g.Left {
		if l.Why.fault() {
			lines = append(lines, words.Say("group.line_fault", l.Detail))
		}
	}
	for why := range Why(len(whyKeys)) {
		if n := g.count(why); n > 0 && !why.fault() {
			others = append(others, words.Say("group.left_count", why, n))
		}
	}
	if len(others) > 0 {
		lines = append(lines, words.Say("group.line_left", strings.Join(others, "; ")))
	}
	return lines
}
