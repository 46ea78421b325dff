// The window on a virtual display: a short case is played with keys, painted, saved, and played again.

package windowtest

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"image"
	_ "image/png"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"rouleau/scoring/attempt"
	"rouleau/sim"
)

const width, height = 1280, 800

// tool finds a program that the tests need, and fails where it is missing.
func tool(t *testing.T, name string) string {
	t.Helper()
	p, err := exec.LookPath(name)
	if err != nil {
		t.Fatalf("%s is needed for window tests and is not installed: sh cmd/test.sh installs it", name)
	}
	return p
}

// build builds the window once for the test.
func build(t *testing.T) string {
	t.Helper()
	out := filepath.Join(t.TempDir(), "rouleau-desk")
	if runtime.GOOS == "windows" {
		out += ".exe"
	}
	if text, err := exec.Command("go", "build", "-o", out, "rouleau/cmd/rouleau-desk").CombinedOutput(); err != nil {
		t.Fatalf("the window does not build: %v\n%s", err, text)
	}
	return out
}

// display starts a virtual display on a free number and ends it with the test.
func display(t *testing.T) string {
	t.Helper()
	read, write, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	x := exec.Command(tool(t, "Xvfb"), "-displayfd", "3", "-screen", "0", fmt.Sprintf("%dx%dx24", width, height), "-nolisten", "tcp")
	x.ExtraFiles = []*os.File{write}
	if err := x.Start(); err != nil {
		t.Fatal(err)
	}
	write.Close()
	t.Cleanup(func() {
		x.Process.Signal(syscall.SIGTERM) // a kill would leave its socket and lock behind
		x.Wait()
	})
	number := make([]byte, 16)
	n, err := read.Read(number)
	if err != nil {
		t.Fatalf("the virtual display did not start: %v", err)
	}
	return ":" + strings.TrimSpace(string(number[:n]))
}

// window is the running program on its display.
type window struct {
	t       *testing.T
	display string
	cmd     *exec.Cmd
	done    chan error
	errors  bytes.Buffer
}

func start(t *testing.T, args ...string) *window {
	t.Helper()
	return open(t, build(t), display(t), append(args, "--folder", t.TempDir())...)
}

// open runs a program that was built on a display that is there.
func open(t *testing.T, program, screen string, args ...string) *window {
	t.Helper()
	w := &window{t: t, display: screen, done: make(chan error, 1)}
	w.cmd = exec.Command(program, args...)
	w.cmd.Env = append(os.Environ(), "DISPLAY="+w.display)
	w.cmd.Dir, w.cmd.Stderr = t.TempDir(), &w.errors
	if err := w.cmd.Start(); err != nil {
		t.Fatal(err)
	}
	go func() { w.done <- w.cmd.Wait() }()
	t.Cleanup(func() {
		w.cmd.Process.Kill()
	})
	w.wait("the first picture", func() bool { return differs(w.picture(), 500) })
	return w
}

// wait waits until something holds, and fails after a while.
func (w *window) wait(what string, holds func() bool) {
	w.t.Helper()
	for end := time.Now().Add(30 * time.Second); time.Now().Before(end); time.Sleep(150 * time.Millisecond) {
		if holds() {
			return
		}
	}
	w.t.Fatalf("waited in vain for %s; the window said: %s", what, w.errors.String())
}

func (w *window) tool(name string, args ...string) []byte {
	w.t.Helper()
	ctx, stop := context.WithTimeout(context.Background(), 20*time.Second)
	defer stop()
	c := exec.CommandContext(ctx, tool(w.t, name), args...)
	c.Env = append(os.Environ(), "DISPLAY="+w.display)
	out, err := c.Output()
	if err != nil {
		w.t.Fatalf("%s %v: %v", name, args, err)
	}
	return out
}

// keys presses keys one after the other, with time for a frame between them.
func (w *window) keys(names ...string) {
	w.t.Helper()
	for _, k := range names {
		w.tool("xdotool", "key", k)
		time.Sleep(120 * time.Millisecond)
	}
}

func (w *window) click(x, y int) {
	w.tool("xdotool", "mousemove", strconv.Itoa(x), strconv.Itoa(y))
	time.Sleep(150 * time.Millisecond)
	w.tool("xdotool", "click", "1")
	time.Sleep(250 * time.Millisecond)
}

