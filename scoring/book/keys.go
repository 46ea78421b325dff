package book

import (
	"crypto/ed25519"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io"
)

// Keys: who signs, and how a key is named.

// Signer is a person's private key.
type Signer struct {
	private ed25519.PrivateKey
}

// NewSigner draws a key.
func NewSigner(chance io.Reader) (*Signer, error) {
	seed := make([]byte, ed25519.SeedSize)
	if _, err := io.ReadFull(chance, seed); err != nil {
		return nil, err
	}
	return &Signer{ed25519.NewKeyFromSeed(seed)}, nil
}

// SignerOf is the key of a seed of 32 bytes, as Seed gave it.
func SignerOf(seed []byte) (*Signer, error) {
	if len(seed) != ed25519.SeedSize {
		return nil, errors.New("this is no key: it must have 32 bytes")
	}
	return &Signer{ed25519.NewKeyFromSeed(seed)}, nil
}

// Seed is the secret; whoever keeps it must encrypt it.
func (s *Signer) Seed() []byte { return s.private.Seed() }

// Public is the public key, hexadecimal.
func (s *Signer) Public() string { return hex.EncodeToString(s.private.Public().(ed25519.PublicKey)) }

// ID names the key: the first 16 hexadecimal digits of the hash of the public one.
func (s *Signer) ID() string { return KeyID(s.private.Public().(ed25519.PublicKey)) }

// KeyID names a public key.
func KeyID(public ed25519.PublicKey) string {
	sum := sha256.Sum256(public)
	return hex.EncodeToString(sum[:8])
}

// publicOf reads a public key.
func publicOf(text string) (ed25519.PublicKey, error) {
	b, err := hex.DecodeString(text)
	if err != nil || len(b) != ed25519.PublicKeySize {
		return nil, errors.New("this is no public key: it must have 64 hexadecimal digits")
	}
	return b, nil
}
