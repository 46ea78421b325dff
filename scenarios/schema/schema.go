// This file turns the fields of the format into a schema.

package schema

import (
	"bytes"
	"encoding/json"
	"reflect"
	"strings"

	"gopkg.in/yaml.v3"

	"rouleau/scenarios"
	"rouleau/scenarios/yamlread"
)

// JSON is the schema of a scenario, for editors and independent validators.
func JSON() ([]byte, error) {
	root := &node{
		Schema: "https://json-schema.org/draft/2020-12/schema",
		Title:  "a scenario of rouleau", Description: "A training case. rouleau check finds more than a schema can say.",
		Type: "object", Properties: &properties{}, Additional: false,
	}
	holders := map[string]*node{"": root} // by the path that keys below them begin with
	err := yamlread.Walk(reflect.TypeFor[scenarios.File](), func(f yamlread.Field) {
		n := ofField(f, holders)
		n.Description = strings.TrimSuffix(f.Doc, ".")
		if extra := bounds(f); extra != "" {
			n.Description += " (" + extra + ")"
		}
		n.Default, n.Examples = value(f.Rule.Default), examples(f.Example)
		holder := holders[strings.TrimSuffix(strings.TrimSuffix(f.Path, f.Key), ".")]
		holder.Properties.add(f.Key, n)
		if f.Rule.Required {
			holder.Required = append(holder.Required, f.Key)
		}
	})
	if err != nil {
		return nil, err
	}
	together(holders)
	flat, err := plainJSON(root)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	if err := json.Indent(&b, flat, "", "  "); err != nil {
		return nil, err
	}
	b.WriteByte('\n')
	return b.Bytes(), nil
}

// bounds says in words what a pattern cannot check: the range of a time.
func bounds(f yamlread.Field) string {
	if behind(f.Type) == reflect.TypeFor[yamlread.Clock]() {
		return f.Rule.Range()
	}
	return ""
}

// behind is the type behind a pointer.
func behind(t reflect.Type) reflect.Type {
	if t.Kind() == reflect.Pointer {
		return t.Elem()
	}
	return t
}

// ofField makes the schema of one field and notes what keys can stand below it.
func ofField(f yamlread.Field, holders map[string]*node) *node {
	t := behind(f.Type)
	n := ofType(t, f.Rule, f.Path)
	switch t.Kind() {
	case reflect.Struct:
		if n.Properties != nil {
			holders[f.Path] = n
		}
	case reflect.Slice:
		if n.Items != nil && n.Items.Properties != nil {
			holders[f.Path+"[]"] = n.Items
		}
	}
	return n
}

// ofType makes the schema of a type with a rule.
func ofType(t reflect.Type, rule yamlread.Rule, path string) *node {
	if special := ofOwn(t, rule); special != nil {
		return special
	}
	switch t.Kind() {
	case reflect.Struct:
		return &node{Type: "object", Properties: &properties{}, Additional: false}
	case reflect.Slice:
		if entry, ok := entryOf(t); ok {
			return &node{Type: "object", Names: &node{Pattern: "^[a-z][a-z0-9]*(_[a-z0-9]+)*$"},
				MinProperties: json.Number(rule.Min), MaxProperties: json.Number(rule.Max), Additional: ofType(entry, rule.Each(), path)}
		}
		return &node{Type: "array", MinItems: json.Number(rule.Min), MaxItems: json.Number(rule.Max), Items: ofType(behind(t.Elem()), rule.Each(), path)}
	case reflect.Bool:
		return &node{Type: "boolean"}
	case reflect.Int:
		return &node{Type: "integer", Minimum: json.Number(rule.Min), Maximum: json.Number(rule.Max)}
	case reflect.Float64:
		return &node{Type: "number", Minimum: json.Number(rule.Min), Maximum: json.Number(rule.Max)}
	}
	n := &node{Type: "string", MinLength: json.Number(rule.Min), MaxLength: json.Number(rule.Max), Enum: texts(rule.OneOf), Pattern: patterns[path]}
	if known := vocabulary[path]; known != nil {
		n.Enum = texts(known())
	}
	return n
}

// entryOf is the type of the values of a mapping with free names.
func entryOf(t reflect.Type) (reflect.Type, bool) {
	if t.Elem().Kind() != reflect.Struct || !strings.HasPrefix(t.Elem().Name(), "Entry[") {
		return nil, false
	}
	return t.Elem().Field(1).Type, true
}

// ofOwn makes the schema of the types that read themselves.
func ofOwn(t reflect.Type, rule yamlread.Rule) *node {
	switch t {
	case reflect.TypeFor[yamlread.Clock]():
		return &node{Type: "string", Pattern: `^((0|[1-9][0-9]?):[0-5][0-9]|[0-9][0-9]):[0-5][0-9]$`}
	case reflect.TypeFor[yamlread.Date]():
		return &node{Type: "string", Format: "date", Pattern: `^(18|19|2[0-9])[0-9]{2}-[0-9]{2}-[0-9]{2}$`}
	case reflect.TypeFor[yamlread.Quantity]():
		number := func() *node {
			return &node{Type: "number", Minimum: json.Number(rule.Min), Maximum: json.Number(rule.Max)}
		}
		normal := object("mean", number(), "sd", &node{Type: "number", Above: "0"}, "min", number(), "max", number())
		return &node{AnyOf: []*node{
			number(),
			object("uniform", &node{Type: "array", MinItems: "2", MaxItems: "2", Items: number()}),
			object("normal", normal),
			object("choice", &node{Type: "array", MinItems: "1", MaxItems: "100", Items: number()}),
		}}
	}
	return nil
}

// object is a mapping of which every key is required; keys and nodes take turns.
func object(parts ...any) *node {
	n := &node{Type: "object", Properties: &properties{}, Additional: false}
	for i := 0; i < len(parts); i += 2 {
		n.Properties.add(parts[i].(string), parts[i+1].(*node))
		n.Required = append(n.Required, parts[i].(string))
	}
	return n
}

// examples is a list of the one example that a tag gives, or of none.
func examples(sample string) []json.RawMessage {
	if v := value(sample); v != nil {
		return []json.RawMessage{v}
	}
	return nil
}

// value turns the YAML text of a tag, which the loader has checked, into JSON.
func value(sample string) json.RawMessage {
	var doc yaml.Node
	if err := yaml.Unmarshal([]byte(sample), &doc); err != nil || len(doc.Content) == 0 {
		return nil
	}
	return ofYAML(doc.Content[0])
}

func ofYAML(n *yaml.Node) json.RawMessage {
	var parts [][]byte
	switch n.Kind {
	case yaml.SequenceNode:
		for _, item := range n.Content {
			parts = append(parts, ofYAML(item))
		}
		return bytes.Join([][]byte{[]byte("["), bytes.Join(parts, []byte(",")), []byte("]")}, nil)
	case yaml.MappingNode:
		for i := 0; i+1 < len(n.Content); i += 2 {
			parts = append(parts, bytes.Join([][]byte{text(n.Content[i].Value), ofYAML(n.Content[i+1])}, []byte(":")))
		}
		return bytes.Join([][]byte{[]byte("{"), bytes.Join(parts, []byte(",")), []byte("}")}, nil)
	}
	switch n.Tag {
	case "!!int", "!!float", "!!bool":
		return json.RawMessage(n.Value)
	}
	return text(n.Value)
}
