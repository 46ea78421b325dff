// How a case is begun: practice or assessment and what each means, the seed, and the way to the case sheet.

package home

import (
	"strconv"
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/keep"
	"rouleau/cmd/rouleau-desk/ui"
)

const startHeight = 190

var seedFieldID = ui.Name("home seed digits")

func (h *Home) start(c *ui.Core, v *View, k *Case, r ui.Rect) {
	r.CutBottom(8)
	c.Fill(r, 10, c.Pal.Panel)
	c.Frame(r, 10, 1, c.Pal.Line)
	in := r.InsetXY(16, 12)
	left := in.CutLeft(in.W*0.52 - 12)
	in.CutLeft(24)
	h.modes(c, k, left)
	h.seeds(c, in)
	begin := in.CutBottom(46)
	if c.Button(ui.Button{ID: ui.Name("home begin"), Rect: begin, Label: words.Say("home.begin"), Look: ui.LookDark, Key: ui.K('B'), Why: h.whyNotSeed()}) {
		h.begin(c, v, k)
	}
}

func (h *Home) modes(c *ui.Core, k *Case, r ui.Rect) {
	c.Text(r.CutTop(20), words.Say("home.how"), ui.Style{Size: 13, Col: c.Pal.Muted})
	why := ""
	if k.Guided {
		h.assess, why = false, words.Say("home.lesson_is_practice")
	}
	at := 0
	if h.assess {
		at = 1
	}
	practice := words.Say("home.practice_means", least(k.Speeds), most(k.Speeds))
	if len(k.Speeds) == 0 {
		practice = words.Say("home.practice_plain")
	}
	options := [...]ui.Option{{Label: words.Say("home.practice_label"), Detail: practice},
		{Label: words.Say("home.assessment_label"), Detail: words.Say("home.assessment_means", k.AssessmentSpeed, k.LimitMin), Why: why}}
	if i, ok := c.Choice(ui.Choice{ID: ui.Name("home mode"), Rect: r, Label: words.Say("home.how"), Options: options[:], Selected: at}); ok && i >= 0 {
		h.assess = i == 1
	}
}

func least(n []int) int {
	m := 1
	for i, x := range n {
		if i == 0 || x < m {
			m = x
		}
	}
	return m
}

func most(n []int) int {
	m := 1
	for _, x := range n {
		m = max(m, x)
	}
	return m
}

func (h *Home) seeds(c *ui.Core, r ui.Rect) {
	c.Text(r.CutTop(20), words.Say("home.seed"), ui.Style{Size: 13, Col: c.Pal.Muted})
	options := [...]ui.Option{{Label: words.Say("home.seed_same")}, {Label: words.Say("home.seed_new")}, {Label: words.Say("home.seed_exact")}}
	if i, ok := c.Choice(ui.Choice{ID: ui.Name("home seeds"), Rect: r.CutTop(40), Label: words.Say("home.seed"), Options: options[:], Selected: h.seed, Row: true}); ok && i >= 0 {
		h.seed = i
	}
	r.CutTop(4)
	box := r.CutTop(40)
	if h.seed == exactSeed {
		text, _ := c.TextField(ui.TextField{ID: seedFieldID, Rect: box, Text: h.digits, Hint: words.Say("home.seed_hint"), Most: 20})
		h.digits = onlyDigits(text)
		return
	}
	says := [...]string{sameSeed: words.Say("home.seed_same_means"), newSeed: words.Say("home.seed_new_means")}
	c.Label(ui.Label{Rect: box, Text: says[h.seed], Style: ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted}})
}

func onlyDigits(s string) string {
	return strings.Map(func(r rune) rune {
		if r < '0' || r > '9' {
			return -1
		}
		return r
	}, s)
}

// whyNotSeed says what is wrong with the digits, "" when a seed is there.
func (h *Home) whyNotSeed() string {
	if h.seed != exactSeed {
		return ""
	}
	if h.digits == "" {
		return words.Say("home.seed_missing")
	}
	if _, err := strconv.ParseUint(h.digits, 10, 64); err != nil {
		return words.Say("home.seed_large")
	}
	return ""
}

// begin asks for the case; before an assessment it must be known who plays.
func (h *Home) begin(c *ui.Core, v *View, k *Case) {
	a := Act{Do: Begin, Key: k.Key, Assessment: h.assess, Seed: 1, NewSeed: h.seed == newSeed}
	if h.seed == exactSeed {
		a.Seed, _ = strconv.ParseUint(h.digits, 10, 64) // whyNotSeed has read it
	}
	if a.Assessment && keep.WhyNotWho(v.Settings.Who) != "" {
		h.show(c, whoDialog, v)
		h.pending = &a
		return
	}
	h.do(a)
}
