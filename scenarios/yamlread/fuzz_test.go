// This file feeds arbitrary files to the reader: it may refuse them, but not
// panic, print outside the file, or read them differently a second time.

package yamlread

import (
	"os"
	"path/filepath"
	"reflect"
	"testing"
	"unicode/utf8"
)

func FuzzRead(f *testing.F) {
	files, err := filepath.Glob("testdata/err/*.yaml")
	if err != nil || len(files) == 0 {
		f.Fatal("no seeds")
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Add([]byte(good))
	f.Add([]byte(laughs()))
	f.Fuzz(func(t *testing.T, data []byte) {
		var into, again sample
		doc := Read("fuzz.yaml", data, &into)
		faults := doc.Faults()
		for _, fault := range faults {
			if fault.Line < 1 || fault.Line > max(len(doc.lines), 1) {
				t.Fatalf("line %d of %d: %s", fault.Line, len(doc.lines), fault.Message)
			}
			width := utf8.RuneCountInString(doc.lines[fault.Line-1])
			if fault.Col < 1 || fault.Col > width+1 {
				t.Fatalf("column %d in a line of %d: %s", fault.Col, width, fault.Message)
			}
			if fault.Message == "" || !utf8.ValidString(fault.String()) {
				t.Fatalf("broken text %q", fault.String())
			}
		}
		second := Decode("fuzz.yaml", data, &again)
		if second.Error() != faults.Error() || !reflect.DeepEqual(into, again) {
			t.Fatal("a second reading differs")
		}
		if len(faults) == 0 && (len(into.ID) < 3 || into.Patient.MassKG < 1 || into.Version < 1) {
			t.Fatalf("read without faults against its rules: %+v", into)
		}
	})
}
