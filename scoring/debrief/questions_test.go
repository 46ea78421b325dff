package debrief

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"rouleau/assets/words"
	"rouleau/scenarios"
	"rouleau/sim"
)

// talked are the questions after a case by an operator, with the costs of all decisions.
func talked(t testing.TB, scenario, operator string, seed uint64) (*Debrief, []Cost, []Question) {
	t.Helper()
	d := New(played(t, scenario, operator, seed))
	var costs []Cost
	for i := range d.Decisions {
		costs = append(costs, d.Play(i))
	}
	return d, costs, Questions(d, costs)
}

var (
	quoted  = regexp.MustCompile(`“[^”]*”`)
	verdict = regexp.MustCompile(`(?i)\b(points?|grades?|marks?|pass(ed)?|fail(ed)?|wrong(ly)?|mistakes?|errors?|faults?|bad(ly)?|good|well|too (late|early|little|much)|should|must have|critical|forgot(ten)?|missed|left out|instead|better|worse|right(ly)?)\b`)
)

// open checks what holds for the questions of any run.
func open(t *testing.T, name string, d *Debrief, qs []Question) {
	t.Helper()
	if len(qs) < 5 || len(qs) > 8 {
		t.Errorf("%s: %d questions", name, len(qs))
	}
	for i, q := range qs {
		want := Analysis
		switch i {
		case 0:
			want = Reaction
		case len(qs) - 1:
			want = Summary
		}
		if q.Stage != want {
			t.Errorf("%s: question %d is of stage %s", name, i, q.Stage)
		}
		if !strings.HasSuffix(q.Text, "?") || strings.Contains(q.Text, "%!") || strings.Contains(q.Text, "‹") {
			t.Errorf("%s: %q", name, q.Text)
		}
		if word := verdict.FindString(quoted.ReplaceAllString(q.Text, "")); word != "" {
			t.Errorf("%s: %q is a verdict: %s", name, word, q.Text)
		}
		if q.Stage == Analysis && (!strings.Contains(q.Text, clock(q.Tick)) || q.Tick < 0 || q.Tick > d.Record.lastTick) {
			t.Errorf("%s: the moment %s is not named: %s", name, clock(q.Tick), q.Text)
		}
		if i > 1 && want == Analysis && q.Tick < qs[i-1].Tick {
			t.Errorf("%s: %s comes after %s", name, clock(q.Tick), clock(qs[i-1].Tick))
		}
	}
}

func TestQuestionsAreOpenInEveryKindOfRun(t *testing.T) {
	for _, c := range [...][2]string{
		{"first-bowl", "hasty"}, {"first-bowl", "steady"}, {"first-bowl", "idle"}, {"first-bowl", "forgetful-of-paper"},
		{"lesson-the-bowl", "hasty"}, {"lesson-washing", "rule-bound"}, {"lesson-anticoagulation", "idle"},
		{"salvage-declined", "rule-bound"}, {"infection-in-the-field", "overcautious"}, {"bench-left-by-a-colleague", "steady"},
	} {
		d, _, qs := talked(t, c[0], c[1], 3)
		open(t, c[0]+" by "+c[1], d, qs)
	}
}

// What is asked about: the decisions that stand first, what points never make up for, and what went well.
func TestQuestionsCoverWhatMattered(t *testing.T) {
	d, costs, qs := talked(t, "first-bowl", "forgetful-of-paper", 3)
	Rank(costs)
	asked := func(part string) bool {
		return slices.ContainsFunc(qs, func(q Question) bool { return q.Stage == Analysis && strings.Contains(q.Text, part) })
	}
	if !asked(clock(costs[0].Decision.Tick)) {
		t.Errorf("nothing about %s at %s", costs[0].Decision.Title, clock(costs[0].Decision.Tick))
	}
	if len(d.Own.Critical) == 0 || !asked(words.Say(criticalPrompts[d.Own.Critical[0]])) {
		t.Errorf("nothing about %v", d.Own.Critical)
	}
	if !asked(words.Say("questions.what_helped")) {
		t.Error("nothing about what went well")
	}
	if !asked(words.Say("questions.who_needed")) && !asked(words.Say("questions.how_heard")) {
		t.Error("nothing about talking")
	}
	for _, q := range qs {
		t.Log(q.Text)
	}
}

func TestEveryCriticalHasItsPrompt(t *testing.T) {
	for _, name := range scenarios.CriticalNames() {
		if words.Say(criticalPrompts[name]) == "‹›" || partKeys[concerns[name].part] == "" {
			t.Errorf("%s: %q in %q", name, criticalPrompts[name], concerns[name].part)
		}
	}
}

