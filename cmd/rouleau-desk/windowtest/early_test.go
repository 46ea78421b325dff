// What is said where there is no display: the graphics library would end the program with a panic before main begins.

package windowtest

import (
	"errors"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

func TestWithoutADisplayThingsAreSaid(t *testing.T) {
	program := build(t)
	env := slices.DeleteFunc(os.Environ(), func(v string) bool {
		return strings.HasPrefix(v, "DISPLAY=") || strings.HasPrefix(v, "WAYLAND_DISPLAY=")
	})
	for _, k := range []struct {
		args, says string
		code       int
		display    string
	}{
		{"--help", "usage: rouleau-desk", 0, ""},
		{"--version", "scenario format", 0, ""},
		{"--nosuch", "--help lists the flags", 2, ""},
		{"", "there is no display here", 3, ""},
		{"steady-oozing-spine", "there is no display here", 3, ""},
		{"--help", "usage: rouleau-desk", 0, "DISPLAY=:no-such-display"},
	} {
		cmd := exec.Command(program, strings.Fields(k.args)...)
		cmd.Env = append(slices.Clone(env), k.display)
		text, err := cmd.CombinedOutput()
		code := 0
		if exit := (*exec.ExitError)(nil); errors.As(err, &exit) {
			code = exit.ExitCode()
		}
		if code != k.code || !strings.Contains(string(text), k.says) || strings.Contains(string(text), "panic") || strings.Contains(string(text), "goroutine") {
			t.Errorf("%q: exit code %d, %s", k.args, code, text)
		}
	}
}
