package preview

import (
	"slices"
	"strconv"
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/chart"
	"rouleau/cmd/rouleau/page"
	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/sim"
)

// This file holds what happens: the events of the file, and what team and bench say of their own accord.

// sameTicks is how far apart an event may come in the two runs and still be shown once.
const sameTicks = 2 * sim.TicksPerSecond

// eventMoments are the events by their numbers, once where they come at the same times for both.
func (p *preview) eventMoments() []chart.Moments {
	alike := true
	for i, tick := range p.courses[steady].Fired {
		other := p.courses[idle].Fired[i]
		alike = alike && (tick < 0) == (other < 0) && max(tick-other, other-tick) <= sameTicks
	}
	if alike {
		return []chart.Moments{{Name: words.Say("preview.row_events"), At: fired(p.courses[steady]), Guide: true}}
	}
	rows := []chart.Moments{}
	for i, co := range p.courses {
		rows = append(rows, chart.Moments{Name: words.Say("course.of", words.Say("preview.row_events"), co.Name), At: fired(co), Guide: i == steady})
	}
	return rows
}

func fired(co *chart.Course) (m []chart.Moment) {
	for i, tick := range co.Fired {
		if tick >= 0 {
			m = append(m, chart.Moment{S: sim.Seconds(tick), Text: strconv.Itoa(i + 1)})
		}
	}
	return m
}

// events is the table that explains the numbers.
func (p *preview) events() page.Block {
	t := &page.Table{Head: []string{words.Say("preview.number"), words.Say("preview.planned"), words.Say("preview.came"),
		words.Say("preview.kind"), words.Say("preview.who"), words.Say("preview.says"), words.Say("preview.expects")},
		Right: []bool{true}, Share: []int{4, 15, 13, 14, 10, 31, 13}}
	for i := range p.sc.Events {
		e := &p.sc.Events[i]
		t.Add(strconv.Itoa(i+1), p.planned(e, i), p.came(i), p.kind(e), words.Say("speaker."+e.Who), e.Says, p.expects(e))
	}
	return page.Block{Head: words.Say("preview.events_head"), Table: t}
}

// plain is a word of the format for reading.
func plain(word string) string { return strings.ReplaceAll(word, "_", " ") }

// came says when an event came, once where it is the same for both.
func (p *preview) came(i int) string {
	var times [2]string
	for who, co := range p.courses {
		times[who] = words.Say("preview.never")
		if tick := co.Fired[i]; tick >= 0 {
			times[who] = at(tick)
		}
	}
	if times[steady] == times[idle] {
		return times[steady]
	}
	return words.Say("preview.came_apart", times[steady], times[idle])
}

// kind is the kind of an event, with the contaminant it is about.
func (p *preview) kind(e *scenarios.Event) string {
	if e.Agent == "" {
		return plain(e.Kind)
	}
	return words.Say("preview.of_agent", plain(e.Kind), p.label(e.Agent))
}

// planned says when an event is to come, over all seeds, and on what it waits with this one.
func (p *preview) planned(e *scenarios.Event, i int) string {
	var parts []string
	if e.At != nil {
		from, to := *e.At, *e.At
		from.Seconds += int(60 * e.LaterByMin.Low())
		to.Seconds += int(60 * e.LaterByMin.High())
		if from.Seconds == to.Seconds {
			parts = append(parts, from.String())
		} else {
			parts = append(parts, words.Say("preview.from_to", from.String(), to.String()))
		}
	}
	amount := scoring.Show(p.c.Events[i].Threshold)
	switch p.c.Events[i].When {
	case sim.WhenHbBelow:
		parts = append(parts, words.Say("preview.when_hb", amount))
	case sim.WhenShedAbove:
		parts = append(parts, words.Say("preview.when_shed", amount))
	case sim.WhenGiving:
		parts = append(parts, words.Say("preview.when_given", amount))
	case sim.WhenProduct:
		parts = append(parts, words.Say("preview.when_product", amount))
	}
	return strings.Join(parts, ", ")
}

// expects says what somebody who acts is to do about an event, as far as the file says so.
func (p *preview) expects(e *scenarios.Event) string {
	var parts []string
	if e.WithinMin > 0 {
		parts = append(parts, words.Say("preview.within", scoring.Show(e.WithinMin)))
	}
	if e.RightAnswer != nil {
		answer := words.Say("target.no")
		if *e.RightAnswer {
			answer = words.Say("target.yes")
		}
		parts = append(parts, words.Say("preview.right_answer", answer))
	}
	return strings.Join(parts, "; ")
}

// beside is something the team or the bench says that no event of the file asks for, and when.
type beside struct {
	letter string
	who    int // who plays
	from   string
	text   string
	ticks  []int64
}

// unasked are the words that come by themselves. Answers to what an operator asked for are not among them.
var unasked = []string{"wants_blood", "gives_donor_unit", "gives_plasma", "oozes_everywhere"}

// gather finds what was said and alarmed in both runs.
func (p *preview) gather() {
	for i, co := range p.courses {
		for _, o := range co.Run.Log {
			b := beside{who: i, from: words.Say("speaker." + o.Who.String())}
			switch {
			case o.Kind == sim.Alarmed:
				b.from, b.text = words.Say("preview.alarm"), words.Say("alarm."+o.Key)
			case o.Kind == sim.Said && slices.Contains(unasked, o.Key):
				b.text = words.Say("say." + o.Key)
			default:
				continue
			}
			at := slices.IndexFunc(p.besides, func(k beside) bool { return k.who == i && k.from == b.from && k.text == b.text })
			if at < 0 {
				at, b.letter = len(p.besides), letters(len(p.besides))
				p.besides = append(p.besides, b)
			}
			p.besides[at].ticks = append(p.besides[at].ticks, o.Tick)
		}
	}
}

// letters counts in letters: a to z, aa, ab and so on.
func letters(n int) string {
	last := string(rune('a' + n%26))
	if n < 26 {
		return last
	}
	return letters(n/26-1) + last
}

func (p *preview) besideMoments(who int) (m []chart.Moment) {
	for _, b := range p.besides {
		if b.who != who {
			continue
		}
		for _, tick := range b.ticks {
			m = append(m, chart.Moment{S: sim.Seconds(tick), Text: b.letter})
		}
	}
	return m
}

func (p *preview) ownAccord() page.Block {
	t := &page.Table{Head: []string{words.Say("preview.number"), words.Say("preview.run"), words.Say("preview.who"), words.Say("preview.says"), words.Say("preview.time")},
		Right: []bool{true}, Share: []int{4, 12, 12, 36, 36}}
	for _, b := range p.besides {
		var times []string
		for _, tick := range b.ticks {
			times = append(times, at(tick))
		}
		t.Add(b.letter, p.courses[b.who].Name, b.from, b.text, strings.Join(times, ", "))
	}
	return page.Block{Head: words.Say("preview.besides_head"), Table: t}
}
