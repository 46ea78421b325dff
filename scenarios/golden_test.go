// This file compares the faults of broken scenarios, and the warnings of suspicious ones, character by character with what
// is kept beside them. go test -update writes them anew.

package scenarios

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rouleau/scenarios/yamlread"
)

var update = flag.Bool("update", false, "write the .out files anew")

// golden compares what a reading of every file of a folder gives with the .out beside it.
func golden(t *testing.T, folder string, least int, of func(name string, data []byte) yamlread.Faults) {
	files, err := filepath.Glob(filepath.Join("testdata", folder, "*.yaml"))
	if err != nil || len(files) < least {
		t.Fatalf("%d files, %v", len(files), err)
	}
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			data, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			found := of(filepath.Base(file), data)
			if len(found) == 0 {
				t.Fatal("nothing found")
			}
			got := found.Error() + "\n"
			beside := strings.TrimSuffix(file, ".yaml") + ".out"
			if *update {
				if err := os.WriteFile(beside, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(beside)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(strings.ReplaceAll(string(want), "\r\n", "\n"), got); diff != "" {
				t.Errorf("- kept, + found now:\n%s", diff)
			}
		})
	}
}

func TestFaultsOfBrokenFiles(t *testing.T) {
	golden(t, "err", 30, func(name string, data []byte) yamlread.Faults {
		s, faults := Parse(name, data)
		if s != nil {
			t.Errorf("%s: a broken file gave a scenario", name)
		}
		return faults
	})
}

func TestWarningsOfSuspiciousFiles(t *testing.T) {
	golden(t, "warn", 6, func(name string, data []byte) yamlread.Faults {
		s, faults := Parse(name, data)
		if len(faults) > 0 {
			t.Fatalf("%s has faults:\n%v", name, faults)
		}
		return s.Warnings
	})
}

func TestFileTooLarge(t *testing.T) {
	data := []byte(strings.Repeat("# padding\n", yamlread.MaxBytes/10+1))
	s, faults := Parse("large.yaml", data)
	if s != nil || len(faults) != 1 || !strings.Contains(faults[0].Message, "too large") {
		t.Errorf("got %v", faults)
	}
	file := filepath.Join(t.TempDir(), "large.yaml")
	if err := os.WriteFile(file, data, 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := Load(file); err == nil || !strings.Contains(err.Error(), "too large") {
		t.Errorf("got %v", err)
	}
}
