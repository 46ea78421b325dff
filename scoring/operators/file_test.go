package operators

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"rouleau/scenarios/yamlread"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// Every operator of the library is read without a fault, and steady's file writes out every habit as it is left out.
func TestLibrary(t *testing.T) {
	names := Library()
	if len(names) < 7 || names[0] != "steady" || names[len(names)-1] != "idle" {
		t.Fatalf("the library holds %v", names)
	}
	for _, name := range names {
		if o, err := Open(name); err != nil || o.Name != name || o.Failing == "" {
			t.Errorf("%s: %v, %+v", name, err, o)
		}
	}
	data, err := library.ReadFile("library/steady.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var written, leftOut File
	doc := yamlread.Read("steady.yaml", data, &written)
	yamlread.Read("short.yaml", []byte("format: 1\nname: steady\nfailing: none at all\n"), &leftOut)
	if written.Habits != leftOut.Habits {
		t.Errorf("the habits of steady are %+v, left out they are %+v", written.Habits, leftOut.Habits)
	}
	habits := reflect.TypeOf(written.Habits)
	for i := range habits.NumField() {
		if key := "habits." + habits.Field(i).Tag.Get("yaml"); !doc.Has(key) {
			t.Errorf("steady.yaml does not write out %s", key)
		}
	}
}

// An operator of the library plays the same as steady where its file changes nothing.
func TestAFileWithoutHabitsIsSteady(t *testing.T) {
	o, faults := Parse("same.yaml", []byte("format: 1\nname: same\nfailing: none at all\n"))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	a, b := play.New(spine(), 3), play.New(spine(), 3)
	a.ToEnd(NewSteady(sheet(spine())))
	b.ToEnd(o.Play(sheet(spine())))
	if a.State.Hash() != b.State.Hash() {
		t.Error("a file that changes nothing plays another case than steady")
	}
}

const ruled = `format: 1
name: my own
failing: Opens the drip wide while much bleeds, and mixes all the time.
shows: [anticoagulant_per_100ml]
habits:
  hand_over: volume+hct
rules:
  - {reads: {what: bleeding_ml_min, at_least: 30}, do: set_drip, value: 200, every_s: 600}
  - {holds: reservoir_ready, do: mix}
`

func TestRulesComeFirst(t *testing.T) {
	o, faults := Parse("own.yaml", []byte(ruled))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	run := play.New(spine(), 1)
	run.ToEnd(o.Play(sheet(spine())))
	wide, handed := 0, 0.0
	for _, a := range run.Actions {
		if a.Do == sim.SetDrip && a.Value == 200 {
			wide++
		}
		if a.Do == sim.HandOver {
			handed = a.Value
		}
	}
	if wide < 3 || wide > 8 {
		t.Errorf("the rule about the drip was followed %d times, want every ten minutes of the brisk half hour", wide)
	}
	if handed != sim.HandoverVolume|sim.HandoverHct {
		t.Errorf("handed over %g", handed)
	}
}

// What a rule did is not undone by a habit while the rule holds, and is once it does not.
func TestNoHabitUndoesARule(t *testing.T) {
	const file = "format: 1\nname: thrifty\nfailing: Stops the drip while little bleeds.\nshows: [clot_ml]\nrules:\n" +
		"  - {reads: {what: bleeding_ml_min, at_most: 25}, do: set_drip, value: 0, every_s: 60}\n"
	o, faults := Parse("own.yaml", []byte(file))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	run := play.New(spine(), 1)
	actor := o.Play(sheet(spine()))
	slow, brisk := 0, 0
	var v sim.Seen
	for ; !run.State.Ended && run.State.Tick < 60*60*sim.TicksPerSecond; run.Step() {
		if run.State.Tick%sim.TicksPerSecond != 0 {
			continue
		}
		sim.View(&run.Case, &run.State, &v)
		actor.Act(&v, run.Do)
		sim.View(&run.Case, &run.State, &v)
		switch drops := v.DropsMin; {
		case v.Route != sim.ToReservoir || !v.Bench.Opened[sim.CollectionSet] || v.Bench.TakenDown:
		case v.BriskMLMin <= 25:
			slow++
			if drops != 0 && slow > 1 {
				t.Fatalf("at %d s a habit sets the drip to %g while the rule holds", v.Tick/sim.TicksPerSecond, drops)
			}
		case drops >= leastDrops:
			brisk++
		}
	}
	if slow < 300 || brisk < 300 {
		t.Errorf("%d s of little bleeding, %d s of much with the drip on", slow, brisk)
	}
}

// To ask for one thing does not keep a habit from asking for another, nor does an act on one bag keep it from the next.
func TestARuleKeepsToItsOwnAct(t *testing.T) {
	ask := func(r sim.Request) *sim.Action { return &sim.Action{Do: sim.Ask, Value: float64(r)} }
	if sameAct(ask(sim.RinseSwabs), ask(sim.IsAgentGone)) || !sameAct(ask(sim.RinseSwabs), ask(sim.RinseSwabs)) {
		t.Error("asking for one thing is asking for another")
	}
	if sameAct(&sim.Action{Do: sim.Label, On: sim.Bag(0)}, &sim.Action{Do: sim.Label, On: sim.Bag(1)}) {
		t.Error("one bag is another")
	}
	if !sameAct(&sim.Action{Do: sim.SetDrip, Value: 0}, &sim.Action{Do: sim.SetDrip, Value: 89}) {
		t.Error("another drip is no drip")
	}
}

func TestOperatorFaults(t *testing.T) {
	_, faults := Parse("bad.yaml", []byte(`format: 1
name: all wrong
failing: Everything.
shows: [clot_mm]
habits:
  checkers: 3
  fill_ml_mn: 300
  label: nmae
rules:
  - {do: mix}
  - {holds: clear_layr, do: mix}
  - {reads: {what: pool_m, at_least: 3}, do: mixx}
  - {reads: {what: pool_ml}, do: set_drip}
`))
	text := faults.Error()
	for _, want := range []string{
		"bad.yaml:4:9: there is no measure of this name", "nearest: clot_ml", "bad.yaml:6:13: 3 is too large", "fill_ml_mn", "nearest: fill_ml_min",
		"bad.yaml:8:10: this is not a set of fields", "nearest: name", "bad.yaml:10:5: this rule does not say when", "nearest: clear_layer",
		"bad.yaml:12:20: nothing of this name can be read", "nearest: pool_ml", "nearest: mix", "bad.yaml:13:", "this does not say how much", "set_drip needs a value",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not among the faults:\n%s", want, text)
		}
	}
}

