package chart

import (
	"bytes"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau/page"
	"rouleau/scenarios"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// said puts an occurrence into words as well as a test needs.
func said(o *sim.Occurrence) string {
	return strings.Join([]string{o.Act.Do.String(), o.Key, strconv.Itoa(o.Line)}, " ")
}

func told(title string, co *Course) (*Chart, []Named) {
	more := []Moments{{Name: "criteria", At: []Moment{{S: 5, Text: "a"}, {S: 400, Text: "b"}, {S: 410, Text: "c"}}, Guide: true}}
	return Timeline(&Story{Title: title, Course: co, MostClotML: 10, More: more, Says: said})
}

// onSheet fails where anything written leaves the sheet, is cut, or would be printed smaller than 7 pt on A4 on its side: so
// many points wide and high is the room for a drawing.
func onSheet(t *testing.T, what string, l *ui.List, wide, high float64) {
	t.Helper()
	unit := min(wide/float64(l.Size.X), high/float64(l.Size.Y))
	for i := range l.Ops {
		op := &l.Ops[i]
		if op.Kind != ui.OpText {
			continue
		}
		end := op.Rect.X + ui.TextWidth(op.Str, op.Size, op.Weight, op.Tab)
		if op.Rect.X < 0 || end > l.Size.X || op.Rect.Y < op.Size/2 || op.Rect.Y > l.Size.Y {
			t.Errorf("%s: %q stands from %g to %g at height %g of %v", what, op.Str, op.Rect.X, end, op.Rect.Y, l.Size)
		}
		if pt := float64(op.Size) * unit; pt < 7 {
			t.Fatalf("%s: %q is printed at %.2f pt", what, op.Str, pt)
		}
	}
	for _, m := range l.Marks {
		if m.Kind == ui.KindText && m.Cut {
			t.Errorf("%s: %q is cut", what, m.Label)
		}
	}
	for _, p := range l.Points {
		if p.X != p.X || p.Y != p.Y || p.X < -1 || p.X > l.Size.X+1 || p.Y < -1 || p.Y > l.Size.Y+1 {
			t.Fatalf("%s: a point at %v", what, p)
		}
	}
}

const (
	sheetW = 785.2 // A4 on its side with a centimetre at each edge, in points
	sheetH = 470.5 // and as high as pages let a drawing be
)

func TestATimelineIsWholeAndReadable(t *testing.T) {
	for name, players := range map[string][]string{"steady-oozing-spine": {"hasty"}, "caesarean-rhd-negative": {"steady", "inattentive"},
		"one-trouble-after-another": {"inattentive"}, "pelvis-loss-over-hours": {"steady", "inattentive"}, "salvage-declined": {"steady"}} {
		for _, who := range players {
			_, co := played(t, name, who)
			ch, named := told(name, co)
			what := name + ", " + who
			drawing := drawn(ch)
			again, names := told(name, co)
			if !bytes.Equal(drawing, drawn(again)) || !slices.Equal(named, names) {
				t.Errorf("%s: the same course gives another drawing", what)
			}
			have := map[string]bool{}
			for _, s := range texts(t, drawing) {
				have[s] = true
			}
			for _, want := range []string{name, words.Say("chart.row_acts"), words.Say("course.phase"), words.Say("course.hb_gas"), words.Say("course.hidden_head"), words.Say("course.hb_true"), "criteria", "a", "b", "c"} {
				if !have[want] {
					t.Errorf("%s: the drawing does not say %q", what, want)
				}
			}
			if unit := words.Say("course.of", words.Say("course.washed"), "mL"); name == "steady-oozing-spine" && !have[unit] {
				t.Errorf("%s: the lane that ends without a value does not say its unit, %q", what, unit)
			}
			onSheet(t, what, ch.List(), sheetW, sheetH)
			everyMoment(t, what, co, ch, named, have)
		}
	}
}

// everyMoment compares rows and numbers with the log.
func everyMoment(t *testing.T, what string, co *Course, ch *Chart, named []Named, have map[string]bool) {
	t.Helper()
	want := map[string]int{}
	refused := 0
	for _, o := range co.Run.Log {
		if o.Kind == sim.Refused && !o.Act.Auto {
			refused++
		}
		switch {
		case (o.Kind == sim.Done || o.Kind == sim.Refused) && !o.Act.Auto:
			want[words.Say("chart.row_acts")]++
		case o.Kind == sim.Alarmed:
			want[words.Say("chart.row_alarms")]++
		case o.Kind == sim.Said:
			want[words.Say("chart.row_said")]++
		}
	}
	if low := strings.Contains(ch.Caption, words.Say("course.refused_caption")); low != (refused > 0) {
		t.Errorf("%s: %d acts were refused, and the caption explains low ticks: %v", what, refused, low)
	}
	numbers := map[int]bool{}
	rows := 0
	for i := range ch.Moments {
		m := &ch.Moments[i]
		if len(m.strip) != want[m.Name] {
			t.Errorf("%s: %d ticks of %q, want %d", what, len(m.strip), m.Name, want[m.Name])
		}
		if want[m.Name] > 0 {
			rows++
		}
		for _, k := range m.At {
			if k.number > 0 {
				numbers[k.number] = true
			}
		}
		// each number stands in a box, alone or within a pair
		if len(m.strip) > 0 {
			r := ch.place(m, ui.R(ch.form.names, 0, ch.form.width-ch.form.names-ch.form.ends, 0), 0)
			n := 0
			for k, b := range r.boxes {
				from, to := between(t, b.text)
				n += to - from + 1
				if !have[b.text] {
					t.Errorf("%s: %q is not drawn", what, b.text)
				}
				if k > 0 && r.boxes[k-1].mid+r.boxes[k-1].wide/2 > b.mid-b.wide/2+0.01 {
					t.Errorf("%s: %s lies on %s", what, r.boxes[k-1].text, b.text)
				}
				if moved := math.Abs(float64(b.mid - b.at)); moved > mostMoved && b.mid-b.wide/2 > r.plot.X+1 && b.mid+b.wide/2 < r.plot.Right()-1 {
					t.Errorf("%s: %s stands %g units from its time", what, b.text, moved)
				}
			}
			if n != len(m.At) {
				t.Errorf("%s: boxes of %q stand for %d of %d", what, m.Name, n, len(m.At))
			}
		}
	}
	if rows != len(want) {
		t.Errorf("%s: %d rows, want %d", what, rows, len(want))
	}
	last, times := 0, map[string]int{} // every one is told of, with a number or without
	for i, n := range named {
		if n.Number > 0 {
			if last++; n.Number != last || !numbers[n.Number] || n.Number > 99 {
				t.Errorf("%s: the table says %+v after number %d", what, n, last-1)
			}
		}
		if times[n.Row] += n.Times; n.Text == "" || n.Times < 1 || n.ToS < n.FromS {
			t.Errorf("%s: the table says %+v", what, n)
		}
		if i > 0 && named[i-1].Row == n.Row && named[i-1].FromS > n.FromS {
			t.Errorf("%s: %+v comes after %+v", what, n, named[i-1])
		}
	}
	if len(numbers) != last {
		t.Errorf("%s: %d numbers are drawn and %d are told", what, len(numbers), last)
	}
	want[words.Say("chart.row_acts")] -= refused
	for row, n := range want {
		if times[row] != n {
			t.Errorf("%s: of %q %d are told, want %d", what, row, times[row], n)
		}
	}
}

func between(t *testing.T, text string) (from, to int) {
	t.Helper()
	a, b, pair := strings.Cut(text, "–")
	from, err := strconv.Atoi(a)
	if err != nil {
		t.Fatal(err)
	}
	if !pair {
		return from, from
	}
	if to, err = strconv.Atoi(b); err != nil || to <= from {
		t.Fatalf("%q is no pair of numbers", text)
	}
	return from, to
}

func TestBowlfulsAreCounted(t *testing.T) {
	_, co := played(t, "caesarean-rhd-negative", "steady")
	ch, _ := told("a case", co)
	var numbers []string
	for _, row := range ch.Rows {
		if row.Name == words.Say("course.bowl") {
			for _, s := range row.Spans {
				if s.Short != "" {
					numbers = append(numbers, s.Short)
				}
			}
		}
	}
	for _, m := range ch.Moments {
		if m.Name == words.Say("course.bowlful") {
			for _, k := range m.At {
				numbers = append(numbers, k.Text)
			}
		}
	}
	var want []string
	for i := range co.Run.State.CycleUsed {
		want = append(want, strconv.Itoa(i+1))
	}
	if len(want) < 3 || !slices.Equal(numbers, want) {
		t.Errorf("bowlfuls %v, want %v", numbers, want)
	}
}

// A page holds several drawings; no id of one may be that of another, and each refers to its own.
func TestIdsOfAPageDiffer(t *testing.T) {
	_, co := played(t, "salvage-declined", "steady")
	_, spine := played(t, "steady-oozing-spine", "steady")
	ch, _ := told(`a "case" with id="c1" and url(#c1)`, co)
	other, _ := told("another", spine)
	p := &page.Page{Title: "charts"}
	for _, ch := range []*Chart{ch, other} {
		p.Blocks = append(p.Blocks, page.Block{Drawing: &page.Drawing{List: ch.List(), Says: ch.Title}})
	}
	both, err := p.HTML()
	if err != nil {
		t.Fatal(err)
	}
	ids := map[string]bool{}
	for _, m := range regexp.MustCompile(` id="([^"]+)"`).FindAllSubmatch(both, -1) {
		if ids[string(m[1])] {
			t.Errorf("the id %s stands twice", m[1])
		}
		ids[string(m[1])] = true
	}
	used := regexp.MustCompile(`="url\(#([^)]+)\)"`).FindAllSubmatch(both, -1)
	for _, m := range used {
		if !ids[string(m[1])] {
			t.Errorf("%s is referred to and is not there", m[1])
		}
	}
	if len(ids) < 20 || len(used) < 20 || !ids["d1c1"] || !ids["d2c1"] || !ids["d2h1"] {
		t.Errorf("%d ids, %d uses", len(ids), len(used))
	}
}

// A run that has hardly begun is a chart too.
func TestNothingHappenedYet(t *testing.T) {
	sc, err := scenarios.Open("steady-oozing-spine")
	if err != nil {
		t.Fatal(err)
	}
	for steps := range 3 {
		run := play.New(sc.Case(1, false), 1)
		for range steps * sim.TicksPerSecond {
			run.Step()
		}
		co := CourseOf("nobody", run)
		ch, named := told("nothing", co)
		texts(t, drawn(ch))
		if len(named) > steps*5 {
			t.Errorf("%d things are told after %d s", len(named), steps)
		}
		texts(t, drawn(Beside("nothing", co, co, 0)))
	}
}

// Whoever watches a run while it is played needs no further play.
func TestAWatchedRunIsTheSameCourse(t *testing.T) {
	sc, steady := played(t, "caesarean-rhd-negative", "steady")
	c := sc.Case(1, false)
	run := play.New(c, 1)
	w := Watch("steady", &c)
	run.Again(steady.Run.Actions, steady.Run.State.Tick, w.Tick)
	co, again := w.Course(run), CourseOf("steady", run)
	if !slices.Equal(co.Fired, again.Fired) || len(co.glances) != len(run.Trace) || len(co.Other) == 0 || len(co.Wound[1]) == 0 {
		t.Errorf("events %v, %d glances, %d seconds", co.Fired, len(co.glances), len(run.Trace))
	}
	one, _ := told("a case", co)
	other, _ := told("a case", again)
	if !bytes.Equal(drawn(one), drawn(other)) {
		t.Error("it is drawn otherwise")
	}
}

func BenchmarkTimeline(b *testing.B) {
	sc, err := scenarios.Open("steady-oozing-spine")
	if err != nil {
		b.Fatal(err)
	}
	c := sc.Case(1, false)
	run := play.New(c, 1)
	run.ToEnd(operators.NewSteady(operators.SheetOf(sc, &c)))
	co := CourseOf("steady", run)
	for b.Loop() {
		ch, _ := told("a case", co)
		drawn(ch)
	}
}
