// This file turns the parser's own complaints into faults with a place and
// plain words. The parser tells a line at best, often a neighbouring one, so
// the place is found again from the text.

package yamlread

import (
	"io"
	"regexp"
	"strings"
	"unicode/utf8"
)

// complaint pairs what the parser says with what we say. A loose one has many causes, of which the line shows the usual.
type complaint struct {
	says, message, expected string
	loose                   bool
}

// complaints are tried from the top; the first whose text is contained wins.
var complaints = []complaint{
	{"unknown anchor", "an alias (* and a name) is used", "the value written out: aliases and anchors are not read", false},
	{"exceeded max depth", "nested far too deep", "at most 32 levels", false},
	{"tab character", "a tab is used to indent", "spaces", false},
	{"cannot start any token", "a value cannot begin with this character", "text in quotes", false},
	{"mapping values are not allowed", "a key is not expected here: the line is indented too deep, or holds a second \": \"", "keys of one mapping in one column; text that holds \": \" in quotes", true},
	{"could not find expected ':'", "this line is neither a key with a value nor part of a text", "key: value, with a colon and a blank between; the lines of a text stand deeper than its key", true},
	{"did not find expected key", "this line does not fit the lines above it", "keys of one mapping in one column", true},
	{"did not find expected '-' indicator", "this line does not fit the list above it", "items of one list, each with \"- \" in one column", true},
	{"expected ',' or ']'", "a list opened with [ is not closed or lacks a comma", "[a, b, c]", true},
	{"expected ',' or '}'", "a mapping opened with { is not closed or lacks a comma", "{a: 1, b: 2}", true},
	{"unexpected end of stream", "a quote is opened and never closed", "a closing quote", false},
	{"unexpected document indicator", "a quote is opened and never closed", "a closing quote", false},
	{"unknown escape character", "an unknown escape after \\", `\\ for a backslash, or the text in single quotes`, false},
	{"escape code", "a broken escape after \\", `\\ for a backslash, or the text in single quotes`, false},
	{"block sequence entries are not allowed", "a list item is not expected here", "\"- \" on a line of its own", false},
	{"expected <document start>", "text after the end of the document", "one document in a file", false},
	{"expected comment or line break", "something follows the | or > that opens a text", "the text on the next lines, indented", false},
	{"expected node content", "a value is missing before this", "a value", false},
	{"directive", "a % line that is not understood", "no directives: a scenario begins with its keys", false},
	{"incompatible YAML document", "a % line that is not understood", "no directives: a scenario begins with its keys", false},
	{"tag", "a tag (! and a name) is used", "plain values: the type of each key is known already", false},
}

// syntaxFault finds the place and the words for an error of the parser.
func syntaxFault(text string, lines []string, err error) Fault {
	said := strings.TrimPrefix(err.Error(), "yaml: ")
	line := faultyLine(text, lines)
	f := Fault{Message: "not valid YAML: " + said, Place: Place{line, 1}}
	if line > len(lines) {
		return f
	}
	source := lines[line-1]
	indent := source[:len(source)-len(strings.TrimLeft(source, " \t"))]
	if tab := strings.IndexByte(indent, '\t'); tab >= 0 {
		said = "tab character"
	}
	for _, c := range complaints {
		if strings.Contains(said, c.says) {
			f.Message, f.Expected = c.message, c.expected
			f.Col = faultyColumn(source, c.says)
			if c.loose {
				slip(&f, lines)
			}
			return f
		}
	}
	f.Col = firstMark(source)
	return f
}

// counting feeds the parser byte by byte and so learns how far it came.
type counting struct {
	text string
	read int
}

func (c *counting) Read(p []byte) (int, error) {
	if c.read == len(c.text) {
		return 0, io.EOF
	}
	if len(p) == 0 {
		return 0, nil
	}
	p[0] = c.text[c.read]
	c.read++
	return 1, nil
}

// faultyLine is the first line that cannot be kept: all lines before it parse,
// and with it they no longer do. The search goes up from where the parser
// stopped, and gives up after a fixed amount of work.
func faultyLine(text string, lines []string) int {
	feed := &counting{text: text}
	if _, err := parse(feed); err == nil {
		return 1
	}
	stop := len(splitLines(strings.TrimRight(text[:feed.read], "\r\n")))
	ends := make([]int, 0, stop) // ends[i] is the offset after line i+1 and its break
	offset := 0
	for i := 0; i < stop; i++ {
		offset += len(lines[i])
		offset += breakLen(text[offset:])
		ends = append(ends, offset)
	}
	work := MaxBytes
	for n := stop - 1; n >= 1 && work > 0; n-- {
		work -= ends[n-1]
		if _, err := parse(strings.NewReader(text[:ends[n-1]])); err == nil {
			return firstWritten(lines, n+1, stop)
		}
	}
	if work <= 0 {
		return stop
	}
	return firstWritten(lines, 1, stop)
}

// breakLen is the length of the line break that text begins with.
func breakLen(text string) int {
	for _, b := range []string{"\r\n", "\n", "\r", "\u0085", "\u2028", "\u2029"} {
		if strings.HasPrefix(text, b) {
			return len(b)
		}
	}
	return 0
}

// firstWritten passes over blank lines and comments.
func firstWritten(lines []string, from, to int) int {
	for n := from; n < to; n++ {
		if t := strings.TrimLeft(lines[n-1], " "); t != "" && t[0] != '#' {
			return n
		}
	}
	return to
}

var (
	afterQuote = regexp.MustCompile(`(?:^|[:\-,] *)(?:"[^"]*"|'[^']*')\s*([^\s:,#\]}])`)
	badStart   = regexp.MustCompile("(?:^|[:,\\[{-]) *([@`%])")
	secondKey  = regexp.MustCompile(`:\s.*(:)(?:\s|$)`)
	openQuote  = regexp.MustCompile(`(?:^|[:,\[{-]) *(["'])`)
	lastOpen   = regexp.MustCompile(`.*([\[{])`)
	escape     = regexp.MustCompile(`(\\)[^\\"/abefnrtvxuUNLP_ 0]|(\\)[xuU]`)
	lateItem   = regexp.MustCompile(`:\s+(-)\s`)
	aliasMark  = regexp.MustCompile(`(?:^|[:,\[{-]|\s) *(\*)[^\s*]`)
)

// faultyColumn guesses the column of a fault whose kind and line are known.
func faultyColumn(source, kind string) int {
	var mark *regexp.Regexp
	switch kind {
	case "tab character":
		return utf8.RuneCountInString(source[:max(strings.IndexByte(source, '\t'), 0)]) + 1
	case "cannot start any token":
		mark = badStart
	case "mapping values are not allowed":
		mark = secondKey
	case "did not find expected key":
		mark = afterQuote
	case "unexpected end of stream", "unexpected document indicator":
		mark = openQuote
	case "expected ',' or ']'", "expected ',' or '}'":
		mark = lastOpen
	case "unknown escape character", "escape code":
		mark = escape
	case "block sequence entries are not allowed":
		mark = lateItem
	case "unknown anchor":
		mark = aliasMark
	default:
		return firstMark(source)
	}
	found := mark.FindStringSubmatchIndex(source)
	for i := 2; i < len(found); i += 2 {
		if found[i] >= 0 {
			return utf8.RuneCountInString(source[:found[i]]) + 1
		}
	}
	return firstMark(source)
}

// firstMark is the column of the first character that is not a blank.
func firstMark(source string) int {
	blank := len(source) - len(strings.TrimLeft(source, " "))
	return blank + 1
}
