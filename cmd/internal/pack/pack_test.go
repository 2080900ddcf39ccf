package pack

import (
	"archive/zip"
	"bytes"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"silowright/cmd/internal/output"
	"silowright/cmd/internal/plan"
	"silowright/geometry"
	"silowright/geometry/measure"
)

// jobs are the demo and the three invented jobs beside it.
func jobs(t testing.TB) map[string]*plan.Plan {
	t.Helper()
	out := map[string]*plan.Plan{}
	var err error
	if out["demo"], err = plan.Demo(); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"metric", "two-kinds", "stops"} {
		if out[name], err = plan.Load(filepath.Join("..", "..", "..", "testdata", name, "job.toml")); err != nil {
			t.Fatal(err)
		}
	}
	return out
}

func make1(t testing.TB, p *plan.Plan) Made {
	t.Helper()
	m, err := Make(p, DefaultOptions(p.Job.Units))
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func fileNamed(t testing.TB, m Made, name string) []byte {
	t.Helper()
	for _, f := range m.Files {
		if f.Name == name {
			return f.Data
		}
	}
	t.Fatalf("no file %s", name)
	return nil
}

// Every job packs, every file is of the form its name says, and none holds a
// number that is not one.
func TestEveryJobPacks(t *testing.T) {
	for name, p := range jobs(t) {
		t.Run(name, func(t *testing.T) {
			m := make1(t, p)
			svgs := 0
			for _, f := range m.Files {
				switch filepath.Ext(f.Name) {
				case ".svg":
					if strings.HasPrefix(f.Name, "templates/") {
						svgs++
					}
					wellFormed(t, f)
				case ".csv":
					if _, err := csv.NewReader(bytes.NewReader(f.Data)).ReadAll(); err != nil {
						t.Errorf("%s: %v", f.Name, err)
					}
				case ".json":
					if !json.Valid(f.Data) {
						t.Errorf("%s is not JSON", f.Name)
					}
				}
				text := f.Data
				switch filepath.Ext(f.Name) {
				case ".pdf":
					continue
				case ".xlsx":
					text = unzipped(t, f.Data)
				}
				for _, bad := range []string{"NaN", "+Inf", "-Inf", "%!"} {
					if bytes.Contains(text, []byte(bad)) {
						t.Errorf("%s holds %q", f.Name, bad)
					}
				}
			}
			want := 0
			for _, s := range p.Silos {
				for _, tp := range s.Templates {
					if !tp.Strip {
						want++
					}
				}
			}
			if svgs != want {
				t.Errorf("%d SVG files for %d templates", svgs, want)
			}
			if len(fileNamed(t, m, "shop-pack.pdf")) > 1<<20 {
				t.Errorf("the PDF is over 1 MB")
			}
		})
	}
}

func wellFormed(t *testing.T, f output.File) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(f.Data))
	for {
		if _, err := d.Token(); errors.Is(err, io.EOF) {
			return
		} else if err != nil {
			t.Errorf("%s: %v", f.Name, err)
			return
		}
	}
}

func TestSameInputSameBytes(t *testing.T) {
	first, second := jobs(t), jobs(t)
	for name := range first {
		a, b := make1(t, first[name]), make1(t, second[name])
		for i := range a.Files {
			if !bytes.Equal(a.Files[i].Data, b.Files[i].Data) {
				t.Errorf("%s: %s differs between two runs", name, a.Files[i].Name)
			}
		}
	}
}

// The job full of stops is written all the same, and says so.
func TestStopsArePacked(t *testing.T) {
	p := jobs(t)["stops"]
	if geometry.Worst(p.Findings) != geometry.Stop {
		t.Fatal("the job of stops has none")
	}
	if len(fileNamed(t, make1(t, p), "shop-pack.pdf")) == 0 {
		t.Error("nothing was written")
	}
}

// The report carries what the geometry found, in its own units.
func TestReportFields(t *testing.T) {
	p := jobs(t)["demo"]
	var r struct {
		MadeBy string `json:"made_by"`
		Kinds  []struct {
			Stations struct {
				Rim float64 `json:"rim_mm"`
			} `json:"stations"`
			Holes []struct {
				Name string  `json:"name"`
				Saw  float64 `json:"saw_mm"`
			} `json:"holes"`
		} `json:"kinds"`
		Templates []struct {
			Width float64 `json:"width_mm"`
			Open  float64 `json:"open_area_mm2"`
		} `json:"templates"`
		Findings []struct {
			ID    string `json:"id"`
			Level string `json:"level"`
		} `json:"findings"`
		Costs struct {
			Total struct {
				Minor    int64  `json:"minor"`
				Currency string `json:"currency"`
			} `json:"total"`
		} `json:"costs"`
	}
	if err := json.Unmarshal(fileNamed(t, make1(t, p), "report.json"), &r); err != nil {
		t.Fatal(err)
	}
	s := p.Silos[0]
	got := []any{r.MadeBy, r.Kinds[0].Stations.Rim, r.Kinds[0].Holes[0].Name, r.Kinds[0].Holes[0].Saw,
		r.Templates[0].Width, r.Templates[0].Open, len(r.Findings), r.Findings[0].Level, r.Costs.Total.Minor, r.Costs.Total.Currency}
	want := []any{"silowright", s.Stations.Rim.MM(), "outlet", (2.5 * measure.Inch).MM(),
		s.Templates[0].Width.MM(), s.Templates[0].OpenArea.MM2(), len(p.Findings), p.Findings[0].Level.String(), p.Cost.Total.Minor, "USD"}
	if d := cmp.Diff(want, got, cmpopts.EquateApprox(1e-11, 0)); d != "" { // twelve digits
		t.Errorf("report (-want +got):\n%s", d)
	}
}

// unzipped is all the parts of a workbook, one after another.
func unzipped(t *testing.T, data []byte) []byte {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	var out []byte
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		part, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, part...)
	}
	return out
}

// The hole schedule has a row a hole and a row a slot for every kind.
func TestHoleSchedule(t *testing.T) {
	p := jobs(t)["two-kinds"]
	rows, err := csv.NewReader(bytes.NewReader(holesCSV(p))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != 1+6*len(p.Silos) {
		t.Errorf("%d rows for %d kinds", len(rows), len(p.Silos))
	}
	if !strings.HasPrefix(rows[0][0], "hole") || rows[1][0] != "outlet" {
		t.Errorf("first rows: %q, %q", rows[0], rows[1])
	}
}

// An all-metric job takes its pipe from EN 1401 (DN 200, SN 4: 200 mm outside,
// wall 4.9) or whichever size it names; the wrap is π times that.
func TestMetricJobTakesEN1401(t *testing.T) {
	en1401 := map[string][2]float64{"110": {110, 3.2}, "125": {125, 3.2}, "160": {160, 4.0}, "200": {200, 4.9}, "250": {250, 6.2}} // SN 4, mm
	p := jobs(t)["metric"]
	s := p.Silos[0]
	ref := s.Spec.Pipe.Pipe
	want, ok := en1401[ref.Size]
	if ref.Series != "en1401-sn4" || !ok {
		t.Fatalf("the metric job's pipe silo is of %s", ref)
	}
	got := [3]float64{s.Pipe.Outside.MM(), s.Pipe.Wall.MM(), s.Pipe.Wrap.MM()}
	for i, w := range [3]float64{want[0], want[1], want[0] * math.Pi} {
		if math.Abs(got[i]-w) > 1e-6 {
			t.Errorf("outside, wall, wrap: %v, want %v", got, want)
		}
	}
}
