package cli

import (
	"os"
	"path/filepath"
	"runtime"
	"testing"
)

// What tells who is who is for its owner alone, also where it replaces a file that all could read; a page is for all.
func TestWhoMayReadWhatAReportWrites(t *testing.T) {
	for _, k := range []struct {
		private bool
		want    os.FileMode
	}{{true, 0o600}, {false, 0o644}} {
		for _, before := range []os.FileMode{0, 0o644, 0o600} {
			o := &output{path: filepath.Join(t.TempDir(), "made"), private: k.private, content: []byte("new")}
			if before > 0 {
				if err := os.WriteFile(o.path, []byte("old"), before); err != nil {
					t.Fatal(err)
				}
			}
			if err := o.write(); err != nil {
				t.Fatal(err)
			}
			text, err := os.ReadFile(o.path)
			info, err2 := os.Stat(o.path)
			if err != nil || err2 != nil || string(text) != "new" {
				t.Fatalf("%q, %v, %v", text, err, err2)
			}
			if mode := info.Mode().Perm(); mode != k.want && runtime.GOOS != "windows" { // which has no such modes
				t.Errorf("private %t over %o: %o", k.private, before, mode)
			}
		}
	}
}
