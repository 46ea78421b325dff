// This file gives somebody who writes a case a whole one to start from.

package scenarios

import (
	"bytes"
	"embed"
	"fmt"
	"regexp"
	"slices"
	"strings"
)

//go:embed template
var templates embed.FS

// reserved are names that no file can have on Windows, whatever its extension.
var reserved = regexp.MustCompile(`^(con|prn|aux|nul|com[0-9]|lpt[0-9])$`)

// Template gives the text of a commented, playable case, or lesson, with an id of its own.
func Template(id string, lesson bool) ([]byte, error) {
	const least, most = 3, 60 // as File.ID says
	switch {
	case !dashed.MatchString(id) || len(id) < least || len(id) > most:
		return nil, fmt.Errorf("%q cannot be the name of a case: it takes %d to %d letters, lower-case words joined by -, such as my-first-case", id, least, most)
	case reserved.MatchString(id):
		return nil, fmt.Errorf("%s cannot be the name of a case: some systems keep it for a device, so take another", id)
	case slices.Contains(Library(), id):
		return nil, fmt.Errorf("the library has a case of the name %s already: take another, since grades are kept by this name", id)
	}
	kind := "case"
	if lesson {
		kind = "lesson"
	}
	data, err := templates.ReadFile("template/" + kind + extension)
	if err != nil {
		return nil, err
	}
	title := strings.ToUpper(id[:1]) + strings.ReplaceAll(id[1:], "-", " ")
	with := func(id, title string) []byte {
		old := fmt.Sprintf("\nid: new-%s\ntitle: New %s\n", kind, kind)
		return bytes.Replace(withLF(data), []byte(old), fmt.Appendf(nil, "\nid: %s\ntitle: %s\n", id, title), 1)
	}
	text := with(id, title)
	if _, faults := Parse(id+extension, text); len(faults) > 0 {
		text = with(`"`+id+`"`, `"`+title+`"`) // 2031 or on would be taken for something else
	}
	return text, nil
}
