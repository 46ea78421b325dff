package sim

// Deciding with the team, a no that keeps an operator for a while, and findings that may be told without crying wolf.

import "testing"

func TestTheTeamAnswersWithTheWordsOfTheCase(t *testing.T) {
	c := adultCase()
	c.TogetherLine = 3
	b := newBench(t, c, 1)
	b.do(Ask, 0, float64(DecideTogether))
	said := false
	for _, o := range b.h.List {
		said = said || o.Kind == Said && o.Who == Surgeon && o.Line == 2
	}
	var v Seen
	View(&b.c, &b.s, &v)
	if !said || !v.Together || v.TogetherLine != 2 {
		t.Errorf("said %v, seen %v with line %d", said, v.Together, v.TogetherLine)
	}
	plain := newBench(t, adultCase(), 1)
	plain.do(Ask, 0, float64(DecideTogether))
	if !plain.happened("leaves_it_to_the_sheet") {
		t.Error("a case without such words leaves the question unanswered")
	}
}

func TestEachReasonIsReadBack(t *testing.T) {
	for r, key := range map[Request]string{PatientDeclines: "reads_back_patient_declines", InfectedField: "reads_back_infected_field", NoHeparin: "reads_back_no_heparin"} {
		b := newBench(t, adultCase(), 1)
		b.do(Ask, 0, float64(r))
		if !b.happened(key) || !b.s.Team.ReasonTold {
			t.Errorf("%s was not read back", r)
		}
	}
}

func TestANoKeepsTheOperatorAsLongAsTheTeamAsks(t *testing.T) {
	c := adultCase()
	c.StayTick = Ticks(120)
	b := newBench(t, c, 1)
	b.do(Decide, 0, float64(DoNotSalvage))
	if why := May(&b.c, &b.s, Action{Do: EndCase}); why != "team_wants_you_here" {
		t.Errorf("ending at once is answered %q", why)
	}
	b.wait(120)
	b.do(EndCase, 0, 0)
}

func TestTellingOfAFindingIsNoFalseAlarm(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(c *Case)
		tell   Incident
		alarms int
	}{
		{"water on the wash hook", func(c *Case) { c.Packs[1].Solution, c.Packs[1].On = SterileWater, WashHookA }, IncidentWrongFluid, 0},
		{"an old pack", func(c *Case) { c.Packs[0].Expired, c.Packs[0].On = true, AnticoagulantHook }, IncidentWrongFluid, 0},
		{"heparin where it is forbidden", func(c *Case) {
			c.Packs[0].Solution, c.Packs[0].On, c.Patient.HeparinForbidden = HeparinSolution, AnticoagulantHook, true
		}, IncidentWrongFluid, 0},
		{"no vacuum", func(c *Case) { c.Faults.NoVacuum = true }, IncidentEquipment, 0},
		{"heparin where it is right", func(c *Case) { c.Packs[0].Solution, c.Packs[0].On = HeparinSolution, AnticoagulantHook }, IncidentWrongFluid, 1},
	} {
		k := adultCase()
		for i := range k.Packs {
			k.Packs[i].On = NoPart
		}
		c.change(&k)
		b := newBench(t, k, 1)
		b.do(Declare, 0, float64(c.tell))
		if got := b.s.Conduct.FalseAlarms; got != c.alarms {
			t.Errorf("%s: %d false alarms, want %d", c.name, got, c.alarms)
		}
	}
}