func TestQuestionsAreOfTheRun(t *testing.T) {
	_, _, hasty := talked(t, "first-bowl", "hasty", 3)
	_, _, other := talked(t, "first-bowl", "overcautious", 3)
	_, _, elsewhere := talked(t, "first-bowl", "hasty", 4)
	for _, o := range [][]Question{other, elsewhere} {
		same := 0
		for _, q := range hasty[1:] {
			if slices.Contains(o, q) {
				same++
			}
		}
		if same > 1 {
			t.Errorf("%d of %d questions are the same in another run", same, len(hasty))
		}
	}
	_, _, again := talked(t, "first-bowl", "hasty", 3)
	if !slices.Equal(hasty, again) {
		t.Error("the same run is asked about otherwise the second time")
	}
}

// What came about is asked about when it had, with what could be seen then.
func TestWhatCameAboutIsAskedAboutThen(t *testing.T) {
	d := New(played(t, "caesarean-rhd-negative", "inattentive", 3))
	met := d.Record.Run.State.Conduct.Met[sim.IncidentContaminant]
	if len(d.Own.Grade.Critical) != 1 || d.Own.Grade.Critical[0].Name != "concealed" || met == 0 {
		t.Fatalf("this test wants another run: %+v", d.Own.Grade.Critical)
	}
	if at := d.Own.Grade.Critical[0].Tick; at < met || at > met+60*sim.TicksPerSecond {
		t.Errorf("it came about at %s, and is placed at %s", clock(met), clock(at))
	}
	i := slices.IndexFunc(Questions(d, nil), func(q Question) bool { return strings.HasSuffix(q.Text, words.Say("questions.who_knew")) })
	if i < 0 {
		t.Fatal("nothing is asked about it")
	}
	if q := Questions(d, nil)[i]; q.Tick < met || !strings.Contains(q.Text, clock(d.Own.Grade.Critical[0].Tick)) {
		t.Errorf("%s, of %s: %s", clock(q.Tick), clock(met), q.Text)
	}
}

// No act that came late, or that an alarm had to ask for, is asked about as one that went well.
func TestALateActIsNoSuccess(t *testing.T) {
	asked := 0
	for _, c := range [...][2]string{{"heparin-pump-and-protamine", "inattentive"}, {"first-bowl", "hasty"}, {"first-bowl", "overcautious"}} {
		d := New(played(t, c[0], c[1], 5))
		for _, q := range Questions(d, nil) {
			if !strings.HasSuffix(q.Text, words.Say("questions.what_helped")) {
				continue
			}
			asked++
			for i := range d.Decisions {
				if k := &d.Decisions[i]; k.Fault != LeftOut && k.Done == q.Tick {
					t.Errorf("%s by %s: asked about as a success, and would be put right by %q: %s", c[0], c[1], k.Title, q.Text)
				}
			}
			drip := words.Say("questions.anticoagulant_in_range_share")
			if strings.Contains(q.Text, drip) && d.Record.seenAt(q.Tick).Alarms[sim.AlarmNoDrip] {
				t.Errorf("%s by %s: the alarm asked for it: %s", c[0], c[1], q.Text)
			}
		}
	}
	if asked == 0 {
		t.Error("nothing is asked about as a success")
	}
}

// A layer is no larger than what it lies in, and a bowl that is not under way does nothing.
func TestWhatIsSeenIsPossible(t *testing.T) {
	d := New(played(t, "child-of-14-kg", "hasty", 2))
	talk := &talk{d: d, rec: d.Record}
	layered, set := regexp.MustCompile(`(\d+) mL in the reservoir with a clear layer of (\d+) mL`), 0
	for at := int64(0); at < d.Record.lastTick; at += 20 * sim.TicksPerSecond {
		text := talk.look("questions.moment", "processing", at, clock(at))
		if m := layered.FindStringSubmatch(text); m != nil {
			whole, _ := strconv.Atoi(m[1])
			if layer, _ := strconv.Atoi(m[2]); layer > whole {
				t.Error(text)
			}
		}
		if strings.Contains(text, words.Say("questions.bowl_empty")) == strings.Contains(text, words.Say("questions.processing")) {
			t.Error(text)
		}
		if strings.Contains(text, words.Say("questions.set_up")) {
			set++
		}
	}
	if set == 0 {
		t.Error("there was a bowl under way at every time")
	}
}
