// Command frames measures the window on a virtual display with software rendering: a recorded case shown again with all its
// charts, beside a bare window of the same engine and size on the same display. It fails where a bound is not kept. It
// takes minutes and wants a quiet machine, so cmd/measure.sh runs it and the tests do not.
package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"time"

	"rouleau/cmd/rouleau-desk/costs"
)

const (
	width, height = 1280, 800
	bareFrames    = 1500
)

func main() {
	cases := flag.Int("cases", 16, "how many cases are shown in a row to see what memory they take; 0 leaves that out")
	pace := flag.Float64("pace", 1, "how much faster than the clock the measured case goes, beside its own speed")
	flag.Parse()
	if err := run(*cases, *pace); err != nil {
		fmt.Fprintln(os.Stderr, "frames:", err)
		os.Exit(1)
	}
}

// window is what the file of a measurement holds.
type window struct {
	costs.Report
	StillFrames, StillPainted int
}

func run(cases int, pace float64) error {
	dir, err := os.MkdirTemp("", "frames")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	desk, bare, attempt := filepath.Join(dir, "rouleau-desk"+dotExe()), filepath.Join(dir, "bare"+dotExe()), filepath.Join(dir, "attempt.json")
	for out, pkg := range map[string]string{desk: "rouleau/cmd/rouleau-desk", bare: "rouleau/cmd/rouleau-desk/windowtest/bare"} {
		if text, err := exec.Command("go", "build", "-o", out, pkg).CombinedOutput(); err != nil {
			return fmt.Errorf("%s does not build: %v\n%s", pkg, err, text)
		}
	}
	if text, err := exec.Command("go", "run", "rouleau/cmd/rouleau", "run", "--operator", "steady", "--seed", "1", "--out", attempt, "steady-oozing-spine").CombinedOutput(); err != nil {
		if _, missing := os.Stat(attempt); missing != nil {
			return fmt.Errorf("no attempt could be recorded: %v\n%s", err, text)
		}
	}
	screen, err := startDisplay(width, height)
	if err != nil {
		return err
	}
	defer screen.end()

	var empty costs.Report
	out, err := screen.command(dir, bare, "-frames", strconv.Itoa(bareFrames), "-width", strconv.Itoa(width), "-height", strconv.Itoa(height)).Output()
	if err == nil {
		err = json.Unmarshal(out, &empty)
	}
	if err != nil {
		return fmt.Errorf("the bare window could not be measured: %w", err)
	}
	full, _, err := screen.measure(dir, desk, attempt, 1, pace)
	if err != nil {
		return err
	}
	first, err := screen.first(dir, desk, attempt)
	if err != nil {
		return err
	}
	r := report{bare: empty, full: full, firstS: first.Seconds(), cases: cases}
	if cases > 0 {
		// As fast as may be: what is looked for stays behind whatever the pace.
		if _, r.memory, err = screen.measure(dir, desk, attempt, cases, 1000); err != nil {
			return err
		}
	}
	return r.print()
}

// measure shows an attempt so many times and gives what the window tells, and the memory it took.
func (d *display) measure(dir, desk, attempt string, cases int, pace float64) (w window, m memory, err error) {
	file := filepath.Join(dir, "frames.json")
	os.Remove(file)
	c := d.command(dir, desk, "--folder", filepath.Join(dir, "records"), "--watch", attempt, "--frames-file", file,
		"--frames-cases", strconv.Itoa(cases), "--frames-pace", strconv.FormatFloat(pace, 'g', -1, 64))
	if err := c.Start(); err != nil {
		return w, m, err
	}
	done := make(chan error, 1)
	go func() { done <- c.Wait() }()
	for waiting := true; waiting; {
		select {
		case err = <-done:
			waiting = false
		case <-time.After(300 * time.Millisecond):
			m.look(c.Process.Pid)
		}
	}
	if err != nil {
		return w, m, fmt.Errorf("the window ended with %w", err)
	}
	text, err := os.ReadFile(file)
	if err == nil {
		err = json.Unmarshal(text, &w)
	}
	return w, m, err
}

// first gives how long it takes from the start to the first picture, the middle of five starts.
func (d *display) first(dir, desk, attempt string) (time.Duration, error) {
	var all []time.Duration
	for range 5 {
		file := filepath.Join(dir, "first.json")
		began := time.Now()
		if err := d.command(dir, desk, "--folder", filepath.Join(dir, "records"), "--watch", attempt, "--frames-file", file, "--frames-cases", "0").Run(); err != nil {
			return 0, fmt.Errorf("the window ended with %w", err)
		}
		var w window
		text, err := os.ReadFile(file)
		if err == nil {
			err = json.Unmarshal(text, &w)
		}
		if err != nil {
			return 0, err
		}
		all = append(all, w.FirstFrame.Sub(began))
	}
	return middle(all), nil
}

func dotExe() string {
	if runtime.GOOS == "windows" {
		return ".exe"
	}
	return ""
}
