package table

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"silowright/cmd/internal/pack"
	"silowright/cmd/internal/plan"
)

func (d *desk) save(path, job, prices, revision string, out any) int {
	d.t.Helper()
	return d.post("/api/save", m{"path": path, "job": job, "prices": prices, "revision": revision}, out)
}

// Of many saves on one state at one time exactly one is made; the others are
// told, and no file is torn.
func TestManySavesAtOnce(t *testing.T) {
	d := newDesk(t, Config{})
	var first struct{ Revision string }
	d.save("job.toml", demoJob, demoPrices, "", &first)
	var wait sync.WaitGroup
	codes := make([]int, 20)
	for i := range codes {
		wait.Go(func() {
			codes[i] = d.save("job.toml", fmt.Sprintf("%s# %d\n", demoJob, i), demoPrices, first.Revision, nil)
		})
	}
	wait.Wait()
	won := -1
	for i, c := range codes {
		switch {
		case c == http.StatusOK && won < 0:
			won = i
		case c != http.StatusConflict:
			t.Errorf("save %d: %d, %d was made already", i, c, won)
		}
	}
	if got := d.file("job.toml"); won < 0 || got != fmt.Sprintf("%s# %d\n", demoJob, won) {
		t.Errorf("save %d was made, the file ends in %q", won, got[max(0, len(got)-8):])
	}
}

// What the page has not seen is never written over: a price list that the job
// did not name before, a list changed behind its back, a file deleted.
func TestNothingUnseenIsLost(t *testing.T) {
	for _, c := range []struct {
		reason string
		before func(d *desk)
		job    string
		theirs string // what the conflict shows
		kept   string // the file that must be as before
	}{
		{"another list is named, and there", func(d *desk) { d.put("other.csv", "mine,own\n") },
			strings.Replace(demoJob, `file = "prices.csv"`, `file = "other.csv"`, 1), "mine,own", "other.csv"},
		{"the list was changed", func(d *desk) { d.put("prices.csv", "by,hand\n") }, demoJob, "by,hand", "prices.csv"},
		{"the job was changed", func(d *desk) { d.put("job.toml", demoJob+"# by hand\n") }, demoJob, "by hand", "job.toml"},
		{"the job was deleted", func(d *desk) { _ = os.Remove(filepath.Join(d.dir, "job.toml")) }, demoJob, "", "prices.csv"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			d := newDesk(t, Config{})
			var first, clash, last struct {
				Revision string
				Theirs   struct{ Job, Prices string }
			}
			if code := d.save("job.toml", demoJob, demoPrices, "", &first); code != http.StatusOK {
				t.Fatal(code)
			}
			c.before(d)
			was := d.file(c.kept)
			text := c.job + "# mine\n"
			if code := d.save("job.toml", text, demoPrices, first.Revision, &clash); code != http.StatusConflict {
				t.Fatalf("%d, want a conflict", code)
			}
			if !strings.Contains(clash.Theirs.Job+clash.Theirs.Prices, c.theirs) {
				t.Errorf("the conflict shows %.100q", clash.Theirs)
			}
			if got := d.file(c.kept); got != was {
				t.Errorf("%s was changed", c.kept)
			}
			if code := d.save("job.toml", text, demoPrices, clash.Revision, &last); code != http.StatusOK {
				t.Errorf("having seen it: %d", code)
			}
			if got := d.file("job.toml"); got != text {
				t.Error("the save that has seen the other is not there")
			}
		})
	}
}

