package attempt

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Files that are not right, and what is said of them.

func TestFaultsOfAFile(t *testing.T) {
	good := string(file(t))
	swap := func(old, new string) string {
		if !strings.Contains(good, old) {
			t.Fatalf("the file does not hold %q", old)
		}
		return strings.Replace(good, old, new, 1)
	}
	length := fmt.Sprintf("\"length_ticks\": %d", read(t, file(t)).LengthTicks)
	for name, c := range map[string]struct{ file, want string }{
		"empty":              {"  \n", "the file is empty"},
		"not JSON":           {"format: 1\n", "it does not begin with {"},
		"something else":     {`{"a":1}`, "this is not an attempt: an attempt is a file that"},
		"a list":             {"[1]", "it does not begin with {"},
		"cut off":            {good[:len(good)/2], "the file is cut off here"},
		"cut off in a word":  {good[:len(good)-len("\"\n}\n")], "the file is cut off here"},
		"a stray comma":      {swap("\"format\": 1,", "\"format\": 1,,"), "line 2, column 15: this is not JSON"},
		"two attempts":       {good + good, "something follows after the end"},
		"no format":          {swap("  \"format\": 1,\n", ""), "format: this key is missing"},
		"another format":     {swap("\"format\": 1", "\"format\": 2"), "format: the file is of format 2, and this program reads format 1"},
		"an unknown key":     {swap("\"model\"", "\"modell\""), "modell: this key is not known (nearest: model)"},
		"a missing key":      {swap("\"model\"", "\"modle\""), "model: this key is missing"},
		"null":               {swap("\"mode\": \"assessment\"", "\"mode\": null"), "mode: there is no value here"},
		"another mode":       {swap("\"mode\": \"assessment\"", "\"mode\": \"asessment\""), "(nearest: assessment)"},
		"a seed as a number": {swap("\"seed\": \"7\"", "\"seed\": 7"), "seed: this is a number, and not a text"},
		"a negative seed":    {swap("\"seed\": \"7\"", "\"seed\": \"-7\""), "seed: \"-7\" is not a whole number"},
		"other ticks":        {swap("\"ticks_per_second\": 20", "\"ticks_per_second\": 10"), "ticks_per_second: 10, and this model has 20"},
		"no date":            {swap("2031-05-14T09:00:00Z", "yesterday"), "when: \"yesterday\" is not a date"},
		"a long run":         {swap(length, "\"length_ticks\": 1008001"), "length_ticks: 1008001 is not from 0 to 1008000"},
		"a longer run":       {swap(length, "\"length_ticks\": 1008000"), "checkpoints: there are"},
		"an unknown act":     {swap("\"do\":\"decide\"", "\"do\":\"decid\""), "actions[1].do: \"decid\" is not an act (nearest: decide)"},
		"an unknown part":    {swap("\"on\":\"collection_set\"", "\"on\":\"colection_set\""), "is not a part of the bench (nearest: collection_set)"},
		"an unknown word":    {swap("\"value\":\"set_up_to_process\"", "\"value\":\"set_up_to_proces\""), "(nearest: set_up_to_process)"},
		"a word for a rate":  {swap("\"do\":\"set_vacuum\",\"value\":120", "\"do\":\"set_vacuum\",\"value\":\"strong\""), "\"strong\" is not a value of set_vacuum"},
		"an unknown line":    {swap("\"item\":\"wash\"", "\"item\":\"wahs\""), "(nearest: wash)"},
		"a negative tick":    {swap("{\"tick\":0,\"do\":\"note\"", "{\"tick\":-1,\"do\":\"note\""), "actions[0].tick: -1 is before the case begins"},
		"no order":           {swap("{\"tick\":0,\"do\":\"note\"", "{\"tick\":20000,\"do\":\"note\""), "comes after 20000"},
		"a tick after all":   {swap("{\"tick\":0,\"do\":\"note\"", "{\"tick\":200000,\"do\":\"note\""), "is after the end of the run"},
		"no tick":            {swap("{\"tick\":0,\"do\":\"note\"", "{\"do\":\"note\""), "actions[0].tick: this key is missing"},
		"a tick and a half":  {swap("{\"tick\":0,\"do\":\"note\"", "{\"tick\":0.5,\"do\":\"note\""), "actions[0]: tick is a number 0.5, and not a whole number"},
		"another key":        {swap("{\"tick\":0,\"do\":\"note\"", "{\"tick\":0,\"auto\":true,\"do\":\"note\""), "actions[0]: key \"auto\" is not known here"},
		"another text":       {swap("expected_loss_ml: 1500", "expected_loss_ml: 1501"), "scenario.sha256: the hash in the file is not that of its text"},
		"a broken scenario":  {swap("expected_loss_ml: 1500", "expected_loss: 1500"), "scenario.text: the scenario has faults"},
		"another scenario":   {swap("\"version\": 1,", "\"version\": 2,"), "scenario.version: 2, and its text says 1"},
		"no quantities":      {swap("\"patient_shed_ml\",", ""), "values for"},
		"a lost checkpoint":  {swap("{\"tick\":200,\"values\":", "{\"tick\":400,\"values\":"), "checkpoints[1].tick: 400, and it should be 200"},
		"a lost hash":        {swap("{\"tick\":0,\"hash\":", "{\"tick\":0,\"hsh\":"), "checkpoints[0]: key \"hsh\" is not known here"},
		"a word for a value": {swap("{\"tick\":200,\"values\":[", "{\"tick\":200,\"values\":[true,"), "true is not a number"},
		"a quoted value":     {swap("{\"tick\":200,\"values\":[", "{\"tick\":200,\"values\":[\"1\","), "leave out the quotes"},
		"a huge value":       {swap("{\"tick\":200,\"values\":[", "{\"tick\":200,\"values\":[1e999,"), "1e999 is too large"},
	} {
		_, err := Parse("attempt.json", []byte(c.file))
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s:\n%v\nwant %q", name, err, c.want)
			continue
		}
		for line := range strings.SplitSeq(err.Error(), "\n") {
			if !strings.HasPrefix(line, "attempt.json: ") && name != "a broken scenario" {
				t.Errorf("%s: %q does not name the file", name, line)
			}
		}
	}
}

