// This file writes the canonical layout.

package yamlread

import (
	"slices"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

const (
	deeper   = 2   // blanks a level
	joined   = 120 // columns up to which a bracket over several lines becomes one line
	wrapped  = 120 // columns at which a long text is broken that was broken before
	flowKeys = ": "
)

// printer writes into its builder.
type printer struct {
	strings.Builder
	source *remarks
}

// file writes the whole file.
func (p *printer) file(root *yaml.Node, s *shape) {
	p.said(spaced(p.source.header, true, false), 0)
	p.mapping(root, s, 0, true, false)
	p.said(p.source.footer, 0)
}

// said writes comments and blank lines.
func (p *printer) said(texts []string, indent int) {
	for _, text := range texts {
		if text != "" {
			p.pad(indent)
		}
		p.WriteString(text + "\n")
	}
}

func (p *printer) pad(indent int) { p.WriteString(strings.Repeat(" ", indent)) }

// mapping writes the keys of a block; begun says that the first stands behind a
// dash already.
func (p *printer) mapping(node *yaml.Node, s *shape, indent int, top, begun bool) {
	block := false
	for i, kv := range ordered(node, s) {
		e := p.entryOf(kv.key)
		was := block
		block = p.isBlock(kv.value, indent+utf8.RuneCountInString(kv.key.Value)+len(flowKeys))
		if !begun || i > 0 {
			p.said(spaced(e.head, i == 0, i > 0 && top && (block || was)), indent)
			p.pad(indent)
		}
		p.WriteString(kv.key.Value + ":")
		p.value(kv.value, s.inner(kv.key.Value), e, indent)
		p.said(e.tail, indent)
	}
}

// spaced gives comments a blank line before them, or takes one away.
func spaced(head []string, without, with bool) []string {
	switch has := len(head) > 0 && head[0] == ""; {
	case has && without:
		return head[1:]
	case with && !has:
		return append([]string{""}, head...)
	}
	return head
}

// sequence writes the items of a block.
func (p *printer) sequence(node *yaml.Node, s *shape, indent int, begun bool) {
	for i, item := range node.Content {
		e := p.entryOf(item)
		if !begun || i > 0 {
			p.said(spaced(p.above(item, s.item(), e.head, indent+deeper), i == 0, false), indent)
			p.pad(indent)
		}
		p.WriteString("-")
		inner := indent + deeper
		switch {
		case !p.isBlock(item, inner):
			p.value(item, s.item(), e, indent)
		case item.Kind == yaml.MappingNode:
			p.WriteString(" ")
			p.mapping(item, s.item(), inner, false, true)
		default:
			p.WriteString(" ")
			p.sequence(item, s.item(), inner, true)
		}
		p.said(e.tail, indent)
	}
}

// above gives what stands above an item: its own comments and those of what
// comes to stand behind its dash.
func (p *printer) above(item *yaml.Node, s *shape, head []string, indent int) []string {
	if !p.isBlock(item, indent) {
		return head
	}
	if item.Kind == yaml.MappingNode {
		first := ordered(item, s)[0].key
		return slices.Concat(head, spaced(p.entryOf(first).head, true, false))
	}
	first := item.Content[0]
	return slices.Concat(head, p.above(first, s.item(), spaced(p.entryOf(first).head, true, false), indent+deeper))
}

// entryOf is what is said about a key or an item; about what was in brackets nothing is.
func (p *printer) entryOf(node *yaml.Node) *entry {
	if e := p.source.of[node]; e != nil {
		return e
	}
	return &entry{}
}

// value writes what stands behind a colon or a dash, to the end of its line or block.
func (p *printer) value(node *yaml.Node, s *shape, e *entry, indent int) {
	trail := ""
	if e.trail != "" {
		trail = " " + e.trail
	}
	column := p.column()
	if p.isBlock(node, column+1) {
		p.WriteString(trail + "\n")
		if node.Kind == yaml.MappingNode {
			p.mapping(node, s, indent+deeper, false, false)
		} else {
			p.sequence(node, s, indent+deeper, false)
		}
		return
	}
	if b, ok := p.textBlock(node, indent+deeper, column+1); ok {
		p.WriteString(" " + b.mark + trail + "\n")
		for _, line := range b.lines {
			if strings.Trim(line, " ") != "" || strings.HasPrefix(b.mark, "|") && line != "" {
				p.pad(indent + deeper)
				p.WriteString(line)
			}
			p.WriteString("\n")
		}
		return
	}
	p.WriteString(" " + p.flow(node, s) + trail + "\n")
}

// column is how many characters the line being written has.
func (p *printer) column() int {
	text := p.String()
	return utf8.RuneCountInString(text[strings.LastIndexByte(text, '\n')+1:])
}

// isBlock tells whether a collection is written over several lines. Brackets
// over several lines are joined where they fit behind a column.
func (p *printer) isBlock(node *yaml.Node, column int) bool {
	switch {
	case node.Kind == yaml.ScalarNode || len(node.Content) == 0:
		return false
	case node.Style&yaml.FlowStyle == 0:
		return true
	}
	return lastLine(node) > node.Line && column+utf8.RuneCountInString(p.flow(node, nil)) > joined
}
