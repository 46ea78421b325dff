package book

import (
	"crypto/ed25519"
	"encoding/base64"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"golang.org/x/mod/sumdb/note"
	"golang.org/x/mod/sumdb/tlog"
)

// The log: a Merkle tree of RFC 6962 over the leaves, and checkpoints of it, each signed by whoever wrote last. A
// checkpoint that is kept elsewhere pins everything before it.

// tree holds the hashes of a log in the order in which tlog stores them.
type tree struct {
	size   int64
	hashes []tlog.Hash
}

func (t *tree) ReadHashes(at []int64) ([]tlog.Hash, error) {
	out := make([]tlog.Hash, len(at))
	for i, k := range at {
		if k < 0 || k >= int64(len(t.hashes)) {
			return nil, errors.New("there is no such hash")
		}
		out[i] = t.hashes[k]
	}
	return out, nil
}

// add puts a leaf at the end.
func (t *tree) add(leaf []byte) error {
	fresh, err := tlog.StoredHashes(t.size, leaf, t)
	if err != nil {
		return err
	}
	t.hashes = append(t.hashes, fresh...)
	t.size++
	return nil
}

// root is the hash of the first n leaves.
func (t *tree) root(n int64) (tlog.Hash, error) { return tlog.TreeHash(n, t) }

// copied is a tree that grows without the other.
func (t *tree) copied() *tree { return &tree{t.size, slices.Clip(t.hashes)} }

// checkpoint is the state of the log after its first n records.
func (t *tree) checkpoint(origin string, n int64) (*Checkpoint, error) {
	root, err := t.root(n)
	if err != nil {
		return nil, err
	}
	return &Checkpoint{Origin: origin, Size: n, Root: root}, nil
}

// Checkpoint is the state of a log at some size.
type Checkpoint struct {
	Origin string
	Size   int64
	Root   tlog.Hash
}

// body is the text that is signed, in the form of C2SP tlog-checkpoint: origin, size, root, one line each.
func (c *Checkpoint) body() string {
	return fmt.Sprintf("%s\n%d\n%s\n", c.Origin, c.Size, base64.StdEncoding.EncodeToString(c.Root[:]))
}

// noteKeys are a person's keys in the form of the note package, named after the log that they sign for.
func noteKey(origin string, public ed25519.PublicKey) (string, error) {
	return note.NewEd25519VerifierKey(origin, public)
}

const noteEd25519 = 1 // how the note package marks keys of this algorithm

// sign makes the signed note of a checkpoint. Whoever writes to the log signs its state with their own key, so that no key lies
// about unprotected.
func (c *Checkpoint) sign(with *Signer) ([]byte, error) {
	public := with.private.Public().(ed25519.PublicKey)
	verifier, err := noteKey(c.Origin, public)
	if err != nil {
		return nil, err
	}
	hash := strings.Split(verifier, "+")[1]
	secret := append([]byte{noteEd25519}, with.private.Seed()...)
	signer, err := note.NewSigner("PRIVATE+KEY+" + c.Origin + "+" + hash + "+" + base64.StdEncoding.EncodeToString(secret))
	if err != nil {
		return nil, err
	}
	return note.Sign(&note.Note{Text: c.body()}, signer)
}

// LooksLikeCheckpoint says whether a text has the form of a signed checkpoint, of whichever book and by whomever.
func LooksLikeCheckpoint(signed []byte) bool {
	_, err := note.Open(signed, note.VerifierList())
	var unknown *note.UnverifiedNoteError
	return errors.As(err, &unknown) && strings.Count(unknown.Note.Text, "\n") == 3
}

// openCheckpoint reads a signed checkpoint of a log and takes none that is not signed with one of these keys.
func openCheckpoint(signed []byte, origin string, keys []ed25519.PublicKey) (*Checkpoint, error) {
	var verifiers []note.Verifier
	for _, k := range keys {
		text, err := noteKey(origin, k)
		if err != nil {
			return nil, err
		}
		v, err := note.NewVerifier(text)
		if err != nil {
			return nil, err
		}
		verifiers = append(verifiers, v)
	}
	n, err := note.Open(signed, note.VerifierList(verifiers...))
	if err != nil {
		return nil, fmt.Errorf("its signature is by none of the keys of this book, or does not hold: %w", err)
	}
	lines := strings.Split(n.Text, "\n")
	if len(lines) != 4 || lines[3] != "" {
		return nil, errors.New("it does not have three lines")
	}
	size, err := strconv.ParseInt(lines[1], 10, 64)
	if err != nil || size < 0 || strconv.FormatInt(size, 10) != lines[1] {
		return nil, errors.New("its size is no number")
	}
	root, err := base64.StdEncoding.DecodeString(lines[2])
	if err != nil || len(root) != tlog.HashSize {
		return nil, errors.New("its root is no hash")
	}
	if lines[0] != origin {
		return nil, fmt.Errorf("it is of the book %q and this is %q", lines[0], origin)
	}
	c := &Checkpoint{Origin: origin, Size: size}
	copy(c.Root[:], root)
	return c, nil
}
