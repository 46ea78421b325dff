// This file holds the way in: what is refused before parsing, the parsing
// itself, and the order of the later passes.

package yamlread

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"reflect"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// MaxBytes is the size over which a file is refused unread. Callers that read
// from disk should stop there too.
const MaxBytes = 256 << 10

// maxMarks bounds how many values a file can hold, since the parser needs some
// 500 bytes of memory for each: a file of {a,a,a,…} within MaxBytes took 130 MiB.
const maxMarks = 50000

const byteOrderMark = "\ufeff"

// Decode reads data into the struct that into points to and gives all faults.
// With faults the struct holds whatever could be read.
func Decode(name string, data []byte, into any) Faults {
	return Read(name, data, into).Faults()
}

// Read is Decode for callers who have checks of their own to add: the Doc
// knows the places of the values. Whatever the struct held before is lost.
func Read(name string, data []byte, into any) *Doc {
	target := reflect.ValueOf(into)
	if target.Kind() != reflect.Pointer || target.IsNil() || target.Elem().Kind() != reflect.Struct {
		return broken(name, fmt.Errorf("it is to be read into %T, not into a pointer to a struct", into))
	}
	target = target.Elem()
	target.SetZero()
	shape, err := shapeOf(target.Type())
	if err != nil {
		return broken(name, err)
	}
	doc, root := open(name, data)
	if root == nil {
		return doc
	}
	if !screen(doc, root) {
		return doc
	}
	r := &Reader{doc: doc}
	r.value(root, shape, target)
	return doc
}

// broken is the answer to a Go type that cannot describe a file: a slip of the
// program, not of the file's author.
func broken(name string, err error) *Doc {
	doc := newDoc(name, "")
	doc.add(Fault{Place: Place{1, 1}, Message: "a fault of this program, not of the file: " + err.Error()})
	return doc
}

// open refuses what is not one YAML document of bearable size, and gives the
// node of its content, or nil after a fault.
func open(name string, data []byte) (*Doc, *yaml.Node) {
	if len(data) > MaxBytes {
		doc := newDoc(name, "")
		doc.add(Fault{
			Place:    Place{1, 1},
			Message:  "the file is too large: more than 256 KiB", // callers stop reading there, so its size is not known
			Expected: fmt.Sprintf("at most %d bytes", MaxBytes),
		})
		return doc, nil
	}
	text := strings.TrimPrefix(string(data), byteOrderMark)
	doc := newDoc(name, text)
	if refuseCharacters(doc); len(doc.faults) > 0 {
		return doc, nil
	}
	if refuseCrowds(doc, text); len(doc.faults) > 0 {
		return doc, nil
	}
	docs, err := parse(strings.NewReader(text))
	switch {
	case err != nil:
		doc.add(syntaxFault(text, doc.lines, err))
		return doc, nil
	case len(docs) == 0:
		doc.add(Fault{Place: Place{1, 1}, Message: "the file is empty", Expected: "a mapping of keys to values"})
		return doc, nil
	}
	if len(docs) > 1 {
		doc.add(Fault{
			Place:    documentStart(doc.lines, placeOf(docs[1])),
			Message:  "a second document begins here",
			Expected: "one document in a file: keep one and delete the line ---",
		})
	}
	return doc, docs[0].Content[0]
}

// parse gives the first documents, two at most, and never panics: whatever the
// parser trips over becomes an error.
func parse(from io.Reader) (docs []*yaml.Node, err error) {
	defer func() {
		if trouble := recover(); trouble != nil {
			err = fmt.Errorf("yaml: the parser gave up (%v)", trouble)
		}
	}()
	decoder := yaml.NewDecoder(from)
	for len(docs) < 2 {
		node := new(yaml.Node)
		err := decoder.Decode(node)
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, err
		}
		if node.Kind != yaml.DocumentNode || len(node.Content) != 1 {
			return nil, errors.New("yaml: a document without content")
		}
		docs = append(docs, node)
	}
	return docs, nil
}

// documentStart finds the --- that opens the document whose node is given.
func documentStart(lines []string, at Place) Place {
	for n := min(at.Line, len(lines)); n >= 1; n-- {
		if strings.HasPrefix(lines[n-1], "---") {
			return Place{n, 1}
		}
	}
	return at
}

// refuseCharacters reports bytes that are no UTF-8 and characters that YAML
// does not allow (NUL and its kin). The first of a line stands for the line.
func refuseCharacters(doc *Doc) {
	for n, line := range doc.lines {
		col := 0
		for i, c := range line {
			col++
			f := Fault{Place: Place{n + 1, col}}
			switch {
			case c == utf8.RuneError && !bytes.HasPrefix([]byte(line[i:min(i+3, len(line))]), []byte("\ufffd")):
				f.Message = fmt.Sprintf("byte 0x%02x is not valid UTF-8", line[i])
				f.Expected = "a text file saved as UTF-8"
			case c == 0:
				f.Message = "a NUL byte: this is not a text file"
				f.Expected = "a text file saved as UTF-8"
			case c < ' ' && c != '\t', c >= 0x7f && c < 0xa0, c == 0xfffe, c == 0xffff:
				f.Message = fmt.Sprintf("the invisible control character U+%04X", c)
				f.Expected = "delete it, or write it as an escape in double quotes"
			default:
				continue
			}
			doc.add(f)
			break
		}
	}
}

// refuseCrowds reports a file with more of the marks that begin a value or part
// one from the next than any scenario can have.
func refuseCrowds(doc *Doc, text string) {
	marks := 0
	for i := range len(text) {
		switch text[i] {
		case ',', ':', '-', '?', '[', '{', '\n', '\r':
			marks++
		}
		if marks > maxMarks {
			line := len(splitLines(text[:i]))
			doc.add(Fault{
				Place:    Place{line, 1},
				Message:  "the file holds too much: up to here too many values or lines",
				Expected: fmt.Sprintf("at most %d commas, colons, dashes, brackets and line ends together", maxMarks),
			})
			return
		}
	}
}
