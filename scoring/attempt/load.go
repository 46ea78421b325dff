package attempt

import (
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"slices"
	"strconv"
	"time"

	"rouleau/scenarios"
	"rouleau/scenarios/yamlread"
	"rouleau/sim"
)

// Reading an attempt file. Whatever the bytes are, the answer is an attempt that can be played again, or every fault.

// MaxBytes is the size over which a file is refused.
const MaxBytes = 64 << 20

// longest is more than the longest case that a scenario may ask for, 13 hours.
const longest = 14 * 3600 * sim.TicksPerSecond

// Load reads a file. The error is *Faults when the file is there and not right.
func Load(path string) (*Attempt, error) {
	data, err := readAtMost(path, MaxBytes)
	if err != nil {
		why := err
		if inner := (*fs.PathError)(nil); errors.As(err, &inner) {
			why = inner.Err
		}
		if errors.Is(err, fs.ErrNotExist) {
			return nil, absent(path)
		}
		if info, bad := os.Stat(path); bad == nil && info.IsDir() {
			return nil, folder(path)
		}
		return nil, fmt.Errorf("%s: the file cannot be read (%w): check that it is a file and that you may read it", path, why)
	}
	return Parse(path, data)
}

// absent is the path of a file that is not there.
type absent string

func (a absent) Error() string        { return string(a) + ": there is no such file" }
func (a absent) Is(target error) bool { return target == fs.ErrNotExist }

// folder is a path at which a folder stands.
type folder string

func (f folder) Error() string        { return string(f) + ": this is a folder: give the path of a file" }
func (f folder) Is(target error) bool { return target == fs.ErrInvalid }

// keys of the file, all of which must be there.
var keys = []string{"format", "model", "when", "mode", "operator", "breaks", "scenario", "seed", "ticks_per_second", "length_ticks", "ended",
	"actions", "quantities", "checkpoints", "grade", "seal"}

// known are they and what may be left out.
var known = append(slices.Clone(keys), "self")

// Parse reads an attempt from bytes; the name is what faults call the file.
func Parse(name string, data []byte) (*Attempt, error) {
	faults := &Faults{File: name}
	if len(data) > MaxBytes {
		faults.add("", fmt.Sprintf("the file is larger than %d MiB: it is no attempt", MaxBytes>>20))
		return nil, faults
	}
	top, message := object(data)
	if message != "" {
		faults.add("", message)
		return nil, faults
	}
	if !slices.ContainsFunc(keys, func(key string) bool { return top[key] != nil }) {
		faults.add("", "this is not an attempt: "+whatIs)
		return nil, faults
	}
	for _, key := range slices.Sorted(maps.Keys(top)) {
		if !slices.Contains(known, key) {
			faults.near(clipped(key), "this key is not known", yamlread.Nearest(key, known))
		}
	}
	r := &reading{top: top, faults: faults, a: &Attempt{}}
	if !r.format() {
		return nil, faults
	}
	r.head()
	sc := r.scenario()
	r.actions()
	r.checkpoints()
	r.readSelf(sc)
	if err := faults.err(); err != nil {
		return nil, err
	}
	return r.a, nil
}

// reading is a file on its way to an attempt.
type reading struct {
	top      map[string]raw
	faults   *Faults
	a        *Attempt
	measured bool // the length is known
}

// get reads the value of a key, which must be there.
func (r *reading) get(key string, into any) bool {
	data, ok := r.top[key]
	if !ok {
		r.faults.add(key, "this key is missing")
		return false
	}
	if message := strict(data, into); message != "" {
		r.faults.add(key, message)
		return false
	}
	return true
}

// format comes first: of a file in another format nothing else can be said.
func (r *reading) format() bool {
	var format int
	if !r.get("format", &format) {
		return false
	}
	if format != FormatVersion {
		r.faults.add("format", fmt.Sprintf("the file is of format %d, and this program reads format %d: use the version of the program that wrote it",
			format, FormatVersion))
	}
	return format == FormatVersion
}

