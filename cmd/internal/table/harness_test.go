package table

import (
	"context"
	"encoding/json"
	"fmt"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// The browser tests drive a real Chromium. Without one they are skipped, or
// fail where CI is set.

var chromium struct {
	once sync.Once
	ctx  context.Context
	stop func()
}

func TestMain(m *testing.M) {
	code := m.Run()
	if chromium.stop != nil {
		chromium.stop()
	}
	os.Exit(code)
}

// browserContext starts the one browser of the run.
func browserContext(t testing.TB) context.Context {
	t.Helper()
	if testing.Short() {
		t.Skip("a browser is not started in a short run")
	}
	program := ""
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome", "chrome"} {
		if p, err := exec.LookPath(name); err == nil {
			program = p
			break
		}
	}
	if program == "" {
		if os.Getenv("CI") != "" {
			t.Fatal("chromium is missing; .ci/run installs it")
		}
		t.Skip("chromium is not installed")
	}
	chromium.once.Do(func() {
		options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(program), chromedp.NoSandbox,
			chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true), chromedp.Flag("lang", "en-US"))
		alloc, stopAlloc := chromedp.NewExecAllocator(context.Background(), options...)
		ctx, stopTab := chromedp.NewContext(alloc)
		if err := chromedp.Do(ctx); err != nil {
			t.Errorf("the browser does not start: %v", err)
		}
		chromium.ctx, chromium.stop = ctx, func() { stopTab(); stopAlloc() }
	})
	return chromium.ctx
}

// serve serves a folder on a free port and returns its address.
func serve(t testing.TB, dir, job string) string {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	host := l.Addr().String()
	s, err := newServer(Config{Dir: dir, Job: job, Hosts: []string{host}})
	if err != nil {
		t.Fatal(err)
	}
	srv := &http.Server{Handler: s.handler(), ReadHeaderTimeout: 10 * time.Second}
	go func() { _ = srv.Serve(l) }()
	t.Cleanup(func() { _ = srv.Close(); _ = s.close() })
	return "http://" + host + "/"
}

// tab is one tab of the browser, with what the page complained of.
type tab struct {
	t    testing.TB
	ctx  context.Context
	down string // where downloads go

	mu     sync.Mutex
	errors []string
	files  map[string]bool // downloads that are whole, by their id
}

// desktop and phone are the sizes that the page is tried at.
var (
	desktop = [2]int64{1280, 900}
	phone   = [2]int64{360, 740}
)

// openTab opens a page in a tab of a browser session of its own.
func openTab(t testing.TB, url string, size [2]int64) *tab {
	t.Helper()
	return newTab(t, browserContext(t), url, size, chromedp.WithNewBrowserContext())
}

// beside opens another tab of the same session.
func (b *tab) beside(url string) *tab {
	b.t.Helper()
	return newTab(b.t, b.ctx, url, desktop)
}

