// The debrief on the last page: reached by pointer, finger and keys, leading to the timeline and to trying again, asked for only when
// it is opened, and costing nothing while it is read.

package bench_test

import (
	"math"
	"strings"
	"sync"
	"testing"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/session"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau-desk/ui/uitest"
	"rouleau/scenarios"
	"rouleau/scoring/operators"
	"rouleau/sim"
)

// hasty is the spine case as somebody in a hurry plays it, with its debrief told; played once for all tests.
var hasty = sync.OnceValues(func() (*session.Session, error) {
	sc, err := scenarios.Open("steady-oozing-spine")
	if err != nil {
		return nil, err
	}
	op, err := operators.Open("hasty")
	if err != nil {
		return nil, err
	}
	s := session.New(sc, session.Options{Seed: 3, Draws: 3, Finish: session.Grader(sc, false, "test", "", nil)})
	s.Do([]bench.Act{{Do: bench.GoOn}, {Do: bench.GoOn}})
	who := op.Play(operators.SheetOf(sc, &s.Run.Case))
	var seen sim.Seen
	for !s.Run.State.Ended {
		if s.Run.State.Tick%sim.TicksPerSecond == 0 {
			sim.View(&s.Run.Case, &s.Run.State, &seen)
			who.Act(&seen, s.Run.Do)
		}
		s.Tick()
	}
	s.Do([]bench.Act{{Do: bench.Finish}, {Do: bench.GiveMarks, Marks: &bench.Marks{}}, {Do: bench.OpenDebrief}})
	await(s, func() bool { return s.View.Debrief.Step == bench.DebriefTold })
	return s, nil
})

// await runs the session until something is so, or for so long that a test must fail.
func await(s *session.Session, is func() bool) {
	for end := time.Now().Add(3 * time.Minute); !is() && time.Now().Before(end); time.Sleep(time.Millisecond) {
		s.Refresh()
	}
}

// debriefed is a window on the debrief of that case, and the acts it asks for that the session does not carry out itself.
func debriefed(t testing.TB, size ui.Vec) (*table, *[]bench.Act) {
	t.Helper()
	s, err := hasty()
	if err != nil || s.View.Debrief.Step != bench.DebriefTold {
		t.Fatalf("there is no debrief: %v", err)
	}
	b, asked := &table{Desk: bench.New(), told: map[string]bool{}, Session: s}, &[]bench.Act{}
	b.Driver = uitest.New(size, func(c *ui.Core) {
		s.Refresh()
		for _, a := range b.Desk.Frame(c, &s.View) {
			if a.Do == bench.ShowCourses {
				s.Do([]bench.Act{a})
				continue
			}
			*asked = append(*asked, a)
		}
	})
	b.Core.Words = bench.CoreWords()
	b.tab("desk_debrief.tab_costs")
	return b, asked
}

// tab goes to a tab of the page.
func (b *table) tab(key string) {
	b.Click(words.Say(key))
	b.Move(ui.Vec{X: 2, Y: 2})
	b.Core.Focus(0)
	b.Idle()
	b.Idle()
}

func (b *table) costs() []bench.Cost { return b.Session.View.Debrief.Told.Costs }

// course waits for the courses of the chosen row.
func (b *table) course(row int) *bench.Courses {
	await(b.Session, func() bool { return b.costs()[row].Courses != nil })
	b.Idle()
	b.Idle()
	return b.costs()[row].Courses
}

// row is the mark of a row of the list.
func (b *table) row(i int) ui.Mark {
	for _, m := range b.List.Marks {
		if m.ID == ui.Name("cost").At(i) {
			return m
		}
	}
	return ui.Mark{}
}

// button is the mark of one of the buttons of the chosen row.
func (b *table) button(name string) ui.Mark {
	for _, m := range b.List.Marks {
		if m.ID == ui.Name(name) {
			return m
		}
	}
	return ui.Mark{}
}

// The list says of each decision its points, what it would have changed and how sure that is, those that weigh most first.
func TestTheListTellsEachDecision(t *testing.T) {
	b, _ := debriefed(t, ui.Vec{X: 1280, Y: 800})
	for i := range b.costs() {
		k := &b.costs()[i]
		if i > 0 {
			b.Key(ui.KeyDown)
			b.Idle()
			b.Idle()
		}
		m := b.row(i)
		if !m.On || m.Shown.H < m.Rect.H-1 {
			t.Fatalf("row %d, %q, is not chosen in full sight: %+v", i, k.Title, m)
		}
		in := 0
		for _, w := range b.List.Marks {
			if w.Kind == ui.KindText && m.Rect.Has(w.Rect.Center()) && (w.Label == k.Points || w.Label == k.Title || k.Changes != "" && strings.HasPrefix(w.Label, k.Changes) || k.Sure != "" && strings.Contains(w.Label, k.Sure)) {
				in++
			}
		}
		if want := 2 + number(k.Changes != "") + number(k.Sure != "" && k.Group != bench.CostLeft); in != want {
			t.Errorf("row %d, %q, says %d of %d things", i, k.Title, in, want)
		}
		if !b.HasText(words.Say("desk_debrief.titled", k.Points, k.Title)) {
			t.Errorf("beside the list there is no %q", k.Title)
		}
	}
	b.Key(ui.KeyHome)
	b.Idle()
	if !b.row(0).On {
		t.Error("Home does not lead to the first")
	}
}

