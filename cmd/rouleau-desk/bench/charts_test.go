// Tests of the charts at the bench: values at the cursor, choosing, the large view, what an assessment keeps back, saving.

package bench_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"image/png"
	"io"
	"math"
	"strings"
	"testing"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau-desk/ui/uitest"
)

var allSizes = []ui.Vec{{X: 900, Y: 600}, {X: 1024, Y: 640}, {X: 1280, Y: 800}, {X: 1920, Y: 1080}, {X: 1536, Y: 864}, {X: 900, Y: 1200}}

// chartMark is the mark of the chart on the screen.
func (b *table) chartMark(t *testing.T) ui.Mark {
	t.Helper()
	for _, m := range b.List.Marks {
		if m.Kind == ui.KindChart {
			return m
		}
	}
	t.Fatal("no chart is on the screen")
	return ui.Mark{}
}

func TestChartsFitAtEverySize(t *testing.T) {
	for _, size := range allSizes {
		b := sit(t, size, false)
		b.begin()
		b.until(3300)
		b.Session.Do([]bench.Act{{Do: bench.ToggleTruth}})
		b.stripFaults(t)
		b.Key(ui.K('C').Key)
		b.faults(t, "charts large")
		if !b.HasText("hidden truth") || !b.HasText("Stop pump and bowl") {
			t.Error("the large charts want stop and hidden truth beside them")
		}
		b.Desk.Dialog = bench.ChartDialog
		b.faults(t, "choosing signals")
		for s := range bench.SignalCount {
			if m, err := b.mark(s.Name(), ""); err == nil && !m.On {
				b.ClickAt(b.scrolledTo(t, s.Name()).Shown.Center())
			}
		}
		b.faults(t, "all signals chosen")
		b.Desk.Dialog = bench.NoDialog
		b.faults(t, "all signals, large")
		b.Key(ui.K('C').Key)
		b.stripFaults(t)
	}
}

// stripFaults looks at the strip alone: the drawing above it has tests of its own.
func (b *table) stripFaults(t *testing.T) {
	t.Helper()
	b.Idle()
	b.Idle()
	strip := ui.Rect{}
	for _, m := range b.List.Marks {
		if m.Kind == ui.KindChart {
			strip = m.Rect
		}
	}
	part := *b.List
	part.Marks = nil
	for _, m := range b.List.Marks {
		if m.Rect.Intersect(strip) == m.Rect && !m.Rect.Empty() {
			part.Marks = append(part.Marks, m)
		}
	}
	for _, f := range uitest.Faults(&part) {
		t.Errorf("%.0f × %.0f, strip: %s", b.Size.X, b.Size.Y, f)
	}
}

// scrolledTo turns the wheel over a dialog until a control is in sight.
func (b *table) scrolledTo(t *testing.T, label string) ui.Mark {
	t.Helper()
	for range 60 {
		m, err := b.mark(label, "")
		if err != nil {
			t.Fatal(err)
		}
		if m.Shown.H > 30 {
			return m
		}
		area := ui.Mark{}
		for _, k := range b.List.Marks { // the topmost area that can be scrolled
			if k.Kind == ui.KindScroll && k.Layer >= area.Layer {
				area = k
			}
		}
		lines := float32(-1)
		if m.Rect.Y < area.Rect.Center().Y {
			lines = 1
		}
		b.Wheel(area.Rect.Center(), lines)
	}
	m, _ := b.mark(label, "")
	t.Fatalf("%q cannot be scrolled into sight: %v, shown %v", label, m.Rect, m.Shown)
	return ui.Mark{}
}

// What stands at the cursor is what the data says for that second.
func TestTheCursorReadsTheData(t *testing.T) {
	b := sit(t, ui.Vec{X: 1280, Y: 800}, false)
	b.begin()
	b.until(3300)
	b.Key(ui.K('C').Key)
	b.Idle()
	r := b.chartMark(t).Rect
	h := b.Session.View.Charts
	for _, part := range []float32{0.3, 0.5, 0.62, 0.8} {
		b.Move(ui.Vec{X: r.X + r.W*part, Y: r.Y + r.H*0.7})
		b.Idle()
		at := -1
		for _, m := range b.List.Marks { // the time at the cursor stands dark at the foot, to the second
			for s := range 3300 {
				if m.Kind == ui.KindText && m.Owner != 0 && m.Label == b.Core.Clock(float64(s)) && m.Rect.Y > r.Bottom()-24 {
					at = s
				}
			}
		}
		if at < 0 {
			t.Fatalf("no time stands at the cursor at %g", part)
		}
		for _, s := range []bench.Signal{bench.SignalReservoir, bench.SignalBleeding, bench.SignalDetector, bench.SignalHb} {
			v := h.Tracks[s].At(at)
			digits := map[bench.Signal]int{bench.SignalDetector: 2, bench.SignalHb: 1}[s]
			if math.IsNaN(v) {
				continue
			}
			if want := b.Core.Num(v, digits, s.Unit()); !b.hasWords(want) {
				t.Errorf("at %d s the %s should read %s", at, s.Name(), want)
			}
		}
	}
}

