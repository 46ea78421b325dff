package shelf

import (
	"context"
	"database/sql"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"rouleau/scoring/book"
)

// Backups: a whole book in one file of SQLite, wherever it is kept. A backup is read again before it is called one.

// Backup writes the book to a new file. A book that is not as it was written is not called backed up.
func (s *Shelf) Backup(file string) error {
	if _, err := os.Stat(file); err == nil {
		return wrong("shelf.backup_there", file)
	}
	folder, err := os.MkdirTemp(filepath.Dir(file), ".rouleau-backup-")
	if errors.Is(err, fs.ErrNotExist) {
		return wrong("ledger.no_folder", file, filepath.Dir(file))
	}
	if err != nil {
		return machine("shelf.no_write", file, plain(err))
	}
	defer os.RemoveAll(folder)
	to, err := Create(folder, s.origin)
	if err != nil {
		return inPlaceOf(err, folder, file)
	}
	if err := errors.Join(s.copyTo(to), to.single()); err != nil {
		to.Close()
		return inPlaceOf(err, folder, file)
	}
	broken, err := brokenIn(to)
	if err := errors.Join(err, to.Close()); err != nil {
		return err
	}
	if broken != "" {
		return notRight("shelf.backup_broken", s.where, broken)
	}
	if err := os.Rename(filepath.Join(folder, FileName), file); err != nil {
		return machine("shelf.no_write", file, plain(err))
	}
	return nil
}

// inPlaceOf is an error that names the file that was asked for, and not the folder in which it was being made.
func inPlaceOf(err error, folder, file string) error {
	kind := Machine
	if worded := (*Trouble)(nil); errors.As(err, &worded) {
		kind = worded.Kind
	}
	return &Trouble{kind, strings.ReplaceAll(err.Error(), folder, file)}
}

// brokenIn says what in a book is not as it was written, "" where everything is.
func brokenIn(s *Shelf) (string, error) {
	c, err := book.Read(s)
	if err != nil {
		return "", err
	}
	return c.Broken(), nil
}

// single brings a file of SQLite into the form in which it stands alone.
func (s *Shelf) single() error {
	return s.query(func(ctx context.Context) error {
		_, err := s.db.ExecContext(ctx, `PRAGMA journal_mode=DELETE`)
		return err
	})
}

// Restore makes a book anew at a place from a backup. A backup that is not as it was written is refused, and what goes wrong
// leaves nothing behind.
func Restore(file, place string) (*Shelf, error) {
	folder, err := os.MkdirTemp("", "rouleau-restore-")
	if err != nil {
		return nil, machine("shelf.no_write", place, plain(err))
	}
	defer os.RemoveAll(folder)
	data, err := os.ReadFile(file)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, wrong("shelf.no_read", file, plain(err))
	case err != nil:
		return nil, machine("shelf.no_read", file, plain(err))
	}
	if err := os.WriteFile(filepath.Join(folder, FileName), data, 0o600); err != nil {
		return nil, machine("shelf.no_write", place, plain(err))
	}
	from, err := Open(folder)
	if worded := (*Trouble)(nil); errors.As(err, &worded) && worded.Kind != Machine {
		return nil, notRight("shelf.not_backup", file)
	}
	if err != nil {
		return nil, err
	}
	defer from.Close()
	broken, err := brokenIn(from)
	if err != nil {
		broken = err.Error()
	}
	if broken != "" {
		return nil, notRight("shelf.no_backup", file, strings.ReplaceAll(broken, folder, file))
	}
	to, err := Create(place, from.origin)
	if err != nil {
		return nil, err
	}
	if err := from.copyTo(to); err != nil {
		to.Discard()
		return nil, err
	}
	return to, nil
}

// copyTo copies everything in one transaction, a row at a time: a book may be larger than memory.
func (s *Shelf) copyTo(to *Shelf) error {
	kept, err := s.Checkpoints()
	if err != nil {
		return err
	}
	letters, err := s.Letters()
	if err != nil {
		return err
	}
	return to.trouble(to.long(func(ctx context.Context, alive func()) error {
		return to.inOne(ctx, func(ctx context.Context, tx *sql.Tx) error {
			put := func(statement string, values ...any) error {
				_, err := tx.ExecContext(ctx, to.placed(statement), values...)
				alive()
				return err
			}
			n := int64(0)
			most := int64(0)
			if len(kept) > 0 {
				most = kept[len(kept)-1].Size
			}
			err := s.Rows(0, func(r book.Row) error {
				if n++; n > most { // written in between, as its checkpoint was
					return nil
				}
				return put(`INSERT INTO records (seq, leaf, signature, body, attachment) VALUES (?, ?, ?, ?, ?)`, n-1, r.Leaf, r.Signature, r.Body, r.Attachment)
			})
			if err != nil {
				return err
			}
			for _, k := range kept {
				if err := put(`INSERT INTO checkpoints (size, signed) VALUES (?, ?)`, k.Size, k.Signed); err != nil {
					return err
				}
			}
			for _, l := range letters {
				if err := put(`INSERT INTO outbox (id, place, statement, sent, tries, trouble) VALUES (?, ?, ?, ?, ?, ?)`, l.ID, l.Place, l.Statement, l.Sent, l.Tries, l.Trouble); err != nil {
					return err
				}
			}
			return nil
		})
	}))
}
