package cli

import (
	"bytes"
	"errors"
	"flag"
	"os"
	"path/filepath"
	"rouleau/scenarios"
	"rouleau/scoring"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/rivo/uniseg"
)

var update = flag.Bool("update", false, "write the golden files anew; look at the difference before it is kept")

// call runs the program and gives what it printed.
func call(t *testing.T, args ...string) (stdout, stderr string, code int) {
	t.Helper()
	var out, notes bytes.Buffer
	code = Run(args, strings.NewReader(""), &out, &notes)
	return out.String(), notes.String(), code
}

// The grade of one run as it is printed. The golden file is our own earlier output: a change in it must be meant.
func TestGolden(t *testing.T) {
	path := filepath.Join("..", "..", "..", "testdata", "golden", "run-steady-oozing-spine-seed-1.txt")
	got, stderr, code := call(t, "run", "steady-oozing-spine", "--seed", "1")
	if code != exitDone || stderr != "" {
		t.Fatalf("code %d, %s", code, stderr)
	}
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); diff != "" {
		t.Errorf("if this is meant, run go test with -update (- golden, + now):\n%s", diff)
	}
}

func TestNothingIsWiderThanAScreen(t *testing.T) {
	calls := [][]string{{"--help"}, {"run", "steady-oozing-spine"}, {"run", "steady-oozing-spine", "--operator", "idle"}, {"list"}, {"version"},
		{"check", "steady-oozing-spine"}, {"calc", "bowl", "--feed-hct", "0.2", "--feed-protein", "20", "--fill-rate", "300", "--wash-rate", "300", "--wash-volume", "900"}}
	for _, name := range []string{"run", "replay", "check", "calc", "list", "version"} {
		calls = append(calls, []string{name, "--help"})
	}
	for _, name := range moduleNames() {
		calls = append(calls, []string{"calc", name, "--help"})
	}
	for _, args := range calls {
		out, stderr, code := call(t, args...)
		if code != exitDone || stderr != "" {
			t.Errorf("%v: code %d, %s", args, code, stderr)
		}
		for line := range strings.SplitSeq(out, "\n") {
			if n := uniseg.StringWidth(line); n > columns {
				t.Errorf("%v: %d columns: %s", args, n, line)
			}
			if strings.ContainsAny(line, "‹›") || strings.Contains(line, "%!") {
				t.Errorf("%v: a text is missing or has wrong values: %s", args, line)
			}
		}
	}
}

func TestHelpStatesExitCodesAndCautions(t *testing.T) {
	for _, args := range [][]string{{"--help"}, {"run", "--help"}, {"replay", "--help"}, {"check", "--help"}, {"calc", "--help"}, {"calc", "bowl", "--help"}} {
		out, _, _ := call(t, args...)
		flat := strings.Join(strings.Fields(out), " ")
		for _, want := range []string{"0 done; 1 the thing asked about is not right", "2 wrong usage; 3 a fault of ours or of the machine", "Not for treating anyone"} {
			if !strings.Contains(flat, want) {
				t.Errorf("%v does not say %q", args, want)
			}
		}
	}
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, errors.New("no space left on device") }

func TestOutputThatCannotBeWritten(t *testing.T) {
	var notes bytes.Buffer
	if code := Run([]string{"version"}, strings.NewReader(""), broken{}, &notes); code != exitTrouble || !strings.Contains(notes.String(), "could not be written") {
		t.Errorf("code %d, %s", code, notes.String())
	}
}

// A fault of ours ends with its own code and not with a trace of the stack.
func TestOurFault(t *testing.T) {
	modules = append(modules, module{name: "faulty", doc: "calc.bowl", run: func(values) []result { panic("deep inside") }})
	defer func() { modules = modules[:len(modules)-1] }()
	out, stderr, code := call(t, "calc", "faulty")
	if code != exitTrouble || out != "" || !strings.Contains(stderr, "a fault of this program") || !strings.Contains(stderr, "deep inside") {
		t.Errorf("code %d, output %q, %s", code, out, stderr)
	}
}

func TestWrap(t *testing.T) {
	long := strings.Repeat("wörter ", 40)
	got := wrap(long, "  - ", "    ")
	for line := range strings.SplitSeq(got, "\n") {
		if uniseg.StringWidth(line) > columns || strings.HasSuffix(line, " ") {
			t.Errorf("%q", line)
		}
	}
	if strings.Join(strings.Fields(got[4:]), " ") != strings.TrimSpace(long) {
		t.Error("words were lost")
	}
	if got := wrap("a\nb", "> ", "  "); got != "> a\n  b" {
		t.Errorf("%q", got)
	}
	if got := wrap(strings.Repeat("x", 150), "", "  "); got != strings.Repeat("x", 150) {
		t.Errorf("a word that is too long: %q", got)
	}
}

// A name in a file that somebody else made cannot colour, clear or retitle a terminal.
func TestTerminalIsNotObeyed(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.json")
	if err := os.WriteFile(path, []byte(`{"format": 1, "x\u001b[2J\u0007": 1}`), 0o600); err != nil {
		t.Fatal(err)
	}
	_, stderr, code := call(t, "replay", path)
	if code != exitNotRight || strings.ContainsAny(stderr, "\x1b\a") || !strings.Contains(stderr, "x\ufffd[2J\ufffd: this key is not known") {
		t.Errorf("code %d, %q", code, stderr)
	}
	if got := string(tame([]byte("a\n\tü\x1b\r"))); got != "a\n\tü\ufffd\ufffd" {
		t.Errorf("%q", got)
	}
}

func TestNumbersForPeople(t *testing.T) {
	for _, c := range []struct {
		value float64
		unit  string
		want  string
	}{
		{0.5761, "share", "0.58"}, {312.4, "mL", "312 mL"}, {24.53, "mL/min", "24.5 mL/min"}, {1, scenarios.YesNo, "yes"}, {0, scenarios.YesNo, "no"},
		{3, "times", "3 times"}, {-0.83, "g/dL", "-0.83 g/dL"},
	} {
		if got := scoring.ShowUnit(c.value, c.unit); got != c.want {
			t.Errorf("%g %s: %q, want %q", c.value, c.unit, got, c.want)
		}
	}
	for value, want := range map[float64]string{683.75: "683.8", 5312.905: "5313", 0: "0", 1.656e-5: "0.00001656", 3.03e-9: "3.03e-09", 0.6148: "0.6148", -915.316: "-915.3"} {
		if got := digits(value); got != want {
			t.Errorf("%g: %q, want %q", value, got, want)
		}
	}
	if got := clock(20 * (3600 + 62)); got != "1:01:02" {
		t.Error(got)
	}
}
