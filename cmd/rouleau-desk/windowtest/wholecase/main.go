// Command wholecase plays the spine case in the real window on a virtual display, from the cautions to the grade, with
// pointer and keys and by what stands on the screen alone. It prints the grade and what the frames cost, and fails unless
// the case was passed and `rouleau replay` agrees. It takes minutes, so cmd/measure.sh runs it and the tests do not.
package main

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"syscall"
	"time"

	"rouleau/scoring/attempt"
)

const (
	mostMinutes = 20 // of wall time
	ownLine     = "look at the clamps sooner"
)

func main() {
	seed := flag.Uint64("seed", 1, "number that decides all chance of the case")
	shots := flag.String("shots", "", "folder for pictures of the stages (default: none are taken)")
	keep := flag.String("out", "", "where the attempt is kept (default: nowhere)")
	flag.Parse()
	if err := run(*seed, *shots, *keep); err != nil {
		fmt.Fprintln(os.Stderr, "wholecase:", err)
		os.Exit(1)
	}
}

func run(seed uint64, shots, keep string) error {
	dir, err := os.MkdirTemp("", "wholecase")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	desk, rouleau := filepath.Join(dir, "rouleau-desk"+dotExe()), filepath.Join(dir, "rouleau"+dotExe())
	for out, pkg := range map[string]string{desk: "rouleau/cmd/rouleau-desk", rouleau: "rouleau/cmd/rouleau"} {
		if text, err := exec.Command("go", "build", "-o", out, pkg).CombinedOutput(); err != nil {
			return fmt.Errorf("%s does not build: %v\n%s", pkg, err, text)
		}
	}
	if keep == "" {
		keep = filepath.Join(dir, "attempt.json")
	}
	h, err := start(dir, shots, desk, "--folder", filepath.Join(dir, "records"), "--out", keep, "--frames")
	if err != nil {
		return err
	}
	defer h.end()
	stopped := make(chan os.Signal, 1)
	signal.Notify(stopped, os.Interrupt, syscall.SIGTERM)
	go func() {
		<-stopped
		h.end()
		os.RemoveAll(dir)
		os.Exit(1)
	}()
	began := time.Now()
	p := player{hand: h, seed: seed, until: began.Add(mostMinutes * time.Minute)}
	if err := p.play(); err != nil {
		h.keepLast()
		return fmt.Errorf("at %s: %w\n%s", clockText(h.clockS()), err, h.said.String())
	}
	if err := h.closed(); err != nil {
		return err
	}
	fmt.Printf("played by hand in %.0f s: %d presses, %d keys\n%s", time.Since(began).Seconds(), h.presses, h.keysPressed, h.said.String())
	return report(rouleau, keep)
}

// report prints the grade and plays the attempt again.
func report(rouleau, path string) error {
	a, err := attempt.Load(path)
	if err != nil {
		return err
	}
	fmt.Printf("%.1f of 100, passed: %v\n", a.Grade.Points, a.Grade.Passed)
	for _, c := range a.Grade.Criteria {
		if c.Points < c.Of {
			fmt.Printf("  %.1f of %.0f  %s: %s\n", c.Points, c.Of, c.Meaning, c.Reason)
		}
	}
	for _, k := range a.Grade.Critical {
		fmt.Printf("  not made good by points: %s\n", k.Reason)
	}
	text, err := exec.Command(rouleau, "replay", path).CombinedOutput()
	fmt.Print(string(text))
	if err != nil {
		return fmt.Errorf("the replay does not agree: %w", err)
	}
	if !a.Grade.Passed {
		return fmt.Errorf("the case was not passed")
	}
	if a.Self == nil || a.Self.Otherwise != ownLine {
		return fmt.Errorf("the marks given before the verdict are not in the attempt")
	}
	return nil
}

func dotExe() string {
	if runtime.GOOS == "windows" {
		return ".exe"
	}
	return ""
}

// seconds reads a clock, h:mm:ss; -1 for anything else.
func seconds(text string) int {
	f := strings.Split(text, ":")
	if len(f) != 3 {
		return -1
	}
	sum := 0
	for _, x := range f {
		n, err := strconv.Atoi(x)
		if err != nil {
			return -1
		}
		sum = 60*sum + n
	}
	return sum
}

func clockText(s int) string { return fmt.Sprintf("%d:%02d:%02d", s/3600, s/60%60, s%60) }
