package shelf

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"filippo.io/age"
	"filippo.io/age/armor"

	"rouleau/scoring/book"
)

// Keys in files, each protected by its owner's passphrase: the encryption and its scrypt are age's.

const (
	keyFolder      = "keys"
	leastPhrase    = 12 // characters; NIST SP 800-63B asks for at least 8, 15 where nothing else protects
	workFactor     = 18 // of scrypt, about a second; what age takes
	mostWorkFactor = 20
)

// keyFile is where the key of a person in a role lies.
func keyFile(folder, person string, role book.Role) string {
	return filepath.Join(folder, keyFolder, person+"-"+string(role)+".key")
}

// KeyThere says whether the folder has a key of a person in a role.
func KeyThere(folder, person string, role book.Role) bool {
	_, err := os.Stat(keyFile(folder, person, role))
	return err == nil
}

// SaveKey writes a key under a passphrase. A key that is there already is not written over.
func SaveKey(folder, person string, role book.Role, key *book.Signer, phrase string) error {
	return saveKey(folder, person, role, key, phrase, workFactor)
}

func saveKey(folder, person string, role book.Role, key *book.Signer, phrase string, work int) error {
	if err := book.ValidCode(person); err != nil {
		return err
	}
	if n := len([]rune(phrase)); n < leastPhrase {
		return wrong("shelf.phrase_short", leastPhrase)
	}
	file := keyFile(folder, person, role)
	if _, err := os.Stat(file); err == nil {
		return wrong("shelf.key_there", file)
	}
	if err := os.MkdirAll(filepath.Dir(file), 0o700); err != nil {
		return machine("shelf.no_folder", filepath.Dir(file), plain(err))
	}
	to, err := age.NewScryptRecipient(phrase)
	if err != nil {
		return err
	}
	to.SetWorkFactor(work)
	var b bytes.Buffer
	a := armor.NewWriter(&b)
	w, err := age.Encrypt(a, to)
	if err == nil {
		_, err = w.Write(key.Seed())
	}
	if err == nil {
		err = errors.Join(w.Close(), a.Close())
	}
	if err != nil {
		return err
	}
	return Place(file, b.Bytes())
}

// LoadKey opens the key of a person in a role.
func LoadKey(folder, person string, role book.Role, phrase string) (*book.Signer, error) {
	file := keyFile(folder, person, role)
	data, err := os.ReadFile(file)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, wrong("shelf.no_key", person, string(role), file)
	case err != nil:
		return nil, machine("shelf.no_read", file, plain(err))
	}
	with, err := age.NewScryptIdentity(phrase)
	if err != nil {
		return nil, notRight("shelf.phrase_wrong", person)
	}
	with.SetMaxWorkFactor(mostWorkFactor)
	r, err := age.Decrypt(armor.NewReader(bytes.NewReader(data)), with)
	var none *age.NoIdentityMatchError
	if errors.As(err, &none) {
		return nil, notRight("shelf.phrase_wrong", person)
	}
	if err != nil {
		return nil, notRight("shelf.key_damaged", file)
	}
	seed, err := io.ReadAll(r)
	if err != nil {
		return nil, notRight("shelf.key_damaged", file)
	}
	key, err := book.SignerOf(seed)
	if err != nil {
		return nil, notRight("shelf.key_damaged", file)
	}
	return key, nil
}
