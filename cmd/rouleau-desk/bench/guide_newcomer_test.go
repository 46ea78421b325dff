// A newcomer who works the window with the pointer alone, and does only what the card says, comes to the end of every lesson.

package bench_test

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

// newcomer is somebody who works the window with the pointer alone and knows only what the card says.
type newcomer struct {
	pointer
	*lessonPlay
}

// lessonPlay is the pupil's clock and card.
type lessonPlay struct{ p *pupil }

func (l lessonPlay) card() *bench.Guide { return l.p.card() }
func (l lessonPlay) wait()              { l.p.wait() }

// lets waits until the card has changed.
func (n newcomer) lets() {
	n.t.Helper()
	was := *n.card()
	for range 4000 {
		if g := n.card(); g.Step != was.Step || g.Then != was.Then || g.Done {
			return
		}
		n.wait()
	}
	log := n.Session.View.Log
	n.t.Fatalf("the card stays at step %d, %q; there are %q; the log ends with %+v", was.Step, was.Do, n.Labels(), log[max(0, len(log)-3):])
}

// free waits until the hands are free.
func (n newcomer) free() {
	for range 4000 {
		if v := &n.Session.View.Seen; !v.HandsBusy && !v.Pump.Braking {
			break
		}
		n.wait()
	}
	n.Idle()
}

// press finds a control, with the wheel over the area that holds it, and presses it.
func (n newcomer) press(label, below string) {
	n.t.Helper()
	n.turn(label)
	n.pointer.press(label, below)
}

func (n newcomer) set(label string, value float64) { n.turn(label); n.pointer.set(label, value) }
func (n newcomer) hold(label string)               { n.turn(label); n.pointer.hold(label) }

// turn turns the wheel over the scrolled area a control stands in until it is in sight.
func (n newcomer) turn(label string) {
	n.t.Helper()
	for range 40 {
		m, err := n.mark(label, "")
		if err != nil {
			n.t.Fatal(err)
		}
		if m.Shown.H >= min(m.Rect.H, 30) {
			return
		}
		for _, area := range n.List.Marks {
			if in := area.Shown; area.Kind == ui.KindScroll && in.X <= m.Rect.X && in.Right() >= m.Rect.Right()-1 && in.H > 60 {
				lines := float32(-1)
				if m.Rect.Y < in.Y {
					lines = 1
				}
				n.Wheel(in.Center(), lines)
				break
			}
		}
	}
}

// slide drags a slider to a value.
func (n newcomer) slide(label string, verb sim.Verb, value float64) {
	n.t.Helper()
	n.turn(label)
	m := n.seen(label, "")
	least, most, _ := sim.ValueRange(verb)
	x := m.Rect.X + 10 + (m.Rect.W-20)*float32((value-least)/(most-least))
	y := m.Rect.Bottom() - 13
	n.Drag(ui.Vec{X: m.Rect.X + m.Rect.W/2, Y: y}, ui.Vec{X: x, Y: y})
}

// shows says whether there is a button of exactly these words, in sight or to be scrolled to.
func (n newcomer) shows(label string) bool {
	return slices.ContainsFunc(n.List.Marks, func(m ui.Mark) bool { return m.Kind == ui.KindButton && m.Label == label })
}

// ways are what to press where the words of the card are not those of a button.
var ways = map[string]func(n newcomer){
	"Choose to set up to process": func(n newcomer) {
		for _, label := range []string{"set up to process", "heparin in saline", "small"} {
			n.press(label, "")
		}
		n.press("To the bench: time starts", "")
	},
	"Press To the bench: time starts. Then open the drip clamp.": func(n newcomer) {
		n.press("To the bench: time starts", "")
		n.press("Open the drip clamp", "")
	},
	"Press To the bench: time starts. Wait":     func(n newcomer) { n.press("To the bench: time starts", "") },
	"Now the experiment: close the drip clamp.": func(n newcomer) { n.press("Close the drip clamp", "") },
	"Take the pack down.":                       func(n newcomer) { n.press("Take the pack down", "") },
	"Hang the citrate.":                         func(n newcomer) { n.press(words.Say("solution.citrate_solution"), "") },
	"The surgeon wants to rinse":                func(n newcomer) { n.press("No", "") },
	"Take a sample.":                            func(n newcomer) { n.pressAny("Take a sample", words.Say("panel.sample_bag")) },
	"Tick: empty after washing.":                func(n newcomer) { n.press("empty after washing", "") },
	"Bowel content is in the wound.":            func(n newcomer) { n.choose("route", words.Say("panel.to_discard")) },
	"Set the vacuum to about 120 mmHg.":         func(n newcomer) { n.set("vacuum", 120) },
	"Hang the heparin solution":                 func(n newcomer) { n.press("heparin in saline", "") },
	"Lead the sucker to the reservoir.":         func(n newcomer) { n.choose("route", "the reservoir") },
	"Ask the surgeon to let the blood pool.":    func(n newcomer) { n.press(words.Say("request.let_it_pool"), "") },
	"Hang the saline":                           func(n newcomer) { n.press("saline 0.9 %", "") },
	"Turn the reservoir gently.":                func(n newcomer) { n.press(words.Say("panel.mix"), "") },
	"Stop the pump only.":                       func(n newcomer) { n.press("Stop the pump only", "") },
	"Push the air out of the bag.":              func(n newcomer) { n.press("Push the air out", "") },
	"Write the label, all six fields.": func(n newcomer) {
		n.press("Write the label …", "")
		for _, field := range []string{"first and last name", "hospital number", "date and time collection began", "expiry", "for this patient only", "volume"} {
			n.press(field, "Label: bag 1")
		}
		n.press("Write the label", "Label: bag 1")
	},
	"Hand over, all six points.": func(n newcomer) {
		n.press("Hand over …", "")
		for _, m := range n.Labels() {
			if slices.Contains(handOver, m) {
				n.press(m, "Hand over: bag 1")
			}
		}
		n.press("Say it", "")
	},
	"Call the clinician to the bedside.": func(n newcomer) { n.press("Call the clinician", "") },
	"Connect the bag through a filter.":  func(n newcomer) { n.hold("Connect through a filter") },
	"Give at about 60 mL/min.":           func(n newcomer) { n.set("giving", 60) },
	"Stop giving":                        func(n newcomer) { n.press("Stop giving", "") },
	"The anaesthetist asks.": func(n newcomer) {
		n.set("blood lost", 450)
		n.press("Tell it to the team", "")
	},
	"Take the bench down.": func(n newcomer) { n.hold("Take the bench down") },
	"End the case.":        func(n newcomer) { n.hold("End the case") },
}

