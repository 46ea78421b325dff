// Package shelf keeps competency books: in a file of SQLite for one workstation, or in PostgreSQL for many. Both have one schema,
// one set of statements and the same tests. This file opens a book's place.
package shelf

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"rouleau/assets/words"
)

// Shelf is a book's place that is open. It is a book.Store.
type Shelf struct {
	db       *sql.DB
	postgres bool
	origin   string
	where    string // for people, without a password
	barred   error  // why it can only be read, nil where it can be written to
}

// FileName is the file of a book in its folder.
const FileName = "book.sqlite"

// patience is how long a place that does not answer is waited for; one that somebody else holds is waited for half as long, so
// that it is told as what it is.
var patience = 20 * time.Second

// IsURL says whether a place is a server.
func IsURL(place string) bool {
	return strings.HasPrefix(place, "postgres://") || strings.HasPrefix(place, "postgresql://")
}

// Create makes a new book of a name at a place: the path of a folder, or the URL of a database of PostgreSQL. There must be none.
// What goes wrong leaves nothing behind.
func Create(place, origin string) (*Shelf, error) {
	if err := validOrigin(origin); err != nil {
		return nil, err
	}
	taken := func() {}
	if !IsURL(place) {
		var err error
		if taken, err = takePlace(place); err != nil {
			return nil, err
		}
	}
	s, err := connect(place, true)
	if err != nil {
		taken()
		return nil, err
	}
	if err := s.found(origin); err != nil {
		s.Close()
		taken()
		return nil, err
	}
	return s, nil
}

// takePlace makes the folder and the file of a new book so that only its owner reads them, and gives what takes away again what
// it made. A file that is there may be all that was left of making a book that was broken off: whether it is, its content says.
func takePlace(place string) (undo func(), err error) {
	_, missing := os.Stat(place)
	if err := os.MkdirAll(place, 0o700); err != nil {
		return nil, machine("shelf.no_folder", place, plain(err))
	}
	undo = func() {
		removeFile(place)
		if missing != nil {
			os.Remove(place)
		}
	}
	f, err := os.OpenFile(filepath.Join(place, FileName), os.O_CREATE|os.O_EXCL|os.O_RDWR, 0o600)
	switch {
	case errors.Is(err, fs.ErrExist):
		return func() {}, nil
	case errors.Is(err, fs.ErrPermission):
		return nil, machine("shelf.read_only", place)
	case err != nil:
		undo()
		return nil, machine("shelf.no_open", place, plain(err))
	}
	f.Close()
	return undo, nil
}

// removeFile takes away the file of a book, with what SQLite keeps beside it.
func removeFile(place string) {
	for _, end := range []string{"", "-wal", "-shm", "-journal"} {
		os.Remove(filepath.Join(place, FileName+end))
	}
}

// Discard closes a book whose making went no further, and takes it away; its folder too when nothing else lies in it.
func (s *Shelf) Discard() {
	if s.postgres {
		_ = s.change(func(ctx context.Context, tx *sql.Tx) error {
			for _, table := range []string{"outbox", "checkpoints", "records", "meta"} {
				if _, err := tx.ExecContext(ctx, "DELETE FROM "+table); err != nil {
					return err
				}
			}
			return nil
		})
	}
	s.Close()
	if !s.postgres {
		removeFile(s.where)
		os.Remove(s.where)
	}
}

// Open opens a book that is there, and brings its schema up to date.
func Open(place string) (*Shelf, error) {
	if !IsURL(place) {
		info, err := os.Stat(filepath.Join(place, FileName))
		switch {
		case errors.Is(err, fs.ErrNotExist):
			return nil, wrong("shelf.none_there", place)
		case err == nil && info.IsDir():
			return nil, wrong("shelf.no_file", place)
		case err == nil && info.Size() == 0:
			return nil, wrong("shelf.no_book", place)
		case err != nil:
			return nil, machine("shelf.no_open", place, plain(err))
		}
	}
	s, err := connect(place, false)
	if err != nil {
		return nil, err
	}
	err = s.query(func(ctx context.Context) error {
		return s.db.QueryRowContext(ctx, `SELECT value FROM meta WHERE name = 'origin'`).Scan(&s.origin)
	})
	if errors.Is(err, sql.ErrNoRows) {
		err = wrong("shelf.no_book", s.where)
	}
	if err != nil {
		s.Close()
		return nil, s.trouble(err)
	}
	return s, nil
}

