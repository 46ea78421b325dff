// The pages before the bench: the cautions, and the case sheet on which the trainee decides.

package bench

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

func (d *Desk) cautions(c *ui.Core, v *View, window ui.Rect) {
	r := window.Place(min(window.W-64, 760), min(window.H-64, 470), 0.5, 0.45)
	in := c.Panel(ui.Panel{ID: ui.Name("cautions"), Rect: r}).Inset(16)
	c.Text(in.CutTop(34), words.Say("first.name"), ui.Style{Size: 28, Weight: ui.SemiBold})
	c.Label(ui.Label{Rect: in.CutTop(46), Text: words.Say("first.job"), Style: ui.Style{Size: 15, Col: c.Pal.Muted}})
	in.CutTop(10)
	foot := in.CutBottom(46)
	in.CutBottom(12)
	for _, k := range [...]string{"first.model", "first.not_treating", "first.not_instructions", "first.simulated"} {
		st := ui.Style{Size: 16}
		row := in.CutTop(c.LabelHeight(words.Say(k), in.W-26, st))
		in.CutTop(16)
		mark := row.CutLeft(26)
		c.Fill(ui.R(mark.X+4, mark.Y+7, 8, 8), 1, c.Pal.Ink)
		c.Label(ui.Label{Rect: row, Text: words.Say(k), Style: st})
	}
	in.CutTop(8)
	mode := words.Say("first.practice")
	if v.Assessment {
		mode = words.Line("first.assessment", int(v.TimeLeftS/60))
	}
	c.Label(ui.Label{Rect: in, Text: words.Line("first.case", v.Story.Title, mode), Style: ui.Style{Col: c.Pal.Muted}})
	if c.Button(ui.Button{ID: ui.Name("understood"), Rect: foot.CutRight(min(foot.W, 300)), Label: words.Say("first.understood"), Key: ui.Chord{Key: ui.KeyEnter}, Look: ui.LookDark}) {
		d.do(Act{Do: GoOn})
	}
	if c.Focused() == 0 {
		c.Focus(ui.Name("understood"))
	}
}

// sheet is the case sheet: the story at the left, the decisions at the right.
func (d *Desk) sheet(c *ui.Core, v *View, window ui.Rect) {
	in := window.InsetXY(24, 16)
	head := in.CutTop(40)
	home := ui.Button{ID: ui.Name("sheet home"), Label: words.Say("top.home")}
	leaves := !v.Assessment || v.Seen.Tick == 0
	if leaves {
		home.Rect = head.CutRight(wideAs(c, &home))
		head.CutRight(14)
	}
	if p := &v.Seen.Pump; p.Mode != sim.PumpIdle || p.Spinning { // an assessment goes on while its sheet is read
		d.stopButton(c, v, ui.Name("stop on sheet"), head.CutRight(230))
		head.CutRight(14)
	} else {
		c.Text(head.CutRight(190), words.Line("sheet.level", v.Story.Level, v.Story.Minutes), ui.Style{Size: 13, Col: c.Pal.Muted, Align: ui.AlignRight})
	}
	c.Label(ui.Label{ID: ui.Name("title"), Rect: head, Text: v.Story.Title, Style: ui.Style{Size: 22, Weight: ui.SemiBold}})
	in.CutTop(6)
	if v.Notice != "" {
		st := ui.Style{Size: 13, Weight: ui.SemiBold}
		c.Label(ui.Label{ID: ui.Name("sheet notice"), Rect: in.CutTop(c.LabelHeight(v.Notice, in.W, st)), Text: v.Notice, Style: st})
		in.CutTop(6)
	}
	right := in.CutRight(min(in.W*0.4, 460))
	in.CutRight(20)
	d.sheetStory(c, v, in)
	d.decisions(c, v, right)
	if leaves && c.Button(home) { // the last stop of the Tab key: the decisions come first
		d.do(Act{Do: GoHome})
	}
}

