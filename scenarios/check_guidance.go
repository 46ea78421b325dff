// This file checks guided lessons: what steps wait for, the parts they point at, and the readings in their texts.

package scenarios

import (
	"fmt"
	"regexp"
	"slices"

	"rouleau/sim"
)

func (c *checker) guidance() {
	for i := range c.f.Guidance {
		s := &c.f.Guidance[i]
		path := fmt.Sprintf("guidance[%d]", i)
		for _, text := range []struct{ key, text string }{{"do", s.Do}, {"why", s.Why}, {"then", s.Then}} {
			c.readings(path+"."+text.key, text.text)
		}
		c.partNamed(path+".look", s.Look)
		if s.Look != "" && s.Panel != "" && s.Panel != "bench" {
			c.Fault(path+".panel", "look opens the bench page, and this another one", "look or panel, not both")
		}
		if c.sound(path + ".until") {
			c.until(path, s)
		}
	}
}

var placeholder = regexp.MustCompile(`\{([^{}]*)\}`)

// readings checks what stands in braces in a text.
func (c *checker) readings(path, text string) {
	for _, m := range placeholder.FindAllStringSubmatch(text, -1) {
		if _, ok := VisibleNamed(m[1]); !ok {
			c.unknown(path, fmt.Sprintf("{%s} is nothing that a trainee could read", m[1]), m[1], VisibleNames())
		}
	}
}

func (c *checker) partNamed(path, name string) {
	if _, ok := sim.PartNamed(name); !ok && c.sound(path) {
		c.unknown(path, fmt.Sprintf("there is no part %q", name), name, PartNames())
	}
}

// until checks that exactly one thing is waited for, and that it can come.
func (c *checker) until(path string, s *Step) {
	u := &s.Until
	given := 0
	for _, is := range []bool{u.Read, u.Act != nil, u.Holds != "", u.Reads != nil} {
		if is {
			given++
		}
	}
	const forms = "read: true, act, holds or reads"
	switch {
	case given == 0:
		c.Fault(path+".until", "the step waits for nothing, so it would never be seen", forms)
	case given > 1:
		c.Fault(path+".until", "the step waits for several things at once", "only one of "+forms)
	}
	if s.Fast && u.Read {
		c.Fault(path+".fast", "nothing is waited for while somebody reads", "the key left out")
	}
	if s.Then != "" && u.Read {
		c.Fault(path+".then", "nothing happens while somebody reads, so this is never shown", "the words under why")
	}
	if s.Time == "stands" && (u.Holds != "" || u.Reads != nil) {
		c.Fault(path+".time", "nothing changes while time stands, so the wait would never end", "runs, or the key left out")
	}
	if u.Act != nil {
		c.untilAct(path+".until.act", u.Act)
	}
	if r := u.Reads; r != nil && c.sound(path+".until.reads") {
		if _, ok := VisibleNamed(r.What); !ok {
			c.unknown(path+".until.reads.what", fmt.Sprintf("%q is nothing that a trainee could read", r.What), r.What, VisibleNames())
		}
		if r.AtLeast == nil && r.AtMost == nil {
			c.Fault(path+".until.reads", "no value is waited for", "at_least, at_most or both")
		}
		c.ordered(path+".until.reads", r.AtLeast, r.AtMost)
	}
}

func (c *checker) ordered(path string, least, most *float64) {
	if least != nil && most != nil && *least > *most {
		c.Fault(path+".at_most", fmt.Sprintf("at_most is below at_least, which is %g", *least), "at_least and at_most, or only one of them")
	}
}

// untilAct checks the act that a step waits for.
func (c *checker) untilAct(path string, a *UntilAct) {
	if c.sound(path) {
		c.act(path, a, number{"at_least", a.AtLeast}, number{"at_most", a.AtMost})
		c.ordered(path, a.AtLeast, a.AtMost)
	}
}

// number is a value that a key beside an act gives, nil where it is left out.
type number struct {
	key   string
	bound *float64
}

// act checks the name of an act, its part and its value.
func (c *checker) act(path string, a *UntilAct, numbers ...number) {
	verb, ok := sim.VerbNamed(a.Do)
	if !ok {
		c.unknown(path+".do", fmt.Sprintf("there is no act %q", a.Do), a.Do, VerbNames())
		return
	}
	c.partNamed(path+".on", a.On)
	least, most, _ := sim.ValueRange(verb)
	for _, b := range numbers {
		switch {
		case b.bound == nil:
		case a.Choice != "":
			c.Fault(path+"."+b.key, "the act has a choice already", "choice or a value, not both")
		case !HasValue(verb):
			c.Fault(path+"."+b.key, a.Do+" has no value", "the key left out")
		case *b.bound < least || *b.bound > most:
			c.Fault(path+"."+b.key, fmt.Sprintf("%g is not possible for %s", *b.bound, a.Do), fmt.Sprintf("a number, %g to %g", least, most))
		}
	}
	if a.Choice != "" {
		c.choice(path+".choice", verb, a)
	}
}

// choice checks the word for the value of an act.
func (c *checker) choice(path string, verb sim.Verb, a *UntilAct) {
	known := ValueWords(verb)
	if verb == sim.Hang {
		known = c.hangable()
	}
	if len(known) == 0 {
		c.Fault(path, a.Do+" has no words for its value", "at_least and at_most, or nothing")
		return
	}
	_, ok := ValueNamed(verb, a.Choice)
	if verb == sim.Hang {
		ok = slices.Contains(known, a.Choice)
	}
	if !ok {
		c.unknown(path, fmt.Sprintf("%q is not a value of %s here", a.Choice, a.Do), a.Choice, known)
	}
}

// hangable are the solutions of which a pack in date stands on the bench.
func (c *checker) hangable() []string {
	var known []string
	for _, p := range c.f.Bench.Packs {
		if !p.Expires.Before(c.f.Day) && !slices.Contains(known, p.Solution) {
			known = append(known, p.Solution)
		}
	}
	return known
}
