package page

import (
	"html/template"
	"strings"
)

// This file holds what stands within a text beside letters: strong words, links to a place of the page, and signs of how much
// something weighs. Each is marked by control characters, which no letter of a text is, so that it can be put into any text
// like a word. A text that is not ours can at worst make its own words strong.

// The control characters: where a marked text begins, where what is marked begins, where it ends.
const (
	opens  = "\x02"
	parts  = "\x1f"
	closes = "\x03"
)

// What a marked text is, the first letter after opens.
const (
	strong = 's'
	ref    = 'r'
	sign   = 'w'
)

// Weight is how much something weighs.
type Weight uint8

// The weights.
const (
	Well Weight = iota
	Slight
	Serious
	Grave
)

// shapes tell weights apart without colour and beside their words.
var shapes = [...]string{Well: "✓", Slight: "○", Serious: "▲", Grave: "◆"}

// Strong is a text in strong letters.
func Strong(text string) string { return opens + string(strong) + parts + text + closes }

// Ref is a text that leads to the block or row with that ID. Where the page has none, it is a plain text.
func Ref(id, text string) string { return opens + string(ref) + id + parts + text + closes }

// Sign is a word for how much something weighs, with a shape before it.
func Sign(w Weight, text string) string {
	w = min(w, Grave)
	return opens + string(sign) + string(rune('0'+w)) + parts + text + closes
}

// Plain is a text with nothing in it but letters: the shapes of signs stand before their words.
func Plain(text string) string {
	var b strings.Builder
	for _, r := range runs(text) {
		if r.kind == sign {
			b.WriteString(shapes[r.weight()] + " ")
		}
		b.WriteString(r.text)
	}
	return b.String()
}

// run is a stretch of a text that looks the same.
type run struct {
	kind rune   // 0 for plain
	arg  string // where a ref leads, the weight of a sign
	text string
}

// weight is that of a sign.
func (r *run) weight() Weight {
	if r.arg != "" && r.arg[0] >= '0' && r.arg[0] <= '0'+byte(Grave) {
		return Weight(r.arg[0] - '0')
	}
	return Slight
}

// runs takes a text apart. Control characters that mark nothing are left out.
func runs(text string) (all []run) {
	add := func(r run) {
		if r.text = clean(r.text); r.text != "" {
			all = append(all, r)
		}
	}
	for {
		before, rest, found := strings.Cut(text, opens)
		add(run{text: before})
		if !found {
			return all
		}
		inside, after, whole := strings.Cut(rest, closes)
		head, marked, two := strings.Cut(inside, parts)
		if !whole || !two || head == "" {
			text = rest
			continue
		}
		r := run{kind: rune(head[0]), arg: head[1:], text: marked}
		if r.kind != strong && r.kind != ref && r.kind != sign {
			r.kind = 0
		}
		add(r)
		text = after
	}
}

// clean leaves out what is no letter, and what is no text at all.
func clean(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t' || r == '\n' || r == '\r':
			return ' '
		case r < ' ' || r >= 0x7f && r < 0xa0:
			return -1
		}
		return r
	}, strings.ToValidUTF8(text, "�"))
}

// rich is a text for a page of HTML, with links to those anchors that there are.
func rich(text string, anchors map[string]bool) template.HTML {
	var b strings.Builder
	for _, r := range runs(text) {
		words := template.HTMLEscapeString(r.text)
		switch {
		case r.kind == strong:
			words = "<b>" + words + "</b>"
		case r.kind == ref && anchors[r.arg]:
			words = `<a href="#` + template.HTMLEscapeString(clean(r.arg)) + `">` + words + "</a>"
		case r.kind == sign:
			w := r.weight()
			class := "sign"
			if w == Grave {
				class += " grave"
			}
			words = `<span class="` + class + `"><span aria-hidden="true">` + shapes[w] + "</span> " + words + "</span>"
		}
		b.WriteString(words)
	}
	return template.HTML(b.String())
}
