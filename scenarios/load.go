// This file is the way in: from a path, a name of the library, or bytes to a scenario or to all its faults.

package scenarios

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"rouleau/scenarios/yamlread"
)

// Parse reads a scenario. With faults there is no scenario. The name is what faults call the file.
func Parse(name string, data []byte) (*Scenario, yamlread.Faults) {
	s := &Scenario{Name: name}
	doc := yamlread.Read(name, data, &s.File)
	check(doc, &s.File)
	if faults := doc.Faults(); len(faults) > 0 {
		return nil, faults
	}
	suspect(doc, &s.File, data)
	s.Warnings = doc.Faults()
	s.Source = withLF(data)
	s.Lines = linesOf(&s.File)
	return s, nil
}

// Load reads a scenario file. The error holds every fault of the file, as yamlread.Faults, or says why it could not be read.
func Load(file string) (*Scenario, error) {
	data, err := yamlread.ReadFile(file)
	if err != nil {
		return nil, unreadable(file, err)
	}
	s, faults := Parse(file, data)
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return s, nil
}

// unreadable says what a person can do about a file that cannot be opened.
func unreadable(file string, err error) error {
	if errors.Is(err, fs.ErrNotExist) {
		const text = "%s: there is no such file and no such case in the library"
		base := strings.TrimSuffix(filepath.Base(file), extension)
		if name := yamlread.Nearest(base, Library()); name != "" {
			return fmt.Errorf(text+". Did you mean %s?", shown(file), name)
		}
		return fmt.Errorf(text+": give the path of a scenario or one of %s", shown(file), strings.Join(Library(), ", "))
	}
	if info, bad := os.Stat(file); bad == nil && info.IsDir() {
		return fmt.Errorf("%s: this is a folder: give the path of a file", file)
	}
	if inner := (*fs.PathError)(nil); errors.As(err, &inner) {
		err = inner.Err
	}
	return fmt.Errorf("%s: cannot be read (%v): check that it is a file and that you may read it", file, err)
}

// shown is a path as a message gives it, so that an empty one can be seen.
func shown(file string) string {
	if file == "" {
		return `""`
	}
	return file
}

//go:embed library
var library embed.FS

const extension = ".yaml"

// Library gives the names of the cases that come with the program, in alphabetical order.
func Library() []string {
	entries, err := library.ReadDir("library")
	if err != nil {
		return nil
	}
	var names []string
	for _, e := range entries {
		if name, ok := strings.CutSuffix(e.Name(), extension); ok {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return names
}

// Open gives a case of the library by its name, or the scenario in a file.
func Open(nameOrPath string) (*Scenario, error) {
	name := strings.TrimSuffix(nameOrPath, extension)
	if !slices.Contains(Library(), name) || exists(nameOrPath) {
		return Load(nameOrPath)
	}
	data, err := library.ReadFile(path.Join("library", name+extension))
	if err != nil {
		return nil, unreadable(name, err)
	}
	s, faults := Parse(name+extension, data)
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return s, nil
}

// exists tells whether there is a file of that name: one of the trainee's own goes before one of the library.
func exists(file string) bool {
	info, err := os.Stat(file)
	return err == nil && info.Mode().IsRegular()
}

func has(words []string, word string) bool { return slices.Contains(words, word) }
