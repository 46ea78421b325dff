// What is said without a window: help, the version, a slip in the command line, and that there is no display.

package line

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"runtime"

	"rouleau/assets/words"
	"rouleau/scenarios"
	"rouleau/scoring/attempt"
	"rouleau/sim"
)

// Exit codes, as those of the command line: 1 the thing asked about is not right, 2 wrong usage, 3 a fault of ours or of the
// machine.
const (
	Done  = 0
	Wrong = 1
	Usage = 2
	Fault = 3
)

// Early does what needs no window and tells whether the program is to end with that, and with which exit code. display is the
// variable that names one.
func Early(args []string, display string, out, stderr io.Writer) (code int, ends bool) {
	var help bytes.Buffer
	s, err := Parse(args, &help)
	switch {
	case errors.Is(err, flag.ErrHelp):
		help.WriteTo(out)
		return Done, true
	case err != nil:
		fmt.Fprintln(stderr, err)
		fmt.Fprintln(stderr, words.Say("desk.help_lists"))
		return Usage, true
	case s.Version:
		fmt.Fprintln(out, words.Say("cli.version", sim.ModelVersion, scenarios.FormatVersion, attempt.FormatVersion))
		return Done, true
	case display == "" && needsVariable(runtime.GOOS):
		fmt.Fprintln(stderr, words.Say("desk.no_display"))
		return Fault, true
	}
	return Done, false
}

// needsVariable tells whether windows of a system are found by a variable of the environment. One that names a display which
// does not answer is not found out here.
func needsVariable(system string) bool {
	switch system {
	case "linux", "freebsd", "netbsd", "openbsd":
		return true
	}
	return false
}
