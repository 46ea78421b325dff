// Tests of measuring and breaking text.

package ui

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"github.com/go-text/typesetting/font"

	"rouleau/assets"
)

func TestTabularFiguresAreOneWidth(t *testing.T) {
	for _, w := range []Weight{Regular, SemiBold} {
		want := TextWidth("0:00:00", 14, w, true)
		for _, s := range []string{"1:11:11", "4:47:41", "9:59:59"} {
			if got := TextWidth(s, 14, w, true); got != want {
				t.Errorf("weight %d: %q is %g wide, 0:00:00 is %g", w, s, got, want)
			}
		}
		if TextWidth("111", 14, w, false) >= TextWidth("000", 14, w, false) {
			t.Errorf("weight %d: text figures should be narrower for 1 than for 0", w)
		}
	}
}

func TestPairsAddUpToTheWholeString(t *testing.T) {
	for _, w := range []Weight{Regular, SemiBold} {
		for _, tab := range []bool{false, true} {
			for _, s := range []string{"To wash AVATAR", "24.5 mL/min", "Hämatokrit 0,58 – über", "fi fl -> 3x4 0:12", "“answer” ▸ 5°"} {
				f := faceFor(w, tab)
				whole := f.shape([]rune(s)...) * 14
				if got := TextWidth(s, 14, w, tab); math.Abs(float64(got-whole)) > 0.05 {
					t.Errorf("%q weight %d tab %v: pairs give %g, shaping the whole gives %g", s, w, tab, got, whole)
				}
			}
		}
	}
}

func TestVerticalMeasures(t *testing.T) {
	f, err := font.ParseTTF(bytes.NewReader(assets.InterRegular))
	if err != nil {
		t.Fatal(err)
	}
	em := float64(f.Upem())
	ext, _ := f.FontHExtents()
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"ascent", Ascent, float64(ext.Ascender) / em},
		{"descent", Descent, -float64(ext.Descender) / em},
		{"cap height", CapHeight, float64(f.LineMetric(font.CapHeight)) / em},
		{"x height", XHeight, float64(f.LineMetric(font.XHeight)) / em},
	} {
		if math.Abs(c.got-c.want) > 0.001 {
			t.Errorf("%s is %g, the font says %g", c.name, c.got, c.want)
		}
	}
}

func TestWrapKeepsEveryLetterAndEveryLineFits(t *testing.T) {
	texts := []string{
		"Reservoir layered: clear fluid on top is a fifth of the volume",
		"Blutgerinnungshemmungsmittelkonzentrationsbestimmung und Erythrozytenkonzentrataufbereitungsverordnung",
		"short",
		"one\ntwo three\n\nfour",
		"heparin/saline-and-something/else",
	}
	for _, s := range texts {
		for _, width := range []float32{30, 80, 200, 1000} {
			var letters strings.Builder
			rest := s
			for n := 0; rest != ""; n++ {
				if n > 500 {
					t.Fatalf("%q at %g does not end", s, width)
				}
				var line string
				line, rest = NextLine(rest, width, 14, Regular, false)
				if got := TextWidth(line, 14, Regular, false); got > width {
					t.Errorf("line %q of %q is %g wide, allowed %g", line, s, got, width)
				}
				letters.WriteString(line)
			}
			strip := strings.NewReplacer(" ", "", "\n", "")
			if strip.Replace(letters.String()) != strip.Replace(s) {
				t.Errorf("%q at %g lost letters: %q", s, width, letters.String())
			}
		}
	}
	if line, _ := NextLine("aaa bbb", TextWidth("aaa", 14, Regular, false)+1, 14, Regular, false); line != "aaa" {
		t.Errorf("breaks at %q, want aaa", line)
	}
}

// A number keeps its unit, where there is a line to take both; other words behind a number may part from it.
func TestANumberKeepsItsUnit(t *testing.T) {
	for _, k := range []struct{ text, room, line, rest string }{
		{"is wanted, 13 s", "is wanted, 13 ", "is wanted,", "13 s"},
		{"giving 100 mL/min.", "giving 100 mL", "giving", "100 mL/min."},
		{"0.80 of 10 L", "0.80 o", "0.80", "of 10 L"},
		{"100 mL", "100 m", "100", "mL"},
		{" 5 mL", "", "", "5 mL"},
	} {
		line, rest := NextLine(k.text, TextWidth(k.room, 14, Regular, false)+0.5, 14, Regular, false)
		if line != k.line || rest != k.rest {
			t.Errorf("%q in the room of %q: %q and %q", k.text, k.room, line, rest)
		}
	}
}

func TestTextIndexFindsTheNearestGap(t *testing.T) {
	s := "Häma"
	if got := TextIndex(s, -5, 14, Regular, false); got != 0 {
		t.Errorf("left of the text gives %d", got)
	}
	if got := TextIndex(s, 500, 14, Regular, false); got != len(s) {
		t.Errorf("right of the text gives %d", got)
	}
	x := TextWidth("Hä", 14, Regular, false)
	if got := TextIndex(s, x+1, 14, Regular, false); got != len("Hä") {
		t.Errorf("behind the second letter gives %d", got)
	}
}

func TestMissingLetters(t *testing.T) {
	if got := Missing("Hämatokrit 0,58 – 24.5 mL/min, “why” › → × ° µ ± ≤ ≥ ₂"); len(got) != 0 {
		t.Errorf("missing %q", got)
	}
	if got := Missing("♂ why ▸"); string(got) != "♂▸" {
		t.Errorf("missing %q, want the two Inter lacks", got)
	}
	for k := KeyNone; int(k) < KeyCount; k++ {
		if got := Missing(keySigns[k]); len(got) != 0 {
			t.Errorf("key cap %q lacks letters", keySigns[k])
		}
	}
}
