// The last page: what came of the case, with its tabs for the grade and the timeline, and the ways on from it.

package bench

import (
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

// ending is what stays of the result page from frame to frame.
type ending struct {
	tab    int
	opened int    // part of the grade whose criteria alone are shown, -1 for all
	moment int    // of the timeline that is told of, -1 for none
	told   string // of another moment of it, "" for none
	from   ui.ID  // that led to the timeline, 0 for none
	back   int    // its tab

	moments []moment
	marks   []ui.ChartMark
	made    momentsKey
	path    string
	asking  asking
	fresh   bool // the dialog has just been opened
	own     own
	talk    talk
}

// The tabs of the page.
const (
	tabGrade = iota
	tabTimeline
	tabCosts
	tabGood
	tabQuestions
)

var tabKeys = [...]string{"result.tab_grade", "result.tab_timeline", "desk_debrief.tab_costs", "desk_debrief.tab_good", "desk_debrief.tab_questions"}

func newEnding() ending { return ending{opened: -1, moment: -1} }

// lesson says whether what has ended was a guided lesson, which nobody passes or fails.
func (v *View) lesson() bool { return v.Guide.On || v.Guide.Done }

// score is points rounded down, so that nothing looks better than it is: 99.8 is not 100.
func score(c *ui.Core, points float64) string {
	tenths := math.Floor(10*points + 1e-6)
	if math.Mod(tenths, 10) == 0 {
		return c.Num(tenths/10, 0, "")
	}
	return c.Num(tenths/10, 1, "")
}

func verdict(c *ui.Core, v *View) string {
	switch r := &v.Result; {
	case v.lesson():
		return words.Say("result.lesson")
	case !r.Graded:
		return words.Say("result.not_graded")
	case r.Pass:
		return words.Line("result.pass", score(c, r.Total))
	default:
		return words.Line("result.fail", score(c, r.Total))
	}
}

func (d *Desk) result(c *ui.Core, v *View, window ui.Rect) {
	res := &v.Result
	d.end.find(v)
	in := window.InsetXY(20, 12)
	foot := in.CutBottom(footHeight(c, v, in.W))
	in.CutBottom(8)
	d.resultHead(c, v, &in)
	if res.Fault != "" {
		st := ui.Style{Weight: ui.SemiBold}
		c.Label(ui.Label{ID: ui.Name("fault"), Rect: in.CutTop(min(c.LabelHeight(res.Fault, in.W, st), 44)), Text: res.Fault, Style: st})
	}
	if heed := v.Recorded.Heed; heed != "" {
		st := ui.Style{Size: 13, Weight: ui.SemiBold}
		c.Label(ui.Label{ID: ui.Name("heed"), Rect: in.CutTop(c.LabelHeight(heed, in.W, st)), Text: heed, Style: st})
	}
	if v.Notice != "" && v.Notice != v.Recorded.Heed {
		st := ui.Style{Size: 13, Weight: ui.SemiBold}
		c.Label(ui.Label{ID: ui.Name("notice"), Rect: in.CutTop(min(c.LabelHeight(v.Notice, in.W, st), 36)), Text: v.Notice, Style: st})
	}
	in.CutTop(4)
	var tabs [len(tabKeys)]ui.Option
	for i, key := range tabKeys {
		tabs[i].Label = words.Say(key)
	}
	row := in.CutTop(42)
	if i, ok := c.Tabs(ui.Tabs{ID: ui.Name("result tabs"), Rect: row, Label: words.Say("result.tabs"), Options: tabs[:], Selected: d.end.tab}); ok && i >= 0 {
		d.end.tab = i
	}
	in.CutTop(6)
	switch d.end.tab {
	case tabGrade:
		d.resultRows(c, v, in)
	case tabTimeline:
		d.timeline(c, v, in)
	default:
		d.debrief(c, v, in)
	}
	d.resultFoot(c, v, foot)
	switch {
	case d.Dialog == ChartDialog:
		d.chartDialog(c, v)
	case d.end.asking != askNothing:
		d.saveDialog(c, v)
	}
}

// resultHead is the verdict, and at the right what case it was and where it is kept.
func (d *Desk) resultHead(c *ui.Core, v *View, in *ui.Rect) {
	res := &v.Result
	under := words.Say("result.feedback")
	switch {
	case v.lesson() && res.Graded:
		under = words.Line("result.lesson_points", score(c, res.Total))
	case v.TimeOver:
		under = words.Say("result.time_over") + " " + under
	}
	switch {
	case v.Interrupted == 1:
		under += " " + words.Say("result.interrupted_once")
	case v.Interrupted > 1:
		under += " " + words.Say("result.interrupted", v.Interrupted)
	}
	if v.TakenOver {
		under += " " + words.Say("result.taken_over")
	}
	saved := words.Say("result.not_saved")
	if res.SavedAs != "" {
		saved = words.Line("result.saved", res.SavedAs)
	}
	which := words.Line("result.case", v.Story.Title, v.Story.Seed)
	muted, small := ui.Style{Size: 13, Col: c.Pal.Muted}, ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted, Align: ui.AlignRight}
	left := ui.R(in.X, in.Y, in.W*0.56, in.H)
	right := ui.R(left.Right()+12, in.Y, in.W-left.W-12, in.H)
	two := 2 * ui.LineHeight(ui.SizeSmall) // a longer place is read by pointing at it
	top := left.CutTop(32)
	used := 32 + c.Label(ui.Label{Rect: ui.R(left.X, left.Y, left.W, c.LabelHeight(under, left.W, muted)), Text: under, Style: muted})
	c.Text(top, verdict(c, v), ui.Style{Size: 24, Weight: ui.SemiBold})
	h := c.Label(ui.Label{ID: ui.Name("saved"), Rect: ui.R(right.X, right.Y, right.W, min(c.LabelHeight(saved, right.W, small), two)), Text: saved, Style: small})
	h += 4 + c.Label(ui.Label{ID: ui.Name("which case"), Rect: ui.R(right.X, right.Y+h+4, right.W, min(c.LabelHeight(which, right.W, small), two)), Text: which, Style: small})
	in.CutTop(max(used, h) + 2)
}

