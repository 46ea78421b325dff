// This file holds what the types alone do not say and an editor can use: words that a list of the program knows, the form of
// names, and keys that go together.

package schema

import "rouleau/scenarios"

// vocabulary gives the words that a key can hold, by its path, where no rule lists them.
var vocabulary = map[string]func() []string{
	"criteria[].measure":          scenarios.MeasureNames,
	"bench.before[].do":           scenarios.VerbNames,
	"bench.before[].on":           scenarios.PartNames,
	"guidance[].look":             scenarios.PartNames,
	"guidance[].until.act.do":     scenarios.VerbNames,
	"guidance[].until.act.on":     scenarios.PartNames,
	"guidance[].until.reads.what": scenarios.VisibleNames,
}

const (
	dashed     = "^[a-z0-9]+(-[a-z0-9]+)*$"
	underlined = "^[a-z][a-z0-9]*(_[a-z0-9]+)*$"
)

// patterns are the forms of names, by path.
var patterns = map[string]string{
	"id":                  dashed,
	"objectives[].id":     underlined,
	"contaminants[].name": underlined,
}

// together adds which keys go together, as the checks of the loader have it.
func together(holders map[string]*node) {
	either := func(keys ...string) (all []*node) {
		for _, key := range keys {
			all = append(all, &node{Required: []string{key}})
		}
		return all
	}
	for _, of := range [][]string{
		{"patient", "haematocrit_fraction", "haemoglobin_g_dl"},
		{"criteria[]", "least", "most"},
		{"events[]", "at", "when"},
		{"guidance[].until.reads", "at_least", "at_most"},
	} {
		holders[of[0]].AnyOf = either(of[1:]...)
	}
	for _, path := range []string{"events[].when", "guidance[].until"} {
		holders[path].MinProperties, holders[path].MaxProperties = "1", "1"
	}
	events := holders["events[]"]
	for i, key := range events.Properties.keys {
		if key != "kind" {
			continue
		}
		for _, kind := range events.Properties.nodes[i].Enum {
			needs := scenarios.EventNeeds(unquoted(kind))
			if len(needs) == 0 {
				continue
			}
			only := &properties{}
			only.add("kind", &node{Const: kind})
			events.AllOf = append(events.AllOf, &node{If: &node{Properties: only, Required: []string{"kind"}}, Then: &node{Required: needs}})
		}
	}
}

// unquoted undoes text for the plain words of the format.
func unquoted(word []byte) string { return string(word[1 : len(word)-1]) }
