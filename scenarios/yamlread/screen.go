// This file refuses the parts of YAML that a scenario has no use for, over the
// whole tree and whatever the types: anchors, aliases, merge keys, tags, keys
// that are no words, keys given twice, and nesting beyond reason.

package yamlread

import (
	"fmt"

	"gopkg.in/yaml.v3"
)

// maxDepth is far beyond what any file of ours needs; it bounds recursion.
const maxDepth = 32

// screen reports what it refuses. It answers false where the tree must not be
// walked further because it is too deep.
func screen(doc *Doc, root *yaml.Node) bool {
	s := screening{doc: doc}
	s.node(root, 1)
	return !s.tooDeep
}

type screening struct {
	doc     *Doc
	item    *yaml.Node // the last item of a list that was begun
	tooDeep bool
}

func (s *screening) fault(node *yaml.Node, message, expected string) {
	s.doc.add(Fault{Place: placeOf(node), Message: message, Expected: expected})
}

func (s *screening) node(node *yaml.Node, depth int) {
	if s.doc.full() {
		return
	}
	if depth > maxDepth {
		if !s.tooDeep {
			s.fault(node, "nested too deep", fmt.Sprintf("at most %d levels", maxDepth))
		}
		s.tooDeep = true
		return
	}
	if node.Anchor != "" {
		s.fault(node, "an anchor (&"+clip(node.Anchor)+") is used", "the value alone: aliases and anchors are not read")
	}
	switch {
	case node.Kind == yaml.AliasNode:
		s.fault(node, "an alias (*"+clip(node.Value)+") is used", "the value written out: aliases and anchors are not read")
		return
	case node.Style&yaml.TaggedStyle != 0:
		s.fault(node, "a tag ("+clip(node.Tag)+") is used", "plain values: the type of each key is known already")
	}
	switch node.Kind {
	case yaml.SequenceNode:
		for _, item := range node.Content {
			s.item = item
			s.node(item, depth+1)
		}
	case yaml.MappingNode:
		s.keys(node)
		for i := 0; i+1 < len(node.Content); i += 2 {
			s.node(node.Content[i], depth+1)
			s.node(node.Content[i+1], depth+1)
		}
	}
}

// keys looks at the keys of one mapping.
func (s *screening) keys(mapping *yaml.Node) {
	expected := "each key once"
	if mapping == s.item && mapping.Style&yaml.FlowStyle == 0 {
		expected += `, and "- " before the first key of another item`
	}
	seen := make(map[string]*yaml.Node, len(mapping.Content)/2)
	for i := 0; i+1 < len(mapping.Content); i += 2 {
		key := mapping.Content[i]
		switch {
		case key.Kind == yaml.AliasNode:
			continue
		case key.Kind != yaml.ScalarNode:
			s.fault(key, "a key must be one word, not "+found(key), "a key such as volume_ml")
			continue
		case isMerge(key):
			s.fault(key, "a merge key (<<) is used", "the keys written out")
			continue
		}
		if first, ok := seen[key.Value]; ok {
			s.fault(key, fmt.Sprintf("key %s is given twice, first in line %d", shown(key.Value), first.Line), expected)
			continue
		}
		seen[key.Value] = key
	}
}

func isMerge(key *yaml.Node) bool {
	return key.Kind == yaml.ScalarNode && key.Value == "<<" && !quoted(key)
}

// refused tells that screen has reported the node itself, so that nothing more
// is said about it.
func refused(node *yaml.Node) bool {
	return node.Kind == yaml.AliasNode || node.Style&yaml.TaggedStyle != 0
}