// A save keeps permissions, leaves no other file behind, and what it wrote is
// what the other commands read.
func TestSavedIsReadByTheCommands(t *testing.T) {
	d := newDesk(t, Config{})
	d.put("cove/job.toml", demoJob)
	d.put("cove/prices.csv", demoPrices)
	full := filepath.Join(d.dir, "cove", "job.toml")
	if err := os.Chmod(full, 0o640); err != nil {
		t.Fatal(err)
	}
	var o opened
	if code := d.get("/api/open?job=cove/job.toml", &o); code != http.StatusOK || o.Job != demoJob || o.Prices != demoPrices || o.PricesPath != "cove/prices.csv" {
		t.Fatalf("%d %q %q", code, o.Path, o.PricesPath)
	}
	a := d.work(o.Job, o.Prices, []edit{{"outlet.saw", "2 5/8"}})
	if code := d.save(o.Path, a.Job, o.Prices, o.Revision, nil); code != http.StatusOK {
		t.Fatal(code)
	}
	if info, err := os.Stat(full); err != nil || info.Mode().Perm() != 0o640 {
		t.Errorf("permissions %v, %v", info.Mode(), err)
	}
	entries, err := os.ReadDir(filepath.Join(d.dir, "cove"))
	if err != nil || len(entries) != 2 {
		t.Errorf("left in the folder: %v, %v", entries, err)
	}
	t.Chdir(d.dir)
	p, err := plan.Load("cove/job.toml")
	if err != nil {
		t.Fatal(err)
	}
	made, err := pack.Make(p, pack.DefaultOptions(p.Job.Units))
	if err != nil {
		t.Fatal(err)
	}
	// the same bytes, from the file's own path, one by one and in one
	got := d.send(http.MethodPost, "/api/file", jsonOf(t, m{"path": "cove/job.toml", "job": a.Job, "prices": o.Prices, "name": zipName}), nil)
	if h := got.header.Get("Content-Disposition"); h != `attachment; filename=pack.zip` {
		t.Errorf("disposition %q", h)
	}
	z, err := zip.NewReader(bytes.NewReader(got.data), int64(len(got.data)))
	if err != nil {
		t.Fatal(err)
	}
	if len(z.File) != len(made.Files) {
		t.Errorf("%d files in one, want %d", len(z.File), len(made.Files))
	}
	for i, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		data, err := io.ReadAll(r)
		if err != nil || f.Name != "shop-pack/"+made.Files[i].Name || !bytes.Equal(data, made.Files[i].Data) {
			t.Errorf("%s differs from the command's, %v", f.Name, err)
		}
	}
}

// A draft of the same words is not offered, nor one begun from another state of
// the file and older than it; one begun from the file as it stands is, whatever
// the clock was. No draft can be laid outside the folder.
func TestDraftsNotOffered(t *testing.T) {
	d := newDesk(t, Config{})
	d.put("job.toml", demoJob)
	d.put("prices.csv", demoPrices)
	keep := func(path, text string) int {
		return d.post("/api/draft", m{"path": path, "job": text, "prices": demoPrices, "revision": ""}, nil)
	}
	offered := func() bool {
		var o opened
		d.get("/api/open?job=job.toml", &o)
		return o.Draft != nil
	}
	if code := keep("job.toml", demoJob); code != http.StatusOK || offered() {
		t.Errorf("%d; the same words are offered: %v", code, offered())
	}
	keep("job.toml", demoJob+"# more\n")
	if !offered() {
		t.Error("newer work is not offered")
	}
	old := time.Now().Add(-time.Hour)
	if err := os.Chtimes(filepath.Join(d.dir, ".job.toml.draft"), old, old); err != nil {
		t.Fatal(err)
	}
	if offered() {
		t.Error("older work is offered")
	}
	var now opened
	d.get("/api/open?job=job.toml", &now)
	d.post("/api/draft", m{"path": "job.toml", "job": demoJob + "# more\n", "prices": demoPrices, "revision": now.Revision}, nil)
	if err := os.Chtimes(filepath.Join(d.dir, ".job.toml.draft"), old, old); err != nil {
		t.Fatal(err)
	}
	if !offered() {
		t.Error("work begun from the file as it stands is hidden by a clock set back")
	}
	if code := d.post("/api/undraft", m{"path": "job.toml"}, nil); code != http.StatusOK {
		t.Errorf("undraft: %d", code)
	}
	if _, err := os.Stat(filepath.Join(d.dir, ".job.toml.draft")); err == nil {
		t.Error("the draft is still there")
	}
	for _, path := range []string{"../x.toml", "/x.toml", ".x.toml", "a/../../x.toml", "no/such/x.toml", "x.csv", ""} {
		if code := keep(path, demoJob); code < 400 {
			t.Errorf("a draft of %q: %d", path, code)
		}
	}
	// a link in the draft's place is not followed
	if err := os.Symlink(filepath.Join(d.dir, "prices.csv"), filepath.Join(d.dir, ".job.toml.draft")); err != nil {
		t.Fatal(err)
	}
	if code := keep("job.toml", "x"); code < 400 || d.file("prices.csv") != demoPrices {
		t.Errorf("a draft through a link: %d", code)
	}
}

