package yamlread

import (
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// formatted lays a file out twice: the second time nothing may change.
func formatted(t *testing.T, text string) string {
	t.Helper()
	var into, again sample
	out, faults := Format("a.yaml", []byte(text), &into)
	if len(faults) > 0 {
		t.Fatalf("%v\n%s", faults, text)
	}
	twice, faults := Format("a.yaml", out, &again)
	if len(faults) > 0 {
		t.Fatalf("the result is refused: %v\n%s", faults, out)
	}
	if diff := cmp.Diff(string(out), string(twice)); diff != "" {
		t.Fatalf("a second time it changes (- once, + twice):\n%s", diff)
	}
	return string(out)
}

func TestLayout(t *testing.T) {
	for _, file := range []string{"order", "comments", "texts"} {
		in, err := os.ReadFile("testdata/layout/" + file + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		got := formatted(t, string(in))
		if *update {
			if err := os.WriteFile("testdata/layout/"+file+".out", []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile("testdata/layout/" + file + ".out")
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); diff != "" {
			t.Errorf("%s (- kept, + now):\n%s", file, diff)
		}
	}
}

// Whatever stands at the ends of lines, and however the file is saved.
func TestLayoutOfOtherEditors(t *testing.T) {
	want := formatted(t, good)
	for name, text := range map[string]string{
		"byte order mark": byteOrderMark + good, "crlf": strings.ReplaceAll(good, "\n", "\r\n"), "no last line end": strings.TrimSuffix(good, "\n"),
		"blank lines at the end": good + "\n\n\n", "document marks": "---\n" + good + "...\n",
	} {
		if got := formatted(t, text); got != want {
			t.Errorf("%s:\n%s", name, cmp.Diff(want, got))
		}
	}
}

// A comment or a blank line in every line of a file: none is lost, and the result is stable.
func TestCommentsAnywhere(t *testing.T) {
	lines := strings.Split(strings.TrimSuffix(good, "\n"), "\n")
	for at := range len(lines) + 1 {
		for _, put := range []string{"# put here", "  # put here", "      # put here", "", "\n# one\n\n  # two\n"} {
			text := strings.Join(lines[:at], "\n") + "\n" + put + "\n" + strings.Join(lines[at:], "\n") + "\n"
			if at == 0 {
				text = strings.TrimPrefix(text, "\n")
			}
			var into sample
			if len(Decode("a.yaml", []byte(text), &into)) > 0 {
				continue // inside a text, which it cuts
			}
			out := formatted(t, text)
			if want := strings.Count(text, "#"); strings.Count(out, "#") != want {
				t.Errorf("line %d, %q: %d of %d comments\n%s", at, put, strings.Count(out, "#"), want, out)
			}
		}
		if at == len(lines) {
			break
		}
		text := strings.Join(lines[:at], "\n") + "\n" + lines[at] + " # behind\n" + strings.Join(lines[at+1:], "\n") + "\n"
		if at == 0 {
			text = strings.TrimPrefix(text, "\n")
		}
		if out := formatted(t, text); strings.Count(out, "# behind") != 1 {
			t.Errorf("line %d: the comment behind it is lost\n%s", at, out)
		}
	}
}

func TestBrokenFilesAreNotLaidOut(t *testing.T) {
	var into sample
	if out, faults := Format("a.yaml", []byte("id: ab\nidd: 3\n"), &into); out != nil || len(faults) < 3 {
		t.Errorf("%s, %v", out, faults)
	}
}

func FuzzFormat(f *testing.F) {
	for _, file := range []string{"order", "comments", "texts"} {
		data, err := os.ReadFile("testdata/layout/" + file + ".yaml")
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Add([]byte(good))
	f.Fuzz(func(t *testing.T, data []byte) {
		var into, again sample
		out, faults := Format("fuzz.yaml", data, &into)
		if len(faults) > 0 {
			if strings.Contains(faults[0].Message, "fault of this program") {
				t.Fatal(faults)
			}
			return
		}
		twice, faults := Format("fuzz.yaml", out, &again)
		if len(faults) > 0 || string(twice) != string(out) {
			t.Fatalf("not stable: %v\n%s", faults, cmp.Diff(string(out), string(twice)))
		}
	})
}
