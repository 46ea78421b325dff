// This file tests that the reference cases keep their shape: they come from outside and are not ours to change.
package house

import (
	"encoding/json"
	"maps"
	"slices"
	"strings"
	"testing"
)

// referenceFiles gives for each file how many cases it has and what each of them expects.
var referenceFiles = map[string]struct {
	cases  int
	expect []string
}{
	"blood_volume": {2, []string{"blood_volume_ml"}},
	"bowl": {23, []string{
		"feed_volume_ml", "fill_loss_fraction", "fill_time_s", "made_free_hb_g", "packing_after_fill", "packing_after_wash",
		"product_hct", "red_cell_recovery", "solute_removal", "wash_loss_fraction", "wash_time_s",
	}},
	"calcium":   {4, []string{"ionised_calcium"}},
	"filter":    {7, []string{"activation", "citrate", "clot_ml", "hct", "heparin", "protein"}},
	"patient":   {3, []string{"blood_volume_ml", "hct", "infused_ml", "interstitial_excess_ml", "plasma_protein_g_l", "urine_ml"}},
	"reservoir": {10, []string{"activation", "clear_layer_ml", "clot_ml", "ionised_calcium", "outlet_hct", "outlet_limit_ml_min", "volume_ml"}},
	"suction":   {3, []string{"flow_limit_ml_min", "haemolysis_fraction"}},
}

func TestReferenceCasesKeepTheirShape(t *testing.T) {
	for _, module := range slices.Sorted(maps.Keys(referenceFiles)) {
		want := referenceFiles[module]
		path := "testdata/reference/" + module + ".json"
		var cases []struct {
			Module string             `json:"module"`
			Input  map[string]any     `json:"input"`
			Expect map[string]float64 `json:"expect"`
		}
		decoder := json.NewDecoder(strings.NewReader(string(read(t, path))))
		decoder.DisallowUnknownFields()
		if err := decoder.Decode(&cases); err != nil {
			t.Errorf("%s: %v", path, err)
			continue
		}
		if len(cases) != want.cases {
			t.Errorf("%s: %d cases, want %d", path, len(cases), want.cases)
		}
		for i, c := range cases {
			if c.Module != module || len(c.Input) == 0 {
				t.Errorf("%s: case %d is of module %q and has %d inputs", path, i, c.Module, len(c.Input))
			}
			if got := slices.Sorted(maps.Keys(c.Expect)); !slices.Equal(got, want.expect) {
				t.Errorf("%s: case %d expects %v, want %v", path, i, got, want.expect)
			}
		}
	}
}

func TestEveryReferenceFileParses(t *testing.T) {
	seen := 0
	for _, path := range files(t) {
		if strings.HasPrefix(path, "testdata/reference/") && strings.HasSuffix(path, ".json") {
			seen++
			if !json.Valid(read(t, path)) {
				t.Errorf("%s is not JSON", path)
			}
		}
	}
	if seen < len(referenceFiles) {
		t.Errorf("%d reference files, want at least %d", seen, len(referenceFiles))
	}
}
