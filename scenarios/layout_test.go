package scenarios

import (
	"bytes"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// The library is kept in canonical layout, and laying a file out changes neither its meaning nor, twice, its text.
func TestLayoutOfScenarios(t *testing.T) {
	for _, pattern := range []string{"library/*.yaml", "testdata/*.yaml", "testdata/warn/*.yaml", "template/*.yaml"} {
		files, err := filepath.Glob(filepath.FromSlash(pattern))
		if err != nil || len(files) == 0 {
			t.Fatalf("no files in %s", pattern)
		}
		for _, file := range files {
			data, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			data = withLF(data)
			out, faults := Format(file, data)
			if len(faults) > 0 {
				t.Errorf("%s:\n%v", file, faults)
				continue
			}
			before, _ := Parse(file, data)
			after, faults := Parse(file, out)
			if len(faults) > 0 || !reflect.DeepEqual(before.File, after.File) {
				t.Errorf("%s means something else, or has faults: %v", file, faults)
			}
			crlf, faults := Format(file, bytes.ReplaceAll(data, []byte("\n"), []byte("\r\n")))
			if len(faults) > 0 || !bytes.Equal(crlf, out) {
				t.Errorf("%s is laid out in another way with other line ends: %v", file, faults)
			}
			if kept := pattern[0] == 'l' || pattern[1] == 'e' && pattern[2] == 'm'; kept && !bytes.Equal(out, data) {
				t.Errorf("%s: run rouleau fmt on it (- now, + laid out):\n%s", file, cmp.Diff(string(data), string(out)))
			}
			if twice, faults := Format(file, out); len(faults) > 0 || !bytes.Equal(twice, out) {
				t.Errorf("%s: a second time it changes, or has faults: %v", file, faults)
			}
		}
	}
}
