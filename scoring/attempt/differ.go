package attempt

import "strconv"

// Comparing two grades, one named value after the other.

// graded is one value of a grade.
type graded struct {
	name, value string
	wording     bool
}

// values lists everything in a grade in a fixed order.
func (g *Grade) values() []graded {
	var all []graded
	add := func(name, value string) { all = append(all, graded{name: name, value: value}) }
	say := func(name, value string) { all = append(all, graded{name, value, true}) }
	number := func(name string, x Exact) { add(name, x.String()) }
	truth := func(name string, b bool) { add(name, strconv.FormatBool(b)) }
	count := func(name string, n int64) { add(name, strconv.FormatInt(n, 10)) }

	truth("passed", g.Passed)
	number("points", g.Points)
	number("pass_mark", g.PassMark)
	count("reasons, how many", int64(len(g.Reasons)))
	for i, r := range g.Reasons {
		say("reasons["+strconv.Itoa(i)+"]", r)
	}
	count("critical, how many", int64(len(g.Critical)))
	for i, c := range g.Critical {
		at := "critical[" + strconv.Itoa(i) + "]."
		add(at+"name", c.Name)
		number(at+"amount", c.Amount)
		truth(at+"mended", c.Mended)
		count(at+"tick", c.Tick)
		say(at+"reason", c.Reason)
	}
	count("parts, how many", int64(len(g.Parts)))
	for i, p := range g.Parts {
		at := "parts[" + strconv.Itoa(i) + "]."
		add(at+"part", p.Part)
		number(at+"points", p.Points)
		number(at+"of", p.Of)
		number(at+"floor", p.Floor)
		truth(at+"reached", p.Reached)
		say(at+"title", p.Title)
	}
	count("criteria, how many", int64(len(g.Criteria)))
	for i, c := range g.Criteria {
		at := "criteria[" + strconv.Itoa(i) + "] " + c.Measure + "."
		add(at+"part", c.Part)
		add(at+"objective", c.Objective)
		number(at+"value", c.Value)
		truth(at+"measured", c.Measured)
		number(at+"points", c.Points)
		number(at+"of", c.Of)
		count(at+"tick", c.Tick)
		say(at+"unit", c.Unit)
		say(at+"meaning", c.Meaning)
		say(at+"target", c.Target)
		say(at+"reason", c.Reason)
		say(at+"source", c.Source)
	}
	return all
}

// gradesDiffer gives what is otherwise, texts apart from the rest.
func gradesDiffer(recorded, now *Grade) (values, wording []Different) {
	was, is := recorded.values(), now.values()
	at := map[string]string{}
	for _, v := range is {
		at[v.name] = v.value
	}
	seen := map[string]bool{}
	tell := func(v graded, d Different) {
		if v.wording {
			wording = append(wording, d)
		} else {
			values = append(values, d)
		}
	}
	for _, v := range was {
		seen[v.name] = true
		value, there := at[v.name]
		switch {
		case !there:
			tell(v, Different{v.name, v.value, "nothing"})
		case value != v.value:
			tell(v, Different{v.name, v.value, value})
		}
	}
	for _, v := range is {
		if !seen[v.name] {
			tell(v, Different{v.name, "nothing", v.value})
		}
	}
	return values, wording
}
