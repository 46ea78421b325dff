package study

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"rouleau/scoring/study"
)

// fortyPeople is a file of forty first attempts, each with a second one that must not count, and a person whose first is not
// there.
func fortyPeople() string {
	people := "person,attempt,passed,points,critical,clot_ml\n"
	for i := range 40 {
		critical := ""
		if i < 4 {
			critical = "air_given clot_given"
		}
		people += fmt.Sprintf("P%d,2,true,100,,1\nP%d,1,%t,%d,%s,%g\n", i, i, i < 10, 50+i, critical, float64(i)/40)
	}
	return people + "late,3,true,100,,1\n"
}

func TestCohort(t *testing.T) {
	sc, who, table := planted(t, 40, func(r *study.Row) { r.Criteria = make([]float64, len(r.Criteria)) })
	f := Of(sc, who, table)
	if err := f.ReadCohort("people.csv", strings.NewReader("\xef\xbb\xbf"+strings.ReplaceAll(fortyPeople(), "\n", "\r\n")), table); err != nil {
		t.Fatal(err)
	}
	c := f.Cohort
	if c.N != 40 || c.Later != 41 || c.Pass == nil || c.Pass.Value != 0.25 || c.Pass.N != 40 || c.Points.Value != 69.5 || c.AUC.Value != 1 || c.SD.N != 40 {
		t.Errorf("%+v, passes %+v", c, c.Pass)
	}
	if len(c.Criteria) != 1 || c.Criteria[0].Name != "clot_ml" || c.Criteria[0].Correlation.Value < 0.99 || c.Criteria[0].AUC.Value != 1 || c.Criteria[0].Difficulty.N != 40 || c.Criteria[0].N != 40 {
		t.Errorf("%+v", c.Criteria)
	}
	if len(c.Critical) != 2 || c.Critical[0].Name != "air_given" || c.Critical[0].Share.Value != 0.1 {
		t.Errorf("%+v", c.Critical)
	}
	text := html(t, f)
	for _, want := range []string{"First attempts of 40 people; 41 later attempts are left out", "n 40, tallest bar", `<th scope="row">air_given</th><td class="r">10.0<small>`} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on the page", want)
		}
	}
}

// Of 29 people nothing is shown but how many they are.
func TestFewPeopleHaveNoFigures(t *testing.T) {
	sc, who, table := planted(t, 40, func(r *study.Row) { r.Criteria = make([]float64, len(r.Criteria)) })
	f := Of(sc, who, table)
	few := strings.Join(strings.SplitAfter(fortyPeople(), "\n")[:59], "") // the head and 29 people
	if err := f.ReadCohort("few.csv", strings.NewReader(few), table); err != nil {
		t.Fatal(err)
	}
	if c := f.Cohort; c.N != 29 || c.Pass != nil || c.Points != nil || c.SD != nil || c.AUC != nil || len(c.Criteria) > 0 || len(c.Critical) > 0 {
		t.Errorf("29 people have figures: %+v", c)
	}
	_, people, _ := strings.Cut(html(t, f), "<h2>People</h2>")
	people, _, _ = strings.Cut(people, "<h2>")
	if !strings.Contains(people, "29 people") || strings.Contains(people, "<table") || strings.Contains(people, "<svg") {
		t.Errorf("the page shows of 29 people:\n%s", people)
	}
	// people enough, and too few runs of steady to set them against
	sc, who, table = planted(t, 29, func(r *study.Row) { r.Criteria = make([]float64, len(r.Criteria)) })
	f = Of(sc, who, table)
	if err := f.ReadCohort("people.csv", strings.NewReader(fortyPeople()), table); err != nil || f.Cohort.AUC != nil || f.Cohort.Criteria[0].AUC != nil {
		t.Errorf("%v, area against 29 runs %+v", err, f.Cohort.AUC)
	}
}

// Each fault is told with its place, its cause and what mends it, and no figures are made.
func TestFaultsOfCohorts(t *testing.T) {
	sc, who, table := planted(t, 3, func(r *study.Row) {})
	const head = "person,attempt,passed,points\n"
	for _, c := range []struct{ text, want, mend string }{
		{"", "people.csv:1: the first line cannot be read", "must name the columns"},
		{"person,attempt,points\nP1,1,3\n", "people.csv:1: the column passed is missing", "there must be person"},
		{"person;attempt;passed;points\nP1;1;true;3\n", "people.csv:1: the column person is missing", "commas between and not semicolons"},
		{"person,attempt,passed,points,clot_mm\nP1,1,true,3,1\n", `people.csv:1: there is no criterion "clot_mm" in this case`, "nearest is clot_ml"},
		{"person,attempt,passed,points,hair colour\nP1,1,true,3,1\n", `people.csv:1: there is no criterion "hair colour"`, "leave the column out"},
		{"person,attempt,passed,points,points\nP1,1,true,3,3\n", "people.csv:1: the column points stands there twice", "leave one out"},
		{head, "people.csv:2: there is nobody in the file", "a line for each attempt"},
		{head + "P1,1,true\n", "people.csv:2: this line cannot be read (wrong number of fields)", "the 4 fields of the first"},
		{head + "P1,1,true,\"80\n", "people.csv:2: this line cannot be read", "quotes"},
		{head + "P1,1,true,200\n", `people.csv:2: column points: "200" is not`, "a number from 0 to 100"},
		{head + "P1,1,true,\"72,5\"\n", `people.csv:2: column points: "72,5" is not`, "with a point before tenths"},
		{head + "P1,1,true,NaN\n", `column points: "NaN" is not`, "a number from 0 to 100"},
		{head + "P1,1,true,80\nP2,first,true,80\n", `people.csv:3: column attempt: "first" is not`, "1 for the first"},
		{head + "P1,0,true,80\n", `column attempt: "0" is not`, "1 for the first"},
		{head + "P1,1,maybe,80\n", `column passed: "maybe" is not`, "true or false"},
		{head + " ,1,true,80\n", `people.csv:2: column person: " " is not`, "write one"},
		{head + "P1,1,true,80\nP2,1,true,80\nP1,1,true,90\n", `people.csv:4: attempt 1 of "P1" stands in line 2 already`, "its own number"},
		{"person,attempt,passed,points,clot_ml\nP1,1,true,80,1.5\n", `column clot_ml: "1.5" is not`, "a number from 0 to 1"},
		{"person,attempt,passed,points,critical\nP1,1,true,80,air_gven\n", `column critical: "air_gven" is not`, "names such as air_given"},
	} {
		f := Of(sc, who, table)
		err := f.ReadCohort("people.csv", strings.NewReader(c.text), table)
		if err == nil || f.Cohort != nil || !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), c.mend) {
			t.Errorf("%q: %v\nwant %s … %s", c.text, err, c.want, c.mend)
		}
	}
}

