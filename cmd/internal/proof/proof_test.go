package proof

import (
	"go/ast"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// all are all rows.
func all() []Row { return slices.Concat(Numbers(), Checks()) }

// Every row says what, how much, from where, how sure and which test holds it.
func TestRowsAreWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, r := range all() {
		for what, s := range map[string]string{"group": r.Group, "name": r.What, "value": r.Value, "source": r.Source, "standing": r.Standing, "test": r.Test} {
			if strings.TrimSpace(s) == "" || s != strings.TrimSpace(s) || strings.ContainsAny(s, "\n\t") || strings.Contains(s+";", ": ;") {
				t.Errorf("%s: its %s is %q", r.What, what, s)
			}
		}
		if r.weakest() == "" {
			t.Errorf("%s: %q is no standing", r.What, r.Standing)
		}
		if strings.Contains(r.Value, "NaN") || strings.Contains(r.Value, "Inf") {
			t.Errorf("%s: %s", r.What, r.Value)
		}
		if r.weakest() == practice && !strings.Contains(r.Source, "common practice") && !strings.Contains(r.Source+r.Value, "common practice") {
			t.Errorf("%s: common practice, yet %s is its source", r.What, r.Source)
		}
		key := strings.Join([]string{r.What, r.Value, r.Test}, "|")
		if seen[key] {
			t.Errorf("twice: %s", key)
		}
		seen[key] = true
	}
	for _, r := range Numbers() {
		if len(r.of) == 0 {
			t.Errorf("%s: no declaration is told that holds it", r.What)
		}
	}
}

// Every test that a row names stands where it says.
func TestTestsExist(t *testing.T) {
	there := map[string]bool{}
	for _, s := range sources(t) {
		for _, d := range s.Decls {
			if f, ok := d.(*ast.FuncDecl); ok && s.test && isTest(f) {
				there["./"+s.room+" "+f.Name.Name] = true
			}
		}
	}
	if len(there) < 400 {
		t.Fatalf("only %d tests found", len(there))
	}
	for _, r := range all() {
		if !there[r.Test] {
			t.Errorf("%s: there is no test %q", r.What, r.Test)
		}
	}
}

// outside are the words by which a test names what it measures against:
// published standards and authors, general-purpose programs and libraries.
var outside = regexp.MustCompile(`\b(ASTM|ASME|ANSI|ISO \d+|EN 1401|DIN \d+|SAE J\d+|IEEE|RFC|UNESCO|ITTC|IAPWS|NIOSH|NIST|FHWA|FAO|SRAC|OWASP|ECMA|CSS|OR-Library|doi|` +
	`[Hh]andbook|[Tt]extbooks?|Sources?:|[A-Z][a-zé]+,? (1[89]|20)\d\d|common practice|from memory|brute force|[Ee]xhaustive|` +
	`GLPK|CBC|LibreOffice|poppler|mutool|qpdf|rsvg|librsvg|xmllint|Chromium|chromedp|axe-core|gonum)\b|outside\.(Run|Pages|Least|Convert)\(`)

// notChecks are tests that name one of those words and yet hold nothing to it.
var notChecks = map[string]string{
	"./bom/basket TestBoundIsCertain":                "a law: the bound and the search it stops; the search is held by TestAgainstEnumeration",
	"./bom/cover TestBoundIsCertain":                 "the same",
	"./bom/basket FuzzCheapest":                      "any numbers, against the search that TestAgainstEnumeration holds",
	"./bom/cover FuzzLeast":                          "the same",
	"./cmd/internal/table TestPrintingLeadsToThePDF": "the page's own doing; what is printed is held by the pack's tests",
	"./geometry TestGrommetSaysHowSure":              "words of a finding",
	"./render/sheets TestPipeNames":                  "words on a page",
	"./render/sheets TestSeedIsWritten":              "words on a page",
	"./render/sheets TestGrowPages":                  "words of an invented nursery",
	"./render/pdf TestFormIsStoredOnce":              "the size of a file against the same file with fewer windows",
}

