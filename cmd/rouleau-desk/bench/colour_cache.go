// Colours that were computed are kept: some thirty are asked for in every frame, and nearly all are those of the frame before.
// What is asked for is rounded first, finer than an eye could tell, so that a liquid at rest keeps its colour to the last step
// and its frame need not be painted again.

package bench

import (
	"math"
	"sync"

	"rouleau/cmd/rouleau-desk/ui"
)

// colourKey is a liquid and its depth, rounded.
type colourKey struct {
	hct, free, protein, venous, depth uint32
}

// Steps of rounding. Those of haematocrit and free haemoglobin are shares of the value itself: in thin liquids little is seen.
const (
	stepsPerE   = 100.0 // of haematocrit and free haemoglobin: 1 %
	leastHct    = 1e-5
	leastFreeGL = 1e-3
	proteinStep = 1.0 // g/L
	venousStep  = 0.02
	depthStep   = 0.01 // cm
)

// stepped rounds by shares; least and less are nothing.
func stepped(v, least float64) uint32 {
	if v <= least {
		return 0
	}
	return 1 + uint32(math.Round(stepsPerE*math.Log(v/least)))
}

func unstepped(step uint32, least float64) float64 {
	if step == 0 {
		return 0
	}
	return least * math.Exp(float64(step-1)/stepsPerE)
}

func keyOfColour(l Liquid, depth float64) colourKey {
	return colourKey{
		hct: stepped(l.Hct, leastHct), free: stepped(l.FreeHbGL, leastFreeGL), protein: uint32(math.Round(l.ProteinGL / proteinStep)),
		venous: uint32(math.Round(l.Venous / venousStep)), depth: uint32(math.Round(depth / depthStep)),
	}
}

func (k colourKey) colour() ui.Color {
	l := Liquid{Hct: min(unstepped(k.hct, leastHct), 1), FreeHbGL: unstepped(k.free, leastFreeGL), ProteinGL: float64(k.protein) * proteinStep,
		Venous: min(float64(k.venous)*venousStep, 1)}
	return l.colour(float64(k.depth) * depthStep)
}

// kept is the newest colour of each place; a key has one place, and a newer one of the same place takes it.
var kept struct {
	sync.Mutex
	places [1024]struct {
		key colourKey
		col ui.Color
	}
}

func cachedColour(l Liquid, depth float64) ui.Color {
	k := keyOfColour(l, depth)
	h := k.hct
	for _, v := range [...]uint32{k.free, k.protein, k.venous, k.depth} {
		h = h*0x9E3779B1 ^ v
	}
	kept.Lock()
	defer kept.Unlock()
	place := &kept.places[(h*0x9E3779B1)>>22]
	if place.key != k || place.col.A == 0 {
		place.key, place.col = k, k.colour()
	}
	return place.col
}
