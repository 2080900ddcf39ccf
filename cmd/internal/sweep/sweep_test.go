package sweep

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"silowright/cmd/internal/pack"
	"silowright/cmd/internal/plan"
)

// tally is what a sweep saw.
type tally struct {
	sync.Mutex
	jobs, packs, pdfs, svgs, bytes, units, laws, twice, books, traced int
	refused                                                           map[string]int
	findings                                                          map[string][3]int
	fails                                                             int
	peak                                                              uint64
}

// jobs is how many jobs a sweep takes: SILO_JOBS, else a few.
func jobs(t *testing.T) (n, first int) {
	n, first = 40, 1
	for name, to := range map[string]*int{"SILO_JOBS": &n, "SILO_FIRST": &first} {
		if s := os.Getenv(name); s != "" {
			var err error
			if *to, err = strconv.Atoi(s); err != nil {
				t.Fatalf("%s: %v", name, err)
			}
		}
	}
	if testing.Short() {
		n = min(n, 10)
	}
	return n, first
}

// TestSweep packs random jobs: SILO_JOBS of them, from the seed SILO_FIRST on.
// Where SILO_KEEP names a directory, a job that fails is written there.
func TestSweep(t *testing.T) {
	n, first := jobs(t)
	s := &tally{refused: map[string]int{}, findings: map[string][3]int{}}
	begun := time.Now() // told, not judged
	dir := t.TempDir()
	next := make(chan int)
	var wait sync.WaitGroup
	for w := range runtime.NumCPU() {
		wait.Go(func() {
			for i := range next {
				s.one(t, i, filepath.Join(dir, fmt.Sprintf("%d.pdf", w)))
			}
		})
	}
	for i := first; i < first+n; i++ {
		s.Lock()
		stop := s.fails > 40
		s.Unlock()
		if stop {
			break
		}
		next <- i
		if i%50 == 0 {
			s.memory()
		}
		if i%1000 == 0 {
			t.Logf("seed %d, %.0f s", i, time.Since(begun).Seconds())
		}
	}
	close(next)
	wait.Wait()
	s.memory()
	s.report(t, time.Since(begun))
	if least := n / 2; s.packs < least && s.fails == 0 {
		t.Errorf("only %d of %d random jobs were packed", s.packs, n)
	}
}

// memory notes how much the process has of the system.
func (s *tally) memory() {
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	s.peak = max(s.peak, m.Sys)
}

func (s *tally) report(t *testing.T, took time.Duration) {
	t.Logf("%d jobs, %d packs, %d PDFs sound to qpdf, %d SVGs, %.1f MB, %d workbooks read, %d PDFs read by poppler and mutool", s.jobs, s.packs, s.pdfs, s.svgs, float64(s.bytes)/1e6, s.books, s.traced)
	t.Logf("%d in both units, %d kinds twice as large, %d packed twice; %.0f s, at most %.0f MB", s.units, s.laws, s.twice, took.Seconds(), float64(s.peak)/1e6)
	var list []string
	for _, k := range slices.Sorted(maps.Keys(s.refused)) {
		list = append(list, fmt.Sprintf("%s %d", k, s.refused[k]))
	}
	t.Logf("refused: %s", strings.Join(list, ", "))
	list = nil
	for _, k := range slices.Sorted(maps.Keys(s.findings)) {
		list = append(list, fmt.Sprintf("%s %v", k, s.findings[k]))
	}
	t.Logf("%d findings seen, ok, caution and stop: %s", len(list), strings.Join(list, ", "))
}

// one takes the job of a seed the whole way.
func (s *tally) one(t *testing.T, seed int, pdf string) {
	j := random(rand.NewPCG(uint64(seed), 0x5170))
	s.check(t, seed, &j, pdf)
}

// check holds one job against everything.
func (s *tally) check(t *testing.T, seed int, j *made, pdf string) {
	faults := s.faults(seed, j, pdf)
	s.Lock()
	defer s.Unlock()
	if s.jobs++; len(faults) > 0 {
		s.fails++
		t.Errorf("seed %d: %s", seed, strings.Join(faults[:min(6, len(faults))], "\n\t"))
		keep(t, seed, j)
	}
}

// faults are what is wrong with what comes of a job. pdf is where its PDF is
// written for other programs to look at; empty spares them. A job of which only
// some parts are packed is not worked out in other units and sizes.
func (s *tally) faults(seed int, j *made, pdf string) (faults []string) {
	bad := func(format string, args ...any) { faults = append(faults, fmt.Sprintf(format, args...)) }
	refused := func(err error) {
		key := keyOf(err)
		if key == "" || !strings.Contains(err.Error(), "hint: ") || strings.ContainsAny(err.Error(), "\n\r") {
			bad("a refusal names no key and hint in one line: %v", err)
		}
		s.Lock()
		s.refused[key]++
		s.Unlock()
	}
	for _, err := range j.refusals {
		refused(err)
	}
	if !j.taken {
		return faults
	}
	p, err := plan.Text("job.toml", []byte(j.text), []byte(j.prices))
	if err != nil {
		refused(err)
		return faults
	}
	o, err := j.options(p.Job.Units)
	if err != nil {
		refused(err)
		return faults
	}
	m, err := pack.Make(p, o)
	if err != nil {
		if !strings.HasPrefix(err.Error(), "paper ") {
			bad("taken, but not packed: %v", err)
		}
		refused(err)
		return faults
	}
	s.seen(p, m)
	for _, f := range m.Files {
		for _, fault := range fileFaults(f.Name, f.Data) {
			bad("%s: %s", f.Name, fault)
		}
		if f.Name == "shop-pack.pdf" && pdf != "" {
			for _, fault := range s.outside(pdf, f.Data, seed, m) {
				bad("%s: %s", f.Name, fault)
			}
		}
		if f.Name == "report.json" {
			faults = append(faults, billFaults(f.Data, m.Files, j.maker.terms, j.offers)...)
		}
		if f.Name == "costs.xlsx" && seed%20 == 0 {
			faults = append(faults, bookFaults(f.Data, p)...)
			s.count(&s.books)
		}
	}
	if j.only != nil {
		return faults
	}
	found, both := unitFaults(&j.maker.doc, j.prices)
	faults = append(faults, found...)
	if both {
		s.count(&s.units)
	}
	for _, silo := range p.Silos {
		faults = append(faults, lawFaults(silo)...)
		s.count(&s.laws)
	}
	if seed%20 == 1 {
		s.count(&s.twice)
		faults = append(faults, again(j, o, m)...)
	}
	return faults
}

