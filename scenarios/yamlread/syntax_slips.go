// This file recognises the usual slips of the pen in a line that the parser gave up at, where its own complaint could mean many
// things: quotes, blanks behind colons and dashes, and columns that do not agree.

package yamlread

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"
)

var (
	tightColon = regexp.MustCompile(`^ *(?:- +)?([a-z][a-z0-9_]*):([^\s:].*)$`)
	bareText   = regexp.MustCompile(`[{,] *([a-z][a-z0-9_]*): +([^"'{}\[\],\s][^,{}\[\]]*?: [^{}\[\]]*?) *(?:, *[a-z][a-z0-9_]*: |\}|$)`)
	inQuotes   = regexp.MustCompile(`"(?:[^"\\]|\\.)*"|'(?:[^']|'')*'`)
	tightDash  = regexp.MustCompile(`^ *(-)[^\s-]`)
)

// slip puts what the line itself shows in the place of the parser's complaint.
func slip(f *Fault, lines []string) {
	source := lines[f.Line-1]
	at := func(i int) { f.Col = utf8.RuneCountInString(source[:i]) + 1 }
	if m := afterQuote.FindStringSubmatchIndex(source); m != nil {
		at(m[2])
		f.Message = "something follows the closing quote"
		f.Expected = `a " inside a text as \", or the text in single quotes`
		if before := strings.TrimRight(source[:m[2]], " "); strings.HasSuffix(before, "'") {
			f.Expected = "a ' inside a text in single quotes written twice, or the text in double quotes"
		}
		return
	}
	if m := bareText.FindStringSubmatchIndex(inQuotes.ReplaceAllStringFunc(source, veiled)); m != nil && strings.HasPrefix(f.Message, "a mapping opened") {
		at(m[4])
		f.Message, f.Expected = `this text holds ": " and does not stand in quotes`, clip(source[m[2]:m[3]])+": "+strconv.Quote(source[m[4]:m[5]])
		return
	}
	if i := oddQuote(source); i >= 0 {
		at(i)
		f.Message, f.Expected = "a quote is opened here and not closed in this line", "a closing quote"
		return
	}
	if m := tightColon.FindStringSubmatchIndex(source); m != nil {
		at(m[4])
		f.Message, f.Expected = "a blank is missing behind the colon", clip(source[m[2]:m[3]]+": "+source[m[4]:m[5]])
		return
	}
	if m := tightDash.FindStringSubmatchIndex(source); m != nil {
		at(m[2])
		f.Message, f.Expected = "a blank is missing behind the dash", "each item of a list as \"- \" and its value"
		return
	}
	if mine, above := blanksOf(source), blanksAbove(lines[:f.Line-1]); strings.HasPrefix(f.Message, "this line does not fit") && above >= 0 && above != mine {
		f.Expected = `keys of one mapping in one column, and items of one list with "- " in one column`
		f.Message = fmt.Sprintf("this line begins in column %d and the line above it in column %d, and it does not fit there", mine+1, above+1)
	}
}

// veiled hides a text in quotes, so that nothing in it is taken for what stands around it.
func veiled(text string) string { return `"` + strings.Repeat("x", len(text)-2) + `"` }

// oddQuote is where the last double quote of a line stands that has no partner in it, -1 for none.
func oddQuote(source string) int {
	open := -1
	single := false
	for i := 0; i < len(source); i++ {
		switch c := source[i]; {
		case c == '\\' && open >= 0:
			i++
		case c == '\'' && open < 0 && (single || i == 0 || strings.IndexByte(" [{,:", source[i-1]) >= 0):
			single = !single
		case c == '"' && !single && open >= 0:
			open = -1
		case c == '"' && !single:
			open = i
		case c == '#' && open < 0 && !single && i > 0 && source[i-1] == ' ':
			return -1
		}
	}
	return open
}

// blanksAbove counts the blanks that the last line begins with that is neither blank nor a comment, -1 for none.
func blanksAbove(lines []string) int {
	for n := len(lines) - 1; n >= 0; n-- {
		if t := strings.TrimLeft(lines[n], " "); t != "" && t[0] != '#' {
			return blanksOf(lines[n])
		}
	}
	return -1
}
