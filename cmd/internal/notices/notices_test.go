package notices

import (
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write modules.txt and texts.txt anew")

// purposes say what each module is there for. A module without a row fails the
// test, and so does a row without a module.
var purposes = map[string]string{
	"github.com/ajstarks/svgo":           "SVG elements",
	"github.com/jung-kurt/gofpdf":        "PDF pages, fonts, bookmarks",
	"github.com/pelletier/go-toml/v2":    "the job file, strict",
	"github.com/spf13/pflag":             "flags",
	"github.com/xuri/excelize/v2":        "the workbook",
	"golang.org/x/image":                 "the Go fonts and their widths",
	"github.com/richardlehane/mscfb":     "for excelize",
	"github.com/richardlehane/msoleps":   "for excelize",
	"github.com/tiendc/go-deepcopy":      "for excelize",
	"github.com/xuri/efp":                "for excelize",
	"github.com/xuri/nfp":                "for excelize",
	"golang.org/x/crypto":                "for excelize",
	"golang.org/x/net":                   "for excelize",
	"golang.org/x/text":                  "for excelize and image",
	"github.com/chromedp/cdproto":        "the page tried in a browser",
	"github.com/chromedp/chromedp":       "the page tried in a browser",
	"github.com/go-json-experiment/json": "for chromedp",
	"github.com/google/go-cmp":           "what differs",
	"github.com/rogpeppe/go-internal":    "the commands tried by scripts",
	"golang.org/x/sys":                   "two directories swapped in one step",
	"golang.org/x/tools":                 "for go-internal",
	"gonum.org/v1/gonum":                 "integrals and statistics to compare with",
}

// row is one line of the list.
type row struct{ name, version, licence, purpose string }

func rowOf(t *testing.T, m module) row {
	t.Helper()
	kind := kindOf(termsOf(t, m.Dir))
	if kind == "" {
		t.Errorf("%s: its licence is none of the known kinds; read %s before it is used", m.Path, m.Dir)
	}
	if purposes[m.Path] == "" {
		t.Errorf("%s: has no purpose in this test; what is it for?", m.Path)
	}
	return row{m.Path, m.Version, kind, purposes[m.Path]}
}

// list writes rows in columns.
func list(rows []row) string {
	var w [3]int
	for _, r := range rows {
		for i, s := range []string{r.name, r.version, r.licence} {
			w[i] = max(w[i], len(s))
		}
	}
	var b strings.Builder
	for _, r := range rows {
		b.WriteString(strings.TrimRight(fmt.Sprintf("  %-*s  %-*s  %-*s  %s", w[0], r.name, w[1], r.version, w[2], r.licence, r.purpose), " ") + "\n")
	}
	return b.String()
}

// The list and the texts are those of the modules that the Go tool builds the
// program from, on every system it is built for.
func TestNoticesAreThoseOfTheBuild(t *testing.T) {
	program := listed(t, "./cmd/silowright")
	tests := listed(t, "-test", "./...")
	if len(program) < 5 || len(tests) <= len(program) {
		t.Fatalf("%d modules in the program, %d with the tests: is everything listed?", len(program), len(tests))
	}
	rows := []row{{own, "", kindOf(termsOf(t, filepath.Join("..", "..", ".."))), "the program itself"},
		{"Go's standard library", "", kindOf(termsOf(t, goRoot(t))), "the language"}}
	all := []written{{own, termsOf(t, filepath.Join("..", "..", ".."))}, {"Go's standard library", termsOf(t, goRoot(t))}}
	in := map[string]bool{}
	for _, m := range program {
		in[m.Path] = true
		rows = append(rows, rowOf(t, m))
		all = append(all, written{m.Path + " " + m.Version + ", unchanged, https://pkg.go.dev/" + m.Path, termsOf(t, m.Dir)})
	}
	all = append(all, written{"the Go fonts, in the program and in every PDF file it writes", fontTerms(t)})
	var rest []row
	for _, m := range tests {
		if !in[m.Path] {
			rest = append(rest, rowOf(t, m))
		}
	}
	for name := range purposes {
		if !slices.ContainsFunc(tests, func(m module) bool { return m.Path == name }) {
			t.Errorf("%s: nothing uses it any more; take the row away", name)
		}
	}
	golden(t, "modules.txt", "In the program:\n\n"+list(rows)+"\nIn the tests alone:\n\n"+list(rest))
	golden(t, "texts.txt", joined(all)[1:])
}

func golden(t *testing.T, name, want string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(name, []byte(want), 0o666); err != nil {
			t.Fatal(err)
		}
		return
	}
	got, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, strings.ReplaceAll(string(got), "\r\n", "\n")); diff != "" {
		t.Errorf("%s is not of this build; hint: go test ./cmd/internal/notices -update, and read the diff (-build +file):\n%s", name, diff)
	}
}