func (s *tally) count(n *int) {
	s.Lock()
	*n++
	s.Unlock()
}

// seen counts what a pack holds.
func (s *tally) seen(p *plan.Plan, m pack.Made) {
	s.Lock()
	defer s.Unlock()
	s.packs++
	for _, f := range p.Findings {
		n := s.findings[f.ID]
		n[f.Level]++
		s.findings[f.ID] = n
	}
	for _, f := range m.Files {
		s.bytes += len(f.Data)
		if strings.HasSuffix(f.Name, ".svg") {
			s.svgs++
		}
	}
}

// again packs the same job anew, byte for byte.
func again(j *made, o pack.Options, first pack.Made) []string {
	p, err := plan.Text("job.toml", []byte(j.text), []byte(j.prices))
	if err != nil {
		return []string{err.Error()}
	}
	m, err := pack.Make(p, o)
	if err != nil || len(m.Files) != len(first.Files) {
		return []string{fmt.Sprintf("packed again: %d files for %d, %v", len(m.Files), len(first.Files), err)}
	}
	var out []string
	for i, f := range m.Files {
		if f.Name != first.Files[i].Name || !bytes.Equal(f.Data, first.Files[i].Data) {
			out = append(out, f.Name+" differs between two runs"+differing(f.Data, first.Files[i].Data))
		}
	}
	return out
}

// differing names the parts in which two zip files differ, and where; nothing
// of other files.
func differing(a, b []byte) (out string) {
	x, errX := zip.NewReader(bytes.NewReader(a), int64(len(a)))
	y, errY := zip.NewReader(bytes.NewReader(b), int64(len(b)))
	if errX != nil || errY != nil {
		return ""
	}
	for i := range min(len(x.File), len(y.File)) {
		var text [2][]byte
		for k, f := range []*zip.File{x.File[i], y.File[i]} {
			r, err := f.Open()
			if err != nil {
				return err.Error()
			}
			if text[k], err = io.ReadAll(r); err != nil {
				return err.Error()
			}
		}
		at := 0
		for at < len(text[0]) && at < len(text[1]) && text[0][at] == text[1][at] {
			at++
		}
		if at < max(len(text[0]), len(text[1])) {
			near := func(t []byte) []byte { return t[max(0, at-80):min(len(t), at+80)] }
			out += fmt.Sprintf(", %s and %s at %d: %q, %q", x.File[i].Name, y.File[i].Name, at, near(text[0]), near(text[1]))
		}
	}
	return out
}

// fileFaults are what is wrong with a file by itself.
func fileFaults(name string, data []byte) []string {
	switch filepath.Ext(name) {
	case ".svg":
		out := svgFaults(data)
		if bad := wrongNumber.Find(data); bad != nil {
			out = append(out, fmt.Sprintf("holds %q", bad))
		}
		return out
	case ".pdf":
		streams, out := pdfFaults(data)
		if streams == 0 {
			out = append(out, "no stream was read")
		}
		return out
	case ".xlsx":
		return nil // see bookFaults
	}
	if bad := wrongNumber.Find(data); bad != nil {
		return []string{fmt.Sprintf("holds %q", bad)}
	}
	return nil
}

// outside has qpdf look at a PDF, and poppler and mutool at every fiftieth.
func (s *tally) outside(file string, data []byte, seed int, m pack.Made) []string {
	program, err := exec.LookPath("qpdf")
	if err != nil {
		if os.Getenv("CI") != "" {
			return []string{"qpdf is missing; .ci/run installs it"}
		}
		return nil
	}
	if err := os.WriteFile(file, data, 0o644); err != nil {
		return []string{err.Error()}
	}
	if out, err := exec.Command(program, "--check", file).CombinedOutput(); err != nil || bytes.Contains(out, []byte("WARNING")) {
		return []string{fmt.Sprintf("qpdf: %v: %s", err, out)}
	}
	s.count(&s.pdfs)
	if seed%50 != 0 {
		return nil
	}
	s.count(&s.traced)
	return slices.Concat(popplerFaults(file, m), traceFaults(file, m.Pages), lintFaults(file, m))
}

// keep writes a failing job where SILO_KEEP says.
func keep(t *testing.T, seed int, j *made) {
	dir := os.Getenv("SILO_KEEP")
	if dir == "" {
		return
	}
	dir = filepath.Join(dir, strconv.Itoa(seed))
	if err := os.MkdirAll(dir, 0o755); err != nil {
		t.Error(err)
		return
	}
	for name, text := range map[string]string{"job.toml": j.text, "prices.csv": j.prices} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Error(err)
		}
	}
}
