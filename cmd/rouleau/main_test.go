package main

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"

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
	testscript.Run(t, testscript.Params{
		Dir: filepath.Join("testdata", "script"),
		Setup: func(e *testscript.Env) error {
			e.Setenv("REFERENCE", reference)
			return nil
		},
		Condition: func(name string) (bool, error) {
			return name == "root" && os.Geteuid() == 0, nil
		},
		Cmds: map[string]func(ts *testscript.TestScript, neg bool, args []string){
			"change": change, "cut": cut, "ends": ends,
		},
		RequireExplicitExec: true,
	})
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

// change FROM TO OLD NEW copies a file with one piece of text changed, which must be there.
func change(ts *testscript.TestScript, _ bool, args []string) {
	content := []byte(ts.ReadFile(args[0]))
	changed := bytes.Replace(content, []byte(args[2]), []byte(args[3]), 1)
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
