package main

import (
	"bytes"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

var console = regexp.MustCompile("(?s)```console\n(.*?)```")

// What the README shows of a command is what it prints: line for line, "…" for
// any number of lines.
func TestReadmeShowsWhatIsPrinted(t *testing.T) {
	t.Parallel()
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	shown := console.FindAllSubmatch(readme, -1)
	if len(shown) < 2 {
		t.Errorf("%d pieces shown: is this the README?", len(shown))
	}
	for _, m := range shown {
		lines := strings.Split(strings.TrimSuffix(string(m[1]), "\n"), "\n")
		words := strings.Fields(lines[0])
		if len(words) < 3 || words[0] != "$" || words[1] != "silowright" {
			t.Errorf("%q is no command", lines[0])
			continue
		}
		var out, errs bytes.Buffer
		if code := run(words[2:], &env{stdout: &out, stderr: &errs, dir: t.TempDir()}); code == exitBad {
			t.Errorf("%s: %s", lines[0], errs.String())
		}
		printed := strings.Split(out.String(), "\n")
		for _, part := range parted(lines[1:]) {
			at := slices.IndexFunc(printed, func(l string) bool { return l == part[0] })
			if at < 0 || at+len(part) > len(printed) || !slices.Equal(printed[at:at+len(part)], part) {
				t.Errorf("%s does not print\n%s", lines[0], strings.Join(part, "\n"))
				break
			}
			printed = printed[at+len(part):]
		}
	}
}

// parted parts lines at those that are "…".
func parted(lines []string) [][]string {
	var out [][]string
	for len(lines) > 0 {
		n := slices.Index(lines, "…")
		if n < 0 {
			n = len(lines)
		}
		if n > 0 {
			out = append(out, lines[:n])
		}
		lines = lines[min(n+1, len(lines)):]
	}
	return out
}

// What a builder reads is read in five minutes, at 250 words a minute.
func TestReadmeIsShort(t *testing.T) {
	t.Parallel()
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	text, _, there := strings.Cut(string(readme), "\n## Reference\n")
	if n := len(strings.Fields(text)); !there || n > 1250 || n < 500 {
		t.Errorf("%d words before the reference, allowed 1250", n)
	}
}
