// This file tests the reading of good files, defaults, places and the refusals
// that need no golden file.

package yamlread

import (
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func ptr[T any](v T) *T { return &v }

func TestGoodFile(t *testing.T) {
	var got sample
	if faults := Decode("good.yaml", []byte(good), &got); len(faults) > 0 {
		t.Fatal(faults)
	}
	want := sample{
		ID: "steady_ooze", Title: "Großes Beispiel", Version: 3, Mode: "on", Urgent: true,
		Date: Date{2026, 3, 1}, Start: Clock{Seconds: 27900},
		Patient: patient{MassKG: 81.5, HbGDL: ptr(13.1), Haematocrit: 0.4},
		Phases: []phase{
			{Name: "approach", Lasts: Clock{750, true}, Bleeding: Quantity{Value: 20}, Vacuum: 100, shared: shared{"two\nlines\n"}},
			{Name: "rest", Lasts: Clock{Seconds: 2700}, Bleeding: Quantity{Spread: Normal, Mean: 20, SD: 4, Min: 10, Max: 30}, Vacuum: 100},
			{Name: "end", Lasts: Clock{300, true}, Bleeding: Quantity{Spread: Choice, Choices: []float64{1, 2.5, 10}}, Vacuum: 150},
			{Name: "last", Lasts: Clock{300, true}, Bleeding: Quantity{Spread: Uniform, Min: 5, Max: 10}, Vacuum: 100},
		},
		Stocks:  Map[stock]{{"citrate", stock{500}}, {"wash", stock{1000}}},
		Weights: map[string]int{"collecting": 20, "recording": 10},
		Levels:  []float64{100, 200}, Tags: []string{"spine"}, Small: 255, Parity: 4,
		Note: &note{Text: "a", More: &note{Text: "b"}},
	}
	all := cmp.Exporter(func(reflect.Type) bool { return true })
	if diff := cmp.Diff(want, got, all); diff != "" {
		t.Error(diff)
	}
	if s, ok := got.Stocks.Get("wash"); !ok || s.VolumeML != 1000 {
		t.Errorf("Get(wash) = %v, %v", s, ok)
	}
	if _, ok := got.Stocks.Get("blood"); ok {
		t.Error("Get found what is not there")
	}
}

func TestSmallFileGetsDefaults(t *testing.T) {
	got := sample{Title: "left over from before"}
	if faults := Decode("small.yaml", []byte("\ufeffid: abc\r\npatient: {mass_kg: 70}\r\n"), &got); len(faults) > 0 {
		t.Fatal(faults)
	}
	if got.Title != "" || got.Version != 1 || got.Mode != "free" || got.Patient.Haematocrit != 0.4 || got.Patient.HbGDL != nil || got.Note != nil {
		t.Errorf("got %+v", got)
	}
}

func TestPlaces(t *testing.T) {
	var into sample
	doc := Read("good.yaml", []byte(good), &into)
	for path, want := range map[string]Place{
		"id":                                  {2, 5},
		"patient.mass_kg":                     {10, 12},
		"phases[0].remark":                    {16, 13},
		"phases[1]":                           {19, 5},
		"phases[1].bleeding_ml_min.normal.sd": {19, 75},
		"phases[1].vacuum_mmhg":               {19, 5}, // a default: the phase stands for it
		"phases[0].bleeding_ml_min.normal":    {15, 5}, // not there: the key around it
		"phases[7].name":                      {12, 1}, // no such phase: the key of the list
		"stocks.citrate.volume_ml":            {29, 16},
		"nothing.like.it":                     {2, 1},
		"":                                    {2, 1},
	} {
		if got := doc.At(path); got != want {
			t.Errorf("At(%q) = %v, want %v", path, got, want)
		}
	}
	if !doc.Has("phases[1].lasts") || doc.Has("phases[1].vacuum_mmhg") || doc.Has("title.x") {
		t.Error("Has does not tell what the file gives from what it leaves out")
	}
	doc.Fault("phases[1].lasts", "later", "")
	doc.FaultNear("mode", "earlier", "something", "free")
	faults := doc.Faults()
	if len(faults) != 2 || faults[0].Message != "earlier" || faults[0].Nearest != "free" || faults[1].Path != "phases[1].lasts" || doc.Name() != "good.yaml" {
		t.Errorf("got %+v", faults)
	}
}

// laughs is the classical file whose aliases unfold to a billion words.
func laughs() string {
	var b strings.Builder
	b.WriteString("a: &a [lol, lol]\n")
	for c := 'b'; c <= 'z'; c++ {
		prev := "*" + string(c-1)
		b.WriteString(string(c) + ": &" + string(c) + " [" + strings.Repeat(prev+", ", 9) + prev + "]\n")
	}
	return b.String()
}

func TestRefusals(t *testing.T) {
	deep := func(open, shut string, n int) string { return strings.Repeat(open, n) + "1" + strings.Repeat(shut, n) }
	for _, c := range []struct{ name, text, want string }{
		{"just too large", strings.Repeat("#", MaxBytes+1), "the file is too large: more than 256 KiB"},
		{"aliases unfold", laughs(), "an alias (*a) is used"},
		{"flow lists nested", "id: " + deep("[", "]", 5000), "nested too deep"},
		{"flow mappings nested", "id: " + deep("{a: ", "}", 5000), "nested too deep"},
		{"nested beyond the parser", strings.Repeat("[", 40000), "nested far too deep"},
		{"block lists nested", deep("- ", "", 9000), "nested too deep"},
		{"no end of keys", strings.Repeat("? ", 40000), "nested far too deep"},
		{"crowd on one line", "{" + strings.Repeat("a,", 100000) + "}", "the file holds too much"},
		{"crowd of lines", strings.Repeat("#\n", 100000), "the file holds too much"},
		{"NUL", "id: a\x00b\n", "a NUL byte"},
		{"Latin-1", "id: abc\ntitle: Gr\xf6\xdfe\n", "byte 0xf6 is not valid UTF-8"},
		{"UTF-16", "\xff\xfei\x00d\x00", "byte 0xff is not valid UTF-8"},
		{"escape character", "id: \x1b[31mred\n", "control character U+001B"},
		{"escaped NUL", "id: \"abc\\0\"\n", "control character U+0000"},
		{"text only", "just words\n", "this is \"just words\""},
		{"null", "null\n", "null means no value"},
		{"empty", "", "the file is empty"},
		{"comment only", "# nothing\n", "the file is empty"},
		{"empty document", "---\n", "there is no value here"},
		{"empty document, no line end", "---", "bad.yaml:1:4: there is no value here"},
		{"two documents", good + "---\nid: b\n", "a second document begins here"},
		{"infinite", "small: .inf\n", ".inf is not a finite number"},
	} {
		t.Run(c.name, func(t *testing.T) {
			faults := Decode("bad.yaml", []byte(c.text), new(sample))
			if !strings.Contains(faults.Error(), c.want) {
				t.Errorf("want %q in:\n%.2000s", c.want, faults.Error())
			}
		})
	}
	if faults := Decode("large.yaml", []byte(good+strings.Repeat("#", MaxBytes-len(good))), new(sample)); len(faults) > 0 {
		t.Errorf("a file of exactly the greatest size is refused: %v", faults)
	}
}

func TestFaultsAreBounded(t *testing.T) {
	faults := Decode("many.yaml", []byte("phases: ["+strings.Repeat("x,", 49000)+"]\n"), new(sample))
	if len(faults) != maxFaults+1 || !strings.Contains(faults[maxFaults].Message, "more faults") {
		t.Errorf("got %d faults, the last %q", len(faults), faults[len(faults)-1].Message)
	}
	if n := len(faults.Error()); n > 2<<20 {
		t.Errorf("%d bytes of text", n)
	}
}

func TestTypesThatCannotBeRead(t *testing.T) {
	for want, into := range map[string]any{
		"not into a pointer to a struct": sample{},
		"cannot be read from a file": new(struct {
			A chan int `yaml:"a"`
		}),
		"not a lower-case key": new(struct {
			A int `yaml:"BadKey"`
		}),
		"taken by another field": new(struct {
			A int `yaml:"a"`
			B int `yaml:"a"`
		}),
		"has tags but cannot be set": new(struct {
			a int `yaml:"a"`
		}),
		`"mni=1" is not understood`: new(struct {
			A int `yaml:"a" rule:"mni=1"`
		}),
		"what is required has no default": new(struct {
			A int `yaml:"a" rule:"required,default=1"`
		}),
		"the key a_l_min must end in _ml_min": new(struct {
			A float64 `yaml:"a_l_min" rule:"unit=mL/min"`
		}),
		"default or example 7 breaks the rule": new(struct {
			A int `yaml:"a" rule:"max=5,default=7"`
		}),
		"min=3 is above max=2": new(struct {
			A string `yaml:"a" rule:"min=3,max=2"`
		}),
		"1.5 is not a number of characters": new(struct {
			A []int `yaml:"a" rule:"min=1.5"`
		}),
		"min and max mean nothing": new(struct {
			A bool `yaml:"a" rule:"min=1"`
		}),
		"each_min and each_max need a list": new(struct {
			A int `yaml:"a" rule:"each_min=1"`
		}),
		"oneof needs texts": new(struct {
			A float64 `yaml:"a" rule:"oneof=1|2"`
		}),
		"90 is not a time": new(struct {
			A Clock `yaml:"a" rule:"max=90"`
		}),
		"2020 is not a date": new(struct {
			A Date `yaml:"a" rule:"min=2020"`
		}),
		"max=many is not a number": new(struct {
			A Quantity `yaml:"a" rule:"max=many"`
		}),
	} {
		faults := Decode("x.yaml", []byte("a: 1\n"), into)
		if len(faults) != 1 || !strings.Contains(faults[0].Message, want) {
			t.Errorf("want %q, got %v", want, faults)
		}
	}
}

func TestLineEndsDoNotMatter(t *testing.T) {
	text := "id: ab\npatient: {mass_kg: 0}\n\nsmall: x\n"
	unix := Decode("f.yaml", []byte(text), new(sample))
	windows := Decode("f.yaml", []byte(strings.ReplaceAll(text, "\n", "\r\n")), new(sample))
	if len(unix) != 3 || unix.Error() != windows.Error() {
		t.Errorf("got\n%s\nand\n%s", unix, windows)
	}
}

// The size is a promise to who writes and to who sends files, so it stands here as a number.
func TestTheLargestFile(t *testing.T) {
	text := "title: long\n# " + strings.Repeat("x", 262144)
	for bytes, refused := range map[int]bool{262144: false, 262145: true} {
		var file struct {
			Title string `yaml:"title" doc:"a title"`
		}
		faults := Decode("large.yaml", []byte(text[:bytes]), &file)
		if (len(faults) > 0) != refused {
			t.Errorf("a file of %d bytes: %v", bytes, faults)
		}
	}
}
