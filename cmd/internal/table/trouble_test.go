package table

import (
	"crypto/sha256"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"silowright/cmd/internal/demo"
	"silowright/cmd/internal/pack"
	"silowright/cmd/internal/plan"
)

// folder is one with the demo as its job file.
func folder(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range map[string]string{"job.toml": demoTexts.Job, "prices.csv": demoTexts.Prices} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

func onDisk(t *testing.T, dir, name string) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(dir, name))
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// Real keys on the wall: an arrow goes an eighth of an inch, with Shift a
// thirty-second, sideways round the wall; the place and what is near are told;
// undo takes the run back.
func TestArrowKeysOnTheWall(t *testing.T) {
	b := openTab(t, serve(t, t.TempDir(), ""), desktop)
	b.until("document.querySelector('[data-part=outlet]')")
	before := b.job()
	b.eval("document.querySelector('[data-part=outlet]').focus()", nil)
	press := func(key string, with ...chromedp.Modifier) {
		t.Helper()
		b.keys(key, with...)
		b.ready()
	}
	for _, c := range []struct {
		key  string
		with []chromedp.Modifier
		of   string
		want string
	}{
		{kb.ArrowDown, nil, "outlet.below_rim", "6 5/8"},
		{kb.ArrowUp, nil, "outlet.below_rim", "6 1/2"},
		{kb.ArrowUp, []chromedp.Modifier{chromedp.ModifierShift}, "outlet.below_rim", "6 15/32"},
		{kb.ArrowRight, nil, "outlet.round", "1/8"},
		{kb.ArrowRight, []chromedp.Modifier{chromedp.ModifierShift}, "outlet.round", "5/32"},
		{kb.ArrowLeft, nil, "outlet.round", "1/8"},
	} {
		press(c.key, c.with...)
		b.until(fmt.Sprintf("document.querySelector(%q).value === %q", field(c.of), c.want))
	}
	b.until("document.querySelector('#said').textContent.includes('outlet')")
	if s := b.text("#said"); !strings.Contains(s, "to the right of the datum") || !strings.Contains(s, "at least") {
		t.Errorf("told: %q", s)
	}
	press("z", chromedp.ModifierCtrl)
	if b.job() != before {
		t.Error("one undo does not take the run of keys back")
	}
	b.calm()
}

// What a later save may do when the file was saved elsewhere meanwhile; nothing
// is lost by any of them.
func TestWaysOutOfAClash(t *testing.T) {
	for _, c := range []struct {
		name, answer string
		file, other  string // what the files then hold of outlet.below_rim
		shown        string
	}{
		{"mine", "mine", "6 3/4", "", "6 3/4"},
		{"theirs", "theirs", "6 5/8", "", "6 5/8"},
		{"another name", "other", "6 5/8", "6 3/4", "6 3/4"},
		{"neither", "none", "6 5/8", "", "6 3/4"},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := folder(t)
			url := serve(t, dir, "")
			one := openTab(t, url+"?job=job.toml", desktop)
			two := one.beside(url + "?job=job.toml")
			one.fill("outlet.below_rim", "6 5/8")
			one.click("#save")
			one.until("document.querySelector('#where').textContent.endsWith(', saved')")
			two.fill("outlet.below_rim", "6 3/4")
			two.click("#save")
			two.until("document.querySelector('#answer-mine')")
			two.click("#answer-" + c.answer)
			if c.answer == "other" {
				two.until("document.querySelector('#save-path')")
				two.click("#answer-save")
			}
			two.until("!document.querySelector('dialog[open]')")
			if c.answer != "none" {
				two.until("document.querySelector('#where').textContent.endsWith(', saved')")
			}
			two.ready()
			if got := two.value(field("outlet.below_rim")); got != c.shown {
				t.Errorf("the tab shows %q, want %q", got, c.shown)
			}
			line := func(name string) string {
				for l := range strings.SplitSeq(onDisk(t, dir, name), "\n") {
					if strings.Contains(l, "below_rim") && strings.Contains(l, "6 ") {
						return l
					}
				}
				return ""
			}
			if got := line("job.toml"); !strings.Contains(got, c.file) {
				t.Errorf("the file holds %q, want %s", got, c.file)
			}
			if c.other != "" {
				if got := line("job-mine.toml"); !strings.Contains(got, c.other) {
					t.Errorf("the other file holds %q, want %s", got, c.other)
				}
			}
			two.calm()
		})
	}
}

