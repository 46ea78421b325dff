// A hand and an eye: a virtual display, a pointer, keys, and the words on the screen with their places.

package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"time"
)

// leastSeen is how much of a control must be in sight to be pressed in its middle.
const leastSeen = 34

// mostSilent is how long the hand waits for the window to say what it shows.
const mostSilent = 3 * time.Second

// mark is one thing on the screen, as the window describes it.
type mark struct {
	Kind, Label, Value, Why string
	On, Off                 bool
	Layer                   int
	Place                   [4]float64
}

type hand struct {
	display, shots, seen string
	x, window            *exec.Cmd
	done                 chan error
	said                 bytes.Buffer // by the window
	presses, keysPressed int
	shot                 int
	takes                time.Duration // that a touch lately took, until the window had answered
}

// start brings a display, opens the window on it and waits for the first picture.
func start(dir, shots, desk string, args ...string) (*hand, error) {
	h := &hand{shots: shots, seen: filepath.Join(dir, "screen.json"), done: make(chan error, 1)}
	read, write, err := os.Pipe()
	if err != nil {
		return nil, err
	}
	h.x = exec.Command("Xvfb", "-displayfd", "3", "-screen", "0", "1280x800x24", "-nolisten", "tcp")
	h.x.ExtraFiles = []*os.File{write}
	if err := h.x.Start(); err != nil {
		return nil, err
	}
	write.Close()
	number := make([]byte, 16)
	n, err := read.Read(number)
	if err != nil {
		return nil, fmt.Errorf("the virtual display did not start: %w", err)
	}
	h.display = ":" + strings.TrimSpace(string(number[:n]))
	h.window = exec.Command(desk, append(args, "--describe", h.seen)...)
	h.window.Env = append(os.Environ(), "DISPLAY="+h.display)
	h.window.Dir, h.window.Stderr = dir, &h.said
	if err := h.window.Start(); err != nil {
		return nil, err
	}
	go func() { h.done <- h.window.Wait() }()
	return h, h.await("the first picture", 30*time.Second, func() bool { return len(h.look()) > 0 })
}

func (h *hand) end() {
	h.window.Process.Kill()
	h.x.Process.Signal(syscall.SIGTERM) // a kill would leave its socket and lock behind
	h.x.Wait()
}

// closed waits for the window to have ended by itself.
func (h *hand) closed() error {
	select {
	case err := <-h.done:
		return err
	case <-time.After(30 * time.Second):
		return fmt.Errorf("the window did not close")
	}
}

func (h *hand) await(what string, most time.Duration, holds func() bool) error {
	for end := time.Now().Add(most); time.Now().Before(end); time.Sleep(80 * time.Millisecond) {
		if holds() {
			return nil
		}
	}
	return fmt.Errorf("waited in vain for %s", what)
}

// do runs one command line of xdotool, and waits until the window has said twice what it shows: the first may be of the frame
// before the input. On a busy machine that takes longer.
func (h *hand) do(args ...string) {
	c := exec.Command("xdotool", args...)
	c.Env = append(os.Environ(), "DISPLAY="+h.display)
	began := time.Now()
	c.Run() // what went wrong shows on the screen
	said := h.saidAt()
	for i, end := 0, time.Now().Add(mostSilent); i < 2 && time.Now().Before(end); time.Sleep(15 * time.Millisecond) {
		if at := h.saidAt(); at != said {
			i, said = i+1, at
		}
	}
	h.takes += (time.Since(began) - h.takes) / 8
}

// saidAt is when the window last said what it shows.
func (h *hand) saidAt() time.Time {
	if info, err := os.Stat(h.seen); err == nil {
		return info.ModTime()
	}
	return time.Time{}
}

func (h *hand) keys(names ...string) {
	for _, n := range names {
		h.keysPressed++
		h.do("key", n)
	}
}

func (h *hand) press(m mark) {
	h.presses++
	h.do(append(h.over(m), "sleep", "0.06", "mousedown", "1", "sleep", "0.06", "mouseup", "1")...)
}

func (h *hand) over(m mark) []string {
	at := func(i int) string { return strconv.Itoa(int(m.Place[i] + m.Place[i+2]/2)) }
	return []string{"mousemove", at(0), at(1)}
}

// look reads what the window says it shows.
func (h *hand) look() (all []mark) {
	text, err := os.ReadFile(h.seen)
	if err != nil || json.Unmarshal(text, &all) != nil {
		return nil
	}
	return all
}

// find gives a control by its label, in the topmost layer that has one.
func (h *hand) find(label string) (found mark, ok bool) {
	for _, m := range h.look() {
		if m.Label == label && m.Kind != "text" && m.Kind != "panel" && m.Place[3] >= leastSeen && (!ok || m.Layer > found.Layer) {
			found, ok = m, true
		}
	}
	return found, ok
}

