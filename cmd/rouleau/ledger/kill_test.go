package ledger

import (
	"bufio"
	"crypto/rand"
	"flag"
	"fmt"
	"io"
	mathrand "math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"rouleau/cmd/rouleau/shelf"
	"rouleau/cmd/rouleau/shelf/pgtest"
	"rouleau/scoring/attempt"
	"rouleau/scoring/book"
	"rouleau/scoring/book/booktest"
)

// A program that writes to a book as fast as it can is killed at random moments. What it leaves must be a sound book: no half of a
// record, none lost of those that it had acknowledged, and one that can be written to again.

var kills = flag.Int("kills", 25, "how often the program that writes is killed")

// The program that is killed is this test's own; these variables tell it what to do.
const (
	childPlace = "ROULEAU_KILLS_BOOK"    // where the book is
	childKey   = "ROULEAU_KILLS_KEY"     // an assessor's, so that no passphrase is waited for
	childAdmin = "ROULEAU_KILLS_ADMIN"   // and an administrator's
	childFile  = "ROULEAU_KILLS_ATTEMPT" // an attempt to sign off
	childLimit = "ROULEAU_KILLS_LIMIT"   // the largest file that it may write, in bytes
	childReads = "ROULEAU_KILLS_READS"   // it verifies the book before it writes
)

// child writes records until it is killed, or until it cannot, and tells each on out once it is written.
func child(out io.Writer) error {
	s, err := shelf.Open(os.Getenv(childPlace))
	if err != nil {
		return err
	}
	b, err := book.Open(s, rand.Reader, func() time.Time { return time.Now().AddDate(20, 0, 0) }) // after all that is in the test's book
	if err != nil {
		return err
	}
	if os.Getenv(childReads) != "" {
		c, err := book.Read(s)
		if err != nil || c.Broken() != "" {
			return fmt.Errorf("%w %s", err, c.Broken())
		}
		fmt.Fprintln(out, "sound", c.State.Size())
	}
	var keys [2]*book.Signer
	for i, name := range []string{childKey, childAdmin} {
		var seed []byte
		if _, err := fmt.Sscanf(os.Getenv(name), "%x", &seed); err != nil {
			return err
		}
		if keys[i], err = book.SignerOf(seed); err != nil {
			return err
		}
	}
	data, err := os.ReadFile(os.Getenv(childFile))
	if err != nil {
		return err
	}
	a, err := attempt.Parse("attempt", data)
	if err != nil {
		return err
	}
	if err := limited(os.Getenv(childLimit)); err != nil {
		return err
	}
	fmt.Fprintln(out, "begun")
	last := ""
	for n := 0; ; n++ {
		var e *book.Entry
		switch n % 5 {
		case 3:
			so := book.Draft(a)
			so.Learner, so.Assessor, so.For, so.Date, so.Due, so.Outcome = booktest.Trainee, booktest.First, "perfusionist", "2031-05-14T10:00:00Z", "2034-05-14", book.Competent
			so.MarkSetBy = "as the scenario has it"
			if e, err = b.Write(so, data, keys[0]); err == nil {
				last = e.Leaf.ID
			}
		case 4:
			e, err = b.Write(&book.Forget{Of: last, By: booktest.Admin, Reason: "on wish"}, nil, keys[1])
		default:
			e, err = b.Write(&book.Event{Learner: booktest.Trainee, By: booktest.First, What: book.EventAway, Date: "2031-05-11", Reason: strings.Repeat("away ", 1+n%300)}, nil, keys[0])
		}
		if err != nil {
			return err
		}
		fmt.Fprintln(out, e.Seq, e.Leaf.ID)
	}
}

// killing is a book on which the program works, with what it acknowledged so far.
type killing struct {
	place string
	env   []string
	told  map[int64]string
}

// started makes a new book for the program.
func started(t *testing.T, place string) *killing {
	t.Helper()
	s, err := shelf.Create(place, origin)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	b := booktest.New(t, s)
	k := &killing{place: place, told: map[int64]string{}}
	path := file(t, t.TempDir(), "attempt.json", attemptOf(t, done{seed: 7, by: booktest.Trainee}))
	k.env = append(os.Environ(), childPlace+"="+place, childFile+"="+path, fmt.Sprintf("%s=%x", childKey, b.Keys[booktest.First].Seed()),
		fmt.Sprintf("%s=%x", childAdmin, b.Keys[booktest.Admin].Seed()))
	return k
}

// run starts the program, kills it some time after it has begun, and takes note of what it acknowledged. It gives what the program
// said when it ended by itself.
func (k *killing) run(t *testing.T, wait time.Duration, more ...string) (trouble string) {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	c := exec.Command(self)
	c.Env = append(k.env, more...)
	var errs strings.Builder
	c.Stderr = &errs
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	lines := bufio.NewReader(out)
	for {
		line, err := lines.ReadString('\n')
		if err != nil {
			break // what has no end of line was not acknowledged
		}
		if line == "begun\n" {
			if wait >= 0 {
				time.AfterFunc(wait, func() { _ = c.Process.Kill() })
			}
			continue
		}
		number, id, ok := strings.Cut(strings.TrimSpace(line), " ")
		seq, err := strconv.ParseInt(number, 10, 64)
		if !ok || err != nil {
			t.Fatalf("the program says %q", line)
		}
		k.told[seq] = id
	}
	_ = c.Wait()
	if c.ProcessState.Exited() {
		return errs.String()
	}
	return ""
}

// whole checks that the book is sound and holds everything that was acknowledged.
func (k *killing) whole(t *testing.T) int64 {
	t.Helper()
	s, err := shelf.Open(k.place)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	c, err := book.Read(s)
	if err != nil {
		t.Fatal(err)
	}
	if broken := c.Broken(); broken != "" {
		t.Fatal(broken)
	}
	for seq, id := range k.told {
		if seq >= c.State.Size() || c.State.Entries[seq].Leaf.ID != id {
			t.Fatalf("record %d was acknowledged and is lost", seq)
		}
	}
	return c.State.Size()
}

func TestNoKillLosesARecord(t *testing.T) {
	t.Run("sqlite", func(t *testing.T) {
		killed(t, *kills, func() string { return filepath.Join(t.TempDir(), strconv.Itoa(mathrand.Int()), "book") })
	})
	t.Run("postgresql", func(t *testing.T) { killed(t, max(3, *kills/10), func() string { return pgtest.Database(t) }) })
}

func killed(t *testing.T, times int, place func() string) {
	const each = 10 // kills of one book
	chance := mathrand.New(mathrand.NewPCG(3, 4))
	var k *killing
	written, more, size := 0, 0, int64(0)
	for n := range times {
		if n%each == 0 {
			k = started(t, place())
			size = k.whole(t)
		}
		before := len(k.told)
		if said := k.run(t, time.Duration(chance.Float64()*float64(150*time.Millisecond))); said != "" {
			t.Fatalf("the program ended by itself: %s", said)
		}
		told := len(k.told) - before
		written += told
		switch now := k.whole(t); now - size - int64(told) {
		case 0:
			size = now
		case 1: // the last one was written, and the kill came before it was told: that is no loss
			more++
			size = now
		default:
			t.Fatalf("%d records, then %d with %d acknowledged", size, now, told)
		}
	}
	t.Logf("killed %d times, with %d records acknowledged; %d times one more was written", times, written, more)
	if written < times {
		t.Errorf("only %d records were written in %d runs: this test says little", written, times)
	}
}
