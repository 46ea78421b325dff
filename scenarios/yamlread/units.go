// This file knows how a unit is written at the end of a key, so that a key with
// another unit than ours is recognised for what it is.

package yamlread

import "strings"

// unitWords are endings that mean a unit, ours or one that an author may bring
// along, each with its usual sign.
var unitWords = map[string]string{
	"ml": "mL", "l": "L", "dl": "dL", "cl": "cL", "ul": "µL", "fl": "fL",
	"ml_min": "mL/min", "l_min": "L/min", "ml_h": "mL/h", "l_h": "L/h", "ml_s": "mL/s",
	"ml_kg": "mL/kg", "ml_kg_min": "mL/kg/min", "ml_kg_h": "mL/kg/h", "l_min_m2": "L/min/m²",
	"drops_min": "drops/min", "drops_s": "drops/s", "per_min": "1/min", "per_s": "1/s", "per_h": "1/h",
	"mmhg": "mmHg", "kpa": "kPa", "pa": "Pa", "hpa": "hPa", "mbar": "mbar", "bar": "bar", "cmh2o": "cmH2O", "psi": "psi",
	"s": "s", "ms": "ms", "min": "min", "h": "h", "seconds": "s", "minutes": "min", "hours": "h", "days": "days", "years": "years", "months": "months", "weeks": "weeks",
	"g": "g", "mg": "mg", "ug": "µg", "kg": "kg", "lb": "lb",
	"g_l": "g/L", "g_dl": "g/dL", "g_ml": "g/mL", "mg_l": "mg/L", "mg_dl": "mg/dL", "mg_ml": "mg/mL",
	"mol_l": "mol/L", "mmol_l": "mmol/L", "umol_l": "µmol/L", "mmol": "mmol", "meq_l": "meq/L", "mosm_kg": "mosm/kg", "mosm_l": "mosm/L",
	"iu": "IU", "iu_ml": "IU/mL", "iu_l": "IU/L", "iu_kg": "IU/kg", "u_ml": "U/mL", "u_l": "U/L", "units": "units",
	"percent": "%", "fraction": "fraction", "ppm": "ppm", "ratio": "ratio",
	"rpm": "1/min", "c": "°C", "k": "K", "f": "°F",
	"m": "m", "cm": "cm", "mm": "mm", "um": "µm", "m2": "m²", "cm2": "cm²", "in": "in",
}

// unitWord is the ending that a key with this unit has: mL/min gives ml_min.
func unitWord(unit string) string {
	if strings.HasPrefix(unit, "1/") {
		unit = "per/" + unit[2:]
	}
	return strings.ToLower(strings.NewReplacer(
		"/", "_", " ", "_", "%", "percent", "°", "", "µ", "u", "μ", "u", "²", "2", "³", "3",
	).Replace(unit))
}

func endsInUnit(key, unit string) bool {
	word := unitWord(unit)
	return key == word || strings.HasSuffix(key, "_"+word)
}

// cutUnit parts a key into its name and the longest ending that is a unit.
func cutUnit(key string) (name, word string) {
	for i, c := range key {
		if c != '_' || i == 0 {
			continue
		}
		if _, ok := unitWords[key[i+1:]]; ok {
			return key[:i], key[i+1:]
		}
	}
	return key, ""
}

// split parts the key of a field, whose unit may be known from its rule.
func (f field) split() (name, word, sign string) {
	if u := f.rule.Unit; u != "" {
		word := unitWord(u)
		return strings.TrimSuffix(strings.TrimSuffix(f.key, word), "_"), word, u
	}
	name, word = cutUnit(f.key)
	return name, word, unitWords[word]
}
