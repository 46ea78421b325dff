// A program that plays a case as fast as it can is killed at random moments; what it leaves must be the case up to there, to
// the last bit, with every act that it had acknowledged.

package kills

import (
	"bufio"
	"flag"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/journal"
	"rouleau/cmd/rouleau-desk/session"
	"rouleau/scenarios"
	"rouleau/scoring/operators"
	"rouleau/sim"
)

var kills = flag.Int("kills", 12, "how many times the program is killed")

const (
	caseName  = "steady-oozing-spine"
	childMark = "ROULEAU_KILLS_FOLDER" // the journal's folder; set, the test binary is the program that is killed
	caseSeed  = 6
	frame     = 50 * time.Millisecond
)

func TestMain(m *testing.M) {
	if folder := os.Getenv(childMark); folder != "" {
		if err := child(folder, os.Stdout); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		os.Exit(0)
	}
	os.Exit(m.Run())
}

// hand plays a session by frames, an operator acting once a simulated second through the same acts as a person.
type hand struct {
	s     *session.Session
	who   *operators.Steady
	now   time.Time
	acted int64
	each  func(acts int) // called whenever the journal is up to date
}

func newHand(sc *scenarios.Scenario, o session.Options) *hand {
	h := &hand{s: session.New(sc, o), now: time.Unix(0, 0), acted: -1}
	h.who = operators.NewSteady(operators.SheetOf(sc, &h.s.Run.Case))
	h.s.Advance(h.now)
	h.s.Do([]bench.Act{{Do: bench.GoOn}, {Do: bench.GoOn}, {Do: bench.SetSpeed, Value: 20}})
	return h
}

// step lets one frame pass. Frames are of uneven length, as those of a window are.
func (h *hand) step(n int) {
	h.now = h.now.Add(frame + time.Duration(n%7)*time.Millisecond)
	h.s.Advance(h.now)
	h.s.Refresh()
	h.tell()
	second := h.s.Run.State.Tick / sim.TicksPerSecond
	if second == h.acted {
		return
	}
	h.acted = second
	var seen sim.Seen
	sim.View(&h.s.Run.Case, &h.s.Run.State, &seen)
	h.who.Act(&seen, func(a sim.Action) sim.Reason {
		why := h.s.View.May(a)
		h.s.Do([]bench.Act{{Sim: a}})
		h.tell()
		return why
	})
	for _, a := range slices.Clone(h.s.View.Alarms) {
		if !a.Known && second%7 == 0 {
			h.s.Do([]bench.Act{{Do: bench.Acknowledge, Alarm: a.Is}})
			h.tell()
		}
	}
}

func (h *hand) tell() {
	if h.each != nil {
		h.each(len(h.s.Run.Actions))
	}
}

// child plays the case and tells on out, after each accepted act, how many of the case's are in the journal.
func child(folder string, out io.Writer) error {
	sc, err := scenarios.Open(caseName)
	if err != nil {
		return err
	}
	j := journal.New(folder, journal.HeadOf(sc, caseSeed, false, "P-1", time.Unix(0, 0)))
	h := newHand(sc, session.Options{Seed: caseSeed, Journal: j})
	told := 0
	h.each = func(acts int) {
		if acts != told {
			told = acts
			fmt.Fprintln(out, acts)
		}
	}
	fmt.Fprintln(out, "begun")
	for n := 0; !h.s.Run.State.Ended; n++ {
		h.step(n)
	}
	fmt.Fprintln(out, "ended")
	time.Sleep(time.Minute) // to be killed
	return nil
}

// shown is what the screens show of the way of a case, without the lines about the interruption.
func shown(s *session.Session) string {
	log := s.View.Log
	for len(log) > 0 && s.View.Interrupted > 0 && (strings.Contains(log[len(log)-1].Text, "interruption") || strings.Contains(log[len(log)-1].Text, "time stands")) {
		log = log[:len(log)-1]
	}
	return fmt.Sprintf("%+v %v %+v %+v %v", *s.View.Charts, log, s.View.Said, s.View.Heard, s.View.Alarms)
}

