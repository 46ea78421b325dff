package shelf

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"rouleau/assets/words"
	"rouleau/scoring/book"
)

// Backups: a whole book in one file of SQLite, wherever it is kept. A backup is read again before it is called one.

// Backup writes the book to a new file.
func (s *Shelf) Backup(file string) error {
	if _, err := os.Stat(file); err == nil {
		return errors.New(words.Say("shelf.backup_there", file))
	}
	folder, err := os.MkdirTemp(filepath.Dir(file), ".rouleau-backup-")
	if err != nil {
		return errors.New(words.Say("shelf.no_folder", filepath.Dir(file), plain(err)))
	}
	defer os.RemoveAll(folder)
	to, err := Create(folder, s.origin)
	if err != nil {
		return err
	}
	if err := errors.Join(s.copyTo(to), to.single()); err != nil {
		to.Close()
		return err
	}
	if err := to.Close(); err != nil {
		return err
	}
	if err := os.Rename(filepath.Join(folder, FileName), file); err != nil {
		return errors.New(words.Say("shelf.no_write", file, plain(err)))
	}
	return nil
}

// single brings a file of SQLite into the form in which it stands alone.
func (s *Shelf) single() error {
	return s.query(func(ctx context.Context) error {
		_, err := s.db.ExecContext(ctx, `PRAGMA journal_mode=DELETE`)
		return err
	})
}

// Restore makes a book anew at a place from a backup. A backup that is not as it was written is refused.
func Restore(file, place string) (*Shelf, error) {
	folder, err := os.MkdirTemp("", "rouleau-restore-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(folder)
	data, err := os.ReadFile(file)
	if err != nil {
		return nil, errors.New(words.Say("shelf.no_read", file, plain(err)))
	}
	if err := os.WriteFile(filepath.Join(folder, FileName), data, 0o600); err != nil {
		return nil, err
	}
	from, err := Open(folder)
	if err != nil {
		return nil, fmt.Errorf("%s", words.Say("shelf.no_backup", file, err.Error()))
	}
	defer from.Close()
	c, err := book.Read(from)
	if err != nil {
		return nil, fmt.Errorf("%s", words.Say("shelf.no_backup", file, err.Error()))
	}
	if broken := c.Broken(); broken != "" {
		return nil, fmt.Errorf("%s", words.Say("shelf.no_backup", file, broken))
	}
	to, err := Create(place, from.origin)
	if err != nil {
		return nil, err
	}
	if err := from.copyTo(to); err != nil {
		to.Close()
		return nil, err
	}
	return to, nil
}

// copyTo copies everything in one transaction.
func (s *Shelf) copyTo(to *Shelf) error {
	rows, err := s.Rows(0)
	if err != nil {
		return err
	}
	kept, err := s.Checkpoints()
	if err != nil {
		return err
	}
	letters, err := s.letters(`SELECT id, place, statement, sent, tries, trouble FROM outbox ORDER BY place`)
	if err != nil {
		return err
	}
	return to.trouble(to.change(func(ctx context.Context, tx *sql.Tx) error {
		put := func(statement string, values ...any) error {
			_, err := tx.ExecContext(ctx, to.placed(statement), values...)
			return err
		}
		for i, r := range rows {
			if err := put(`INSERT INTO records (seq, leaf, signature, body, attachment) VALUES (?, ?, ?, ?, ?)`, i, r.Leaf, r.Signature, r.Body, r.Attachment); err != nil {
				return err
			}
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
	}))
}