// way is one of the ways on from a result; the first opens a dialog of its own.
type way struct {
	key  string
	do   Verb
	look ui.Look
}

var ways = [...]way{{"result.save_as", Bench, ui.LookPlain}, {"result.again", Again, ui.LookPlain}, {"result.again_new", AgainNewSeed, ui.LookPlain},
	{"result.home", GoHome, ui.LookDark}, {"result.leave", Leave, ui.LookPlain}}

func (w *way) button(v *View, i int) ui.Button {
	b := ui.Button{ID: ui.Name("way").At(i), Label: words.Say(w.key), Look: w.look}
	if w.do == GoHome && v.Home != "" {
		b.Label = v.Home
	}
	return b
}

const (
	waysGap  = 8
	mostWays = 1100 // width of them all
)

// footHeight is the room of the ways on and the caution.
func footHeight(c *ui.Core, v *View, width float32) float32 {
	h, cell := float32(40), ui.R(0, 0, min(width, mostWays), 0).Col(0, len(ways), waysGap)
	for i := range ways {
		h = max(h, c.ButtonHeight(ways[i].button(v, i), cell.W))
	}
	return h + 4 + c.LabelHeight(words.Say("first.short"), width, ui.Style{Size: ui.SizeSmall})
}

// resultFoot is the ways on, and the caution.
func (d *Desk) resultFoot(c *ui.Core, v *View, foot ui.Rect) {
	caution, st := words.Say("first.short"), ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted}
	c.Label(ui.Label{Rect: foot.CutBottom(c.LabelHeight(caution, foot.W, st)), Text: caution, Style: st})
	foot.CutBottom(4)
	foot.W = min(foot.W, mostWays)
	for i := range ways {
		w, b := &ways[i], ways[i].button(v, i)
		b.Rect = foot.Col(i, len(ways), waysGap)
		if !c.Button(b) {
			continue
		}
		if i == 0 {
			d.ask(askCopy)
			continue
		}
		if w.do == Again || w.do == AgainNewSeed {
			d.end, d.board.chosen, d.board.large = newEnding(), false, false
		}
		d.do(Act{Do: w.do})
	}
}

// saveDialog asks where a copy of the attempt should go, or the debrief as a page.
func (d *Desk) saveDialog(c *ui.Core, v *View) {
	e := &d.end
	title, text, path := words.Say("result.save_title"), words.Say("result.save_text_unkept"), v.Result.SavedAs
	switch {
	case e.asking == askPage:
		title, text, path = words.Say("desk_debrief.save_title"), words.Say("desk_debrief.save_text"), pagePath(path)
	case path != "":
		text = words.Say("result.save_text", path)
	}
	if e.fresh {
		e.path, e.fresh = path, false
	}
	window := ui.Rect{W: c.Size().X, H: c.Size().Y}
	st := ui.Style{Col: c.Pal.Muted}
	w := min(640, window.W-32)
	high := c.LabelHeight(text, w-32, st)
	r := window.Place(w, high+ui.TextFieldHeight+140, 0.5, 0.4)
	c.BeginOverlay(ui.Name("dialog"), r, true)
	in := c.Panel(ui.Panel{ID: ui.Name("dialog panel"), Rect: r, Title: title})
	c.Label(ui.Label{Rect: in.CutTop(high), Text: text, Style: st})
	in.CutTop(10)
	now, entered := c.TextField(ui.TextField{ID: ui.Name("copy path"), Rect: in.CutTop(ui.TextFieldHeight), Label: words.Say("result.save_path"), Text: e.path})
	e.path = now
	row := in.CutBottom(44)
	save := c.Button(ui.Button{ID: ui.Name("copy save"), Rect: row.CutRight(200), Label: words.Say("result.save_do"), Look: ui.LookDark}) || entered
	if save && now != "" {
		do := SaveCopy
		if e.asking == askPage {
			do = SavePage
		}
		d.do(Act{Do: do, Text: now})
		e.asking = askNothing
	}
	if c.Button(ui.Button{ID: ui.Name("dialog close"), Rect: row.CutLeft(160), Label: words.Say("dialog.close"), Key: ui.Chord{Key: ui.KeyEscape}}) {
		e.asking = askNothing
	}
	c.EndOverlay()
}