// validOrigin checks the name of a book, which stands on every checkpoint.
func validOrigin(origin string) error {
	if origin == "" || len(origin) > 100 || strings.ContainsAny(origin, "+ \t\r\n") {
		return wrong("shelf.origin", origin)
	}
	return nil
}

// connect opens the database and brings its schema up to date; only a new book begins with an empty one. What is deleted from a file
// is overwritten there.
func connect(place string, fresh bool) (*Shelf, error) {
	s := &Shelf{postgres: IsURL(place), where: place}
	driver, dsn := "pgx", place
	if s.postgres {
		s.where = withoutPassword(place)
	} else {
		driver = "sqlite"
		dsn = fmt.Sprintf("file:%s?_pragma=busy_timeout(%d)&_pragma=journal_mode(WAL)&_pragma=synchronous(FULL)&_pragma=foreign_keys(1)&_pragma=secure_delete(1)&_txlock=immediate",
			escaped(filepath.Join(place, FileName)), patience.Milliseconds()/2)
	}
	db, err := sql.Open(driver, dsn)
	if err != nil {
		return nil, machine("shelf.no_open", s.where, plain(err))
	}
	if !s.postgres {
		db.SetMaxOpenConns(1)
	}
	s.db = db
	if err := s.migrate(fresh); err != nil {
		db.Close()
		if why := causeOf(err); !s.postgres && (why == readOnly || why == full || why == disk) && s.onlyRead(place) {
			s.barred = s.trouble(err)
			return s, nil
		}
		_, _, refused := refusal(err)
		if worded := (*Trouble)(nil); errors.As(err, &worded) || refused || causeOf(err) != otherCause {
			return nil, s.trouble(err)
		}
		return nil, machine("shelf.no_open", s.where, plain(err))
	}
	return s, nil
}

// onlyRead opens a file that cannot be written to, such as one of an archive or on a full disk: what is in it can be read and verified
// all the same.
// Where something that was written last still lies beside it, which only somebody who may write can take in, it does not.
func (s *Shelf) onlyRead(place string) bool {
	if beside, err := os.Stat(filepath.Join(place, FileName+"-wal")); err == nil && beside.Size() > 0 {
		return false
	}
	db, err := sql.Open("sqlite", fmt.Sprintf("file:%s?mode=ro&immutable=1&_txlock=immediate", escaped(filepath.Join(place, FileName))))
	if err != nil {
		return false
	}
	db.SetMaxOpenConns(1)
	done := 0
	if err := db.QueryRow(`SELECT COUNT(*) FROM schema_version`).Scan(&done); err != nil || done > len(migrations) {
		db.Close()
		return false
	}
	s.db = db
	return true
}

// escaped makes a path fit for a URI of SQLite.
func escaped(path string) string {
	return strings.NewReplacer("%", "%25", "?", "%3f", "#", "%23").Replace(filepath.ToSlash(path))
}

// withoutPassword is a URL as it may be shown: a password may also stand behind the question mark.
func withoutPassword(url string) string {
	head, rest, ok := strings.Cut(url, "://")
	if !ok {
		return url
	}
	rest, _, _ = strings.Cut(rest, "?")
	if at := strings.LastIndex(rest, "@"); at >= 0 {
		user, _, _ := strings.Cut(rest[:at], ":")
		rest = user + rest[at:]
	}
	return head + "://" + rest
}

// Close lets go of the place.
func (s *Shelf) Close() error { return s.db.Close() }

// Where is the place in words, without a password.
func (s *Shelf) Where() string { return s.where }

// Origin is the name of the book.
func (s *Shelf) Origin() string { return s.origin }

// plain is an error without what only a programmer reads.
func plain(err error) string {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return path.Err.Error()
	case errors.As(err, &link):
		return link.Err.Error()
	case errors.Is(err, context.DeadlineExceeded):
		return words.Say("shelf.too_long", int(patience/time.Second))
	}
	return err.Error()
}
