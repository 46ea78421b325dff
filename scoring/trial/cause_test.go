package trial

import (
	"regexp"
	"strings"
	"testing"

	"rouleau/scenarios"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// template gives the case to start from with pieces of its text changed.
func template(t *testing.T, changes ...string) *scenarios.Scenario {
	t.Helper()
	data, err := scenarios.Template("tried-out", false)
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	for i := 0; i < len(changes); i += 2 {
		if strings.Count(text, changes[i]) != 1 {
			t.Fatalf("%q stands there %d times", changes[i], strings.Count(text, changes[i]))
		}
		text = strings.Replace(text, changes[i], changes[i+1], 1)
	}
	sc, faults := scenarios.Parse("tried-out.yaml", []byte(text))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return sc
}

const asks = `  - {kind: request_blood, at: 0:36:00, later_by_min: {uniform: [0, 3]}, who: anaesthetist, says: "Please bring the washed blood as soon as you have a bag.", within_min: 10}` + "\n"

// One cause gives one message, at its place, and nothing that only follows from it.
func TestOneCauseIsToldOnce(t *testing.T) {
	for _, c := range []struct {
		changes     []string
		path, wants string
	}{
		{[]string{"case_stops: 1:20:00", "case_stops: 0:55:00"}, "case_stops", "cut off by case_stops while still processing: there are 5 minutes after operation_ends"},
		{[]string{"case_stops: 1:20:00", "case_stops: 1:00:00"}, "case_stops", "cut off by case_stops while "},
		{[]string{"expected_loss_ml: 1200", "expected_loss_ml: 200"}, "story.expected_loss_ml", "decides against salvage, which is worth while from an expected loss of about 500 mL"},
		{[]string{"contraindications: []", "contraindications: [Infection of the joint]"}, "story.contraindications", "decides against salvage because of this"},
	} {
		if c.changes[0] == "expected_loss_ml: 1200" {
			c.changes[0] = regexp.MustCompile(`expected_loss_ml: \d+`).FindString(string(template(t).Source))
		}
		found := Suspect(template(t, c.changes...))
		if len(found) != 1 || found[0].Path != c.path || !strings.Contains(found[0].Message, c.wants) {
			t.Errorf("%q:\n%v", c.changes, found)
		}
	}
}

// The proposed end of the case is enough, and more than was there.
func TestProposedEndIsEnough(t *testing.T) {
	found := Suspect(template(t, "case_stops: 1:20:00", "case_stops: 1:00:00"))
	if len(found) != 1 {
		t.Fatal(found)
	}
	_, stops, ok := strings.Cut(found[0].Expected, "about ")
	if !ok {
		t.Fatalf("no time is proposed: %s", found[0].Expected)
	}
	if again := Suspect(template(t, "case_stops: 1:20:00", "case_stops: "+stops)); len(again) > 0 {
		t.Errorf("with %s: %v", stops, again)
	}
}

// What does not follow from the one cause is told beside it.
func TestOtherFaultsStandBesideTheCause(t *testing.T) {
	found := Suspect(template(t, "case_stops: 1:20:00", "case_stops: 0:55:00", "    least: 4.5\n    soft_below: 3\n", "    least: 30\n    soft_below: 3\n"))
	if text := found.Error(); len(found) < 2 || !strings.Contains(text, "cut off") || !strings.Contains(text, "comes to 5 bowl volumes") || strings.Contains(text, "never anything") {
		t.Errorf("%v", found)
	}
}

// Nobody is said to be cut off who is ready in time.
func TestReadyInTime(t *testing.T) {
	runs := (&tries{sc: template(t)}).playAll()
	for _, run := range runs {
		if cutOff(run) {
			t.Errorf("seed %d ends at %d", run.Seed, run.State.Tick)
		}
	}
}

func TestWashedBloodThatWaitsIsFound(t *testing.T) {
	const early = "transfuse_below_g_dl: 12.5"
	was := regexp.MustCompile(`transfuse_below_g_dl: \S+`).FindString(string(template(t).Source))
	found := Suspect(template(t, asks, "", was, early)).Error()
	if !regexp.MustCompile(`washed blood lies ready from 0:3\d:\d\d, and donor blood is given at 0:\d\d:\d\d: no event request_blood asks`).MatchString(found) {
		t.Errorf("nobody asks: %s", found)
	}
	sooner := strings.Replace(strings.Replace(asks, "0:36:00", "0:30:00", 1), "{uniform: [0, 3]}", "0", 1)
	if found := Suspect(template(t, asks, sooner, was, early)).Error(); strings.Contains(found, "lies ready") {
		t.Errorf("an event asks: %s", found)
	}
}

// Blood is ready since the last time that there was too little, or that some ran in.
func TestReadySince(t *testing.T) {
	second := int64(sim.TicksPerSecond)
	run := &play.Run{Trace: []play.Sample{{Tick: 0}, {Tick: second, ProductML: 120}, {Tick: 2 * second, ProductML: 120, GiveMLMin: 50}, {Tick: 3 * second, ProductML: 110}, {Tick: 4 * second, ProductML: 110}}}
	for until, want := range map[int64]int64{0: -1, 1: second, 2: -1, 3: 3 * second, 4: 3 * second, 9: 3 * second} {
		if got := readyFrom(run, until*second); got != want {
			t.Errorf("until second %d: %d, want %d", until, got, want)
		}
	}
}
