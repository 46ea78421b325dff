package keep_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"rouleau/cmd/rouleau-desk/keep"
)

func TestRecentFilesAreKept(t *testing.T) {
	dir := t.TempDir()
	f, err := keep.Open(filepath.Join(dir, "records"))
	if err != nil {
		t.Fatal(err)
	}
	if all, err := f.Recent(); err != nil || len(all) != 0 {
		t.Errorf("at first: %v, %v", all, err)
	}
	path := func(i int) string { return filepath.Join(dir, fmt.Sprintf("case %d ü.yaml", i)) }
	for i := range 25 {
		if err := f.Remember(path(i)); err != nil {
			t.Fatal(err)
		}
	}
	if err := f.Remember(path(20)); err != nil {
		t.Fatal(err)
	}
	if err := f.Forget(path(23)); err != nil {
		t.Fatal(err)
	}
	again, err := keep.Open(filepath.Join(dir, "records"))
	if err != nil {
		t.Fatal(err)
	}
	all, err := again.Recent()
	if err != nil || len(all) != 19 || all[0] != path(20) || all[1] != path(24) || slices.Contains(all, path(23)) || slices.Contains(all, path(4)) {
		t.Errorf("%v, %v", all, err)
	}
	if err := again.Forget(path(99)); err != nil {
		t.Errorf("what is not there: %v", err)
	}
}

func TestDamagedRecentFilesAreSetAside(t *testing.T) {
	for _, damage := range []string{"", "{", `{"files": 3}`, `{"files": ["relative.yaml"]}`, "\x00\x00"} {
		dir := filepath.Join(t.TempDir(), "records")
		f, err := keep.Open(dir)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, "recent.json"), []byte(damage), 0o600); err != nil {
			t.Fatal(err)
		}
		if all, err := f.Recent(); err == nil || len(all) != 0 {
			t.Errorf("%q is taken: %v", damage, all)
		}
		if kept, err := os.ReadFile(filepath.Join(dir, "set-aside", "recent.json")); err != nil || string(kept) != damage {
			t.Errorf("%q is not set aside: %v", damage, err)
		}
		own := filepath.Join(dir, "a.yaml")
		if err := f.Remember(own); err != nil {
			t.Error(err)
		}
		if all, err := f.Recent(); err != nil || len(all) != 1 || all[0] != own {
			t.Errorf("after %q: %v, %v", damage, all, err)
		}
	}
}