func TestAllFaultsAtOnce(t *testing.T) {
	bad := strings.NewReplacer("\"do\":\"decide\"", "\"do\":\"decid\"", "\"seed\": \"7\"", "\"seed\": \"x\"", "\"ended\": true", "\"ended\": 1").Replace(string(file(t)))
	_, err := Parse("attempt.json", []byte(bad))
	var faults *Faults
	if !errors.As(err, &faults) || len(faults.List) != 3 {
		t.Errorf("%v, want three faults", err)
	}
}

func TestTooLarge(t *testing.T) {
	if _, err := Parse("attempt.json", bytes.Repeat([]byte(" "), MaxBytes+1)); err == nil || !strings.Contains(err.Error(), "larger than 64 MiB") {
		t.Error(err)
	}
}

func TestLoadWithoutAFile(t *testing.T) {
	folder := t.TempDir()
	if _, err := Load(filepath.Join(folder, "nothing.json")); !errors.Is(err, fs.ErrNotExist) || !strings.Contains(err.Error(), "there is no such file") {
		t.Error(err)
	}
	if _, err := Load(folder); !errors.Is(err, fs.ErrInvalid) || !strings.Contains(err.Error(), "this is a folder") {
		t.Error(err)
	}
	path := filepath.Join(folder, "cut.json")
	if err := os.WriteFile(path, file(t)[:5000], 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := Load(path); err == nil || !strings.Contains(err.Error(), "cut.json: line") {
		t.Error(err)
	}
}

// What an editor or a copy may do to a file without changing it, and a key twice, of which two readers see different ones.
func TestMarksLineEndsAndKeysTwice(t *testing.T) {
	good := file(t)
	for name, data := range map[string][]byte{
		"byte order mark": append([]byte("\ufeff"), good...),
		"CRLF":            bytes.ReplaceAll(good, []byte("\n"), []byte("\r\n")),
	} {
		if a, err := Parse("a.json", data); err != nil || !a.Sealed() {
			t.Errorf("%s: %v", name, err)
		}
	}
	_, err := Parse("a.json", bytes.Replace(good, []byte(`"ended":`), []byte("\"operator\": \"Anna\",\n  \"ended\":"), 1))
	if err == nil || !strings.Contains(err.Error(), "the key operator is there twice") || !strings.Contains(err.Error(), "a.json: line ") {
		t.Error(err)
	}
}

// Whatever the bytes are, reading answers, and what it accepts can be written and read again.
func FuzzParse(f *testing.F) {
	// A short one keeps the search quick: the first minute of the recorded run.
	good := file(f)
	a := read(f, good)
	a.LengthTicks, a.Ended = hashEvery, false
	a.Checkpoints = a.Checkpoints[:hashEvery/quantityEvery+1]
	for len(a.Actions) > 0 && a.Actions[len(a.Actions)-1].Tick > a.LengthTicks {
		a.Actions = a.Actions[:len(a.Actions)-1]
	}
	minute := a.Encode()
	if _, err := Parse("seed", minute); err != nil {
		f.Fatal(err)
	}
	f.Add(minute)
	a.Self = &Self{Marks: []ObjectiveMark{{"whole_case", WentPartly}, {"clean_bowls", NotWell}, {"bring_it_back", DidNotComeUp}, {"keep_a_record", NotMarked}}}
	marked := a.Encode()
	if _, err := Parse("seed", marked); err != nil {
		f.Fatal(err)
	}
	f.Add(marked)
	f.Add(minute[:len(minute)/2])
	f.Add([]byte("{}"))
	f.Add([]byte(`{"format":1,"actions":[{"tick":-1,"do":"","value":"NaN"}],"checkpoints":[{"values":["+Inf"]}]}`))
	f.Add(bytes.Replace(minute, []byte(`"value":`), []byte(`"value":1e400,"x":`), 1))
	f.Add([]byte(strings.Repeat(`{"format":`, 2000)))
	f.Fuzz(func(t *testing.T, data []byte) {
		a, err := Parse("fuzz", data)
		if err != nil {
			if err.Error() == "" {
				t.Error("a fault without words")
			}
			return
		}
		again, err := Parse("again", a.Encode())
		if err != nil {
			t.Fatalf("what was accepted is refused when written again: %v", err)
		}
		if !bytes.Equal(again.Encode(), a.Encode()) {
			t.Error("written twice, it is not the same")
		}
	})
}