func TestSignalsAreChosenByKeysAlone(t *testing.T) {
	b := sit(t, ui.Vec{X: 1280, Y: 800}, false)
	b.begin()
	b.until(900)
	k := keyboard{table: b, t: t}
	k.press(words.Say("chart.choose"), "")
	b.Idle()
	for range 40 {
		if f := b.focusedLabel(); f == "vacuum" {
			break
		}
		b.Key(ui.KeyTab)
	}
	if b.focusedLabel() != "vacuum" {
		t.Fatalf("the Tab key does not reach the signal; it is at %q", b.focusedLabel())
	}
	b.Key(ui.KeySpace)
	b.Key(ui.KeyEscape)
	b.Key(ui.K('C').Key)
	b.Idle()
	if b.Desk.Dialog != bench.NoDialog || !b.hasWords("vacuum") || !b.HasText("mmHg") {
		t.Error("the signal chosen by keys is not charted")
	}
}

func (b *table) focusedLabel() string {
	for _, m := range b.List.Marks {
		if m.ID != 0 && m.ID == b.Core.Focused() {
			return m.Label
		}
	}
	return ""
}

func TestSignalsAreChosenByPointerAndTouch(t *testing.T) {
	for name, press := range map[string]func(*table, string) error{
		"pointer": func(b *table, l string) error { return b.Click(l) },
		"touch":   func(b *table, l string) error { return b.Tap(l) },
	} {
		b := sit(t, ui.Vec{X: 1280, Y: 800}, false)
		b.begin()
		b.until(900)
		for _, l := range []string{words.Say("chart.choose"), "clear layer", "reservoir", words.Say("dialog.close"), words.Say("chart.large")} {
			if l == "reservoir" { // the drawing has a part of that name below the dialog
				m, err := b.mark(l, "What is charted")
				if err != nil {
					t.Fatal(err)
				}
				b.ClickAt(m.Shown.Center())
				continue
			}
			if err := press(b, l); err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			b.Idle()
		}
		b.Idle()
		if !b.hasWords("clear layer") || b.hasWords("reservoir") {
			t.Errorf("%s: the choice of signals did not reach the chart", name)
		}
	}
}

func TestTheLargeChartsKeepStopAtHand(t *testing.T) {
	b := sit(t, ui.Vec{X: 1280, Y: 800}, false)
	b.begin()
	b.until(3210) // the bowl turns
	if !b.Session.View.Seen.Pump.Spinning {
		t.Fatal("the bowl should be spinning")
	}
	b.Key(ui.K('C').Key)
	b.Key(ui.K('S').Key)
	b.passed(30)
	if b.Session.View.Seen.Pump.Mode != 0 {
		t.Error("the quick key of stop does not stop the pump under large charts")
	}
	if _, err := b.At(words.Say("chart.small")); err != nil {
		t.Error(err)
	}
	b.Key(ui.KeyEscape)
	b.Idle()
	if _, err := b.At(words.Say("chart.small")); err == nil {
		t.Error("Escape does not leave the large charts")
	}
}

func TestAnAssessmentKeepsTruthBackUntilItsEnd(t *testing.T) {
	b := sit(t, ui.Vec{X: 1280, Y: 800}, true)
	b.begin()
	b.until(3300)
	h := b.Session.View.Charts
	for s := bench.FirstTruth; s < bench.SignalCount; s++ {
		if h.Tracks[s].Len() > 0 {
			t.Errorf("%s is in the view of an assessment", s.Name())
		}
	}
	b.Desk.Dialog = bench.ChartDialog
	b.Idle()
	b.Idle()
	if b.HasText(bench.TrueHb.Name()) {
		t.Error("an assessment offers hidden truth")
	}
	b.Desk.Dialog = bench.NoDialog
	b.until(1e6)
	b.finish()
	b.Idle()
	if n, want := h.Tracks[bench.TrueHb].Len(), h.Tracks[bench.SignalReservoir].Len(); n != want || n < 3600 {
		t.Errorf("after the end hidden truth has %d values, want %d", n, want)
	}
	b.Click("Timeline")
	b.Idle()
	if !b.HasText(bench.TrueHb.Name()) {
		t.Error("the timeline after an assessment does not show what could not be seen")
	}
}