// Every test that names a published source or an outside program has a row, and
// so has a test of every file that does.
func TestEveryOutsideCheckIsListed(t *testing.T) {
	listed := map[string]bool{}
	for _, r := range all() {
		listed[r.Test] = true
	}
	for _, s := range sources(t) {
		if !s.test || s.room == "cmd/internal/proof" {
			continue
		}
		text, err := os.ReadFile(filepath.Join(root, s.room, s.file))
		if err != nil {
			t.Fatal(err)
		}
		tests, rows := 0, 0
		for _, d := range s.Decls {
			f, ok := d.(*ast.FuncDecl)
			if !ok || !isTest(f) {
				continue
			}
			tests++
			if name := "./" + s.room + " " + f.Name.Name; listed[name] || notChecks[name] != "" {
				rows++
			}
			from := f.Pos()
			if f.Doc != nil {
				from = f.Doc.Pos()
			}
			// Positions count from the file's own start.
			body := text[from-s.FileStart : f.End()-s.FileStart]
			name := "./" + s.room + " " + f.Name.Name
			if word := outside.Find(body); word != nil && !listed[name] && notChecks[name] == "" {
				t.Errorf("%s names %q and has no row in the ledger", name, word)
			}
		}
		// A helper of the file may be what runs the program.
		if word := outside.Find(text); word != nil && tests > 0 && rows == 0 {
			t.Errorf("./%s, %s names %q and none of its tests has a row in the ledger", s.room, s.file, word)
		}
	}
	for name := range notChecks {
		if listed[name] {
			t.Errorf("%s has a row after all", name)
		}
	}
}

// Every number declared in the pure rooms is in the ledger, or in the list
// below with its reason.
func TestNoNumberWithoutSource(t *testing.T) {
	inLedger := map[string]bool{}
	for _, r := range Numbers() {
		for _, name := range r.of {
			inLedger[name] = true
		}
	}
	excused := map[string]bool{}
	for reason, names := range noFacts {
		for _, name := range strings.Fields(names) {
			if excused[name] || inLedger[name] {
				t.Errorf("%s (%s) is listed twice, or is in the ledger", name, reason)
			}
			excused[name] = true
		}
	}
	declared, telling := map[string]bool{}, map[string]bool{}
	for _, s := range sources(t) {
		if s.test {
			continue
		}
		for _, d := range s.Decls {
			switch d := d.(type) {
			case *ast.GenDecl:
				for _, spec := range d.Specs {
					if v, ok := spec.(*ast.ValueSpec); ok {
						for _, n := range v.Names {
							declared[s.room+"."+n.Name] = true
						}
					}
				}
			case *ast.FuncDecl:
				declared[s.room+"."+d.Name.Name] = true
			}
		}
		if pure, _, _ := strings.Cut(s.room, "/"); pure != "geometry" && pure != "bom" && pure != "nursery" {
			continue
		}
		for _, name := range numbers(s.File) {
			telling[s.room+"."+name] = true
		}
	}
	for _, name := range slices.Sorted(maps.Keys(telling)) {
		if !inLedger[name] && !excused[name] {
			t.Errorf("%s holds a number that is not in the ledger: list it in its room's BuiltIn with source, standing and test, or say in noFacts why it is no fact of the world", name)
		}
	}
	for _, name := range slices.Sorted(maps.Keys(inLedger)) {
		if !declared[name] {
			t.Errorf("a row is read from %s, which is not declared", name)
		}
	}
	for _, name := range slices.Sorted(maps.Keys(excused)) {
		if !telling[name] {
			t.Errorf("%s holds no number any more: take it out of noFacts", name)
		}
	}
}

// The words narrow the rows, and the counts add up.
func TestWithAndCount(t *testing.T) {
	rows := all()
	clamps := With(rows, "J1508", "clamps 128")
	if len(clamps) != 1 || clamps[0].Value != "smallest, in (mm): 6 9/16 (166.7); largest: 8 1/2 (215.9)" || clamps[0].weakest() != memory {
		t.Errorf("%+v", clamps)
	}
	if got := With(rows, "no such word"); got != nil {
		t.Errorf("%d rows", len(got))
	}
	sum := 0
	for _, n := range Count(rows) {
		sum += n
	}
	if sum != len(rows) || len(With(rows)) != len(rows) {
		t.Errorf("%d of %d rows counted", sum, len(rows))
	}
	for standing, want := range map[string]string{"outside: two sources; wall: from memory": memory, "seen": seen, "very sure": "", "": ""} {
		if got := (Row{Standing: standing}).weakest(); got != want {
			t.Errorf("%q: weakest %q, want %q", standing, got, want)
		}
	}
}
