package study

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"rouleau/scoring/operators"
	"rouleau/scoring/study"
)

// full is the page of a study in which everything there can be has come about.
func full(t *testing.T) string {
	t.Helper()
	sc, who, table := planted(t, 30, func(r *study.Row) {
		for k := range r.Criteria {
			r.Criteria[k] = float64((k+int(r.Seed))%3) / 2
		}
		r.Critical = []string{"air_given"}
	})
	table.Rows = append(table.Rows, unrinsed(table)...)
	f := Of(sc, who, table)
	f.Title = "A <title> & more"
	if err := f.ReadCohort("people.csv", strings.NewReader(fortyPeople()), table); err != nil {
		t.Fatal(err)
	}
	return string(f.Page())
}

// unrinsed makes rows of steady without rinsing swabs, which give back two thirds of what steady does.
func unrinsed(table *study.Table) (rows []study.Row) {
	for i := range table.Rows {
		if r := &table.Rows[i]; r.Operator == steady {
			r.Recovery = 0.9
			twin := *r
			twin.Operator, twin.Recovery, twin.Points, twin.Passed = operators.WithoutRinsing, 0.6, 0, false
			rows = append(rows, twin)
		}
	}
	return rows
}

func TestThePageLoadsAndRunsNothing(t *testing.T) {
	text := full(t)
	for _, forbidden := range []string{"<script", "src=", "href=", "url(", "@import", "http:", "https:", "<iframe", "onload"} {
		if strings.Contains(text, forbidden) {
			t.Errorf("the page holds %s", forbidden)
		}
	}
	for _, want := range []string{"default-src 'none'", "not validity for people", "A &lt;title&gt; &amp; more", "@page{size:A4", "Wilson", "DeLong", "jackknife", "n 30, tallest bar"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on the page", want)
		}
	}
}

var (
	cells   = regexp.MustCompile(`<td( style="[^"]*")?>(-?[0-9.]+)<small>(-?[0-9.]+) – (-?[0-9.]+)</small></td>`)
	numbers = regexp.MustCompile(`<td[^>]*>-?[0-9]+\.[0-9]+</td>`)
)

// Every figure on the page lies within its interval, and none stands without one.
func TestEveryFigureHasItsInterval(t *testing.T) {
	text := full(t)
	found := cells.FindAllStringSubmatch(text, -1)
	if len(found) < 100 {
		t.Fatalf("only %d figures", len(found))
	}
	for _, c := range found {
		v, _ := strconv.ParseFloat(c[2], 64)
		low, _ := strconv.ParseFloat(c[3], 64)
		high, _ := strconv.ParseFloat(c[4], 64)
		if low > v || v > high {
			t.Errorf("%s", c[0])
		}
	}
	for _, n := range numbers.FindAllString(text, -1) {
		if !regexp.MustCompile(`>(0\.5|1\.5|2\.5)</td>`).MatchString(n) { // points of a criterion, which no run has made
			t.Errorf("without an interval: %s", n)
		}
	}
	tables := strings.Split(text, "<table>")[1:]
	if len(tables) < 7 {
		t.Errorf("%d tables", len(tables))
	}
	for _, table := range tables {
		head, _, _ := strings.Cut(table, "</thead>")
		if !strings.Contains(head, " n&nbsp;") && !strings.Contains(head, ">n</th>") {
			t.Errorf("a table without n: %s", head)
		}
	}
}

var texts = regexp.MustCompile(`<text[^>]* x="([0-9.]+)" y="([0-9.]+)"( text-anchor="(\w+)")?>([^<]*)</text>`)

// No two texts of a histogram lie over each other, wherever the pass mark is. A letter is at most 7 wide at this size.
func TestHistogramTextsKeepApart(t *testing.T) {
	for mark := 1.0; mark <= 100; mark++ {
		type span struct{ from, to float64 }
		at := map[string][]span{}
		for _, m := range texts.FindAllStringSubmatch(histogram([bins]int{3, 5}, mark), -1) {
			x, _ := strconv.ParseFloat(m[1], 64)
			wide := 7 * float64(len(m[5]))
			s := span{x, x + wide}
			switch m[4] {
			case "middle":
				s = span{x - wide/2, x + wide/2}
			case "end":
				s = span{x - wide, x}
			}
			for _, o := range at[m[2]] {
				if s.from < o.to && o.from < s.to {
					t.Errorf("mark %g: texts over each other at %v and %v", mark, s, o)
				}
			}
			if s.from < -2 || s.to > 282 {
				t.Errorf("mark %g: %q reaches over the edge", mark, m[5])
			}
			at[m[2]] = append(at[m[2]], s)
		}
		if len(at) < 2 {
			t.Fatal("no texts were found")
		}
	}
}

// Bars from the mark on are filled, those below are hollow, so that no colour is needed to tell them apart.
func TestBarsTellTheMarkWithoutColour(t *testing.T) {
	var counts [bins]int
	counts[14], counts[15] = 3, 6
	text := histogram(counts, 75)
	if strings.Count(text, `class="hollow"`) != 1 || strings.Count(text, `class="bar"`) != 1 || strings.Index(text, "hollow") > strings.Index(text, `"bar"`) {
		t.Error(text)
	}
}

// Steady without rinsing is no operator that a case must part: it is looked at for what comes back only.
func TestRecoveryOfAStudy(t *testing.T) {
	sc, who, table := planted(t, 20, func(r *study.Row) { r.Criteria = make([]float64, len(r.Criteria)) })
	rows := unrinsed(table)
	table.Rows = append(table.Rows, rows...)
	extra, err := operators.Unrinsed()
	if err != nil {
		t.Fatal(err)
	}
	who = append(who, extra)
	f := Of(sc, who, table)
	if len(f.Operators) != 3 || slices.ContainsFunc(f.Operators, func(o Operator) bool { return o.Name == operators.WithoutRinsing }) {
		t.Errorf("%+v", f.Operators)
	}
	r := f.Recovery
	if r.Steady.Value != 0.9 || r.Without == nil || r.Without.Value != 0.6 || r.FromSwabs == nil || !near(r.FromSwabs.Value, 1.0/3) || r.FromSwabs.N != 20 || r.Least != 0.5 || r.Most != 0.68 {
		t.Errorf("%+v", r)
	}
	if broken := f.Broken(); len(broken) > 0 {
		t.Errorf("%q", broken)
	}
	for i := range table.Rows {
		if table.Rows[i].Operator == operators.WithoutRinsing {
			table.Rows[i].Recovery = 0.8
		}
	}
	if broken := Of(sc, who, table).Broken(); len(broken) != 1 || !strings.Contains(broken[0], "0.80 of the red cells, and 0.50 to 0.68 are asked for") {
		t.Errorf("%q", broken)
	}
}
