// The competency book in the window: opened, read and written beside it, so that no frame waits for the book, a server, a passphrase
// or an attempt that is played again. While a job goes on, the book is the job's alone.

package app

import (
	"context"
	"sync/atomic"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ledgerdesk"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau/ledger"
)

// bookPages are the pages of the book, and the book while they are open.
type bookPages struct {
	on     bool
	view   ledgerdesk.View
	desk   *ledgerdesk.Desk
	places ledger.Places
	ledger *ledger.Ledger // nil while none is open
	draft  *ledger.Drafted
	job    *bookJob
	serial int                  // of what was read last
	may    map[[2]string]string // who may sign for whom, as far as it was asked since the book was read
}

// bookJob is what goes on beside the window. What it gives is run between two frames.
type bookJob struct {
	done, all atomic.Int64
	came      chan func() // holds one
	began     time.Time
	ctx       context.Context
	stop      context.CancelFunc
}

func newBookPages() bookPages {
	return bookPages{desk: ledgerdesk.New(), may: map[[2]string]string{}}
}

// haveRead takes over what was read of the book.
func (a *App) haveRead(read ledgerdesk.Book, notice string) {
	b := &a.book
	b.serial++
	read.Serial = b.serial
	b.view.Book = read
	clear(b.may)
	if notice != "" {
		b.view.Notice = notice
	}
}

// bookDo does something beside the window, unless something goes on already.
func (a *App) bookDo(text string, stops bool, do func(j *bookJob) func()) {
	b := &a.book
	if b.job != nil {
		return
	}
	j := &bookJob{came: make(chan func(), 1), began: a.now}
	j.ctx, j.stop = context.WithCancel(context.Background())
	b.job = j
	b.view.Work = ledgerdesk.Work{Text: text, Stops: stops}
	go func() { j.came <- do(j) }()
}

// tellAfter is how long something goes on before it is told of.
const tellAfter = 250 * time.Millisecond

func (j *bookJob) progress(done, all int) {
	j.done.Store(int64(done))
	j.all.Store(int64(all))
}

// bookCame takes over what has come of a job since the last frame.
func (a *App) bookCame() {
	b := &a.book
	j := b.job
	if j == nil {
		return
	}
	w := &b.view.Work
	w.Done, w.All, w.Told = int(j.done.Load()), int(j.all.Load()), a.now.Sub(j.began) >= tellAfter
	select {
	case then := <-j.came:
		j.stop()
		b.job, b.view.Work = nil, ledgerdesk.Work{}
		then()
		switch {
		case !b.on:
			b.letGo()
		case b.view.Stage == ledgerdesk.Opening && b.job == nil:
			b.letGo() // the pages were opened anew while this went on: what they show is read anew
			a.openBook()
		}
	default:
	}
}

// letGo closes the book beside the window.
func (b *bookPages) letGo() {
	if l := b.ledger; l != nil {
		b.ledger, b.draft = nil, nil
		go l.Close()
	}
}

// shut closes the book when the window has closed. What goes on is waited for, so that nothing is left half written or lying
// about; what can be stopped is.
func (b *bookPages) shut() {
	b.on = false
	if j := b.job; j != nil {
		j.stop()
		then := <-j.came
		b.job = nil
		then()
	}
	if b.ledger != nil {
		b.ledger.Close()
		b.ledger = nil
	}
}

// leaveBook goes home. What was written about attempts stays until the window closes.
func (a *App) leaveBook() {
	b := &a.book
	b.on = false
	if b.job == nil {
		b.letGo()
	} else {
		b.job.stop()
	}
	a.goHome()
}

// bookFrame runs a frame of the pages.
func (a *App) bookFrame(c *ui.Core) {
	b := &a.book
	for _, act := range b.desk.Frame(c, &b.view) {
		a.bookAct(act)
		if !b.on || a.begun.session != nil {
			c.Focus(0)
			return
		}
	}
}

func (a *App) bookAct(act ledgerdesk.Act) {
	b := &a.book
	switch act.Do {
	case ledgerdesk.Leave:
		a.leaveBook()
	case ledgerdesk.Again:
		a.openBook()
	case ledgerdesk.Found:
		a.foundBook(act.Founding)
	case ledgerdesk.Look:
		a.reviewBook(act.Path)
	case ledgerdesk.LookAway:
		b.view.Review = nil
	case ledgerdesk.Result:
		a.bookTell(a.resultOfFile(act.Path))
	case ledgerdesk.ResultOf:
		a.resultOfRecord(act.ID)
	case ledgerdesk.LookOver:
		a.draftBook(act)
	case ledgerdesk.BackToForm:
		if b.job == nil { // else it is being signed
			b.view.Draft, b.draft = nil, nil
		}
	case ledgerdesk.Sign:
		a.signBook(act.Phrase)
	case ledgerdesk.Understood:
		b.view.Signed = nil
	case ledgerdesk.Show:
		a.showRecord(act.ID)
	case ledgerdesk.ShowNone:
		if b.job == nil {
			b.view.Record = nil
		}
	case ledgerdesk.VerifyOne:
		a.verifyRecord(act.ID)
	case ledgerdesk.Rate:
		a.rateRecord(act)
	case ledgerdesk.Save:
		a.saveSheet(act)
	case ledgerdesk.Verify:
		a.verifyBook()
	case ledgerdesk.Costs:
		a.bookCosts()
	case ledgerdesk.Stop:
		if b.job != nil {
			b.job.stop()
		}
	case ledgerdesk.Read:
		b.view.Notice = ""
	}
}

// wayHome is what the way from a case is called where it leads to the book from which the case was opened, else "".
func (b *bookPages) wayHome() string {
	if !b.on {
		return ""
	}
	return words.Say("desk_book.back_to_book")
}

// bookTell tells on the pages what went wrong.
func (a *App) bookTell(err error) {
	if err != nil {
		a.book.view.Notice = err.Error()
	}
}

// bookDrop turns files away that are dragged onto the pages, on which something may be half written.
func (a *App) bookDrop() {
	if a.begun.session != nil {
		a.notice(words.Say("desk_book.drop_later"))
		return
	}
	a.book.view.Notice = words.Say("desk_book.drop_later")
}

// mayBook says why somebody cannot sign for a learner, "" where nothing is in the way. It is asked in every frame, and answered
// anew only when the book has been read anew.
func (a *App) mayBook(learner, assessor string) string {
	b := &a.book
	key := [2]string{learner, assessor}
	why, known := b.may[key]
	switch {
	case known:
		return why
	case b.job != nil || b.ledger == nil:
		return words.Say("desk_book.busy")
	}
	if err := b.ledger.MaySign(learner, assessor); err != nil {
		why = err.Error()
	}
	b.may[key] = why
	return why
}