func TestNoKillLosesAnAct(t *testing.T) {
	sc, err := scenarios.Open(caseName)
	if err != nil {
		t.Fatal(err)
	}
	began := time.Now()
	straight := newHand(sc, session.Options{Seed: caseSeed})
	for n := 0; !straight.s.Run.State.Ended; n++ {
		straight.step(n)
	}
	whole := time.Since(began)
	all := straight.s.Run.Actions
	if len(all) < 50 {
		t.Fatalf("only %d acts in the whole case", len(all))
	}
	chance := rand.New(rand.NewPCG(1, 2))
	least, most, midway := int64(1<<62), int64(0), 0
	for i := range *kills {
		folder := filepath.Join(t.TempDir(), strconv.Itoa(i))
		wait := time.Duration(chance.Float64() * 0.9 * float64(whole))
		acknowledged, ended := killedAfter(t, folder, wait)
		tick := resumed(t, sc, folder, acknowledged, ended)
		least, most = min(least, tick), max(most, tick)
		if tick < straight.s.Run.State.Tick {
			midway++
		}
	}
	t.Logf("%d kills, %d of them before the end of the case, between ticks %d and %d of %d", *kills, midway, least, most, straight.s.Run.State.Tick)
	if midway < *kills/3 || least == most {
		t.Errorf("only %d of %d kills came while the case was played: the test says little", midway, *kills)
	}
}

// killedAfter starts the program, kills it after a while, and gives the last act that it acknowledged.
func killedAfter(t *testing.T, folder string, wait time.Duration) (acknowledged int, ended bool) {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(self)
	cmd.Env = append(os.Environ(), childMark+"="+folder)
	cmd.Stderr = os.Stderr
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	lines := bufio.NewScanner(out)
	begun := false
	for lines.Scan() {
		text := lines.Text()
		switch {
		case text == "begun":
			begun = true
			go func() {
				time.Sleep(wait)
				_ = cmd.Process.Kill()
			}()
		case text == "ended":
			ended = true
		default:
			if n, err := strconv.Atoi(text); err == nil { // the last line may be cut off by the kill: then it is a smaller number
				acknowledged = max(acknowledged, n)
			}
		}
	}
	if err := cmd.Wait(); err == nil || !begun {
		t.Fatalf("the program was not killed: begun %v, %v", begun, err)
	}
	return acknowledged, ended
}

// resumed goes on with the case and compares it with one that was played straight to the same moment.
func resumed(t *testing.T, sc *scenarios.Scenario, folder string, acknowledged int, ended bool) int64 {
	t.Helper()
	found, faults := journal.List(folder)
	if len(found) != 1 || len(faults) != 0 || found[0].Busy {
		t.Fatalf("found %+v, faults %v", found, faults)
	}
	j, err := journal.Open(found[0].Path)
	if err != nil {
		t.Fatal(err)
	}
	defer j.Close()
	own, err := j.Record().Scenario()
	if err != nil {
		t.Fatal(err)
	}
	s, err := session.Resume(own, j, session.Options{})
	if err != nil {
		t.Fatal(err)
	}
	tick, acts := s.Run.State.Tick, s.Run.Actions
	if len(acts) < acknowledged {
		t.Errorf("killed at tick %d: %d acts were acknowledged, and %d are left", tick, acknowledged, len(acts))
	}
	if ended && !s.Run.State.Ended {
		t.Errorf("the case had ended, and stands at tick %d", tick)
	}
	if !sameAsStraight(sc, s) {
		t.Errorf("killed at tick %d with %d acts: the case is another one than when it is played straight", tick, len(acts))
	}
	return tick
}

// sameAsStraight plays the case again up to the moment of a resumed one: the same tick, and the same number of acts.
func sameAsStraight(sc *scenarios.Scenario, s *session.Session) bool {
	h := newHand(sc, session.Options{Seed: caseSeed})
	want, hash := shown(s), s.Run.State.Hash()
	same := func() bool {
		if h.s.Run.State.Tick != s.Run.State.Tick || len(h.s.Run.Actions) != len(s.Run.Actions) || h.s.Run.State.Hash() != hash {
			return false
		}
		h.s.Refresh()
		return slices.Equal(h.s.Run.Actions, s.Run.Actions) && shown(h.s) == want
	}
	found := false
	h.each = func(int) { found = found || same() }
	for n := 0; !found && h.s.Run.State.Tick <= s.Run.State.Tick && !h.s.Run.State.Ended; n++ {
		h.step(n)
	}
	return found
}
