package debrief

import (
	"rouleau/assets/words"
	"rouleau/sim"
)

// Trouble at the bowl: a pump that turns and nothing flows, wash fluid that runs out, a bowl that leaks.

const (
	blockedFrom = 5 * sim.TicksPerSecond  // so long, and it counts as one
	noticedFlow = 10 * sim.TicksPerSecond // from when nothing flows until somebody sees it [A]
	atAlarm     = 5 * sim.TicksPerSecond  // from an alarm to the first act [A]
)

// findBlocked looks for each time that the pump turned against a full bag or a closed clamp.
func findBlocked(f *finding) []Decision {
	var all []Decision
	for _, b := range f.bowlfuls() {
		since := int64(-1)
		for t := b.from - b.from%sim.TicksPerSecond; t <= b.until; t += sim.TicksPerSecond {
			s := f.rec.at(t)
			if s.PumpMode != sim.PumpIdle && s.FlowMLMin == 0 {
				if since < 0 {
					since = t
				}
				continue
			}
			if since >= 0 && t-since >= blockedFrom {
				if d, ok := f.unblocked(&b, since, t); ok {
					all = append(all, d)
				}
			}
			since = -1
		}
		if since >= 0 && b.until-since >= blockedFrom {
			if d, ok := f.unblocked(&b, since, b.until); ok {
				all = append(all, d)
			}
		}
	}
	return some(all, words.Say("decision.blocked_all", len(all)))
}

// unblocked takes away what stood in the pump's way, before it was started or when it began to turn in vain.
func (f *finding) unblocked(b *bowlful, since, until int64) (Decision, bool) {
	v, s := f.seenBy(since), f.rec.at(since)
	d := Decision{Fault: Late, Tick: since, Done: until}
	begun := -1 // the act that started the pump
	for _, k := range b.acts {
		if a := &f.acts[k]; a.Tick <= since && (a.Do == sim.Fill || a.Do == sim.Wash || a.Do == sim.Empty || a.Do == sim.TopUp) {
			begun = k
		}
	}
	open := func(p sim.Part) (Decision, bool) {
		d.Edit.Add = []Add{{Act: act(since, sim.Clamp, p, 1)}}
		d.Title = title("blocked_clamp", Late, partName(p), clock(since), clock(until))
		return d, true
	}
	switch m := s.PumpMode; {
	case m == sim.PumpFill && !v.Bench.Open[sim.OutletClamp]:
		return open(sim.OutletClamp)
	case m == sim.PumpWash && !v.Bench.Open[sim.WashClampA] && !v.Bench.Open[sim.WashClampB]:
		return open(sim.WashClampA)
	case begun < 0 && m != sim.PumpFill:
		return d, false
	case m == sim.PumpEmpty:
		d.Edit.First = []First{{begun, []sim.Action{act(since, sim.NewBag, sim.NoPart, 0)}}}
		d.Title = title("blocked_bag", Late, b.n, clock(f.acts[begun].Tick))
	case begun >= 0 && s.WasteML >= f.c.Faults.WasteCapacityML-2*wasteFullML:
		d.Edit.First = []First{{begun, []sim.Action{act(since, sim.ChangeWaste, sim.NoPart, 0)}}}
		for _, k := range b.acts { // stopping, changing and going on is not needed then
			if t := f.acts[k].Tick; t > since && t <= until+2*60*sim.TicksPerSecond {
				d.Edit.Drop = append(d.Edit.Drop, k)
				if f.acts[k].Do == f.acts[begun].Do {
					break
				}
			}
		}
		if n := len(d.Edit.Drop); n > 0 && f.acts[d.Edit.Drop[n-1]].Do != f.acts[begun].Do {
			d.Edit.Drop = nil // it was not gone on with
		}
		d.Tick = f.acts[begun].Tick
		d.Title = title("blocked_waste", Late, clock(d.Tick), b.n)
	default: // clot at the outlet, which is a decision in collecting; but a pump that turns in vain can be stopped
		if until-since < 4*noticedFlow {
			return d, false
		}
		d.Tick = since + noticedFlow
		d.Edit.Add = []Add{{Act: act(d.Tick, sim.StopPump, sim.NoPart, 0)}}
		d.Title = title("blocked_clot", Late, clock(d.Tick), clock(until))
	}
	return d, true
}

