package table

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"

	"silowright/cmd/internal/output"
	"silowright/cmd/internal/pack"
	"silowright/cmd/internal/plan"
	"silowright/geometry/measure"
)

// The drum of a paper in the builder's hand; invented.
var onPaper = [][2]string{
	{"drum[0].circumference", "71 1/2"}, {"drum[0].height", "34 1/4"}, {"drum[0].wall", "3/16"},
	{"drum[0].foot_outside", "21"}, {"drum[0].foot_height", "2"}, {"drum[0].head_recess", "3/4"},
	{"drum[0].hoops[0].from", "10 1/4"}, {"drum[0].hoops[0].to", "11 3/4"}, {"drum[0].hoops[0].outside", "23 3/4"},
	{"drum[0].hoops[1].from", "22 1/2"}, {"drum[0].hoops[1].to", "24"}, {"drum[0].hoops[1].outside", "23 3/4"},
}

// From nothing to a printed pack: begin, type what the tape says, see the silo
// drawn and checked, take the pack away. It is the command's, byte for byte.
func TestFromTapeToPack(t *testing.T) {
	b := openTab(t, serve(t, t.TempDir(), ""), desktop)
	b.picture("desktop-begin")
	b.click("#banner button")
	b.until("document.querySelector('dialog[open]')")
	b.click("dialog[open] .buttons button, dialog[open] button")
	b.ready()
	if s := b.text("#still"); !strings.Contains(s, "Still to measure") {
		t.Errorf("what is to be measured: %q", s)
	}
	for _, m := range onPaper {
		b.fill(m[0], m[1])
	}
	b.until("document.querySelector('#section-drawing svg') && document.querySelector('#lattice-drawing svg') && document.querySelector('.wall svg')")
	if s := b.text("#tally"); !strings.Contains(s, "check") || strings.Contains(s, "Nothing is checked") {
		t.Errorf("the checks: %q", s)
	}
	b.picture("desktop-measured")
	p, err := plan.Text(newJob, []byte(b.job()), []byte(b.prices()))
	if err != nil {
		t.Fatal(err)
	}
	made, err := pack.Make(p, pack.DefaultOptions(p.Job.Units))
	if err != nil {
		t.Fatal(err)
	}
	b.eval("document.getElementById('print').scrollIntoView()", nil)
	b.until("document.querySelector('#page svg') || document.querySelector('#page img')")
	b.picture("desktop-print")
	got := b.download(func() {
		b.eval("[...document.querySelectorAll('#print-tools button')].find((x) => x.textContent.includes('Workbook') || x.closest('li')?.textContent.includes('Workbook')).click()", nil)
	})
	for _, f := range made.Files {
		if f.Name == "costs.xlsx" && !bytes.Equal(got, f.Data) {
			t.Errorf("the workbook taken away is not the command's: %d bytes, %d", len(got), len(f.Data))
		}
	}
	zipped := b.download(func() {
		b.eval("[...document.querySelectorAll('#print-tools button')].find((x) => (x.closest('li') || x).textContent.includes('everything')).click()", nil)
	})
	if want := packZip(t, made.Files); !bytes.Equal(zipped, want) {
		t.Errorf("the pack taken away is not the command's: %d bytes, %d", len(zipped), len(want))
	}
	b.calm()
}