// A link to a folder outside, or a price list there, is no way out.
func TestLinksLeadNowhere(t *testing.T) {
	outside := t.TempDir()
	if err := os.WriteFile(filepath.Join(outside, "job.toml"), []byte(demoJob), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(outside, "prices.csv"), []byte("secret"), 0o600); err != nil {
		t.Fatal(err)
	}
	d := newDesk(t, Config{})
	if err := os.Symlink(outside, filepath.Join(d.dir, "out")); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(filepath.Join(outside, "prices.csv"), filepath.Join(d.dir, "prices.csv")); err != nil {
		t.Fatal(err)
	}
	if a := d.send(http.MethodGet, "/api/open?job=out/job.toml", nil, nil); a.status < 400 {
		t.Errorf("opened through a link: %d", a.status)
	}
	if code := d.save("out/new.toml", demoJob, demoPrices, "", nil); code < 400 {
		t.Errorf("saved through a link: %d", code)
	}
	d.put("job.toml", demoJob)
	var o opened
	if code := d.get("/api/open?job=job.toml", &o); code != http.StatusOK || o.Prices != "" || o.Warning == "" {
		t.Errorf("a list outside: %d, %q, %q", code, o.Prices, o.Warning)
	}
	for _, list := range []string{"../prices.csv", "/etc/passwd", "out/prices.csv"} {
		text := strings.Replace(demoJob, `file = "prices.csv"`, fmt.Sprintf("file = %q", list), 1)
		d.put("job.toml", text)
		o = opened{}
		if d.get("/api/open?job=job.toml", &o); o.Prices != "" || o.Warning == "" {
			t.Errorf("the list %s: %q, %q", list, o.Prices, o.Warning)
		}
		if code := d.save("job.toml", text+"\n", "x,y\n", o.Revision, nil); code < 400 {
			t.Errorf("saved a list to %s: %d", list, code)
		}
	}
	for _, name := range []string{"new.toml", "prices.csv", "job.toml"} {
		data, err := os.ReadFile(filepath.Join(outside, name))
		if err == nil && (name == "new.toml" || name == "prices.csv" && string(data) != "secret" || name == "job.toml" && string(data) != demoJob) {
			t.Errorf("%s outside was written", name)
		}
	}
}

// The later of two saves never silently destroys the earlier.
func TestTwoSaves(t *testing.T) {
	dir := t.TempDir()
	url := serve(t, dir, "")
	save := func(job, revision string, out any) int {
		return ask(t, url, "save", map[string]any{"path": "cove/job.toml", "job": job, "prices": demoTexts.Prices, "revision": revision}, out)
	}
	if err := os.Mkdir(filepath.Join(dir, "cove"), 0o700); err != nil {
		t.Fatal(err)
	}
	var first, second struct{ Revision string }
	if code := save(demoTexts.Job, "", &first); code != 200 {
		t.Fatalf("the first save: %d", code)
	}
	mine := strings.Replace(demoTexts.Job, "drum_silos = 20", "drum_silos = 20 # mine", 1)
	if code := save(mine, first.Revision, &second); code != 200 || second.Revision == first.Revision {
		t.Fatalf("the second: %d", code)
	}
	theirs := strings.Replace(demoTexts.Job, "drum_silos = 20", "drum_silos = 20 # theirs", 1)
	var clash struct {
		Theirs   any
		Revision string
	}
	if code := save(theirs, first.Revision, &clash); code != http.StatusConflict || clash.Revision != second.Revision {
		t.Errorf("a save on an old state: %d, %+v", code, clash)
	}
	if got, _ := os.ReadFile(filepath.Join(dir, "cove", "job.toml")); string(got) != mine {
		t.Error("the earlier save is gone")
	}
	if code := save(theirs, clash.Revision, nil); code != 200 {
		t.Errorf("a save that has seen the other: %d", code)
	}
}

// What was not saved when the page went away is offered when the job is opened
// again, and gone once it is saved.
func TestDraft(t *testing.T) {
	dir := t.TempDir()
	url := serve(t, dir, "")
	send := func(what, job, revision string, out any) int {
		return ask(t, url, what, map[string]any{"path": "job.toml", "job": job, "prices": demoTexts.Prices, "revision": revision}, out)
	}
	open := func() (o struct {
		Job, Revision string
		Draft         *struct{ Job string }
	}) {
		res, err := http.Get(url + "api/open?job=job.toml")
		if err != nil {
			t.Fatal(err)
		}
		defer res.Body.Close()
		if err := json.NewDecoder(res.Body).Decode(&o); err != nil {
			t.Fatal(err)
		}
		return o
	}
	var first struct{ Revision string }
	send("save", demoTexts.Job, "", &first)
	unsaved := demoTexts.Job + "# not saved yet\n"
	if code := send("draft", unsaved, first.Revision, nil); code != 200 {
		t.Fatalf("a draft: %d", code)
	}
	if o := open(); o.Job != demoTexts.Job || o.Draft == nil || o.Draft.Job != unsaved {
		t.Errorf("after a crash: %+v", o.Draft)
	}
	if code := send("save", unsaved, first.Revision, nil); code != 200 {
		t.Errorf("%d", code)
	}
	if o := open(); o.Job != unsaved || o.Draft != nil {
		t.Errorf("once saved: %+v", o.Draft)
	}
	if left, _ := filepath.Glob(filepath.Join(dir, ".*")); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}
