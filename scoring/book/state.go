package book

import (
	"crypto/ed25519"
	"encoding/hex"
	"fmt"
	"slices"
)

// The state of a book: what its rows, read in order, make of it. The same rules are asked when a record is written and when
// a book is verified.

// Entry is a record with its place.
type Entry struct {
	Seq  int64 // from 0
	Leaf *Leaf
	Body any // *SignOff and so on; nil where it was forgotten
	row  Row // without its attachment where the state can fetch it
	in   *State
	// what became of it later
	VoidedBy     string // id of the record that took it out of force
	SupersededBy string
	ForgottenBy  string
}

// InForce says whether a record still counts.
func (e *Entry) InForce() bool {
	return e.stands() && e.Body != nil
}

// Attachment is the attempt of a signed-off record, as it was signed; nil for none.
func (e *Entry) Attachment() ([]byte, error) {
	b, ok := e.Body.(*SignOff)
	if !ok || e.in == nil || e.in.fetch == nil {
		return e.row.Attachment, nil
	}
	data, err := e.in.fetch(e.Seq)
	if err != nil {
		return nil, err
	}
	return data, e.attached(b, data)
}

// Person is somebody with a key.
type Person struct {
	Code   string
	Role   Role
	Public ed25519.PublicKey // nil for a learner without one
	Ended  bool
}

// State is a book as its rows leave it.
type State struct {
	Origin  string
	Entries []*Entry
	byID    map[string]*Entry
	keys    map[string]*Person // by key id, ended ones too
	people  []*Person          // in the order in which they came
	tree    tree
	fetch   func(at int64) ([]byte, error) // attachments, of which there may be more than memory holds; nil: rows keep theirs
}

// NewState is an empty book of a name.
func NewState(origin string) *State {
	return &State{Origin: origin, byID: map[string]*Entry{}, keys: map[string]*Person{}}
}

// Add reads the next row. An error says what is wrong with it; the row keeps its place, so that those after it can be read.
func (s *State) Add(row Row) error {
	e, err := s.judge(row)
	if added := s.tree.add(row.Leaf); added != nil {
		return added
	}
	if s.fetch != nil {
		e.row.Attachment = nil
	}
	s.Entries = append(s.Entries, e)
	if e.Leaf != nil && s.byID[e.Leaf.ID] == nil {
		s.byID[e.Leaf.ID] = e
	}
	if err == nil && e.Body != nil {
		s.takeEffect(e)
	}
	return err
}

// judge reads a row and asks whether it may come next; it changes nothing.
func (s *State) judge(row Row) (*Entry, error) {
	e := &Entry{Seq: s.Size(), row: row, in: s}
	leaf, err := readLeaf(row.Leaf)
	if err != nil {
		return e, fmt.Errorf("the leaf cannot be read: %w", err)
	}
	e.Leaf = leaf
	if s.byID[leaf.ID] != nil {
		return e, fmt.Errorf("its number %s stands twice", leaf.ID)
	}
	body, err := readBody(leaf, row.Body)
	if err != nil {
		return e, err
	}
	e.Body = body
	if err := s.signed(e); err != nil {
		return e, err
	}
	if body == nil { // whether it was forgotten rightly is known only when all has been read
		if row.Attachment != nil {
			return e, fmt.Errorf("its body is missing and its attempt is still there")
		}
		return e, nil
	}
	b, ok := body.(*SignOff)
	if !ok && row.Attachment != nil {
		return e, fmt.Errorf("something is attached that does not belong there")
	}
	if ok {
		if err := e.attached(b, row.Attachment); err != nil {
			return e, err
		}
	}
	return e, s.allowed(e)
}

