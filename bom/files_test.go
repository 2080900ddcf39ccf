package bom

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"silowright/bom/money"
	"silowright/geometry"
	"silowright/geometry/measure"
)

// Spreadsheets run a cell that begins with one of = + - @, a tab or a return
// (OWASP, "CSV Injection"; wide forms of the signs too).
func TestHarmless(t *testing.T) {
	for in, want := range map[string]string{
		"": "", "drum": "drum", "1.5": "1.5", "-1.5": "-1.5", "+3": "+3", "2031-02-03": "2031-02-03", "10 1/2": "10 1/2", "'": "'",
		"=1+1": "'=1+1", "+1+1": "'+1+1", "-1+1": "'-1+1", "@SUM(A1)": "'@SUM(A1)", "\t=1": "'\t=1", "\r=1": "'\r=1", "\n=1": "'\n=1",
		" =1": "' =1", "\u00a0=1": "'\u00a0=1", "\ufeff=1": "'\ufeff=1", "＝1": "'＝1", "＠x": "'＠x", "-Inf": "'-Inf", "+1e9": "'+1e9", "-": "'-", "−5": "'−5", "=\x00": "'=", "\x00=": "'=",
	} {
		if got := Harmless(in); got != want {
			t.Errorf("%q becomes %q, want %q", in, got, want)
		}
	}
}

// The forms of RFC 4180, section 2: lines end in CR LF (1), commas apart (4),
// quotes round what holds a comma, a quote or a line's end (6), quotes doubled
// (7).
func TestTable(t *testing.T) {
	got := Table([][]string{{"a", "b"}, {"x,y", `6" pipe`}, {"two\nlines", ""}, {"=cmd|' /C calc'!A1", "é ×"}})
	want := "a,b\r\n\"x,y\",\"6\"\" pipe\"\r\n\"two\r\nlines\",\r\n'=cmd|' /C calc'!A1,é ×\r\n"
	if string(got) != want {
		t.Errorf("got %q\nwant %q", got, want)
	}
}

