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

	_ "github.com/jackc/pgx/v5/stdlib" // the driver named pgx
	_ "modernc.org/sqlite"             // the driver named sqlite

	"rouleau/assets/words"
)

// Shelf is a book's place that is open. It is a book.Store.
type Shelf struct {
	db       *sql.DB
	postgres bool
	origin   string
	where    string // for people, without a password
}

// FileName is the file of a book in its folder.
const FileName = "book.sqlite"

// patience is how long a place that is busy is waited for.
const patience = 20 * time.Second

// isURL says whether a place is a server.
func isURL(place string) bool {
	return strings.HasPrefix(place, "postgres://") || strings.HasPrefix(place, "postgresql://")
}

// Create makes a new book of a name at a place: the path of a folder, or the URL of a database of PostgreSQL. There must be none.
func Create(place, origin string) (*Shelf, error) {
	if err := validOrigin(origin); err != nil {
		return nil, err
	}
	if !isURL(place) {
		if err := os.MkdirAll(place, 0o700); err != nil {
			return nil, fmt.Errorf("%s", words.Say("shelf.no_folder", place, plain(err)))
		}
		if _, err := os.Stat(filepath.Join(place, FileName)); err == nil {
			return nil, fmt.Errorf("%s", words.Say("shelf.is_there", place))
		}
	}
	s, err := connect(place, true)
	if err != nil {
		return nil, err
	}
	if err := s.found(origin); err != nil {
		s.Close()
		return nil, err
	}
	return s, nil
}

// Open opens a book that is there, and brings its schema up to date.
func Open(place string) (*Shelf, error) {
	if !isURL(place) {
		info, err := os.Stat(filepath.Join(place, FileName))
		switch {
		case errors.Is(err, fs.ErrNotExist):
			return nil, fmt.Errorf("%s", words.Say("shelf.none_there", place))
		case err == nil && info.IsDir():
			return nil, fmt.Errorf("%s", words.Say("shelf.no_file", place))
		case err != nil:
			return nil, fmt.Errorf("%s", words.Say("shelf.no_open", place, plain(err)))
		}
	}
	s, err := connect(place, false)
	if err != nil {
		return nil, err
	}
	err = s.query(func(ctx context.Context) error {
		return s.db.QueryRowContext(ctx, `SELECT value FROM meta WHERE name = 'origin'`).Scan(&s.origin)
	})
	if err != nil {
		s.Close()
		return nil, fmt.Errorf("%s", words.Say("shelf.no_book", s.where, plain(err)))
	}
	return s, nil
}

// validOrigin checks the name of a book, which stands on every checkpoint.
func validOrigin(origin string) error {
	if origin == "" || len(origin) > 100 || strings.ContainsAny(origin, "+ \t\r\n") {
		return fmt.Errorf("%s", words.Say("shelf.origin", origin))
	}
	return nil
}

// connect opens the database and brings its schema up to date. A file is made so that only its owner reads it.
func connect(place string, fresh bool) (*Shelf, error) {
	s := &Shelf{postgres: isURL(place), where: place}
	driver, dsn := "pgx", place
	if s.postgres {
		s.where = withoutPassword(place)
	} else {
		file := filepath.Join(place, FileName)
		if fresh {
			f, err := os.OpenFile(file, os.O_CREATE|os.O_EXCL|os.O_RDWR, 0o600)
			if err != nil {
				return nil, fmt.Errorf("%s", words.Say("shelf.no_open", place, plain(err)))
			}
			f.Close()
		}
		driver, dsn = "sqlite", "file:"+escaped(file)+"?_pragma=busy_timeout(20000)&_pragma=journal_mode(WAL)&_pragma=synchronous(FULL)&_pragma=foreign_keys(1)&_txlock=immediate"
	}
	db, err := sql.Open(driver, dsn)
	if err != nil {
		return nil, fmt.Errorf("%s", words.Say("shelf.no_open", s.where, plain(err)))
	}
	if !s.postgres {
		db.SetMaxOpenConns(1)
	}
	s.db = db
	if err := s.migrate(); err != nil {
		db.Close()
		return nil, fmt.Errorf("%s", words.Say("shelf.no_open", s.where, plain(err)))
	}
	return s, nil
}

// escaped makes a path fit for a URI of SQLite.
func escaped(path string) string {
	return strings.NewReplacer("%", "%25", "?", "%3f", "#", "%23").Replace(filepath.ToSlash(path))
}

// withoutPassword is a URL as it may be shown.
func withoutPassword(url string) string {
	head, rest, ok := strings.Cut(url, "://")
	if !ok {
		return url
	}
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

// query runs something with a bound on its time.
func (s *Shelf) query(do func(ctx context.Context) error) error {
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	return do(ctx)
}

// plain is an error without what only a programmer reads.
func plain(err error) string {
	var path *fs.PathError
	switch {
	case errors.As(err, &path):
		return path.Err.Error()
	case errors.Is(err, context.DeadlineExceeded):
		return words.Say("shelf.too_long", int(patience/time.Second))
	}
	return err.Error()
}