// packZip is all files in one, as the table sends them.
func packZip(t *testing.T, files []output.File) []byte {
	t.Helper()
	data, err := zipped(files)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// A wrong entry is told beside its field, the drawings stay, undo takes it
// back and redo brings it again; a reload keeps everything.
func TestWrongUndoReload(t *testing.T) {
	b := openTab(t, serve(t, t.TempDir(), ""), desktop)
	before := b.value(field("outlet.below_rim"))
	b.fill("outlet.below_rim", "seven")
	if s := b.text(`[data-key="outlet.below_rim"] .wrong`); !strings.Contains(s, "not a length") {
		t.Errorf("beside the field: %q", s)
	}
	b.until("document.querySelector('#section-drawing svg')")
	b.click("#undo")
	b.ready()
	if got := b.value(field("outlet.below_rim")); got != before {
		t.Errorf("undone: %q, want %q", got, before)
	}
	b.fill("outlet.below_rim", "7 1/4")
	if s := b.text(`[data-key="outlet.below_rim"] .both`); !strings.Contains(s, "184.2 mm") {
		t.Errorf("both units: %q", s)
	}
	b.click("#undo")
	b.ready()
	b.click("#redo")
	b.ready()
	b.eval("(() => { window.before = true; setTimeout(() => location.reload(), 0); return 1 })()", nil)
	b.until("!window.before && document.readyState === 'complete'")
	b.ready()
	if got := b.value(field("outlet.below_rim")); got != "7 1/4" {
		t.Errorf("after a reload: %q", got)
	}
	b.calm()
}

// The outlet is moved by the arrow keys, with its place and clearances told.
func TestMoveByKeys(t *testing.T) {
	b := openTab(t, serve(t, t.TempDir(), ""), desktop)
	b.until("document.querySelector('[data-part=outlet]')")
	before := b.value(field("outlet.below_rim"))
	b.eval("document.querySelector('[data-part=outlet]').focus()", nil)
	b.eval("document.querySelector('[data-part=outlet]').dispatchEvent(new KeyboardEvent('keydown', {key: 'ArrowDown', bubbles: true}))", nil)
	b.ready()
	b.eval("document.getElementById('holes').scrollIntoView()", nil)
	b.until("document.documentElement.dataset.fixes")
	b.picture("desktop-holes")
	for _, step := range []string{"findings", "water", "cost"} {
		b.eval(fmt.Sprintf("document.getElementById(%q).scrollIntoView()", step), nil)
		b.ready()
		b.picture("desktop-" + step)
	}
	after := b.value(field("outlet.below_rim"))
	if after == before || after == "" {
		t.Errorf("below the rim %q, after an arrow %q", before, after)
	}
	if s := b.text("#said") + b.text(".reading"); !strings.Contains(s, "rim") {
		t.Errorf("told: %q", s)
	}
	b.calm()
}

// The outlet is dragged down the wall by the mouse: it catches on the ruler's
// steps, its place is told while it moves, and the job takes it.
func TestDragByMouse(t *testing.T) {
	b := openTab(t, serve(t, t.TempDir(), ""), desktop)
	b.until("document.querySelector('[data-part=outlet] .ring')")
	before := b.value(field("outlet.below_rim"))
	b.eval("document.querySelector('[data-part=outlet]').scrollIntoView({block: 'center', inline: 'center'})", nil)
	var at struct{ X, Y float64 }
	b.eval("(() => { const r = document.querySelector('[data-part=outlet] .ring').getBoundingClientRect(); return {x: r.x + r.width / 2, y: r.y + r.height / 2} })()", &at)
	mouse := func(kind input.DispatchMouseEventType, x, y float64, down int64) {
		p := input.DispatchMouseEventParams{Type: kind, X: x, Y: y, Buttons: down, ClickCount: 1, Button: input.MouseButtonLeft}
		if err := call(b.ctx, input.DispatchMouseEvent, p); err != nil {
			t.Fatal(err)
		}
	}
	mouse(input.DispatchMouseEventTypeMouseMoved, at.X, at.Y, 0)
	mouse(input.DispatchMouseEventTypeMousePressed, at.X, at.Y, 1)
	for i := 1; i <= 8; i++ {
		mouse(input.DispatchMouseEventTypeMouseMoved, at.X, at.Y+float64(3*i), 1)
	}
	mouse(input.DispatchMouseEventTypeMouseReleased, at.X, at.Y+24, 0)
	b.ready()
	after := b.value(field("outlet.below_rim"))
	if after == before || after == "" {
		t.Fatalf("below the rim %q, after a drag %q", before, after)
	}
	l, err := measure.ParseLength(after, measure.UnitInch)
	if _, off := l.Round(8); err != nil || off.Abs() > 0.01 {
		t.Errorf("it does not catch on eighths: %q, %v", after, err)
	}
	b.click("#undo")
	b.ready()
	if got := b.value(field("outlet.below_rim")); got != before {
		t.Errorf("one undo takes back %q, want %q", got, before)
	}
	b.calm()
}

// Without a mouse: by Tab to the field, by keys through it, to the pack.
func TestByKeysAlone(t *testing.T) {
	b := openTab(t, serve(t, t.TempDir(), ""), desktop)
	reach := func(selector string) {
		t.Helper()
		for range 700 {
			var there bool
			b.eval(fmt.Sprintf("document.activeElement?.matches(%q) ?? false", selector), &there)
			if there {
				return
			}
			b.keys("\t")
		}
		t.Fatalf("Tab never reaches %s", selector)
	}
	reach(field("outlet.below_rim"))
	var visible bool
	b.eval("document.activeElement.matches(':focus-visible')", &visible)
	if !visible {
		t.Error("the focus is not to be seen")
	}
	b.keys("7 1/4\t")
	b.ready()
	if got := b.value(field("outlet.below_rim")); got != "7 1/4" {
		t.Errorf("typed: %q", got)
	}
	reach("#print-tools li button")
	got := b.download(func() { b.keys("\r") })
	if len(got) < 100_000 {
		t.Errorf("the pack is %d bytes", len(got))
	}
	b.calm()
}

// Two variants side by side: one is set aside, the job changed, the two
// compared with their sums and drawings.
func TestCompareOnThePage(t *testing.T) {
	b := openTab(t, serve(t, t.TempDir(), ""), desktop)
	b.eval("(() => { for (let d = document.querySelector('#aside').closest('details'); d; d = d.parentElement.closest('details')) d.open = true })()", nil)
	b.click("#aside")
	b.until("document.querySelector('#compare-run')")
	b.fill("drum_silos", "10")
	b.fill("drum[0].count", "10")
	b.click("#compare-run")
	b.until("document.querySelector('#compared')")
	var drums []string
	b.eval("[...document.querySelectorAll('#compared tr')].find((r) => r.textContent.startsWith('drum silos')).innerText.split('\\t')", &drums)
	if len(drums) < 4 || drums[1] != "20" || drums[2] != "10" {
		t.Errorf("drum silos: %q", drums)
	}
	var drawn int
	b.eval("document.querySelectorAll('#compare-out figure svg').length", &drawn)
	if drawn != 2 {
		t.Errorf("%d drawings side by side", drawn)
	}
	b.calm()
}

// A price is changed in the table: the sums follow; a wrong one is told beside
// its row; undo brings the old one back.
func TestPricesOnThePage(t *testing.T) {
	b := openTab(t, serve(t, t.TempDir(), ""), desktop)
	before := b.text("#sums")
	change := func(to string) {
		b.eval("document.querySelector('#price-list').open = true", nil)
		b.click(`#prices button[aria-label^="Change stopper-12,"]`)
		b.eval("(() => { const i = [...document.querySelectorAll('.price-form label')].find((l) => l.textContent === 'Price'); const f = document.getElementById(i.htmlFor); f.focus(); f.select() })()", nil)
		b.keys(to + "\r")
		b.ready()
	}
	change("99.00")
	if !strings.Contains(b.prices(), "99.00") || b.text("#sums") == before {
		t.Errorf("the sums stay: %q", b.text("#sums"))
	}
	change("lots")
	if s := b.text("#prices .wrong-row"); !strings.Contains(s, "lots") {
		t.Errorf("beside the row: %q", s)
	}
	b.click("#undo")
	b.ready()
	b.click("#undo")
	b.ready()
	if got := b.text("#sums"); got != before || b.prices() != demoTexts.Prices {
		t.Errorf("undone: %q, want %q", got, before)
	}
	b.calm()
}

// On a phone nothing is wider than the screen; in either contrast.
func TestPhone(t *testing.T) {
	b := openTab(t, serve(t, t.TempDir(), ""), phone)
	for _, light := range []string{"plain", "sunlight"} {
		var wide struct{ Page, Screen float64 }
		b.eval("({page: document.documentElement.scrollWidth, screen: innerWidth})", &wide)
		if wide.Page > wide.Screen {
			t.Errorf("%s: the page is %v wide on a screen of %v", light, wide.Page, wide.Screen)
		}
		b.picture("phone-" + light)
		b.click("#contrast")
	}
	for _, step := range []string{"measure", "holes", "findings", "water", "cost", "print"} {
		b.eval(fmt.Sprintf("document.getElementById(%q).scrollIntoView()", step), nil)
		b.ready()
		var wide float64
		b.eval("document.documentElement.scrollWidth", &wide)
		if wide > float64(phone[0]) {
			t.Errorf("%s: the page is %v wide", step, wide)
		}
		b.picture("phone-" + step)
	}
	b.calm()
}

// Two tabs on one job: the later save asks.
func TestTwoTabs(t *testing.T) {
	dir := t.TempDir()
	url := serve(t, dir, "")
	if err := os.WriteFile(filepath.Join(dir, "job.toml"), []byte(demoTexts.Job), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "prices.csv"), []byte(demoTexts.Prices), 0o600); err != nil {
		t.Fatal(err)
	}
	one := openTab(t, url+"?job=job.toml", desktop)
	two := one.beside(url + "?job=job.toml")
	one.fill("outlet.below_rim", "6 5/8")
	one.click("#save")
	one.until("document.querySelector('#where').textContent.includes('saved') && !document.querySelector('#where').textContent.includes('changed')")
	two.fill("outlet.below_rim", "6 3/4")
	two.click("#save")
	two.until("document.querySelector('dialog[open]')")
	if s := two.text("dialog[open]"); !strings.Contains(s, "Saved elsewhere") || !strings.Contains(s, "6 5/8") {
		t.Errorf("the later tab is told: %q", s)
	}
	if got, _ := os.ReadFile(filepath.Join(dir, "job.toml")); !strings.Contains(string(got), "6 5/8") {
		t.Error("the earlier save is gone")
	}
}

