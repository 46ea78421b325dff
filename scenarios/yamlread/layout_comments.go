// This file finds the comments and blank lines of a file and says to which key
// or list item each belongs. The parser's own attribution is not used: it drops
// some comments and moves others.

package yamlread

import (
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// entry is a key of a block mapping or an item of a block list, with what is
// said about it. An empty text among head or tail is a blank line.
type entry struct {
	line, col int
	value     *yaml.Node
	head      []string // above it
	trail     string   // behind its value, or behind the colon of a block
	tail      []string // below all of it, as deep as itself
}

// remarks are all comments of a file.
type remarks struct {
	lines   []string
	header  []string // stays at the top, whatever key comes first
	footer  []string
	entries []*entry // in the order of the file
	of      map[*yaml.Node]*entry
	bodies  map[*yaml.Node]body // of block texts
}

// body is the text lines of a block text, without their common indentation.
type body struct {
	mark  string // | or > with what follows it
	lines []string
}

// remark is one comment or, with an empty text, one blank line.
type remark struct {
	line, col int
	text      string
	whole     bool // has a line of its own
}

// commented reads the comments of a file whose tree is given.
func commented(lines []string, root *yaml.Node) *remarks {
	r := &remarks{lines: lines, of: map[*yaml.Node]*entry{}, bodies: map[*yaml.Node]body{}}
	r.enter(root, true)
	slices.SortStableFunc(r.entries, func(a, b *entry) int { return a.line - b.line })
	r.attach(r.scan(root))
	return r
}

// enter lists the entries of block collections; the file itself always is one.
func (r *remarks) enter(node *yaml.Node, top bool) {
	if node.Style&yaml.FlowStyle != 0 && !top {
		return
	}
	switch node.Kind {
	case yaml.MappingNode:
		for i := 0; i+1 < len(node.Content); i += 2 {
			key := node.Content[i]
			r.add(key, &entry{line: key.Line, col: key.Column, value: node.Content[i+1]})
			r.enter(node.Content[i+1], false)
		}
	case yaml.SequenceNode:
		for _, item := range node.Content {
			r.add(item, &entry{line: item.Line, col: node.Column, value: item})
			r.enter(item, false)
		}
	}
}

func (r *remarks) add(node *yaml.Node, e *entry) {
	r.entries = append(r.entries, e)
	r.of[node] = e
}

// below is the index of the first entry that begins below a line.
func (r *remarks) below(line int) int {
	n, _ := slices.BinarySearchFunc(r.entries, line+1, func(e *entry, line int) int { return e.line - line })
	return n
}

// before gives the last entry that begins in a line or above it and, with a
// column, no further right than that; nil for none.
func (r *remarks) before(line, col int) *entry {
	for n := r.below(line) - 1; n >= 0; n-- {
		if e := r.entries[n]; col == 0 || e.col <= col {
			return e
		}
	}
	return nil
}

// after gives the first entry that begins below a line, nil for none.
func (r *remarks) after(line int) *entry {
	if n := r.below(line); n < len(r.entries) {
		return r.entries[n]
	}
	return nil
}

// attach gives every remark its place.
func (r *remarks) attach(found []remark) {
	var waiting []remark
	for i, m := range found {
		owner := r.before(m.line, 0)
		switch {
		case m.whole && owner != nil && flowReaches(owner.value, m.line):
			if m.text != "" {
				owner.head = append(owner.head, m.text)
			}
		case m.whole:
			waiting = append(waiting, m)
		case owner == nil:
			r.header = append(r.header, m.text)
		case owner.trail == "" && !flowReaches(owner.value, owner.line+1):
			owner.trail = m.text
		default:
			owner.head = append(owner.head, m.text)
		}
		next := r.after(m.line)
		if last := i+1 == len(found); last || r.after(found[i+1].line) != next {
			r.settle(waiting, next)
			waiting = nil
		}
	}
}

// settle places the comments and blank lines above one entry, or at the end of
// the file. Those deeper than the entry end the block before it.
func (r *remarks) settle(waiting []remark, next *entry) {
	var blank []string
	flush := func(into *[]string, text string) {
		*into = append(append(*into, blank...), text)
		blank = nil
	}
	for _, m := range waiting {
		if m.text == "" {
			blank = []string{""} // one stands for many
			continue
		}
		level := 1
		if next != nil {
			level = next.col
		}
		ended := (*entry)(nil)
		if m.col > level && (next == nil || len(next.head) == 0) {
			ended = r.before(m.line, m.col)
		}
		switch {
		case ended != nil && ended.col > level:
			flush(&ended.tail, m.text)
		case next != nil:
			flush(&next.head, m.text)
		default:
			flush(&r.footer, m.text)
		}
	}
	if next == nil {
		return
	}
	next.head = append(next.head, blank...)
	if next == r.entries[0] {
		r.crown(next)
	}
}

// crown parts what stands above the first key into the remark on the file, up
// to the last blank line, and that on the key.
func (r *remarks) crown(first *entry) {
	cut := len(first.head)
	for i, text := range first.head {
		if text == "" {
			cut = i + 1
		}
	}
	r.header = append(r.header, first.head[:cut]...)
	first.head = first.head[cut:]
}

// flowReaches tells whether a collection in brackets goes on in or below a line.
func flowReaches(node *yaml.Node, line int) bool {
	return node.Kind != yaml.ScalarNode && node.Style&yaml.FlowStyle != 0 && lastLine(node) >= line
}

// lastLine is the line in which the last part of a node begins.
func lastLine(node *yaml.Node) int {
	last := node.Line
	for _, inner := range node.Content {
		last = max(last, lastLine(inner))
	}
	return last
}

// texts gives all comments sorted, to compare two files.
func (r *remarks) texts() []string {
	all := append(slices.Clone(r.header), r.footer...)
	for _, e := range r.entries {
		all = append(append(append(all, e.head...), e.tail...), e.trail)
	}
	all = slices.DeleteFunc(all, func(text string) bool { return text == "" })
	slices.Sort(all)
	return all
}

// blanksOf counts the blanks a line begins with.
func blanksOf(line string) int { return len(line) - len(strings.TrimLeft(line, " ")) }
