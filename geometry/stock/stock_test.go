package stock

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	"silowright/geometry/measure"
)

// What must hold of any real part, whatever the table says.
func TestPartsCanExist(t *testing.T) {
	last := Pipe{}
	for _, p := range Pipes() {
		if !(0 < p.Inside && p.Inside < p.Outside && 0 < p.Wall && p.Inside <= p.Outside-2*p.Wall+1e-9) {
			t.Errorf("%s %s: outside %v, wall %v, inside %v mm", p.Size, p.Series, p.Outside, p.Wall, p.Inside)
		}
		if p.Series == last.Series && (p.Outside <= last.Outside || p.Wall < last.Wall) {
			t.Errorf("%s %s does not follow %s", p.Size, p.Series, last.Size)
		}
		if p.Size != NormalSize(p.Size) {
			t.Errorf("size %q is not written as NormalSize does", p.Size)
		}
		last = p
	}
	for _, s := range Sockets() {
		p := pipe(t, s.Size, Schedule40)
		if !(s.Bottom < p.Outside && p.Outside < s.Entrance) {
			t.Errorf("%s: socket %v to %v does not grip pipe %v mm", s.Size, s.Bottom, s.Entrance, p.Outside)
		}
		if c, ok := CouplingOf(s.Size); !ok || c.Outside <= s.Entrance || c.Length < 2*s.Depth-1e-9 {
			t.Errorf("%s: coupling %+v round socket %+v", s.Size, c, s)
		}
	}
	for _, h := range holeRows {
		p := pipe(t, h.size, Schedule40)
		if c, _ := ClearanceHole(h.size); c.Min <= p.Outside+p.Tolerance || c.Max < c.Min {
			t.Errorf("%s: pipe %v mm does not pass %v to %v", h.size, p.Outside, c.Min, c.Max)
		}
		if g, _ := GrommetHole(h.size); g.Min <= p.Outside {
			t.Errorf("%s: no room for a grommet", h.size)
		}
	}
	saws := HoleSaws()
	for i, s := range saws {
		mm, err := measure.ParseLength(s.MetricLabel, measure.UnitMM)
		if err != nil || (mm-s.Diameter).Abs() > 1 {
			t.Errorf("saw %s in is not %s mm", s.Label, s.MetricLabel)
		}
		if i > 0 && s.Diameter <= saws[i-1].Diameter {
			t.Errorf("saw %s does not follow %s", s.Label, saws[i-1].Label)
		}
	}
	for i, s := range Stoppers() {
		if !(s.Bottom < s.SawMin && s.SawMin <= s.SawMax && s.SawMax < s.Top) {
			t.Errorf("stopper %s: saw %v to %v is not within %v to %v mm", s.Number, s.SawMin, s.SawMax, s.Bottom, s.Top)
		}
		if middle := (s.Bottom + s.Top) / 2; ((s.SawMin+s.SawMax)/2 - middle).Abs() > 1 {
			t.Errorf("stopper %s: saw %v to %v is not in the middle of its taper, %v mm", s.Number, s.SawMin, s.SawMax, middle)
		}
		for _, d := range []measure.Length{s.SawMin, s.SawMax} {
			if !slices.ContainsFunc(saws, func(h HoleSaw) bool { return (h.Diameter - d).Abs() < 1e-9 }) {
				t.Errorf("stopper %s: no saw of %s in", s.Number, d.Inch(16))
			}
		}
		if i > 0 && s.Top <= Stoppers()[i-1].Top {
			t.Errorf("stopper %s does not follow", s.Number)
		}
	}
	for i := 1; i < len(Cartridges()); i++ {
		if Cartridges()[i].Volume <= Cartridges()[i-1].Volume {
			t.Errorf("cartridge %s does not follow", Cartridges()[i].Label)
		}
	}
	for _, c := range CementTimes() {
		if c.Set <= 0 || c.Cure < c.Set || c.ColdF >= c.WarmF {
			t.Errorf("cement %+v", c)
		}
	}
	for _, m := range Meshes() {
		if m.Opening <= 0 || m.Strand <= 0 || m.Open <= 0 || m.Open >= 1 || m.OpeningLong < m.Opening {
			t.Errorf("mesh %+v", m)
		}
	}
}

