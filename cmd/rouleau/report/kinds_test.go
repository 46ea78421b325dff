package report

import (
	"html"
	"strings"
	"testing"

	"rouleau/assets/words"
	"rouleau/sim"
)

// What each kind of attempt must say, and must not, on the page and on a terminal.
func TestEachKindReadsWell(t *testing.T) {
	alike := words.Say("report.alike")
	for _, k := range []struct {
		r          *Report
		has, hasnt []string
	}{
		{hasty(t), []string{"Not passed, with", "what each one cost", sim.ModelVersion}, []string{"A lesson is not graded", "which count as 100"}},
		{lesson(t), []string{"A lesson is not graded"}, []string{"assed, with", words.Say("report.reached"), "passed, "}},
		{stopped(t), []string{"was left at 0:11:40", words.Say("report.good_unfinished"), "The seal of the file is not that of its content"}, nil},
		{declined(t), []string{"Passed with", words.Say("report.line_nothing"), alike}, []string{words.Say("report.costs_lead")}},
		{nothing(t), []string{"Not passed, with 0 points", "do not salvage", words.Say("report.scaled", "35")}, []string{"was left at"}},
		{perfect(t), []string{"Passed with 100 points", words.Say("report.line_nothing"), alike}, []string{words.Say("report.unexplained_why"), "Not passed"}},
		{reaction(t), []string{words.Say("report.fatal"), `href="#at-x1"`}, []string{words.Say("report.mended")}},
	} {
		text := html.UnescapeString(pageOf(t, k.r))
		for _, want := range append(k.has, words.Say("report.feedback_page"), words.Say("cli.caution"), k.r.scenario().Hash(), k.r.Attempt.Operator, "2031-05-14 08:30 UTC") {
			if !strings.Contains(text, want) {
				t.Errorf("%s by %s does not say %q", k.r.scenario().ID, k.r.Attempt.Operator, want)
			}
		}
		for _, bad := range k.hasnt {
			if strings.Contains(text, bad) {
				t.Errorf("%s by %s says %q", k.r.scenario().ID, k.r.Attempt.Operator, bad)
			}
		}
		for _, q := range k.r.Told.Questions {
			if !strings.Contains(text, q.Text) {
				t.Errorf("%s: the question %q is not asked", k.r.scenario().ID, q.Text)
			}
		}
		lines := strings.Join(k.r.Lines(), "\n")
		if !strings.Contains(lines, k.r.opening()) || !strings.Contains(lines, words.Say("report.feedback")) || strings.Contains(lines, "‹") || strings.ContainsAny(lines, "\x02\x03\x1f") {
			t.Errorf("%s: a terminal is told\n%s", k.r.scenario().ID, lines)
		}
	}
}

// Who reads a verdict is told when the file says another one.
func TestAnotherGradeInTheFileIsTold(t *testing.T) {
	r := *declined(t)
	a := *r.Attempt
	r.Attempt = &a
	if got := r.warnings(); len(got) != 0 {
		t.Errorf("of a sound attempt is warned: %v", got)
	}
	a.Grade.Points = 55
	a.Grade.Passed = false
	text := strings.Join(r.warnings(), "\n")
	for _, want := range []string{"55 points, not passed", "100 points, passed"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q does not say %q", text, want)
		}
	}
}

func TestBreaksAreTold(t *testing.T) {
	a := *declined(t).Attempt
	if got := breaks(&a); len(got) != 1 || got[0] != words.Say("report.no_breaks") {
		t.Errorf("without breaks: %q", got)
	}
	a.Breaks.Interruptions, a.Breaks.LetGoS, a.Breaks.TakenOver = 2, 12.4, true
	if got := strings.Join(breaks(&a), "|"); !strings.Contains(got, "2 times") || !strings.Contains(got, "12 s") || strings.Count(got, "|") != 2 {
		t.Errorf("with breaks: %q", got)
	}
}

// Figures are shown with digits that make sense.
func TestFiguresAreShownSensibly(t *testing.T) {
	for _, k := range []struct{ got, want string }{
		{shown(0.0003, "mL"), "0 mL"}, {shown(-0.004, "g/dL"), "0 g/dL"}, {shown(-0.4, "g/dL"), "\u22120.4 g/dL"}, {shown(0.0003, "share"), "0.03 %"}, {shown(1.0/6, "share"), "16.7 %"}, {percent("0.86 to 0.97"), "86 to 97 %"}, {percent("at least 1"), "at least 100 %"}, {shown(900, "mL/min"), "900 mL/min"},
		{minus("at least -0.4 g/dL"), "at least \u22120.4 g/dL"}, {minus("2-3 bowls, cross-match"), "2-3 bowls, cross-match"},
		{sentence("processing: too few"), "Processing: too few."}, {sentence("Done."), "Done."}, {sentence("élan"), "Élan."},
	} {
		if k.got != k.want {
			t.Errorf("got %q, want %q", k.got, k.want)
		}
	}
}