// A browser that goes away before saving leaves a draft; another finds it.
func TestDraftAfterACrash(t *testing.T) {
	dir := folder(t)
	url := serve(t, dir, "") + "?job=job.toml"
	b := openTab(t, url, desktop)
	b.fill("outlet.below_rim", "6 7/8")
	draft := filepath.Join(dir, ".job.toml.draft")
	b.until("document.querySelector('#where').textContent.includes('changed')")
	for end := time.Now().Add(time.Minute); ; { // the page writes it when the hand rests
		if _, err := os.Stat(draft); err == nil {
			break
		} else if time.Now().After(end) {
			t.Fatalf("no draft: %v", err)
		}
		time.Sleep(50 * time.Millisecond)
	}
	if strings.Contains(onDisk(t, dir, "job.toml"), "6 7/8") {
		t.Error("the file itself was written unasked")
	}
	again := openTab(t, url, desktop) // a session that knows nothing of the first
	again.until("document.querySelector('#answer-draft')")
	again.click("#answer-draft")
	again.until(fmt.Sprintf("document.querySelector(%q).value === '6 7/8'", field("outlet.below_rim")))
	again.click("#save")
	again.until("document.querySelector('#where').textContent.endsWith(', saved')")
	if !strings.Contains(onDisk(t, dir, "job.toml"), "6 7/8") {
		t.Error("saved, and the file does not hold it")
	}
	if _, err := os.Stat(draft); err == nil {
		t.Error("the draft stays after the save")
	}
	again.calm()
}

// A draft that is long on its way is not written after the save that came upon it.
func TestDraftBeforeASave(t *testing.T) {
	dir := folder(t)
	b := openTab(t, serve(t, dir, "")+"?job=job.toml", desktop)
	b.eval(`(() => { const plain = window.fetch; window.drafts = [];
		window.fetch = (url, ...rest) => {
			if (!String(url).includes('/api/draft')) return plain(url, ...rest);
			window.drafts.push('sent');
			return new Promise((done) => setTimeout(done, 1500)).then(() => plain(url, ...rest)).then((got) => { window.drafts.push('kept'); return got; });
		}; return true; })()`, nil)
	b.fill("outlet.below_rim", "6 7/8")
	b.until("window.drafts.includes('sent')")
	b.click("#save")
	b.until("document.querySelector('#where').textContent.endsWith(', saved')")
	b.until("window.drafts.includes('kept')")
	if _, err := os.Stat(filepath.Join(dir, ".job.toml.draft")); err == nil {
		t.Error("a draft stays after the save")
	}
	b.calm()
}

// A hoop's measures light on that hoop, and in the picture of the drum nothing
// reaches past its edge.
func TestPictureOfTheDrum(t *testing.T) {
	for _, size := range [][2]int64{desktop, phone} {
		b := openTab(t, serve(t, t.TempDir(), ""), size)
		at := map[string]float64{}
		for _, key := range []string{"drum[0].hoops[0].outside", "drum[0].hoops[1].outside", "drum[0].height", "drum[0].wall"} {
			b.eval(fmt.Sprintf("document.querySelector(%q).focus()", field(key)), nil)
			var lit struct {
				N    int
				Y    float64
				Past []string
			}
			b.eval(`(() => { const lit = document.querySelectorAll('.dim.lit'), box = document.querySelector('svg.drum').getBoundingClientRect();
				return {n: lit.length, y: lit[0]?.querySelector('.span').getBBox().y, past: [...document.querySelectorAll('svg.drum text')].filter((t) => { const r = t.getBoundingClientRect();
					return r.width && (r.left < Math.max(0, box.left) || r.right > Math.min(innerWidth, box.right)); }).map((t) => t.textContent)} })()`, &lit)
			if lit.N != 1 || len(lit.Past) > 0 {
				t.Errorf("%v, %s: %d lit, past the edge: %q", size, key, lit.N, lit.Past)
			}
			at[key] = lit.Y
		}
		if at["drum[0].hoops[1].outside"] >= at["drum[0].hoops[0].outside"] {
			t.Errorf("%v: the upper hoop is lit at %v, the lower at %v", size, at["drum[0].hoops[1].outside"], at["drum[0].hoops[0].outside"])
		}
		b.calm()
	}
}

