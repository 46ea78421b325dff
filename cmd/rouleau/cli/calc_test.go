package cli

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Computing: every reference case through the command, and every module at the edges of what it takes.

// referenceCase is a case of testdata/reference with what came out.
type referenceCase struct {
	Module string          `json:"module"`
	Input  json.RawMessage `json:"input"`
	Expect map[string]float64
	Result map[string]float64
}

func read(t *testing.T, data []byte) (cases []referenceCase) {
	t.Helper()
	if err := json.Unmarshal(data, &cases); err != nil {
		t.Fatal(err)
	}
	return cases
}

// tolerance is that of the README of testdata/reference: 0.3 %, loss fractions and 1 − solute_removal 1 %, never tighter than
// 1e-5, a fill up to one tick of 50 ms late.
func tolerance(c *referenceCase, name string, want float64) (below, above float64) {
	below = max(1e-5, 0.003*math.Abs(want))
	switch {
	case strings.HasSuffix(name, "_loss_fraction"):
		below = max(1e-5, 0.01*want)
	case name == "solute_removal":
		below = max(1e-5, 0.01*(1-want))
	case name == "fill_time_s":
		return below, max(below, 0.05)
	case name == "feed_volume_ml":
		var in struct{ Fill struct{ Rate float64 } }
		if err := json.Unmarshal(c.Input, &in); err != nil {
			return 0, 0
		}
		return below, max(below, in.Fill.Rate/60*0.05)
	}
	return below, below
}

func TestReferenceCases(t *testing.T) {
	compared := 0
	for module, count := range map[string]int{"bowl": 23, "filter": 7, "reservoir": 10, "patient": 3, "calcium": 4, "suction": 3, "blood_volume": 2} {
		path := filepath.Join("..", "..", "..", "testdata", "reference", module+".json")
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		out, stderr, code := call(t, "calc", "--cases", path)
		if code != exitDone || stderr != "" {
			t.Fatalf("%s: code %d, %s", module, code, stderr)
		}
		want, got := read(t, data), read(t, []byte(out))
		if len(want) != count || len(got) != count {
			t.Fatalf("%s: %d results for %d cases, want %d", module, len(got), len(want), count)
		}
		for i := range want {
			if got[i].Module != want[i].Module || len(got[i].Result) != len(want[i].Expect) {
				t.Errorf("%s case %d: %d numbers of %s, want %d", module, i, len(got[i].Result), got[i].Module, len(want[i].Expect))
			}
			for name, x := range want[i].Expect {
				y, ok := got[i].Result[name]
				below, above := tolerance(&want[i], name, x)
				if !ok || y < x-below || y > x+above {
					t.Errorf("%s case %d: %s = %v, want %v", module, i, name, y, x)
				}
				compared++
			}
		}
	}
	if compared < 300 {
		t.Errorf("only %d numbers were compared", compared)
	}
}

// usual is a case of each module from which the edges are tried.
var usual = map[string]string{
	"bowl":         `{"feed":{"hct":0.18,"protein":20},"fill":{"rate":300,"feed_volume":2000},"wash":{"rate":300,"volume":1000}}`,
	"reservoir":    `{"volume":1500,"hct":0.18,"protein":25,"calcium":1,"esr":20,"seconds":60}`,
	"filter":       `{"blood_rate":25,"hct":0.25,"protein":45,"calcium":1.6,"drip":75,"agent":"heparin","primed":true,"minutes":1}`,
	"calcium":      `{"calcium":2.4,"citrate":1,"protein":70}`,
	"suction":      `{"vacuum":100,"air_fraction":0.1,"hct":0.4}`,
	"blood_volume": `{"sex":"male","height":178,"weight":82}`,
	"patient":      `{"blood_volume":5000,"hct":0.4,"minutes":1,"bleed_rate":45,"replacement":"crystalloid"}`,
}

// Each field alone and each pair of fields at their edges: an answer in numbers or a fault in words, never anything else.
func TestEdges(t *testing.T) {
	for i := range modules {
		m := &modules[i]
		cases, faults := readCases([]byte(`[{"module":"` + m.name + `","input":` + usual[m.name] + `}]`))
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		for a := range m.fields {
			for b := a; b < len(m.fields); b++ {
				for _, edges := range [][2]bool{{false, false}, {false, true}, {true, false}, {true, true}} {
					in := values{}
					for path, x := range cases[0].values {
						in[path] = x
					}
					edge(in, &m.fields[a], edges[0])
					edge(in, &m.fields[b], edges[1])
					if len(m.complete(in, func(path string) string { return path })) == 0 {
						m.compute(in) // panics where a result is no number
					}
				}
			}
		}
	}
}

// edge sets a field to one of its bounds; long times are left, for they take long and change nothing in kind.
func edge(in values, f *field, most bool) {
	x := f.least
	if most {
		x = f.most
	}
	switch {
	case f.kind == number && !(most && (f.path == "minutes" || f.path == "seconds" || f.path == "wash.volume" || f.path == "fill.feed_volume")):
		in[f.path] = x
	case f.kind == numbers:
		in[f.path] = []float64{x}
	case f.kind == truth:
		in[f.path] = most
	}
}

// What --json prints for a case by hand is itself a case.
func TestByHandIsACase(t *testing.T) {
	out, _, code := call(t, "calc", "suction", "--vacuum", "150", "--air-fraction", "0.3", "--hct", "0.2", "--json")
	if code != exitDone {
		t.Fatal(out)
	}
	path := filepath.Join(t.TempDir(), "cases.json")
	if err := os.WriteFile(path, []byte("["+out+"]"), 0o600); err != nil {
		t.Fatal(err)
	}
	again, stderr, code := call(t, "calc", "--cases", path)
	if code != exitDone {
		t.Fatal(stderr)
	}
	if a, b := read(t, []byte("["+out+"]"))[0].Result, read(t, []byte(again))[0].Result; len(a) != 2 || a["flow_limit_ml_min"] != b["flow_limit_ml_min"] {
		t.Errorf("%v, %v", a, b)
	}
}

func FuzzReadCases(f *testing.F) {
	for _, name := range moduleNames() {
		f.Add([]byte(`[{"module":"` + name + `","input":` + usual[name] + `}]`))
	}
	f.Add([]byte(`[{"module":"bowl","input":{"feed":[],"bowl":{"volume":1e999}}},null,{}]`))
	f.Fuzz(func(t *testing.T, data []byte) {
		cases, faults := readCases(data)
		for _, fault := range faults {
			if fault == "" {
				t.Error("a fault without words")
			}
		}
		if len(faults) == 0 {
			for _, c := range cases {
				if c.module == nil {
					t.Error("a case without a module and without a fault")
				}
			}
		}
	})
}
