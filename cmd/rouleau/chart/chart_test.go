package chart

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"rouleau/cmd/rouleau-desk/svg"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scenarios"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// played lets an operator of the library play a case with seed 1.
func played(t *testing.T, name, who string) (*scenarios.Scenario, *Course) {
	t.Helper()
	sc, err := scenarios.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	o, err := operators.Open(who)
	if err != nil {
		t.Fatal(err)
	}
	c := sc.Case(1, false)
	run := play.New(c, 1)
	run.ToEnd(o.Play(operators.SheetOf(sc, &c)))
	return sc, CourseOf(who, run)
}

// drawn is a chart as SVG.
func drawn(ch *Chart) []byte { return svg.Of(ch.List(), ch.Title) }

// texts reads a drawing, which must be well-formed, and gives what is written in it.
func texts(t *testing.T, drawing []byte) (all []string) {
	t.Helper()
	ids := map[string]bool{}
	for d := xml.NewDecoder(bytes.NewReader(drawing)); ; {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			return all
		}
		if err != nil {
			t.Fatal(err)
		}
		switch k := tok.(type) {
		case xml.CharData:
			if s := strings.TrimSpace(string(k)); s != "" {
				all = append(all, s)
			}
		case xml.StartElement:
			for _, a := range k.Attr {
				if a.Name.Local == "id" && ids[a.Value] {
					t.Errorf("the id %s stands twice", a.Value)
				}
				ids[a.Value] = ids[a.Value] || a.Name.Local == "id"
				if strings.Contains(a.Value, "NaN") || strings.Contains(a.Value, "Inf") {
					t.Errorf("%s of %s is %q", a.Name.Local, k.Name.Local, a.Value)
				}
			}
		}
	}
}

func TestTheDrawingShowsTheCourse(t *testing.T) {
	sc, steady := played(t, "steady-oozing-spine", "steady")
	_, idle := played(t, "steady-oozing-spine", "idle")
	moments := []Moments{{Name: "marks", At: []Moment{{S: 60, Text: "A1"}, {S: 61, Text: "A2"}, {S: 4000, Text: "A3"}}, Guide: true}}
	both := func() []byte { return drawn(Of("a case", []*Course{steady, idle}, 10, moments)) }
	drawing := both()
	if !bytes.Equal(drawing, both()) {
		t.Error("the same courses give another drawing")
	}
	have := map[string]int{}
	for _, s := range texts(t, drawing) {
		have[s]++
	}
	for _, want := range []string{"a case", "marks", "A1", "A2", "A3", "in the wound: gelatin and thrombin", "bowl, steady", "to the patient, steady", "bleeding, steady", "bleeding, idle",
		"irrigation", "reservoir, steady", "drip per 100 mL, steady", "12 to 25", "clot, steady", "at most 10", "in bags, steady", "haemoglobin, steady", "haemoglobin, idle",
		"the anaesthetist transfuses below 8.5", "0:30:00"} {
		if have[want] == 0 {
			t.Errorf("the drawing does not say %q", want)
		}
	}
	for i, p := range sc.Phases {
		number := strconv.Itoa(i + 1)
		if have[number] == 0 && have[number+" "+p.Name] == 0 {
			t.Errorf("phase %d is not named", i+1)
		}
	}
	for _, not := range []string{"bowl, idle", "reservoir, idle", "clot, idle"} {
		if have[not] > 0 {
			t.Errorf("%q is drawn, though nothing happened there", not)
		}
	}
	alone := texts(t, drawn(Of("a case", []*Course{steady}, math.NaN(), nil)))
	for _, s := range alone {
		if strings.HasSuffix(s, ", steady") || strings.HasPrefix(s, "at most") {
			t.Errorf("a chart of one run says %q", s)
		}
	}
}

// Everything written stays on the sheet: the case with most bowls, one with two contaminants, one that is long.
func TestNothingRunsOffTheSheet(t *testing.T) {
	for _, name := range []string{"sudden-brisk-bleeding", "caesarean-rhd-negative", "heparin-pump-and-protamine"} {
		_, co := played(t, name, "steady")
		type text struct {
			X      float64 `xml:"x,attr"`
			Length float64 `xml:"textLength,attr"`
			Says   string  `xml:",chardata"`
		}
		d := xml.NewDecoder(bytes.NewReader(drawn(Of(name, []*Course{co}, 10, nil))))
		for {
			tok, err := d.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			if err != nil {
				t.Fatal(err)
			}
			if s, ok := tok.(xml.StartElement); ok && s.Name.Local == "text" {
				var k text
				if err := d.DecodeElement(&k, &s); err != nil {
					t.Fatal(err)
				}
				if k.X < 0 || k.X+k.Length > float64(wholeSheet.width) {
					t.Errorf("%s: %q stands from %g to %g", name, k.Says, k.X, k.X+k.Length)
				}
			}
		}
	}
}

