// This file writes single values and what stands in brackets.

package yamlread

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// flow writes a value on one line.
func (p *printer) flow(node *yaml.Node, s *shape) string {
	var parts []string
	switch node.Kind {
	case yaml.MappingNode:
		for _, kv := range ordered(node, s) {
			parts = append(parts, kv.key.Value+flowKeys+p.flow(kv.value, s.inner(kv.key.Value)))
		}
		return "{" + strings.Join(parts, ", ") + "}"
	case yaml.SequenceNode:
		for _, item := range node.Content {
			parts = append(parts, p.flow(item, s.item()))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	}
	if node.Style == 0 && !strings.Contains(node.Value, "\n") {
		return node.Value
	}
	return quote(node.Value)
}

// quote writes a text in double quotes, or in single ones where that spares escapes.
func quote(s string) string {
	plain := !strings.ContainsFunc(s, func(c rune) bool { return c != ' ' && !unicode.IsPrint(c) })
	if plain && strings.ContainsAny(s, `"\`) && !strings.Contains(s, "'") {
		return "'" + s + "'"
	}
	var b strings.Builder
	b.WriteByte('"')
	for _, c := range s {
		switch {
		case c == '"' || c == '\\':
			b.WriteString(`\` + string(c))
		case c == '\n':
			b.WriteString(`\n`)
		case c == '\t':
			b.WriteString(`\t`)
		case c == ' ' || unicode.IsPrint(c):
			b.WriteRune(c)
		case c > 0xffff:
			fmt.Fprintf(&b, `\U%08X`, c)
		default:
			fmt.Fprintf(&b, `\u%04X`, c)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// textBlock gives a text that is written over several lines: a block text as
// its author broke it, and a plain text over several lines as a folded one.
func (p *printer) textBlock(node *yaml.Node, indent, column int) (body, bool) {
	if b, ok := p.source.bodies[node]; ok {
		return b, true
	}
	if node.Kind != yaml.ScalarNode || node.Style != 0 || strings.Contains(node.Value, "\n") || !p.wasBroken(node) ||
		column+utf8.RuneCountInString(node.Value) <= wrapped {
		return body{}, false
	}
	b := body{mark: ">-"}
	line := ""
	words := strings.Split(node.Value, " ")
	for i, word := range words {
		// A line is broken at single blanks only, since folding makes one blank of each break.
		single := word != "" && i > 0 && words[i-1] != ""
		if single && indent+utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > wrapped {
			b.lines = append(b.lines, line)
			line = word
			continue
		}
		if i > 0 {
			line += " "
		}
		line += word
	}
	b.lines = append(b.lines, line)
	return b, true
}

// wasBroken tells whether a plain text goes over several lines of the file.
func (p *printer) wasBroken(node *yaml.Node) bool {
	line := []rune(p.source.lines[node.Line-1])
	return !strings.HasPrefix(string(line[min(len(line), node.Column-1):]), node.Value)
}
