package ledger

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/natefinch/atomic"
	"gopkg.in/yaml.v3"

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
func Place(file string, content []byte) error {
	if info, err := os.Stat(file); err == nil && !info.Mode().IsRegular() {
		return wrong("ledger.no_file", file)
	}
	fresh, err := os.CreateTemp(filepath.Dir(file), ".rouleau-") // 0600
	if errors.Is(err, fs.ErrNotExist) {
		return wrong("ledger.no_folder", file, filepath.Dir(file))
	}
	if err != nil {
		return machine("ledger.no_write", file, plain(err))
	}
	_, err = bytes.NewReader(content).WriteTo(fresh)
	err = errors.Join(err, fresh.Sync(), fresh.Close())
	if err == nil {
		err = atomic.ReplaceFile(fresh.Name(), file)
	}
	if err != nil {
		os.Remove(fresh.Name())
		return machine("ledger.no_write", file, plain(err))
	}
	return nil
}

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