// An empty cell is a criterion that was not measured: it counts for nothing, and under thirty measured there are no figures.
func TestCellsThatAreEmpty(t *testing.T) {
	sc, who, table := planted(t, 40, func(r *study.Row) { r.Criteria = make([]float64, len(r.Criteria)) })
	text := "person,attempt,passed,points,clot_ml,swabs_rinsed\n"
	for i := range 40 {
		clot, swabs := "0.5", ""
		if i < 5 {
			clot = " "
		}
		if i < 29 {
			swabs = "1"
		}
		text += fmt.Sprintf("P%d,1,true,%d,%s,%s\n", i, 50+i, clot, swabs)
	}
	f := Of(sc, who, table)
	if err := f.ReadCohort("people.csv", strings.NewReader(text), table); err != nil {
		t.Fatal(err)
	}
	clot, swabs := f.Cohort.Criteria[0], f.Cohort.Criteria[1]
	if clot.N != 35 || clot.Difficulty.Value != 0.5 || clot.Difficulty.N != 35 || clot.AUC.N != 35 {
		t.Errorf("%+v", clot)
	}
	if swabs.N != 29 || swabs.Difficulty != nil || swabs.AUC != nil || swabs.Correlation != nil {
		t.Errorf("%+v", swabs)
	}
	if !strings.Contains(html(t, f), `<th scope="row">swabs_rinsed</th><td class="r">29</td><td class="r">–</td><td class="r">–</td><td class="r">–</td>`) {
		t.Error("the page shows figures of 29 people, or none of the criterion")
	}
}

// All faults of a file are told in one run, up to twenty.
func TestAllFaultsAtOnce(t *testing.T) {
	sc, who, table := planted(t, 3, func(r *study.Row) {})
	f := Of(sc, who, table)
	err := f.ReadCohort("people.csv", strings.NewReader("person,attempt,passed,points,clot_mm,clot_ml\nP1,1,maybe,200,,1\nP2,1,true\nP3,1,true,80,,7\n"), table)
	for _, want := range []string{`people.csv:1: there is no criterion "clot_mm"`, `people.csv:2: column passed: "maybe"`, `people.csv:2: column points: "200"`, "people.csv:3: this line cannot be read", `people.csv:4: column clot_ml: "7"`} {
		if err == nil || strings.Count(err.Error(), want) != 1 {
			t.Errorf("%q is not told once:\n%v", want, err)
		}
	}
	err = f.ReadCohort("people.csv", strings.NewReader("person,attempt,passed,points\n"+strings.Repeat("P1,1,maybe,80\n", 50)), table)
	if err == nil || strings.Count(err.Error(), "maybe") != 20 || !strings.HasSuffix(err.Error(), "there are more faults than these: mend them first, then try again") {
		t.Error(err)
	}
}

func FuzzCohort(f *testing.F) {
	f.Add([]byte("person,attempt,passed,points\nP1,1,true,80\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		var figures Figures
		if err := figures.ReadCohort("fuzz.csv", strings.NewReader(string(data)), &study.Table{}); (err == nil) != (figures.Cohort != nil) {
			t.Error("neither figures nor a fault, or both")
		}
	})
}

// Shuffled lines give the same figures: only the number of an attempt says which was first.
func TestTheOrderOfLinesIsNothing(t *testing.T) {
	sc, who, table := planted(t, 30, func(r *study.Row) {})
	lines := strings.SplitAfter(strings.TrimSuffix(fortyPeople(), "\n"), "\n")
	turned := slices.Clone(lines[1:])
	turned[len(turned)-1] += "\n"
	slices.Reverse(turned)
	var got [2]string
	for i, text := range []string{fortyPeople(), lines[0] + strings.Join(turned, "")} {
		f := Of(sc, who, table)
		if err := f.ReadCohort("people.csv", strings.NewReader(text), table); err != nil {
			t.Fatal(err)
		}
		got[i] = fmt.Sprintf("%+v %+v %.9f", *f.Cohort.Pass, f.Cohort.Critical, f.Cohort.Points.Value)
	}
	if got[0] != got[1] {
		t.Errorf("%s\n%s", got[0], got[1])
	}
}