// picture is what the display shows.
func (w *window) picture() image.Image {
	w.t.Helper()
	img, _, err := image.Decode(bytes.NewReader(w.tool("import", "-window", "root", "png:-")))
	if err != nil {
		w.t.Fatal(err)
	}
	return img
}

// differs reports whether at least so many pixels are unlike the most common corner: something was painted.
func differs(img image.Image, least int) bool {
	n := 0
	b := img.Bounds()
	r0, g0, b0, _ := img.At(b.Min.X, b.Min.Y).RGBA()
	for y := b.Min.Y; y < b.Max.Y; y += 2 {
		for x := b.Min.X; x < b.Max.X; x += 2 {
			r, g, bl, _ := img.At(x, y).RGBA()
			if apart(r, r0)+apart(g, g0)+apart(bl, b0) > 24<<8 {
				n++
			}
		}
	}
	return n >= least
}

func apart(a, b uint32) uint32 { return max(a, b) - min(a, b) }

// changed counts pixels that differ by more than 8 in a channel.
func changed(a, b image.Image) int {
	n := 0
	for y := a.Bounds().Min.Y; y < a.Bounds().Max.Y; y++ {
		for x := a.Bounds().Min.X; x < a.Bounds().Max.X; x++ {
			r0, g0, b0, _ := a.At(x, y).RGBA()
			r1, g1, b1, _ := b.At(x, y).RGBA()
			if max(apart(r0, r1), apart(g0, g1), apart(b0, b1)) > 8<<8 {
				n++
			}
		}
	}
	return n
}

// A case that should not be salvaged is decided with keys alone and ends at the grade; the attempt is saved and can be
// played again.
func TestDecidedByKeysAndSaved(t *testing.T) {
	out := filepath.Join(t.TempDir(), "attempt.json")
	w := start(t, "steady-oozing-spine", "--seed", "3", "--out", out)
	w.keys("Return", "Tab", "Down", "Tab", "Tab", "Tab", "Tab", "Return", "Return")
	w.wait("the attempt to be saved", func() bool { _, err := os.Stat(out); return err == nil })
	a, err := attempt.Load(out)
	if err != nil {
		t.Fatal(err)
	}
	if a.Seed != 3 || len(a.Actions) != 2 || a.Actions[0].Do != sim.Decide || a.Actions[1].Do != sim.EndCase {
		t.Errorf("seed %d, acts %v", a.Seed, a.Actions)
	}
	report, err := attempt.Replay(a)
	if err != nil || !report.Same() {
		t.Errorf("the replay parts from what was played: %+v, %v", report, err)
	}
}

// The bench is reached with the pointer, a part is selected, time passes and the picture changes; a pause stands still.
func TestWorkedByPointer(t *testing.T) {
	words := filepath.Join(t.TempDir(), "screen.json")
	w := start(t, "steady-oozing-spine", "--out", filepath.Join(t.TempDir(), "attempt.json"), "--describe", words)
	w.keys("Return")
	time.Sleep(300 * time.Millisecond)
	sheet := w.picture()
	w.click(828, 235)  // set up to process
	w.click(1000, 745) // to the bench
	bench := w.picture()
	if n := changed(sheet, bench); n < 20000 {
		t.Errorf("only %d pixels changed from the case sheet to the bench", n)
	}
	w.click(420, 400) // the reservoir
	w.wait("the words of the screen", func() bool {
		text, _ := os.ReadFile(words)
		return json.Valid(text) && bytes.Contains(text, []byte(`"label":"Turn the reservoir gently"`)) && !bytes.Contains(text, []byte("Your decisions"))
	})
	w.click(58, 84) // pause
	still := w.picture()
	if n := changed(bench, still); n < 500 {
		t.Errorf("only %d pixels changed when a part was selected", n)
	}
	time.Sleep(1200 * time.Millisecond)
	if n := changed(still, w.picture()); n > 40 {
		t.Errorf("%d pixels changed in a pause", n)
	}
}

// A wrong case is told before a window opens.
func TestAMissingCaseIsTold(t *testing.T) {
	c := exec.Command(build(t), "no-such-case")
	c.Env = append(os.Environ(), "DISPLAY="+display(t))
	out, err := c.CombinedOutput()
	if err == nil || c.ProcessState.ExitCode() != 1 || !strings.Contains(string(out), "no such file") {
		t.Errorf("exit %d: %s", c.ProcessState.ExitCode(), out)
	}
}
