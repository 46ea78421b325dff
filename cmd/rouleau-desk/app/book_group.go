// What takes long over the whole book: verifying all of it, and what decisions cost the group.

package app

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ledgerdesk"
	"rouleau/cmd/rouleau/group"
	"rouleau/cmd/rouleau/ledger"
	"rouleau/cmd/rouleau/page"
	"rouleau/scoring/book"
)

// verifyBook checks what is stored and plays every attempt again.
func (a *App) verifyBook() {
	b := &a.book
	if b.job != nil {
		return
	}
	p := b.places
	b.view.Check = nil
	a.bookDo(words.Say("desk_book.verifying"), true, func(j *bookJob) func() {
		got, err := ledger.Verify(j.ctx, p, ledger.Verification{Workers: spare(), Progress: func(done, all int, _ time.Time) { j.progress(done, all) }})
		switch {
		case errors.Is(err, context.Canceled):
			return func() { b.view.Notice = words.Say("desk_book.verify_stopped") }
		case err != nil:
			return func() { b.view.Notice = err.Error() }
		}
		k := checkOf(got)
		return func() { b.view.Check = k }
	})
}

// checkOf is what came of it, the worst first.
func checkOf(got *ledger.Verified) *ledgerdesk.Check {
	k := &ledgerdesk.Check{Good: got.Worst() <= book.Forgotten, Records: len(got.Findings), Root: got.Root, Findings: got.Log}
	for v := book.Broken; ; v-- {
		if n := got.Count(v); n > 0 {
			k.Counts = append(k.Counts, words.Say("desk_book.count", n, ledger.VerdictWords(v)))
		}
		for i := range got.Findings {
			if f := &got.Findings[i]; f.Verdict == v && f.What != "" {
				k.Findings = append(k.Findings, words.Say("desk_book.finding", f.Seq+1, f.What))
			}
		}
		if v == 0 {
			return k
		}
	}
}

// bookCosts plays the attempts in the book otherwise, as for a class.
func (a *App) bookCosts() {
	b := &a.book
	l := b.ledger
	if l == nil || b.job != nil {
		return
	}
	b.view.NoCost, b.view.Class = "", nil
	a.bookDo(words.Say("desk_book.costing"), true, func(j *bookJob) func() {
		class, err := costsOf(l, j)
		return func() {
			switch {
			case errors.Is(err, group.ErrFew):
				b.view.NoCost = words.Say("desk_book.cost_few", group.LeastPeople)
			case errors.Is(err, group.ErrNobody):
				b.view.NoCost = words.Say("desk_book.cost_none")
			case errors.Is(err, context.Canceled):
				b.view.NoCost = words.Say("desk_book.cost_stopped")
			case err != nil:
				b.view.NoCost = err.Error()
			default:
				b.view.Class = class
			}
		}
	})
}

// costsOf lays the attempts of all records in force into a folder for a while, where those of a class are read from. They hold codes
// and no names.
func costsOf(l *ledger.Ledger, j *bookJob) (*page.Page, error) {
	dir, err := os.MkdirTemp("", "rouleau-book-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	for i, e := range l.Entries {
		if _, ok := e.Body.(*book.SignOff); !ok || !e.InForce() {
			continue
		}
		if err := j.ctx.Err(); err != nil {
			return nil, err
		}
		data, err := e.Attachment()
		if err != nil {
			return nil, err
		}
		if err := os.WriteFile(filepath.Join(dir, fmt.Sprintf("%06d.json", i)), data, 0o600); err != nil {
			return nil, err
		}
	}
	wishes := group.Wishes{Workers: spare(), Progress: j.progress}
	folder, err := group.Read(dir, wishes)
	if err != nil {
		return nil, err
	}
	g, err := folder.Play(j.ctx, wishes)
	if err != nil {
		return nil, err
	}
	return g.Page(), nil
}