func TestACourseTellsWhatTheTraceDoesNot(t *testing.T) {
	sc, co := played(t, "steady-oozing-spine", "steady")
	var on, off int64
	for i := range co.Run.Case.Events {
		e := &co.Run.Case.Events[i]
		if got := co.Fired[i]; e.When == sim.AtTime && got != e.At {
			t.Errorf("event %d was to come at tick %d and came at %d", i+1, e.At, got)
		}
		switch e.Kind {
		case sim.EventAgentOn:
			on = e.At
		case sim.EventAgentOff:
			off = e.At
		}
	}
	if len(sc.Contaminants) != 1 || len(co.Wound[0]) != 1 {
		t.Fatalf("%d contaminants, spans %v", len(sc.Contaminants), co.Wound[0])
	}
	if s := co.Wound[0][0]; math.Abs(s.FromS-sim.Seconds(on)) > 1 || math.Abs(s.ToS-sim.Seconds(off)) > 1 {
		t.Errorf("the haemostat is shown from %g to %g, and was there from %g to %g", s.FromS, s.ToS, sim.Seconds(on), sim.Seconds(off))
	}
	// by hand from the trace: five minutes up to half an hour
	tr, at := co.Run.Trace, 1800
	want := 100 * (tr[at].DripML - tr[at-300].DripML) / (tr[at].SuckedBloodML - tr[at-300].SuckedBloodML)
	if got := co.per100()[at]; math.Abs(got-want) > 1e-9 || got < 5 || got > 60 {
		t.Errorf("drip per 100 mL is %g, want %g", got, want)
	}
	if !math.IsNaN(co.per100()[10]) {
		t.Error("drip per 100 mL is told before there was blood")
	}
}

func TestMomentsKeepApart(t *testing.T) {
	m := &Moments{Name: "row"}
	for i := range 48 {
		m.At = append(m.At, Moment{S: 3000 + float64(i%7), Text: strconv.Itoa(i + 1)})
	}
	ch := &Chart{EndS: 3600, form: wholeSheet}
	plot := ui.R(wholeSheet.names, 0, wholeSheet.width-wholeSheet.names-wholeSheet.ends, 0)
	r := ch.place(m, plot, 10)
	if len(r.boxes) != 48 {
		t.Fatalf("%d of 48 moments have a place", len(r.boxes))
	}
	const slack = 0.01
	for i, a := range r.boxes {
		if a.mid-a.wide/2 < plot.X-slack || a.mid+a.wide/2 > plot.Right()+slack || a.line >= r.lines {
			t.Errorf("moment %s stands off its row", a.text)
		}
		for _, b := range r.boxes[i+1:] {
			if a.line == b.line && a.mid+a.wide/2 > b.mid-b.wide/2+slack && b.mid+b.wide/2 > a.mid-a.wide/2+slack {
				t.Errorf("%s lies on %s", a.text, b.text)
			}
		}
	}
	// each is moved as little as can be: two at one moment stand evenly on both sides of it
	two := ch.place(&Moments{At: []Moment{{S: 1800, Text: "1"}, {S: 1800, Text: "2"}}}, plot, 0)
	if a, b := two.boxes[0], two.boxes[1]; math.Abs(float64(a.mid+b.mid-2*a.at)) > slack {
		t.Errorf("two at %g stand at %g and %g", a.at, a.mid, b.mid)
	}
	one := ch.place(&Moments{At: []Moment{{S: 1800, Text: "1"}}}, plot, 0)
	if b := one.boxes[0]; b.mid != b.at || one.lines != 1 {
		t.Errorf("a moment with room stands at %g and belongs to %g", b.mid, b.at)
	}
}

func TestScalesEndOnRoundNumbers(t *testing.T) {
	for _, c := range []struct{ most, want float64 }{{0.07, 0.08}, {1, 1}, {36, 40}, {105, 150}, {260, 300}, {985, 1000}, {0, 1}} {
		lane := Lane{Curves: []Curve{{Values: []float64{0, math.NaN(), c.most}}}}
		if got := lane.reach(); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("values up to %g: the scale ends at %g, want %g", c.most, got, c.want)
		}
	}
}
