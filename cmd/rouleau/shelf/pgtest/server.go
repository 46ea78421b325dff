// Package pgtest starts a server of PostgreSQL for tests: its own, on loopback, in a folder that is thrown away.
package pgtest

import (
	"database/sql"
	"fmt"
	"net"
	"os"
	"os/exec"
	"os/user"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	_ "github.com/jackc/pgx/v5/stdlib" // the driver named pgx
)

// server is the one of this run of tests.
var server struct {
	lock   sync.Mutex
	url    string
	stop   func()
	number int
}

// Run runs the tests of a package and stops the server that they may have started.
func Run(m *testing.M) int {
	defer func() {
		if server.stop != nil {
			server.stop()
		}
	}()
	return m.Run()
}

// Database makes an empty database and gives its URL. Where PostgreSQL is not installed the test fails: cmd/test.sh installs it.
func Database(t testing.TB) string {
	t.Helper()
	server.lock.Lock()
	defer server.lock.Unlock()
	if server.url == "" {
		start(t)
	}
	server.number++
	name := fmt.Sprintf("book%d", server.number)
	db, err := sql.Open("pgx", fmt.Sprintf(server.url, "postgres"))
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	if _, err := db.Exec("CREATE DATABASE " + name); err != nil {
		t.Fatal(err)
	}
	return fmt.Sprintf(server.url, name)
}

func start(t testing.TB) {
	t.Helper()
	bin := binaries(t)
	folder, err := os.MkdirTemp("", "rouleau-pg-")
	if err != nil {
		t.Fatal(err)
	}
	run := asUser(t, folder)
	port := freePort(t)
	data := filepath.Join(folder, "data")
	must(t, run(filepath.Join(bin, "initdb"), "-D", data, "-U", "rouleau", "-A", "trust", "--no-sync", "-E", "UTF8"))
	must(t, run(filepath.Join(bin, "pg_ctl"), "-D", data, "-w", "-t", "120", "-l", filepath.Join(folder, "log"), "-o",
		fmt.Sprintf("-c listen_addresses=127.0.0.1 -c port=%d -c unix_socket_directories=%s", port, folder), "start"))
	server.url = "postgres://rouleau@127.0.0.1:" + fmt.Sprint(port) + "/%s?sslmode=disable"
	server.stop = func() {
		if err := run(filepath.Join(bin, "pg_ctl"), "-D", data, "-m", "immediate", "-w", "stop").Run(); err != nil {
			fmt.Fprintln(os.Stderr, "the test server of PostgreSQL could not be stopped:", err)
		}
		os.RemoveAll(folder)
	}
}

// binaries is the folder of the newest server that is installed.
func binaries(t testing.TB) string {
	t.Helper()
	found, err := filepath.Glob("/usr/lib/postgresql/*/bin/initdb")
	if path, none := exec.LookPath("initdb"); len(found) == 0 && none == nil {
		return filepath.Dir(path)
	}
	if err != nil || len(found) == 0 {
		t.Fatal("PostgreSQL is not installed: cmd/test.sh installs it (package postgresql)")
	}
	return filepath.Dir(found[len(found)-1])
}

// asUser runs a command as somebody who is not root, because the server refuses root.
func asUser(t testing.TB, folder string) func(name string, args ...string) *exec.Cmd {
	t.Helper()
	prefix := []string{}
	if os.Getuid() == 0 {
		who, err := user.Lookup("postgres")
		if err != nil {
			t.Fatal("there is no user postgres to run the server as: install the package postgresql")
		}
		must(t, exec.Command("chown", who.Uid, folder))
		prefix = []string{"runuser", "-u", "postgres", "--"}
	}
	return func(name string, args ...string) *exec.Cmd {
		all := append(append([]string{}, prefix...), append([]string{name}, args...)...)
		c := exec.Command(all[0], all[1:]...)
		c.Dir = folder
		return c
	}
}

func freePort(t testing.TB) int {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	return l.Addr().(*net.TCPAddr).Port
}

// must runs a command. Its output goes to a file, because a server that goes on would keep a pipe open.
func must(t testing.TB, c *exec.Cmd) {
	t.Helper()
	out, err := os.CreateTemp("", "rouleau-pg-out-")
	if err != nil {
		t.Fatal(err)
	}
	defer os.Remove(out.Name())
	defer out.Close()
	c.Stdout, c.Stderr = out, out
	if err := c.Run(); err != nil {
		text, _ := os.ReadFile(out.Name())
		t.Fatalf("%s: %v\n%s", strings.Join(c.Args, " "), err, text)
	}
}
