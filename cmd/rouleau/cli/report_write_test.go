package cli

import (
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"
)

// writes writes files and says what is told of it.
func writes(wanted ...*output) (string, error) {
	s := &session{}
	err := s.writeAll(wanted)
	return s.out.String(), err
}

// names are those of the files in a folder.
func names(t *testing.T, folder string) (all []string) {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		all = append(all, e.Name())
	}
	return all
}

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
			if said, err := writes(o); err != nil || !strings.Contains(said, "made is written") {
				t.Fatal(said, err)
			}
			text, err := os.ReadFile(o.path)
			info, err2 := os.Stat(o.path)
			if err != nil || err2 != nil || string(text) != "new" {
				t.Fatalf("%q, %v, %v", text, err, err2)
			}
			if mode := info.Mode().Perm(); mode != k.want && runtime.GOOS != "windows" { // which has no such modes
				t.Errorf("private %t over %o: %o", k.private, before, mode)
			}
			if left := names(t, filepath.Dir(o.path)); len(left) != 1 {
				t.Errorf("the folder holds %v", left)
			}
		}
	}
}

// Where one of several cannot be written none is, and nothing is left lying.
func TestAReportIsWrittenWholeOrNotAtAll(t *testing.T) {
	folder := t.TempDir()
	first := &output{path: filepath.Join(folder, "first"), content: []byte("one")}
	if err := os.WriteFile(first.path, []byte("old"), 0o644); err != nil {
		t.Fatal(err)
	}
	said, err := writes(first, &output{path: filepath.Join(folder, "nowhere", "second"), content: []byte("two")})
	if err == nil || said != "" || !strings.Contains(err.Error(), "nothing was written") {
		t.Errorf("%q, %v", said, err)
	}
	if text, _ := os.ReadFile(first.path); string(text) != "old" {
		t.Errorf("the first holds %q", text)
	}
	if left := names(t, folder); len(left) != 1 {
		t.Errorf("the folder holds %v", left)
	}
}

// Folders and names are tried before anything is played, and the try leaves nothing behind.
func TestFoldersAreTriedFirst(t *testing.T) {
	folder := t.TempDir()
	if err := tryFolders([]*output{{path: filepath.Join(folder, "new")}}); err != nil {
		t.Error(err)
	}
	if left := names(t, folder); len(left) != 0 {
		t.Errorf("the folder holds %v", left)
	}
	if err := tryFolders([]*output{{path: filepath.Join(folder, "nowhere", "new")}}); err == nil {
		t.Error("a folder that is not there is taken for one that can be written to")
	}
	if runtime.GOOS == "windows" || os.Geteuid() == 0 { // where rights are others, or none are asked for
		return
	}
	if err := os.Chmod(folder, 0o500); err != nil {
		t.Fatal(err)
	}
	if err := tryFolders([]*output{{path: filepath.Join(folder, "new")}}); err == nil || !strings.Contains(err.Error(), "may not be written there") {
		t.Errorf("%v", err)
	}
}

// What keeps a file from being written is said without the words of the system, and with what to do.
func TestWhyAFileCannotBeWritten(t *testing.T) {
	for _, k := range []struct {
		err  error
		want string
	}{{syscall.EACCES, "may not be written"}, {syscall.ENOSPC, "no room left"}, {syscall.EROFS, "nothing can be written there"}, {syscall.ENAMETOOLONG, "too long"}} {
		got := cannot("page.html", &fs.PathError{Op: "open", Path: "temp123", Err: k.err})
		if !strings.HasPrefix(got, "page.html ") || !strings.Contains(got, k.want) || strings.Contains(got, "temp123") || strings.Contains(got, k.err.Error()) {
			t.Errorf("%v: %q", k.err, got)
		}
	}
}
