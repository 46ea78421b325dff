// This file holds what the reference page has beside the keys: the lists of words, and an example for every key.

package schema

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"rouleau/scenarios"
	"rouleau/scenarios/yamlread"
	"rouleau/sim"
)

// listOf names the list that the words of a key stand in.
var listOf = map[string]string{
	"criteria[].measure":          "measures",
	"bench.before[].do":           "acts-and-parts",
	"bench.before[].on":           "acts-and-parts",
	"guidance[].look":             "acts-and-parts",
	"guidance[].until.act.do":     "acts-and-parts",
	"guidance[].until.act.on":     "acts-and-parts",
	"guidance[].until.reads.what": "what-can-be-read",
}

func lists(b *strings.Builder) {
	b.WriteString("\n## Kinds of events\n\n| Kind | What happens | Keys it needs beside its time |\n| --- | --- | --- |\n")
	for _, kind := range kinds() {
		needs := "–"
		if keys := scenarios.EventNeeds(kind); len(keys) > 0 {
			needs = "`" + strings.Join(keys, "`, `") + "`"
		}
		fmt.Fprintf(b, "| `%s` | %s | %s |\n", kind, eventMeanings[kind], needs)
	}
	b.WriteString("\n## Situations\n\nFor `when` of hints and `holds` of lessons, by what a person at the bench can see.\n\n| Situation | It holds when |\n| --- | --- |\n")
	for _, name := range situations() {
		fmt.Fprintf(b, "| `%s` | %s |\n", name, situationMeanings[name])
	}
	b.WriteString("\n## Parts of the work\n\nThe points of the criteria of each part add up to this.\n\n| Part | Meaning | Points |\n| --- | --- | --- |\n")
	for _, p := range scenarios.Parts {
		fmt.Fprintf(b, "| `%s` | %s | %g |\n", p.Name, p.Title, p.Points)
	}
	b.WriteString("\n## Measures\n\n| Measure | Meaning | Unit | Possible | Better |\n| --- | --- | --- | --- | --- |\n")
	for _, m := range scenarios.Measures {
		better := map[int]string{1: "more", -1: "less", 0: "a middle"}[m.MoreBetter]
		fmt.Fprintf(b, "| `%s` | %s | %s | %.10g to %.10g | %s |\n", m.Name, cell(m.Meaning), cell(m.Unit), m.Least, m.Most, better)
	}
	criticals(b)
	policies(b)
	b.WriteString("\n## What can be read\n\nFor `until: {reads: ...}` and, in braces, for the texts of a lesson.\n\n| Name | Meaning | Unit |\n| --- | --- | --- |\n")
	for _, v := range scenarios.Visibles {
		unit := v.Unit
		if unit == "" {
			unit = "–"
		}
		fmt.Fprintf(b, "| `%s` | %s | %s |\n", v.Name, cell(v.Meaning), unit)
	}
	b.WriteString("\n## Acts and parts\n\nFor lessons, and for operators and scripts.\n\n| Act | What it does | Value |\n| --- | --- | --- |\n")
	for _, name := range scenarios.VerbNames() {
		fmt.Fprintf(b, "| `%s` | %s | %s |\n", name, actMeanings[name], valueOf(name))
	}
	fmt.Fprintf(b, "\nParts: `%s`.\n", strings.Join(slices.DeleteFunc(scenarios.PartNames(), func(name string) bool { return name == "" }), "`, `"))
}

// criticals lists what fails a run whatever else was done.
func criticals(b *strings.Builder) {
	fmt.Fprintf(b, "\n## Never made up for\n\nEach of these fails a run, whatever its points, in every case. A brief slip that was declared within %d minutes of its beginning is mended.\n\n"+
		"| Name | What counts | Unit | Counts over | Brief slip up to | Declared as |\n| --- | --- | --- | --- | --- | --- |\n", scenarios.PromptMin)
	for _, c := range scenarios.Criticals {
		brief, told := "–", "–"
		if c.Told != scenarios.NoIncident {
			brief, told = fmt.Sprintf("%g", c.Brief), "`"+c.Told.String()+"`"
		}
		fmt.Fprintf(b, "| `%s` | %s | %s | %g | %s | %s |\n", c.Name, cell(c.Meaning), c.Unit, c.From, brief, told)
	}
}

// policies lists the words of local_policy that operators act on.
func policies(b *strings.Builder) {
	b.WriteString("\n## Words of `local_policy`\n\nPeople read the whole line. Operators such as `steady` look only for these words in it, in small or capital letters, and do nothing about other customs.\n\n| Words | What operators then do |\n| --- | --- |\n")
	for _, p := range scenarios.Policies {
		fmt.Fprintf(b, "| %s | %s |\n", p.Words, p.Meaning)
	}
}

// kinds are the kinds of events, and situations those that hints know, in the order of the format.
func kinds() []string { return wordsOf(reflect.TypeFor[scenarios.Event](), "Kind") }