func (r *reading) head() {
	a := r.a
	r.get("model", &a.Model)
	if r.get("when", &a.When) {
		if _, err := time.Parse(time.RFC3339, a.When); err != nil {
			r.faults.add("when", fmt.Sprintf("%q is not a date and time such as 2031-05-14T08:30:00Z", clipped(a.When)))
		}
	}
	if modes := []string{Practice, Assessment}; r.get("mode", &a.Mode) && !slices.Contains(modes, a.Mode) {
		r.faults.near("mode", fmt.Sprintf("%q is not known: practice or assessment", clipped(a.Mode)), yamlread.Nearest(a.Mode, modes))
	}
	r.get("operator", &a.Operator)
	if b := &a.Breaks; r.get("breaks", b) && (b.Interruptions < 0 || !(b.LetGoS >= 0)) {
		r.faults.add("breaks", "interruptions and seconds let go are counts from 0 up")
	}
	var seed string
	if r.get("seed", &seed) {
		n, err := strconv.ParseUint(seed, 10, 64)
		if err != nil || strconv.FormatUint(n, 10) != seed {
			r.faults.add("seed", fmt.Sprintf("%q is not a whole number from 0 to 18446744073709551615", clipped(seed)))
		}
		a.Seed = n
	}
	var rate int
	if r.get("ticks_per_second", &rate) && rate != sim.TicksPerSecond {
		r.faults.add("ticks_per_second", fmt.Sprintf("%d, and this model has %d: the ticks of this file mean other times", rate, sim.TicksPerSecond))
	}
	if r.measured = r.get("length_ticks", &a.LengthTicks); r.measured && (a.LengthTicks < 0 || a.LengthTicks > longest) {
		r.faults.add("length_ticks", fmt.Sprintf("%d is not from 0 to %d", a.LengthTicks, longest))
		r.measured = false
	}
	r.get("ended", &a.Ended)
	r.get("grade", &a.Grade)
	r.get("seal", &a.Seal)
}

// scenario gives the scenario, nil where it cannot be read.
func (r *reading) scenario() *scenarios.Scenario {
	s := &r.a.Scenario
	if !r.get("scenario", s) {
		return nil
	}
	sc, faults := scenarios.Parse(s.ID+".yaml", []byte(s.Text))
	if err := faults.Err(); err != nil {
		r.faults.add("scenario.text", "the scenario has faults:\n"+err.Error())
		return nil
	}
	switch {
	case sc.Hash() != s.SHA256:
		r.faults.add("scenario.sha256", fmt.Sprintf("the hash in the file is not that of its text (%s): one of the two was changed", sc.Hash()))
	case sc.ID != s.ID:
		r.faults.add("scenario.id", fmt.Sprintf("%q, and its text says %q", clipped(s.ID), sc.ID))
	case sc.Version != s.Version:
		r.faults.add("scenario.version", fmt.Sprintf("%d, and its text says %d", s.Version, sc.Version))
	}
	return sc
}

func (r *reading) checkpoints() {
	a := r.a
	if r.get("quantities", &a.Quantities) && len(a.Quantities) == 0 {
		r.faults.add("quantities", "the list is empty, so that nothing could be compared")
	}
	var rows []raw
	if !r.get("checkpoints", &rows) || !r.measured {
		return
	}
	want := checkpointTicks(a.LengthTicks)
	if len(rows) != len(want) {
		r.faults.add("checkpoints", fmt.Sprintf("there are %d, and a run of %d ticks has %d", len(rows), a.LengthTicks, len(want)))
		return
	}
	for i, row := range rows {
		place := fmt.Sprintf("checkpoints[%d]", i)
		var p Checkpoint
		if message := strict(row, &p); message != "" {
			r.faults.add(place, message)
			continue
		}
		hashed := p.Tick%hashEvery == 0 || i == len(rows)-1
		switch {
		case p.Tick != want[i]:
			r.faults.add(place+".tick", fmt.Sprintf("%d, and it should be %d", p.Tick, want[i]))
		case len(p.Values) != len(a.Quantities):
			r.faults.add(place+".values", fmt.Sprintf("%d values for %d quantities", len(p.Values), len(a.Quantities)))
		case hashed != (p.Hash != ""):
			r.faults.add(place+".hash", "a hash stands at every full minute and at the end, and nowhere else")
		case hashed && !isHash(p.Hash):
			r.faults.add(place+".hash", fmt.Sprintf("%q is not 16 hexadecimal digits", clipped(p.Hash)))
		}
		a.Checkpoints = append(a.Checkpoints, p)
	}
}

func isHash(s string) bool {
	n, err := strconv.ParseUint(s, 16, 64)
	return err == nil && fmt.Sprintf("%016x", n) == s
}
