package attempt

import "strings"

// What is wrong with a file that is meant to be an attempt.

// Fault is one thing wrong with a file.
type Fault struct {
	Place   string // such as actions[3].do; empty for the whole file
	Message string
	Nearest string // the word that was probably meant, or empty
}

// Faults are all faults of a file, in the order of the file.
type Faults struct {
	File string
	List []Fault
}

// Error gives a line for each fault.
func (fs *Faults) Error() string {
	var b strings.Builder
	for i, f := range fs.List {
		if i > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(fs.File + ": ")
		if f.Place != "" {
			b.WriteString(f.Place + ": ")
		}
		b.WriteString(f.Message)
		if f.Nearest != "" {
			b.WriteString(" (nearest: " + f.Nearest + ")")
		}
	}
	return b.String()
}

const mostFaults = 100

func (fs *Faults) add(place, message string) { fs.near(place, message, "") }

func (fs *Faults) near(place, message, nearest string) {
	if len(fs.List) < mostFaults {
		fs.List = append(fs.List, Fault{place, message, nearest})
	}
}

func (fs *Faults) err() error {
	if len(fs.List) == 0 {
		return nil
	}
	return fs
}
