// The desk: what stays of the screens from frame to frame (what is selected, which dialog is open, what is half written)
// and the frame itself.

package bench

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

// Desk is the state of the screens. It holds nothing of the case.
type Desk struct {
	Part   sim.Part // selected
	Tab    int      // of the panel
	Dialog Dialog

	bag      int // product bag the bag panel is about
	onLine   int // the one on the product line
	bits     uint8
	tally    [sim.TallyItems]float64
	touched  [sim.TallyItems]bool
	estimate float64
	primeML  float64
	note     string
	picked   picked
	board    board
	log      logHeights
	guided   guided // by a lesson
	end      ending // of the result page
	hint     string // the situation whose hint is shown
	steps    int    // of it, so far
	looked   ui.ID  // the part of the drawing the pointer or the focus rests on
	heights  map[ui.ID]float32
	acts     []Act
}

// Tabs of the panel.
const (
	TabPart = iota
	TabTeam
	TabRecords
)

// Dialog is what lies open above the bench.
type Dialog uint8

// The dialogs.
const (
	NoDialog Dialog = iota
	LabelDialog
	HandOverDialog
	TallyDialog
	AlarmDialog
	HintDialog
	ChartDialog
)

// New makes a desk.
func New() *Desk {
	return &Desk{Part: sim.FieldPart, board: newBoard(), heights: map[ui.ID]float32{}, primeML: 200, end: newEnding()}
}

// Frame draws the screen of the view and returns what the person asked for. The slice is good until the next frame.
func (d *Desk) Frame(c *ui.Core, v *View) []Act {
	d.acts = d.acts[:0]
	window := ui.Rect{W: c.Size().X, H: c.Size().Y}
	switch {
	case window.W < LeastWidth || window.H < LeastHeight:
		c.Label(ui.Label{ID: ui.Name("too small"), Rect: window.Inset(24), Text: words.Line("window.too_small", LeastWidth, LeastHeight)})
	case v.Screen == Cautions:
		d.cautions(c, v, window)
	case v.Screen == Sheet:
		d.sheet(c, v, d.guide(c, v, window))
	case v.Screen == Graded && v.Result.Self.Asked:
		d.marking(c, v, window)
	case v.Screen == Graded:
		d.result(c, v, window)
	default:
		d.bench(c, v)
	}
	return d.acts
}

func (d *Desk) do(a Act) { d.acts = append(d.acts, a) }

// Select puts a part into the panel.
func (d *Desk) Select(p sim.Part) {
	d.Part, d.Tab = p, TabPart
	if p >= sim.FirstBag {
		d.bag = int(p - sim.FirstBag)
	}
}

// why is the reason an act is not possible now, in words, "" when it is.
func (v *View) why(a sim.Action) string {
	r := v.May(a)
	if r == "" {
		return ""
	}
	if v.Watching { // the band above the drawing says it in full
		return words.Say("why.watching_short")
	}
	return words.Say("why." + string(r))
}

// quickKeys do the main acts whatever part is selected; a button in sight that owns the key has taken it before. What is not
// possible is refused in the log.
func (d *Desk) quickKeys(c *ui.Core) {
	if d.Dialog != NoDialog {
		return
	}
	for _, k := range [...]struct {
		key rune
		act Act
	}{{'M', on(sim.Mix, sim.NoPart, 0)}, {'F', on(sim.Fill, sim.NoPart, 0)}, {'W', on(sim.Wash, sim.NoPart, 0)}, {'E', on(sim.Empty, sim.NoPart, 0)},
		{'D', on(sim.StopPump, sim.NoPart, 0)}, {'G', on(sim.GiveRate, sim.NoPart, 0)}} {
		if c.Shortcut(ui.K(k.key)) {
			d.do(k.act)
		}
	}
}

// arrows move the selection from part to part while nothing else wants the arrow keys.
func (d *Desk) arrows(c *ui.Core) {
	if d.Dialog != NoDialog {
		return
	}
	for _, k := range [...]struct {
		key ui.Key
		by  int
	}{{ui.KeyLeft, -1}, {ui.KeyUp, -1}, {ui.KeyRight, 1}, {ui.KeyDown, 1}} {
		if onPart := c.Focused() == 0 || isPartID(c.Focused()); onPart && c.Pressed(k.key) {
			d.step(k.by)
			if c.Focused() != 0 {
				c.Focus(partID(d.Part))
			}
		}
	}
}

// step selects the next or the last part in the order blood goes.
func (d *Desk) step(by int) {
	at := 0
	for i, p := range partOrder {
		if p == d.Part || p == sim.FirstBag && d.Part >= sim.FirstBag {
			at = i
		}
	}
	next := partOrder[(at+by+len(partOrder))%len(partOrder)]
	if next == sim.FirstBag {
		next = sim.Bag(d.onLine)
	}
	d.Select(next)
}

// partOrder is the order of the arrow keys and of the drawing's stops.
var partOrder = [...]sim.Part{sim.FieldPart, sim.AnticoagulantHook, sim.DripClamp, sim.ReservoirPart, sim.OutletClamp, sim.PumpPart,
	sim.BowlPart, sim.WashHookA, sim.WashClampA, sim.WashHookB, sim.WashClampB, sim.FirstBag, sim.SparePort, sim.WasteBag,
	sim.WasteDrain, sim.PatientPart}

var idParts = ui.Name("parts")

func partID(p sim.Part) ui.ID { return idParts.At(int(min(p, sim.FirstBag))) }

func isPartID(id ui.ID) bool {
	for _, p := range partOrder {
		if partID(p) == id {
			return true
		}
	}
	return false
}
