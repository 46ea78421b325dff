package yamlread

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
)

func TestReadFile(t *testing.T) {
	dir := t.TempDir()
	small := filepath.Join(dir, "small.yaml")
	if err := os.WriteFile(small, []byte("format: 1\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if data, err := ReadFile(small); err != nil || string(data) != "format: 1\n" {
		t.Errorf("%q, %v", data, err)
	}
	if data, err := ReadFile(dir); data != nil || !errors.Is(err, fs.ErrInvalid) {
		t.Errorf("a folder: %d bytes, %v", len(data), err)
	}
	if data, err := ReadFile(filepath.Join(dir, "none.yaml")); data != nil || !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("no file: %d bytes, %v", len(data), err)
	}
	large := filepath.Join(dir, "large.yaml")
	if err := os.WriteFile(large, make([]byte, 4*MaxBytes), 0o644); err != nil {
		t.Fatal(err)
	}
	if data, err := ReadFile(large); err != nil || len(data) != MaxBytes+1 {
		t.Errorf("a large file: %d bytes, %v", len(data), err)
	}
}