// findWashRanOut looks for washes that drew air because the pack was empty.
func findWashRanOut(f *finding) []Decision {
	var all []Decision
	for _, b := range f.bowlfuls() {
		for _, k := range f.of(&b, sim.Wash) {
			v := &f.rec.moments[k].seen
			pack := v.Bench.HookPack[sim.WashHookA]
			if pack >= 0 && v.Bench.PackLeftML[pack] >= v.Pump.WashML*0.9 || !f.airStopped(f.acts[k].Tick, b.until) {
				continue
			}
			fresh := f.packFor(sim.WashHookA, f.acts[k].Tick, int(pack))
			if fresh < 0 || v.Bench.PackInStore[fresh] || v.Bench.PackLeftML[fresh] < v.Pump.WashML {
				continue
			}
			t := f.acts[k].Tick
			var first []sim.Action
			if pack >= 0 {
				first = append(first, act(t, sim.Unhang, sim.WashHookA, 0))
			}
			first = append(first, act(t, sim.Hang, sim.WashHookA, float64(fresh)))
			all = append(all, Decision{Fault: Late, Title: title("wash_ran_out", Late, b.n, clock(t)), Tick: t, Done: t, Edit: Edit{First: []First{{k, first}}}})
			break
		}
	}
	return some(all, words.Say("decision.wash_ran_out_all", len(all)))
}

// airStopped says whether air stopped the pump while it washed, in a time.
func (f *finding) airStopped(from, until int64) bool {
	for i := range f.rec.Run.Log {
		if o := &f.rec.Run.Log[i]; o.Kind == sim.Came && o.Key == "air_stopped_pump" && o.Tick > from && o.Tick <= until {
			return f.rec.at(o.Tick-sim.TicksPerSecond).PumpMode == sim.PumpWash
		}
	}
	return false
}

// findLeak looks for a leaking bowl that was not stopped, or not replaced.
func findLeak(f *finding) []Decision {
	at := int64(-1)
	for i := range f.rec.Run.Log {
		if o := &f.rec.Run.Log[i]; o.Kind == sim.Alarmed && o.Key == sim.AlarmLeak.String() {
			at = o.Tick + atAlarm
			break
		}
	}
	if at < 0 {
		return nil
	}
	at += -at % sim.TicksPerSecond
	stopped := f.first(at-atAlarm, does(sim.StopAll))
	replaced := f.first(at-atAlarm, on(sim.ReplaceSet, sim.ProcessingSet))
	soonStopped := stopped >= 0 && f.acts[stopped].Tick <= at+slack
	if soonStopped && replaced >= 0 && f.acts[replaced].Tick <= at+6*slack {
		return nil
	}
	d := Decision{Fault: LeftOut, Title: title("leak", LeftOut, clock(at)), Tick: at, Done: -1}
	d.Edit.Rule = &Rule{From: at, Until: at + mending + minuteLong, Act: freshBowl}
	mended := f.rec.lastTick // when the person had mended it
	if replaced >= 0 {
		d.Fault, d.Done, mended = Late, f.acts[replaced].Tick, f.acts[replaced].Tick+mending
		d.Title = title("leak", Late, clock(at), clock(d.Done))
	}
	for _, b := range f.bowlfuls() {
		if b.from >= d.Done && d.Done >= 0 { // the next bowl follows as soon as then
			d.Edit.Swap = f.sooner(&b, b.from-1, max(0, b.from-at-mending))
			mended = min(mended, b.from-1)
			break
		}
	}
	for i := range f.acts { // what was in the bowl is lost, and what was done with it is not done
		a := &f.acts[i]
		onIt := a.Do == sim.ReplaceSet && a.On == sim.ProcessingSet || a.Do == sim.Connect && a.On == sim.OutletLine || a.Do == sim.Clamp && a.On == sim.OutletClamp
		if a.Tick >= at && a.Tick <= mended && (onIt || f.rec.lineOf(&step{act: *a, own: i}) == pumping && a.Do != sim.NewBag && a.Do != sim.ChangeWaste) {
			d.Edit.Drop = append(d.Edit.Drop, i)
		}
	}
	return []Decision{d}
}

const (
	mending    = 150 * sim.TicksPerSecond // from stopping a leaking bowl until the next can be filled
	minuteLong = 60 * sim.TicksPerSecond
)

// freshBowl stops a leaking bowl, replaces it, and joins the fresh one. A bowl that holds nothing is a fresh one.
func freshBowl(v *sim.Seen, do func(sim.Action) sim.Reason) {
	b, p := &v.Bench, &v.Pump
	switch {
	case b.TakenDown || p.Braking:
	case v.Alarms[sim.AlarmLeak]:
		do(sim.Action{Do: sim.StopAll})
	case p.Mode != sim.PumpIdle || p.Spinning || v.HandsBusy:
	case p.HeldML > 0 && b.Open[sim.OutletClamp]:
		do(sim.Action{Do: sim.Clamp, On: sim.OutletClamp})
		fallthrough
	case p.HeldML > 0:
		do(sim.Action{Do: sim.ReplaceSet, On: sim.ProcessingSet})
	case !b.Connected[sim.OutletLine]:
		do(sim.Action{Do: sim.Connect, On: sim.OutletLine})
	case !b.Open[sim.OutletClamp]:
		do(sim.Action{Do: sim.Clamp, On: sim.OutletClamp, Value: 1})
	}
}
