package debrief

import (
	"strings"

	"rouleau/assets/words"
	"rouleau/sim"
)

// The note on what was decided.

const (
	noteWords = 3 // fewer say nothing about a decision, as the measure has it
	noteAfter = 60 * sim.TicksPerSecond
)

// findNote looks for a note that is missing, came before the last decision, or says nothing.
func findNote(f *finding) []Decision {
	decisions := f.every(does(sim.Decide))
	if len(decisions) == 0 {
		return f.decidesAndNotes()
	}
	decided := f.acts[decisions[len(decisions)-1]].Tick
	at := f.inTime(decided + noteAfter)
	note := act(at, sim.Note, sim.NoPart, 0)
	note.Text = words.Say("decision.note_text")
	d := Decision{Fault: LeftOut, Title: title("note", LeftOut, clock(at)), Tick: at, Done: -1, Edit: Edit{Add: []Add{{Act: note}}}}
	if notes := f.every(does(sim.Note)); len(notes) > 0 {
		i := notes[len(notes)-1]
		old := f.acts[i]
		d.Done = old.Tick
		switch {
		case len(strings.Fields(old.Text)) < noteWords:
			note.Tick = max(old.Tick, decided)
			d.Fault, d.Tick, d.Title, d.Edit = Wrong, note.Tick, title("note", Wrong, clock(note.Tick), old.Text), Edit{Swap: []Swap{{i, note}}}
		default:
			d.Fault, d.Title = Late, title("note", Late, clock(at), clock(old.Tick))
		}
	}
	return []Decision{d}
}

// decidesAndNotes is for one who never decided anything.
func (f *finding) decidesAndNotes() []Decision {
	right, at := f.sc.Right.RightDecision(), f.inTime(soonBefore(f.rec.firstBlood()))
	if right != sim.DoNotSalvage {
		return nil
	}
	note := act(at, sim.Note, sim.NoPart, 0)
	note.Text = words.Say("decision.note_text")
	return []Decision{{Fault: LeftOut, Title: title("note_decided", LeftOut, words.Say("decision."+right.String()), clock(at)), Tick: at, Done: -1,
		Edit: Edit{Add: []Add{{Act: act(at, sim.Decide, sim.NoPart, float64(right))}, {Act: note}}}}}
}