func number(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// A decision is tried again from a little before the moment at which both courses part, and shown on the timeline at that moment.
func TestADecisionLeadsOn(t *testing.T) {
	b, asked := debriefed(t, ui.Vec{X: 1280, Y: 800})
	b.Key(ui.KeyDown, ui.KeyDown)
	if m := b.button("cost try again"); m.Enabled && b.costs()[2].Courses == nil {
		t.Error("it can be tried again from a moment that is not known yet")
	}
	c := b.course(2)
	if !c.Part.Is || !c.Differ {
		t.Fatalf("%q is no example", b.costs()[2].Title)
	}
	for _, how := range []func(){func() { b.ClickAt(b.button("cost try again").Rect.Center()) }, func() { b.TapAt(b.button("cost try again").Rect.Center()) },
		func() { b.Core.Focus(0); b.Key(ui.K('A').Key) }} {
		*asked = (*asked)[:0]
		how()
		b.Idle()
		want(t, "the decision", *asked, math.Floor(c.Part.S-20), 0)
	}
	if !b.HasText(words.Say("desk_debrief.part")) || !b.HasText(c.Names[1]) {
		t.Error("the charts do not say where the courses part, or whose the dashed one is")
	}
	b.Key(ui.K('T').Key)
	b.Idle()
	b.Idle()
	at := b.Core.Clock(math.Floor(c.Part.S))
	if !b.HasText(words.Say("result.moment", at, b.costs()[2].Title)) || b.tries(t).Label != words.Say("result.try_from", at) {
		t.Errorf("the timeline does not tell of the decision at %s", at)
	}
	if !b.HasText(words.Say("report.row_decisions")) {
		t.Error("the timeline has no row of decisions")
	}
	b.Click(words.Say("desk_debrief.back_costs"))
	b.Idle()
	b.Idle()
	if !b.row(2).On || b.Core.Focused() != ui.Name("cost on timeline") {
		t.Error("the way back does not lead to the decision")
	}
	b.tab("desk_debrief.tab_questions")
	for _, q := range b.Session.View.Debrief.Told.Questions {
		if !q.At.Is {
			continue
		}
		b.Click(words.Say("result.at", b.Core.Clock(math.Floor(q.At.S))))
		b.Idle()
		b.Idle()
		if b.tries(t).Label != words.Say("result.try_from", b.Core.Clock(math.Floor(q.At.S))) {
			t.Errorf("%q does not lead to its moment", q.Text)
		}
		b.Click(words.Say("desk_debrief.back_questions"))
		b.Idle()
		b.Idle()
	}
}

// In a small window a row is opened over the list and closed again, by pointer, finger and keys.
func TestInASmallWindowARowIsOpened(t *testing.T) {
	b, asked := debriefed(t, ui.Vec{X: 900, Y: 600})
	for name, how := range map[string]func(){
		"pointer": func() { b.ClickAt(b.row(1).Shown.Center()) },
		"finger":  func() { b.TapAt(b.row(1).Shown.Center()) },
		"keys":    func() { b.Core.Focus(0); b.Key(ui.KeyHome, ui.KeyDown, ui.KeyEnter) },
	} {
		if b.button("cost try again").ID != 0 {
			t.Fatalf("%s: a row is open before", name)
		}
		how()
		b.Idle()
		c := b.course(1)
		if m := b.button("cost try again"); m.ID == 0 || b.row(1).ID != 0 {
			t.Fatalf("%s does not open a row", name)
		}
		*asked = (*asked)[:0]
		b.Key(ui.K('A').Key)
		want(t, name, *asked, math.Floor(c.Part.S-20), 0)
		b.Key(ui.KeyEscape)
		b.Idle()
		b.Idle()
		if m := b.row(1); !m.On || b.Core.Focused() != m.ID {
			t.Errorf("%s: Escape does not lead back to the row", name)
		}
	}
}

// All of it is reached by Tab, what belongs to the chosen row before the rows.
func TestTheDebriefIsReachedByTab(t *testing.T) {
	b, _ := debriefed(t, ui.Vec{X: 1280, Y: 800})
	b.course(0)
	order := uitest.FocusOrder(b.List)
	place := func(label string) int {
		for i, l := range order {
			if strings.HasPrefix(l, label) {
				return i
			}
		}
		t.Fatalf("%q is not reached by Tab: %v", label, order)
		return -1
	}
	last := -1
	for _, label := range []string{words.Say("desk_debrief.save"), "Try again from", words.Say("desk_debrief.on_timeline"), words.Say("desk_debrief.chart"), b.costs()[0].Title, words.Say("result.home")} {
		now := place(label)
		if now <= last {
			t.Errorf("%q stands at %d, after %d", label, now, last)
		}
		last = now
	}
	for range 60 { // to the last row, which comes into sight on the way
		if b.Key(ui.KeyTab); b.focusedLabel() == b.costs()[len(b.costs())-1].Title {
			break
		}
	}
	b.Idle()
	b.Idle()
	if m := b.row(len(b.costs()) - 1); m.Shown.H < m.Rect.H-1 || b.Core.Focused() != m.ID {
		t.Error("Tab does not lead to the last row")
	}
	b.Key(ui.KeyEnter)
	b.Idle()
	if !b.row(len(b.costs()) - 1).On {
		t.Error("Enter does not choose it")
	}
}

// The debrief is asked for when one of its tabs is opened and not before; until it is there the page says how far it is.
func TestTheDebriefIsAskedForWhenItIsOpened(t *testing.T) {
	b := graded(t, ui.Vec{X: 900, Y: 600})
	var asked []bench.Act
	v := &b.Session.View
	b.Screen = func(c *ui.Core) { asked = append(asked, b.Desk.Frame(c, v)...) }
	b.tab("result.tab_timeline")
	b.tab("result.tab_grade")
	if len(asked) != 0 {
		t.Fatalf("asked for %v", asked)
	}
	for _, key := range []string{"desk_debrief.tab_costs", "desk_debrief.tab_good", "desk_debrief.tab_questions"} {
		asked = asked[:0]
		b.tab(key)
		if len(asked) == 0 || asked[0].Do != bench.OpenDebrief {
			t.Errorf("%s asks for %v", key, asked)
		}
	}
	v.Debrief = bench.Debrief{Step: bench.DebriefPlaying, Done: 12, All: 40}
	asked = asked[:0]
	b.Idle()
	if !b.HasText("12 of 40 played") || len(asked) != 0 {
		t.Errorf("it does not say how far it is, or asks for %v", asked)
	}
	v.Debrief = bench.Debrief{Step: bench.DebriefNone, Why: words.Say("debrief.other_model", "0", "1")}
	b.Idle()
	if !b.HasText("was played with model version 0") {
		t.Error("it does not say why there is none")
	}
	v.Result.Self.Asked = true
	b.Idle()
	if b.HasText(words.Say("desk_debrief.tab_costs")) || b.HasText("was played with model version 0") {
		t.Error("something of it shows before the marks")
	}
}

func TestThePlaceOfThePageIsAskedFor(t *testing.T) {
	b, asked := debriefed(t, ui.Vec{X: 900, Y: 600})
	v := &b.Session.View
	defer func(was string) { v.Result.SavedAs = was }(v.Result.SavedAs)
	v.Result.SavedAs = "some/folder/attempt-1.json"
	for _, k := range []struct{ key, want string }{{"desk_debrief.tab_good", "some/folder/attempt-1.html"}, {"desk_debrief.tab_questions", "some/folder/attempt-1.html"}} {
		b.tab(k.key)
		*asked = (*asked)[:0]
		b.Click(words.Say("desk_debrief.save"))
		b.Idle()
		b.Idle()
		b.Key(ui.KeyEnter)
		b.Idle()
		if len(*asked) != 1 || (*asked)[0].Do != bench.SavePage || (*asked)[0].Text != k.want {
			t.Errorf("%s asks for %+v", k.key, *asked)
		}
	}
	b.Click(words.Say("result.save_as")) // the copy of an attempt begins from its own place again
	b.Idle()
	b.Key(ui.KeyEnter)
	b.Idle()
	if n := len(*asked); n != 2 || (*asked)[1].Do != bench.SaveCopy || (*asked)[1].Text != v.Result.SavedAs {
		t.Errorf("the copy asks for %+v", *asked)
	}
	b.Click(words.Say("desk_debrief.save"))
	b.Idle()
	b.Key(ui.KeyEscape)
	b.Idle()
	if len(*asked) != 2 || b.HasText(words.Say("desk_debrief.save_title")) {
		t.Error("Escape does not close the dialog")
	}
}

// While it is only read, nothing is painted and little is made.
func TestReadingTheDebriefCostsNothing(t *testing.T) {
	for _, size := range []ui.Vec{{X: 1280, Y: 800}, {X: 900, Y: 600}} {
		b, _ := debriefed(t, size)
		for _, key := range []string{"desk_debrief.tab_costs", "desk_debrief.tab_good", "desk_debrief.tab_questions", "result.tab_timeline"} {
			b.tab(key)
			b.course(0)
			for range 4 {
				b.Idle()
			}
			for i := range 60 {
				if b.Idle(); b.Changed {
					t.Fatalf("%s: the picture changes in frame %d", key, i)
				}
			}
			if n := testing.AllocsPerRun(20, b.Idle); n > mostMade {
				t.Errorf("%v, %s: %g allocations a frame", size, key, n)
			}
		}
	}
}
