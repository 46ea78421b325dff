// This file tests how faults are printed and sorted, and what Walk lists.

package yamlread

import (
	"errors"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestCaretUnderColumn(t *testing.T) {
	for _, c := range []struct {
		source    string
		col       int
		text, pad string
	}{
		{"abc: 1", 6, "abc: 1", "     "},
		{"\ta:\tb", 5, "\ta:\tb", "\t  \t"},
		{"日本: x", 5, "日本: x", "      "},           // two wide characters take four cells
		{"e\u0301: x", 5, "e\u0301: x", "   "},    // a mark on a letter takes none
		{"a\u202eb: x", 5, "a\ufffdb: x", "    "}, // a character that turns the direction is not printed
		{"ab", 3, "ab", "  "},
		{"ab", 99, "ab", "  "},
		{strings.Repeat("a", 200), 100, "…" + strings.Repeat("a", 120) + "…", strings.Repeat(" ", 61)},
	} {
		text, pad := window(c.source, c.col)
		if text != c.text || pad != c.pad {
			t.Errorf("window(%q, %d) = %q, %q", c.source, c.col, text, pad)
		}
	}
}

func TestFaultsSortStably(t *testing.T) {
	doc := newDoc("f.yaml", "a\nb\n")
	for i, at := range []Place{{2, 1}, {1, 3}, {1, 1}, {2, 1}, {1, 1}} {
		doc.add(Fault{Place: at, Message: fmt.Sprint(i)})
	}
	var order []string
	for _, f := range doc.Faults() {
		order = append(order, f.Message)
	}
	if got := strings.Join(order, ""); got != "24103" {
		t.Errorf("order %s", got)
	}
}

func TestFaultText(t *testing.T) {
	fs := Faults{
		{File: "a\x1b[2J.yaml", Place: Place{3, 2}, Message: "bad\nvalue", Source: "x y", Expected: "good", Nearest: "goud"},
		{File: "a.yaml", Place: Place{4, 1}, Message: "plain"},
	}
	want := "a\ufffd[2J.yaml:3:2: bad\ufffdvalue\n    3 | x y\n      |  ^\n        expected: good\n        nearest: goud\na.yaml:4:1: plain"
	if got := fs.Error(); got != want {
		t.Errorf("got\n%s", got)
	}
	if (Faults{}).Err() != nil || fs.Err() == nil {
		t.Error("Err is wrong about whether there are faults")
	}
	n, err := fs.WriteTo(failing{})
	if n != 0 || !errors.Is(err, errFull) {
		t.Errorf("WriteTo hides a failure: %d, %v", n, err)
	}
}

var errFull = errors.New("disk full")

type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, errFull }

func TestSplitLines(t *testing.T) {
	got := splitLines("a\r\nb\rc\nd\u0085e\u2028f\u2029g\n")
	if diff := cmp.Diff([]string{"a", "b", "c", "d", "e", "f", "g", ""}, got); diff != "" {
		t.Error(diff)
	}
}

func TestWalk(t *testing.T) {
	var got []string
	byPath := map[string]Field{}
	err := Walk(reflect.TypeFor[sample](), func(f Field) {
		got = append(got, f.Path)
		byPath[f.Path] = f
		if f.Doc == "" || f.Type == nil || f.Wants == "" || !strings.HasSuffix(f.Path, f.Key) {
			t.Errorf("%+v", f)
		}
	})
	if err != nil {
		t.Fatal(err)
	}
	want := strings.Fields(`id title version mode urgent date start patient patient.mass_kg patient.hb_g_dl
		patient.haematocrit_fraction phases phases[].name phases[].lasts phases[].bleeding_ml_min
		phases[].vacuum_mmhg phases[].remark stocks stocks.*.volume_ml weights levels_ml tags small
		parity note note.text note.more`)
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	f := byPath["phases[].vacuum_mmhg"]
	if f.Rule.Unit != "mmHg" || f.Rule.Default != "100" || f.Rule.Max != "300" || f.Wants != "a number, 0 to 300 mmHg" || f.Depth != 2 {
		t.Errorf("%+v", f)
	}
	if f := byPath["id"]; !f.Rule.Required || f.Example != "steady_ooze" || f.Depth != 1 {
		t.Errorf("%+v", f)
	}
	if f := byPath["patient.hb_g_dl"]; f.Type.Kind() != reflect.Pointer {
		t.Errorf("%+v", f)
	}
	if f := byPath["phases[].bleeding_ml_min"]; f.Rule.Default != "{uniform: [5, 10]}" {
		t.Errorf("%+v", f)
	}
	if Walk(reflect.TypeFor[struct {
		A chan int `yaml:"a"`
	}](), func(Field) {}) == nil {
		t.Error("a type that cannot be read is walked")
	}
}
