package table

import (
	"bytes"
	"errors"
	"net/http"
	"strings"
	"testing"
	"time"
)

// Every answer carries the guards, whatever it is an answer to.
func TestGuardsOnEveryAnswer(t *testing.T) {
	d := newDesk(t, Config{})
	for _, c := range []struct {
		method, path string
		body         string
		set          func(*http.Request)
		code         int
	}{
		{"GET", "/", "", nil, 200},
		{"GET", "/web/main.js", "", nil, 200},
		{"GET", "/web/", "", nil, 404},
		{"GET", "/web/../guard.go", "", nil, 404},
		{"GET", "/web/nothing.js", "", nil, 404},
		{"GET", "/nowhere", "", nil, 404},
		{"GET", "/api/open", "", nil, 200},
		{"GET", "/api/open?job=none.toml", "", nil, 404},
		{"GET", "/api/work", "", nil, 405},
		{"DELETE", "/api/open", "", nil, 405},
		{"POST", "/api/work", "{}", nil, 200},
		{"POST", "/api/work", "{", nil, 400},
		{"POST", "/api/work", `[]`, nil, 400},
		{"POST", "/api/work", `{"job": 3}`, nil, 400},
		{"POST", "/api/page", "{}", nil, 422},
		{"POST", "/api/compare", "{}", nil, 400},
		{"POST", "/api/file", "{}", nil, 422},
		{"POST", "/api/save", "{}", nil, 400},
		{"GET", "/", "", func(r *http.Request) { r.Host = "evil.example" }, 421},
		{"GET", "/api/open", "", func(r *http.Request) { r.Header.Set("Sec-Fetch-Site", "cross-site") }, 403},
		{"GET", "/api/open", "", func(r *http.Request) { r.Header.Set("Sec-Fetch-Site", "same-site") }, 403},
		{"POST", "/api/work", "{}", func(r *http.Request) { r.Header.Set("Content-Type", "application/json; charset=utf-8") }, 200},
		{"POST", "/api/work", strings.Repeat(" ", 2<<20), nil, 413},
	} {
		a := d.send(c.method, c.path, []byte(c.body), c.set)
		if a.status != c.code {
			t.Errorf("%s %s %.20q: %d, want %d", c.method, c.path, c.body, a.status, c.code)
		}
		for name, want := range map[string]string{"Content-Security-Policy": "default-src 'none'; script-src 'self'; style-src 'self';", "X-Content-Type-Options": "nosniff",
			"Referrer-Policy": "no-referrer", "Cross-Origin-Opener-Policy": "same-origin", "Cross-Origin-Resource-Policy": "same-origin"} {
			if got := a.header.Get(name); !strings.HasPrefix(got, want) {
				t.Errorf("%s %s: %s is %q", c.method, c.path, name, got)
			}
		}
		csp := a.header.Get("Content-Security-Policy")
		if strings.Contains(csp, "unsafe") || !strings.Contains(csp, "frame-ancestors 'none'") || strings.Contains(csp, "http:") {
			t.Errorf("policy %q", csp)
		}
		if a.header.Get("Access-Control-Allow-Origin") != "" {
			t.Errorf("%s %s: open to other pages", c.method, c.path)
		}
		if a.status >= 400 && strings.HasPrefix(c.path, "/api/") && a.status != 405 {
			var e struct{ Error struct{ Text string } }
			if d.read(a, &e); e.Error.Text == "" || strings.Contains(e.Error.Text, "\n") {
				t.Errorf("%s %s: says %q", c.method, c.path, e.Error.Text)
			}
		}
	}
}

// More than may be worked on and wait is turned away at once; those that wait
// get their turn, and a call that fails badly takes nobody with it.
func TestLimits(t *testing.T) {
	limits := defaultLimits()
	limits.AtOnce, limits.Queue = 1, 1
	d := newDesk(t, Config{Limits: limits})
	hold, held := make(chan bool), make(chan bool, 8)
	d.srv.mux.Handle("POST /api/hold", d.srv.api(func(*http.Request, *body) (any, error) {
		held <- true
		<-hold
		return m{}, nil
	}))
	d.srv.mux.Handle("POST /api/fall", d.srv.api(func(*http.Request, *body) (any, error) { panic("it falls") }))
	codes := make(chan int, 2)
	for range 2 {
		go func() { codes <- d.post("/api/hold", m{}, nil) }()
	}
	<-held
	for len(d.srv.queue) < 2 { // until the second waits
		time.Sleep(time.Millisecond)
	}
	if code := d.post("/api/work", m{}, nil); code != http.StatusServiceUnavailable {
		t.Errorf("one too many: %d", code)
	}
	close(hold)
	for range 2 {
		if code := <-codes; code != http.StatusOK {
			t.Errorf("one that waited: %d", code)
		}
	}
	if code := d.post("/api/fall", m{}, nil); code != http.StatusInternalServerError {
		t.Errorf("a fall: %d", code)
	}
	if code := d.post("/api/work", m{"job": demoJob}, nil); code != http.StatusOK {
		t.Errorf("afterwards: %d", code)
	}
}

