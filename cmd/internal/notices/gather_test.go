package notices

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
)

// own is the module itself.
const own = "silowright"

// module is a module as the Go tool lists it.
type module struct {
	Path    string
	Version string
	Dir     string
}

// listed are the modules of the packages that go list names, own left out.
// They are listed for one system after the other that the program is built for.
func listed(t *testing.T, args ...string) []module {
	t.Helper()
	found := map[string]module{}
	for _, system := range []string{"linux/amd64", "linux/arm64", "windows/amd64", "darwin/arm64"} {
		goos, goarch, _ := strings.Cut(system, "/")
		cmd := exec.Command("go", append([]string{"list", "-deps", "-json=Module"}, args...)...)
		cmd.Dir = filepath.Join("..", "..", "..")
		cmd.Env = append(os.Environ(), "GOOS="+goos, "GOARCH="+goarch, "CGO_ENABLED=0")
		out, err := cmd.Output()
		if err != nil {
			t.Fatalf("go list: %v", err)
		}
		for d := json.NewDecoder(strings.NewReader(string(out))); ; {
			var p struct{ Module *module }
			if err := d.Decode(&p); errors.Is(err, io.EOF) {
				break
			} else if err != nil {
				t.Fatal(err)
			}
			if p.Module != nil && p.Module.Path != own {
				found[p.Module.Path] = *p.Module
			}
		}
	}
	var all []module
	for _, m := range found {
		all = append(all, m)
	}
	slices.SortFunc(all, func(a, b module) int { return strings.Compare(a.Path, b.Path) })
	return all
}

// terms are the names under which a licence, or what goes with it, lies at the
// root of a module.
var terms = regexp.MustCompile(`(?i)^(licen[cs]e|copying|notice|patents)([.-].*)?$`)

// termsOf reads the licence files of a directory, joined.
func termsOf(t *testing.T, dir string) string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var parts []string
	for _, e := range entries {
		if e.Type() != fs.FileMode(0) || !terms.MatchString(e.Name()) {
			continue
		}
		data, err := os.ReadFile(filepath.Join(dir, e.Name()))
		if err != nil {
			t.Fatal(err)
		}
		parts = append(parts, clean(string(data)))
	}
	return strings.Join(parts, "\n")
}

// clean is a text with plain line ends and no blanks at the ends of lines.
func clean(s string) string {
	lines := strings.Split(strings.ReplaceAll(s, "\r\n", "\n"), "\n")
	for i, l := range lines {
		lines[i] = strings.TrimRight(l, " \t\f")
	}
	return strings.Trim(strings.Join(lines, "\n"), "\n") + "\n"
}

// signs tell a licence by phrases that it alone holds, and by phrases of
// stricter ones near it. All of these let the program be passed on under its
// own terms as long as their notice goes with it. The names are those of the
// SPDX licence list.
var signs = []struct {
	name       string
	with, less []string
}{
	{"MIT", []string{"Permission is hereby granted, free of charge, to any person obtaining a copy", "substantial portions of the Software", "WITHOUT WARRANTY OF ANY KIND"}, nil},
	{"BSD-3-Clause", []string{"Redistribution and use in source and binary forms, with or without modification, are permitted", "endorse or promote products"}, []string{"advertising materials"}},
	{"BSD-2-Clause", []string{"Redistribution and use in source and binary forms, with or without modification, are permitted"}, []string{"endorse or promote products", "advertising materials"}},
	{"Apache-2.0", []string{"Apache License Version 2.0, January 2004", "END OF TERMS AND CONDITIONS"}, nil},
	{"CC-BY-4.0", []string{"Creative Commons Attribution 4.0 International Public License", "exercise the Licensed Rights in the Licensed Material"}, []string{"ShareAlike", "NonCommercial", "NoDerivatives"}},
}

// kindOf names the licence that a text is; empty when it is none of the known
// ones, or holds words of two.
func kindOf(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	if strings.Contains(text, "GENERAL PUBLIC LICENSE") || strings.Contains(text, "Mozilla Public License") {
		return ""
	}
	var found []string
	for _, s := range signs {
		lacks := func(p string) bool { return !strings.Contains(text, p) }
		if !slices.ContainsFunc(s.with, lacks) && !slices.ContainsFunc(s.less, func(p string) bool { return !lacks(p) }) {
			found = append(found, s.name)
		}
	}
	if len(found) != 1 {
		return ""
	}
	return found[0]
}

// goRoot is where the Go tool and its standard library lie.
func goRoot(t *testing.T) string {
	t.Helper()
	out, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	return strings.TrimSpace(string(out))
}

// fontTerms is what the fonts themselves say of their owner and terms.
func fontTerms(t *testing.T) string {
	t.Helper()
	var said string
	for _, ttf := range [][]byte{goregular.TTF, gobold.TTF} {
		f, err := sfnt.Parse(ttf)
		if err != nil {
			t.Fatal(err)
		}
		var b strings.Builder
		for _, id := range []sfnt.NameID{sfnt.NameIDCopyright, sfnt.NameIDLicense} {
			s, err := f.Name(nil, id)
			if err != nil {
				t.Fatal(err)
			}
			b.WriteString(clean(strings.ReplaceAll(s, "\r", "\n")) + "\n")
		}
		if said != "" && said != b.String() {
			t.Fatal("the two fonts say different things of their terms")
		}
		said = b.String()
	}
	return clean(said)
}

// written is a text and whose it is.
type written struct{ of, text string }

// texts joins the texts under their headings; equal ones stand once.
func joined(all []written) string {
	var order []string
	owners := map[string][]string{}
	for _, w := range all {
		if owners[w.text] == nil {
			order = append(order, w.text)
		}
		owners[w.text] = append(owners[w.text], w.of)
	}
	var b strings.Builder
	for _, text := range order {
		fmt.Fprintf(&b, "\n%s\n%s\n%s\n\n%s", strings.Repeat("=", 76), strings.Join(owners[text], "\n"), strings.Repeat("-", 76), text)
	}
	return b.String()
}