// A name that is like none lists every name there is, for nobody has them at hand.
func TestAllNamesAreListed(t *testing.T) {
	_, faults := Parse("help.yaml", []byte("format: 1\nname: asks\nfailing: Asks for names.\nhabits: {help: 1}\nrules:\n  - {holds: help, do: mix}\n"))
	if len(faults) != 2 {
		t.Fatal(faults)
	}
	habits := reflect.TypeFor[Habits]()
	for i := range habits.NumField() {
		if name := habits.Field(i).Tag.Get("yaml"); !strings.Contains(faults[0].Expected, name) {
			t.Errorf("the habit %s is not listed", name)
		}
	}
	f, _ := reflect.TypeFor[Rule]().FieldByName("Holds")
	_, situations, _ := strings.Cut(f.Tag.Get("rule"), "oneof=")
	for _, name := range strings.Split(situations, "|") {
		if !strings.Contains(faults[1].Expected, name) {
			t.Errorf("the situation %s is not listed", name)
		}
	}
}

func TestOpenReadsFiles(t *testing.T) {
	folder := t.TempDir()
	own, script := filepath.Join(folder, "own.yaml"), filepath.Join(folder, "script.yaml")
	for path, text := range map[string]string{own: ruled, script: prepares} {
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if o, err := Open(own); err != nil || o.Name != "my own" {
		t.Errorf("%+v, %v", o, err)
	}
	o, err := Open(script)
	if err != nil || o.Name != "prepares and stops" {
		t.Fatalf("%+v, %v", o, err)
	}
	for range 2 { // every run has all acts before it
		if s, ok := o.Play(Sheet{}).(*Script); !ok || s.Left() != 9 {
			t.Errorf("the script was read as %T with other than 9 acts", s)
		}
	}
	if _, err := Open(filepath.Join(folder, "none.yaml")); !errors.Is(err, fs.ErrNotExist) || !strings.Contains(err.Error(), "hasty") {
		t.Error(err)
	}
	if _, err := Open(folder); !errors.Is(err, fs.ErrInvalid) || !strings.Contains(err.Error(), "this is a folder") {
		t.Error(err)
	}
}

// A yes-or-no question is answered by its words, and one that was never read with yes.
func TestAnswers(t *testing.T) {
	c := spine()
	c.Events = append(c.Events, sim.EventSpec{Kind: sim.EventAsk, At: 2 * 60 * sim.TicksPerSecond, Line: 7, Value: 0, Within: 60 * sim.TicksPerSecond})
	s := sheet(c)
	s.Answers = []LineAnswer{{Line: 7, Value: 0}}
	run := play.New(c, 1)
	run.ToEnd(NewSteady(s))
	for _, a := range run.Actions {
		if a.Do == sim.Answer {
			if a.Value != 0 {
				t.Errorf("answered %g", a.Value)
			}
			return
		}
	}
	t.Error("the question was not answered")
}

// A name that is like none is answered with the measures that have a part of it, and with some in any case.
func TestAlikeMeasures(t *testing.T) {
	_, faults := Parse("own.yaml", []byte("format: 1\nname: own\nfailing: Rinses nothing.\nshows: [foo, rinsing_of_swabs]\n"))
	text := faults.Error()
	if !strings.Contains(text, "own.yaml:4:9: ") || strings.Count(text, "the name of a measure, such as ") != 2 || !strings.Contains(text, "swabs_rinsed") {
		t.Error(text)
	}
}

func FuzzParseOperator(f *testing.F) {
	f.Add([]byte(ruled))
	f.Fuzz(func(t *testing.T, data []byte) {
		if o, faults := Parse("fuzz.yaml", data); (o == nil) != (len(faults) > 0) {
			t.Error("neither an operator nor a fault, or both")
		}
	})
}
