// Command zzshot is a throwaway for looking at screens.
package main

import (
	"fmt"
	"os"
	"os/exec"
	"strconv"
	"strings"

	"github.com/hajimehoshi/ebiten/v2"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/paint"
	"rouleau/cmd/rouleau-desk/session"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scenarios"
	"rouleau/scoring/operators"
	"rouleau/sim"
)

func main() {
	w, _ := strconv.Atoi(os.Args[1])
	h, _ := strconv.Atoi(os.Args[2])
	if len(os.Args) > 4 && os.Args[4] == "long" {
		all := words.Texts()
		for k, t := range all {
			if strings.HasPrefix(k, "key.") {
				continue
			}
			toks := strings.Split(t, " ")
			for i, x := range toks {
				if len(x) > 2 && !strings.ContainsAny(x, "%×\n/") && x != "mmHg" {
					toks[i] = x + strings.ToLower(x[len(x)-len(x)*35/100-1:])
				}
			}
			all[k] = strings.Join(toks, " ")
		}
		words.Use(all)
	}
	sc, err := scenarios.Open("steady-oozing-spine")
	if err != nil {
		panic(err)
	}
	s := session.New(sc, session.Options{Seed: 1})
	op := operators.NewSteady(operators.SheetOf(sc, &s.Run.Case))
	d := bench.New()
	shots := strings.Split(os.Args[3], ",") // time:what
	at, wait := 0, 0
	set := func(spec string) {
		t, what, _ := strings.Cut(spec, ":")
		if t == "c" {
			return
		}
		if t == "s" {
			s.Do([]bench.Act{{Do: bench.GoOn}})
			return
		}
		s.Do([]bench.Act{{Do: bench.GoOn}, {Do: bench.GoOn}})
		sec, _ := strconv.ParseFloat(t, 64)
		var seen sim.Seen
		r := s.Run
		for !r.State.Ended && sim.Seconds(r.State.Tick) < sec {
			if r.State.Tick%sim.TicksPerSecond == 0 {
				sim.View(&r.Case, &r.State, &seen)
				op.Act(&seen, r.Do)
			}
			s.Tick()
		}
		d.Dialog, d.Tab = 0, 0
		switch {
		case what == "team":
			d.Tab = bench.TabTeam
		case what == "records":
			d.Tab = bench.TabRecords
		case what == "tally":
			d.Dialog = bench.TallyDialog
		case what == "label":
			d.Dialog = bench.LabelDialog
		case what == "alarms":
			for i := range r.State.Alarms.On {
				r.State.Alarms.On[i] = true
			}
			d.Dialog = bench.AlarmDialog
		case what == "alarm":
			for i := range r.State.Alarms.On {
				r.State.Alarms.On[i] = i < 6
			}
		case what == "air":
			r.State.Bowl.AirML = 12
		default:
			n, _ := strconv.Atoi(what)
			d.Select(sim.Part(n))
		}
	}
	set(shots[0])
	core := ui.New(ui.Paper())
	core.Words = bench.CoreWords()
	win := paint.Window{Core: core, Frame: func(c *ui.Core) error {
		s.Refresh()
		d.Frame(c, &s.View)
		if wait++; wait < 14 {
			return nil
		}
		name := fmt.Sprintf("/tmp/dshots/%dx%d-%s.png", w, h, strings.ReplaceAll(shots[at], ":", "-"))
		if len(os.Args) > 4 {
			name = strings.Replace(name, ".png", "-long.png", 1)
		}
		if out, err := exec.Command("import", "-window", "root", "-crop", fmt.Sprintf("%dx%d+0+0", w, h), name).CombinedOutput(); err != nil {
			fmt.Println(string(out))
		}
		wait = 0
		if at++; at == len(shots) {
			return ebiten.Termination
		}
		set(shots[at])
		return nil
	}}
	ebiten.SetWindowDecorated(false)
	ebiten.SetWindowSize(w, h)
	ebiten.SetWindowPosition(0, 0)
	ebiten.SetRunnableOnUnfocused(true)
	if err := win.Run(); err != nil {
		fmt.Println(err)
	}
}
