// Package preview makes the page that shows whoever writes a case what happens in it: if nobody acts, and if the competent
// operator steady does, on one axis of time, with what the criteria make of both. This file plays the case and puts the page
// together.
package preview

import (
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/chart"
	"rouleau/cmd/rouleau/page"
	"rouleau/scenarios"
	"rouleau/scenarios/yamlread"
	"rouleau/scoring"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// draws is how many seeds are drawn to show what varies.
const draws = 20

// The two who play. Steady comes first wherever both are shown.
const (
	steady = iota
	idle
)

// preview is a case that both have played.
type preview struct {
	sc       *scenarios.Scenario
	c        *sim.Case
	seed     uint64
	warnings yamlread.Faults
	courses  [2]*chart.Course
	grades   [2]scoring.Grade
	besides  []beside
}

// Page is the page of a case with one seed. The warnings are those of the checks.
func Page(sc *scenarios.Scenario, seed uint64, warnings yamlread.Faults) *page.Page {
	p := &preview{sc: sc, seed: seed, warnings: warnings}
	c := sc.Case(seed, false)
	p.c = &c
	actors := [2]play.Actor{steady: operators.NewSteady(operators.SheetOf(sc, &c)), idle: operators.Idle{}}
	names := [2]string{steady: words.Say("preview.steady"), idle: words.Say("preview.idle")}
	var yard scoring.Yardstick
	for i, who := range actors {
		run := play.New(c, seed)
		run.ToEnd(who)
		if i == steady {
			yard = scoring.YardstickOf(run)
		}
		p.courses[i], p.grades[i] = chart.CourseOf(names[i], run), scoring.Judge(sc, run, yard)
	}
	p.gather()
	made := page.Page{Title: words.Say("preview.title", sc.Title), Lead: []string{sc.Summary,
		words.Say("preview.lead", sc.ID, sc.Version, plain(sc.Level), sc.Minutes, seed, sim.ModelVersion)}}
	made.Blocks = append(made.Blocks, p.checked(), p.outcome(), p.course(), p.phases(), p.events())
	if len(p.besides) > 0 {
		made.Blocks = append(made.Blocks, p.ownAccord())
	}
	made.Blocks = append(made.Blocks, p.criteria(), p.sheet(), p.answers(), p.varies(), p.closing())
	return &made
}

// checked are the warnings of the checks.
func (p *preview) checked() page.Block {
	b := page.Block{Head: words.Say("preview.warnings_head")}
	for _, f := range p.warnings {
		b.Faults = append(b.Faults, f.String())
	}
	if len(b.Faults) == 0 {
		b.Text = []string{words.Say("preview.no_warnings")}
	}
	return b
}

// course is the chart.
func (p *preview) course() page.Block {
	moments := p.eventMoments()
	for i, co := range p.courses {
		if m := p.besideMoments(i); len(m) > 0 {
			moments = append(moments, chart.Moments{Name: words.Say("course.of", words.Say("preview.row_besides"), co.Name), At: m})
		}
	}
	for i, co := range p.courses {
		if m := p.criteriaMoments(i); len(m) > 0 {
			moments = append(moments, chart.Moments{Name: words.Say("course.of", words.Say("preview.row_criteria"), co.Name), At: m})
		}
	}
	ch := chart.Of(words.Say("preview.course_head"), p.courses[:], p.mostClotML(), moments)
	return page.Block{Head: words.Say("preview.course_head"), Drawing: &page.Drawing{List: ch.List(), Says: ch.Title}, Caption: words.Say("preview.course_caption"), Sheet: true}
}

// mostClotML is the most clot that a criterion allows, not a number where there is none.
func (p *preview) mostClotML() float64 {
	for i := range p.sc.Criteria {
		if cr := &p.sc.Criteria[i]; cr.Measure == "clot_ml" && cr.Most != nil {
			return *cr.Most
		}
	}
	return math.NaN()
}

// at is the time of a tick, as files write it.
func at(tick int64) string {
	return yamlread.Clock{Seconds: int(tick / sim.TicksPerSecond)}.String()
}
