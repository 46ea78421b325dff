package sim

// Do the reference cases guard the constants? Each of these, off by 15 % either way, must make TestReference fail. A changed
// copy of the file is laid over the real one and the package's test is built and run again.

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// mutants are constants by their file; the number after the sign of equality is what is changed.
var mutants = []struct{ name, file string }{
	{"washShare", "spin.go"}, // the rest of the wash flow passes the bed by
	{"spinLysisPerS", "lysis.go"},
	{"hindrance", "reservoir.go"},
	{"swellFactor", "packing.go"},
}

// mutate gives the file's text with the constant times the factor.
func mutate(t *testing.T, text, name string, factor float64) string {
	t.Helper()
	constant := regexp.MustCompile(`(?m)^(\s*` + name + `\s*=\s*)([0-9.e-]+)`)
	if n := len(constant.FindAllString(text, -1)); n != 1 {
		t.Fatalf("%s is defined in %d places, want one", name, n)
	}
	return constant.ReplaceAllStringFunc(text, func(m string) string {
		parts := constant.FindStringSubmatch(m)
		value, err := strconv.ParseFloat(parts[2], 64)
		if err != nil {
			t.Fatal(err)
		}
		return parts[1] + strconv.FormatFloat(value*factor, 'g', -1, 64)
	})
}

// referenceWith runs TestReference with another text for one file, and gives what it says.
func referenceWith(t *testing.T, file, text string) (output string, passed bool) {
	t.Helper()
	dir := t.TempDir()
	here, err := filepath.Abs(file)
	if err != nil {
		t.Fatal(err)
	}
	changed, list := filepath.Join(dir, file), filepath.Join(dir, "overlay.json")
	overlay, err := json.Marshal(map[string]map[string]string{"Replace": {here: changed}})
	if err != nil {
		t.Fatal(err)
	}
	for path, content := range map[string][]byte{changed: []byte(text), list: overlay} {
		if err := os.WriteFile(path, content, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	said, err := exec.Command("go", "test", "-vet=off", "-overlay", list, "-run", "^TestReference$", ".").CombinedOutput()
	return string(said), err == nil
}

func TestMutantsFailTheReferenceCases(t *testing.T) {
	for i, m := range mutants {
		content, err := os.ReadFile(m.file)
		if err != nil {
			t.Fatal(err)
		}
		text := string(content)
		if i == 0 { // the way of testing itself: the unchanged text passes
			if said, passed := referenceWith(t, m.file, text); !passed {
				t.Fatalf("the unchanged %s does not pass:\n%s", m.file, said)
			}
		}
		for _, factor := range []float64{0.85, 1.15} {
			t.Run(fmt.Sprintf("%s times %g", m.name, factor), func(t *testing.T) {
				said, passed := referenceWith(t, m.file, mutate(t, text, m.name, factor))
				if passed {
					t.Error("the reference cases do not notice")
				} else if !strings.Contains(said, "--- FAIL: TestReference/") {
					t.Errorf("it fails for another reason:\n%s", said)
				}
				t.Logf("%d results off", strings.Count(said, "times the tolerance"))
			})
		}
	}
}
