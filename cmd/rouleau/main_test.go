package main

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"rouleau/cmd/rouleau/cli"
)

// The commands as somebody types them: each script of testdata/script is a session.

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"rouleau": func() { os.Exit(cli.Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) },
	})
}

func TestScripts(t *testing.T) {
	reference, err := filepath.Abs(filepath.Join("..", "..", "testdata", "reference"))
	if err != nil {
		t.Fatal(err)
	}
	library, err := filepath.Abs(filepath.Join("..", "..", "scenarios", "library"))
	if err != nil {
		t.Fatal(err)
	}
	short, err := filepath.Abs(filepath.Join("..", "..", "scoring", "attempt", "testdata", "short.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: filepath.Join("testdata", "script"),
		Setup: func(e *testscript.Env) error {
			e.Setenv("REFERENCE", reference)
			e.Setenv("LIBRARY", library)
			e.Setenv("SHORT", short)
			return nil
		},
		Condition: func(name string) (bool, error) {
			return name == "root" && os.Geteuid() == 0, nil
		},
		Cmds: map[string]func(ts *testscript.TestScript, neg bool, args []string){
			"change": change, "cut": cut, "ends": ends, "killed": killed, "leave": leave, "mark": mark, "put": put, "readme": fromReadme, "recordid": recordID, "selfmark": selfmark,
		},
		RequireExplicitExec: true,
	})
}

// killed FILE COMMAND... runs a command and kills it as soon as it has written the file, which must be before it ends.
func killed(ts *testscript.TestScript, _ bool, args []string) {
	file := ts.MkAbs(args[0])
	var program string
	for _, folder := range filepath.SplitList(ts.Getenv("PATH")) {
		if found, err := exec.LookPath(filepath.Join(folder, args[1])); err == nil && program == "" {
			program = found
		}
	}
	c := exec.Command(program, args[2:]...)
	c.Dir, c.Env = ts.MkAbs("."), append(os.Environ(), "PATH="+ts.Getenv("PATH"))
	ts.Check(c.Start())
	ended := make(chan error, 1)
	go func() { ended <- c.Wait() }()
	for until := time.Now().Add(time.Minute); time.Now().Before(until); time.Sleep(10 * time.Millisecond) {
		select {
		case err := <-ended:
			ts.Fatalf("%v ended by itself: %v", args[1:], err)
		default:
		}
		if _, err := os.Stat(file); err == nil {
			ts.Check(c.Process.Kill())
			<-ended
			return
		}
	}
	c.Process.Kill()
	ts.Fatalf("%s was not written within a minute", file)
}

// ends CODE COMMAND... runs a command that must end with an exit code.
func ends(ts *testscript.TestScript, _ bool, args []string) {
	err := ts.Exec(args[1], args[2:]...)
	code := 0
	if exit := (*exec.ExitError)(nil); errors.As(err, &exit) {
		code = exit.ExitCode()
	} else if err != nil {
		ts.Fatalf("%v", err)
	}
	if strconv.Itoa(code) != args[0] {
		ts.Fatalf("it ended with %d, want %s; stderr: %s", code, args[0], ts.ReadFile("stderr"))
	}
}

// change FROM TO OLD NEW copies a file with one piece of text changed, which must be there. In OLD and NEW, \n is a line end.
func change(ts *testscript.TestScript, _ bool, args []string) {
	content := []byte(ts.ReadFile(args[0]))
	changed := bytes.Replace(content, []byte(strings.ReplaceAll(args[2], `\n`, "\n")), []byte(strings.ReplaceAll(args[3], `\n`, "\n")), 1)
	if bytes.Equal(content, changed) {
		ts.Fatalf("%s does not hold %q", args[0], args[2])
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[1]), changed, 0o600))
}

// cut FROM TO copies the first half of a file.
func cut(ts *testscript.TestScript, _ bool, args []string) {
	content := ts.ReadFile(args[0])
	ts.Check(os.WriteFile(ts.MkAbs(args[1]), []byte(content[:len(content)/2]), 0o600))
}

// mark FROM TO copies a file with a byte order mark before it and CRLF at its line ends, as some editors save it.
func mark(ts *testscript.TestScript, _ bool, args []string) {
	content := "\ufeff" + strings.ReplaceAll(ts.ReadFile(args[0]), "\n", "\r\n")
	ts.Check(os.WriteFile(ts.MkAbs(args[1]), []byte(content), 0o600))
}

// readme TEXT TO writes the example of README.md that holds a text.
func fromReadme(ts *testscript.TestScript, _ bool, args []string) {
	for _, block := range readmeBlocks(ts.Check) {
		if strings.Contains(block, args[0]) {
			ts.Check(os.WriteFile(ts.MkAbs(args[1]), []byte(block), 0o600))
			return
		}
	}
	ts.Fatalf("README.md has no example that holds %q", args[0])
}

// recordid NAME keeps the number of the first record that the last command listed in a variable.
func recordID(ts *testscript.TestScript, _ bool, args []string) {
	id, _, found := strings.Cut(ts.ReadFile("stdout"), " ")
	if !found || len(id) != 8 {
		ts.Fatalf("no record was listed")
	}
	ts.Setenv(args[0], id)
}

// put TEXT FILE BEFORE puts the example of README.md that holds a text into a file, before the first line that begins so.
func put(ts *testscript.TestScript, _ bool, args []string) {
	fromReadme(ts, false, []string{args[0], "put"})
	content := "\n" + ts.ReadFile(args[1])
	before, after, found := strings.Cut(content, "\n"+args[2])
	if !found {
		ts.Fatalf("no line of %s begins with %q", args[1], args[2])
	}
	content = before + "\n" + strings.TrimRight(ts.ReadFile("put"), "\n") + "\n" + args[2] + after
	ts.Check(os.WriteFile(ts.MkAbs(args[1]), []byte(content[1:]), 0o600))
}

// readmeBlocks gives the indented examples of README.md.
func readmeBlocks(check func(error)) (blocks []string) {
	text, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
	check(err)
	inside := false
	for line := range strings.Lines(strings.ReplaceAll(string(text), "\r\n", "\n")) {
		code, indented := strings.CutPrefix(line, "    ")
		switch {
		case indented && inside:
			blocks[len(blocks)-1] += code
		case indented:
			blocks = append(blocks, code)
		}
		inside = indented
	}
	return blocks
}

// Every command that README.md shows is run by the script readme.txt, word for word.
func TestReadmeCommandsAreRun(t *testing.T) {
	run, err := os.ReadFile(filepath.Join("testdata", "script", "readme.txt"))
	if err != nil {
		t.Fatal(err)
	}
	shown := 0
	for _, block := range readmeBlocks(func(err error) {
		if err != nil {
			t.Fatal(err)
		}
	}) {
		for line := range strings.Lines(block) {
			command, _, _ := strings.Cut(line, "  ")
			if command, ours := strings.CutPrefix(strings.TrimSpace(command), "build/rouleau "); ours {
				shown++
				command = strings.ReplaceAll(command, "testdata/reference", "$REFERENCE")
				command = strings.ReplaceAll(command, "1..200", "1..2") // the same in a minute less
				if !strings.Contains(string(run), " rouleau "+command+"\n") {
					t.Errorf("README.md shows %q, and readme.txt does not run it", command)
				}
			}
		}
	}
	if shown < 8 {
		t.Errorf("only %d commands found in README.md", shown)
	}
}
