package ledger

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"
)

// A learning record store for tests: a program of npm, on loopback only, in a folder that is thrown away. It keeps everything in
// memory, so that one that was stopped has forgotten all.

// loopback makes a program of Node listen on this machine alone.
const loopback = `const net = require('net');
const listen = net.Server.prototype.listen;
net.Server.prototype.listen = function (port, ...rest) { return listen.call(this, port, '127.0.0.1', ...rest); };
`

// storeFolder is where the store was installed, once for all tests; TestMain throws it away.
var storeFolder string

var installed = sync.OnceValue(func() error {
	folder, err := os.MkdirTemp("", "rouleau-store-")
	if err != nil {
		return err
	}
	storeFolder = folder
	c := exec.Command("npm", "install", "--no-package-lock", "--no-save", "--no-audit", "--no-fund", "--ignore-scripts", "--loglevel=error", "xapi-statements@5.0.1")
	c.Dir = folder
	if out, err := c.CombinedOutput(); err != nil {
		return fmt.Errorf("the record store could not be installed with npm, which cmd/test.sh brings along: %w\n%s", err, out)
	}
	return os.WriteFile(filepath.Join(folder, "loopback.js"), []byte(loopback), 0o600)
})

// store is a record store that runs.
type store struct {
	url  string // of the standard's resources
	stop func()
}

// freePort is a port on which nothing listens.
func freePort(t *testing.T) int {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	return l.Addr().(*net.TCPAddr).Port
}

// startStore starts a store that has forgotten everything. Where node or npm are not installed the test fails.
func startStore(t *testing.T, port int) *store {
	t.Helper()
	if err := installed(); err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(t.Context())
	c := exec.CommandContext(ctx, "node", "-r", filepath.Join(storeFolder, "loopback.js"), filepath.Join("dist", "server.js"))
	c.Dir = filepath.Join(storeFolder, "node_modules", "xapi-statements")
	c.Env = append(os.Environ(), fmt.Sprint("EXPRESS_PORT=", port), "AUTH_REPO=test", "EVENTS_REPO=test", "MODELS_REPO=memory", "STORAGE_REPO=memory",
		"EXPRESS_MORGAN_DIRECTORY="+filepath.Join(storeFolder, "log"), "FS_LOCAL_STORAGE_DIR="+filepath.Join(storeFolder, "storage"))
	var said strings.Builder
	c.Stdout, c.Stderr = &said, &said
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	s := &store{url: fmt.Sprintf("http://127.0.0.1:%d/xAPI", port)}
	s.stop = sync.OnceFunc(func() {
		cancel()
		_ = c.Wait()
	})
	t.Cleanup(s.stop)
	for until := time.Now().Add(time.Minute); time.Now().Before(until); time.Sleep(50 * time.Millisecond) {
		if line, err := net.Dial("tcp", fmt.Sprintf("127.0.0.1:%d", port)); err == nil {
			line.Close()
			return s
		}
	}
	s.stop()
	t.Fatalf("the record store does not answer:\n%s", said.String())
	return nil
}

// ask asks the store for statements, or gives it some.
func (s *store) ask(t *testing.T, method, query, body string) (int, []byte) {
	t.Helper()
	r, err := http.NewRequest(method, s.url+"/statements"+query, strings.NewReader(body))
	if err != nil {
		t.Fatal(err)
	}
	r.SetBasicAuth("any", "one")
	r.Header.Set("X-Experience-API-Version", "1.0.3")
	r.Header.Set("Content-Type", "application/json")
	got, err := http.DefaultClient.Do(r)
	if err != nil {
		t.Fatal(err)
	}
	defer got.Body.Close()
	data, err := io.ReadAll(got.Body)
	if err != nil {
		t.Fatal(err)
	}
	return got.StatusCode, data
}

// held are the statements that the store holds and gives out, by id; void ones are not among them.
func (s *store) held(t *testing.T) map[string]string {
	t.Helper()
	code, data := s.ask(t, http.MethodGet, "?limit=500&ascending=true", "")
	var got struct {
		Statements []struct {
			ID   string
			Verb struct{ ID string }
		}
	}
	if err := json.Unmarshal(data, &got); err != nil || code != http.StatusOK {
		t.Fatalf("%d %s %v", code, data, err)
	}
	all := map[string]string{}
	for _, st := range got.Statements {
		all[st.ID] = st.Verb.ID[strings.LastIndex(st.Verb.ID, "/")+1:]
	}
	return all
}
