// Package booktest holds what tests of the book share: a store in memory and a book with people in it. This file holds the store.
package booktest

import (
	"slices"
	"sync"

	"rouleau/scoring/book"
)

// Memory is a store that forgets everything at the end of a test.
type Memory struct {
	Name string
	lock sync.Mutex
	All  []book.Row
	Kept []book.Kept
}

// Origin is the name of the book.
func (m *Memory) Origin() string { return m.Name }

// Rows gives those from one place on.
func (m *Memory) Rows(from int64, each func(book.Row) error) error {
	m.lock.Lock()
	rows := slices.Clone(m.All[from:])
	m.lock.Unlock()
	for _, r := range rows {
		if err := each(r); err != nil {
			return err
		}
	}
	return nil
}

// Attachment is that of a row.
func (m *Memory) Attachment(at int64) ([]byte, error) {
	m.lock.Lock()
	defer m.lock.Unlock()
	return m.All[at].Attachment, nil
}

// Checkpoints are all that were kept.
func (m *Memory) Checkpoints() ([]book.Kept, error) {
	m.lock.Lock()
	defer m.lock.Unlock()
	return slices.Clone(m.Kept), nil
}

// Append adds a row.
func (m *Memory) Append(at int64, row book.Row, after book.Kept, forget []int64) error {
	m.lock.Lock()
	defer m.lock.Unlock()
	if at != int64(len(m.All)) {
		return book.ErrMoved
	}
	m.All, m.Kept = append(m.All, row), append(m.Kept, after)
	for _, k := range forget {
		m.All[k].Body, m.All[k].Attachment = nil, nil
	}
	return nil
}
