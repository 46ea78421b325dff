// The play from reservoir to product bag: the processing set, filling, washing, emptying.

package main

import (
	"fmt"
	"strings"
	"time"
)

// stop sees to what cannot wait: alarms are read and acknowledged, a wash that is done is stopped.
func (p *player) stop() {
	for _, m := range p.look() {
		if m.Kind == "alarm" && !p.heard[m.Label] {
			p.heard[m.Label] = true
			p.press(m)
			p.picture("alarm")
			for {
				a, ok := p.find("Acknowledge") // one that is not there must not be searched for: time passes
				if !ok {
					break
				}
				p.press(a)
			}
			p.keys("Escape")
		}
	}
}

// reservoir is what the reservoir holds and what of it is clear.
func (p *player) reservoir() (ml, clear float64) {
	if t, ok := p.says("reservoir "); ok {
		ml = number(t)
	}
	if t, ok := p.says("clear on top "); ok {
		clear = number(t)
	}
	return ml, clear
}

// processing opens and checks the processing set when a bowl is coming.
func (p *player) processing() (bool, error) {
	if ml, _ := p.reservoir(); p.ready || ml < openSetML {
		return false, nil
	}
	p.ready = true
	p.still(true)
	p.pace(5)
	return true, all(func() error { return p.choose("bowl") }, p.press1("Open the processing set"), p.free,
		p.lookAt("processing set"), p.when("Connect the outlet line"), p.free, p.lookAt("outlet line"),
		func() error { return p.choose("first wash hook") }, p.hangSaline,
		func() error { return p.choose("first wash clamp") }, func() error { return p.choose("outlet clamp") },
		p.lookAt("outlet clamp"),
		func() error { return p.choose("second wash clamp") }, func() error { return p.choose("second wash clamp") },
		func() error { return p.choose("product bag") }, p.lookAt("spare port", "product line"),
		func() error { return p.choose("waste bag") }, p.lookAt("waste drain", "waste line"),
		func() error { return p.choose("bowl") }, func() error { return p.set("wash volume", washBowlsML) },
		p.press1("stop at the interface"), func() error { p.picture("processing-set"); p.still(false); return nil })
}

// over says whether the operation is, and whether nothing more will come.
func (p *player) over() (over, dry bool) {
	_, over = p.says("the operation is over")
	pool, _ := p.says("pool ")
	swabs := 0.0
	if t, ok := p.says("swabs "); ok {
		swabs = number(t)
	}
	_, rinsing := p.says("rinsing")
	return over, over && number(pool) < 20 && swabs-p.rested < restOfSwabsML && !rinsing && p.clockS() > p.lastRinse+200
}

// process runs bowl after bowl with keys: M turns the reservoir, F fills, W washes, S stops, E empties.
func (p *player) process() (bool, error) {
	if !p.ready {
		return false, nil
	}
	state, _ := p.says(" rpm")
	stands := p.shown("standing")
	ml, clear := p.reservoir()
	_, dry := p.over()
	// a key, and a look whether it did what it should; if not, the stage stays and it is tried again
	key := func(k, stage, sign string) (bool, error) {
		p.keys(k)
		if p.await(sign, 3*time.Second, func() bool { _, ok := p.says(sign); return ok }) == nil {
			p.stage = stage
			p.picture(stage)
		}
		return true, nil
	}
	switch {
	case len(state) > 7 && state[:7] == "filling":
		if ml <= 10 {
			return key("d", "short", "spinning,")
		}
	case len(state) > 7 && state[:7] == "washing":
		if p.stage != "washing seen" {
			time.Sleep(1500 * time.Millisecond)
			p.stage = "washing seen"
			p.picture("washing")
		}
	case len(state) > 8 && state[:8] == "spinning":
		switch p.stage {
		case "filling", "short":
			full, _ := p.says("detector ")
			if _, air := p.says("air in line"); air {
				return true, all(func() error { return p.choose("bowl") }, p.when("Clear the lines, let air out"), p.free)
			}
			if number(full) < 0.9 && (ml > 150 || dry && ml > 60) {
				return key("f", "filling", "filling,")
			}
			if number(full) < 0.9 && !dry {
				return false, nil
			}
			if _, short := p.says("no full wash"); short {
				return true, p.hangSaline()
			}
			return key("w", "wash", "washing,")
		case "washing seen", "wash":
			if _, air := p.says("air in line"); air { // the pack ran empty in the middle of the wash
				return true, all(p.hangSaline, func() error { return p.choose("bowl") }, p.when("Clear the lines, let air out"), p.free,
					func() error { p.stage = "filling"; return nil })
			}
			return key("s", "stopped", "slowing down")
		}
	case stands && p.stage == "stopped":
		return key("e", "emptying", "emptying")
	case stands && (p.stage == "emptying" || p.stage == ""):
		if _, short := p.says("no full wash"); short {
			return true, p.hangSaline()
		}
		if ml < fillFromML && !(dry && ml >= leastToFillML) {
			return false, nil
		}
		if clear > clearShare*ml {
			if _, turning := p.says("being turned"); !turning {
				p.picture("layered")
				p.keys("m")
			}
			return true, nil
		}
		if err := p.choose("bowl"); err != nil {
			return true, err
		}
		return key("f", "filling", "filling,")
	}
	return false, nil
}

// salineDay is the day of the case: a pack with an older date is not hung.
const salineDay = "2031-05-14"

// hangSaline hangs a fresh pack on the first wash hook, in place of one that is nearly empty.
func (p *player) hangSaline() error {
	if err := p.choose("first wash hook", "saline 0.9 %"); err != nil {
		return err
	}
	if m, ok := p.find("Take the pack down"); ok && !m.Off {
		p.press(m)
		if err := p.free(); err != nil {
			return err
		}
	}
	for _, m := range p.look() {
		_, date, dated := strings.Cut(m.Value, "use by ")
		if m.Kind == "button" && m.Label == "saline 0.9 %" && dated && date >= salineDay && m.Place[3] > leastSeen {
			p.press(m)
			return all(p.free, p.lookAt("pack"))
		}
	}
	return fmt.Errorf("there is no saline in date on the shelf")
}

// rinse has swabs rinsed when they hold enough.
func (p *player) rinse() (bool, error) {
	t, ok := p.says("swabs ")
	over, _ := p.over()
	if over && !p.skims { // nothing more will well up: have the rest sucked up
		p.skims = true
		return true, all(func() error { return p.choose("wound") }, p.press1("suck as it comes"))
	}
	if p.rinsing && p.clockS() > p.lastRinse+95 { // it is done: what is in the basin is no blood
		p.rinsing = false
		if err := p.choose("wound"); err != nil {
			return true, err
		}
		if _, ok := p.says("rinse in the basin"); ok {
			p.basin += p.reading("rinse in the basin")
		}
		p.rested = p.reading("in swabs, weighed")
		return true, nil
	}
	fresh := number(t) - p.rested
	if !ok || p.agent || p.clockS() < p.lastRinse+300 || fresh < rinseFromML && !(over && fresh > restOfSwabsML) {
		return false, nil
	}
	p.lastRinse, p.rinsing = p.clockS(), true
	p.swabs += fresh
	err := all(func() error { return p.choose("wound") }, p.press1("rinse the swabs"))
	return true, err
}
