// This file writes the reference page of the format: every key with meaning, range, default and example.

package schema

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"rouleau/scenarios"
	"rouleau/scenarios/yamlread"
)

const intro = `# The format of a scenario

This page is written by ` + "`rouleau schema --page`" + ` from the types that the loader reads with; a test keeps it current.
` + "`rouleau new NAME`" + ` writes a whole case to start from, and ` + "`rouleau check FILE`" + ` finds what is wrong with it.

A scenario is one YAML file of at most 256 KiB in UTF-8. Not read are anchors and aliases, tags, merge keys and a second
document. Numbers are written in base ten with a point: 0.5, not .5 or 0,5; texts that look like numbers or like yes and no
stand in quotes. The unit of a number stands in its key.

Values with a form of their own:

- **time**: ` + "`1:05:00`" + ` (hours, minutes, seconds) or ` + "`65:00`" + ` (minutes, seconds) from the start of the case
- **date**: ` + "`2031-05-14`" + `
- **number or spread**: a number, or a spread from which each seed draws its own: ` + "`{uniform: [15, 25]}`" + `,
  ` + "`{normal: {mean: 20, sd: 4, min: 10, max: 30}}`" + ` (cut off at both ends) or ` + "`{choice: [15, 20, 30]}`" + `;
  the range holds for all that can be drawn

In the tables **required** under "Left out" means that the key must be there; otherwise it says what holds without it.
`

// Page is the reference page as Markdown.
func Page() ([]byte, error) {
	samples, err := samplesOfTemplates()
	if err != nil {
		return nil, err
	}
	var order []string // sections in the order of the file
	sections := map[string][]yamlread.Field{}
	meaning := map[string]string{"": "What stands at the top of the file, in this order."}
	err = yamlread.Walk(reflect.TypeFor[scenarios.File](), func(f yamlread.Field) {
		in := strings.TrimSuffix(strings.TrimSuffix(f.Path, f.Key), ".")
		if !slices.Contains(order, in) {
			order = append(order, in)
		}
		sections[in] = append(sections[in], f)
		meaning[f.Path], meaning[f.Path+"[]"] = sentence(f.Doc), sentence(f.Doc)
	})
	if err != nil {
		return nil, err
	}
	var b strings.Builder
	b.WriteString(intro)
	for _, in := range order {
		fmt.Fprintf(&b, "\n## %s\n\n%s\n\n| Key | Meaning | Value | Unit | Left out | Example |\n| --- | --- | --- | --- | --- | --- |\n", titleOf(in), meaning[in])
		for _, f := range sections[in] {
			row(&b, f, samples)
		}
	}
	lists(&b)
	return []byte(b.String()), nil
}

func titleOf(path string) string {
	if path == "" {
		return "The file"
	}
	return "`" + path + "`"
}

func sentence(doc string) string {
	return strings.ToUpper(doc[:1]) + strings.TrimSuffix(doc[1:], ".") + "."
}

func row(b *strings.Builder, f yamlread.Field, samples map[string]string) {
	unit, without := f.Rule.Unit, "nothing"
	switch {
	case f.Rule.Required:
		without = "**required**"
	case f.Rule.Default != "":
		without = code(f.Rule.Default)
	case f.Type.Kind() == reflect.Bool:
		without = code("false")
	case f.Type.Kind() == reflect.Slice:
		without = "none"
	case f.Type.Kind() == reflect.Float64:
		without = code("0")
	case f.Type.Kind() == reflect.Struct:
		without = "its own defaults"
	}
	if unit == "" {
		unit = "–"
	}
	fmt.Fprintf(b, "| `%s` | %s | %s | %s | %s | %s |\n", f.Key, cell(f.Doc), cell(holds(f)), cell(unit), without, code(example(f, samples)))
}

// cell keeps a text from ending the cell of a table.
func cell(s string) string { return strings.ReplaceAll(s, "|", `\|`) }

func code(s string) string {
	if s == "" {
		return "–"
	}
	return "`" + cell(s) + "`"
}

// holds says what a key can hold, in few words.
func holds(f yamlread.Field) string {
	bounds := func(what, least, most string) string {
		if r := (yamlread.Rule{Min: least, Max: most}).Range(); r != "" {
			return what + ", " + r
		}
		return what
	}
	t, r := behind(f.Type), f.Rule
	if known := vocabulary[f.Path]; known != nil {
		return "a name of the [list](#" + listOf[f.Path] + ")"
	}
	if len(r.OneOf) > 0 {
		words := "`" + strings.Join(r.OneOf, "`, `") + "`"
		if t.Kind() == reflect.Slice {
			return bounds("a list", r.Min, r.Max) + ", of " + words
		}
		return words
	}
	switch t {
	case reflect.TypeFor[yamlread.Clock]():
		return bounds("a time", r.Min, r.Max)
	case reflect.TypeFor[yamlread.Date]():
		return "a date"
	case reflect.TypeFor[yamlread.Quantity]():
		return bounds("number or spread", r.Min, r.Max)
	}
	switch t.Kind() {
	case reflect.Bool:
		return "`true` or `false`"
	case reflect.Int:
		return bounds("whole number", r.Min, r.Max)
	case reflect.Float64:
		return bounds("number", r.Min, r.Max)
	case reflect.Struct:
		return "keys, see [below](#" + anchor(f.Path) + ")"
	case reflect.Slice:
		return ofList(f, bounds)
	}
	return bounds("text", r.Min, r.Max) + " characters"
}

// ofList says what a list, or a mapping with free names, can hold.
func ofList(f yamlread.Field, bounds func(what, least, most string) string) string {
	r := f.Rule
	if _, ok := entryOf(f.Type); ok {
		return bounds("names", r.Min, r.Max) + ", each with " + bounds("number or spread", r.EachMin, r.EachMax)
	}
	switch f.Type.Elem().Kind() {
	case reflect.Struct:
		return bounds("a list", r.Min, r.Max) + ", see [below](#" + anchor(f.Path+"[]") + ")"
	case reflect.Int:
		return bounds("a list", r.Min, r.Max) + ", each " + bounds("a whole number", r.EachMin, r.EachMax)
	}
	return bounds("a list", r.Min, r.Max) + ", each " + bounds("a text", r.EachMin, r.EachMax) + " characters"
}

// anchor is the link to a section, as readers of Markdown make it of the title.
func anchor(path string) string {
	return strings.Map(func(c rune) rune {
		if c == '.' || c == '[' || c == ']' || c == '*' {
			return -1
		}
		return c
	}, path)
}
