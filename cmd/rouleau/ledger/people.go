package ledger

import (
	"crypto/rand"

	"rouleau/cmd/rouleau/shelf"
	"rouleau/scoring/book"
)

// People: their keys, and the records that put them into the book and end their roles.

// MakeKey makes the key of a person in a role, under their own passphrase, and writes its public part beside it: the file that
// the administrator puts into the book.
func MakeKey(keys, person string, role book.Role, phrase string) (file string, err error) {
	if err := book.ValidCode(person); err != nil {
		return "", wrongCall(err)
	}
	if _, err := ValidRole(string(role)); err != nil {
		return "", err
	}
	key, err := book.NewSigner(rand.Reader)
	if err != nil {
		return "", err
	}
	if err := saveKey(keys, person, role, key, phrase); err != nil {
		return "", err
	}
	return shelf.PublicFile(keys, person, role), nil
}

// saveKey writes both parts of a key or none.
func saveKey(keys, person string, role book.Role, key *book.Signer, phrase string) error {
	if err := shelf.SaveKey(keys, person, role, key, phrase); err != nil {
		return err
	}
	if err := shelf.SavePublic(keys, person, role, key.Public()); err != nil {
		shelf.RemoveKey(keys, person, role)
		return err
	}
	return nil
}

// ValidRole reads a role.
func ValidRole(text string) (book.Role, error) {
	switch r := book.Role(text); r {
	case book.Learner, book.Assessor, book.Administrator:
		return r, nil
	}
	return "", wrong("ledger.role", text)
}

// As is who signs: a code, and the passphrase of the key, which is asked for only once it is known which key that is.
type As struct {
	Person string
	Phrase func(person string, role book.Role) (string, error)
}

// signer opens the key of a person in the first of some roles for which there is one here.
func (l *Ledger) signer(as As, roles ...book.Role) (*book.Signer, error) {
	if err := book.ValidCode(as.Person); err != nil {
		return nil, wrongCall(err)
	}
	role := roles[0]
	for _, r := range roles {
		if shelf.KeyThere(l.Keys, as.Person, r) {
			role = r
			break
		}
	}
	if !shelf.KeyThere(l.Keys, as.Person, role) {
		return shelf.LoadKey(l.Keys, as.Person, role, "") // says what is missing
	}
	phrase, err := as.Phrase(as.Person, role)
	if err != nil {
		return nil, err
	}
	return shelf.LoadKey(l.Keys, as.Person, role, phrase)
}

// AddPerson puts somebody into the book in a role. Assessors and administrators need the public part of their key; "" takes
// the file that lies among the keys here. A learner needs none.
func (l *Ledger) AddPerson(person string, role book.Role, public string, as As) (*book.Entry, error) {
	k := &book.Key{Person: person, Role: role}
	if err := book.ValidCode(person); err != nil {
		return nil, wrongCall(err)
	}
	if public != "" || role != book.Learner || shelf.KeyThere(l.Keys, person, role) {
		file := public
		if file == "" {
			file = shelf.PublicFile(l.Keys, person, role)
		}
		var err error
		if k.Public, err = shelf.LoadPublic(file, person, role); err != nil {
			return nil, err
		}
	}
	return l.write(k, as, book.Administrator)
}

// EndPerson ends somebody's role: what they signed stays, and they sign nothing from now on.
func (l *Ledger) EndPerson(person string, role book.Role, reason string, as As) (*book.Entry, error) {
	return l.write(&book.Key{Person: person, Role: role, Ended: true, Reason: reason}, as, book.Administrator)
}

// write signs a record in one of some roles and writes it.
func (l *Ledger) write(body any, as As, roles ...book.Role) (*book.Entry, error) {
	key, err := l.signer(as, roles...)
	if err != nil {
		return nil, err
	}
	return l.Write(body, nil, key)
}