func situations() []string { return wordsOf(reflect.TypeFor[scenarios.Hint](), "When") }

// wordsOf are the words that a field of the format allows.
func wordsOf(t reflect.Type, field string) []string {
	f, _ := t.FieldByName(field)
	_, words, _ := strings.Cut(f.Tag.Get("rule"), "oneof=")
	return strings.Split(words, "|")
}

// valueOf says what the value of an act is.
func valueOf(name string) string {
	verb, _ := sim.VerbNamed(name)
	least, most, whole := sim.ValueRange(verb)
	switch {
	case !scenarios.HasValue(verb):
		return "–"
	case verb == sim.Hang:
		return "in a lesson the solution in the pack; in a script its place in `bench.packs`, 0 for the first"
	case len(scenarios.ValueWords(verb)) > 0:
		return "`" + strings.Join(scenarios.ValueWords(verb), "`, `") + "`"
	case whole:
		return fmt.Sprintf("whole number, %g to %g", least, most)
	}
	return fmt.Sprintf("number, %g to %g", least, most)
}

// longest is how long an example may be to fit into a table.
const longest = 72

// example finds an example for a key: that of its tag, or one from the cases to start from, or the first that can stand there.
func example(f yamlread.Field, samples map[string]string) string {
	r := f.Rule
	for _, found := range []string{f.Example, samples[f.Path], r.Default} {
		if found != "" {
			return found
		}
	}
	if known := vocabulary[f.Path]; known != nil {
		r.OneOf = slices.DeleteFunc(known(), func(word string) bool { return word == "" })
	}
	t := behind(f.Type)
	switch {
	case len(r.OneOf) > 0 && t.Kind() == reflect.Slice:
		return "[" + r.OneOf[0] + "]"
	case len(r.OneOf) > 0:
		return r.OneOf[0]
	case t == reflect.TypeFor[yamlread.Clock]():
		return "0:30:00"
	case t.Kind() == reflect.Bool:
		return "true"
	case t == reflect.TypeFor[yamlread.Quantity](), t.Kind() == reflect.Float64, t.Kind() == reflect.Int:
		return between(r)
	}
	return ""
}

// between gives a number inside the bounds of a rule.
func between(r yamlread.Rule) string {
	lo, hi, err := r.Bounds()
	if err != nil || r.Min == "" || r.Max == "" {
		return "1"
	}
	return strconv.FormatFloat(math.Round(lo+float64((hi-lo)/10)), 'f', -1, 64)
}

// samplesOfTemplates gives the first short value of each key in the cases to start from, on one line.
func samplesOfTemplates() (map[string]string, error) {
	found := map[string]string{}
	for _, lesson := range []bool{false, true} {
		data, err := scenarios.Template("my-first-case", lesson)
		if err != nil {
			return nil, err
		}
		var doc yaml.Node
		if err := yaml.Unmarshal(data, &doc); err != nil {
			return nil, err
		}
		sample(doc.Content[0], "", found)
	}
	return found, nil
}

func sample(n *yaml.Node, path string, found map[string]string) {
	if text := oneLine(n); found[path] == "" && text != "" {
		found[path] = shortened(text)
	}
	switch n.Kind {
	case yaml.SequenceNode:
		for _, item := range n.Content {
			sample(item, path+"[]", found)
		}
	case yaml.MappingNode:
		for i := 0; i+1 < len(n.Content); i += 2 {
			sample(n.Content[i+1], strings.TrimPrefix(path+"."+n.Content[i].Value, "."), found)
		}
	}
}

// shortened cuts a text that does not fit into a table, at a blank.
func shortened(text string) string {
	if len(text) <= longest {
		return text
	}
	cut := text[:strings.LastIndexByte(text[:longest], ' ')+1] + "…"
	switch text[0] {
	case '"', '[':
		return cut + text[len(text)-1:]
	case '{':
		return "" // would be hard to read
	}
	return cut
}

// oneLine gives a value as it stands in the file, of a list of texts the first; nothing for another block and an empty list.
func oneLine(n *yaml.Node) string {
	var parts []string
	switch {
	case n.Kind == yaml.ScalarNode && n.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle) != 0:
		return `"` + n.Value + `"`
	case n.Kind == yaml.ScalarNode:
		return n.Value
	case n.Kind == yaml.SequenceNode && len(n.Content) > 0 && n.Content[0].Kind == yaml.ScalarNode && n.Style&yaml.FlowStyle == 0:
		return `["` + n.Content[0].Value + `"]`
	case n.Style&yaml.FlowStyle == 0 || len(n.Content) == 0:
		return ""
	case n.Kind == yaml.SequenceNode:
		for _, item := range n.Content {
			parts = append(parts, oneLine(item))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		parts = append(parts, n.Content[i].Value+": "+oneLine(n.Content[i+1]))
	}
	return "{" + strings.Join(parts, ", ") + "}"
}
