// A virtual display with software rendering, and what a program on it takes of memory.

package main

import (
	"fmt"
	"os"
	"os/exec"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"time"
)

type display struct {
	name string
	x    *exec.Cmd
}

// startDisplay starts a display on a free number that the server finds by itself.
func startDisplay(width, height int) (*display, error) {
	read, write, err := os.Pipe()
	if err != nil {
		return nil, err
	}
	d := &display{x: exec.Command("Xvfb", "-displayfd", "3", "-screen", "0", fmt.Sprintf("%dx%dx24", width, height), "-nolisten", "tcp")}
	d.x.ExtraFiles = []*os.File{write}
	if err := d.x.Start(); err != nil {
		return nil, err
	}
	write.Close()
	number := make([]byte, 16)
	n, err := read.Read(number)
	if err != nil {
		return nil, fmt.Errorf("the virtual display did not start: %w", err)
	}
	d.name = ":" + strings.TrimSpace(string(number[:n]))
	return d, nil
}

func (d *display) end() {
	d.x.Process.Signal(syscall.SIGTERM) // a kill would leave its socket and lock behind
	d.x.Wait()
}

// command is a program on the display.
func (d *display) command(dir, program string, args ...string) *exec.Cmd {
	c := exec.Command(program, args...)
	c.Env = append(os.Environ(), "DISPLAY="+d.name, "LIBGL_ALWAYS_SOFTWARE=1")
	c.Dir = dir
	return c
}

// memory is what a program took of it, in MB, as its system counts: at the last look, and the most.
type memory struct{ last, most float64 }

// look asks the system, in the way that both Linux and others of its kind know.
func (m *memory) look(pid int) {
	text, err := exec.Command("ps", "-o", "rss=", "-p", strconv.Itoa(pid)).Output()
	if err != nil {
		return // it has just ended
	}
	if kB, err := strconv.ParseFloat(strings.TrimSpace(string(text)), 64); err == nil && kB > 0 {
		m.last = kB * 1024 / 1e6
		m.most = max(m.most, m.last)
	}
}

func middle(all []time.Duration) time.Duration {
	slices.Sort(all)
	return all[len(all)/2]
}
