// This file holds the values of acts in words, for scripts, records and lessons: a file says what was chosen and not its number.

package scenarios

import (
	"strings"

	"rouleau/sim"
)

// choiceWords are the words of a verb's value, in the order of their numbers; an empty word is a number that no file may use.
var choiceWords = map[sim.Verb][]string{
	sim.Decide:              namesOf(sim.Decision.String, "undecided"),
	sim.ChooseAnticoagulant: namesOf(sim.Solution.String, "none"),
	sim.ChooseBowl:          namesOf(sim.BowlKind.String, "none"),
	sim.Clamp:               {"closed", "open"},
	sim.Route:               {"discard", "reservoir"},
	sim.Ask:                 namesOf(sim.Request.String, ""),
	sim.Answer:              {"no", "yes"},
	sim.AutoStop:            {"off", "on"},
	sim.AutoWash:            {"off", "on"},
	sim.AutoEmpty:           {"off", "on"},
	sim.Hook:                {"without_filter", "with_filter"},
	sim.JoinCircuit:         {"without_filter", "with_filter"},
	sim.Squeeze:             {"end", "begin"},
	sim.Declare:             namesOf(sim.Incident.String, ""),
}

// fieldWords are the fields of the verbs whose value is a set, in the order of their bits.
var fieldWords = map[sim.Verb][]string{
	sim.Label:    {"name", "number", "started", "expiry", "autologous", "volume"},
	sim.HandOver: {"volume", "hct", "washed", "anticoagulant", "expiry", "problems"},
}

// allFields and noField are the words for all and none of the fields.
const (
	allFields = "complete"
	noField   = "nothing"
)

// namesOf lists the names of a small set of the model, without one of them.
func namesOf[T ~uint8](name func(T) string, without string) []string {
	var names []string
	for i := T(0); name(i) != "unknown"; i++ {
		n := name(i)
		if n == without {
			n = ""
		}
		names = append(names, n)
	}
	return names
}

// HasValue tells whether a verb has a value at all.
func HasValue(v sim.Verb) bool {
	least, most, _ := sim.ValueRange(v)
	return least != 0 || most != 0 || choiceWords[v] != nil || fieldWords[v] != nil
}

// ValueWords lists the words that a verb's value can be; fields can also be joined by +.
func ValueWords(v sim.Verb) []string {
	if f := fieldWords[v]; f != nil {
		return append([]string{allFields, noField}, f...)
	}
	var known []string
	for _, w := range choiceWords[v] {
		if w != "" {
			known = append(known, w)
		}
	}
	return known
}

// ValueNamed gives the value that a word stands for.
func ValueNamed(v sim.Verb, word string) (float64, bool) {
	if f := fieldWords[v]; f != nil {
		return fieldsNamed(f, word)
	}
	for i, w := range choiceWords[v] {
		if w == word && w != "" {
			return float64(i), true
		}
	}
	return 0, false
}

func fieldsNamed(names []string, word string) (float64, bool) {
	switch word {
	case allFields:
		return float64(int(1)<<len(names) - 1), true
	case noField:
		return 0, true
	}
	bits := 0
	for w := range strings.SplitSeq(word, "+") {
		bit := 0
		for i, n := range names {
			if n == strings.TrimSpace(w) {
				bit = 1 << i
			}
		}
		if bit == 0 {
			return 0, false
		}
		bits |= bit
	}
	return float64(bits), true
}

// ValueWord gives the word for a value, "" where it has none.
func ValueWord(v sim.Verb, value float64) string {
	if f := fieldWords[v]; f != nil {
		return fieldsWord(f, value)
	}
	if i := int(value); value >= 0 && value < float64(len(choiceWords[v])) && float64(i) == value {
		return choiceWords[v][i]
	}
	return ""
}

func fieldsWord(names []string, value float64) string {
	all := int(1)<<len(names) - 1
	if !(value >= 0 && value <= float64(all)) || value != float64(int(value)) {
		return ""
	}
	switch bits := int(value); bits {
	case all:
		return allFields
	case 0:
		return noField
	default:
		var on []string
		for i, n := range names {
			if bits&(1<<i) != 0 {
				on = append(on, n)
			}
		}
		return strings.Join(on, "+")
	}
}

// VerbNames lists the acts a file can name.
func VerbNames() []string { return namesOf(sim.Verb.String, "")[1:] }

// PartNames lists the parts a file can name.
func PartNames() []string { return namesOf(sim.Part.String, "")[1:] }

// TallyNames lists the lines of the tally.
func TallyNames() []string { return namesOf(sim.TallyItem.String, "") }
