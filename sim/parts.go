package sim

// The parts of the bench that an action can be about.

// Part names a thing on the bench.
type Part uint8

// The parts.
const (
	NoPart Part = iota
	AnticoagulantHook
	WashHookA
	WashHookB
	DripClamp     // clamp of the anticoagulant line
	OutletClamp   // clamp below the reservoir
	WashClampA    // clamp of the first wash line
	WashClampB    // clamp of the second wash line
	WasteDrain    // drain of the waste bag
	SparePort     // unused port of the product bag on the product line
	VacuumLine    // tube from the regulator to the reservoir
	SuctionLine   // tube from the sucker to the reservoir
	OutletLine    // tube from the reservoir to the bowl
	ProductLine   // tube from the bowl to the product bag
	WasteLine     // tube from the bowl to the waste bag
	CollectionSet // reservoir, filter and suction line, in their sterile wrapping
	ProcessingSet // bowl, tubes, product and waste bag, in their sterile wrapping
	ReservoirPart
	BowlPart
	PumpPart
	WasteBag
	PatientPart
	FieldPart
	FirstBag  // product bags: FirstBag + index
	partCount = FirstBag + Part(MaxBags)
)

var partNames = [partCount]string{"", "anticoagulant_hook", "wash_hook_a", "wash_hook_b", "drip_clamp", "outlet_clamp",
	"wash_clamp_a", "wash_clamp_b", "waste_drain", "spare_port", "vacuum_line", "suction_line", "outlet_line", "product_line",
	"waste_line", "collection_set", "processing_set", "reservoir", "bowl", "pump", "waste_bag", "patient", "field",
	"bag_1", "bag_2", "bag_3", "bag_4", "bag_5", "bag_6", "bag_7", "bag_8"}

// String is the name used in files.
func (p Part) String() string {
	if p < partCount {
		return partNames[p]
	}
	return "unknown"
}

// PartNamed finds a part by the name used in files.
func PartNamed(name string) (Part, bool) {
	if name == "" {
		return NoPart, true
	}
	return named[Part](partNames[:], name)
}

// Bag is the part of product bag i, counted from 0.
func Bag(i int) Part { return FirstBag + Part(i) }

func (p Part) bag() (int, bool) { return int(p) - int(FirstBag), p >= FirstBag && p < partCount }
func (p Part) isHook() bool     { return p >= AnticoagulantHook && p <= WashHookB }
func (p Part) isClamp() bool    { return p >= DripClamp && p <= SparePort }
func (p Part) isLine() bool     { return p >= VacuumLine && p <= WasteLine }
