package demo

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"

	"silowright/bom"
	"silowright/cmd/internal/job"
	"silowright/geometry"
)

// solved is a job read, solved and priced.
type solved struct {
	file     *job.File
	findings []geometry.Finding
	bill     bom.Bill
}

func solve(t *testing.T, name string, text, prices []byte) solved {
	t.Helper()
	f, err := job.Parse(name, text)
	if err != nil {
		t.Fatal(err)
	}
	silos, err := geometry.Solve(f.Job)
	if err != nil {
		t.Fatal(err)
	}
	out := solved{file: f}
	for _, s := range silos {
		out.findings = append(out.findings, s.Findings...)
	}
	list, err := bom.ReadPrices(f.Prices, bytes.NewReader(prices), f.Listing)
	if err != nil {
		t.Fatal(err)
	}
	needs := bom.Takeoff(bom.Batches(silos, f.Job.DrumSilos, f.Job.PipeSilos), f.Rates, f.Job.Units, f.Runs...)
	if out.bill, err = bom.Buy(needs, list, f.Held, f.Terms, f.Job.DrumSilos, f.Job.PipeSilos); err != nil {
		t.Fatal(err)
	}
	return out
}

// invented fails unless the list says beside every price that it is invented.
func invented(t *testing.T, prices []byte) {
	t.Helper()
	lines := bytes.Split(bytes.TrimSpace(prices), []byte("\n"))
	if !bytes.Contains(lines[1], []byte("invented")) {
		t.Errorf("the list does not begin by saying that it is invented: %s", lines[1])
	}
	for _, l := range lines[2:] {
		if !bytes.Contains(l, []byte("(invented)")) {
			t.Errorf("does not say that it is invented: %s", l)
		}
	}
}

func (s solved) stops() []string {
	ids := []string{}
	for _, f := range s.findings {
		if f.Level == geometry.Stop {
			ids = append(ids, f.ID)
		}
	}
	return ids
}

// The demo is a build that works: no stop, and a whole bill.
func TestDemo(t *testing.T) {
	s := solve(t, JobName, Job, Prices)
	if stops := s.stops(); len(stops) > 0 {
		t.Errorf("stops: %v", stops)
	}
	if !s.bill.Complete() || s.bill.Total.Minor <= 0 {
		t.Errorf("total %v, without a price: %v", s.bill.Total, s.bill.Missing)
	}
	if s.file.Job.DrumSilos != 20 || s.file.Job.PipeSilos != 12 {
		t.Errorf("%d drum and %d pipe silos, want 20 and 12", s.file.Job.DrumSilos, s.file.Job.PipeSilos)
	}
	invented(t, Prices)
}

// The three jobs beside the demo are what their names say.
func TestExamples(t *testing.T) {
	root := filepath.Join("..", "..", "..", "testdata")
	for _, c := range []struct {
		dir     string
		kinds   int
		stops   bool
		missing []string
	}{
		{"metric", 1, false, []string{}},
		{"two-kinds", 2, false, []string{}},
		{"stops", 1, true, []string{"resin"}},
	} {
		t.Run(c.dir, func(t *testing.T) {
			read := func(name string) []byte {
				text, err := os.ReadFile(filepath.Join(root, c.dir, name))
				if err != nil {
					t.Fatal(err)
				}
				return text
			}
			prices := read("prices.csv")
			s := solve(t, c.dir+"/job.toml", read("job.toml"), prices)
			invented(t, prices)
			if got := len(s.file.Job.Kinds); got != c.kinds {
				t.Errorf("%d kinds of drum, want %d", got, c.kinds)
			}
			stops := s.stops()
			if c.stops && len(stops) < 10 || !c.stops && len(stops) > 0 {
				t.Errorf("stops: %v", stops)
			}
			if diff := cmp.Diff(c.missing, s.bill.Missing); diff != "" {
				t.Errorf("items without a price (-want +got):\n%s", diff)
			}
			if s.bill.Total.Minor <= 0 {
				t.Errorf("total %v", s.bill.Total)
			}
		})
	}
}
