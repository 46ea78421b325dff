package shelf

import (
	"context"
	"database/sql"

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
			return wrong("shelf.is_there", s.where)
		}
		_, err := tx.ExecContext(ctx, s.placed(`INSERT INTO meta (name, value) VALUES ('origin', ?)`), origin)
		return err
	})
	s.origin = origin
	return s.trouble(err)
}

// Rows gives those from one place on, one after the other.
func (s *Shelf) Rows(from int64, each func(book.Row) error) error {
	var theirs error // of what the rows are given to
	err := s.long(func(ctx context.Context, alive func()) error {
		rows, err := s.db.QueryContext(ctx, s.placed(`SELECT seq, leaf, signature, body, attachment FROM records WHERE seq >= ? ORDER BY seq`), from)
		if err != nil {
			return err
		}
		defer rows.Close()
		for want := from; rows.Next(); want++ {
			var seq int64
			var r book.Row
			if err := rows.Scan(&seq, &r.Leaf, &r.Signature, &r.Body, &r.Attachment); err != nil {
				return err
			}
			if seq != want {
				return notRight("shelf.gap", s.where, want)
			}
			if theirs = each(r); theirs != nil {
				return theirs
			}
			alive()
		}
		return rows.Err()
	})
	if theirs != nil {
		return theirs
	}
	return s.trouble(err)
}

// Attachment is that of the row at a place, nil where it has none.
func (s *Shelf) Attachment(at int64) (data []byte, err error) {
	err = s.query(func(ctx context.Context) error {
		return s.db.QueryRowContext(ctx, s.placed(`SELECT attachment FROM records WHERE seq = ?`), at).Scan(&data)
	})
	return data, s.trouble(err)
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

// Append adds a row and the checkpoint after it, and forgets what is to be forgotten, all at once: what waits in the outbox about
// it too.
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
			for _, statement := range []string{`UPDATE records SET body = NULL, attachment = NULL WHERE seq = ?`, `DELETE FROM outbox WHERE place = ?`} {
				if _, err := tx.ExecContext(ctx, s.placed(statement), k); err != nil {
					return err
				}
			}
		}
		return nil
	})
	if err == nil && len(forget) > 0 {
		s.scrub()
	}
	return s.trouble(err)
}

// scrub takes what was deleted, and overwritten in the file, out of what SQLite keeps beside it. Where others read at this moment,
// that happens when the last of them closes the book. PostgreSQL does so by itself in time.
func (s *Shelf) scrub() {
	if s.postgres {
		return
	}
	_ = s.query(func(ctx context.Context) error {
		_, err := s.db.ExecContext(ctx, `PRAGMA wal_checkpoint(TRUNCATE)`)
		return err
	})
}
