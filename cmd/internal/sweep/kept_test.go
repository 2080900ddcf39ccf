package sweep

import (
	"errors"
	"path/filepath"
	"strings"
	"testing"

	"silowright/cmd/internal/job"
	"silowright/cmd/internal/pack"
	"silowright/cmd/internal/plan"
	"silowright/geometry/measure"
)

// Jobs on which a sweep once found a fault are taken, and packed whole.
func TestKeptJobs(t *testing.T) {
	dirs, err := filepath.Glob(filepath.Join("testdata", "kept", "*"))
	if err != nil || len(dirs) == 0 {
		t.Fatal("no kept jobs", err)
	}
	for _, dir := range dirs {
		t.Run(filepath.Base(dir), func(t *testing.T) {
			p, err := plan.Load(filepath.Join(dir, "job.toml"))
			if err != nil {
				t.Fatal(err)
			}
			o := pack.DefaultOptions(p.Job.Units)
			o.Strips = true
			m, err := pack.Make(p, o)
			if err != nil {
				t.Fatal(err)
			}
			for _, f := range m.Files {
				for _, fault := range fileFaults(f.Name, f.Data) {
					t.Errorf("%s: %s", f.Name, fault)
				}
			}
		})
	}
}

// The checks of the sweep see what is wrong: an SVG with a line off its page,
// turned words off it, a number that is none, an unclosed element; a stream of
// a PDF with such a number.
func TestFaultsAreSeen(t *testing.T) {
	const head, tail = `<svg width="100mm" height="50mm" viewBox="0 0 100 50">`, `</svg>`
	if got := svgFaults([]byte(head + `<path d="M0 0L100 50"/>` + tail)); len(got) != 0 {
		t.Errorf("a sound page: %v", got)
	}
	for _, wrong := range []string{
		`<path d="M0 0L100.2 50"/>`, `<path d="M90 0A20 20 0 0 1 90 40"/>`, `<path d="M0 0LNaN 3"/>`, `<path d="L1 1"/>`, `<rect x="1"/>`, `<path d="M0 0"`, ``,
		`<text x="90" y="20" font-size="4" textLength="20">w</text>`, `<text x="50" y="10" font-size="4" textLength="20" transform="rotate(-90 50 10)">w</text>`,
	} {
		if len(svgFaults([]byte(head+wrong+tail))) == 0 {
			t.Errorf("nothing is wrong with %s", wrong)
		}
	}
	const pdf = "%%PDF\n4 0 obj\n<</Length 9>>\nstream\nNaN 0 re\n\nendstream\n"
	if _, got := pdfFaults([]byte(pdf)); len(got) != 1 {
		t.Errorf("a stream with NaN: %v", got)
	}
}

// A refusal is told apart by what it names.
func TestKeyOf(t *testing.T) {
	for text, want := range map[string]string{
		"job.toml: on_hand: primer: is counted in each; hint: x": "on_hand", "prices.csv:3: price: \"x\"; hint: x": "price", "job.toml: prices.csv:2: pack: drum: amount too large; hint: x": "pack",
		"prices.csv:3: column 4: \"x\" is not known; hint: x": "column 4", "prices.csv: is not text in UTF-8; hint: x": "a file", "prices.csv:2: drum: 8 fields under 7 headings; hint: x": "a row",
		"paper roll 36 in: margin 1 leave nothing; hint: x": "paper", "job.toml: pump.kwh_price: what 3 kWh; hint: x": "pump.kwh_price",
		"job.toml: energy: -3 kWh; hint: x": "", "job.toml: amount too large": "", "drawing \"Assembly\": a fill is off the page": "", "it went wrong; hint: x": "",
	} {
		if got := keyOf(errors.New(text)); got != want {
			t.Errorf("%q names %q, want %q", text, got, want)
		}
	}
	for _, c := range []struct {
		e    job.Error
		want string
	}{{job.Error{Key: "drum.wall", Line: 3}, "drum.wall"}, {job.Error{Line: 3, Why: "no TOML"}, "a line"}, {job.Error{File: "job.toml", Why: "is not UTF-8 text"}, "a file"}, {job.Error{Why: "is wrong"}, ""}} {
		if got := keyOf(&c.e); got != c.want {
			t.Errorf("%+v names %q, want %q", c.e, got, c.want)
		}
	}
}

// A trace's marks are held against its page, those under a clip apart.
func TestOffTrace(t *testing.T) {
	const line = `<stroke_path linewidth="1" transform="1 0 0 -1 0 50"><moveto x="5" y="5"/><lineto x="%s" y="5"/></stroke_path>`
	page := func(x string) []byte {
		return []byte(`<document><page number="1" mediabox="0 0 100 50">` + strings.Replace(line, "%s", x, 1) + `</page></document>`)
	}
	if got := offTrace(page("100.5")); len(got) != 0 {
		t.Errorf("a line to the edge: %v", got)
	}
	for _, x := range []string{"101", "-3", "nan", "x"} {
		if len(offTrace(page(x))) != 1 {
			t.Errorf("a line to %s is not seen", x)
		}
	}
	if got := offTrace([]byte(`<document><page number="1" mediabox="0 0 9 9"><clip_path/>` + strings.Replace(line, "%s", "101", 1) + `<pop_clip/></page></document>`)); len(got) != 0 {
		t.Errorf("a clipped line: %v", got)
	}
}

// A length written for either unit is the same length.
func TestValuesAreTheSameInBothUnits(t *testing.T) {
	for _, v := range []value{onTape(883.4, asBare), onTape(883.4, asOwn), onTape(4.2, asOwn), onTape(4.2, asMM), {mm: 12.345, style: asBare}, {mm: 12.345, style: asOwn}, {mm: 80, style: asMM}} {
		for _, u := range []measure.Unit{measure.UnitMM, measure.UnitInch} {
			text := v.in(u)
			if text[0] == '"' {
				text = text[1 : len(text)-1]
			}
			l, err := measure.ParseLength(text, u)
			if err != nil || (l-measure.Length(v.mm)).Abs() > 1e-9 {
				t.Errorf("%+v in %s is %s: %v, %v", v, u, text, l, err)
			}
		}
	}
}
