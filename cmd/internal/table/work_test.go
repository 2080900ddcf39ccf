package table

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"slices"
	"strings"
	"testing"

	"silowright/cmd/internal/job"
	"silowright/cmd/internal/plan"
)

// The demo comes out as the other commands have it.
func TestWorkIsThePlans(t *testing.T) {
	d := newDesk(t, Config{})
	p, err := plan.Demo()
	if err != nil {
		t.Fatal(err)
	}
	a := d.work(demoJob, demoPrices, nil, "draw", "cost", "water")
	if a.Error != nil || a.PriceError != nil {
		t.Fatalf("error %+v, price error %+v", a.Error, a.PriceError)
	}
	if a.Job != demoJob {
		t.Error("the text changed without an edit")
	}
	if a.Name != p.Job.Name || a.Units != "in" || a.Tally != p.Tally() {
		t.Errorf("%q, %q, %q", a.Name, a.Units, a.Tally)
	}
	if len(a.Findings) != len(p.Findings) {
		t.Fatalf("%d findings, want %d", len(a.Findings), len(p.Findings))
	}
	for i, f := range a.Findings {
		if q := p.Findings[i]; f.ID != q.ID || f.Says != q.Says || f.Level != q.Level.String() || f.Basis != q.Basis.String() {
			t.Errorf("finding %d: %+v, want %+v", i, f, q)
		}
		if !slices.ContainsFunc(a.Fields, func(q job.Field) bool { return q.Key == f.Field }) {
			t.Errorf("%s sits beside %q, which is no field", f.ID, f.Field)
		}
	}
	if a.Costs == nil || a.Costs.Total != p.TotalText() || len(a.Costs.Orders) != len(p.Cost.Bill.Orders) || len(a.Costs.Curve) < 10 || len(a.Costs.Items) != len(p.Cost.Bill.Lines) {
		t.Errorf("costs: %+v", a.Costs)
	}
	if len(a.Water) == 0 || len(a.Drawings) != 1 || len(a.Wall) != 2 || len(a.Drums) != 1 || a.Drums[0] != (drumName{"Cove", "drum[0]"}) {
		t.Errorf("water %d, drawings %d, walls %d, drums %v", len(a.Water), len(a.Drawings), len(a.Wall), a.Drums)
	}
	if quick := d.work(demoJob, demoPrices, nil, "draw"); quick.Costs != nil || quick.Water != nil || len(quick.Drawings) == 0 {
		t.Error("costs or water came without being wanted, or no drawing")
	}
}

// An edit shows in the text, the field, the findings and the drawing.
func TestWorkEditShows(t *testing.T) {
	d := newDesk(t, Config{})
	before := d.work(demoJob, demoPrices, nil, "draw")
	a := d.work(demoJob, demoPrices, []edit{{"outlet.saw", "2"}, {"inlet.stub", "9"}}, "draw")
	if want := swapped(t, swapped(t, demoJob, `saw       = "2 1/2"`, `saw       = "2"`), `stub         = "7"`, `stub         = "9"`); a.Job != want {
		t.Errorf("the text is\n%s", a.Job)
	}
	i := slices.IndexFunc(a.Findings, func(f finding) bool { return f.ID == "outlet.saw-pipe" })
	if i < 0 || a.Findings[i].Level != "stop" || a.Findings[i].Field != "outlet.saw" || !a.Findings[i].Fixes {
		t.Errorf("a 2 in saw for 2 in pipe: %+v", a.Findings)
	}
	if a.Drawings[0].Section == before.Drawings[0].Section || a.Drawings[0].Wall == before.Drawings[0].Wall {
		t.Error("the drawing is the old one")
	}
}

// A job that is wrong is answered with what is wrong, beside its field, and
// with the fields; the page keeps its last drawings.
func TestWorkWrong(t *testing.T) {
	d := newDesk(t, Config{})
	for _, c := range []struct {
		reason, text      string
		edits             []edit
		key, field, means string
	}{
		{"out of range", demoJob, []edit{{"outlet.saw", "40"}}, "outlet.saw", "outlet.saw", "out of range"},
		{"no length", demoJob, []edit{{"drum[0].wall", "thin"}}, "drum.wall", "drum[0].wall", "is not a length"},
		{"a hoop", demoJob, []edit{{"drum[0].hoops[1].to", "9"}}, "drum.hoops.to", "drum[0].hoops[1].to", "lower edge"},
		{"missing", demoJob, []edit{{"drum[0].height", ""}}, "drum.height", "drum[0].height", "is missing"},
		{"no TOML", "name = \n", nil, "", "", "expected"},
		{"a key nobody knows", demoJob + "\n[paint]\ncolour = 1\n", nil, "paint", "", "unknown key"},
		{"a key that cannot be set", demoJob, []edit{{"outlet.colour", "red"}}, "outlet.colour", "outlet.colour", "cannot be set"},
		{"nothing", "", nil, "drum", "", "is missing"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			a := d.work(c.text, demoPrices, c.edits, "draw", "cost")
			if c.key == "outlet.colour" {
				c.means = "is not a key that can be set"
			}
			if a.Error == nil {
				t.Fatal("no error")
			}
			if c.key != "drum" && a.Error.Key != c.key || a.Error.Field != c.field && c.key != "drum" || !strings.Contains(a.Error.Why, c.means) || a.Error.Text == "" {
				t.Errorf("%+v", *a.Error)
			}
			if len(a.Fields) < 60 {
				t.Errorf("%d fields", len(a.Fields))
			}
			if a.Error.Key != "outlet.colour" && a.Drawings != nil {
				t.Error("drawings of a wrong job")
			}
		})
	}
}

