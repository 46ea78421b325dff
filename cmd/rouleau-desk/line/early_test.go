// What is said without a window, and with which exit code.

package line

import (
	"bytes"
	"strings"
	"testing"
)

func TestWhatNeedsNoWindow(t *testing.T) {
	for _, k := range []struct {
		args        string
		display     string
		code        int
		ends        bool
		out, stderr string
	}{
		{"--help", "", Done, true, "usage: rouleau-desk", ""},
		{"-h", ":1", Done, true, "--scale S", ""},
		{"case.yaml --help", "", Done, true, "licensed practice come first", ""},
		{"--version", "", Done, true, "scenario format", ""},
		{"--nosuch", "", Usage, true, "", "nosuch\nrouleau-desk --help"},
		{"--scale 9", ":1", Usage, true, "", "the scale must lie between 1 and 2.5"},
		{"one two", ":1", Usage, true, "", "two cases were named"},
		{"--watch a.json b.yaml", ":1", Usage, true, "", "give one"},
		{"--seed 3", ":1", Usage, true, "", "belong to a case"},
		{"case.yaml --seed 3", ":1", Done, false, "", ""},
		{"", ":1", Done, false, "", ""},
	} {
		var out, stderr bytes.Buffer
		code, ends := Early(strings.Fields(k.args), k.display, &out, &stderr)
		if code != k.code || ends != k.ends || !strings.Contains(out.String(), k.out) || !strings.Contains(stderr.String(), k.stderr) ||
			(k.out == "") != (out.Len() == 0) || (k.stderr == "") != (stderr.Len() == 0) {
			t.Errorf("%q: code %d, ends %v, out %q, stderr %q", k.args, code, ends, out.String(), stderr.String())
		}
	}
}

func TestFlagsMayStandBehindTheCase(t *testing.T) {
	s, err := Parse(strings.Fields("--assess mine.yaml --seed 5 --frames-pace 2"), nil)
	if err != nil || s.Scenario != "mine.yaml" || !s.Assessment || s.Seed != 5 || s.Frames.Pace != 2 || s.Frames.Cases != 1 {
		t.Errorf("%+v, %v", s, err)
	}
}
