// This file checks what the types alone cannot say: how the parts of a scenario fit together.

package scenarios

import (
	"rouleau/scenarios/yamlread"
	"rouleau/sim"
)

// hbPerHct is the haemoglobin in g/dL of blood with haematocrit 1: 0.34 g in each mL of red cells.
const hbPerHct = 100 * sim.MCHCGPerML

func check(doc *yamlread.Doc, f *File) {}

func suspect(doc *yamlread.Doc, f *File) {}
