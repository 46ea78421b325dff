// This file tests the ways in: library, paths, line ends, and what is said when there is nothing to read.

package scenarios

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rouleau/scenarios/yamlread"
)

func TestLibraryIsInOrder(t *testing.T) {
	names := Library()
	if len(names) == 0 {
		t.Fatal("the library is empty")
	}
	for _, name := range names {
		s := opened(t, name)
		if s.ID != name {
			t.Errorf("%s has the id %s", name, s.ID)
		}
		if len(s.Warnings) > 0 {
			t.Errorf("%s: a case of the library must not be suspicious\n%v", name, s.Warnings)
		}
		if len(s.Cautions) == 0 || len(s.Hints) == 0 || len(s.Sources) == 0 {
			t.Errorf("%s lacks cautions, hints or sources", name)
		}
		again, err := Load(filepath.Join("library", name+extension))
		if err != nil || again.Hash() != s.Hash() || !bytes.Equal(again.Source, s.Source) {
			t.Errorf("%s: the embedded file is another than that on disk: %v", name, err)
		}
	}
}

func TestHashIgnoresLineEnds(t *testing.T) {
	s := small(t)
	windows, faults := Parse("small.yaml", bytes.ReplaceAll(s.Source, []byte("\n"), []byte("\r\n")))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if windows.Hash() != s.Hash() || !bytes.Equal(windows.Source, s.Source) {
		t.Error("line ends change the hash")
	}
	sum := sha256.Sum256(s.Source)
	if s.Hash() != hex.EncodeToString(sum[:]) {
		t.Errorf("hash %s", s.Hash())
	}
	other, faults := Parse("small.yaml", bytes.Replace(s.Source, []byte("minutes: 20"), []byte("minutes: 21"), 1))
	if len(faults) > 0 || other.Hash() == s.Hash() {
		t.Errorf("another file has the same hash, or faults: %v", faults)
	}
}

func TestOpenByNameAndPath(t *testing.T) {
	if a, b := opened(t, "steady-oozing-spine"), opened(t, "steady-oozing-spine.yaml"); a.Hash() != b.Hash() {
		t.Error("the extension changes the case")
	}
	file := filepath.Join(t.TempDir(), "own.yaml")
	if err := os.WriteFile(file, small(t).Source, 0o644); err != nil {
		t.Fatal(err)
	}
	if s := opened(t, file); s.ID != "small-case" || s.Name != file {
		t.Errorf("got %s from %s", s.ID, s.Name)
	}
}

func TestNothingToRead(t *testing.T) {
	_, err := Open("steady-oozing-spin")
	if err == nil || !strings.Contains(err.Error(), "no such file") || !strings.HasSuffix(err.Error(), "Did you mean steady-oozing-spine?") {
		t.Errorf("got %v", err)
	}
	_, err = Open("")
	if err == nil || !strings.HasPrefix(err.Error(), `"": there is no such file`) {
		t.Errorf("got %v", err)
	}
	_, err = Open(t.TempDir())
	if err == nil || !strings.Contains(err.Error(), "this is a folder: give the path of a file") {
		t.Errorf("got %v", err)
	}
	_, err = Load(filepath.Join("testdata", "err", "points.yaml"))
	var faults yamlread.Faults
	if !errors.As(err, &faults) || len(faults) != 4 {
		t.Errorf("got %v", err)
	}
}

func TestLinesAreThoseOfTheEvents(t *testing.T) {
	s := small(t)
	if len(s.Lines) != 4 || s.Lines[1] != "Paste." {
		t.Errorf("lines %q", s.Lines)
	}
	if len(s.Criteria) != 6 || s.Pass.MarkPercent != 75 || s.Pass.FloorPercent != 60 || s.Modes.AssessmentSpeed != 1 || len(s.Modes.PracticeSpeeds) != 5 {
		t.Errorf("defaults %+v %+v", s.Pass, s.Modes)
	}
	if !s.Right.AllowsBowl(1) || s.Right.AllowsBowl(2) {
		t.Error("the right bowl is not told from others")
	}
}

// The case of the library is no copy of itself, whatever the line ends of the checkout.
func TestLibraryIsWithoutWarnings(t *testing.T) {
	for _, name := range Library() {
		s := opened(t, name)
		if len(s.Warnings) > 0 {
			t.Errorf("%s:\n%v", name, s.Warnings)
		}
		if again, faults := Parse(name, bytes.ReplaceAll(s.Source, []byte("\n"), []byte("\r\n"))); len(faults) > 0 || len(again.Warnings) > 0 {
			t.Errorf("%s with CRLF:\n%v", name, faults)
		}
	}
}
