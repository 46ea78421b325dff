// The ringer joins alarms and a player, frame by frame. The device behind the player is opened only when sound is wanted.

package sound

import "time"

// Player plays samples, at Rate. It never waits and never fails: where there is no device it is silent.
type Player interface {
	Open() // begins to look for a device, anew if there was none
	Play(samples []int16)
	Hush()
	Why() string // nothing, or why nothing can be heard
}

// Ringer rings the alarms of a case. Without a player it is silent.
type Ringer struct {
	Player Player

	on    bool
	state State
	began time.Time
}

// Frame plays what is due. On is the person's setting; alarms may be nil, where none are to be heard: before and after a case,
// and while it stands still.
func (r *Ringer) Frame(on bool, alarms *Alarms, now time.Time) {
	if r.Player == nil {
		return
	}
	if r.began.IsZero() {
		r.began = now
	}
	if on && !r.on {
		r.Player.Open()
	}
	r.on = on
	if !on || alarms == nil {
		if r.state != (State{}) {
			r.state = State{}
			r.Player.Hush()
		}
		return
	}
	var order Order
	r.state, order = Next(r.state, alarms, now.Sub(r.began))
	if order.Hush {
		r.Player.Hush()
	}
	if order.Play != nil {
		r.Player.Play(order.Play)
	}
}