// A price list that is wrong takes the costs away and nothing else.
func TestWorkWrongPrices(t *testing.T) {
	d := newDesk(t, Config{})
	a := d.work(demoJob, "item,price\nmesh,many\n", nil, "draw", "cost")
	if a.Error != nil || a.PriceError == nil || a.PriceError.Text == "" || a.Costs != nil || len(a.Drawings) != 1 || len(a.Findings) == 0 {
		t.Errorf("error %+v, price error %+v, %d drawings", a.Error, a.PriceError, len(a.Drawings))
	}
	a = d.work(demoJob, swapped(t, demoPrices, "\n", "\nx,y,1,each,,,,1e9,,\n"), nil)
	if a.PriceError == nil || a.PriceError.Line != 2 {
		t.Errorf("%+v", a.PriceError)
	}
}

// Two drums: each has its own drawings, and a finding of a drum with a section
// of its own sits beside that.
func TestWorkTwoDrums(t *testing.T) {
	d := newDesk(t, Config{})
	two := swapped(t, demoJob, "[lattice]", `[[drum]]
label = "Second"
count = 0
circumference = "71"
height = "34"
wall = "3/16"
foot_outside = "21"
foot_height = "2"
head_recess = "3/4"
hoops = [{from = "10", to = "11 1/2", outside = "23 5/8"}, {from = "22", to = "23 1/2", outside = "23 5/8"}]
[drum.outlet]
saw = "2"

[lattice]`)
	a := d.work(two, demoPrices, nil, "draw")
	if a.Error != nil || len(a.Drawings) != 2 || len(a.Wall) != 4 || len(a.Drums) != 2 {
		t.Fatalf("%+v, %d drawings, %d walls, %v", a.Error, len(a.Drawings), len(a.Wall), a.Drums)
	}
	fields := map[string]string{}
	for _, f := range a.Findings {
		if f.Key == "outlet.saw" {
			fields[f.Drum+" "+f.ID] = f.Field + " " + f.Level
		}
	}
	if fields["Cove outlet.saw-pipe"] != "outlet.saw ok" || fields["Second outlet.saw-pipe"] != "drum[1].outlet.saw stop" {
		t.Errorf("%v", fields)
	}
	var got struct{ Fixes []fix }
	d.post("/api/fixes", m{"job": two, "prices": demoPrices, "id": "outlet.saw-pipe", "drum": "Second"}, &got)
	if len(got.Fixes) == 0 || got.Fixes[0].Key != "drum[1].outlet.saw" {
		t.Errorf("fixes %+v", got.Fixes)
	}
}

// The wall's numbers are the solved silo's, and its frame is where the drawing
// has them: the outlet's outline lies round the place the frame gives.
func TestWall(t *testing.T) {
	p, err := plan.Demo()
	if err != nil {
		t.Fatal(err)
	}
	s := p.Silos[0]
	d := newDesk(t, Config{})
	a := d.work(demoJob, demoPrices, []edit{{"outlet.round", "20"}}, "draw")
	for _, w := range a.Wall {
		if math.Abs(w.Circumference-s.Spec.Drum.Circumference().MM()) > 1e-9 {
			t.Errorf("%s: all round %v", w.Part, w.Circumference)
		}
		svg := map[string]string{"wall": a.Drawings[0].Wall, "baseWall": a.Drawings[0].BaseWall}[w.Drawing]
		cuts := cutOutlines(t, svg)
		for _, q := range w.Parts {
			x := q.X
			if x >= w.Circumference-w.Frame.Lead {
				x -= w.Circumference
			}
			at := [2]float64{w.Frame.X + x*w.Frame.Scale, w.Frame.Y - q.Y*w.Frame.Scale}
			if !slices.ContainsFunc(cuts, func(c [2]float64) bool { return math.Hypot(c[0]-at[0], c[1]-at[1]) < 0.5 }) {
				t.Errorf("%s: nothing is drawn at %v, only at %v", q.ID, at, cuts)
			}
			if !slices.ContainsFunc(a.Fields, func(f job.Field) bool { return f.Key == q.Keys.X }) || !slices.ContainsFunc(a.Fields, func(f job.Field) bool { return f.Key == q.Keys.Y }) {
				t.Errorf("%s: keys %+v", q.ID, q.Keys)
			}
		}
		if len(w.Clearances) < 5 {
			t.Errorf("%s: %d clearances", w.Part, len(w.Clearances))
		}
		for _, c := range w.Clearances {
			if !slices.ContainsFunc(a.Findings, func(f finding) bool { return f.ID == c.ID && f.Level == c.Level }) {
				t.Errorf("%s: %+v is no finding", w.Part, c)
			}
		}
	}
	if o := a.Wall[0].Parts[0]; o.ID != "outlet" || math.Abs(o.X-508) > 1e-9 || math.Abs(o.Y-s.Outlet.Height.MM()) > 1e-9 { // 20 in
		t.Errorf("outlet %+v", o)
	}
	one, two := a.Wall[0].Parts[1], a.Wall[0].Parts[2]
	if math.Abs(two.XOffset-a.Wall[0].Circumference/2) > 1e-9 || math.Abs(math.Mod(one.X+two.XOffset, a.Wall[0].Circumference)-two.X) > 1e-9 {
		t.Errorf("the second slot is not opposite the first: %+v, %+v", one, two)
	}
}

