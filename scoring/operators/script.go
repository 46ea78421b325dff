package operators

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"rouleau/scenarios"
	"rouleau/scenarios/yamlread"
	"rouleau/sim"
)

// Script: an operator that does what a YAML file says, when it says so, and looks at nothing. It is for educators who want to
// show a mistake, and for tests.

// ScriptFile is the format of the file.
type ScriptFile struct {
	Format int         `yaml:"format" rule:"required,min=1,max=1" doc:"version of the script format"`
	Name   string      `yaml:"name" rule:"required,min=1,max=60" doc:"what this operator is called"`
	Acts   []ScriptAct `yaml:"acts" rule:"required,max=2000" doc:"what is done, in the order of time"`
}

// ScriptAct is one act of the file.
type ScriptAct struct {
	At    yamlread.Clock `yaml:"at" rule:"required,max=13:00:00" doc:"when" example:"0:12:30"`
	Do    string         `yaml:"do" rule:"required" doc:"the act" example:"set_drip"`
	On    string         `yaml:"on" doc:"the part it is about" example:"collection_set"`
	Value *ScriptValue   `yaml:"value" doc:"how much, or the word for a choice" example:"60"`
	Item  string         `yaml:"item" doc:"of reconcile: the line of the tally" example:"collected"`
	Text  string         `yaml:"text" rule:"max=400" doc:"of note: what is written"`
	Note  string         `yaml:"note" rule:"max=400" doc:"why, for who reads the script; not played"`
}

// ScriptValue is a number or a word; which words there are depends on the act.
type ScriptValue struct {
	Number float64
	Word   string // empty for a number
}

// Describe says what a file must hold.
func (ScriptValue) Describe() string { return "a number, or the word for a choice" }

// UnmarshalAt reads a number or a word.
func (v *ScriptValue) UnmarshalAt(node *yaml.Node, r *yamlread.Reader) {
	text, ok := r.Scalar(node, v.Describe())
	if !ok {
		return
	}
	// What begins as a number does is read as one, so that a slip in it is told as such.
	if node.Style == 0 && strings.ContainsAny(text[:min(1, len(text))], "0123456789+-.") {
		v.Number, _ = r.Number(node, v.Describe())
		return
	}
	if v.Word = text; text == "" {
		r.Fault(node, "this is an empty text", v.Describe())
	}
}

// Script plays the acts of a file.
type Script struct {
	Name    string
	acts    []timed
	next    int
	Refused []Refusal // acts that the bench refused for good, in order
}

// timed is an act with the tick from which it is due.
type timed struct {
	due int64
	act sim.Action
}

// Refusal is an act that was not done, and why not.
type Refusal struct {
	Due    int64 // tick of the script
	Act    sim.Action
	Reason sim.Reason
}

// patience is how long a script waits for busy hands or a braking bowl, as a person would.
const patience = 60 * sim.TicksPerSecond

// Act does what is due. Later acts wait for one that waits, so that the order stays.
func (o *Script) Act(v *sim.Seen, do func(sim.Action) sim.Reason) {
	for o.next < len(o.acts) && o.acts[o.next].due <= v.Tick {
		t := &o.acts[o.next]
		why := do(t.act)
		if (why == "hands_are_busy" || why == "bowl_is_braking") && v.Tick < t.due+patience {
			return
		}
		if why != "" {
			o.Refused = append(o.Refused, Refusal{t.due, t.act, why})
		}
		o.next++
	}
}

// Left is how many acts were not reached before the case was over.
func (o *Script) Left() int { return len(o.acts) - o.next }

// ParseScript reads a script from bytes; the name is what faults call the file. With faults there is no script.
func ParseScript(name string, data []byte) (*Script, yamlread.Faults) {
	var file ScriptFile
	doc := yamlread.Read(name, data, &file)
	s := &Script{Name: file.Name}
	before := 0
	for i := range file.Acts {
		a := &file.Acts[i]
		place := "acts[" + strconv.Itoa(i) + "]"
		unread := slices.ContainsFunc(doc.Faults(), func(f yamlread.Fault) bool { return f.Path == place+".at" })
		if doc.Has(place+".at") && !unread && a.At.Seconds < before {
			doc.Fault(place+".at", "this is earlier than the act before it", "acts in the order of time")
		}
		before = max(before, a.At.Seconds)
		s.acts = append(s.acts, timed{int64(a.At.Seconds) * sim.TicksPerSecond, a.action(doc, place)})
	}
	if faults := doc.Faults(); len(faults) > 0 {
		return nil, faults
	}
	return s, nil
}

// action turns names into what the model knows.
func (a *ScriptAct) action(doc *yamlread.Doc, place string) sim.Action {
	out := sim.Action{Text: a.Text}
	var ok bool
	if out.Do, ok = sim.VerbNamed(a.Do); !ok {
		if doc.Has(place + ".do") {
			doc.FaultNear(place+".do", "there is no act of this name", list(scenarios.VerbNames()), yamlread.Nearest(a.Do, scenarios.VerbNames()))
		}
		return out
	}
	if out.On, ok = sim.PartNamed(a.On); !ok {
		doc.FaultNear(place+".on", "there is no part of this name", list(scenarios.PartNames()), yamlread.Nearest(a.On, scenarios.PartNames()))
	}
	switch item, known := sim.TallyItemNamed(a.Item); {
	case (out.Do == sim.Reconcile) != (a.Item != ""):
		doc.Fault(place, "item goes with reconcile, and reconcile needs it", "item: one of "+list(scenarios.TallyNames()))
	case a.Item != "" && !known:
		doc.FaultNear(place+".item", "there is no line of this name", list(scenarios.TallyNames()), yamlread.Nearest(a.Item, scenarios.TallyNames()))
	default:
		out.Item = uint8(item)
	}
	out.Value = a.value(doc, place, out.Do)
	return out
}

// value reads the value of an act, which must be there where the act has one and only there.
func (a *ScriptAct) value(doc *yamlread.Doc, place string, do sim.Verb) float64 {
	least, most, whole := sim.ValueRange(do)
	switch {
	case !scenarios.HasValue(do) && a.Value != nil:
		doc.Fault(place+".value", a.Do+" has no value", "no key value here")
		return 0
	case !scenarios.HasValue(do):
		return 0
	case a.Value == nil:
		if !doc.Has(place + ".value") {
			doc.Fault(place, a.Do+" needs a value", "value: "+wantedValue(do))
		}
		return 0
	case a.Value.Word != "":
		v, ok := scenarios.ValueNamed(do, a.Value.Word)
		if !ok {
			doc.FaultNear(place+".value", "this is not a value of "+a.Do, wantedValue(do), yamlread.Nearest(a.Value.Word, scenarios.ValueWords(do)))
		}
		return v
	case a.Value.Number < least || a.Value.Number > most || whole && a.Value.Number != float64(int64(a.Value.Number)):
		doc.Fault(place+".value", "this is not a value of "+a.Do, wantedValue(do))
	}
	return a.Value.Number
}

// wantedValue says which values a verb takes.
func wantedValue(do sim.Verb) string {
	if known := scenarios.ValueWords(do); len(known) > 0 {
		return list(known)
	}
	least, most, whole := sim.ValueRange(do)
	if do == sim.Hang {
		return fmt.Sprintf("the place of the pack in bench.packs, a whole number, 0 for the first, at most %g", most)
	}
	kind := "a number"
	if whole {
		kind = "a whole number"
	}
	return fmt.Sprintf("%s, %g to %g", kind, least, most)
}

// list joins words for "expected": all of them, since there is no other place to look them up.
func list(words []string) string { return strings.Join(words, ", ") }