// readBody reads the body of a leaf, nil where there is none.
func readBody(l *Leaf, data []byte) (any, error) {
	if data == nil {
		return nil, nil
	}
	salt, err := hex.DecodeString(l.Salt)
	if err != nil || len(salt) != saltBytes {
		return nil, fmt.Errorf("its salt is no salt")
	}
	if got := salted(salt, data); got != l.SHA256 {
		return nil, fmt.Errorf("the body is not the one that was signed (hash %s, signed %s)", short(got), short(l.SHA256))
	}
	var body any
	switch l.Kind {
	case KindKey:
		body = &Key{}
	case KindSignOff:
		body = &SignOff{}
	case KindRating:
		body = &Rating{}
	case KindVoid:
		body = &Void{}
	case KindForget:
		body = &Forget{}
	case KindCase:
		body = &Case{}
	case KindEvent:
		body = &Event{}
	case KindPlan:
		body = &PlanText{}
	default:
		return nil, fmt.Errorf("its kind %q is not known", l.Kind)
	}
	if err := strict(data, body); err != nil {
		return nil, fmt.Errorf("the body cannot be read: %w", err)
	}
	return body, nil
}

func short(hash string) string { return hash[:min(12, len(hash))] }

// signed checks the signature of a row by a key that is in force.
func (s *State) signed(e *Entry) error {
	p := s.keys[e.Leaf.Key]
	if k, ok := e.Body.(*Key); ok && e.Seq == 0 { // the first key of a book signs itself
		public, err := publicOf(k.Public)
		if err != nil || KeyID(public) != e.Leaf.Key {
			return fmt.Errorf("the first record of a book must be the key that signs it")
		}
		p = &Person{Code: k.Person, Role: k.Role, Public: public}
	}
	switch {
	case p == nil:
		return fmt.Errorf("it is signed with the key %s, which is not of this book", e.Leaf.Key)
	case p.Ended:
		return fmt.Errorf("it is signed with the key of %s, which had ended", p.Code)
	case !ed25519.Verify(p.Public, e.row.Leaf, e.row.Signature):
		return fmt.Errorf("the signature of %s does not hold", p.Code)
	}
	return nil
}

// attached checks an attachment against the hash in the body.
func (e *Entry) attached(b *SignOff, data []byte) error {
	salt, _ := hex.DecodeString(e.Leaf.Salt)
	if data == nil || salted(salt, data) != b.AttemptSHA {
		return fmt.Errorf("the attempt attached is not the one that was signed off")
	}
	return nil
}

// takeEffect lets a record do what it does to others.
func (s *State) takeEffect(e *Entry) {
	switch b := e.Body.(type) {
	case *Key:
		s.register(e, b)
	case *SignOff:
		if old := s.byID[b.Supersedes]; old != nil {
			old.SupersededBy = e.Leaf.ID
		}
	case *Void:
		s.byID[b.Of].VoidedBy = e.Leaf.ID
	case *Forget:
		s.byID[b.Of].ForgottenBy = e.Leaf.ID
	}
}

func (s *State) register(e *Entry, b *Key) {
	if b.Ended {
		for _, p := range s.people {
			if p.Code == b.Person && p.Role == b.Role {
				p.Ended = true
			}
		}
		return
	}
	p := &Person{Code: b.Person, Role: b.Role}
	if b.Public != "" {
		p.Public, _ = publicOf(b.Public)
		s.keys[KeyID(p.Public)] = p
	}
	s.people = append(s.people, p)
}

// Find is the record of a number, or of the only one that begins so; nil where there is none, or more than one.
func (s *State) Find(id string) *Entry {
	if e := s.byID[id]; e != nil {
		return e
	}
	var found *Entry
	for _, e := range s.Entries {
		if len(id) >= 4 && e.Leaf != nil && len(e.Leaf.ID) >= len(id) && e.Leaf.ID[:len(id)] == id {
			if found != nil {
				return nil
			}
			found = e
		}
	}
	return found
}

// People are those with a role in force, each once for every role.
func (s *State) People() []Person {
	var all []Person
	for _, p := range s.people {
		if !p.Ended {
			all = append(all, *p)
		}
	}
	return all
}

// signer is who signed a record.
func (s *State) signer(e *Entry) *Person { return s.keys[e.Leaf.Key] }

// has says whether somebody has a role in force.
func (s *State) has(code string, role Role) bool {
	return slices.ContainsFunc(s.people, func(p *Person) bool { return p.Code == code && p.Role == role && !p.Ended })
}

// Size is how many records there are.
func (s *State) Size() int64 { return s.tree.size }
