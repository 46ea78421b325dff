package preview

import (
	"math"
	"strconv"
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/page"
	"rouleau/scenarios/yamlread"
	"rouleau/scoring"
)

// This file holds what stands in the file itself: the case sheet, the right answers to it, the bench, phases, what varies with
// the seed, cautions and sources.

// sheet is the case sheet as the trainee reads it.
func (p *preview) sheet() page.Block {
	s, patient := &p.sc.Story, &p.c.Patient
	b := page.Block{Head: words.Say("preview.sheet_head"), Text: []string{s.Background}}
	add := func(name string, lines ...string) {
		if len(lines) == 0 {
			lines = []string{words.Say("sheet.none")}
		}
		b.Pairs = append(b.Pairs, page.Pair{Name: name, Lines: lines})
	}
	add(words.Say("sheet.operation"), s.Operation)
	add(words.Say("sheet.patient"), words.Say("sheet.patient_row", p.sc.Patient.Sex, patient.WeightKg, patient.BloodVolumeML/1000))
	add(words.Say("sheet.day"), p.sc.Day.String())
	add(words.Say("sheet.loss"), words.Say("sheet.about_ml", math.Round(s.ExpectedLossML)))
	add(words.Say("sheet.history"), s.History...)
	add(words.Say("sheet.consent"), s.Consent)
	add(words.Say("sheet.refusals"), s.Refusals...)
	add(words.Say("sheet.contraindications"), s.Contraindications...)
	add(words.Say("sheet.allergies"), s.Allergies...)
	if len(s.LocalPolicy) > 0 {
		add(words.Say("sheet.local_policy"), s.LocalPolicy...)
	}
	return b
}

// answers are the right answers, what the case is for, and how the bench stands.
func (p *preview) answers() page.Block {
	r := &p.sc.Right
	b := page.Block{Head: words.Say("preview.right_head")}
	add := func(name string, lines ...string) {
		if len(lines) > 0 && strings.Join(lines, "") != "" {
			b.Pairs = append(b.Pairs, page.Pair{Name: name, Lines: lines})
		}
	}
	add(words.Say("preview.decision"), words.Say("decision."+r.Decision), r.Why)
	if len(r.Anticoagulants) > 0 {
		add(words.Say("preview.anticoagulant"), either(r.Anticoagulants, "solution."), r.AnticoagulantWhy)
	}
	if len(r.Bowls) > 0 {
		add(words.Say("course.bowl"), either(r.Bowls, "bowl."), r.BowlWhy)
	}
	var objectives []string
	for _, o := range p.sc.Objectives {
		objectives = append(objectives, o.Text)
	}
	add(words.Say("preview.objectives"), objectives...)
	var packs []string
	for _, pack := range p.c.Packs {
		key := "preview.pack"
		if pack.Expired {
			key = "preview.pack_expired"
		}
		packs = append(packs, words.Say(key, words.Say("solution."+pack.Solution.String()), pack.VolumeML, pack.Expiry))
	}
	add(words.Say("preview.packs"), packs...)
	add(words.Say("preview.faults"), p.benchFaults()...)
	return b
}

// either joins what is right into one line.
func either(names []string, area string) string {
	var all []string
	for _, n := range names {
		all = append(all, words.Say(area+n))
	}
	return strings.Join(all, " "+words.Say("preview.or")+" ")
}

// benchFaults is what is wrong on the bench at the start.
func (p *preview) benchFaults() (lines []string) {
	bench := &p.sc.Bench
	for _, part := range bench.OpenClamps {
		lines = append(lines, words.Say("preview.open", words.Say("part."+part)))
	}
	for _, part := range bench.LooseLines {
		lines = append(lines, words.Say("preview.loose", words.Say("part."+part)))
	}
	if bench.VacuumUnplugged {
		lines = append(lines, words.Say("preview.no_vacuum"))
	}
	return lines
}