// reach finds a control, scrolling the panel if it is not in sight.
func (h *hand) reach(label string) (mark, error) {
	if m, ok := h.find(label); ok {
		return m, nil
	}
	h.toTop()
	for range 14 {
		if m, ok := h.find(label); ok {
			return m, nil
		}
		h.do("click", "--repeat", "2", "--delay", "30", "5")
	}
	return mark{}, fmt.Errorf("there is no %q on the screen", label)
}

// toTop scrolls the panel to its upper end.
func (h *hand) toTop() {
	h.do("mousemove", "1100", "600", "click", "--repeat", "30", "--delay", "6", "4")
}

// click presses a control by its label. One that cannot be used now is an error that says why.
func (h *hand) click(label string) error {
	m, err := h.reach(label)
	if err == nil && m.Off {
		err = fmt.Errorf("%q cannot be used: %s", label, m.Why)
	}
	if err == nil {
		h.press(m)
	}
	return err
}

// keepDown holds a control that cannot be undone.
func (h *hand) keepDown(label string) error {
	m, err := h.reach(label)
	if err == nil && m.Off {
		err = fmt.Errorf("%q cannot be used: %s", label, m.Why)
	}
	if err == nil {
		h.presses++
		h.do(append(h.over(m), "sleep", "0.06", "mousedown", "1", "sleep", "1.1", "mouseup", "1")...)
	}
	return err
}

// set gives a value control an exact value with digits and Enter. A press on a slider's
// groove would move it, so the press goes to its number.
func (h *hand) set(label string, value int) error {
	m, err := h.reach(label)
	if err != nil {
		return err
	}
	if m.Kind == "slider" { // the number stands above the groove, at the right
		m.Place = [4]float64{m.Place[0] + m.Place[2] - 30, m.Place[1], 20, 20}
	}
	h.press(m)
	h.do("type", "--delay", "50", strconv.Itoa(value))
	h.keysPressed += len(strconv.Itoa(value))
	h.keys("Return")
	return nil
}

// says reports whether some words on the screen hold a text, and gives the first that does.
func (h *hand) says(text string) (string, bool) {
	for _, m := range h.look() {
		if m.Kind == "text" && strings.Contains(m.Label, text) {
			return m.Label, true
		}
	}
	return "", false
}

// reading gives the value that stands in the panel in one row with its name, as a number; a reading out of sight is scrolled to.
func (h *hand) reading(name string) float64 {
	for range 12 {
		all := h.look()
		for _, m := range all {
			if m.Kind != "text" || m.Label != name || m.Place[0] < 900 {
				continue
			}
			i := slices.IndexFunc(all, func(v mark) bool {
				return v.Kind == "text" && v.Place[0] > m.Place[0]+20 && v.Place[1] > m.Place[1]-6 && v.Place[1] < m.Place[1]+6
			})
			if i >= 0 {
				return number(all[i].Label)
			}
		}
		h.do("mousemove", "1100", "600", "click", "--repeat", "2", "--delay", "30", "5")
	}
	return 0
}

// number is the first number in a text; 0 where there is none.
func number(text string) float64 {
	i := strings.IndexAny(text, "0123456789")
	if i < 0 {
		return 0
	}
	j := i
	for j < len(text) && strings.IndexByte("0123456789.", text[j]) >= 0 {
		j++
	}
	x, _ := strconv.ParseFloat(strings.TrimRight(text[i:j], "."), 64)
	return x
}

// shown reports whether words on the screen are this text, no more and no less.
func (h *hand) shown(text string) bool {
	return slices.ContainsFunc(h.look(), func(m mark) bool { return m.Kind == "text" && m.Label == text })
}

// clockS is the clock at the upper left; -1 where there is none.
func (h *hand) clockS() int {
	for _, m := range h.look() {
		if s := seconds(m.Label); m.Kind == "text" && m.Place[0] < 40 && m.Place[1] < 40 && s >= 0 {
			return s
		}
	}
	return -1
}

// keepLast keeps what the screen showed last, as a picture and in words: for whoever mends the play.
func (h *hand) keepLast() {
	h.picture("last")
	if text, err := os.ReadFile(h.seen); err == nil && h.shots != "" {
		os.WriteFile(filepath.Join(h.shots, "last.json"), text, 0o644) // the error that is told already is the one that counts
	}
}

// picture keeps what the display shows under a name, where pictures are wanted.
func (h *hand) picture(name string) {
	if h.shots == "" {
		return
	}
	h.shot++
	time.Sleep(100 * time.Millisecond) // words are there a frame before the picture of them
	c := exec.Command("import", "-window", "root", filepath.Join(h.shots, fmt.Sprintf("%02d-%s.png", h.shot, name)))
	c.Env = append(os.Environ(), "DISPLAY="+h.display)
	c.Run()
}
