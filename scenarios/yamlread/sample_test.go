// This file holds the types that the tests read: a small file with every kind
// of value that the reader knows.

package yamlread

import "gopkg.in/yaml.v3"

type sample struct {
	ID       string         `yaml:"id" rule:"required,min=3,max=40" doc:"short name" example:"steady_ooze"`
	Title    string         `yaml:"title" rule:"max=60" doc:"shown to the trainee"`
	Version  int            `yaml:"version" rule:"min=1,max=99,default=1" doc:"counted up with each change"`
	Mode     string         `yaml:"mode" rule:"oneof=guided|free|on,default=free" doc:"how much help is given"`
	Urgent   bool           `yaml:"urgent" doc:"whether time presses"`
	Date     Date           `yaml:"date" rule:"min=2000-01-01,max=2099-12-31" doc:"day of the operation"`
	Start    Clock          `yaml:"start" rule:"max=23:59:59,default=0:00:00" doc:"when the case begins"`
	Patient  patient        `yaml:"patient" rule:"required" doc:"who is operated on"`
	Phases   []phase        `yaml:"phases" rule:"min=1,max=4" doc:"what happens in turn"`
	Stocks   Map[stock]     `yaml:"stocks" doc:"what stands on the bench"`
	Weights  map[string]int `yaml:"weights" rule:"each_min=0,each_max=100" doc:"points by part"`
	Levels   []float64      `yaml:"levels_ml" rule:"max=3,each_min=0,each_max=500,unit=mL" doc:"marks on the wall"`
	Tags     []string       `yaml:"tags" rule:"oneof=spine|hip" doc:"for the list of cases"`
	Small    uint8          `yaml:"small" doc:"a small counter"`
	Parity   even           `yaml:"parity" doc:"a type of a caller's own"`
	Note     *note          `yaml:"note" doc:"remark, may hold a further one"`
	internal int
}

type patient struct {
	MassKG      float64  `yaml:"mass_kg" rule:"required,min=1,max=300,unit=kg" doc:"body mass"`
	HbGDL       *float64 `yaml:"hb_g_dl" rule:"min=3,max=25,unit=g/dL" doc:"haemoglobin"`
	Haematocrit float64  `yaml:"haematocrit_fraction" rule:"min=0.1,max=0.7,unit=fraction,default=0.4" doc:"of the blood at the start"`
}

type phase struct {
	Name     string   `yaml:"name" rule:"required,min=1" doc:"of the phase"`
	Lasts    Clock    `yaml:"lasts" rule:"required,min=0:01:00,max=8:00:00" doc:"how long"`
	Bleeding Quantity `yaml:"bleeding_ml_min" rule:"min=0,max=300,unit=mL/min,default={uniform: [5, 10]}" doc:"blood into the field"`
	Vacuum   float64  `yaml:"vacuum_mmhg" rule:"min=0,max=300,unit=mmHg,default=100" doc:"at the reservoir"`
	shared   `yaml:",inline"`
}

type shared struct {
	Remark string `yaml:"remark" doc:"free text"`
}

type stock struct {
	VolumeML float64 `yaml:"volume_ml" rule:"required,min=0,max=5000,unit=mL" doc:"in the bag"`
}

type note struct {
	Text string `yaml:"text" rule:"required" doc:"what is noted"`
	More *note  `yaml:"more" doc:"a further note"`
}

// even shows a type of a caller's own.
type even int

func (even) Describe() string { return "an even number" }

func (e *even) UnmarshalAt(node *yaml.Node, r *Reader) {
	x, ok := r.Number(node, r.Wanted(*e))
	if !ok {
		return
	}
	if int(x)%2 != 0 {
		r.Fault(node, node.Value+" is odd, in "+r.Path(), r.Wanted(*e))
		return
	}
	*e = even(x)
}

// good is a file without faults that uses everything.
const good = `# a comment
id: steady_ooze
title: "Großes Beispiel"
version: 3
mode: on
urgent: true
date: 2026-03-01
start: 7:45:00
patient:
  mass_kg: 81.5
  hb_g_dl: 13.1
phases:
  - name: approach
    lasts: 12:30
    bleeding_ml_min: 20
    remark: |
      two
      lines
  - {name: rest, lasts: 0:45:00, bleeding_ml_min: {normal: {mean: 20, sd: 4, min: 10, max: 30}}}
  - name: end
    lasts: 05:00
    bleeding_ml_min: {choice: [1, 2.5, 1e1]}
    vacuum_mmhg: 150
  - name: last
    lasts: 05:00
stocks:
  wash: {volume_ml: 1000}
  citrate:
    volume_ml: 500
weights: {collecting: 20, recording: 10}
levels_ml: [100, 200]
tags: [spine]
small: 255
parity: 4
note: {text: a, more: {text: b}}
`