// phases is the table of the phases, as this seed has drawn them.
func (p *preview) phases() page.Block {
	t := &page.Table{Head: []string{words.Say("preview.number"), words.Say("course.phase"), words.Say("preview.starts"), words.Say("preview.bleeding"),
		words.Say("preview.irrigation"), words.Say("preview.irrigant"), words.Say("preview.body_fluid"), words.Say("preview.swabs"), words.Say("preview.drapes")},
		Right: []bool{0: true, 3: true, 4: true, 6: true, 7: true, 8: true}, Share: []int{4, 28, 9, 9, 10, 12, 12, 8, 8}}
	for i := range p.c.Phases {
		ph := &p.c.Phases[i]
		fluid := ""
		if ph.IrrigationMLMin > 0 {
			fluid = words.Say("solution." + ph.Irrigation.String())
		}
		t.Add(strconv.Itoa(i+1), ph.Name, at(ph.StartTick), scoring.Show(ph.BleedMLMin), scoring.Show(ph.IrrigationMLMin), fluid,
			scoring.Show(ph.BodyFluidMLMin), scoring.Show(ph.SwabShare), scoring.Show(ph.DrapeShare))
	}
	return page.Block{Head: words.Say("preview.phases_head"), Table: t, Sheet: true}
}

// varies is the table of what the seed draws.
func (p *preview) varies() page.Block {
	seeds := make([]uint64, draws)
	for i := range seeds {
		seeds[i] = uint64(i + 1)
	}
	t := &page.Table{Head: []string{words.Say("preview.where"), words.Say("preview.quantity"), words.Say("preview.unit"), words.Say("preview.drawn"),
		words.Say("preview.allowed"), words.Say("preview.spread")}, Share: []int{20, 38, 8, 11, 11, 12}}
	for _, v := range p.sc.Varies(seeds) {
		t.Add(p.where(v.Path), v.Doc, v.Unit, span(v.Least, v.Most), span(v.Spread.Low(), v.Spread.High()), spread(v.Spread))
	}
	b := page.Block{Head: words.Say("preview.varies_head"), Text: []string{words.Say("preview.varies", draws)}, Table: t}
	if len(t.Rows) == 0 {
		b.Text, b.Table = []string{words.Say("preview.varies_not")}, nil
	}
	return b
}

func span(from, to float64) string {
	return words.Say("preview.from_to", scoring.Show(from), scoring.Show(to))
}

// spread names the kind of a spread.
func spread(q yamlread.Quantity) string {
	switch q.Spread {
	case yamlread.Normal:
		return words.Say("preview.normal", scoring.Show(q.Mean), scoring.Show(q.SD))
	case yamlread.Choice:
		return words.Say("preview.choice", len(q.Choices))
	}
	return words.Say("preview.uniform")
}

// where says to what a quantity belongs, by the name or number it has elsewhere on the page.
func (p *preview) where(path string) string {
	list, rest, found := strings.Cut(path, "[")
	if !found {
		top, _, _ := strings.Cut(path, ".")
		return plain(top)
	}
	number, key, _ := strings.Cut(rest, "].")
	i, err := strconv.Atoi(number)
	switch {
	case err == nil && list == "phases" && i < len(p.sc.Phases):
		name := p.sc.Phases[i].Name
		if _, agent, found := strings.Cut(key, "."); found {
			return words.Say("course.of", name, p.label(agent))
		}
		return name
	case err == nil && list == "contaminants" && i < len(p.sc.Contaminants):
		return p.sc.Contaminants[i].Label
	case err == nil && list == "events":
		return words.Say("preview.event", i+1)
	}
	return path
}

// label is what people call a contaminant.
func (p *preview) label(name string) string {
	for _, c := range p.sc.Contaminants {
		if c.Name == name {
			return c.Label
		}
	}
	return name
}

// closing are the cautions of the case and its sources.
func (p *preview) closing() page.Block {
	b := page.Block{Head: words.Say("preview.closing_head"), List: append([]string{}, p.sc.Cautions...)}
	if len(p.sc.Sources) > 0 {
		b.Pairs = []page.Pair{{Name: words.Say("preview.sources"), Lines: p.sc.Sources}}
	}
	return b
}