// axe finds no violation on the page, on either screen, in either contrast.
func TestAxe(t *testing.T) {
	script := axe(t)
	for _, size := range [][2]int64{desktop, phone} {
		b := openTab(t, serve(t, t.TempDir(), ""), size)
		b.eval("document.querySelectorAll('details').forEach((d) => { d.open = true })", nil)
		b.until("document.querySelector('.wall svg')")
		for _, light := range []string{"plain", "sunlight"} {
			for _, v := range b.violations(script, "html") {
				t.Errorf("%v, %s: %s", size, light, v)
			}
			b.click("#contrast")
		}
	}
}

// BenchmarkChangeToRedraw is what a hand waits for: one change of a field until
// the drawing is painted, as the page measures it.
func BenchmarkChangeToRedraw(b *testing.B) {
	tab := openTab(b, serve(b, b.TempDir(), ""), desktop)
	sum, n := 0.0, 0
	for b.Loop() {
		n++
		tab.eval(fmt.Sprintf("(() => { const i = document.querySelector(%q); i.value = '%d/16'; i.dispatchEvent(new Event('input', {bubbles: true})) })()", field("outlet.below_rim"), 100+n%16), nil)
		tab.ready()
		var ms string
		tab.eval("document.documentElement.dataset.redraw", &ms)
		var x float64
		_, _ = fmt.Sscan(ms, &x)
		sum += x
	}
	b.ReportMetric(sum/float64(n), "ms-to-redraw")
}
