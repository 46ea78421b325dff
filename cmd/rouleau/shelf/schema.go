package shelf

import (
	"context"
	"database/sql"
	"strconv"
	"strings"
	"time"
)

// The schema, the same for both databases but for the name of the type for bytes, and how it grows: a migration is never changed
// once it has been released, another one follows it.

// migrations bring an empty database to the newest schema, one step after the other.
var migrations = []string{
	`CREATE TABLE meta (name TEXT PRIMARY KEY, value TEXT NOT NULL);
CREATE TABLE records (seq BIGINT PRIMARY KEY, leaf BYTES NOT NULL, signature BYTES NOT NULL, body BYTES, attachment BYTES);
CREATE TABLE checkpoints (size BIGINT PRIMARY KEY, signed BYTES NOT NULL);`,
	`CREATE TABLE outbox (id TEXT PRIMARY KEY, place BIGINT NOT NULL, statement BYTES NOT NULL, sent BIGINT NOT NULL, tries BIGINT NOT NULL, trouble TEXT NOT NULL);`,
}

// migrate does the migrations that have not been done, all in one transaction. A database without any is left as it is, unless a new
// book is made there.
func (s *Shelf) migrate(fresh bool) error {
	return s.change(func(ctx context.Context, tx *sql.Tx) error {
		if s.postgres { // two workstations may open a new database at once
			if _, err := tx.ExecContext(ctx, `SELECT pg_advisory_xact_lock(7210531)`); err != nil {
				return err
			}
		}
		if _, err := tx.ExecContext(ctx, `CREATE TABLE IF NOT EXISTS schema_version (version BIGINT PRIMARY KEY)`); err != nil {
			return err
		}
		done := 0
		if err := tx.QueryRowContext(ctx, `SELECT COUNT(*) FROM schema_version`).Scan(&done); err != nil {
			return err
		}
		if done == 0 && !fresh {
			return wrong("shelf.no_book", s.where)
		}
		if done > len(migrations) {
			return wrong("shelf.newer", s.where, done, len(migrations))
		}
		for i := done; i < len(migrations); i++ {
			for _, statement := range strings.Split(s.typed(migrations[i]), ";") {
				if strings.TrimSpace(statement) == "" {
					continue
				}
				if _, err := tx.ExecContext(ctx, statement); err != nil {
					return err
				}
			}
			if _, err := tx.ExecContext(ctx, s.placed(`INSERT INTO schema_version (version) VALUES (?)`), i+1); err != nil {
				return err
			}
		}
		return nil
	})
}

// typed puts in the name of the type for bytes.
func (s *Shelf) typed(statement string) string {
	kind := "BLOB"
	if s.postgres {
		kind = "BYTEA"
	}
	return strings.ReplaceAll(statement, " BYTES", " "+kind)
}

// placed writes places for values as the database wants them.
func (s *Shelf) placed(statement string) string {
	if !s.postgres {
		return statement
	}
	var b strings.Builder
	n := 0
	for _, r := range statement {
		if r == '?' {
			n++
			b.WriteString("$" + strconv.Itoa(n))
			continue
		}
		b.WriteRune(r)
	}
	return b.String()
}

// change runs something in one transaction, done whole or not at all.
func (s *Shelf) change(do func(ctx context.Context, tx *sql.Tx) error) error {
	return s.long(func(ctx context.Context, _ func()) error { return s.inOne(ctx, do) })
}

// inOne is a transaction.
func (s *Shelf) inOne(ctx context.Context, do func(ctx context.Context, tx *sql.Tx) error) error {
	tx, err := s.db.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	if s.postgres { // whatever the server is set to: what was answered for is on its disk
		if _, err := tx.ExecContext(ctx, `SET LOCAL synchronous_commit = on`); err != nil {
			tx.Rollback()
			return err
		}
	}
	if err := do(ctx, tx); err != nil {
		tx.Rollback()
		return err
	}
	return tx.Commit()
}

// query runs something that must be done within the time for which a place is waited for.
func (s *Shelf) query(do func(ctx context.Context) error) error {
	return s.long(func(ctx context.Context, _ func()) error { return do(ctx) })
}

// long runs something that takes as long as it takes, as long as it is alive: it says so with each thing done.
func (s *Shelf) long(do func(ctx context.Context, alive func()) error) error {
	ctx, cancel := context.WithCancelCause(context.Background())
	defer cancel(nil)
	end := time.AfterFunc(patience, func() { cancel(context.DeadlineExceeded) })
	defer end.Stop()
	err := do(ctx, func() { end.Reset(patience) })
	if err != nil && context.Cause(ctx) == context.DeadlineExceeded {
		return context.DeadlineExceeded
	}
	return err
}
