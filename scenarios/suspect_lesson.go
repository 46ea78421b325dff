// This file looks for what makes a guided lesson longer than it says, and for what has no place in one. Whether its steps can
// be done is found out by playing it, in scoring/coach.

package scenarios

import (
	"fmt"
	"strings"
)

// Pace of a trainee in a lesson [A]: silent reading, and finding and pressing what a step asks for.
const (
	WordsPerMin = 240
	ActS        = 5
)

// lesson compares the words of a lesson with its minutes, and finds keys that a lesson has no use for.
func (c *checker) lesson() {
	if !c.f.Lesson() {
		return
	}
	for _, key := range []string{"modes.assessment_speed", "modes.assessment_time_limit_min"} {
		if c.Has(key) {
			c.Fault(key, "a guided lesson is for practice only, so this is never used", "the key left out, or the case without guidance")
		}
	}
	least := 0.0
	for i := range c.f.Guidance {
		least += c.f.Guidance[i].TraineeS()
	}
	if least > 60*float64(c.f.Minutes) {
		c.Fault("minutes", fmt.Sprintf("reading and doing what the lesson says takes about %.0f minutes without any waiting", least/60), "more minutes, or fewer words")
	}
}

// TraineeS is how long a trainee reads a step and acts, without what is waited for.
func (s *Step) TraineeS() float64 {
	words := len(strings.Fields(s.Do)) + len(strings.Fields(s.Why)) + len(strings.Fields(s.Then))
	seconds := 60 * float64(words) / WordsPerMin
	if s.Until.Act != nil {
		seconds += ActS
	}
	return seconds
}
