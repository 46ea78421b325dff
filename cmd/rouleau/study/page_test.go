package study

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scoring/operators"
	"rouleau/scoring/study"
)

// full is the page of a study in which everything there can be has come about.
func full(t *testing.T) string { return html(t, fullFigures(t)) }

func fullFigures(t *testing.T) *Figures {
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
	return f
}

// html is the page of a study.
func html(t *testing.T, f *Figures) string {
	t.Helper()
	made, err := f.Page().HTML()
	if err != nil {
		t.Fatal(err)
	}
	return string(made)
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
	text = strings.ReplaceAll(text, `xmlns="http://www.w3.org/2000/svg"`, "") // the name of the format, which nothing fetches
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
	withInterval = regexp.MustCompile(`<td class="r"( style="[^"]*")?>(-?[0-9.]+)<small>(-?[0-9.]+) – (-?[0-9.]+)</small></td>`)
	numbers      = regexp.MustCompile(`<td[^>]*>-?[0-9]+\.[0-9]+</td>`)
)

// Every figure on the page lies within its interval, and none stands without one.
func TestEveryFigureHasItsInterval(t *testing.T) {
	text := full(t)
	found := withInterval.FindAllStringSubmatch(text, -1)
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
	tables := strings.Split(text, "<table")[1:]
	if len(tables) < 7 {
		t.Errorf("%d tables", len(tables))
	}
	for _, table := range tables {
		head, _, _ := strings.Cut(table, "</thead>")
		if !strings.Contains(head, " n\u00a0") && !strings.Contains(head, ">n</th>") {
			t.Errorf("a table without n: %s", head)
		}
	}
}

// Nothing of a page lies over its edge, and no two of its texts over each other, wherever the pass mark is.
func TestHistogramTextsKeepApart(t *testing.T) {
	for mark := 1.0; mark <= 100; mark++ {
		texts := 0
		list := histogram([bins]int{3, 5}, mark).List
		for i, m := range list.Marks {
			if m.Kind != ui.KindText {
				continue
			}
			texts++
			if m.Rect.X < -0.5 || m.Rect.Right() > list.Size.X+0.5 || m.Rect.Bottom() > list.Size.Y {
				t.Errorf("mark %g: %q reaches over the edge", mark, m.Label)
			}
			for _, o := range list.Marks[:i] {
				if o.Kind == ui.KindText && !o.Rect.Intersect(m.Rect).Empty() {
					t.Errorf("mark %g: %q and %q lie over each other", mark, o.Label, m.Label)
				}
			}
		}
		if texts < 3 {
			t.Fatalf("only %d texts were found", texts)
		}
	}
}

// Bars from the mark on are filled, those below are hollow, so that no colour is needed to tell them apart; and who cannot see
// them is told how many each stands for.
func TestBarsTellTheMarkWithoutColour(t *testing.T) {
	var counts [bins]int
	counts[14], counts[15] = 3, 6
	d := histogram(counts, 75)
	var hollow, filled []ui.Op
	for _, op := range d.List.Ops {
		switch op.Kind {
		case ui.OpRect:
			filled = append(filled, op)
		case ui.OpRectStroke:
			hollow = append(hollow, op)
		}
	}
	if len(hollow) != 1 || len(filled) != 1 || hollow[0].Rect.X >= filled[0].Rect.X || hollow[0].Rect.H >= filled[0].Rect.H {
		t.Errorf("hollow %+v, filled %+v", hollow, filled)
	}
	if want := "; 70–75: 3; 75–80: 6"; !strings.HasSuffix(d.Says, want) {
		t.Errorf("%q does not end with %q", d.Says, want)
	}
}

// A chart of intervals draws each where it lies, and leaves out what was not measured.
func TestIntervalsStandWhereTheyLie(t *testing.T) {
	d := spans(panel{"left", 0, 1, []float64{0.95}, []bar{{"a", &Interval{Value: 0.5, Low: 0.25, High: 0.75, N: 9}}, {"b", nil}}},
		panel{"right", -1, 1, nil, []bar{{"a", &Interval{Value: 1, Low: 0, High: 1, N: 9}}, {"b", &Interval{}}}})
	var dots, thick []ui.Rect
	for i := range d.List.Ops {
		op := &d.List.Ops[i]
		switch {
		case op.Kind == ui.OpCircle:
			dots = append(dots, op.Rect)
		case op.Kind == ui.OpLine && op.Width == 2:
			pts := d.List.PointsOf(op)
			thick = append(thick, ui.R(pts[0].X, pts[0].Y, pts[1].X-pts[0].X, 0))
		}
	}
	if len(dots) != 2 || len(thick) != 2 {
		t.Fatalf("dots %v, lines %v", dots, thick)
	}
	middle := func(r ui.Rect) float32 { return r.X + r.W/2 }
	if near := middle(dots[0]) - middle(thick[0]); near > 0.01 || near < -0.01 {
		t.Errorf("0.5 of 0.25 to 0.75 is drawn at %v on %v", dots[0], thick[0])
	}
	if right := middle(dots[1]) - thick[1].Right(); right > 0.01 || right < -0.01 || dots[1].Right() > d.List.Size.X {
		t.Errorf("1 of 0 to 1 is drawn at %v on %v", dots[1], thick[1])
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
