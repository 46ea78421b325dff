package schema

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"gopkg.in/yaml.v3"

	"rouleau/scenarios"
)

// compiled reads the schema with a validator that knows nothing of ours.
func compiled(t *testing.T) *jsonschema.Schema {
	t.Helper()
	text, err := JSON()
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	if err := c.AddResource("scenario.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("scenario.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// plain gives the content of a YAML file as an editor that follows YAML 1.2 sees it: dates and times are texts.
func plain(t *testing.T, n *yaml.Node) any {
	t.Helper()
	switch n.Kind {
	case yaml.MappingNode:
		m := map[string]any{}
		for i := 0; i+1 < len(n.Content); i += 2 {
			m[n.Content[i].Value] = plain(t, n.Content[i+1])
		}
		return m
	case yaml.SequenceNode:
		list := []any{}
		for _, item := range n.Content {
			list = append(list, plain(t, item))
		}
		return list
	}
	switch n.Tag {
	case "!!int", "!!float":
		if json.Valid([]byte(n.Value)) { // .nan and 0x10 have no form there
			return json.Number(n.Value)
		}
	case "!!bool":
		return n.Value == "true"
	case "!!null":
		return nil
	}
	return n.Value
}

func read(t *testing.T, file string) any {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var doc yaml.Node
	if err := yaml.Unmarshal(data, &doc); err != nil || len(doc.Content) != 1 {
		t.Fatalf("%s: %v", file, err)
	}
	return plain(t, doc.Content[0])
}

func TestWholeFilesValidate(t *testing.T) {
	s := compiled(t)
	for _, pattern := range []string{"../library/*.yaml", "../template/*.yaml", "../testdata/*.yaml", "../testdata/warn/*.yaml"} {
		files, err := filepath.Glob(filepath.FromSlash(pattern))
		if err != nil || len(files) == 0 {
			t.Fatalf("no files in %s", pattern)
		}
		for _, file := range files {
			if err := s.Validate(read(t, file)); err != nil {
				t.Errorf("%s:\n%v", file, err)
			}
		}
	}
	for _, lesson := range []bool{false, true} {
		text, err := scenarios.Template("my-first-case", lesson)
		if err != nil {
			t.Fatal(err)
		}
		var doc yaml.Node
		if err := yaml.Unmarshal(text, &doc); err != nil {
			t.Fatal(err)
		}
		if err := s.Validate(plain(t, doc.Content[0])); err != nil {
			t.Error(err)
		}
	}
}

// meantOnly are the broken files that a schema takes: every value of theirs can stand where it stands, and what is wrong is how
// values go together, or how the YAML is written.
var meantOnly = []string{
	"aliases", "anchors", "before_order", "bleeding", "blood_spread", "blood_values", "contaminant_amounts", "contaminant_names",
	"contaminant_needs", "documents", "duplicate_keys", "ends_too_soon", "event_ends_nothing", "must_divert", "names_twice", "nothing_right", "objectives", "phase_late", "phase_order",
	"points", "recovery", "right_answer", "said_by_nobody", "shares", "slip_after_the_end", "slip_dash_left_out", "slip_min_above_max",
	"times", "too_many_questions", "transfusion_trigger",
}

// What is wrong with the structure, with a range or with a word is seen by the schema alone, in every broken file that there is.
func TestBrokenFilesDoNot(t *testing.T) {
	s := compiled(t)
	files, err := filepath.Glob(filepath.FromSlash("../testdata/err/*.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	refused := 0
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), ".yaml")
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var doc yaml.Node
		if err := yaml.Unmarshal(data, &doc); err != nil || len(doc.Content) != 1 {
			continue // no YAML: an editor says so before any schema
		}
		valid := s.Validate(plain(t, doc.Content[0])) == nil
		if valid != slices.Contains(meantOnly, name) {
			t.Errorf("%s.yaml: valid by the schema: %v", name, valid)
		}
		if !valid {
			refused++
		}
	}
	if refused < 20 {
		t.Errorf("only %d files are refused", refused)
	}
}

// A change in one place of a whole file is found there.
func TestSchemaIsStrict(t *testing.T) {
	s := compiled(t)
	text, err := scenarios.Template("my-first-case", false)
	if err != nil {
		t.Fatal(err)
	}
	for old, bad := range map[string]string{
		"points: 10\n": "points: 0\n", "least: 1\n": "leest: 1\n", "starts: 0:05:00": "starts: 5:00", "day: 2031-05-14": "day: 2031-02-30",
		"{uniform: [58, 66]}\n  height": "{uniform: [58, 66, 70]}\n  height", "sex: male": "sex: man", "measure: clot_ml": "measure: clots_ml",
		"{uniform: [172, 180]}": "{uniform: [172, 1800]}", ", within_min: 3}": "}", "level: routine": "level: 3", "weight_kg: {normal: {mean: 82, sd: 4, min: 74, max: 90}}": "weight_kg: {normal: {mean: 82, sd: 4, min: 74}}",
		"    least: 100\n    soft_below: 80\n": "    soft_below: 80\n", "- {kind: say, at: 0:05:00,": "- {kind: say,", "id: my-first-case": "id: My Case",
	} {
		changed := strings.Replace(string(text), old, bad, 1)
		var doc yaml.Node
		if err := yaml.Unmarshal([]byte(changed), &doc); err != nil || changed == string(text) {
			t.Fatalf("%q: %v", old, err)
		}
		if s.Validate(plain(t, doc.Content[0])) == nil {
			t.Errorf("%q validates", bad)
		}
	}
}

func TestSchemaDescribesEveryKey(t *testing.T) {
	text, err := JSON()
	if err != nil {
		t.Fatal(err)
	}
	again, err := JSON()
	if err != nil || !bytes.Equal(again, text) {
		t.Errorf("it comes out in another way a second time: %v", err)
	}
	if n := bytes.Count(text, []byte(`"description"`)); n < 150 {
		t.Errorf("%d descriptions", n)
	}
	for _, want := range []string{`"minimum": 0.5`, `"default": [`, `"examples": [`, `"recovery_against_steady"`, `"maxItems": 12`} {
		if !bytes.Contains(text, []byte(want)) {
			t.Errorf("%s is not in it", want)
		}
	}
}
