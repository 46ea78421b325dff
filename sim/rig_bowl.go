package sim

// A bowl on its own: one fill from a feed of constant composition and one wash, through the same step as in a case. It
// serves `rouleau calc` and the checks against reference values.

// BowlTrial is what is asked of the bowl.
type BowlTrial struct {
	Shape        BowlShape
	FeedHct      float64 // 0–1
	FeedProtein  float64 // g/L
	FillMLMin    float64
	StopFraction float64 // of B/V; 1 when nobody stops it
	FeedML       float64 // or after this much feed; 0 for no limit
	WashMLMin    float64
	WashML       float64
}

// BowlResult is what came of it. Fractions are shares of the cells fed.
type BowlResult struct {
	FillTimeS, FeedML, PackingAfterFill, FillLoss    float64
	PackingAfterWash, WashLoss, ProductHct, Recovery float64
	SoluteRemoval, MadeFreeHbG, WashTimeS            float64
}

const trialLimitTicks = 4 * 3600 * TicksPerSecond

// TryBowl runs a trial with steps of one tick.
func TryBowl(t BowlTrial) BowlResult {
	var r BowlResult
	b := Bowl{Kind: customBowl, custom: t.Shape}
	var fed, out Fluid
	var lysed float64
	feed := func(ml float64) Fluid {
		cells := float64(ml * t.FeedHct)
		f := Fluid{CellsML: cells, Liquid: Liquid{ML: ml - cells}}
		f.In[Protein] = t.FeedProtein * f.ML / 1000
		f.In[Tonicity] = plasmaMOsmPerL * f.ML / 1000
		f.In[Dissolved0] = f.ML // a solute at concentration 1
		fed.CellsML += f.CellsML
		fed.In[Dissolved0] += f.In[Dissolved0]
		return f
	}
	seed := feed(seedML) // the first of the feed is in before the clock of the steps begins, and counts as fed
	b.pourBack(&seed)
	r.FeedML = seedML
	step := float64(t.FillMLMin / 60 * tickS)
	ticks := 0
	for ; ticks < trialLimitTicks && b.FillFraction() < t.StopFraction; ticks++ {
		ml := step
		if t.FeedML > 0 {
			ml = min(step, t.FeedML-r.FeedML)
			if ml <= 1e-9 {
				break
			}
		}
		in := feed(ml)
		b.spin(&in, &out, flowFeed, tickS, &lysed)
		r.FeedML += ml
	}
	r.FillTimeS = 60 * share(r.FeedML, t.FillMLMin)
	r.PackingAfterFill = b.Packing
	fillLost := out.CellsML
	r.FillLoss = share(fillLost, fed.CellsML)
	topUp := Saline.Of(t.Shape.VolumeML - b.ContentsML())
	addLiquid(&b.Clear, &topUp.Liquid)
	step = float64(t.WashMLMin / 60 * tickS)
	for left := t.WashML; left > 1e-9; {
		ml := min(step, left)
		in := Saline.Of(ml)
		b.spin(&in, &out, flowWash, tickS*ml/step, &lysed)
		left -= ml
	}
	if t.WashMLMin > 0 {
		r.WashTimeS = 60 * t.WashML / t.WashMLMin
	}
	r.PackingAfterWash = b.Packing
	r.WashLoss = share(out.CellsML-fillLost, fed.CellsML)
	r.ProductHct = b.CellsML / t.Shape.VolumeML
	r.Recovery = share(b.CellsML, fed.CellsML)
	all := b.asFluid()
	r.SoluteRemoval = 1 - share(all.In[Dissolved0], fed.In[Dissolved0])
	r.MadeFreeHbG = all.In[FreeHb]
	return r
}

func share(part, whole float64) float64 {
	if whole <= 0 {
		return 0
	}
	return part / whole
}
