package sweep

import (
	"encoding/binary"
	"encoding/json"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"silowright/cmd/internal/demo"
	"silowright/cmd/internal/pack"
	"silowright/cmd/internal/plan"
	"silowright/cmd/internal/report"
)

// steered is a source of chance that gives the bytes it was made with, and
// goes on by a generator seeded with their count.
type steered struct {
	data []byte
	rest *rand.PCG
}

func newSteered(data []byte) *steered {
	return &steered{data, rand.NewPCG(uint64(len(data)), 1)}
}

func (s *steered) Uint64() uint64 {
	if len(s.data) < 2 {
		return s.rest.Uint64()
	}
	// two bytes choose among most lists and say a number to a part in 65,000
	n := uint64(binary.BigEndian.Uint16(s.data))
	s.data = s.data[2:]
	return n<<48 | n<<32 | n<<16 | n
}

// The most that a pack may hold and that may be in memory once it is made: one
// pack of a job of a few thousand silos takes a tenth of it.
const (
	mostBytes  = 64 << 20
	mostMemory = 1 << 30
)

// bounded fails where a pack, or what is left in memory after it, is larger
// than any job calls for.
func bounded(t *testing.T, m pack.Made) {
	t.Helper()
	sum := 0
	for _, f := range m.Files {
		sum += len(f.Data)
	}
	if sum > mostBytes {
		t.Errorf("a pack of %d MB", sum>>20)
	}
	var mem runtime.MemStats
	if runtime.ReadMemStats(&mem); mem.HeapAlloc > mostMemory {
		t.Errorf("%d MB in memory", mem.HeapAlloc>>20)
	}
}

// FuzzPipeline: any chance makes a random job that is refused by its key, or
// whose pack is sound.
func FuzzPipeline(f *testing.F) {
	f.Add([]byte{})
	f.Add([]byte("\x00\x00\xff\xff\x80\x00\x7f\xff"))
	f.Fuzz(func(t *testing.T, data []byte) {
		if len(data) > 4000 { // a job asks for no more
			return
		}
		j := random(newSteered(data))
		for _, part := range pack.Parts() { // a few of them, or there were few jobs a minute
			if j.maker.chance(0.2) {
				j.only = append(j.only, part)
			}
		}
		s := &tally{refused: map[string]int{}, findings: map[string][3]int{}}
		for _, fault := range s.faults(1, &j, "") {
			t.Error(fault)
		}
		if s.bytes > mostBytes {
			t.Errorf("a pack of %d MB", s.bytes>>20)
		}
		bounded(t, pack.Made{})
		if t.Failed() {
			t.Logf("%s\n%s", j.text, j.prices)
		}
	})
}

// told is a fault of a job or its price list: one line that names the file,
// and the key, the column or, in a text that is none, the line.
func told(t *testing.T, err error) {
	t.Helper()
	text := err.Error()
	if len(text) > 2000 || strings.ContainsAny(text, "\n\r\x1b\x00") || !strings.Contains(text, "hint: ") {
		t.Errorf("not one short line with a hint: %q", text)
	}
	if keyOf(err) == "" {
		t.Errorf("names neither key, column nor line: %q", text)
	}
}

// FuzzPlan: any job file and any price list are refused by key, or by row and
// column, or packed; no number in it is none.
func FuzzPlan(f *testing.F) {
	f.Add(demo.Job, demo.Prices)
	for _, name := range []string{"metric", "two-kinds", "stops"} {
		dir := filepath.Join("..", "..", "..", "testdata", name)
		text, err := os.ReadFile(filepath.Join(dir, "job.toml"))
		if err != nil {
			f.Fatal(err)
		}
		list, err := os.ReadFile(filepath.Join(dir, "prices.csv"))
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text, list)
	}
	f.Fuzz(func(t *testing.T, text, list []byte) {
		p, err := plan.Text("job.toml", text, list)
		if err != nil {
			told(t, err)
			return
		}
		m, err := pack.Make(p, pack.DefaultOptions(p.Job.Units))
		if err != nil {
			t.Fatalf("taken, but not packed: %v", err)
		}
		bounded(t, m)
		for _, file := range m.Files {
			for _, fault := range fileFaults(file.Name, file.Data) {
				if wrongNumber.Match(text) || wrongNumber.Match(list) {
					continue // its own words
				}
				t.Errorf("%s: %s", file.Name, fault)
			}
		}
	})
}

// shed is a small job to which a section is added.
const shed = `name = "shed"
units = "in"
drum_silos = 3
pipe_silos = 2
[[drum]]
circumference = "72 1/8"
height = "34 1/2"
wall = "3/16"
foot_outside = "21 1/8"
foot_height = "2 1/4"
head_recess = "7/8"
hoops = [{from = "10 1/2", to = "12", outside = "23 7/8"}, {from = "22 3/4", to = "24 1/4", outside = "23 7/8"}]
`

// FuzzOnHand: whatever is said to be on the rack is refused by its key, or
// used: no more of it than there is, and never bought for less than nothing.
func FuzzOnHand(f *testing.F) {
	for _, s := range []string{"sealant = \"150 mL\"\n", "drum = 2", `"pipe-sch40-2" = ["49 in", "3 ft"]`, `"mesh-1.588-mm" = {amount = "3 ft", width = "48 in", count = 2}`,
		"drum = 1000000", "drum = -1", "drum = 0.5", `cement = "0 mL"`, `"" = 1`, `x = {amount = 1, width = "1 m"}`, `"hose-1-1/2" = "100 m"`, "[on_hand]\nx = 1", `primer = ["1 mL", "0.001 mL", 3]`} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, section string) {
		text := shed + "[on_hand]\n" + section
		p, err := plan.Text("job.toml", []byte(text), []byte("item,pack,unit,price\ndrum,1,each,10\nsealant,300,mL,9\ncement,250,mL,7.5\npipe-sch40-2,10,ft,20\n\"hose-1-1/2\",1,m,3\nprimer,100,mL,1\n"))
		if err != nil {
			told(t, err)
			return
		}
		held := map[string]float64{}
		for _, h := range p.Site.Held {
			if !(h.Amount > 0) || h.Count < 1 || h.Width < 0 {
				t.Errorf("%+v is on the rack", h)
			}
			one := h.Amount
			if h.Width > 0 {
				one *= float64(h.Width)
			}
			held[strings.ToLower(strings.Join(strings.Fields(h.Item), " "))] += one * float64(h.Count)
		}
		for _, l := range p.Cost.Bill.Lines {
			if l.Rack < 0 || l.Rack > held[strings.ToLower(l.Item)]*(1+1e-9)+1e-6 {
				t.Errorf("%s: %g of the rack's %g", l.Item, l.Rack, held[strings.ToLower(l.Item)])
			}
			if l.Amount != nil && l.Amount.Minor < 0 || l.Left < 0 {
				t.Errorf("%s: %v, %g left", l.Item, l.Amount, l.Left)
			}
		}
		costs, err := report.CostsOf(p)
		if err != nil {
			t.Fatal(err)
		}
		if data, err := costs.JSON(); err != nil || !json.Valid(data) {
			t.Errorf("no report: %v", err)
		}
	})
}
