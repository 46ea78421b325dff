package operators

import (
	"strings"
	"testing"

	"rouleau/scenarios"
	"rouleau/scoring/play"
	"rouleau/sim"
)

const prepares = `format: 1
name: prepares and stops
acts:
  - {at: 0:00:00, do: decide, value: set_up_to_process}
  - {at: 0:00:00, do: choose_anticoagulant, value: heparin_solution}
  - {at: 0:00:01, do: open_set, on: collection_set, note: hands are busy for 45 s after this}
  - {at: 0:00:02, do: connect, on: suction_line}
  - {at: 0:00:03, do: fill, note: refused for good as there is nothing to fill}
  - {at: 0:00:04, do: set_drip, value: 62.5}
  - {at: 0:00:05, do: estimate_loss, value: 12}
  - {at: 0:00:06, do: note, text: "yes"}
  - {at: 00:07, do: clamp, on: drip_clamp, value: open}
`

func TestScriptPlays(t *testing.T) {
	s, faults := ParseScript("script.yaml", []byte(prepares))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	run := play.New(spine(), 1)
	run.Case.LastTick = 120 * sim.TicksPerSecond
	run.ToEnd(s)
	var got []string
	for _, a := range run.Actions {
		got = append(got, a.Do.String())
	}
	want := "decide choose_anticoagulant open_set connect set_drip estimate_loss note clamp"
	if strings.Join(got, " ") != want {
		t.Errorf("did %v, want %s", got, want)
	}
	if connected := run.Actions[3].Tick; connected != 46*sim.TicksPerSecond {
		t.Errorf("the line was connected at tick %d, want as soon as the hands were free after 46 s", connected)
	}
	if a := run.Actions[5]; a.Value != 12 {
		t.Errorf("%+v", a)
	}
	if len(s.Refused) != 1 || s.Refused[0].Act.Do != sim.Fill || s.Refused[0].Due != 60 || s.Refused[0].Reason == "" {
		t.Errorf("refused %+v, want the filling", s.Refused)
	}
	if s.Left() != 0 || s.Name != "prepares and stops" {
		t.Errorf("%d acts left of %q", s.Left(), s.Name)
	}
}

// A person gives up as well: after a minute the act is noted as refused and the next one has its turn.
func TestScriptWaitsNoLongerThanAMinute(t *testing.T) {
	s := &Script{acts: []timed{{20, sim.Action{Do: sim.Wash}}, {20, sim.Action{Do: sim.Mix}}}}
	tries := 0
	for tick := int64(0); tick < 100*sim.TicksPerSecond; tick += sim.TicksPerSecond {
		s.Act(&sim.Seen{Tick: tick}, func(a sim.Action) sim.Reason {
			if a.Do == sim.Wash {
				tries++
				return "bowl_is_braking"
			}
			return ""
		})
	}
	if tries != 61 || len(s.Refused) != 1 || s.Refused[0].Reason != "bowl_is_braking" || s.Left() != 0 {
		t.Errorf("%d tries, refused %+v, %d left", tries, s.Refused, s.Left())
	}
}

func TestScriptReadsItems(t *testing.T) {
	s, faults := ParseScript("s.yaml", []byte("format: 1\nname: x\nacts: [{at: 0:00:01, do: reconcile, item: wash, value: 12}]\n"))
	if len(faults) > 0 || s.acts[0].act != (sim.Action{Do: sim.Reconcile, Item: uint8(sim.TallyWash), Value: 12}) {
		t.Errorf("%v, %+v", faults, s)
	}
}

func TestScriptFaults(t *testing.T) {
	_, faults := ParseScript("bad.yaml", []byte(`format: 1
name: all wrong
acts:
  - {at: 0:00:05, do: set_dripp, value: 60}
  - {at: 0:00:04, do: open_set, on: colection_set}
  - {at: 0:00:06, do: decide, value: set_up}
  - {at: 0:00:07, do: set_drip}
  - {at: 0:00:08, do: mix, value: 1}
  - {at: 0:00:09, do: set_vacuum, value: 4000}
  - {at: 0:00:10, do: reconcile, value: 10}
  - {at: 0:00:11, do: label, on: bag_1, value: name+nmber}
  - {at: 0:00:12, do: hang, on: wash_hook_a, value: 1.5}
  - {at: 0:00:13, do: set_drip, value: 60 drops}
  - {at: 0:00:14, do: note, speed: 3}
  - {at: 14, do: mix}
`))
	text := faults.Error()
	for _, want := range []string{
		"bad.yaml:4:23: there is no act of this name", "nearest: set_drip", "take_down, end_case, ",
		"bad.yaml:5:10: this is earlier than the act before it", "bad.yaml:5:37: there is no part of this name", "nearest: collection_set",
		"bad.yaml:6:38: this is not a value of decide", "expected: do_not_salvage, collect_only, set_up_to_process",
		"bad.yaml:7:5: set_drip needs a value", "bad.yaml:8:35: mix has no value",
		"bad.yaml:9:42: this is not a value of set_vacuum", "expected: a number, 0 to 400",
		"bad.yaml:10:5: item goes with reconcile", "bad.yaml:11:48: this is not a value of label",
		"bad.yaml:12:53: this is not a value of hang", "expected: the place of the pack in bench.packs, a whole number, 0 for the first, at most 15",
		"bad.yaml:13:40: 60 drops has a unit", "bad.yaml:14:29: key \"speed\" is not known",
		`bad.yaml:15:10: this is "14", not a time`,
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not among the faults:\n%s", want, text)
		}
	}
	if len(faults) != 13 {
		t.Errorf("%d faults, want 13", len(faults))
	}
}

// Every value that an act can have is written as a word or a number and read as the same.
func TestValuesInWords(t *testing.T) {
	worded := 0
	for _, name := range scenarios.VerbNames() {
		v, _ := sim.VerbNamed(name)
		least, most, whole := sim.ValueRange(v)
		if !whole || most > 100 {
			continue
		}
		for x := least; x <= most; x++ {
			word := scenarios.ValueWord(v, x)
			if word == "" {
				continue
			}
			worded++
			if got, ok := scenarios.ValueNamed(v, word); !ok || got != x {
				t.Errorf("%s %g: %q is read as %g", name, x, word, got)
			}
		}
		if known := scenarios.ValueWords(v); len(known) > 0 && scenarios.ValueWord(v, most) == "" {
			t.Errorf("%s: its greatest value, %g, has no word", name, most)
		}
	}
	if worded < 150 {
		t.Errorf("only %d values have words", worded)
	}
	for _, x := range []float64{-1, 0.5, 64, 1e300} {
		if w := scenarios.ValueWord(sim.Label, x); w != "" {
			t.Errorf("%g is %q", x, w)
		}
	}
	if _, ok := scenarios.ValueNamed(sim.Ask, ""); ok {
		t.Error("an empty word is a request")
	}
}

func FuzzParseScript(f *testing.F) {
	f.Add([]byte(prepares))
	f.Add([]byte("format: 1\nname: x\nacts: [{at: 0:00:01, do: label, value: ''}]"))
	f.Fuzz(func(t *testing.T, data []byte) {
		if s, faults := ParseScript("fuzz.yaml", data); (s == nil) != (len(faults) > 0) {
			t.Error("neither a script nor a fault, or both")
		}
	})
}