func newTab(t testing.TB, parent context.Context, url string, size [2]int64, o ...chromedp.ContextOption) *tab {
	t.Helper()
	ctx, stop := chromedp.NewContext(parent, o...)
	t.Cleanup(stop)
	ctx, cancel := context.WithTimeout(ctx, 3*time.Minute) // a hung browser, not a measure of speed
	t.Cleanup(cancel)
	if err := chromedp.Do(ctx); err != nil { // opens it; a limit on this context would be one on the browser
		t.Fatal(err)
	}
	b := &tab{t: t, down: t.TempDir(), files: map[string]bool{}}
	b.ctx, stop = context.WithTimeout(ctx, 3*time.Minute) // a hung browser, not a measure of speed
	t.Cleanup(stop)
	yes := true
	for _, err := range []error{
		chromedp.Listen(b.ctx, b.hear),
		chromedp.ListenBrowser(b.ctx, b.hear),
		call(b.ctx, log.Enable, cdp.Empty{}),
		call(b.ctx, runtime.Enable, cdp.Empty{}),
		call(b.ctx, emulation.SetDeviceMetricsOverride, emulation.SetDeviceMetricsOverrideParams{Width: size[0], Height: size[1], DeviceScaleFactor: 1, Mobile: size[0] < 600}),
		call(b.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-reduced-motion", Value: "reduce"}}}),
	} {
		if err != nil {
			t.Fatal(err)
		}
	}
	if _, err := chromedp.CallBrowser(b.ctx, browser.SetDownloadBehavior, browser.SetDownloadBehaviorParams{
		Behavior: browser.SetDownloadBehaviorBehaviorAllowAndName, BrowserContextID: chromedp.FromContext(ctx).BrowserContextID,
		DownloadPath: b.down, EventsEnabled: &yes}); err != nil {
		t.Fatal(err)
	}
	b.do(chromedp.Navigate(url))
	b.ready()
	return b
}

// call sends the tab a command of the protocol.
func call[P, R any](ctx context.Context, c cdp.Command[P, R], params P) error {
	_, err := chromedp.Call(ctx, c, params)
	return err
}

// hear keeps what the page complains of, and tells of downloads.
func (b *tab) hear(ev any) {
	b.mu.Lock()
	defer b.mu.Unlock()
	switch e := ev.(type) {
	case *runtime.EventExceptionThrown:
		b.errors = append(b.errors, e.ExceptionDetails.Text)
	case *log.EventEntryAdded:
		// a refusal the page handles shows as a failed request
		if e.Entry.Level == log.EntryLevelError && e.Entry.Source != log.EntrySourceNetwork {
			b.errors = append(b.errors, e.Entry.Text)
		}
	case *runtime.EventConsoleAPICalled:
		if e.Type == runtime.ConsoleAPICalledTypeError {
			b.errors = append(b.errors, fmt.Sprint(e.Args))
		}
	case *browser.EventDownloadProgress:
		if e.State == browser.DownloadProgressStateCompleted {
			b.files[e.GUID] = true
		}
	}
}

// do runs steps and fails the test when one does.
func (b *tab) do(steps ...chromedp.Action[chromedp.Void]) {
	b.t.Helper()
	if err := chromedp.Do(b.ctx, steps...); err != nil {
		b.t.Fatalf("the browser says: %v; the page: %v", err, b.errors)
	}
}

// eval runs JavaScript in the page, waits for what it promises and reads the
// answer into out.
func (b *tab) eval(script string, out any) {
	b.t.Helper()
	text, err := chromedp.Run(b.ctx, chromedp.Evaluate[string]("(async () => JSON.stringify(await ("+script+")) ?? 'null')()", chromedp.EvalAwaitPromise))
	if err != nil {
		b.t.Fatalf("%.300s: %v; the page: %v", script, err, b.errors)
	}
	if out != nil {
		if err := json.Unmarshal([]byte(text), out); err != nil {
			b.t.Fatalf("%s: %v in %.200s", script, err, text)
		}
	}
}

// origin is where the page is from.
func (b *tab) origin() string {
	b.t.Helper()
	var s string
	b.eval("location.origin", &s)
	return s
}

// text is the words of an element.
func (b *tab) text(selector string) string {
	b.t.Helper()
	var s string
	b.eval(fmt.Sprintf("document.querySelector(%q)?.innerText ?? ''", selector), &s)
	return s
}

// value is what a field holds.
func (b *tab) value(selector string) string {
	b.t.Helper()
	var s string
	b.eval(fmt.Sprintf("document.querySelector(%q)?.value ?? ''", selector), &s)
	return s
}

// until waits for a condition written in JavaScript.
func (b *tab) until(condition string) {
	b.t.Helper()
	for range 1500 {
		// a page that is being loaded has no answer yet
		text, err := chromedp.Run(b.ctx, chromedp.Evaluate[string]("(() => { try { return String(Boolean("+condition+")) } catch { return 'false' } })()"))
		if err == nil && text == "true" {
			return
		}
		time.Sleep(20 * time.Millisecond)
	}
	b.t.Fatalf("the page never came to: %s\nwhere: %s\ntally: %s\nnote: %s\nthe page: %v", condition, b.text("#where"), b.text("#tally"), b.text("#note"), b.errors)
}

// ready waits until the page has been answered and nothing is under way.
func (b *tab) ready() {
	b.t.Helper()
	b.until("document.documentElement.dataset.redraw && !document.documentElement.hasAttribute('data-working') && !document.documentElement.hasAttribute('data-counting')")
}

// click presses the mouse on an element, brought into sight.
func (b *tab) click(selector string) {
	b.t.Helper()
	b.do(chromedp.Click(chromedp.CSS(selector)))
}

// keys types on what has the focus.
func (b *tab) keys(text string, with ...chromedp.Modifier) {
	b.t.Helper()
	b.do(chromedp.KeyEvent(text, chromedp.KeyModifiers(with...)))
}

// field is the input of a key of the job.
func field(key string) string { return fmt.Sprintf(`[data-key=%q] :is(input, select)`, key) }

// fill types a value into the field of a key, as a person does: over what
// stands in it, and on to the next.
func (b *tab) fill(key, text string) {
	b.t.Helper()
	b.eval(fmt.Sprintf("(() => { for (let d = document.querySelector(%[1]q).closest('details'); d; d = d.parentElement.closest('details')) d.open = true; const i = document.querySelector(%[1]q); i.focus(); i.select?.() })()", field(key)), nil)
	if text == "" {
		b.keys("\b")
	} else {
		b.keys(text)
	}
	b.keys("\t")
	b.ready()
}

// job is the text of the job that the page holds.
func (b *tab) job() string {
	b.t.Helper()
	var s struct{ Job string }
	b.eval("JSON.parse(sessionStorage.getItem('silowright-tab'))", &s)
	return s.Job
}

// prices is the text of the price list that the page holds.
func (b *tab) prices() string {
	b.t.Helper()
	var s struct{ Prices string }
	b.eval("JSON.parse(sessionStorage.getItem('silowright-tab'))", &s)
	return s.Prices
}

// download does what makes the browser fetch a file and returns its bytes.
func (b *tab) download(start func()) []byte {
	b.t.Helper()
	known := map[string]bool{}
	b.mu.Lock()
	for id := range b.files {
		known[id] = true
	}
	b.mu.Unlock()
	start()
	for range 3000 {
		b.mu.Lock()
		for id := range b.files {
			if !known[id] {
				data, err := os.ReadFile(filepath.Join(b.down, id))
				b.mu.Unlock()
				if err != nil {
					b.t.Fatal(err)
				}
				return data
			}
		}
		b.mu.Unlock()
		time.Sleep(20 * time.Millisecond)
	}
	b.t.Fatalf("no file came; note: %s", b.text("#note"))
	return nil
}

// calm fails the test when the page complained of anything.
func (b *tab) calm() {
	b.t.Helper()
	var odd string
	b.eval("(/\\[object |undefined|NaN/.exec(document.body.innerText) || [''])[0]", &odd)
	if odd != "" {
		b.t.Errorf("the page says %q", odd)
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	for _, e := range b.errors {
		b.t.Errorf("the page complains: %s", e)
	}
}

// picture saves what the browser shows when a folder for pictures is named.
func (b *tab) picture(name string) {
	b.t.Helper()
	dir := os.Getenv("TABLE_PICTURES")
	if dir == "" {
		return
	}
	shot, err := chromedp.Call(b.ctx, page.CaptureScreenshot, page.CaptureScreenshotParams{})
	if err != nil {
		b.t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, name+".png"), shot.Data, 0o644); err != nil {
		b.t.Fatal(err)
	}
}

// axe is the accessibility engine's script.
func axe(t testing.TB) string {
	t.Helper()
	for _, at := range []string{os.Getenv("AXE_CORE"), "node_modules/axe-core/axe.min.js"} {
		if data, err := os.ReadFile(at); at != "" && err == nil {
			return string(data)
		}
	}
	if os.Getenv("CI") != "" {
		t.Fatal("axe-core is missing; .ci/run installs it and names it by AXE_CORE")
	}
	t.Skip("axe-core is not installed: name its axe.min.js by AXE_CORE")
	return ""
}

// violations are what the engine finds wrong within a part of the page as it is.
func (b *tab) violations(script, within string) []string {
	b.t.Helper()
	b.eval("(() => {if (!window.axe) {"+script+"}; return 1 })()", nil)
	var found []struct {
		ID    string `json:"id"`
		Help  string `json:"help"`
		Nodes []struct {
			HTML string `json:"html"`
		} `json:"nodes"`
	}
	b.eval(fmt.Sprintf("axe.run(%q, {", within)+"resultTypes: ['violations']}).then((r) => r.violations.map((v) => ({id: v.id, help: v.help, nodes: v.nodes.slice(0, 3).map((n) => ({html: n.html.slice(0, 200)}))})))", &found)
	var out []string
	for _, v := range found {
		out = append(out, fmt.Sprintf("%s: %s: %v", v.ID, v.Help, v.Nodes))
	}
	return out
}
