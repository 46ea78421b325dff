// This file walks over the characters of a file to tell comments from texts that
// hold a #, by the places where the parser found texts to begin.

package yamlread

import (
	"regexp"
	"strings"

	"gopkg.in/yaml.v3"
)

// scanner stands at a line of the file.
type scanner struct {
	*remarks
	quoted map[Place]yaml.Style
	blocks map[int]*yaml.Node // block texts by the line of their mark
	indent map[*yaml.Node]int // blanks of the entry that holds a block text
	inside yaml.Style         // of the quoted text that goes on from the line before, 0 for none
	found  []remark
}

// scan gives all comments and blank lines in the order of the file.
func (r *remarks) scan(root *yaml.Node) []remark {
	s := &scanner{remarks: r, quoted: map[Place]yaml.Style{}, blocks: map[int]*yaml.Node{}, indent: map[*yaml.Node]int{}}
	s.texts(root, 0)
	for n := 1; n <= len(r.lines); n++ {
		s.line(n)
		if node := s.blocks[n]; node != nil {
			n = s.block(node)
		}
	}
	return s.found
}

// texts notes where quoted and block texts begin.
func (s *scanner) texts(node *yaml.Node, indent int) {
	switch {
	case node.Kind == yaml.ScalarNode && node.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0:
		s.blocks[node.Line], s.indent[node] = node, indent
	case node.Kind == yaml.ScalarNode && node.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle) != 0:
		s.quoted[placeOf(node)] = node.Style
	case node.Kind == yaml.MappingNode:
		for i := 0; i+1 < len(node.Content); i += 2 {
			s.texts(node.Content[i], indent)
			s.texts(node.Content[i+1], node.Content[i].Column-1)
		}
	case node.Kind == yaml.SequenceNode:
		for _, item := range node.Content {
			s.texts(item, node.Column-1)
		}
	}
}

// line looks for a comment in one line.
func (s *scanner) line(n int) {
	line := []rune(s.lines[n-1])
	if s.inside == 0 && strings.TrimSpace(string(line)) == "" {
		if n < len(s.lines) { // the end of the last line is no blank line
			s.found = append(s.found, remark{line: n, whole: true})
		}
		return
	}
	for i := 0; i < len(line); i++ {
		if s.inside == 0 {
			if style, ok := s.quoted[Place{n, i + 1}]; ok {
				s.inside = style
				continue
			}
			if line[i] == '#' && (i == 0 || line[i-1] == ' ' || line[i-1] == '\t') {
				before := strings.TrimSpace(string(line[:i]))
				s.found = append(s.found, remark{n, i + 1, strings.TrimRight(string(line[i:]), " \t"), before == ""})
				return
			}
			continue
		}
		i += s.within(line[i:])
	}
}

// within passes over one character of a quoted text and gives how many more it took.
func (s *scanner) within(rest []rune) int {
	next := rune(0)
	if len(rest) > 1 {
		next = rest[1]
	}
	switch {
	case s.inside&yaml.DoubleQuotedStyle != 0 && rest[0] == '\\':
		return 1
	case s.inside&yaml.SingleQuotedStyle != 0 && rest[0] == '\'' && next == '\'':
		return 1
	case s.inside&yaml.DoubleQuotedStyle != 0 && rest[0] == '"', s.inside&yaml.SingleQuotedStyle != 0 && rest[0] == '\'':
		s.inside = 0
	}
	return 0
}

var blockMark = regexp.MustCompile(`^[|>][0-9+-]*`)

// block takes in the lines of a block text and gives the last of them.
func (s *scanner) block(node *yaml.Node) int {
	b := body{mark: blockMark.FindString(string([]rune(s.lines[node.Line-1])[node.Column-1:]))}
	deep := 0
	if i := strings.IndexAny(b.mark, "123456789"); i > 0 {
		deep = s.indent[node] + int(b.mark[i]-'0')
		b.mark = b.mark[:i] + "2" + b.mark[i+1:] // what we write is two blanks deeper than what holds it
	}
	n := node.Line
	for ; n < len(s.lines); n++ {
		line := s.lines[n]
		blank := strings.Trim(line, " ") == ""
		if deep == 0 && !blank {
			if blanksOf(line) <= s.indent[node] {
				break
			}
			deep = blanksOf(line)
		}
		if !blank && blanksOf(line) < deep {
			break
		}
		b.lines = append(b.lines, line[min(len(line), max(deep, 0)):])
	}
	if !strings.Contains(b.mark, "+") {
		for len(b.lines) > 0 && strings.TrimSpace(b.lines[len(b.lines)-1]) == "" {
			b.lines, n = b.lines[:len(b.lines)-1], n-1
		}
	}
	if node.Value != "" && !strings.HasSuffix(node.Value, "\n") && !strings.Contains(b.mark, "-") {
		b.mark = strings.TrimSuffix(b.mark, "+") + "-" // the file ends without a line end, which ours always has
	}
	s.bodies[node] = b
	return n
}
