package sweep

import (
	"bytes"
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"silowright/cmd/internal/pack"
	"silowright/cmd/internal/plan"
	"silowright/geometry/measure"
	"silowright/render"
	"silowright/render/sheets"
)

// made is a random job with its price list and the options of its pack.
type made struct {
	maker  maker
	text   string
	prices string
	offers map[int]offer
	paper  string
	only   []string // parts of the PDF; nil is all
	taken  bool
	// refusals of the job before it had a bill
	refusals []error
}

// headings are a price list that prices nothing.
const headings = "item,pack,unit,price\n"

// random makes a job from a source of chance. What is refused is mended by what
// the refusal says, as a person would, unless the job is a hostile one. A job
// is told its needs by a first bill without prices; the price list and the rack
// go by them.
func random(src rand.Source) made {
	j := made{maker: maker{Rand: rand.New(src)}, prices: headings}
	m := &j.maker
	m.job()
	for tries := 0; ; tries++ {
		j.text = m.doc.text(m.u)
		if m.nerve == hostile && m.chance(0.3) {
			j.text = m.spoilt(j.text)
		}
		p, err := plan.Text("job.toml", []byte(j.text), []byte(j.prices))
		if err == nil {
			j.prices, j.offers = m.priced(p.Cost.Bill.Lines)
			j.text = m.doc.text(m.u)
			break
		}
		if j.refusals = append(j.refusals, err); m.nerve == hostile || tries > 8 || !m.mend(err) {
			return j
		}
	}
	j.taken = true
	j.paper = m.pick("", "", "", "letter", "A4", "A3", "A0", "ARCH-D", "24 in x 36 in", "roll 36 in", "roll 610 mm", "148 mm x 210 mm", "11 in x 17 in", "legal")
	return j
}

// spoilt is a text with one thing wrong.
func (m *maker) spoilt(text string) string {
	at := m.IntN(len(text))
	switch m.IntN(5) {
	case 0:
		return text[:at]
	case 1:
		return text[:at] + m.pick("\x00", "\"", "=", "[", "\n", "é", "\xff", "9") + text[at:]
	case 2:
		return text + m.pick("wall = 3\n", "[drun]\nx = 1\n", "[lattice]\nbar = 2\n", "drum_silos = 1\n", "[[drum]]\n")
	case 3:
		rows := strings.Split(text, "\n")
		i := m.IntN(len(rows))
		return strings.Join(slices.Delete(rows, i, i+1), "\n")
	}
	rows := strings.Split(text, "\n")
	i := m.IntN(len(rows))
	return strings.Join(slices.Insert(rows, i, rows[m.IntN(len(rows))]), "\n")
}

// options are those of the job's pack.
func (j *made) options(u measure.Unit) (pack.Options, error) {
	o := pack.DefaultOptions(u)
	m := &j.maker
	var err error
	if j.paper != "" {
		if o.Paper, err = render.PaperNamed(j.paper, u); err != nil {
			return o, err
		}
	}
	o.Only, o.Strips = j.only, m.chance(0.2)
	if m.chance(0.1) {
		o.Margin, o.Overlap = measure.Length(m.between(0, 15)), measure.Length(m.between(4, 25))
	}
	if m.chance(0.1) {
		o.Stretch, err = render.PrintedAs(fmt.Sprintf("%.1fx%.1f", m.between(97, 103), m.between(97, 103)))
	}
	if m.chance(0.2) {
		o.Page = []sheets.Paper{sheets.Letter, sheets.A4}[m.IntN(2)]
	}
	if m.chance(0.1) {
		o.Sheet = render.Paper{Name: "small", Width: 600, Height: 400}
	}
	return o, err
}

// keyed is an error's file, and line where there is one, and the key or column
// it names; or the paper that the pack was asked for.
var keyed = regexp.MustCompile(`^(?:(?:job\.toml|prices\.csv)(?::\d+)?: )?((?:unknown key )?"?[a-z][a-z_0-9]*(?:[. -][^:;]*)?)(?::| is | [0-9"]|;)`)

// keyOf is the key that a refusal names; "" when it names none, and the line
// alone for a text that is no TOML or CSV.
func keyOf(err error) string {
	s := err.Error()
	if m := keyed.FindStringSubmatch(s); m != nil {
		return m[1]
	}
	if regexp.MustCompile(`^(job\.toml|prices\.csv)(:\d+)?: `).MatchString(s) {
		return "the text"
	}
	return ""
}

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
			var m runtime.MemStats
			runtime.ReadMemStats(&m)
			s.peak = max(s.peak, m.Sys)
		}
		if i%1000 == 0 {
			t.Logf("seed %d, %.0f s", i, time.Since(begun).Seconds())
		}
	}
	close(next)
	wait.Wait()
	s.report(t, time.Since(begun))
	if least := n / 2; s.packs < least && s.fails == 0 {
		t.Errorf("only %d of %d random jobs were packed", s.packs, n)
	}
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
			out = append(out, f.Name+" differs between two runs")
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
