package ledger

import (
	"bytes"
	"encoding/json"
	"errors"
	"io/fs"
	"os"

	"rouleau/scoring/book"
)

// Proofs that a record is in the book, as files that go to others.

// ProveTo writes the proof of one record, which shows no other, to a file.
func (l *Ledger) ProveTo(id string, withBody bool, file string) (*book.Entry, error) {
	e, err := l.find(id)
	if err != nil {
		return nil, err
	}
	p, err := l.Prove(e, withBody)
	if err != nil {
		return nil, err
	}
	data, err := indented(p)
	if err != nil {
		return nil, err
	}
	return e, Place(file, data)
}

// indented writes JSON for files that people look into.
func indented(v any) ([]byte, error) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	err := enc.Encode(v)
	return b.Bytes(), err
}

// CheckProof reads the proof of a record and says which record of which checkpoint it proves. With a checkpoint that was kept, it must be
// that one: without, a proof shows only that it agrees with itself and with the keys in it.
func CheckProof(file, kept string) (*book.Proof, *book.Entry, *book.Checkpoint, error) {
	data, err := read(file)
	if err != nil {
		return nil, nil, nil, err
	}
	var p book.Proof
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	if err := d.Decode(&p); err != nil || p.Schema != book.Schema {
		return nil, nil, nil, notRight("ledger.no_proof", file)
	}
	_, c, err := book.CheckProof(&p)
	if err != nil {
		return nil, nil, nil, notRight("ledger.proof_broken", file, err.Error())
	}
	e, err := p.Record()
	if err != nil {
		return nil, nil, nil, notRight("ledger.proof_broken", file, err.Error())
	}
	if kept != "" {
		signed, err := readCheckpoint(kept)
		if err != nil {
			return nil, nil, nil, err
		}
		if !bytes.Equal(signed, []byte(p.Checkpoint)) {
			return nil, nil, nil, notRight("ledger.other_checkpoint", file, c.Size, kept)
		}
	}
	return &p, e, c, nil
}

// readCheckpoint reads a checkpoint that was kept. What mail and editors do to ends of lines is mended.
func readCheckpoint(file string) ([]byte, error) {
	data, err := read(file)
	if err != nil {
		return nil, err
	}
	signed := append(bytes.TrimSpace(bytes.ReplaceAll(data, []byte("\r\n"), []byte("\n"))), '\n')
	if !book.LooksLikeCheckpoint(signed) {
		return nil, wrong("ledger.no_checkpoint", file)
	}
	return signed, nil
}

// read reads a file that must be there.
func read(file string) ([]byte, error) {
	data, err := os.ReadFile(file)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, wrong("ledger.no_read", file, plain(err))
	case err != nil:
		return nil, machine("ledger.no_read", file, plain(err))
	}
	return data, nil
}