// cutOutlines are the middles of what is drawn in the cut layer.
func cutOutlines(t *testing.T, svg string) [][2]float64 {
	t.Helper()
	var out [][2]float64
	dec := xml.NewDecoder(strings.NewReader(svg))
	in := false
	for {
		tok, err := dec.Token()
		if errors.Is(err, io.EOF) {
			return out
		}
		if err != nil {
			t.Fatal(err)
		}
		e, ok := tok.(xml.StartElement)
		if !ok {
			continue
		}
		for _, a := range e.Attr {
			switch {
			case e.Name.Local == "g" && a.Name.Local == "class":
				in = a.Value == "layer-cut"
			case in && e.Name.Local == "path" && a.Name.Local == "d":
				out = append(out, middle(t, a.Value))
			}
		}
	}
}

// middle is the middle of the box round a path's points.
func middle(t *testing.T, d string) [2]float64 {
	t.Helper()
	lo, hi := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, s := range pathEnds(t, d) {
		for i := range 2 {
			lo[i], hi[i] = min(lo[i], s[i]), max(hi[i], s[i])
		}
	}
	return [2]float64{(lo[0] + hi[0]) / 2, (lo[1] + hi[1]) / 2}
}

// pathEnds are where the pieces of a path's data end.
func pathEnds(t *testing.T, d string) [][2]float64 {
	t.Helper()
	var out [][2]float64
	for _, piece := range strings.FieldsFunc(strings.NewReplacer("M", "|", "L", "|", "C", "|", "A", "|", "Z", "|").Replace(d), func(r rune) bool { return r == '|' }) {
		var n []float64
		for f := range strings.FieldsSeq(piece) {
			n = append(n, number(t, f))
		}
		if len(n) >= 2 {
			out = append(out, [2]float64{n[len(n)-2], n[len(n)-1]})
		}
	}
	return out
}

// A user's words never become elements or attributes of a drawing, and every
// drawing is well-formed XML.
func TestWordsAreEscaped(t *testing.T) {
	d := newDesk(t, Config{})
	evil := swapped(t, demoJob, `"Tidewrack Cove nursery"`, `"<script>alert(1)</script> ]]> \" ' &amp; <!--"`)
	evil = swapped(t, evil, `"Cove"`, `"x\" onload=\"y<b>"`)
	a := d.work(evil, demoPrices, nil, "draw")
	if a.Error != nil {
		t.Fatal(a.Error)
	}
	k := a.Drawings[0]
	all := []string{k.Section, k.Wall, k.BaseWall, k.Lattice, k.Above}
	for n := 1; ; n += 7 {
		var p shownPage
		if code := d.post("/api/page", m{"job": evil, "prices": demoPrices, "page": n}, &p); code != 200 {
			t.Fatalf("page %d: %d", n, code)
		}
		all = append(all, p.SVG)
		if p.Page == p.Pages {
			break
		}
	}
	known := []string{"svg", "g", "path", "text", "title", "desc"}
	found := false
	for i, svg := range all {
		dec := xml.NewDecoder(strings.NewReader(svg))
		for {
			tok, err := dec.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			if err != nil {
				t.Fatalf("drawing %d: %v", i, err)
			}
			if c, ok := tok.(xml.CharData); ok && strings.Contains(string(c), "<script>") {
				found = true
			}
			e, ok := tok.(xml.StartElement)
			if !ok {
				continue
			}
			if !slices.Contains(known, e.Name.Local) {
				t.Errorf("drawing %d holds an element %q", i, e.Name.Local)
			}
			for _, at := range e.Attr {
				if strings.HasPrefix(at.Name.Local, "on") || at.Name.Local == "style" || at.Name.Local == "href" || at.Name.Local == "id" {
					t.Errorf("drawing %d holds an attribute %q", i, at.Name.Local)
				}
			}
		}
	}
	if !found {
		t.Error("the name stands in no drawing: nothing was tried")
	}
	// and in the answer itself no tag can be read by a browser that takes it for a page
	if raw := d.send("POST", "/api/work", jsonOf(t, m{"job": evil, "prices": demoPrices, "want": []string{"draw"}}), nil); strings.Contains(string(raw.data), "<") {
		t.Error("the answer holds <")
	}
}
