// Package words is the catalogue of every word a person reads: texts by key, in files by area, one folder a language.
package words

import (
	"embed"
	"fmt"
	"io/fs"
	"maps"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

//go:embed en/*.yaml
var files embed.FS

var texts = load("en")

// load reads the files of a language. The files are part of the program, so a fault in one is a fault of ours and stops
// the program at once; a test reads them all.
func load(language string) map[string]string {
	all := map[string]string{}
	entries, err := fs.ReadDir(files, language)
	if err != nil {
		panic("words: " + err.Error())
	}
	for _, e := range entries {
		name := language + "/" + e.Name()
		content, err := files.ReadFile(name)
		if err != nil {
			panic("words: " + err.Error())
		}
		var areas map[string]map[string]string
		if err := yaml.Unmarshal(content, &areas); err != nil {
			panic("words: " + name + ": " + err.Error())
		}
		for _, area := range slices.Sorted(maps.Keys(areas)) {
			for _, key := range slices.Sorted(maps.Keys(areas[area])) {
				text := areas[area][key]
				if _, twice := all[area+"."+key]; twice {
					panic("words: " + name + ": " + area + "." + key + " stands twice")
				}
				all[area+"."+key] = strings.TrimSpace(text)
			}
		}
	}
	return all
}

// Say gives the text of a key, with args put in as fmt does. A key without a text is shown as it is, so that a gap can be
// seen and reported; the tests let none through.
func Say(key string, args ...any) string {
	text, ok := find(key)
	switch {
	case !ok:
		return "‹" + key + "›"
	case len(args) == 0:
		return text
	}
	return fmt.Sprintf(text, args...)
}

// Has says whether a key has a text.
func Has(key string) bool {
	_, ok := texts[key]
	return ok
}

// Keys lists all keys in order.
func Keys() []string {
	return slices.Sorted(maps.Keys(texts))
}
