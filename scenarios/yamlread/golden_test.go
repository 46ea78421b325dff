// This file compares the faults of broken files, character by character, with
// what is kept beside them. go test -update writes them anew.

package yamlread

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write testdata/err/*.out anew")

func TestGoldenFaults(t *testing.T) {
	files, err := filepath.Glob("testdata/err/*.yaml")
	if err != nil || len(files) < 30 {
		t.Fatalf("%d files, %v", len(files), err)
	}
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			data, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			faults := Decode(filepath.Base(file), data, new(sample))
			if len(faults) == 0 || faults.Err() == nil {
				t.Fatal("no fault found")
			}
			var got strings.Builder
			if n, err := faults.WriteTo(&got); err != nil || n != int64(got.Len()) {
				t.Errorf("WriteTo says %d, %v for %d bytes", n, err, got.Len())
			}
			beside := strings.TrimSuffix(file, ".yaml") + ".out"
			if *update {
				if err := os.WriteFile(beside, []byte(got.String()), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(beside)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(string(want), got.String()); diff != "" {
				t.Errorf("- kept, + found now:\n%s", diff)
			}
			if again := Decode(filepath.Base(file), data, new(sample)); again.Error() != faults.Error() {
				t.Error("a second reading gives other faults")
			}
		})
	}
}
