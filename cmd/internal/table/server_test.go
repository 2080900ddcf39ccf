package table

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"silowright/cmd/internal/demo"
	"silowright/cmd/internal/pack"
	"silowright/cmd/internal/plan"
)

// call posts to the table as its own page does.
func ask(t testing.TB, url, what string, body any, out any, change ...func(*http.Request)) int {
	t.Helper()
	data, err := json.Marshal(body)
	if err != nil {
		t.Fatal(err)
	}
	r, err := http.NewRequest("POST", url+"api/"+what, bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	r.Header.Set("Content-Type", "application/json")
	r.Header.Set("Origin", strings.TrimSuffix(url, "/"))
	r.Header.Set("Sec-Fetch-Site", "same-origin")
	for _, c := range change {
		c(r)
	}
	res, err := http.DefaultClient.Do(r)
	if err != nil {
		t.Fatal(err)
	}
	defer res.Body.Close()
	text, err := io.ReadAll(res.Body)
	if err != nil {
		t.Fatal(err)
	}
	if res.Header.Get("Content-Security-Policy") == "" || res.Header.Get("X-Content-Type-Options") != "nosniff" {
		t.Errorf("%s: an answer without its guards: %v", what, res.Header)
	}
	switch out := out.(type) {
	case nil:
	case *[]byte:
		*out = text
	default:
		if err := json.Unmarshal(text, out); err != nil {
			t.Fatalf("%s: %v in %.200s", what, err, text)
		}
	}
	return res.StatusCode
}

type texts struct {
	Path   string `json:"path,omitempty"`
	Job    string `json:"job"`
	Prices string `json:"prices"`
}

var demoTexts = texts{Job: string(demo.Job), Prices: string(demo.Prices)}

type workAsk struct {
	texts
	Edits []edit   `json:"edits"`
	Want  []string `json:"want"`
}

// seen is an answer as the page reads it.
type seen struct {
	Job               string
	Error, PriceError *jobError
	Tally             string
	Fields            []json.RawMessage
	Findings          []struct {
		ID, Drum, Level, Says, Field string
		Fixes                        bool
	}
	Drawings    []kindDrawings
	Wall, Water []json.RawMessage
	Costs       json.RawMessage
}

// The demo worked out: findings beside fields, drawings, costs and water, the
// same findings as the command's.
func TestWork(t *testing.T) {
	url := serve(t, t.TempDir(), "")
	var a seen
	if code := ask(t, url, "work", workAsk{demoTexts, nil, []string{"draw", "cost", "water"}}, &a); code != 200 || a.Error != nil || a.PriceError != nil {
		t.Fatalf("%d, %+v, %+v", code, a.Error, a.PriceError)
	}
	p, err := plan.Demo()
	if err != nil {
		t.Fatal(err)
	}
	if a.Tally != p.Tally() || len(a.Findings) != len(p.Findings) || a.Costs == nil || len(a.Water) == 0 || len(a.Drawings) != 1 || len(a.Wall) == 0 {
		t.Errorf("%s, %d findings, %v, %d walls", a.Tally, len(a.Findings), a.Costs, len(a.Wall))
	}
	beside := 0
	for _, f := range a.Findings {
		if f.Field != "" {
			beside++
		}
	}
	if beside < len(a.Findings)/2 {
		t.Errorf("only %d of %d findings stand beside a field", beside, len(a.Findings))
	}
}

// An edit changes its key alone, comments stay, and what is wrong is told with
// its field while the text is kept.
func TestWorkEdits(t *testing.T) {
	url := serve(t, t.TempDir(), "")
	var a seen
	ask(t, url, "work", workAsk{demoTexts, []edit{{"outlet.saw", "2 3/8"}}, nil}, &a)
	if want := strings.Replace(demoTexts.Job, `saw       = "2 1/2"`, `saw       = "2 3/8"`, 1); a.Job != want || a.Error != nil {
		t.Errorf("%v\n%s", a.Error, a.Job)
	}
	a = seen{}
	ask(t, url, "work", workAsk{demoTexts, []edit{{"outlet.saw", "a lot"}}, []string{"draw"}}, &a)
	if a.Error == nil || a.Error.Field != "outlet.saw" || !strings.Contains(a.Error.Text, "is not a length") || !strings.Contains(a.Job, `"a lot"`) || a.Drawings != nil || len(a.Fields) == 0 {
		t.Errorf("%+v", a.Error)
	}
}

// A change that clears a finding is offered in the trade's words, and does.
func TestFixes(t *testing.T) {
	url := serve(t, t.TempDir(), "")
	var a seen
	ask(t, url, "work", workAsk{demoTexts, nil, nil}, &a)
	offered := 0
	for _, f := range a.Findings {
		if !f.Fixes {
			continue
		}
		var got struct {
			Fixes []struct{ Key, Value, Label string }
		}
		ask(t, url, "fixes", map[string]any{"job": demoTexts.Job, "prices": demoTexts.Prices, "id": f.ID, "drum": f.Drum}, &got)
		for _, x := range got.Fixes {
			offered++
			var b seen
			ask(t, url, "work", workAsk{demoTexts, []edit{{x.Key, x.Value}}, nil}, &b)
			if b.Error != nil {
				t.Fatalf("%s: %s: %v", f.ID, x.Label, b.Error.Text)
			}
			for _, g := range b.Findings {
				if g.ID == f.ID && g.Drum == f.Drum && (g.Level == f.Level || g.Level == "stop") {
					t.Errorf("%s: %s leaves it: %s", f.ID, x.Label, g.Says)
				}
			}
		}
	}
	if offered == 0 {
		t.Error("no change is offered for any caution of the demo")
	}
}

// Files are the pack's own, byte for byte, and pages its pages.
func TestFilesAreThePacks(t *testing.T) {
	url := serve(t, t.TempDir(), "")
	p, err := plan.Demo()
	if err != nil {
		t.Fatal(err)
	}
	made, err := pack.Make(p, pack.DefaultOptions(p.Job.Units))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range made.Files {
		var got []byte
		if code := ask(t, url, "file", map[string]any{"job": demoTexts.Job, "prices": demoTexts.Prices, "name": f.Name}, &got); code != 200 || !bytes.Equal(got, f.Data) {
			t.Errorf("%s: %d, differs from the pack's", f.Name, code)
		}
	}
	var page shownPage
	if code := ask(t, url, "page", map[string]any{"job": demoTexts.Job, "prices": demoTexts.Prices, "page": 1}, &page); code != 200 || page.Pages < 40 || !strings.Contains(page.SVG, "<svg") {
		t.Errorf("%d, %d pages", code, page.Pages)
	}
	if code := ask(t, url, "file", map[string]any{"job": demoTexts.Job, "prices": demoTexts.Prices, "name": "../secret"}, nil); code != 404 {
		t.Errorf("a file outside the pack: %d", code)
	}
}

// What a user types is text everywhere.
func TestTextStaysText(t *testing.T) {
	url := serve(t, t.TempDir(), "")
	evil := strings.Replace(demoTexts.Job, `"Tidewrack Cove nursery"`, `"<script>alert(1)</script> ]]> & '"`, 1)
	evil = strings.Replace(evil, `"Cove"`, `"<b>&'"`, 1)
	var a seen
	ask(t, url, "work", workAsk{texts{Job: evil, Prices: demoTexts.Prices}, nil, []string{"draw"}}, &a)
	if a.Error != nil {
		t.Fatal(a.Error.Text)
	}
	for _, d := range a.Drawings {
		for _, svg := range []string{d.Section, d.Lattice} {
			if strings.Contains(svg, "<script") || strings.Contains(svg, "<b>") {
				t.Errorf("markup in a drawing: %.200s", svg)
			}
		}
	}
	var page shownPage
	ask(t, url, "page", map[string]any{"job": evil, "prices": demoTexts.Prices, "page": 1}, &page)
	if page.SVG == "" || strings.Contains(page.SVG, "<script") {
		t.Errorf("%.200s", page.SVG)
	}
}

// Whatever does not come from the page is turned away, and the server lives on.
func TestTurnedAway(t *testing.T) {
	dir := t.TempDir()
	outside := filepath.Join(filepath.Dir(dir), "outside.toml")
	if err := os.WriteFile(outside, demo.Job, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(outside, filepath.Join(dir, "link.toml")); err != nil {
		t.Fatal(err)
	}
	url := serve(t, dir, "")
	body := workAsk{demoTexts, nil, nil}
	for _, c := range []struct {
		reason string
		change func(*http.Request)
		code   int
	}{
		{"a foreign host", func(r *http.Request) { r.Host = "evil.example" }, http.StatusMisdirectedRequest},
		{"a foreign origin", func(r *http.Request) { r.Header.Set("Origin", "http://evil.example") }, http.StatusForbidden},
		{"no origin", func(r *http.Request) { r.Header.Del("Origin") }, http.StatusForbidden},
		{"an origin of null", func(r *http.Request) { r.Header.Set("Origin", "null") }, http.StatusForbidden},
		{"another site", func(r *http.Request) { r.Header.Set("Sec-Fetch-Site", "cross-site") }, http.StatusForbidden},
		{"a form", func(r *http.Request) { r.Header.Set("Content-Type", "text/plain") }, http.StatusUnsupportedMediaType},
	} {
		if code := ask(t, url, "work", body, nil, c.change); code != c.code {
			t.Errorf("%s: %d, want %d", c.reason, code, c.code)
		}
	}
	for _, path := range []string{"../outside.toml", "/etc/passwd", "link.toml", "a\x00.toml", `..\outside.toml`, "", "x.txt", "sub/../../outside.toml"} {
		code := ask(t, url, "save", map[string]any{"path": path, "job": demoTexts.Job, "prices": demoTexts.Prices, "revision": ""}, nil)
		if code < 400 {
			t.Errorf("saved as %q: %d", path, code)
		}
		if path == "" { // opens the demo
			continue
		}
		r, err := http.Get(url + "api/open?job=" + strings.NewReplacer("\x00", "%00", `\`, "%5C").Replace(path))
		if err != nil {
			t.Fatal(err)
		}
		r.Body.Close()
		if r.StatusCode < 400 {
			t.Errorf("opened %q: %d", path, r.StatusCode)
		}
	}
	if got, err := os.ReadFile(outside); err != nil || !bytes.Equal(got, demo.Job) {
		t.Error("a file outside the folder was changed")
	}

	// 100 MB, said beforehand and not.
	for _, length := range []int64{100 << 20, -1} {
		r, _ := http.NewRequest("POST", url+"api/work", io.LimitReader(zeros{}, 100<<20))
		r.ContentLength = length
		r.Header.Set("Content-Type", "application/json")
		r.Header.Set("Origin", strings.TrimSuffix(url, "/"))
		if res, err := http.DefaultClient.Do(r); err == nil {
			res.Body.Close()
			if res.StatusCode != http.StatusRequestEntityTooLarge {
				t.Errorf("100 MB (%d): %d", length, res.StatusCode)
			}
		}
	}
	if code := ask(t, url, "work", body, nil); code != 200 {
		t.Errorf("afterwards: %d", code)
	}
}

type zeros struct{}

func (zeros) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = ' '
	}
	return len(p), nil
}

// One who sends a byte now and then is cut off; others are served meanwhile.
func TestSlowSender(t *testing.T) {
	limits := defaultLimits()
	limits.Read = 400 * time.Millisecond
	tb, err := Start(Config{Dir: t.TempDir(), Limits: limits}, Listen{})
	if err != nil {
		t.Fatal(err)
	}
	ctx := t.Context()
	go func() { _ = tb.Serve(ctx) }()
	host := strings.TrimSuffix(strings.TrimPrefix(tb.URL, "http://"), "/")
	_, port, _ := strings.Cut(host, ":")
	c, err := net.Dial("tcp", "127.0.0.1:"+port)
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close()
	fmt.Fprintf(c, "POST /api/work HTTP/1.1\r\nHost: %s\r\nOrigin: http://%s\r\nContent-Type: application/json\r\nContent-Length: 1000\r\n\r\n", host, host)
	cut := make(chan bool)
	go func() {
		for range 100 {
			if _, err := c.Write([]byte(" ")); err != nil {
				break
			}
			time.Sleep(50 * time.Millisecond)
		}
		close(cut)
	}()
	if code := ask(t, "http://"+host+"/", "work", workAsk{demoTexts, nil, nil}, nil); code != 200 {
		t.Errorf("beside a slow sender: %d", code)
	}
	_ = c.SetReadDeadline(time.Now().Add(20 * time.Second)) // a hung server, not a measure of speed
	if _, err := io.ReadAll(c); err != nil && !strings.Contains(err.Error(), "reset") {
		t.Errorf("the slow sender was not cut off: %v", err)
	}
	<-cut
}

// Fifty at once, each with its own job, without an error.
func TestFifty(t *testing.T) {
	url := serve(t, t.TempDir(), "")
	var all sync.WaitGroup
	for i := range 50 {
		all.Go(func() {
			for k := range 4 {
				var a seen
				saw := fmt.Sprintf("2 %d/64", 30+(i+k)%8)
				if code := ask(t, url, "work", workAsk{demoTexts, []edit{{"outlet.saw", saw}}, []string{"draw"}}, &a); code != 200 || a.Error != nil || len(a.Drawings) != 1 {
					t.Errorf("client %d: %d, %+v", i, code, a.Error)
				}
			}
		})
	}
	all.Wait()
}

// BenchmarkRedraw is one change: the text edited, the silo solved with its
// water, and drawn; held against the same text answered without anything drawn.
func BenchmarkRedraw(b *testing.B) {
	url := serve(b, b.TempDir(), "")
	i := 0
	lap := func(want ...string) time.Duration {
		i++
		begin := time.Now()
		ask(b, url, "work", workAsk{demoTexts, []edit{{"outlet.below_rim", fmt.Sprintf("%d/64", 400+i%64)}}, want}, nil)
		return time.Since(begin)
	}
	var drawn, plain time.Duration
	for b.Loop() {
		drawn += lap("draw")
		b.StopTimer()
		plain += lap()
		b.StartTimer()
	}
	b.ReportMetric(float64(drawn)/float64(plain), "x-undrawn")
}
