// Every home screen at several sizes: nothing overlaps, nothing is cut, every control is large enough; and the walk from home to
// a case with keys alone and with the pointer alone.

package home_test

import (
	"fmt"
	"strings"
	"testing"

	"rouleau/cmd/rouleau-desk/home"
	"rouleau/cmd/rouleau-desk/keep"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau-desk/ui/uitest"
	"rouleau/scenarios/yamlread"
)

var sizes = []ui.Vec{{X: 900, Y: 600}, {X: 1024, Y: 640}, {X: 1280, Y: 800}, {X: 1920, Y: 1080}, {X: 1536, Y: 864}, {X: 900, Y: 1200}}

// desk is the home screens without a display, with the acts they answered.
type desk struct {
	*uitest.Driver
	home *home.Home
	view home.View
	acts []home.Act
}

func sit(size ui.Vec, v home.View) *desk {
	d := &desk{home: home.New(), view: v}
	d.Driver = uitest.New(size, func(c *ui.Core) {
		for _, a := range d.home.Frame(c, &d.view) {
			if a.Do == home.SaveSettings {
				d.view.Settings = a.Settings
			}
			d.acts = append(d.acts, a)
		}
	})
	return d
}

// past makes results; the first is the newest.
func past(n int) (all []keep.Past) {
	for i := range n {
		p := keep.Past{ScenarioID: "a", Title: "A", Mode: "practice", Operator: "some-long-pseudonym-0001", When: "2031-05-14T08:30:00Z",
			Path: fmt.Sprintf("attempt-%d.json", i), Version: 12, Seed: 18446744073709551615 - uint64(i), Points: float64(40 + i%60), Passed: i%3 == 0, Ended: i%7 != 0, TakenOver: i%5 == 3}
		if i%2 == 0 {
			p.Mode = "assessment"
		}
		all = append(all, p)
	}
	return all
}

func full() home.View {
	long := "A very long title of a case that an educator wrote with all its circumstances!!!"
	objective := strings.Repeat("Decide from the case sheet, and open no more than is needed when it is needed. ", 2)
	v := home.View{Settings: keep.Defaults(), Folder: "a folder/" + strings.Repeat("with a long name and no end to it/", 6)}
	add := func(key, title string, g home.Group, results int) {
		v.Cases = append(v.Cases, home.Case{Key: key, Group: g, Title: title, Level: "first steps", Minutes: 105, Version: 3,
			Summary: "A long operation that oozes steadily, with irrigation and one spell of a topical haemostat in the wound.", Objectives: []string{objective, objective, "short"},
			Cautions: []string{objective}, Speeds: []int{1, 2, 5, 10, 20}, AssessmentSpeed: 1, LimitMin: 180, Past: past(results)})
	}
	add("lesson", "A first bowl, step by step", home.Lesson, 1)
	add("a", "Steady oozing in a spine operation", home.Library, 200)
	for i := range 5 {
		add(fmt.Sprintf("b%d", i), long, home.Library, i)
	}
	add("file", strings.Repeat("Unterbrechungsmanagement", 3), home.Own, 0)
	own := &v.Cases[len(v.Cases)-1]
	own.File, own.Warnings = "a folder/case.yaml", []string{"Line 12: " + objective, "Line 1200: short"}
	return v
}

func (d *desk) faults(t *testing.T, where string) {
	t.Helper()
	d.Move(ui.Vec{X: 1, Y: 1})
	d.Idle()
	d.Idle()
	fields := map[ui.ID]bool{}
	for _, m := range d.List.Marks {
		if m.Kind == ui.KindTextField {
			fields[m.ID] = true // words longer than a field are scrolled in it
		}
	}
	list := *d.List
	list.Marks = nil
	for _, m := range d.List.Marks {
		if !fields[m.Owner] {
			list.Marks = append(list.Marks, m)
		}
	}
	seen := map[string]bool{}
	for _, f := range uitest.Faults(&list) {
		if !seen[f] {
			t.Errorf("%.0f × %.0f, %s: %s", d.Size.X, d.Size.Y, where, f)
		}
		seen[f] = true
	}
}

func (d *desk) click(t *testing.T, label string) {
	t.Helper()
	if err := d.Click(label); err != nil {
		t.Fatal(err)
	}
	d.Idle()
}

