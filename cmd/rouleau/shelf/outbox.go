package shelf

import (
	"context"
	"database/sql"
)

// The outbox: statements that are to go to a learning record store. They stay until they have been taken, over restarts too.

// Letter is a statement in the outbox.
type Letter struct {
	ID        string // of the statement
	Place     int64  // of the record it tells of
	Statement []byte
	Sent      int64  // 1 once the store has taken it
	Tries     int64  // that failed
	Trouble   string // of the last one
}

// Post puts statements into the outbox; one that is there already stays as it is.
func (s *Shelf) Post(letters []Letter) error {
	return s.trouble(s.change(func(ctx context.Context, tx *sql.Tx) error {
		for _, l := range letters {
			if _, err := tx.ExecContext(ctx, s.placed(`INSERT INTO outbox (id, place, statement, sent, tries, trouble) VALUES (?, ?, ?, 0, 0, '') ON CONFLICT (id) DO NOTHING`),
				l.ID, l.Place, l.Statement); err != nil {
				return err
			}
		}
		return nil
	}))
}

// Letters are all statements that were ever put in, sent ones too, in the order of their records.
func (s *Shelf) Letters() ([]Letter, error) {
	return s.letters(`SELECT id, place, statement, sent, tries, trouble FROM outbox ORDER BY place, id`)
}

// Unsent are the statements still to be sent, in the order of their records.
func (s *Shelf) Unsent() ([]Letter, error) {
	return s.letters(`SELECT id, place, statement, sent, tries, trouble FROM outbox WHERE sent = 0 ORDER BY place, id`)
}

// Delivered notes that the store has taken a statement.
func (s *Shelf) Delivered(id string) error {
	return s.note(`UPDATE outbox SET sent = 1, trouble = '' WHERE id = ?`, id)
}

// Failed notes why a statement was not taken.
func (s *Shelf) Failed(id, trouble string) error {
	return s.note(`UPDATE outbox SET tries = tries + 1, trouble = ? WHERE id = ?`, trouble, id)
}

func (s *Shelf) note(statement string, values ...any) error {
	return s.trouble(s.change(func(ctx context.Context, tx *sql.Tx) error {
		_, err := tx.ExecContext(ctx, s.placed(statement), values...)
		return err
	}))
}

func (s *Shelf) letters(statement string) (all []Letter, err error) {
	err = s.query(func(ctx context.Context) error {
		rows, err := s.db.QueryContext(ctx, statement)
		if err != nil {
			return err
		}
		defer rows.Close()
		for rows.Next() {
			var l Letter
			if err := rows.Scan(&l.ID, &l.Place, &l.Statement, &l.Sent, &l.Tries, &l.Trouble); err != nil {
				return err
			}
			all = append(all, l)
		}
		return rows.Err()
	})
	return all, s.trouble(err)
}
