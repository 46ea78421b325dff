package scenarios

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"strings"
	"testing"
	"time"

	"rouleau/scenarios/yamlread"
)

// hostile are files made to hang, to fill the memory or to overflow the stack.
func hostile() map[string]string {
	const most = yamlread.MaxBytes
	up := func(text string) string { return strings.Repeat(text, most/len(text)) }
	laughs := "a: &a [x, x, x, x, x, x, x, x, x]\n"
	for c := 'b'; c <= 'z'; c++ {
		laughs += fmt.Sprintf("%c: &%c [*%c, *%c, *%c, *%c, *%c, *%c, *%c, *%c]\n", c, c, c-1, c-1, c-1, c-1, c-1, c-1, c-1, c-1)
	}
	ladder := ""
	for i := 0; len(ladder) < most-2000; i++ {
		ladder += strings.Repeat(" ", i) + "a:\n"
	}
	cases := map[string]string{
		"brackets": up("["), "braces": up("{a: "), "closed brackets": strings.Repeat("[", most/2) + strings.Repeat("]", most/2), "dashes": up("- "),
		"ladder": ladder, "aliases": laughs, "question marks": up("? "), "many keys": "", "one long text": "title: " + up("x")[:most-8],
		"a quote not closed": `title: "` + up("y\n ")[:most-10], "comments": up("# comment\n"), "blank lines": up("\n"), "broken bytes": up("\xff\xfe"),
		"NUL": up("\x00"), "tabs": up("\t"), "bars": "title: |\n" + up(" z\n")[:most-12], "indicators": up("|>&*!%@`"), "colons": up(": "), "commas": "a: [" + up("1,")[:most-5],
		"long key": up("k")[:most-4] + ": 1", "documents": up("---\n"), "tags": up("!!x "), "carriage returns": up("\r"), "separators": up("\u2028"),
		"a file too large": up("# comment\n") + up("x")[:20], "merge keys": up("<<: {}\n"), "anchors": up("&a "), "folded": "a: >\n" + up("  w w\n")[:most-8],
		"phases of a thousand million steps": "phases:\n" + strings.Repeat("  - {name: x, starts: 277777:46:40, bleeding_ml_min: 1e308}\n", 400),
	}
	var keys strings.Builder
	for i := 0; keys.Len() < most-40; i++ {
		fmt.Fprintf(&keys, "k%d: %d\n", i, i)
	}
	cases["many keys"] = keys.String()
	crowd := "format: 1\nevents:\n" + strings.Repeat("  - {kind: say, att: 0:00:10, who: surgeo, says: x}\n", 3000)
	cases["many faults"] = crowd
	for name, list := range map[string]string{
		"phases": "  - {name: p, starts: 0:00:00, bleeding_ml_min: 0}\n", "criteria": "  - {measure: clot_ml, part: collecting, points: 1, objective: o, most: 1, note: xxxxx, source: xxx}\n",
		"events": "  - {kind: touch, at: 0:00:00}\n", "objectives": "  - {id: ab, part: deciding, text: xxxxx}\n", "guidance": "  - {do: xxxxx, until: {read: true}}\n",
	} {
		cases["thousands of "+name] = name + ":\n" + strings.Repeat(list, 2500)
	}
	cases["a long line of faults"] = "phases: [" + strings.Repeat("{nam: x, startss: 1, blee: 2}, ", 3000) + "]"
	return cases
}

// A file that is right but for one thing, which some reader of YAML would take.
func TestOneHostileValueIsRefused(t *testing.T) {
	data, err := os.ReadFile(filepath.Join("testdata", "small.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	for old, hostile := range map[string][]string{
		"age_years: 40":     {"age_years: .nan", "age_years: .inf", "age_years: -.INF", "age_years: 010", "age_years: 0o10", "age_years: 0x10", "age_years: 1e999", "age_years: 4_0", "age_years: !!float 40", "age_years: on"},
		"must_divert: true": {"must_divert: on", "must_divert: yes", "must_divert: y", "must_divert: 1", "must_divert: True", "must_divert: ~"},
		"version: 1\n":      {"version: 1\nversion: 1\n", "version: 1\n---\n", "version: 1\n...\nx: 1\n", "version: 1\n\"version\": 2\n", "? version\n: 1\n? version\n: 2\n"},
		"id: small-case":    {"id: ../small-case", "id: /etc/passwd", `id: 'c:\case'`, "id: file:///x", "id: small-case\u202e", "id: \xff\xfe", "id: !!binary eA==", "id: &a small-case", "id: *a", "id: !include x"},
		"starts: 0:20:00":   {"starts: 1000000000", "starts: 277777:46:40", "starts: 99:00:00", "starts: 1e9"},
		"format: 1\n":       {"\ufeff\ufeffformat: 1\n", "%YAML 9.9\n---\nformat: 1\n", "format: 1\n<<: {version: 3}\n", "format: 1\n=: 1\n", "format: 1\n? [a, b]\n: 1\n"},
	} {
		for _, bad := range hostile {
			text := strings.Replace(string(data), old, bad, 1)
			if text == string(data) {
				t.Fatalf("%q is not there", old)
			}
			if s, faults := Parse("hostile.yaml", []byte(text)); s != nil || len(faults) == 0 {
				t.Errorf("%q is taken", bad)
			}
		}
	}
}

// No file hangs the loader, fills the memory or gets through; each is told why.
func TestHostileFilesAreRefusedSoon(t *testing.T) {
	const (
		longest = time.Second
		most    = 64 << 20
	)
	if _, faults := Parse("warm.yaml", []byte("format: 1\n")); len(faults) == 0 { // the tags of the types are checked once
		t.Fatal("taken")
	}
	for name, text := range hostile() {
		for _, of := range []struct {
			what string
			do   func() yamlread.Faults
		}{
			{"read", func() yamlread.Faults { _, f := Parse("hostile.yaml", []byte(text)); return f }},
			{"laid out", func() yamlread.Faults { _, f := Format("hostile.yaml", []byte(text)); return f }},
		} {
			var before, after runtime.MemStats
			debug.FreeOSMemory()
			runtime.ReadMemStats(&before)
			from := time.Now()
			faults := of.do()
			took := time.Since(from)
			runtime.ReadMemStats(&after)
			for try := 0; took > longest && try < 4; try++ { // other work may share the machine
				from = time.Now()
				of.do()
				took = min(took, time.Since(from))
			}
			if len(faults) == 0 || faults[0].Message == "" {
				t.Errorf("%s, %s: taken without a fault", name, of.what)
			}
			if took > longest {
				t.Errorf("%s, %s: %v", name, of.what, took)
			}
			// All that was ever allocated, more than was held at any time.
			if used := after.TotalAlloc - before.TotalAlloc; used > most {
				t.Errorf("%s, %s: %d MiB", name, of.what, used>>20)
			}
		}
	}
}

// A file of any size is refused before it is parsed, and no more of it is read than shows that.
func TestHugeFileIsNotRead(t *testing.T) {
	file := filepath.Join(t.TempDir(), "huge.yaml")
	f, err := os.Create(file)
	if err != nil {
		t.Fatal(err)
	}
	if err := f.Truncate(256 << 20); err != nil {
		t.Fatal(err)
	}
	f.Close()
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	_, err = Load(file)
	runtime.ReadMemStats(&after)
	if err == nil || !strings.Contains(err.Error(), "the file is too large: more than 256 KiB") || after.TotalAlloc-before.TotalAlloc > 4<<20 {
		t.Errorf("%v, %d bytes", err, after.TotalAlloc-before.TotalAlloc)
	}
}
