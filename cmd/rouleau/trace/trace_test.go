package trace

import (
	"bytes"
	"encoding/csv"
	"errors"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"testing"

	"rouleau/scenarios"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// lineOf is what is written of one second.
func lineOf(s play.Sample) (line []string) {
	for i := range columns {
		line = append(line, columns[i].of(&s))
	}
	return line
}

// Every field of a sample has its columns: changing it alone changes them and no other, and every column tells of one field.
func TestEveryFieldIsWritten(t *testing.T) {
	before := lineOf(play.Sample{})
	told := map[string]string{}
	kind := reflect.TypeFor[play.Sample]()
	for i := range kind.NumField() {
		var s play.Sample
		switch v := reflect.ValueOf(&s).Elem().Field(i); v.Kind() {
		case reflect.Bool:
			v.SetBool(true)
		case reflect.Float64:
			v.SetFloat(1234.5)
		case reflect.Int, reflect.Int64:
			v.SetInt(3 * sim.TicksPerSecond)
		case reflect.Uint8:
			v.SetUint(2)
		default:
			t.Fatalf("%s is a %s, which this test cannot set", kind.Field(i).Name, v.Kind())
		}
		var changed []string
		for k, cell := range lineOf(s) {
			if name := columns[k].name; cell != before[k] {
				if field := told[name]; field != "" {
					t.Errorf("%s tells of %s and of %s", name, field, kind.Field(i).Name)
				}
				told[name] = kind.Field(i).Name
				changed = append(changed, name)
			}
		}
		switch name := kind.Field(i).Name; {
		case name == "Tick" && !slices.Equal(changed, []string{"time_s", "clock"}), name != "Tick" && len(changed) != 1:
			t.Errorf("%s is told by the columns %q", name, changed)
		}
	}
	if len(told) != len(columns) {
		t.Errorf("%d of %d columns tell of a field", len(told), len(columns))
	}
}

func TestNamesAreSnakeCaseAndSeveral(t *testing.T) {
	snake := regexp.MustCompile(`^[a-z]+(_[a-z]+)*$`)
	seen := map[string]bool{}
	for i := range columns {
		if name := columns[i].name; !snake.MatchString(name) || seen[name] {
			t.Errorf("%q is no name, or stands twice", name)
		} else {
			seen[name] = true
		}
	}
	if columns[0].name != "time_s" || columns[1].name != "clock" {
		t.Errorf("the first columns are %s and %s", columns[0].name, columns[1].name)
	}
}

func TestEveryModeOfThePumpHasItsWord(t *testing.T) {
	seen := map[string]bool{}
	for m := sim.PumpIdle; m <= sim.PumpTopUp; m++ {
		if w := pump(m); w == "" || seen[w] || w[0] < 'a' {
			t.Errorf("mode %d is called %q", m, w)
		} else {
			seen[w] = true
		}
	}
	if got := pump(200); got != "200" {
		t.Errorf("an unknown mode is called %q", got)
	}
}

// A whole case is written and read back to the bit.
func TestATraceIsReadBackAsItWas(t *testing.T) {
	sc, err := scenarios.Open("first-bowl")
	if err != nil {
		t.Fatal(err)
	}
	c := sc.Case(1, false)
	run := play.New(c, 1)
	run.ToEnd(operators.NewSteady(operators.SheetOf(sc, &c)))
	var b, again bytes.Buffer
	if err := errors.Join(Write(&b, run), Write(&again, run)); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(b.Bytes(), again.Bytes()) {
		t.Error("the same run gives other bytes")
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil || len(rows) != len(run.Trace)+1 || len(run.Trace) < 600 {
		t.Fatalf("%d rows of %d seconds, %v", len(rows), len(run.Trace), err)
	}
	at := map[string]int{}
	for i, name := range rows[0] {
		at[name] = i
	}
	worked := map[string]bool{}
	for i, row := range rows[1:] {
		s := &run.Trace[i]
		for name, want := range map[string]float64{"time_s": float64(i), "reservoir_ml": s.ReservoirML, "patient_hb_g_dl": s.HbGDL, "lysed_ml": s.LysedML, "pump_flow_ml_min": s.FlowMLMin} {
			if got, err := strconv.ParseFloat(row[at[name]], 64); err != nil || got != want {
				t.Fatalf("second %d: %s is read back as %g, was %g (%v)", i, name, got, want, err)
			}
		}
		if reservoir := row[at["to_reservoir"]]; reservoir != yes(s.ToReservoir) {
			t.Fatalf("second %d: to_reservoir is %q", i, reservoir)
		}
		worked[row[at["pump_mode"]]] = true
	}
	if !worked["idle"] || !worked["fill"] || !worked["wash"] || !worked["empty"] {
		t.Errorf("the pump was %v", worked)
	}
	if row := rows[1+754]; row[at["clock"]] != "0:12:34" {
		t.Errorf("second 754 is shown as %s", row[at["clock"]])
	}
}

// broken is a file that takes no more.
type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, errors.New("no room") }

func TestAFileThatTakesNoMoreIsTold(t *testing.T) {
	if err := Write(broken{}, &play.Run{Trace: make([]play.Sample, 1)}); err == nil {
		t.Error("no fault was told")
	}
}
