package book

import (
	"fmt"

	"rouleau/scenarios/yamlread"
)

// A department's plan: which competencies there are, what shows each, and for how long.

// Plan is the plan as its YAML file holds it.
type Plan struct {
	Format       int          `yaml:"format" rule:"required,oneof=1" doc:"version of this format"`
	Department   string       `yaml:"department" rule:"required,min=2,max=80" doc:"code or name of the department, as it stands on sheets"`
	Items        []Item       `yaml:"items" rule:"max=30" doc:"what only a person can judge, with the words for each level; left out: asepsis, closed_loop, handover and honesty as the program has them"`
	Competencies []Competency `yaml:"competencies" rule:"required,min=1,max=40" doc:"what is signed off"`
}

// Item is something that only a person can judge.
type Item struct {
	Name    string   `yaml:"name" rule:"required,min=2,max=40" doc:"short name, such as handover"`
	Title   string   `yaml:"title" rule:"required,min=2,max=120" doc:"what is judged, in words"`
	Anchors []string `yaml:"anchors" rule:"required,min=2,max=7" doc:"what each level looks like, the lowest first"`
	Needs   int      `yaml:"needs" rule:"required,min=1,max=7" doc:"level that is enough"`
}

// Competency is something that people are signed off for.
type Competency struct {
	Name             string     `yaml:"name" rule:"required,min=2,max=40" doc:"short name"`
	Title            string     `yaml:"title" rule:"required,min=2,max=120" doc:"in words"`
	Scenarios        []PlanCase `yaml:"scenarios" rule:"max=40" doc:"cases that must be signed off as competent"`
	Items            []string   `yaml:"items" rule:"max=30" doc:"items that must reach their level, by name"`
	SupervisedCases  int        `yaml:"supervised_cases" rule:"min=0,max=500,default=0" doc:"supervised real cases that must be counted"`
	IntervalMonths   int        `yaml:"interval_months" rule:"min=1,max=240,unit=months,default=36" doc:"how long it holds"`
	InactivityMonths int        `yaml:"inactivity_months" rule:"min=0,max=240,unit=months,default=0" doc:"due again after so long without a signed-off or supervised case; 0: never for that"`
	After            []string   `yaml:"after" rule:"max=3" doc:"events after which it is due again: incident, equipment, away"`
}

// PlanCase is a case that must be passed.
type PlanCase struct {
	ID     string `yaml:"id" rule:"required,min=2,max=80" doc:"id of the scenario"`
	Passes int    `yaml:"passes" rule:"min=1,max=20,default=1" doc:"how often, with different seeds"`
}

// ReadPlan reads a plan, or says all that is wrong with it, each at its place.
func ReadPlan(name string, text []byte) (*Plan, error) {
	var p Plan
	doc := yamlread.Read(name, text, &p)
	if len(p.Items) == 0 {
		p.Items = StandingItems()
	}
	known := map[string]bool{}
	for i := range p.Items {
		it := &p.Items[i]
		if known[it.Name] {
			doc.Fault(place("items[%d].name", i), "an item of this name stands above", "another name")
		}
		known[it.Name] = true
		if it.Needs > len(it.Anchors) && len(it.Anchors) > 0 {
			doc.Fault(place("items[%d].needs", i), "there are not so many anchors", "a level that has words")
		}
	}
	names := map[string]bool{}
	for i := range p.Competencies {
		c := &p.Competencies[i]
		if names[c.Name] {
			doc.Fault(place("competencies[%d].name", i), "a competency of this name stands above", "another name")
		}
		names[c.Name] = true
		for k, it := range c.Items {
			if !known[it] {
				doc.Fault(place("competencies[%d].items[%d]", i, k), "there is no item of this name", "one of the names under items")
			}
		}
		for k, a := range c.After {
			if a != EventIncident && a != EventEquipment && a != EventAway {
				doc.Fault(place("competencies[%d].after[%d]", i, k), "this is no event", "incident, equipment or away")
			}
		}
		if len(c.Scenarios) == 0 && c.SupervisedCases == 0 && len(c.Items) == 0 {
			doc.Fault(place("competencies[%d].name", i), "nothing shows this competency", "scenarios, items or supervised_cases")
		}
	}
	if err := doc.Faults().Err(); err != nil {
		return nil, err
	}
	return &p, nil
}

func place(form string, at ...any) string { return fmt.Sprintf(form, at...) }
