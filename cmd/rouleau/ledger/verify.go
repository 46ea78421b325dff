package ledger

import (
	"context"
	"runtime"
	"sync"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/shelf"
	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/book"
)

// Verifying a book: what is stored, and every attempt played again, several at once.

// Verification is what to verify, and how.
type Verification struct {
	NoReplay bool
	Against  []string // files of checkpoints that were kept elsewhere
	Workers  int      // 0: as many as there are processors
	Progress func(done, all int, since time.Time)
}

// Verified is what came of it.
type Verified struct {
	Findings []book.Finding // of every record
	Log      []string       // what is wrong with the log as a whole
	Origin   string
	Kept     int // checkpoints kept elsewhere that were compared
	Replayed int
	Root     string
}

// Verify reads a book, damaged or not, and changes nothing. Stopped, it gives the error of the context after the attempts that are
// being played, and nothing else.
func Verify(ctx context.Context, p Places, v Verification) (*Verified, error) {
	var elsewhere [][]byte
	for _, file := range v.Against {
		signed, err := readCheckpoint(file)
		if err != nil {
			return nil, err
		}
		elsewhere = append(elsewhere, signed)
	}
	s, err := shelf.Open(p.Book)
	if err != nil {
		return nil, err
	}
	defer s.Close()
	c, err := book.Read(s, elsewhere...)
	if err != nil {
		return nil, err
	}
	out := &Verified{Findings: c.Findings, Log: c.Log, Origin: s.Origin(), Kept: len(elsewhere)}
	for i, e := range c.State.Entries {
		if f := &out.Findings[i]; f.Verdict == book.Forgotten {
			f.What = words.Say("ledger.deleted_by", e.ForgottenBy)
		}
	}
	if root, err := c.State.Root(); err == nil {
		out.Root = root.String()
	}
	if !v.NoReplay {
		out.replay(ctx, c, v)
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	return out, nil
}

// replay plays all attempts again.
func (out *Verified) replay(ctx context.Context, c *book.Check, v Verification) {
	var todo []int64
	for i, e := range c.State.Entries {
		if _, ok := e.Body.(*book.SignOff); ok && c.Findings[i].Verdict == book.Sound {
			todo = append(todo, int64(i))
		}
	}
	out.Replayed = len(todo)
	workers := v.Workers
	if workers <= 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	work := make(chan int64)
	var group sync.WaitGroup
	var lock sync.Mutex
	yards := &yards{all: map[yardKey]func() scoring.Yardstick{}}
	began, done := time.Now(), 0
	for range min(workers, len(todo)) {
		group.Go(func() {
			for seq := range work {
				if ctx.Err() != nil {
					continue
				}
				f := c.ReplayBeside(seq, yards.of)
				lock.Lock()
				out.Findings[seq] = f
				done++
				if v.Progress != nil {
					v.Progress(done, len(todo), began)
				}
				lock.Unlock()
			}
		})
	}
	for _, seq := range todo {
		work <- seq
	}
	close(work)
	group.Wait()
}

// verdictKeys are what each verdict means.
var verdictKeys = [...]string{book.Sound: "book_cli.verdict_sound", book.Exact: "book_cli.verdict_exact", book.Forgotten: "book_cli.verdict_deleted",
	book.SameDecision: "book_cli.verdict_bits", book.NoModel: "book_cli.verdict_model", book.Mismatch: "book_cli.verdict_mismatch", book.Broken: "book_cli.verdict_damaged"}

// VerdictWords says what a verdict means.
func VerdictWords(v book.Verdict) string { return words.Say(verdictKeys[v]) }

// Count counts the records of a verdict.
func (out *Verified) Count(v book.Verdict) int {
	n := 0
	for i := range out.Findings {
		if out.Findings[i].Verdict == v {
			n++
		}
	}
	return n
}

// Worst is the worst verdict; a fault of the log as a whole is damage.
func (out *Verified) Worst() book.Verdict {
	worst := book.Sound
	if len(out.Log) > 0 {
		worst = book.Broken
	}
	for i := range out.Findings {
		worst = max(worst, out.Findings[i].Verdict)
	}
	return worst
}

// yards keeps yardsticks, so that `steady` plays a case once for all who were given it.
type yards struct {
	lock sync.Mutex
	all  map[yardKey]func() scoring.Yardstick
}

type yardKey struct {
	scenario   string // hash of its text
	seed       uint64
	assessment bool
}

func (y *yards) of(sc *scenarios.Scenario, seed uint64, assessment bool) scoring.Yardstick {
	key := yardKey{sc.Hash(), seed, assessment}
	y.lock.Lock()
	play := y.all[key]
	if play == nil {
		play = sync.OnceValue(func() scoring.Yardstick { return scoring.PlayYardstick(sc, seed, assessment) })
		y.all[key] = play
	}
	y.lock.Unlock()
	return play()
}
