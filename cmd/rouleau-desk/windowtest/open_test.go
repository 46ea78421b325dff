// A scenario file of one's own, opened on the home screen and begun, with keys alone.

package windowtest

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
	"time"
)

func TestAFileIsOpenedByKeysAndBegins(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", "..", "scenarios", "library", "steady-oozing-spine.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	for old, own := range map[string]string{"id: steady-oozing-spine": "id: own-spine", "title: Steady oozing in a spine operation": "title: A spine operation of our own"} {
		if !bytes.Contains(text, []byte("\n"+old+"\n")) {
			t.Fatalf("the case of the library has no line %q", old)
		}
		text = bytes.Replace(text, []byte("\n"+old+"\n"), []byte("\n"+own+"\n"), 1)
	}
	file, words, folder := filepath.Join(t.TempDir(), "own.yaml"), filepath.Join(t.TempDir(), "screen.json"), t.TempDir()
	if err := os.WriteFile(file, text, 0o600); err != nil {
		t.Fatal(err)
	}
	w := open(t, build(t), display(t), "--folder", folder, "--describe", words)
	await := func(what string) {
		t.Helper()
		w.wait(what, func() bool {
			text, _ := os.ReadFile(words)
			return bytes.Contains(text, []byte(what))
		})
	}
	w.keys("Return") // the cautions
	await("Open a file")
	w.keys("o")
	await("Path of a file or folder")
	w.tool("xdotool", "type", "--delay", "30", file)
	w.keys("Return")
	await("Files of your own")
	await("A spine operation of our own")
	w.keys("b") // to the case sheet
	await("Your decisions")
	w.keys("Tab", "Down", "Down") // set up to process
	w.keys("b")                   // to the bench
	await("Stop pump and bowl")
	time.Sleep(1500 * time.Millisecond) // of the case
	w.cmd.Process.Kill()
	<-w.done
	r := kept(t, folder)
	sc, err := r.Scenario()
	if err != nil {
		t.Fatal(err)
	}
	if sc.ID != "own-spine" || r.Head.Seed != 1 || r.Reached < 5 {
		t.Errorf("case %q, seed %d, was kept up to tick %d", sc.ID, r.Head.Seed, r.Reached)
	}
}
