package ledger

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"filippo.io/age/armor"

	"rouleau/cmd/rouleau/shelf"
	"rouleau/cmd/rouleau/shelf/pgtest"
	"rouleau/scoring/book"
)

// phrases gives passphrases by person, and counts how often it is asked.
type phrases struct {
	of    map[string]string
	asked int
}

func (p *phrases) as(person string) As {
	return As{person, func(person string, _ book.Role) (string, error) {
		p.asked++
		return p.of[person], nil
	}}
}

// A book on a server has its keys in a folder here.
func TestABookOnAServer(t *testing.T) {
	p := Places{pgtest.Database(t), filepath.Join(t.TempDir(), "keys")}
	ph := &phrases{of: map[string]string{"ADM-1": "four words make one"}}
	l, err := Found(p, origin, "ADM-1", ph.of["ADM-1"])
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	if _, err := l.AddPerson("P-07", book.Learner, "", ph.as("ADM-1")); err != nil {
		t.Fatal(err)
	}
	if v, err := Verify(t.Context(), p, Verification{}); err != nil || v.Worst() != book.Sound || len(v.Findings) != 2 {
		t.Error(v, err)
	}
	if _, err := Found(p, origin, "ADM-1", ph.of["ADM-1"]); err == nil || !strings.Contains(err.Error(), "there is a book already") {
		t.Error(err)
	}
}

// From an empty folder to people who may write, with their keys in files.
func TestPeopleAndTheirKeys(t *testing.T) {
	p := Places{filepath.Join(t.TempDir(), "book"), filepath.Join(t.TempDir(), "keys")}
	ph := &phrases{of: map[string]string{"ADM-1": "four words make one", "AS-1": "others make another"}}
	_, err := Found(p, origin, "ADM-1", "short")
	said(t, err, int(shelf.Wrong), "at least 12 characters")
	if _, err := Open(p); err == nil {
		t.Error("a book is there without its administrator")
	}
	if left, _ := os.ReadDir(filepath.Join(p.Keys, "keys")); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
	l, err := Found(p, origin, "ADM-1", ph.of["ADM-1"])
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	if _, err := Found(p, origin, "ADM-1", ph.of["ADM-1"]); err == nil || !strings.Contains(err.Error(), "there is a book already") {
		t.Error(err)
	}
	if !shelf.KeyThere(p.Keys, "ADM-1", book.Administrator) {
		t.Fatal("making a book twice took away the key of its administrator")
	}
	_, err = l.AddPerson("AS-1", book.Assessor, "", ph.as("ADM-1"))
	said(t, err, int(shelf.Wrong), "there is no public part of a key of AS-1 as assessor")
	public, err := MakeKey(p.Keys, "AS-1", book.Assessor, ph.of["AS-1"])
	if err != nil {
		t.Fatal(err)
	}
	if data, err := os.ReadFile(strings.TrimSuffix(public, ".pub") + ".key"); err != nil {
		t.Error(err)
	} else if head, err := io.ReadAll(io.LimitReader(armor.NewReader(bytes.NewReader(data)), 80)); err != nil || !regexp.MustCompile(`^age-encryption.org/v1\n-> scrypt \S+ 18\n`).Match(head) {
		t.Errorf("the key is not under scrypt of 2^18: %q %v", head, err)
	}
	_, err = l.AddPerson("AS-2", book.Assessor, public, ph.as("ADM-1"))
	said(t, err, int(shelf.NotRight), "this is the key of AS-1 as assessor, and not of AS-2")
	if ph.asked > 0 {
		t.Error("a passphrase was asked for in vain")
	}
	if _, err := l.AddPerson("AS-1", book.Assessor, public, ph.as("ADM-1")); err != nil {
		t.Fatal(err)
	}
	if _, err := l.AddPerson("P-07", book.Learner, "", ph.as("ADM-1")); err != nil {
		t.Fatal(err)
	}
	_, err = l.AddPerson("Robin", book.Learner, "", ph.as("ADM-1"))
	said(t, err, int(shelf.Wrong), "is no code")
	_, err = MakeKey(p.Keys, "AS-1", "chief", "whatever this may be")
	said(t, err, int(shelf.Wrong), `"chief" is no role`)
	_, err = l.Note(book.EventAway, "P-07", "", "a year", ph.as("AS-9"))
	said(t, err, int(shelf.Wrong), "there is no key of AS-9 as assessor here")
	if _, err := l.Note(book.EventAway, "P-07", "", "a year", ph.as("AS-1")); err != nil {
		t.Error(err)
	}
	if _, err := l.Note(book.EventEquipment, "", "2031-05-01", "another bench", ph.as("ADM-1")); err != nil { // an administrator may too
		t.Error(err)
	}
	ph.of["AS-1"] = "not this one at all"
	_, err = l.Note(book.EventAway, "P-07", "", "a year", ph.as("AS-1"))
	said(t, err, int(shelf.NotRight), "not the passphrase of AS-1")
	if _, err := l.EndPerson("AS-1", book.Assessor, "left", ph.as("ADM-1")); err != nil {
		t.Error(err)
	}
	ph.of["AS-1"] = "others make another"
	_, err = l.CountCase("P-07", "salvage", "2031-05-01", ph.as("AS-1"))
	said(t, err, rule, "had ended")
	if l.Size() != 6 {
		t.Errorf("%d records", l.Size())
	}
	if v, err := Verify(t.Context(), p, Verification{}); err != nil || v.Worst() != book.Sound {
		t.Error(v, err)
	}
}

// Making a book that was broken off after its key, or after its place, is gone on with.
func TestMakingABookIsGoneOnWith(t *testing.T) {
	where := filepath.Join(t.TempDir(), "book")
	p := Places{where, where}
	if _, err := MakeKey(p.Keys, "ADM-1", book.Administrator, "four words make one"); err != nil {
		t.Fatal(err)
	}
	s, err := shelf.Create(where, origin)
	if err != nil {
		t.Fatal(err)
	}
	s.Close()
	_, err = Found(p, origin, "ADM-1", "five words make none")
	said(t, err, int(shelf.NotRight), "not the passphrase of ADM-1")
	_, err = Found(p, "another.example", "ADM-1", "four words make one")
	said(t, err, int(shelf.Wrong), "there is a book already")
	l, err := Found(p, origin, "ADM-1", "four words make one")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	if l.Size() != 1 {
		t.Errorf("%d records", l.Size())
	}
}

func TestWhereTheBookIs(t *testing.T) {
	config := filepath.Join(t.TempDir(), "config")
	t.Setenv("XDG_CONFIG_HOME", config)
	t.Setenv("HOME", config)
	t.Setenv("AppData", config)
	t.Setenv(Variable, "")
	base, err := os.UserConfigDir()
	if err != nil {
		t.Fatal(err)
	}
	own := filepath.Join(base, "rouleau", "book")
	server := "postgres://host/books"
	for _, c := range []struct{ book, keys, variable, wantBook, wantKeys string }{
		{"", "", "", own, own}, {"here", "", "", "here", "here"}, {"here", "there", "", "here", "there"}, {"", "", "its", "its", "its"}, {"here", "", "its", "here", "here"},
		{server, "", "", server, own}, {"", "", server, server, own}, {server, "there", "", server, "there"},
	} {
		t.Setenv(Variable, c.variable)
		if p, err := Find(c.book, c.keys); err != nil || p.Book != c.wantBook || p.Keys != c.wantKeys {
			t.Errorf("%+v: %+v %v", c, p, err)
		}
	}
}
