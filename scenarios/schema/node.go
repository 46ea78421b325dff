// Package schema describes the scenario format to others than the loader: a JSON Schema for editors, and a reference page
// for people. Both come from the types that the loader reads with, by yamlread.Walk.
//
// This file holds the vocabulary of JSON Schema 2020-12, as far as it is used.
package schema

import (
	"bytes"
	"encoding/json"
)

// node is one schema. The order of the fields is the order in which they are printed.
type node struct {
	Schema        string            `json:"$schema,omitempty"`
	Title         string            `json:"title,omitempty"`
	Description   string            `json:"description,omitempty"`
	Type          string            `json:"type,omitempty"`
	Const         json.RawMessage   `json:"const,omitempty"`
	Enum          []json.RawMessage `json:"enum,omitempty"`
	Pattern       string            `json:"pattern,omitempty"`
	Format        string            `json:"format,omitempty"`
	Minimum       json.Number       `json:"minimum,omitempty"`
	Above         json.Number       `json:"exclusiveMinimum,omitempty"`
	Maximum       json.Number       `json:"maximum,omitempty"`
	MinLength     json.Number       `json:"minLength,omitempty"`
	MaxLength     json.Number       `json:"maxLength,omitempty"`
	MinItems      json.Number       `json:"minItems,omitempty"`
	MaxItems      json.Number       `json:"maxItems,omitempty"`
	Items         *node             `json:"items,omitempty"`
	MinProperties json.Number       `json:"minProperties,omitempty"`
	MaxProperties json.Number       `json:"maxProperties,omitempty"`
	Properties    *properties       `json:"properties,omitempty"`
	Names         *node             `json:"propertyNames,omitempty"`
	Required      []string          `json:"required,omitempty"`
	Additional    any               `json:"additionalProperties,omitempty"` // false or a node
	AnyOf         []*node           `json:"anyOf,omitempty"`
	AllOf         []*node           `json:"allOf,omitempty"`
	If            *node             `json:"if,omitempty"`
	Then          *node             `json:"then,omitempty"`
	Default       json.RawMessage   `json:"default,omitempty"`
	Examples      []json.RawMessage `json:"examples,omitempty"`
}

// properties are the keys of a mapping in the order of the format.
type properties struct {
	keys  []string
	nodes []*node
}

func (p *properties) add(key string, n *node) {
	p.keys, p.nodes = append(p.keys, key), append(p.nodes, n)
}

// MarshalJSON writes them in their order, which a map would lose.
func (p *properties) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, key := range p.keys {
		if i > 0 {
			b.WriteByte(',')
		}
		inner, err := plainJSON(p.nodes[i])
		if err != nil {
			return nil, err
		}
		b.Write(text(key))
		b.WriteByte(':')
		b.Write(inner)
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// plainJSON is JSON without the escapes that only web pages need.
func plainJSON(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(v)
	return bytes.TrimSuffix(b.Bytes(), []byte("\n")), err
}

// text is a word as JSON.
func text(s string) json.RawMessage {
	b, err := plainJSON(s)
	if err != nil {
		panic(err) // a string always can be written
	}
	return b
}

func texts(words []string) []json.RawMessage {
	var all []json.RawMessage
	for _, w := range words {
		all = append(all, text(w))
	}
	return all
}