func TestNothingOverlapsOnAnyHomeScreen(t *testing.T) {
	for _, size := range sizes {
		d := sit(size, full())
		d.faults(t, "cautions")
		d.click(t, "Understood")
		for _, k := range d.view.Cases {
			d.home.Select(k.Key)
			d.faults(t, "home, "+k.Key)
		}
		d.home.Select("a")
		d.Idle()
		for _, label := range []string{"Exact", "New", "Assessment"} {
			d.click(t, label)
			d.faults(t, label)
		}
		d.view.Unfinished = []home.Unfinished{{Path: "1", Title: d.view.Cases[3].Title, Mode: "assessment", Began: "2031-05-14 08:30", AtS: 5025},
			{Path: "2", Title: "short", Mode: "practice", Began: "2031-05-13 08:30"},
			{Path: "3", Title: "spine-20310514-083000.journal", Broken: "running/spine-20310514-083000.journal, line 12: the line cannot be read. The case can be gone on with up to there if this line and all after it are cut off"}}
		d.view.Notices = []string{"one", d.view.Folder + " cannot be written to (permission denied): nothing will be kept. Make it writable, or give another folder with --folder"}
		d.faults(t, "with strips")
		d.click(t, "and 2 more")
		d.faults(t, "unfinished cases")
		d.click(t, "Close")
		d.view.Unfinished, d.view.Notices = nil, nil
		d.click(t, "Who are you?")
		d.Type("a full name")
		d.click(t, "Use this")
		if !d.HasText("pseudonymous") {
			t.Error("a full name was not turned away")
		}
		d.faults(t, "who")
		d.click(t, "Close")
		d.click(t, "Settings")
		d.faults(t, "settings")
		d.click(t, "Close")
		d.click(t, "Open a file")
		d.view.Browse = home.Listing{Folder: d.view.Folder, Up: "x"}
		d.faults(t, "an empty folder")
		for i := range 300 {
			d.view.Browse.Names = append(d.view.Browse.Names, home.Entry{Name: strings.Repeat("a long name of a file ", i%9) + "case.yaml", Path: fmt.Sprint(i), Folder: i < 20})
		}
		d.faults(t, "files")
		d.view.Browse.Fault = "this folder cannot be looked into (permission denied)"
		d.faults(t, "a closed folder")
		d.view.Broken = home.Broken{Name: d.view.Folder + "case.yaml", Faults: sixty(), Again: true}
		d.faults(t, "sixty faults")
		if !d.HasText("line 1, col 200") {
			t.Error("the first fault is not shown with its place")
		}
		d.Core.SetScroll(ui.Name("home faults"), 1e6)
		d.faults(t, "the last of sixty faults")
		if !d.HasText("line 60, col 9") {
			t.Error("the last fault cannot be reached")
		}
		d.view.Broken = home.Broken{Name: "case.yaml", Text: "case.yaml: cannot be read (permission denied): check that it is a file and that you may read it"}
		d.faults(t, "an unreadable file")
	}
}

func sixty() (all []yamlread.Fault) {
	for i := range 60 {
		f := yamlread.Fault{Message: "this key is not known, and the words about it are long enough to take more than one line of the dialog",
			Source: strings.Repeat("bleeding_ml_min: {normal: [1, 2]} ", 8), Expected: "one of bleeding_ml_min, irrigation_ml_min", Nearest: "bleeding_ml_min"}
		f.Line, f.Col = i+1, 200-3*i
		if i == 59 {
			f.Line, f.Col, f.Source = 60, 9, "\tphases:"
		}
		all = append(all, f)
	}
	return all
}

func TestBothPalettesAndStillness(t *testing.T) {
	d := sit(sizes[2], full())
	d.Core.Pal = ui.HighContrast()
	d.click(t, "Understood")
	d.faults(t, "strong contrast")
}

func TestSmallWindowsSaySoAndGiveAWayBack(t *testing.T) {
	v := full()
	v.Settings.Scale = 2.5
	d := sit(ui.Vec{X: 512, Y: 320}, v)
	if !d.HasText("This window needs at least 900 × 600") {
		t.Error("a window too small does not say so")
	}
	d.faults(t, "too small")
	d.Key(ui.KeyEnter)
	if len(d.acts) != 1 || d.acts[0].Settings.Scale != 1 {
		t.Errorf("there is no way back to scale 1: %+v", d.acts)
	}
}

// The scale goes no further than the window has room for.
func TestTheScaleKeepsTheScreenWhole(t *testing.T) {
	d := sit(ui.Vec{X: 1280, Y: 800}, full())
	d.click(t, "Understood")
	d.click(t, "Settings")
	m, err := d.At("Size of everything")
	if err != nil {
		t.Fatal(err)
	}
	d.Drag(ui.Vec{X: m.Rect.X + 10, Y: m.Rect.Bottom() - 13}, ui.Vec{X: m.Rect.Right() - 10, Y: m.Rect.Bottom() - 13})
	if s := d.view.Settings.Scale; s != 1.3 {
		t.Errorf("scale %g at 1280 × 800, and 1.3 is the most at which 900 × 600 are left", s)
	}
	for _, label := range []string{"Strong contrast", "Alarm sounds", "Reduced motion: nothing flashes or slides"} {
		d.click(t, label)
	}
	want := keep.Settings{Scale: 1.3, Contrast: true, Sound: !keep.Defaults().Sound, Still: true}
	if d.view.Settings != want {
		t.Errorf("%+v, want %+v", d.view.Settings, want)
	}
}

