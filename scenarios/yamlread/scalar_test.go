// This file tests the ways to write single values: numbers, times, dates, and
// the words and units of keys.

package yamlread

import "testing"

func TestNumbers(t *testing.T) {
	for _, c := range []struct {
		text   string
		x      float64
		better string
		ok     bool
	}{
		{"0", 0, "", true}, {"-12", -12, "", true}, {"3.25", 3.25, "", true}, {"1e3", 1000, "", true}, {"2.5E-3", 0.0025, "", true},
		{"1e300", 1e300, "", true}, {"1.1e300", 0, "", false}, {"1e400", 0, "", false}, {"1e-400", 0, "", true},
		{"", 0, "", false}, {"-", 0, "", false}, {".", 0, "", false}, {"1.2.3", 0, "", false}, {"1e", 0, "1", false}, {"- 1", 0, "", false},
		{"nan", 0, "", false}, {"-.Inf", 0, "", false}, {"Infinity", 0, "", false},
		{"007", 0, "", false}, {"01.5", 0, "", false}, {"0o7", 0, "", false}, {"0b1", 0, "", false}, {"0xff", 0, "", false},
		{"1_000", 0, "1000", false}, {"12 000", 0, "12000", false}, {"1'000.5", 0, "1000.5", false}, {"-3,5", 0, "-3.5", false},
		{".5", 0, "0.5", false}, {"-.5", 0, "-0.5", false}, {"5.", 0, "5.0", false}, {"+5", 0, "5", false},
		{"5 mL", 0, "5", false}, {"5%", 0, "5", false}, {"-2.5 mmol/L", 0, "-2.5", false}, {"37°C", 0, "37", false},
	} {
		x, problem, better := readNumber(c.text)
		if x != c.x || better != c.better || (problem == "") != c.ok {
			t.Errorf("readNumber(%q) = %v, %q, %q", c.text, x, problem, better)
		}
	}
	if x, _, _ := readNumber("-0"); 1/x < 0 {
		t.Error("-0 keeps its sign")
	}
}

func TestClockPrintsAsWritten(t *testing.T) {
	for text, seconds := range map[string]int{
		"0:00:00": 0, "0:12:30": 750, "12:30": 750, "1:05:00": 3900, "65:00": 3900, "99:59": 5999, "00:00": 0, "10:00:01": 36001,
	} {
		c, _, ok := parseClock(text)
		if !ok || c.Seconds != seconds || c.String() != text {
			t.Errorf("%s: %+v, %v, %s", text, c, ok, c)
		}
	}
	for text, better := range map[string]string{
		"1:30": "0:01:30 or 1:30:00", "00:12:30": "0:12:30", "12:60": "", "0:60:00": "1:00:00", "1:5:00": "1:05:00", "0:70:00": "1:10:00", "2:05:0": "2:05:00", "99:99:99": "", "100:00:00": "", "120:00": "",
		"": "", "12": "0:12:00 or 0:00:12", "-1:00:00": "", "0:12:30 ": "", "0:12:30.5": "", "١٢:٣٠": "",
	} {
		if c, near, ok := parseClock(text); ok || near != better {
			t.Errorf("%q: %+v, %q, %v", text, c, near, ok)
		}
	}
}

func TestDates(t *testing.T) {
	for text, ok := range map[string]bool{
		"2024-02-29": true, "1800-01-01": true, "2999-12-31": true,
		"2023-02-29": false, "2024-13-01": false, "2024-2-9": false, "24-02-09": false, "2024-02-09T00:00:00Z": false,
		"1799-12-31": false, "3000-01-01": false, "": false, "09.02.2024": false,
	} {
		d, got := parseDate(text)
		if got != ok || ok && d.String() != text {
			t.Errorf("%q: %v, %v", text, d, got)
		}
	}
	a, b := Date{2024, 9, 30}, Date{2024, 10, 1}
	if !a.Before(b) || b.Before(a) || a.Before(a) {
		t.Error("Before is wrong")
	}
}

func TestNearest(t *testing.T) {
	known := []string{"name", "title", "bleeding_ml_min", "id", "hip"}
	for word, want := range map[string]string{
		"nmae": "name", "titel": "title", "bleding_ml_mn": "bleeding_ml_min", "Name": "name", "hipp": "hip",
		"d": "", "x": "", "dark": "", "colour_scheme": "", "": "",
	} {
		if got := Nearest(word, known); got != want {
			t.Errorf("Nearest(%q) = %q, want %q", word, got, want)
		}
	}
}

func TestUnits(t *testing.T) {
	for unit, want := range map[string]string{
		"mL/min": "ml_min", "1/min": "per_min", "%": "percent", "°C": "c", "µm": "um", "L/min/m²": "l_min_m2", "cmH2O": "cmh2o", "g/dL": "g_dl",
	} {
		if got := unitWord(unit); got != want {
			t.Errorf("unitWord(%q) = %q, want %q", unit, got, want)
		}
	}
	for key, want := range map[string][2]string{
		"bleeding_ml_min": {"bleeding", "ml_min"}, "time_min": {"time", "min"}, "vacuum_kpa": {"vacuum", "kpa"},
		"name": {"name", ""}, "ml": {"ml", ""}, "wash_volume": {"wash_volume", ""},
	} {
		if name, word := cutUnit(key); [2]string{name, word} != want {
			t.Errorf("cutUnit(%q) = %q, %q", key, name, word)
		}
	}
	if !endsInUnit("mass_kg", "kg") || !endsInUnit("fraction", "fraction") || endsInUnit("mass_g", "kg") || endsInUnit("masskg", "kg") {
		t.Error("endsInUnit is wrong")
	}
}