var handOver = []string{words.Say("handover.volume"), words.Say("handover.hct"), words.Say("handover.washed"), words.Say("handover.anticoagulant"),
	words.Say("handover.expiry"), words.Say("handover.problems")}

// pressAny presses the first of these that is there.
func (n newcomer) pressAny(labels ...string) {
	n.t.Helper()
	for _, label := range labels {
		if n.shows(label) {
			n.press(label, "")
			return
		}
	}
	n.t.Fatalf("none of %q is there, but %q", labels, n.Labels())
}

// settings are the values that a card names, such as: set the fill rate to 500 mL/min.
var settings = regexp.MustCompile(`Set the (drip|fill rate|wash rate|wash volume) to (?:about )?(\d+) `)

var slid = map[string]sim.Verb{"fill rate": sim.SetFillRate, "wash rate": sim.SetWashRate, "wash volume": sim.SetWashVolume}

// sets does what a card asks for that names a value, and says whether it did.
func (n newcomer) sets(said string) bool {
	m := settings.FindStringSubmatch(said)
	if m == nil {
		return false
	}
	value, _ := strconv.ParseFloat(m[2], 64)
	if m[1] == "drip" {
		n.set("drip", value)
	} else {
		n.slide(m[1], slid[m[1]], value)
	}
	return true
}

// The whole lesson by pointer, through the display list, from the cautions to the result.
func TestANewcomerFinishesTheLesson(t *testing.T) {
	for _, name := range lessons(t) {
		t.Run(name, func(t *testing.T) { newcomerFinishes(t, name) })
	}
}

func newcomerFinishes(t *testing.T, name string) {
	for _, size := range []ui.Vec{{X: 900, Y: 600}, {X: 1280, Y: 800}} {
		p := lessonNamed(t, name, size)
		n := newcomer{pointer{p.table, t}, &lessonPlay{p}}
		n.press("Understood, to the case", "")
		for range 200 {
			g := *n.card()
			if g.Done {
				break
			}
			if g.Read {
				n.press("Continue", "")
				continue
			}
			n.free()
			acted := n.sets(g.Do)
			for said, way := range ways {
				if strings.HasPrefix(g.Do, said) {
					way(n)
					acted = true
				}
			}
			if button := strings.TrimSuffix(g.Do, "."); !acted && n.shows(button) {
				n.press(button, "")
				acted = true
			}
			if acted {
				n.Idle()
			}
			if h := n.card(); h.Step == g.Step && h.Then == g.Then && !h.Done {
				n.lets()
			}
		}
		v := &n.Session.View
		if !n.card().Done || !v.Seen.Ended {
			t.Fatalf("%v: the lesson stands at step %d, %q; ended %v", size, n.card().Step, n.card().Do, v.Seen.Ended)
		}
		if !n.HasText("Next, on the home screen") || !n.HasText("mL came in") {
			t.Errorf("%v: the end card says neither what came of it nor what comes next", size)
		}
		if minutes := sim.Seconds(v.Seen.Tick) / 60; minutes > 25 {
			t.Errorf("%v: %.0f minutes of the case", size, minutes)
		}
		n.press("See the result", "")
		if r := &v.Result; v.Screen != bench.Graded || !r.Pass || r.Total < 85 {
			t.Errorf("%v: screen %v, passed %v with %.0f points: %v", size, v.Screen, r.Pass, r.Total, r.Reasons)
		}
	}
}
