// Package book is the competency book: records of who practised what, who judged it and what was decided, kept so that years
// later anybody can check that none was changed, added in between or taken out. It knows no files and no databases; a [Store]
// keeps what it writes. It asks no clock: times come from the caller.
//
// Every record has three parts. The leaf is what the log holds of it for ever: its number, kind, time, who signed, a salt and the
// salted hash of the body. The body is the record itself, which can be forgotten when somebody asks for it; the leaf stays and
// shows that there was one. The attachment is the attempt that a record is about. This file holds leaves and how they are
// sealed.
package book

import (
	"bytes"
	"crypto/ed25519"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"io"
	"time"

	"github.com/gowebpki/jcs"
)

// Schema is the version of leaves and bodies that this package writes.
const Schema = "rouleau-book-1"

// Leaf is what the log holds of a record.
type Leaf struct {
	Schema string `json:"schema"`
	ID     string `json:"id"`     // of the record: 32 hexadecimal digits, by chance
	Kind   Kind   `json:"kind"`   //
	At     string `json:"at"`     // when it was written, RFC 3339 with its zone
	Key    string `json:"key"`    // that signed it, see KeyID
	Salt   string `json:"salt"`   // 32 hexadecimal digits, by chance
	SHA256 string `json:"sha256"` // of the salt's bytes and the body
}

// Row is a record as a store keeps it.
type Row struct {
	Leaf       []byte // canonical JSON of a Leaf (RFC 8785)
	Signature  []byte // Ed25519, of the leaf
	Body       []byte // canonical JSON; nil when it was forgotten
	Attachment []byte // an attempt file, nil for none or forgotten
}

const (
	idBytes    = 16
	saltBytes  = 16
	timeLayout = time.RFC3339
)

// canonical writes a value as RFC 8785 says, so that the same record has the same bytes everywhere.
func canonical(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return nil, err
	}
	return jcs.Transform(b.Bytes())
}

// salted is the hash of something with a salt before it.
func salted(salt, content []byte) string {
	h := sha256.New()
	h.Write(salt)
	h.Write(content)
	return hex.EncodeToString(h.Sum(nil))
}

// drawn is a number by chance, in hexadecimal digits.
func drawn(chance io.Reader, n int) (string, error) {
	b := make([]byte, n)
	if _, err := io.ReadFull(chance, b); err != nil {
		return "", fmt.Errorf("no random numbers: %w", err)
	}
	return hex.EncodeToString(b), nil
}

// attach is the salted hash of an attachment.
func attach(salt string, attachment []byte) (string, error) {
	raw, err := hex.DecodeString(salt)
	if err != nil {
		return "", err
	}
	return salted(raw, attachment), nil
}

// seal makes the row of a body. The attachment's salted hash must stand in the body already, see attach.
func seal(kind Kind, body any, attachment []byte, salt string, at time.Time, with *Signer, chance io.Reader) (Row, *Leaf, error) {
	id, err := drawn(chance, idBytes)
	if err != nil {
		return Row{}, nil, err
	}
	r := Row{Attachment: attachment}
	if r.Body, err = canonical(body); err != nil {
		return Row{}, nil, err
	}
	raw, err := hex.DecodeString(salt)
	if err != nil {
		return Row{}, nil, err
	}
	l := &Leaf{Schema: Schema, ID: id, Kind: kind, At: at.Format(timeLayout), Key: with.ID(), Salt: salt, SHA256: salted(raw, r.Body)}
	if r.Leaf, err = canonical(l); err != nil {
		return Row{}, nil, err
	}
	r.Signature = ed25519.Sign(with.private, r.Leaf)
	return r, l, nil
}

// readLeaf reads a leaf and takes none that is not written as it would be written here.
func readLeaf(data []byte) (*Leaf, error) {
	var l Leaf
	if err := strict(data, &l); err != nil {
		return nil, err
	}
	again, err := canonical(&l)
	switch {
	case err != nil:
		return nil, err
	case !bytes.Equal(again, data):
		return nil, fmt.Errorf("the leaf is not in canonical form")
	case l.Schema != Schema:
		return nil, fmt.Errorf("the leaf has schema %q and this program knows %q", l.Schema, Schema)
	}
	return &l, nil
}

// strict reads JSON and refuses keys that are not known.
func strict(data []byte, into any) error {
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	if err := d.Decode(into); err != nil {
		return err
	}
	if d.More() {
		return fmt.Errorf("something follows the record")
	}
	return nil
}