// A call that takes too long is answered so, and keeps its turn until its work
// ends.
func TestWorkIsBounded(t *testing.T) {
	limits := defaultLimits()
	limits.Work, limits.AtOnce, limits.Queue = 20*time.Millisecond, 1, 0
	d := newDesk(t, Config{Limits: limits})
	hold := make(chan bool)
	d.srv.mux.Handle("POST /api/hold", d.srv.api(func(r *http.Request, _ *body) (any, error) {
		<-r.Context().Done()
		<-hold
		return m{}, nil
	}))
	if code := d.post("/api/hold", m{}, nil); code != http.StatusServiceUnavailable {
		t.Errorf("too long: %d", code)
	}
	if code := d.post("/api/work", m{}, nil); code != http.StatusServiceUnavailable {
		t.Errorf("its turn was given away: %d", code)
	}
	close(hold)
	for len(d.srv.slots) > 0 {
		time.Sleep(time.Millisecond)
	}
}

// Two variants are set side by side as the compare command does, with the
// drawings of both; one that is wrong is told of by its side.
func TestCompare(t *testing.T) {
	d := newDesk(t, Config{})
	b := swapped(t, demoJob, `saw       = "2 1/2"`, `saw       = "2"`)
	one := m{"job": demoJob, "prices": demoPrices}
	var got struct {
		A, B string
		Rows []struct{ Group, Name, A, B string }
		Only []struct{ ID, A, B string } `json:"findings_that_differ"`

		DrawingsA []kindDrawings `json:"drawings_a"`
		DrawingsB []kindDrawings `json:"drawings_b"`
		ErrorA    *jobError      `json:"error_a"`
		ErrorB    *jobError      `json:"error_b"`
	}
	if code := d.post("/api/compare", m{"a": one, "b": m{"job": b, "prices": demoPrices}}, &got); code != http.StatusOK {
		t.Fatal(code)
	}
	if len(got.Rows) < 10 || len(got.DrawingsA) != 1 || len(got.DrawingsB) != 1 || got.DrawingsA[0].Section == got.DrawingsB[0].Section {
		t.Errorf("%d rows, %d and %d drawings", len(got.Rows), len(got.DrawingsA), len(got.DrawingsB))
	}
	found := false
	for _, f := range got.Only {
		found = found || f.ID == "outlet.saw-pipe" && f.A == "ok" && f.B == "stop"
	}
	if !found {
		t.Errorf("the saw's stop is not among %v", got.Only)
	}
	got.ErrorA, got.ErrorB = nil, nil
	d.post("/api/compare", m{"a": one, "b": m{"job": "name =", "prices": ""}}, &got)
	if got.ErrorA != nil || got.ErrorB == nil {
		t.Errorf("%v, %v", got.ErrorA, got.ErrorB)
	}
}

// A page past the last is the last; template sheets show their part of the
// template through a window.
func TestPages(t *testing.T) {
	d := newDesk(t, Config{})
	ask := func(n int) (p shownPage, code int) {
		code = d.post("/api/page", m{"job": demoJob, "prices": demoPrices, "page": n}, &p)
		return p, code
	}
	last, code := ask(100000)
	if code != http.StatusOK || last.Page != last.Pages || len(last.Index) != last.Pages || !strings.Contains(last.SVG, `overflow="hidden"`) {
		t.Errorf("%d: page %d of %d", code, last.Page, last.Pages)
	}
	if strings.Count(last.SVG, "<svg") != 2 || strings.Count(last.SVG, "</svg>") != 2 {
		t.Error("the window is not one drawing in another")
	}
	if _, code := ask(0); code != http.StatusBadRequest {
		t.Errorf("page 0: %d", code)
	}
	first, _ := ask(1)
	if first.Title == "" || first.Title == last.Title {
		t.Errorf("titles %q and %q", first.Title, last.Title)
	}
}

// An error that is no refusal is told in one line.
func TestErrorsAreOneLine(t *testing.T) {
	if got := wrong(errors.New("list.csv:7: price: \"x\" is no\nprice; hint: digits"), nil); got.Line != 7 || strings.Contains(got.Text, "\n") || got.Hint != "digits" {
		t.Errorf("%+v", got)
	}
	if !bytes.Contains(jsonOf(t, wrong(errors.New("x"), nil)), []byte(`"text":"x"`)) {
		t.Error("no text")
	}
}