func TestSeriesHaveSizesAndLengths(t *testing.T) {
	for _, s := range Series() {
		if len(PipeSizes(s)) == 0 {
			t.Errorf("%s has no sizes", s)
		}
		last := measure.Length(0)
		for _, l := range StockLengths(s) {
			if label, err := measure.ParseLength(l.Label, measure.UnitInch); err != nil || (label-l.Length).Abs() > 1e-6 || l.Length <= last {
				t.Errorf("%s: length %q is %v mm: %v", s, l.Label, l.Length, err)
			}
			last = l.Length
		}
		if last == 0 {
			t.Errorf("%s has no stock lengths", s)
		}
	}
	if PipeSizes("sch41") != nil || StockLengths("sch41") != nil {
		t.Error("a series that does not exist")
	}
	if _, ok := PipeOf("1 1/2", "sch41"); ok {
		t.Error("a pipe of a series that does not exist")
	}
	if _, ok := PipeOf("5", Schedule40); ok {
		t.Error("a pipe of a size that is not in the table")
	}
}

func TestNormalSize(t *testing.T) {
	for in, want := range map[string]string{
		"1-1/2": "1 1/2", "1 1/2": "1 1/2", " 1  1/2 in ": "1 1/2", "1½": "1 1/2", "1.5": "1 1/2", `2"`: "2", "1/2": "1/2", "0.75": "3/4",
		"110": "110", "110 mm": "110", "110mm": "110", "63 MM": "63", "1.9": "1.9", "": "", " large ": "large", "0": "0", "1e9": "1e9", "2/4": "1/2",
	} {
		if got := NormalSize(in); got != want {
			t.Errorf("NormalSize(%q) = %q, want %q", in, got, want)
		}
	}
}

// Nobody may be shown a number without where it is from and how sure it is.
func TestEveryRowHasSourceAndStanding(t *testing.T) {
	standings := []Standing{Two, One, Derived, Memory}
	seen := map[string]bool{}
	for _, tab := range Tables() {
		if seen[tab.Name] || tab.Title == "" || strings.ContainsAny(tab.Name, " _") {
			t.Errorf("table %q: name taken or not one word, or no title", tab.Name)
		}
		seen[tab.Name] = true
		if diff := cmp.Diff([]string{"source", "standing"}, tab.Columns[len(tab.Columns)-2:]); diff != "" {
			t.Errorf("%s, last columns, -want +got:\n%s", tab.Name, diff)
		}
		if len(tab.Rows) == 0 {
			t.Errorf("%s is empty", tab.Name)
		}
		for _, row := range tab.Rows {
			if len(row) != len(tab.Columns) {
				t.Fatalf("%s: row %q has %d cells for %d columns", tab.Name, row, len(row), len(tab.Columns))
			}
			source, standing := row[len(row)-2], row[len(row)-1]
			if strings.TrimSpace(source) == "" || strings.Contains(source+";", ": ;") {
				t.Errorf("%s: row %q has no source", tab.Name, row)
			}
			for _, s := range strings.Split(standing, "; ") {
				if !slices.ContainsFunc(standings, func(k Standing) bool { return s == string(k) || strings.HasSuffix(s, ": "+string(k)) }) {
					t.Errorf("%s: row %q has standing %q", tab.Name, row, s)
				}
			}
			for _, cell := range row {
				if !utf8.ValidString(cell) || strings.ContainsAny(cell, "\n\t") || strings.Contains(cell, "NaN") || strings.Contains(cell, "Inf") {
					t.Errorf("%s: cell %q", tab.Name, cell)
				}
			}
		}
	}
}

// Callers may keep and change what they get.
func TestSlicesAreCopies(t *testing.T) {
	s := Series()
	s[0] = "changed"
	HoleSaws()[0].Label = "changed"
	Tables()[0].Rows[0][0] = "changed"
	Pipes()[0].Size = "changed"
	if Pipes()[0].Size != "1/2" || Series()[0] != Schedule40 || HoleSaws()[0].Label != "9/16" || Tables()[0].Rows[0][0] != "1/2" {
		t.Error("a table was changed from outside")
	}
}

// A label is told by the division of the tape that is true, a number built in
// not as nothing.
func TestLabelsAreTold(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{shopInch(17 * measure.Inch / 32), "17/32 (13.5)"}, {span(measure.Inch/32, measure.Inch/2), "1/32 to 1/2 (0.8 to 12.7)"},
		{shopInch(10.3), "3/8 (10.3)"}, {Lengths(0.0015), "0.0001 in (0.0015 mm)"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}