func (d *desk) last() home.Act {
	if len(d.acts) == 0 {
		return home.Act{Do: 255}
	}
	return d.acts[len(d.acts)-1]
}

// With keys alone: cautions, another case, an assessment with an exact seed, who plays, and to the sheet.
func TestKeysAloneReachACase(t *testing.T) {
	d := sit(sizes[0], full())
	d.Key(ui.KeyEnter) // the cautions
	d.Idle()
	d.Key(ui.KeyDown, ui.KeyDown)
	d.focus(t, "Practice")
	d.Key(ui.KeyDown)
	d.focus(t, "Seed 1")
	d.Key(ui.KeyRight, ui.KeyRight, ui.KeyTab)
	d.Type("4x2")
	d.focus(t, "To the case sheet")
	d.Key(ui.KeyEnter)
	d.Idle()
	d.Type("nurse 7")
	d.Key(ui.KeyEnter)
	d.Idle()
	if len(d.acts) != 0 {
		t.Fatalf("a full name was taken: %+v", d.acts)
	}
	d.Key(ui.KeyBackspace, ui.KeyBackspace)
	d.Type("-7")
	d.Key(ui.KeyEnter)
	want := home.Act{Do: home.Begin, Key: "b0", Assessment: true, Seed: 42}
	if d.last() != want || d.view.Settings.Who != "nurse-7" {
		t.Errorf("%+v as %q, want %+v", d.last(), d.view.Settings.Who, want)
	}
}

// focus walks with the Tab key to a control.
func (d *desk) focus(t *testing.T, label string) {
	t.Helper()
	for range 120 {
		for _, m := range d.List.Marks {
			if m.Target() && m.Label == label && (m.ID == d.Core.Focused() || m.Kind == ui.KindChoice && m.Focus >= 0 && d.stop(m.Focus)) {
				return
			}
		}
		d.Key(ui.KeyTab)
	}
	t.Fatalf("the Tab key does not reach %q", label)
}

// stop tells whether the focus rests at a place of the order: a group of choices is one place.
func (d *desk) stop(at int) bool {
	return d.Core.Focused() == ui.Name("home mode") && d.order("Practice") == at || d.Core.Focused() == ui.Name("home seeds") && d.order("Seed 1") == at
}

func (d *desk) order(label string) int {
	for _, m := range d.List.Marks {
		if m.Label == label && m.Focus >= 0 {
			return m.Focus
		}
	}
	return -1
}

func TestThePointerAloneReachesACaseAndResults(t *testing.T) {
	d := sit(sizes[0], full())
	d.click(t, "Understood")
	d.click(t, "Steady oozing in a spine operation")
	d.click(t, "New")
	d.click(t, "To the case sheet")
	if want := (home.Act{Do: home.Begin, Key: "a", Seed: 1, NewSeed: true}); d.last() != want {
		t.Errorf("%+v, want %+v", d.last(), want)
	}
	d.view.Unfinished = []home.Unfinished{{Path: "running/one", Title: "One", Mode: "practice"}}
	d.Idle()
	d.click(t, "Go on with it")
	if want := (home.Act{Do: home.Resume, Path: "running/one"}); d.last() != want {
		t.Errorf("%+v, want %+v", d.last(), want)
	}
	n := len(d.acts)
	d.click(t, "Put aside")
	if len(d.acts) != n {
		t.Error("one press put a case aside")
	}
	if err := d.HoldDown("Put aside", 1000); err != nil {
		t.Fatal(err)
	}
	if want := (home.Act{Do: home.PutAside, Path: "running/one"}); d.last() != want {
		t.Errorf("%+v, want %+v", d.last(), want)
	}
}

// All two hundred results can be reached with the Tab key, though only those near the view are drawn.
func TestTwoHundredResultsAreReachedByKeys(t *testing.T) {
	d := sit(sizes[0], full())
	d.click(t, "Understood")
	d.home.Select("a")
	d.Idle()
	d.focus(t, "Show all 200 results")
	d.Key(ui.KeyEnter)
	for range 2 * 200 {
		d.Key(ui.KeyTab)
	}
	seen := false
	for _, m := range d.List.Marks {
		seen = seen || m.Kind == ui.KindText && strings.Contains(m.Label, "seed 18446744073709551416 ") && !m.Shown.Empty()
	}
	if !seen {
		t.Error("the last of 200 results does not come into view with the Tab key")
	}
	if n := len(d.List.Marks); n > 400 {
		t.Errorf("%d marks are drawn for 200 results", n)
	}
}
