package debrief

import (
	"cmp"
	"slices"

	"rouleau/assets/words"
	"rouleau/sim"
)

// The closing tally: lines that are missing, that were written too early, or that are off.

const (
	lineFloorML = 200.0 // a line of less is judged as if it were this much, as the measure has it
	lineOff     = 0.1   // from there on a line is worth a word [A]
)

// findTally looks at each line as it stood at the end.
func findTally(f *finding) []Decision {
	end := f.ends()
	at := f.inTime(f.rec.lastTick - afterTheEnd)
	if at < f.c.EndTick || !f.rec.Run.State.Bench.Opened[sim.CollectionSet] {
		return nil // no line can be written, or there is nothing to count
	}
	v := f.rec.seenAt(at)
	if end >= 0 {
		v = &f.rec.moments[end].seen
	}
	reads := tallyRead(v)
	write := func(item int) Edit { // at the end, when all has been read
		a := act(at, sim.Reconcile, sim.NoPart, reads[item])
		a.Item = uint8(item)
		if end >= 0 {
			return Edit{First: []First{{end, []sim.Action{a}}}}
		}
		return Edit{Add: []Add{{Act: a}}}
	}
	var off []Decision
	var stakes []float64
	var blank Edit
	missing, one := 0, 0
	for item := range reads {
		k := f.lastLine(item)
		if k < 0 {
			e := write(item)
			blank.First, blank.Add = append(blank.First, e.First...), append(blank.Add, e.Add...)
			missing, one = missing+1, item
			continue
		}
		apart := lineApart(f.acts[k].Value, reads[item])
		if apart <= lineOff {
			continue
		}
		name, then := words.Say("tally."+sim.TallyItem(item).String()), tallyRead(&f.rec.moments[k].seen)[item]
		d := Decision{Fault: Wrong, Title: title("tally", Wrong, reads[item], f.acts[k].Value, name), Tick: f.acts[k].Tick, Done: f.acts[k].Tick}
		if lineApart(then, reads[item]) <= lineOff {
			right := f.acts[k]
			right.Value = then
			d.Edit = Edit{Swap: []Swap{{k, right}}}
		} else { // something still came after it was written
			d.Fault, d.Tick, d.Edit = Late, at, write(item)
			d.Title = title("tally", Late, name, clock(at), reads[item], clock(d.Done))
			d.Edit.Drop = []int{k}
		}
		off, stakes = append(off, d), append(stakes, apart)
	}
	all := mostAtStake(off, stakes, mostOfAKind-2)
	if missing > 0 {
		d := Decision{Fault: LeftOut, Tick: at, Done: -1, Edit: blank}
		switch missing {
		case 1:
			d.Title = title("tally_line", LeftOut, words.Say("tally."+sim.TallyItem(one).String()), reads[one])
		case int(sim.TallyItems):
			if d.Title = title("tally", LeftOut, clock(at)); end < 0 {
				d.Title = title("tally_in_time", LeftOut, clock(at))
			}
		default:
			d.Title = title("tally_lines", LeftOut, missing)
		}
		all = append(all, d)
	}
	return some(all, words.Say("decision.tally_all"))
}

// lastLine is the act that wrote a line last, -1 for none.
func (f *finding) lastLine(item int) int {
	last := -1
	for i := range f.acts {
		if a := &f.acts[i]; a.Do == sim.Reconcile && int(a.Item) == item {
			last = i
		}
	}
	return last
}

func lineApart(v, read float64) float64 { return max(v-read, read-v) / max(lineFloorML, read) }

// mostAtStake keeps those decisions of which most hangs, in their order.
func mostAtStake(all []Decision, stakes []float64, most int) (kept []Decision) {
	sorted := slices.Clone(stakes)
	slices.SortFunc(sorted, func(a, b float64) int { return cmp.Compare(b, a) })
	for i := range all {
		if len(sorted) <= most || stakes[i] >= sorted[most-1] {
			kept = append(kept, all[i])
		}
	}
	return kept
}
