package shelf

import (
	"context"
	"database/sql"
	"errors"
	"fmt"

	"github.com/jackc/pgx/v5/pgconn"
	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"

	"rouleau/assets/words"
	"rouleau/scoring/book"
)

// Records and checkpoints.

// found writes the name of a new book.
func (s *Shelf) found(origin string) error {
	err := s.change(func(ctx context.Context, tx *sql.Tx) error {
		n := 0
		if err := tx.QueryRowContext(ctx, `SELECT COUNT(*) FROM meta`).Scan(&n); err != nil {
			return err
		}
		if n > 0 {
			return errors.New(words.Say("shelf.is_there", s.where))
		}
		_, err := tx.ExecContext(ctx, s.placed(`INSERT INTO meta (name, value) VALUES ('origin', ?)`), origin)
		return err
	})
	s.origin = origin
	return err
}

// Rows are those from one place on.
func (s *Shelf) Rows(from int64) (all []book.Row, err error) {
	err = s.query(func(ctx context.Context) error {
		rows, err := s.db.QueryContext(ctx, s.placed(`SELECT seq, leaf, signature, body, attachment FROM records WHERE seq >= ? ORDER BY seq`), from)
		if err != nil {
			return err
		}
		defer rows.Close()
		for rows.Next() {
			var seq int64
			var r book.Row
			if err := rows.Scan(&seq, &r.Leaf, &r.Signature, &r.Body, &r.Attachment); err != nil {
				return err
			}
			if want := from + int64(len(all)); seq != want {
				return fmt.Errorf("record %d is missing", want)
			}
			all = append(all, r)
		}
		return rows.Err()
	})
	if err != nil {
		return nil, s.trouble(err)
	}
	return all, nil
}

// Checkpoints are all that were kept, in order.
func (s *Shelf) Checkpoints() (all []book.Kept, err error) {
	err = s.query(func(ctx context.Context) error {
		rows, err := s.db.QueryContext(ctx, `SELECT size, signed FROM checkpoints ORDER BY size`)
		if err != nil {
			return err
		}
		defer rows.Close()
		for rows.Next() {
			var k book.Kept
			if err := rows.Scan(&k.Size, &k.Signed); err != nil {
				return err
			}
			all = append(all, k)
		}
		return rows.Err()
	})
	if err != nil {
		return nil, s.trouble(err)
	}
	return all, nil
}

// Append adds a row and the checkpoint after it, and forgets what is to be forgotten, all at once.
func (s *Shelf) Append(at int64, row book.Row, after book.Kept, forget []int64) error {
	err := s.change(func(ctx context.Context, tx *sql.Tx) error {
		n := int64(0)
		if err := tx.QueryRowContext(ctx, `SELECT COUNT(*) FROM records`).Scan(&n); err != nil {
			return err
		}
		if n != at {
			return book.ErrMoved
		}
		if _, err := tx.ExecContext(ctx, s.placed(`INSERT INTO records (seq, leaf, signature, body, attachment) VALUES (?, ?, ?, ?, ?)`),
			at, row.Leaf, row.Signature, row.Body, row.Attachment); err != nil {
			return err
		}
		if _, err := tx.ExecContext(ctx, s.placed(`INSERT INTO checkpoints (size, signed) VALUES (?, ?)`), after.Size, after.Signed); err != nil {
			return err
		}
		for _, k := range forget {
			if _, err := tx.ExecContext(ctx, s.placed(`UPDATE records SET body = NULL, attachment = NULL WHERE seq = ?`), k); err != nil {
				return err
			}
		}
		return nil
	})
	if err == nil && len(forget) > 0 {
		err = s.scrub()
	}
	return s.trouble(err)
}

// scrub takes what was deleted out of the files too. PostgreSQL does so by itself in time.
func (s *Shelf) scrub() error {
	if s.postgres {
		return nil
	}
	return s.query(func(ctx context.Context) error {
		for _, statement := range []string{`VACUUM`, `PRAGMA wal_checkpoint(TRUNCATE)`} {
			if _, err := s.db.ExecContext(ctx, statement); err != nil {
				return err
			}
		}
		return nil
	})
}

// trouble words an error of a database.
func (s *Shelf) trouble(err error) error {
	var pg *pgconn.PgError
	var lite *sqlite.Error
	switch {
	case err == nil:
		return nil
	case errors.Is(err, book.ErrMoved):
		return err
	case errors.As(err, &pg) && pg.Code == "23505": // somebody else has written this place a moment before
		return book.ErrMoved
	case errors.As(err, &lite):
		switch lite.Code() & 0xff {
		case sqlite3.SQLITE_CONSTRAINT:
			return book.ErrMoved
		case sqlite3.SQLITE_FULL:
			return errors.New(words.Say("shelf.full", s.where))
		case sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_PERM:
			return errors.New(words.Say("shelf.read_only", s.where))
		case sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED:
			return errors.New(words.Say("shelf.locked", s.where))
		case sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB:
			return errors.New(words.Say("shelf.damaged", s.where))
		}
	}
	return errors.New(words.Say("shelf.trouble", s.where, plain(err)))
}