// axe finds no violation where things go wrong or a dialogue is open.
func TestAxeInTrouble(t *testing.T) {
	script := axe(t)
	for _, c := range []struct {
		name, within string
		to           func(b *tab)
	}{
		{"nothing measured", "#measure", func(b *tab) {
			b.click("#banner button")
			b.until("document.querySelector('#answer-go')")
			b.click("#answer-go")
			b.ready()
		}},
		{"a wrong entry", "#holes", func(b *tab) {
			b.fill("outlet.below_rim", "seven")
			b.until("document.querySelector('[aria-invalid]')")
		}},
		{"a stop", "#findings", func(b *tab) {
			b.fill("outlet.saw", "1")
			b.until("document.querySelector('.finding.stop')")
		}},
		{"a dialogue", "#dialog", func(b *tab) {
			b.click("#save")
			b.until("document.querySelector('#save-path')")
		}},
		{"a drawing made larger", "#dialog", func(b *tab) {
			b.click("[data-larger=lattice]")
			b.until("document.querySelector('dialog.wide svg')")
		}},
	} {
		size := desktop
		if c.within == "#dialog" {
			size = phone // where there is least room
		}
		b := openTab(t, serve(t, t.TempDir(), ""), size)
		c.to(b)
		for _, v := range b.violations(script, c.within) {
			t.Errorf("%s: %s", c.name, v)
		}
		b.calm()
	}
}

// Printing leads to the command's own PDF, open in a tab of its own, and the
// page says how it is printed.
func TestPrintingLeadsToThePDF(t *testing.T) {
	b := openTab(t, serve(t, t.TempDir(), ""), desktop)
	p, err := plan.Text(demo.JobName, []byte(demoTexts.Job), []byte(demoTexts.Prices))
	if err != nil {
		t.Fatal(err)
	}
	made, err := pack.Make(p, pack.DefaultOptions(p.Job.Units))
	if err != nil {
		t.Fatal(err)
	}
	b.keys("p", chromedp.ModifierCtrl) // not the page, which is not to be cut by
	b.until("document.activeElement.id === 'print-pack'")
	if s := b.text("#print-tools"); !strings.Contains(s, "Actual size, 100 %") || !strings.Contains(s, "check square") {
		t.Errorf("beside the button: %q", s)
	}
	b.eval("(() => { const make = URL.createObjectURL; URL.createObjectURL = (blob) => { window.shown = blob; return make.call(URL, blob) } })()", nil)
	b.keys("\r")
	at := ""
	for range 500 {
		infos, err := chromedp.Targets(b.ctx)
		if err != nil {
			t.Fatal(err)
		}
		for _, i := range infos {
			if string(i.Type) == "page" && strings.HasPrefix(i.URL, "blob:"+b.origin()) {
				at = i.URL
			}
		}
		if at != "" {
			break
		}
		time.Sleep(20 * time.Millisecond)
	}
	if at == "" {
		t.Fatalf("no tab was opened; note: %s", b.text("#note"))
	}
	var sum string
	b.eval("window.shown.arrayBuffer().then((d) => crypto.subtle.digest('SHA-256', d)).then((h) => [...new Uint8Array(h)].map((x) => x.toString(16).padStart(2, '0')).join(''))", &sum)
	for _, f := range made.Files {
		if want := fmt.Sprintf("%x", sha256.Sum256(f.Data)); f.Name == "shop-pack.pdf" && sum != want {
			t.Error("the PDF in the tab is not the command's")
		}
	}
	b.calm()
}