// What is handed on is whole: a heading and the first words of the licence for
// every module of the program, and the fonts' owner.
func TestTextsAreWhole(t *testing.T) {
	program, _ := held()
	if len(program) < 5 {
		t.Errorf("%d modules: is the list whole?", len(program))
	}
	flat := strings.Join(strings.Fields(Texts()), " ")
	for _, r := range program {
		if !strings.Contains(Texts(), "\n"+r.name+" "+r.version+", unchanged") {
			t.Errorf("%s: has no licence text", r.name)
		}
		for _, s := range signs {
			if s.name == r.licence && !strings.Contains(flat, s.with[0]) {
				t.Errorf("%s: the words of %s are missing", r.name, r.licence)
			}
		}
	}
	if !strings.Contains(Texts(), "Bigelow & Holmes") {
		t.Error("the fonts' owner is missing")
	}
}

// A licence that asks for more than its notice is not taken for one that does
// not. The phrases are from the licences' own texts.
func TestKindOf(t *testing.T) {
	bsd := "Redistribution and use in source and binary forms, with or without\nmodification, are permitted provided that"
	for text, want := range map[string]string{
		bsd: "BSD-2-Clause",
		bsd + " … may be used to endorse or promote products derived":                 "BSD-3-Clause",
		bsd + " … All advertising materials mentioning features or use of this":       "",
		"GNU GENERAL PUBLIC LICENSE Version 3, 29 June 2007":                          "",
		bsd + " or the GNU LESSER GENERAL PUBLIC LICENSE Version 2.1":                 "",
		"Creative Commons Attribution-NonCommercial 4.0 International Public License": "",
		"": "",
	} {
		if got := kindOf(text); got != want {
			t.Errorf("%.60q: %q, want %q", text, got, want)
		}
	}
}

// held reads the list's rows of modules: those in the program, those that only
// tests use.
func held() (program, tests map[string]row) {
	program, tests = map[string]row{}, map[string]row{}
	to := program
	for _, line := range strings.Split(Modules(), "\n") {
		f := strings.Fields(line)
		switch {
		case strings.HasPrefix(line, "In the tests alone"):
			to = tests
		case len(f) >= 4 && strings.Contains(f[0], "/"):
			to[f[0]] = row{f[0], f[1], f[2], strings.Join(f[3:], " ")}
		}
	}
	return program, tests
}

// Every module that go.mod asks for is in the README: one of the program with
// its licence and purpose as the list has them.
func TestReadmeNamesEveryRequirement(t *testing.T) {
	mod, err := os.ReadFile(filepath.Join("..", "..", "..", "go.mod"))
	if err != nil {
		t.Fatal(err)
	}
	readme, err := os.ReadFile(filepath.Join("..", "..", "..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	program, tests := held()
	asked := 0
	for _, line := range strings.Split(string(mod), "\n") {
		f := strings.Fields(line)
		if len(f) != 2 || !strings.Contains(f[0], "/") {
			continue // no requirement, or one that others ask for
		}
		asked++
		want := f[0]
		if r, ok := program[f[0]]; ok {
			want = fmt.Sprintf("| %s | %s | %s |", r.name, r.licence, r.purpose)
		} else if _, ok := tests[f[0]]; !ok {
			t.Errorf("%s: go.mod asks for it, and nothing uses it", f[0])
		}
		if !strings.Contains(string(readme), want) {
			t.Errorf("the README lacks %q", want)
		}
	}
	if asked < 5 {
		t.Errorf("%d requirements read: is this go.mod?", asked)
	}
}

// guessed is what the tool that writes the bill of materials takes Go's own
// licence for. Its text has the clause on binary forms, which BSD-Source-Code
// has not; the SPDX list has it as BSD-3-Clause.
const guessed = "BSD-Source-Code"

// The list agrees with a bill of materials in the CycloneDX format that a
// general tool wrote of the same program: modules, versions, licences.
// .ci/materials writes one and names it in SILO_SBOM.
func TestBillOfMaterials(t *testing.T) {
	name := os.Getenv("SILO_SBOM")
	if name == "" {
		t.Skip("set SILO_SBOM to a CycloneDX file; .ci/materials writes one")
	}
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	var bill struct {
		BomFormat  string
		Components []struct {
			Name, Version string
			Evidence      struct {
				Licenses []struct{ License struct{ ID string } }
			}
		}
	}
	if err := json.Unmarshal(data, &bill); err != nil {
		t.Fatal(err)
	}
	if bill.BomFormat != "CycloneDX" {
		t.Fatalf("%s: format %q", name, bill.BomFormat)
	}
	got := map[string]string{}
	for _, c := range bill.Components {
		if c.Name == "std" {
			continue
		}
		var ids []string
		for _, l := range c.Evidence.Licenses {
			id := l.License.ID
			if id == guessed && strings.HasPrefix(c.Name, "golang.org/x/") {
				id = "BSD-3-Clause"
			}
			ids = append(ids, id)
		}
		got[c.Name] = strings.TrimSpace(c.Version + " " + strings.Join(ids, ","))
	}
	want := map[string]string{}
	program, _ := held()
	for _, r := range program {
		want[r.name] = r.version + " " + r.licence
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-list +bill of materials):\n%s", diff)
	}
}
