package sim

// What a trainee can do: the verbs, and an action as it stands in a log.

// Action is one act, stamped with the tick before which it happens.
type Action struct {
	Tick  int64
	Do    Verb
	On    Part
	Value float64
	Item  uint8  // only for Reconcile: a TallyItem
	Text  string // only for notes; never read by the model
	Auto  bool   // done by an automatic step, not by a hand
}

// Verb is a kind of act.
type Verb uint8

// The verbs. The comment gives what On and Value mean.
const (
	NoVerb Verb = iota

	// deciding
	Decide              // Value: a Decision
	ChooseAnticoagulant // Value: a Solution
	ChooseBowl          // Value: a BowlKind
	OpenSet             // On: CollectionSet or ProcessingSet
	ReplaceSet          // On: a set; a fresh one instead of one that is not sterile any more or leaks

	// preparing
	Inspect    // On: any part; looks, and brings what is wrong to light
	Hang       // On: a hook, Value: index of the pack
	Unhang     // On: a hook
	Clamp      // On: a clamp; Value 0 closed, 1 open
	Connect    // On: a line; firmly
	TestVacuum //
	Prime      // Value: mL of anticoagulant run through the filter into the reservoir

	// collecting
	SetDrip   // Value: drops/min
	SetVacuum // Value: mmHg
	Route     // Value: a Destination
	Ask       // Value: a Request to the team
	Answer    // Value: the answer to the oldest open question (1 yes, 0 no)
	Mix       // gently mixes the reservoir, 15 s

	// processing
	SetFillRate   // Value: mL/min
	SetWashRate   // Value: mL/min
	SetEmptyRate  // Value: mL/min
	SetWashVolume // Value: mL
	Fill          // reservoir to bowl
	Wash          // wash fluid to bowl
	Empty         // bowl to product bag
	DrawBack      // product bag to bowl, to be processed again
	SendBack      // bowl to reservoir
	StopPump      // the bowl keeps spinning
	StopAll       // pump and bowl
	AutoFillAt    // Value: mL in the reservoir, 0 for off
	AutoStop      // Value: 1 on, 0 off
	AutoWash      // Value: 1 on, 0 off
	AutoEmpty     // Value: 1 on, 0 off
	ChangeWaste   //
	ClearLine     // pushes what is left in the lines on, and lets air out

	// bags
	NewBag    // a fresh product bag on the product line
	MixBag    // On: a bag; turns it over
	Sample    // On: a bag, the reservoir or the patient; from a mixed bag
	Label     // On: a bag, Value: LabelFields as a bit set
	ExpelAir  // On: a bag
	HandOver  // On: a bag, Value: HandoverFields as a bit set
	Identify  // On: a bag, Value: people checking (1 or 2)
	Hook      // On: a bag to the patient, Value 1 with filter, 0 without
	Unhook    // takes the bag off the patient
	GiveRate  // Value: mL/min, 0 stops
	Squeeze   // On: the bag being given; Value 1 begins, 0 ends
	Watch     // looks at the patient for a reaction
	DiscardIt // On: a bag or the reservoir

	// recording
	Declare      // Value: an Incident
	EstimateLoss // Value: mL of blood
	Note         // Text
	Reconcile    // Item: a TallyItem, Value: mL as the trainee counts it
	TakeDown     // ends collecting and processing
	EndCase      //

	// processing again
	TopUp // product bag to a part-filled bowl that is not washed yet

	// circuits
	JoinCircuit   // joins the product bag to the patient by a line filled with saline; Value 1 with filter, 0 without
	TakePumpBlood // lets the blood of a pump's circuit run into the reservoir
	verbCount
)

var verbNames = [verbCount]string{"", "decide", "choose_anticoagulant", "choose_bowl", "open_set", "replace_set", "inspect", "hang",
	"unhang", "clamp", "connect", "test_vacuum", "prime", "set_drip", "set_vacuum", "route", "ask", "answer", "mix",
	"set_fill_rate", "set_wash_rate", "set_empty_rate", "set_wash_volume", "fill", "wash", "empty", "draw_back", "send_back",
	"stop_pump", "stop_all", "auto_fill_at", "auto_stop", "auto_wash", "auto_empty", "change_waste", "clear_line", "new_bag",
	"mix_bag", "sample", "label", "expel_air", "hand_over", "identify", "hook", "unhook", "give_rate", "squeeze", "watch", "discard",
	"declare", "estimate_loss", "note", "reconcile", "take_down", "end_case", "top_up", "join_circuit",
	"take_pump_blood"}

// String is the name used in files.
func (v Verb) String() string {
	if v < verbCount {
		return verbNames[v]
	}
	return "unknown"
}

// VerbNamed finds a verb by the name used in files.
func VerbNamed(name string) (Verb, bool) { return named[Verb](verbNames[:], name) }
