// What a piece of code took: on the wall, which counts also the time in which other programs had the processor (software
// rendering has both of two cores), and on the processor, which counts the code alone.

package costs

import "time"

// Cost is what a piece of code took. CPU is 0 on systems that do not tell.
type Cost struct{ Wall, CPU time.Duration }

// Plus adds two costs.
func (c Cost) Plus(d Cost) Cost { return Cost{c.Wall + d.Wall, c.CPU + d.CPU} }

// Stamp is the beginning of a piece of code.
type Stamp struct {
	at  time.Time
	cpu time.Duration
}

// Begin takes the time. The piece must end on the thread it began on, see [runtime.LockOSThread], for its CPU to be right.
func Begin() Stamp { return Stamp{time.Now(), threadCPU()} }

// Since is what it took from the stamp until now.
func (s Stamp) Since() Cost { return Cost{time.Since(s.at), threadCPU() - s.cpu} }
