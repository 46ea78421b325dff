// The views of the debrief at every size, in a longer language too: nothing overlaps, nothing is cut, every control is large enough.

package bench_test

import (
	"testing"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/ui"
)

// longer is a debrief all of whose words are longer by a third.
func longer(t *bench.Told) *bench.Told {
	l := *t
	l.Costs, l.Figures, l.Questions = append([]bench.Cost{}, t.Costs...), append([]bench.Figure{}, t.Figures...), append([]bench.TalkQuestion{}, t.Questions...)
	for i := range l.Costs {
		k := &l.Costs[i]
		k.Title, k.Changes, k.Sure, k.Bears = stretched(k.Title), stretched(k.Changes), stretched(k.Sure), stretched(k.Bears)
	}
	for i := range l.Figures {
		l.Figures[i].Name = stretched(l.Figures[i].Name)
	}
	for i := range l.Questions {
		l.Questions[i].Text, l.Questions[i].Stage = stretched(l.Questions[i].Text), stretched(l.Questions[i].Stage)
	}
	return &l
}

// heeded is a debrief with everything above it that there can be, and a row of each kind unsure.
func heeded(t *bench.Told) *bench.Told {
	l := *t
	l.Heed = []string{words.Say("report.unfinished", "0:45:00"), words.Say("desk_debrief.other_grade", "68", "67.4")}
	l.Costs = append([]bench.Cost{}, t.Costs...)
	for i := range l.Costs {
		l.Costs[i].Unsure = l.Costs[i].Sure != ""
	}
	return &l
}

func TestTheDebriefFitsAtEverySize(t *testing.T) {
	for _, long := range []bool{false, true} {
		if long {
			speakLong(t)
		}
		for _, size := range allSizes {
			b, _ := debriefed(t, size)
			v := &b.Session.View
			whole := v.Debrief
			first := map[bench.CostGroup]int{}
			for i := len(b.costs()) - 1; i >= 0; i-- {
				first[b.costs()[i].Group] = i
			}
			for _, i := range first {
				if b.costs()[i].Place >= 0 {
					b.Session.Do([]bench.Act{{Do: bench.ShowCourses, Value: i}})
					b.course(i)
				}
			}
			if long {
				v.Debrief.Told = longer(whole.Told)
			}
			where := func(text string) string {
				if long {
					return text + ", long words"
				}
				return text
			}
			for _, odd := range []bool{false, true} {
				if odd {
					v.Debrief.Told = heeded(v.Debrief.Told)
				}
				b.tab("desk_debrief.tab_costs")
				b.faults(t, where("costs"))
				for _, i := range first {
					b.Desk.ChooseCost(i)
					b.faults(t, where("costs, a row of each group"))
					b.Key(ui.KeyEnter)
					b.faults(t, where("a row opened"))
					b.Key(ui.KeyEscape)
				}
				b.tab("desk_debrief.tab_good")
				b.faults(t, where("beside a good run"))
				b.tab("desk_debrief.tab_questions")
				b.faults(t, where("questions"))
				v.Notice = "saved as a very long name of a file in a folder with a long name/attempt-20310514-120000.html"
				b.tab("desk_debrief.tab_costs")
				b.faults(t, where("costs with a notice"))
				v.Notice = ""
			}
			b.Click(words.Say("desk_debrief.save"))
			b.faults(t, where("the place of the page"))
			b.Key(ui.KeyEscape)
			b.Desk.ChooseCost(0)
			b.Key(ui.KeyEnter)
			b.Click(words.Say("desk_debrief.on_timeline"))
			b.faults(t, where("timeline at a decision"))
			b.tab("desk_debrief.tab_good")
			for _, step := range []bench.Debrief{{Step: bench.DebriefPlaying}, {Step: bench.DebriefPlaying, Done: 9, All: 40}, {Step: bench.DebriefPlaying, Drawings: true, Done: 15, All: 15},
				{Step: bench.DebriefNone, Why: words.Say("debrief.other_model", "0.12", "0.13")}} {
				v.Debrief = step
				b.faults(t, where("before it is there"))
			}
			v.Debrief = whole
		}
	}
}

// A tired reader tells both courses apart without colour: one is whole, the other dashed, and each says whose it is.
func TestBothCoursesAreToldApartWithoutColour(t *testing.T) {
	b, _ := debriefed(t, ui.Vec{X: 1280, Y: 800})
	c := b.course(0)
	whole, dashed := 0, 0
	for i := range b.List.Ops {
		op := &b.List.Ops[i]
		if op.Kind != ui.OpLine || op.Width < 2 {
			continue
		}
		switch op.Col {
		case b.Core.Pal.Series[0].Col:
			whole++
			if op.Dash != (ui.Dash{}) {
				t.Fatal("the person's own course is dashed")
			}
		case b.Core.Pal.Series[1].Col:
			dashed++
			if op.Dash == (ui.Dash{}) {
				t.Fatal("the course put right is not dashed")
			}
		}
	}
	if n := 2 * len(c.Lanes); whole < n || dashed < n { // a line and its sample in each lane
		t.Errorf("%d whole and %d dashed lines in %d lanes", whole, dashed, len(c.Lanes))
	}
	for _, name := range c.Names {
		n := 0
		for _, m := range b.List.Marks {
			if m.Owner == ui.Name("cost courses") && len(m.Label) > len(name) && m.Label[len(m.Label)-len(name):] == name {
				n++
			}
		}
		if n < len(c.Lanes) {
			t.Errorf("%q stands behind %d of %d curves", name, n, len(c.Lanes))
		}
	}
}
