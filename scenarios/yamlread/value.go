// This file reads one value of each kind into its Go variable.

package yamlread

import (
	"fmt"
	"reflect"
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// value notes the place of a node and reads it. The node of a key was noted by
// the caller already; for others the value stands for its own key.
func (r *Reader) value(node *yaml.Node, s *shape, v reflect.Value) {
	if _, known := r.doc.spots[r.path]; !known {
		r.doc.spots[r.path] = spot{placeOf(node), placeOf(node)}
	}
	r.fill(node, s, v)
}

func (r *Reader) fill(node *yaml.Node, s *shape, v reflect.Value) {
	if r.doc.full() || refused(node) {
		return
	}
	if node.Kind == yaml.ScalarNode && node.Tag == "!!null" {
		r.nothing(node, s)
		return
	}
	switch s.kind {
	case pointer:
		v.Set(reflect.New(s.elem.typ))
		r.fill(node, s.elem, v.Elem())
	case custom:
		v.Addr().Interface().(Unmarshaler).UnmarshalAt(node, r)
	case text:
		r.text(node, s, v)
	case whole:
		r.whole(node, s, v)
	case real:
		if x, ok := r.Number(node, s.wants(r.rule)); ok {
			v.SetFloat(x)
		}
	case truth:
		r.truth(node, v)
	case list:
		r.list(node, s, v)
	case table:
		r.table(node, s, v)
	case record:
		r.record(node, s, v)
	}
}

// nothing reports a key without a value, or an empty item.
func (r *Reader) nothing(node *yaml.Node, s *shape) {
	at := r.doc.spots[r.path].key
	message := "there is no value here"
	step := r.path[len(parent(r.path)):]
	key := step != "" && step[0] != '['
	if key {
		message = "key " + strings.TrimPrefix(step, ".") + " has no value"
	}
	if node.Value != "" {
		at, message = placeOf(node), clip(node.Value)+" means no value at all"
	}
	wanted := s.wants(r.rule)
	if key && !r.rule.Required {
		wanted += ", or the key left out"
	}
	r.doc.add(Fault{Place: at, Path: r.path, Message: message, Expected: wanted})
}

// looksOther are plain texts that other readers of YAML take for true or false.
var looksOther = regexp.MustCompile(`^(?i:y|yes|n|no|on|off|true|false)$`)

func (r *Reader) text(node *yaml.Node, s *shape, v reflect.Value) {
	wanted := s.wants(r.rule)
	if whole := r.doc.oneLiner(node); whole != "" {
		r.FaultNear(node, `this is a mapping, since it holds ": " and no quotes`, wanted, quote(whole))
		return
	}
	got, ok := r.Scalar(node, wanted)
	if !ok {
		return
	}
	chosen := len(r.rule.OneOf) > 0 && r.rule.allows(got)
	if !quoted(node) && !chosen && (node.Tag == "!!int" || node.Tag == "!!float" || looksOther.MatchString(got)) {
		r.FaultNear(node, shown(got)+" without quotes can be taken for a number or for true or false", wanted, strconv.Quote(got))
		return
	}
	if bad := strings.IndexFunc(got, func(c rune) bool { return unicode.IsControl(c) && c != '\n' && c != '\t' }); bad >= 0 {
		r.Fault(node, fmt.Sprintf("the text holds the control character U+%04X", []rune(got[bad:])[0]), "text that can be shown")
		return
	}
	if !r.rule.allows(got) {
		near := Nearest(got, r.rule.OneOf)
		r.FaultNear(node, shown(got)+" is not known here", OneOf(r.rule.OneOf, got, near), near)
		return
	}
	// Blanks around a text do not count towards its least length, so that " " is as empty as "".
	lo, hi, _ := r.rule.Bounds()
	if n := utf8.RuneCountInString(strings.TrimSpace(got)); float64(n) < lo {
		if r.doc.cut(node, got) {
			wanted += `; behind " #" stands a comment: text with a # in quotes`
		}
		r.Fault(node, "the text is too short: "+characters(n), wanted)
		return
	}
	if n := utf8.RuneCountInString(got); float64(n) > hi {
		r.Fault(node, "the text is too long: "+characters(n), wanted)
		return
	}
	v.SetString(got)
}

func characters(n int) string { return plural(fmt.Sprintf("%d character", n), strconv.Itoa(n)) }

// oneLiner gives the line of a mapping with one key that stands on one line without brackets and can be meant as a text.
func (d *Doc) oneLiner(node *yaml.Node) string {
	if node.Kind != yaml.MappingNode || node.Style&yaml.FlowStyle != 0 || len(node.Content) != 2 || node.Content[1].Kind != yaml.ScalarNode ||
		node.Content[1].Line != node.Line || snakeKey.MatchString(node.Content[0].Value) {
		return ""
	}
	line := []rune(d.lines[node.Line-1])
	return strings.TrimSpace(string(line[min(node.Column-1, len(line)):]))
}

// cut tells whether a comment follows a plain text in its line, as when a # was meant as part of it.
func (d *Doc) cut(node *yaml.Node, text string) bool {
	_, rest, found := strings.Cut(d.lines[min(node.Line, len(d.lines))-1], text)
	return found && !quoted(node) && strings.HasPrefix(rest, " #")
}

func (r *Reader) whole(node *yaml.Node, s *shape, v reflect.Value) {
	wanted := s.wants(r.rule)
	x, ok := r.finite(node, wanted)
	if !ok {
		return
	}
	got := node.Value
	if !strictWhole.MatchString(got) {
		better := ""
		if x > -1e15 && x < 1e15 && x == float64(int64(x)) {
			better = strconv.FormatInt(int64(x), 10)
		}
		r.FaultNear(node, clip(got)+" is not a whole number", wanted, better)
		return
	}
	if !r.rule.allows(got) {
		r.Fault(node, got+" is not known here", wanted)
		return
	}
	if _, ok := r.Number(node, wanted); !ok {
		return
	}
	n, err := strconv.ParseInt(got, 10, 64)
	if v.CanInt() && err == nil && !v.OverflowInt(n) {
		v.SetInt(n)
		return
	}
	u, err := strconv.ParseUint(got, 10, 64)
	if v.CanUint() && err == nil && !v.OverflowUint(u) {
		v.SetUint(u)
		return
	}
	r.Fault(node, clip(got)+" is too "+tooWhat(x < 0), wanted)
}

func (r *Reader) truth(node *yaml.Node, v reflect.Value) {
	const wanted = "true or false"
	got, ok := r.Scalar(node, wanted)
	if !ok {
		return
	}
	if !quoted(node) && (got == "true" || got == "false") {
		v.SetBool(got == "true")
		return
	}
	better := ""
	switch strings.ToLower(got) {
	case "true", "yes", "on", "y":
		better = "true"
	case "false", "no", "off", "n":
		better = "false"
	}
	r.FaultNear(node, "this is "+found(node), wanted, better)
}

// noEntries are words for a list without entries.
var noEntries = regexp.MustCompile(`^(?i:none|no|nil|nothing|nothing known|none known|n/a|-+)$`)

// mayBeEmpty tells whether a list may have no entries.
func (r *Reader) mayBeEmpty() bool {
	lo, _, err := r.rule.Bounds()
	return err == nil && lo <= 0
}

func (r *Reader) list(node *yaml.Node, s *shape, v reflect.Value) {
	if node.Kind != yaml.SequenceNode {
		wanted, near := s.wants(r.rule), ""
		switch one := node.Kind == yaml.ScalarNode && !quoted(node); {
		case one && strings.HasPrefix(node.Value, "-"):
			wanted += `, with a blank behind each "-"`
		case one && noEntries.MatchString(node.Value) && r.mayBeEmpty():
			near = "[]"
		case one && !strings.ContainsAny(node.Value, ",:#[]{}\n"):
			near = "[" + clip(node.Value) + "]"
		}
		r.FaultNear(node, "this is "+found(node), wanted, near)
		return
	}
	r.count(node, len(node.Content), s)
	items := reflect.MakeSlice(s.typ, len(node.Content), len(node.Content))
	for i, item := range node.Content {
		if r.doc.full() {
			return
		}
		r.below(r.path+"["+strconv.Itoa(i)+"]", r.rule.Each()).value(item, s.elem, items.Index(i))
	}
	v.Set(items)
}

// count reports too few or too many entries of a list or a table.
func (r *Reader) count(node *yaml.Node, n int, s *shape) {
	lo, hi, _ := r.rule.Bounds()
	switch {
	case float64(n) < lo:
		r.Fault(node, fmt.Sprintf("too few entries: %d", n), s.wants(r.rule))
	case float64(n) > hi:
		wanted := s.wants(r.rule)
		if s.kind == list && s.elem.kind == real {
			wanted += "; a comma begins the next entry, and decimals have a point"
		}
		r.Fault(node, fmt.Sprintf("too many entries: %d", n), wanted)
	}
}
