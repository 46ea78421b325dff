package attempt

import (
	"fmt"
	"strconv"
	"strings"

	"rouleau/scenarios"
	"rouleau/scenarios/yamlread"
	"rouleau/sim"
)

// Reading the acts: names back to what the model knows, and their order.

// act is an act as the file holds it.
type act struct {
	Tick  *int64 `json:"tick"`
	Do    string `json:"do"`
	On    string `json:"on"`
	Value raw    `json:"value"`
	Item  string `json:"item"`
	Text  string `json:"text"`
}

func (r *reading) actions() {
	var rows []raw
	if !r.get("actions", &rows) {
		return
	}
	before := int64(0)
	for i, row := range rows {
		place := fmt.Sprintf("actions[%d]", i)
		var in act
		if message := strict(row, &in); message != "" {
			r.faults.add(place, message)
			continue
		}
		out, ok := r.action(place, &in)
		if !ok {
			continue
		}
		switch {
		case out.Tick < 0:
			r.faults.add(place+".tick", fmt.Sprintf("%d is before the case begins", out.Tick))
		case out.Tick < before:
			r.faults.add(place+".tick", fmt.Sprintf("%d comes after %d: acts stand in the order in which they were done", out.Tick, before))
		case r.measured && out.Tick > r.a.LengthTicks:
			r.faults.add(place+".tick", fmt.Sprintf("%d is after the end of the run, %d", out.Tick, r.a.LengthTicks))
		}
		before = max(before, out.Tick)
		r.a.Actions = append(r.a.Actions, out)
	}
}

func (r *reading) action(place string, in *act) (out sim.Action, ok bool) {
	count := len(r.faults.List)
	if in.Tick == nil {
		r.faults.add(place+".tick", "this key is missing")
		in.Tick = &out.Tick
	}
	out.Tick, out.Text = *in.Tick, in.Text
	var known bool
	if out.Do, known = sim.VerbNamed(in.Do); !known {
		r.faults.near(place+".do", fmt.Sprintf("%q is not an act", clipped(in.Do)), yamlread.Nearest(in.Do, scenarios.VerbNames()))
	}
	if out.On, known = sim.PartNamed(in.On); !known {
		r.faults.near(place+".on", fmt.Sprintf("%q is not a part of the bench", clipped(in.On)), yamlread.Nearest(in.On, scenarios.PartNames()))
	}
	if in.Item != "" {
		item, known := sim.TallyItemNamed(in.Item)
		if !known {
			r.faults.near(place+".item", fmt.Sprintf("%q is not a line of the tally", clipped(in.Item)), yamlread.Nearest(in.Item, scenarios.TallyNames()))
		}
		out.Item = uint8(item)
	}
	if len(in.Value) > 0 && len(r.faults.List) == count {
		out.Value = r.value(place+".value", out.Do, in.Value)
	}
	return out, len(r.faults.List) == count
}

// value reads a number, or the word that stands for it.
func (r *reading) value(place string, do sim.Verb, data raw) float64 {
	if strings.HasPrefix(string(data), `"`) {
		var word string
		if message := strict(data, &word); message != "" {
			r.faults.add(place, message)
			return 0
		}
		v, ok := scenarios.ValueNamed(do, word)
		if !ok {
			r.faults.near(place, fmt.Sprintf("%s is not a value of %s", strconv.Quote(clipped(word)), do), yamlread.Nearest(word, scenarios.ValueWords(do)))
		}
		return v
	}
	var v Exact
	if message := strict(data, &v); message != "" {
		r.faults.add(place, message)
	}
	return float64(v)
}
