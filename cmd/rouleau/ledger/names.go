package ledger

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"gopkg.in/yaml.v3"

	"rouleau/cmd/rouleau/shelf"
	"rouleau/scoring/book"
)

// Names of people, in a file of their own beside the keys. They enter no record, no export and no log; they are for whoever keeps
// the book, and to warn of a name in a comment.

const namesFile = "names.yaml"

// Names are the names of the people by code; none where there is no file.
func Names(keys string) (map[string]string, error) {
	file := filepath.Join(keys, namesFile)
	data, err := os.ReadFile(file)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return map[string]string{}, nil
	case err != nil:
		return nil, machine("ledger.no_read", file, plain(err))
	}
	names := map[string]string{}
	if err := yaml.Unmarshal(data, &names); err != nil {
		return nil, notRight("ledger.names_damaged", file)
	}
	return names, nil
}

// SetName keeps the name of a code; "" takes it out.
func SetName(keys, person, name string) error {
	if err := book.ValidCode(person); err != nil {
		return wrongCall(err)
	}
	names, err := Names(keys)
	if err != nil {
		return err
	}
	if name = strings.Join(strings.Fields(name), " "); name == "" {
		delete(names, person)
	} else {
		names[person] = name
	}
	data, err := yaml.Marshal(names)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(keys, 0o700); err != nil {
		return machine("ledger.no_write", keys, plain(err))
	}
	return Place(filepath.Join(keys, namesFile), data)
}

// Place writes a whole file or none, for its owner's eyes.
func Place(file string, content []byte) error { return shelf.Place(file, content) }

// plain is an error without names of files that nobody has given.
func plain(err error) string {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return path.Err.Error()
	case errors.As(err, &link):
		return link.Err.Error()
	}
	return err.Error()
}
