//go:build linux && (amd64 || arm64 || loong64)

// The real library with devices of its own that need no hardware: one that writes what is played into a file, and none at
// all. What ALSA offers is read from its configuration when it is loaded, so each runs in a process of its own.

package system

import (
	"bytes"
	"encoding/binary"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"rouleau/cmd/rouleau-desk/sound"
	"rouleau/sim"
)

// child is set in the process that a test starts: what it is to do.
const child = "ROULEAU_TEST_SOUND"

func TestMain(m *testing.M) {
	switch os.Getenv(child) {
	case "":
		os.Exit(m.Run())
	case "open":
		_, why := openDevice()
		os.Stdout.WriteString(why)
	case "play":
		d, why := openDevice()
		if d == nil {
			os.Stdout.WriteString(why)
			return
		}
		d.play(sound.Burst(sim.MediumPriority))
		a := d.(*alsa)
		for range 500 { // until all was handed over, and time to drain
			time.Sleep(10 * time.Millisecond)
			a.mu.Lock()
			left := len(a.left)
			a.mu.Unlock()
			if left == 0 {
				break
			}
		}
		time.Sleep(300 * time.Millisecond)
		d.hush()
		time.Sleep(100 * time.Millisecond)
		a.close(a.pcm)
	}
}

// inProcess runs this test program anew, with a configuration of ALSA, and gives all it printed.
func inProcess(t *testing.T, what, configuration string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "asound.conf")
	if err := os.WriteFile(path, []byte(configuration), 0o600); err != nil {
		t.Fatal(err)
	}
	c := exec.Command(os.Args[0])
	c.Env = append(os.Environ(), child+"="+what, "ALSA_CONFIG_PATH="+path)
	out, err := c.CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	return string(out)
}

func TestNoDeviceIsToldPolitely(t *testing.T) {
	out := inProcess(t, "open", "# nothing is offered\n")
	if !strings.HasPrefix(out, "no sound device answers (") || strings.Contains(out, "\n") || strings.Contains(out, "ALSA") {
		t.Errorf("where there is no device it says %q; the library libasound.so.2 (package libasound2 or libasound2t64) must be there", out)
	}
}

func TestNoLibraryIsToldPolitely(t *testing.T) {
	if d, why := openALSA("libno-such-sound.so.2"); d != nil || !strings.Contains(why, "libno-such-sound.so.2 is not on this computer") {
		t.Errorf("without the library it says %q", why)
	}
	if d, why := openALSA("libc.so.6"); d != nil || !strings.Contains(why, "has no snd_pcm_open") {
		t.Errorf("with a library of another kind it says %q", why)
	}
}

// What reaches the library is the burst, sample by sample.
func TestSamplesReachTheDevice(t *testing.T) {
	played := filepath.Join(t.TempDir(), "played")
	out := inProcess(t, "play", `pcm.!default { type plug slave.pcm { type file slave.pcm { type null } file "`+played+`" format raw } }`)
	if out != "" {
		t.Fatalf("it says %q; the library libasound.so.2 (package libasound2 or libasound2t64) must be there", out)
	}
	got, err := os.ReadFile(played)
	if err != nil {
		t.Fatal(err)
	}
	var want bytes.Buffer
	for _, s := range sound.Burst(sim.MediumPriority) {
		_ = binary.Write(&want, binary.LittleEndian, s)
	}
	if !bytes.HasPrefix(got, want.Bytes()) {
		t.Errorf("%d bytes were played, which do not begin with the %d of the burst", len(got), want.Len())
	}
}
