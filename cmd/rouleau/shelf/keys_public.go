package shelf

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"rouleau/scoring/book"
)

// Public parts of keys. Whoever makes a key gives this file to the administrator, who puts it into the book: one line with the
// person, the role and the key, so that nobody is put in as somebody else by a slip.

// PublicFile is where the public part of a key lies, beside the key.
func PublicFile(folder, person string, role book.Role) string {
	return strings.TrimSuffix(keyFile(folder, person, role), ".key") + ".pub"
}

// SavePublic writes the public part of a key.
func SavePublic(folder, person string, role book.Role, public string) error {
	file := PublicFile(folder, person, role)
	if err := os.MkdirAll(filepath.Dir(file), 0o700); err != nil {
		return machine("shelf.no_folder", filepath.Dir(file), plain(err))
	}
	return Place(file, []byte(person+" "+string(role)+" "+public+"\n"))
}

// LoadPublic reads the public part of the key of a person in a role.
func LoadPublic(file, person string, role book.Role) (string, error) {
	data, err := os.ReadFile(file)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "", wrong("shelf.no_public", person, string(role), file)
	case err != nil:
		return "", machine("shelf.no_read", file, plain(err))
	}
	parts := strings.Fields(string(data))
	switch {
	case len(parts) != 3:
		return "", notRight("shelf.not_public", file)
	case parts[0] != person || parts[1] != string(role):
		return "", notRight("shelf.other_public", file, clipped(parts[0]), clipped(parts[1]), person, string(role))
	}
	return parts[2], nil
}

// clipped keeps what a strange file holds from filling the screen.
func clipped(text string) string {
	if r := []rune(text); len(r) > 24 {
		return string(r[:24]) + "…"
	}
	return text
}

// RemoveKey takes away a key whose making went no further, with its public part, and the folder when nothing else lies in it.
func RemoveKey(folder, person string, role book.Role) {
	os.Remove(keyFile(folder, person, role))
	os.Remove(PublicFile(folder, person, role))
	os.Remove(filepath.Join(folder, keyFolder)) // which fails where it is not empty
}