func TestMarksSayWhatHappened(t *testing.T) {
	b := sit(t, ui.Vec{X: 1280, Y: 800}, false)
	b.begin()
	b.until(4000)
	kinds := map[ui.MarkKind]int{}
	last := 0.0
	for _, m := range b.Session.View.Charts.Marks {
		kinds[m.Kind]++
		if m.S < last {
			t.Errorf("a mark at %g s stands after one at %g", m.S, last)
		}
		last = m.S
		if m.Text == "" && m.Words == "" {
			t.Errorf("a mark at %g s says nothing", m.S)
		}
	}
	if kinds[ui.MarkAct] < 8 || kinds[ui.MarkSaid] < 8 || kinds[ui.MarkAlarm] < 1 {
		t.Errorf("marks by kind: %v", kinds)
	}
	if h := b.Session.View.Charts; len(h.Phases) < 3 || len(h.Pump) < 3 {
		t.Errorf("%d phases and %d stretches of the pump", len(h.Phases), len(h.Pump))
	}
}

func TestTheChoiceOfSignalsStaysForTheNextCase(t *testing.T) {
	b := sit(t, ui.Vec{X: 1280, Y: 800}, false)
	b.begin()
	b.until(60)
	b.Desk.ChartAll()
	b.Desk = b.Desk.Again()
	b.Key(ui.K('C').Key)
	b.Idle()
	if !b.hasWords("clot seen") {
		t.Error("the next case charts other signals than were chosen")
	}
}

// A case of a day stays within bounds and in its right places.
func TestLongCasesKeepFewerValues(t *testing.T) {
	h := &bench.Charts{}
	var v [bench.SignalCount]float64
	for s := range 24 * 3600 {
		v[bench.SignalReservoir] = float64(s)
		h.Add(&v, true)
	}
	n := h.Tracks[bench.SignalReservoir].Len()
	if n >= 6*3600 || n < 3*3600 {
		t.Errorf("%d values are kept of a day", n)
	}
	for _, i := range []int{0, 1000, n - 1} {
		if got, want := h.Tracks[bench.SignalReservoir].At(i), float64(i)*h.Step(); got != want {
			t.Errorf("value %d is of second %g, want %g", i, got, want)
		}
	}
}

func TestChartsAreSaved(t *testing.T) {
	b := sit(t, ui.Vec{X: 1280, Y: 800}, false)
	b.begin()
	b.until(2400)
	v := &b.Session.View
	before := b.List.Size
	drawing, err := b.Desk.Export(v, bench.FormatSVG)
	if err != nil {
		t.Fatal(err)
	}
	text := ""
	for d := xml.NewDecoder(bytes.NewReader(drawing)); ; {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		if s, ok := tok.(xml.CharData); ok {
			text += string(s) + "\n"
		}
	}
	for _, want := range []string{v.Story.Title, "seed 1", "practice", "0:40:00", words.Say("first.short"), "reservoir", "bleeding seen"} {
		if !strings.Contains(text, want) {
			t.Errorf("the drawing does not say %q", want)
		}
	}
	if strings.Contains(text, bench.TrueHb.Name()) {
		t.Error("the drawing tells a hidden truth that was not asked for")
	}
	again, _ := b.Desk.Export(v, bench.FormatSVG)
	if !bytes.Equal(drawing, again) {
		t.Error("the same charts give another drawing")
	}
	v.Watching = true
	if shown, _ := b.Desk.Export(v, bench.FormatSVG); !bytes.Contains(shown, []byte("recorded attempt")) {
		t.Error("the charts of a recorded attempt call themselves practice")
	}
	v.Watching = false
	picture, err := b.Desk.Export(v, bench.FormatPNG)
	if err != nil {
		t.Fatal(err)
	}
	img, err := png.Decode(bytes.NewReader(picture))
	if err != nil || img.Bounds().Dx() != 3200 || img.Bounds().Dy() != 1800 {
		t.Errorf("the picture is %v: %v", img.Bounds(), err)
	}
	if _, err := b.Desk.Export(v, 7); err == nil {
		t.Error("an unknown format is taken")
	}
	if b.Idle(); b.List.Size != before {
		t.Error("saving moved the window")
	}
	b.Key(ui.K('C').Key)
	b.Idle()
	var asked []bench.Act
	b.Screen = func(c *ui.Core) { asked = append(asked, b.Desk.Frame(c, v)...) }
	b.Click(words.Say("chart.save_png"))
	b.Click(words.Say("chart.save_svg"))
	if len(asked) != 2 || asked[0] != (bench.Act{Do: bench.ExportChart}) || asked[1] != (bench.Act{Do: bench.ExportChart, Value: bench.FormatSVG}) {
		t.Errorf("the buttons ask for %v", asked)
	}
}
