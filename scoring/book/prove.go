package book

import (
	"crypto/ed25519"
	"encoding/hex"
	"errors"
	"fmt"

	"golang.org/x/mod/sumdb/tlog"
)

// Proving that one record is in the book, to somebody who is shown no other.

// Proof is a record with what shows that it is in a log of which a checkpoint is known.
type Proof struct {
	Schema     string   `json:"schema"`
	Origin     string   `json:"origin"`
	Seq        int64    `json:"seq"` // of the record, from 0
	Leaf       string   `json:"leaf"`
	Body       string   `json:"body"` // "" where it was deleted, or is not shown
	Signature  string   `json:"signature"`
	Public     string   `json:"public"` // key of whoever signed
	Path       []string `json:"path"`   // hashes from the leaf up
	Checkpoint string   `json:"checkpoint"`
	LogKeys    []string `json:"log_keys"` // of whoever may sign checkpoints; hold them against what you know otherwise
}

// Prove makes the proof of a record against the newest checkpoint. Without the body it shows only that there is such a record.
func (b *Book) Prove(e *Entry, withBody bool) (*Proof, error) {
	signed, err := b.Newest()
	if err != nil {
		return nil, err
	}
	path, err := tlog.ProveRecord(b.Size(), e.Seq, &b.tree)
	if err != nil {
		return nil, err
	}
	p := &Proof{Schema: Schema, Origin: b.Origin, Seq: e.Seq, Leaf: string(e.row.Leaf), Signature: hex.EncodeToString(e.row.Signature),
		Public: hex.EncodeToString(b.signer(e).Public), Path: []string{}, Checkpoint: string(signed)}
	if withBody {
		p.Body = string(e.row.Body)
	}
	for _, h := range path {
		p.Path = append(p.Path, hex.EncodeToString(h[:]))
	}
	for _, k := range b.publicKeys() {
		p.LogKeys = append(p.LogKeys, hex.EncodeToString(k))
	}
	return p, nil
}

// Newest is the newest signed checkpoint, of the whole book. One that does not fit the book is given to nobody.
func (b *Book) Newest() ([]byte, error) {
	fault := errors.New("the newest checkpoint is not of the whole book: verify the book first")
	for range tries {
		kept, err := b.store.Checkpoints()
		switch {
		case err != nil:
			return nil, err
		case len(kept) == 0 || kept[len(kept)-1].Size < b.Size():
			return nil, fault
		case kept[len(kept)-1].Size > b.Size(): // somebody has written in between, or records are missing
			before := b.Size()
			if err := b.Reread(); err != nil {
				return nil, err
			}
			if b.Size() == before {
				return nil, fault
			}
			continue
		}
		signed := kept[len(kept)-1].Signed
		c, err := openCheckpoint(signed, b.Origin, b.publicKeys())
		if err != nil {
			return nil, fmt.Errorf("the newest checkpoint: %w: verify the book", err)
		}
		if root, err := b.Root(); err != nil || c.Size != b.Size() || c.Root != root {
			return nil, fault
		}
		return signed, nil
	}
	return nil, errBusy
}

// publicKeys are the keys of everybody, ended ones too: what they signed before stays signed.
func (s *State) publicKeys() (keys []ed25519.PublicKey) {
	for _, p := range s.people {
		if p.Public != nil {
			keys = append(keys, p.Public)
		}
	}
	return keys
}

// Record is what the record of a proof says; its body is nil where it is not shown, or was deleted. It is to be asked for once the
// proof was checked.
func (p *Proof) Record() (*Entry, error) {
	l, err := readLeaf([]byte(p.Leaf))
	if err != nil {
		return nil, err
	}
	e := &Entry{Seq: p.Seq, Leaf: l}
	if p.Body != "" {
		e.Body, err = readBody(l, []byte(p.Body))
	}
	return e, err
}

// CheckProof says whether a proof holds, and of which record of which checkpoint.
func CheckProof(p *Proof) (*Leaf, *Checkpoint, error) {
	var keys []ed25519.PublicKey
	for _, k := range p.LogKeys {
		public, err := publicOf(k)
		if err != nil {
			return nil, nil, err
		}
		keys = append(keys, public)
	}
	c, err := openCheckpoint([]byte(p.Checkpoint), p.Origin, keys)
	if err != nil {
		return nil, nil, fmt.Errorf("the checkpoint: %w", err)
	}
	e, err := p.Record()
	if err != nil {
		return nil, nil, err
	}
	l := e.Leaf
	public, err := publicOf(p.Public)
	if err != nil {
		return nil, nil, err
	}
	signature, err := hex.DecodeString(p.Signature)
	if err != nil || KeyID(public) != l.Key || !ed25519.Verify(public, []byte(p.Leaf), signature) {
		return nil, nil, errors.New("the signature of the record does not hold")
	}
	var path tlog.RecordProof
	for _, text := range p.Path {
		raw, err := hex.DecodeString(text)
		if err != nil || len(raw) != tlog.HashSize {
			return nil, nil, errors.New("a hash of the path is no hash")
		}
		path = append(path, tlog.Hash(raw))
	}
	if err := tlog.CheckRecord(path, c.Size, c.Root, p.Seq, tlog.RecordHash([]byte(p.Leaf))); err != nil {
		return nil, nil, errors.New("the path does not lead from the record to the root of the checkpoint")
	}
	return l, c, nil
}