func (d *Desk) sheetStory(c *ui.Core, v *View, r ui.Rect) {
	id := ui.Name("story")
	c.PageKeys(id, r.H)
	area := c.BeginScroll(ui.Scroll{ID: id, Rect: r, Content: d.heights[id]})
	area.W = min(area.W, r.W-16)
	y := area.Y
	body := ui.Style{Size: 15}
	put := func(text string, st ui.Style, x, w, gap float32) {
		h := c.LabelHeight(text, w, st)
		c.Label(ui.Label{Rect: ui.R(x, y, w, h), Text: text, Style: st})
		y += h + gap
	}
	if v.Assessment {
		put(words.Line("sheet.assessment", v.Speed, int(v.TimeLeftS+59)/60), ui.Style{Size: 14, Weight: ui.SemiBold}, area.X, area.W, 10)
	}
	put(v.Story.Text, body, area.X, area.W, 14)
	const name = 150
	for _, row := range v.Story.Sheet {
		st := ui.Style{Size: 14}
		h := c.LabelHeight(row.Text, area.W-name-14, st)
		if row.Weighty {
			st.Weight = ui.SemiBold
			h = c.LabelHeight(row.Text, area.W-name-14, st)
			c.Fill(ui.R(area.X, y-2, area.W, h+8), 4, c.Pal.Shade)
			c.Fill(ui.R(area.X, y-2, 4, h+8), 2, c.Pal.Ink)
		}
		h = max(h, c.LabelHeight(row.Label, name-12, ui.Style{Size: 14}))
		c.Label(ui.Label{Rect: ui.R(area.X+10, y+2, name-12, h), Text: row.Label, Style: ui.Style{Size: 14, Col: c.Pal.Muted}})
		c.Label(ui.Label{Rect: ui.R(area.X+name+4, y+2, area.W-name-14, h), Text: row.Text, Style: st})
		y += h + 6
		c.Segment(area.X, y, area.Right(), y, 1, c.Pal.Line)
		y += 6
	}
	if len(v.Story.Objectives) > 0 {
		y += 8
		put(words.Say("sheet.objectives"), ui.Style{Size: 14, Weight: ui.SemiBold}, area.X, area.W, 4)
		for _, o := range v.Story.Objectives {
			c.Fill(ui.R(area.X+4, y+7, 5, 5), 1, c.Pal.Muted)
			put(o, ui.Style{Size: 14, Col: c.Pal.Muted}, area.X+18, area.W-18, 4)
		}
	}
	d.heights[id] = y - area.Y + 4
	c.EndScroll()
}

var (
	decided = [...]sim.Decision{sim.DoNotSalvage, sim.CollectOnly, sim.SetUpToProcess}
	agents  = [...]sim.Solution{sim.HeparinSolution, sim.CitrateSolution}
	bowls   = [...]sim.BowlKind{sim.StandardBowl, sim.SmallBowl, sim.PaediatricBowl}
	startID = ui.Name("start")
)