func readTable(t testing.TB, text []byte) [][]string {
	t.Helper()
	rows, err := csv.NewReader(bytes.NewReader(text)).ReadAll() // fails unless all rows have as many fields
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

// bill.csv adds up: a reader who sums the amounts gets the sums written.
func TestBillCSV(t *testing.T) {
	silos := solved(t)
	needs := Takeoff(Batches(silos, 20, 12), DefaultRates(), measure.UnitInch)
	var text strings.Builder
	for i, n := range needs {
		if i%7 != 3 {
			fmt.Fprintf(&text, "%s,,3,%s,%d.%02d,=HYPERLINK(1),2031-02-03\n", n.Item, map[Kind]string{Each: "each", Length: "m", Area: "m2", Volume: "L"}[n.Kind], i, i)
		}
	}
	b, err := price(needs, list(t, text.String()), "USD", 20, 12)
	if err != nil {
		t.Fatal(err)
	}
	first := b.CSV()
	if !bytes.Equal(first, b.CSV()) {
		t.Error("not the same bytes twice")
	}
	rows := readTable(t, first)
	col := map[string]int{}
	for i, h := range rows[0] {
		col[h] = i
	}
	sums, total, missing := map[string]money.Money{}, money.Money{}, 0
	amount := func(r []string, c string) money.Money {
		m, err := money.Parse(r[col[c]], "USD")
		if err != nil {
			t.Fatalf("%v: %v", r, err)
		}
		return m
	}
	add := func(a, b money.Money) money.Money {
		s, err := a.Plus(b)
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	for i, r := range rows[1:] {
		switch {
		case i < len(needs) && r[col["amount"]] == "no price":
			missing++
			if r[col["price"]] != "" || r[col["packs"]] != "" {
				t.Errorf("no price, yet %v", r)
			}
		case i < len(needs):
			m := amount(r, "amount")
			if add(amount(r, "drum_silos_share"), amount(r, "pipe_silos_share")) != m {
				t.Errorf("shares of %v", r)
			}
			sums[r[0]], total = add(sums[r[0]], m), add(total, m)
			if r[col["supplier"]] != "'=HYPERLINK(1)" || r[col["currency"]] != "USD" || r[col["why"]] == "" || r[col["need"]] == "" || r[col["need_us"]] == "" {
				t.Errorf("%v", r)
			}
		case strings.HasPrefix(r[0], "sum of "):
			name, _, short := strings.Cut(strings.TrimPrefix(r[0], "sum of "), ", incomplete: ")
			if r[col["amount"]] == "no price" {
				if sums[name].Minor != 0 || !short {
					t.Errorf("%v", r)
				}
			} else if amount(r, "amount").Minor != sums[name].Minor {
				t.Errorf("%s: %s, the rows come to %v", name, r[col["amount"]], sums[name])
			}
		case strings.HasPrefix(r[0], "total"):
			if amount(r, "amount") != total || r[0] != fmt.Sprintf("total, incomplete: %d without a price", missing) || missing != len(b.Missing) {
				t.Errorf("%v, the rows come to %v, %d missing", r, total, missing)
			}
		}
	}
	if missing == 0 || total.Minor == 0 {
		t.Errorf("%d missing, total %v", missing, total)
	}
	if last := rows[len(rows)-1]; !strings.HasPrefix(last[0], "each pipe silo, incomplete") || last[col["amount"]] != b.PerPipe.Plain() {
		t.Errorf("last row: %v", last)
	}
}

// The cut list of the silo filled in by hand, both units.
func TestCuts(t *testing.T) {
	s := handSilo()
	s.Stations.BaseHeight, s.Stations.BaseCut, s.Stations.RingTop, s.Stations.RingBottom, s.Stations.Rim = 12*in, 22*in, 21.9375*in, 20.9375*in, 20.875*in
	s.Spec.Ring.Width = in
	rows := readTable(t, CutsCSV(CutList([]Batch{{s, 20, 8}}, measure.UnitInch)))
	want := [][]string{
		{"from", "piece", "drum", "count", "length_mm", "length_in", "width_mm", "width_in"},
		{"drum", "base", "blue", "20", "304.8", "12", "", ""},
		{"drum", "retaining ring strip", "blue", "20", "1727.2", "68", "25.4", "1"},
		{"ring strip", "retaining ring", "blue", "20", "1524", "60", "25.4", "1"},
		{"drum", "body", "blue", "20", "530.2", "20 7/8", "", ""},
		{"mesh", "mesh disc", "blue", "20", "609.6", "24", "609.6", "24"},
		{"pipe 2 sch40", "outlet nipple", "blue", "20", "63.5", "2 1/2", "", ""},
		{"pipe 1 1/2 sch40", "inlet nipple", "blue", "20", "50.8", "2", "", ""},
		{"pipe 1 1/2 sch40", "inlet stub", "blue", "20", "152.4", "6", "", ""},
		{"pipe 8 sdr35", "pipe silo", "blue", "8", "355.6", "14", "", ""},
		{"pipe 1 1/2 sch40", "short pipe", "blue", "8", "101.6", "4", "", ""},
		{"screen", "screen square", "blue", "8", "304.8", "12", "304.8", "12"},
	}
	if len(rows) != len(want) {
		t.Fatalf("%d rows, want %d: %v", len(rows), len(want), rows)
	}
	for i := range want {
		if got := strings.Join(rows[i][:8], "|"); got != strings.Join(want[i], "|") {
			t.Errorf("%s\nwant %s", got, strings.Join(want[i], "|"))
		}
		if i > 0 && rows[i][8] == "" {
			t.Errorf("%s: no note", rows[i][1])
		}
	}
	if cuts := CutList([]Batch{{s, 0, 0}}, measure.UnitInch, Run{"main", geometry.PipeRef{Size: "4", Series: "sch40"}, 238 * in, 3}); len(cuts) != 0 {
		t.Errorf("no silos, yet %v", cuts)
	}
}

// What is cut from a drum, and the two kerfs, make up the drum; the ring comes
// from its strip and is not bought.
func TestCutsMakeUpTheDrum(t *testing.T) {
	silos := solved(t)
	for _, s := range silos {
		height := 2 * s.Spec.Saw.Kerf
		var strip, ring measure.Length
		for _, c := range CutList([]Batch{{s, 1, 1}}, measure.UnitInch) {
			switch {
			case c.Piece == "retaining ring strip":
				height, strip = height+c.Width, c.Length
			case c.From == "drum":
				height += c.Length
			case c.Piece == "retaining ring":
				ring = c.Length
			}
		}
		if d := height - s.Spec.Drum.Height; s.Spec.Saw.Kerf <= 0 || d > 1e-9 || d < -1e-9 {
			t.Errorf("base, strip, body and two kerfs of %v are %v of %v mm", s.Spec.Saw.Kerf, height, s.Spec.Drum.Height)
		}
		if ring <= 0 || ring+s.Ring.Surplus-strip > 1e-9 || strip-ring-s.Ring.Surplus > 1e-9 {
			t.Errorf("a ring of %v and a surplus of %v from a strip of %v", ring, s.Ring.Surplus, strip)
		}
	}
	for _, n := range Takeoff(Batches(silos, 20, 12), DefaultRates(), measure.UnitInch) {
		if strings.Contains(n.Item, "ring") || strings.Contains(n.Description, "retaining ring") {
			t.Errorf("%s is bought, though it is made from the drum", n.Item)
		}
	}
}

// Every pipe that is cut is bought: lengths and kerfs of the cut list are the
// takeoff's.
func TestCutsAreBought(t *testing.T) {
	silos := solved(t)
	batches := Batches(silos, 21, 9)
	runs := []Run{{"manifold", geometry.PipeRef{Size: "4", Series: "sch40"}, 119 * in, 5}, {"spare", geometry.PipeRef{Size: "4", Series: "sch40"}, 9 * in, 0}}
	sum := map[string]float64{}
	for _, c := range CutList(batches, measure.UnitInch, runs...) {
		if name, ok := strings.CutPrefix(c.From, "pipe "); ok {
			sum[name] += float64(c.Count) * float64(c.Length+silos[0].Spec.Saw.Kerf)
		}
	}
	seen := 0
	for _, n := range Takeoff(batches, DefaultRates(), measure.UnitInch, runs...) {
		if name, ok := strings.CutPrefix(n.Description, "pipe "); ok && n.Category == Pipe {
			seen++
			if d := n.Total() - sum[name]; d > 1e-5 || d < -1e-5 {
				t.Errorf("%s: %.3f mm bought, %.3f mm cut", name, n.Total(), sum[name])
			}
		}
	}
	if seen != len(sum) || seen < 4 || sum["4 sch40"] == 0 {
		t.Errorf("%d kinds of pipe bought, %d cut", seen, len(sum))
	}
}

// What is written reads back as it was but for apostrophes and line ends, and
// no cell begins like a formula.
func FuzzTable(f *testing.F) {
	for _, s := range []string{"drum", "=1+1", "a,\"b\"\nc", "\t=x", "－1", "-1", "\"", "\r\n"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if !utf8.ValidString(s) {
			return
		}
		cell := readTable(t, Table([][]string{{"x", s}}))[0][1]
		made, clean := Harmless(s), strings.ReplaceAll(s, "\x00", "")
		if made != clean && made != "'"+clean {
			t.Errorf("%q becomes %q", s, made)
		}
		if bare := strings.NewReplacer("\r", ""); bare.Replace(cell) != bare.Replace(made) {
			t.Errorf("%q is read back as %q", made, cell)
		}
		if cell != "" && strings.ContainsRune("=+-@\t", rune(cell[0])) && !plainNumber.MatchString(cell) {
			t.Errorf("%q begins like a formula", cell)
		}
	})
}
