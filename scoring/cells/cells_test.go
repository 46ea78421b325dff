package cells

import (
	"bytes"
	"encoding/csv"
	"math"
	"strconv"
	"strings"
	"testing"
)

// whole writes one cell among others and reads it back, as a program that opens the file would.
func whole(t *testing.T, text string) string {
	t.Helper()
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.Write([]string{"before", Text(text), "after"})
	w.Flush()
	if w.Error() != nil {
		t.Fatal(w.Error())
	}
	fields, err := csv.NewReader(&b).Read()
	if err != nil || len(fields) != 3 || fields[0] != "before" || fields[2] != "after" {
		t.Fatalf("%q: %q, %v", text, fields, err)
	}
	return fields[1]
}

// formula says whether a spreadsheet would run a cell.
func formula(cell string) bool {
	return strings.HasPrefix(cell, "=") || strings.HasPrefix(cell, "+") || strings.HasPrefix(cell, "-") || strings.HasPrefix(cell, "@") ||
		strings.HasPrefix(cell, "\t") || strings.HasPrefix(cell, "\r") || strings.HasPrefix(cell, "\n")
}

func TestFormulasBecomeTexts(t *testing.T) {
	for text, want := range map[string]string{
		"": "", "rn-47": "rn-47", "a=b": "a=b", "=1+1": "'=1+1", "+44": "'+44", "-3": "'-3", "@SUM(A1)": "'@SUM(A1)",
		"\t=1": "'\t=1", "\r=1": "'\r=1", "\n=1": "'\n=1", "'quoted": "''quoted", "5 °C": "5 °C",
		"＝1+1": "'＝1+1", "＋44": "'＋44", "－3": "'－3", "＠x": "'＠x",
	} {
		if got := Text(text); got != want {
			t.Errorf("%q becomes %q, want %q", text, got, want)
		}
	}
}

func FuzzText(f *testing.F) {
	for _, text := range []string{"=cmd|' /C calc'!A0", "+1", "-1", "@x", "\tx", "\rx", "\nx", "'x", "\"quoted\", and more", "two\nlines", "", "\xff="} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		cell := whole(t, text)
		if formula(cell) {
			t.Errorf("%q is run as %q", text, cell)
		}
		// CSV knows one end of line only
		want := strings.ReplaceAll(text, "\r\n", "\n")
		if got := strings.ReplaceAll(Read(Text(text)), "\r\n", "\n"); got != want {
			t.Errorf("%q is read back as %q", want, got)
		}
		if got := Read(cell); got != want {
			t.Errorf("%q is read back from the file as %q", want, got)
		}
	})
}

func TestNumbersAreShortAndExact(t *testing.T) {
	for x, want := range map[float64]string{0: "0", 0.1: "0.1", 1543: "1543", -2.5: "-2.5", 1.0 / 3: "0.3333333333333333", 1e-9: "1e-09"} {
		if got := Number(x); got != want {
			t.Errorf("%g is written %s, want %s", x, got, want)
		}
	}
	for _, x := range []float64{math.Pi, 1e300, math.SmallestNonzeroFloat64, math.Nextafter(1, 2)} {
		if back, err := strconv.ParseFloat(Number(x), 64); err != nil || back != x {
			t.Errorf("%g is read back as %g (%v)", x, back, err)
		}
	}
}
