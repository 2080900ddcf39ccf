package table

import (
	"bytes"
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"silowright/cmd/internal/demo"
)

// desk is a server for one test, called as its page would.
type desk struct {
	t   testing.TB
	srv *server
	web *httptest.Server
	dir string
}

// newDesk serves a folder of its own.
func newDesk(t testing.TB, cfg Config) *desk {
	t.Helper()
	d := &desk{t: t, dir: cfg.Dir}
	if d.dir == "" {
		d.dir = t.TempDir()
		cfg.Dir = d.dir
	}
	d.web = httptest.NewUnstartedServer(nil)
	cfg.Hosts = []string{d.web.Listener.Addr().String()}
	var err error
	if d.srv, err = newServer(cfg); err != nil {
		t.Fatal(err)
	}
	d.web.Config.Handler = d.srv.handler()
	d.web.Config.ReadHeaderTimeout = 10 * time.Second
	d.web.Start()
	t.Cleanup(func() { d.web.Close(); _ = d.srv.close() })
	return d
}

// answered is an answer read whole.
type answered struct {
	status int
	header http.Header
	data   []byte
}

// send makes a call; set changes the request before it goes.
func (d *desk) send(method, path string, body []byte, set func(*http.Request)) answered {
	d.t.Helper()
	r, err := http.NewRequest(method, d.web.URL+path, bytes.NewReader(body))
	if err != nil {
		d.t.Fatal(err)
	}
	if method == http.MethodPost {
		r.Header.Set("Content-Type", "application/json")
		r.Header.Set("Origin", d.web.URL)
		r.Header.Set("Sec-Fetch-Site", "same-origin")
	}
	if set != nil {
		set(r)
	}
	resp, err := d.web.Client().Do(r)
	if err != nil {
		d.t.Fatalf("%s %s: %v", method, path, err)
	}
	defer resp.Body.Close()
	data, err := io.ReadAll(resp.Body)
	if err != nil {
		d.t.Fatalf("%s %s: %v", method, path, err)
	}
	return answered{resp.StatusCode, resp.Header, data}
}

// m is a JSON object.
type m = map[string]any

// post calls the API and reads the answer into out, which may be nil.
func (d *desk) post(path string, body m, out any) int {
	d.t.Helper()
	data, err := json.Marshal(body)
	if err != nil {
		d.t.Fatal(err)
	}
	a := d.send(http.MethodPost, path, data, nil)
	d.read(a, out)
	return a.status
}

func (d *desk) get(path string, out any) int {
	d.t.Helper()
	a := d.send(http.MethodGet, path, nil, nil)
	d.read(a, out)
	return a.status
}

func (d *desk) read(a answered, out any) {
	d.t.Helper()
	if out == nil {
		return
	}
	if err := json.Unmarshal(a.data, out); err != nil {
		d.t.Fatalf("%d: %v: %.300s", a.status, err, a.data)
	}
}

// work works a job out.
func (d *desk) work(text, prices string, edits []edit, want ...string) answer {
	d.t.Helper()
	var out answer
	if code := d.post("/api/work", m{"job": text, "prices": prices, "edits": edits, "want": want}, &out); code != http.StatusOK {
		d.t.Fatalf("work: %d", code)
	}
	return out
}

// put writes a file into the folder.
func (d *desk) put(name, text string) {
	d.t.Helper()
	full := filepath.Join(d.dir, name)
	if err := os.MkdirAll(filepath.Dir(full), 0o777); err != nil {
		d.t.Fatal(err)
	}
	if err := os.WriteFile(full, []byte(text), 0o666); err != nil {
		d.t.Fatal(err)
	}
}

func (d *desk) file(name string) string {
	d.t.Helper()
	data, err := os.ReadFile(filepath.Join(d.dir, name))
	if err != nil {
		d.t.Fatal(err)
	}
	return string(data)
}

// The demo's two texts.
var demoJob, demoPrices = string(demo.Job), string(demo.Prices)

// with is text with old in it replaced.
func swapped(t testing.TB, text, old, new string) string {
	t.Helper()
	if !strings.Contains(text, old) {
		t.Fatalf("%q is not in the text", old)
	}
	return strings.Replace(text, old, new, 1)
}