// decisions are the three choices of the sheet and the way on.
func (d *Desk) decisions(c *ui.Core, v *View, r ui.Rect) {
	in := c.Panel(ui.Panel{ID: ui.Name("decisions"), Rect: r, Title: words.Say("sheet.decide")})
	b := &v.Seen.Bench
	foot := in.CutBottom(46)
	in.CutBottom(8)
	id := ui.Name("choices")
	area := c.BeginScroll(ui.Scroll{ID: id, Rect: in, Content: d.heights[id]})
	s := stack{c: c, d: d, v: v, id: id, r: area.InsetXY(4, 2), y: area.Y + 2}
	d.pick(b)
	var o [3]ui.Option
	at := -1
	for i, k := range decided {
		o[i] = ui.Option{Label: words.Say("decision." + k.String()), Why: v.why(sim.Action{Do: sim.Decide, Value: float64(k)})}
		if d.picked.decision == k {
			at = i
		}
	}
	s.head(words.Say("sheet.salvage"))
	if i, ok := s.choose(ui.Choice{ID: ui.Name("decide"), Label: words.Say("sheet.salvage"), Options: o[:], Selected: at}); ok && i >= 0 {
		d.picked.decision = decided[i]
	}
	s.together()
	at = -1
	var q [2]ui.Option
	for i, k := range agents {
		q[i] = ui.Option{Label: words.Say("solution." + k.String()), Why: v.why(sim.Action{Do: sim.ChooseAnticoagulant, Value: float64(k)})}
		if d.picked.agent == k {
			at = i
		}
	}
	s.head(words.Say("sheet.anticoagulant"))
	if i, ok := s.choose(ui.Choice{ID: ui.Name("agent"), Label: words.Say("sheet.anticoagulant"), Options: q[:], Selected: at}); ok && i >= 0 {
		d.picked.agent = agents[i]
	}
	at = -1
	for i, k := range bowls {
		o[i] = ui.Option{Label: words.Say("bowl." + k.String()), Detail: c.Num(k.Shape().VolumeML, 0, "mL"), Why: v.why(sim.Action{Do: sim.ChooseBowl, Value: float64(k)})}
		if d.picked.bowl == k {
			at = i
		}
	}
	s.head(words.Say("sheet.bowl"))
	if i, ok := s.choose(ui.Choice{ID: ui.Name("bowl"), Label: words.Say("sheet.bowl"), Options: o[:], Selected: at}); ok && i >= 0 {
		d.picked.bowl = bowls[i]
	}
	if in.H > 480 {
		s.say(words.Say("sheet.later"), false)
	}
	d.heights[id] = s.y - area.Y + 4
	c.EndScroll()
	d.sheetFoot(c, v, foot)
}

// picked are the choices on the sheet until the trainee leaves it: walking over them with the arrow keys decides nothing.
type picked struct {
	fresh    bool
	decision sim.Decision
	agent    sim.Solution
	bowl     sim.BowlKind
}

// pick starts from what was decided before.
func (d *Desk) pick(b *sim.SeenBench) {
	if !d.picked.fresh {
		d.picked = picked{true, b.Decision, b.Anticoagulant, b.Bowl}
	}
}

// commit does what was picked and differs from what was decided before.
func (d *Desk) commit(b *sim.SeenBench) {
	p := &d.picked
	if p.decision != b.Decision {
		d.do(on(sim.Decide, sim.NoPart, float64(p.decision)))
	}
	if p.agent != b.Anticoagulant {
		d.do(on(sim.ChooseAnticoagulant, sim.NoPart, float64(p.agent)))
	}
	if p.bowl != b.Bowl {
		d.do(on(sim.ChooseBowl, sim.NoPart, float64(p.bowl)))
	}
	d.picked = picked{}
}

func (d *Desk) sheetFoot(c *ui.Core, v *View, foot ui.Rect) {
	b := &v.Seen.Bench
	if d.picked.decision == sim.DoNotSalvage && v.Seen.Tick >= v.Seen.StayTick {
		left := foot.CutLeft(foot.W/2 - 4)
		foot.CutLeft(8)
		if c.Hold(ui.HoldButton{ID: ui.Name("end here"), Rect: left, Label: words.Say("sheet.end_here")}) {
			d.commit(b)
			d.do(on(sim.EndCase, sim.NoPart, 0))
			d.do(Act{Do: Finish})
			return
		}
	}
	why := ""
	if d.picked.decision == sim.Undecided {
		why = words.Say("sheet.decide_first")
	}
	label := words.Say("sheet.to_bench")
	if v.Seen.Tick > 0 {
		label = words.Say("sheet.back")
	}
	if c.Button(ui.Button{ID: startID, Rect: foot, Label: label, Look: ui.LookDark, Why: why, Key: ui.K('B')}) {
		d.commit(b)
		d.do(Act{Do: GoOn})
	}
}
