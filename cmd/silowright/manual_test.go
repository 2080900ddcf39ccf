package main

import (
	"fmt"
	"os/exec"
	"regexp"
	"runtime/debug"
	"strings"
	"testing"

	"github.com/spf13/pflag"

	"silowright/render/outside"
)

// A build as the Go tool records it in a checkout without changes, and in one
// with changes: runtime/debug.BuildInfo.
func built(modified string) *debug.BuildInfo {
	return &debug.BuildInfo{
		GoVersion: "go1.99.1",
		Main:      debug.Module{Path: "silowright", Version: "v1.2.3"},
		Settings: []debug.BuildSetting{
			{Key: "vcs", Value: "git"},
			{Key: "vcs.revision", Value: "0123456789abcdef0123456789abcdef01234567"},
			{Key: "vcs.time", Value: "2024-02-28T23:59:59Z"},
			{Key: "vcs.modified", Value: modified},
		},
	}
}

// What a build is, is told as far as it was recorded and never guessed.
func TestVersion(t *testing.T) {
	for _, c := range []struct {
		name string
		info *debug.BuildInfo
		want []string
	}{
		{"clean", built("false"), []string{"silowright v1.2.3\n", "revision   0123456789abcdef0123456789abcdef01234567, unchanged\n", "built with go1.99.1 for "}},
		{"changed", built("true"), []string{"01234567, with changes that are in no commit\n"}},
		{"no checkout", &debug.BuildInfo{GoVersion: "go1.99.1", Main: debug.Module{Version: "(devel)"}},
			[]string{"silowright (devel)\n", "revision   not recorded; hint: "}},
		{"nothing recorded", nil, []string{"silowright (unknown version)\n", "not recorded", "built with go1"}},
	} {
		got := versionText(c.info)
		if strings.Count(got, "\n") != 3 || strings.Contains(got, "2024") {
			t.Errorf("%s: three lines without a time: %q", c.name, got)
		}
		for _, w := range c.want {
			if !strings.Contains(got, w) {
				t.Errorf("%s: %q lacks %q", c.name, got, w)
			}
		}
	}
}

// Every command reads its flags before it does anything, so that its help can
// be had without doing its work.
func TestFlagsOfEveryCommand(t *testing.T) {
	for _, c := range commands() {
		err := c.run(&env{}, []string{"--help"})
		if asked, ok := err.(helpAsked); !ok || asked.flags.Name() != c.name {
			t.Errorf("%s --help: %v", c.name, err)
		}
	}
	if f := flagsOf(packCommand).Lookup("paper"); f == nil {
		t.Error("pack: --paper is not among its flags")
	}
}

// plain is a page as a general program sets it, in one line, without the
// backspaces it marks letters with and with hyphenated words whole.
func plain(page []byte) string {
	text := regexp.MustCompile(`.\x08|\x1b\[[0-9;]*m`).ReplaceAllString(string(page), "")
	return strings.Join(strings.Fields(regexp.MustCompile(`‐\n *`).ReplaceAllString(text, "")), " ")
}

// The manual page is read without a warning by groff and by mandoc, and shows
// every command, flag and example, the exit codes and the job file's sections.
func TestManual(t *testing.T) {
	dated := outside.File(t, "silowright.1", []byte(manual(built("false"))))
	undated := outside.File(t, "silowright.1", []byte(manual(nil)))
	outside.Run(t, "mandoc", "-T", "lint", "-W", "warning", dated)
	outside.Run(t, "mandoc", "-T", "utf8", undated)
	for _, page := range []string{dated, undated} {
		cmd := exec.Command("groff", "-man", "-Tutf8", "-ww", page)
		outside.Run(t, "groff", "--version")
		var warned strings.Builder
		cmd.Stderr = &warned
		out, err := cmd.Output()
		if err != nil || warned.Len() > 0 {
			t.Fatalf("groff: %v\n%s", err, &warned)
		}
		text := plain(out)
		want := []string{"EXIT STATUS 0 done 1 it does not fit or holds a stop 2 bad usage or input", "[pipe_silo]", "drum_silos", "FILES job.toml"}
		for _, c := range commands() {
			flags := flagsOf(c)
			want = append(want, c.usage(flags)+" "+strings.Join(strings.Fields(c.says()), " "), "Example: "+c.example)
			flags.VisitAll(func(f *pflag.Flag) { want = append(want, "--"+f.Name) })
		}
		for _, w := range want {
			if !strings.Contains(text, w) {
				t.Errorf("%s: lacks %q", page, w)
			}
		}
	}
	if !strings.Contains(manual(built("false")), `"2024-02-28" "silowright v1.2.3"`) {
		t.Error("the page is not dated by the commit")
	}
}

// What roff would take for its own is written so that it does not: groff_char(7).
func TestRoff(t *testing.T) {
	for text, want := range map[string]string{
		`a\b`:          `a\eb`,
		"--paper":      `\-\-paper`,
		`"it's"`:       `\(dqit\(aqs\(dq`,
		"5 m³ …":       `5 m\[u00B3] \[u2026]`,
		".TH is no 'x": `\&.TH is no \(aqx`,
		"~^`":          `\(ti\(ha\(ga`,
		"a_b":          `\%a_b`,
	} {
		if got := filled(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	long := filled(strings.Repeat("word .so ", 40))
	for i, l := range strings.Split(long, "\n") {
		if len(l) > 80 || strings.HasPrefix(l, ".") {
			t.Errorf("line %d: %q", i, l)
		}
	}
}

// No line of a help is wider than a screen, but the example to copy.
func TestHelpFitsTheScreen(t *testing.T) {
	for _, c := range commands() {
		var b strings.Builder
		if err := printHelp(&b, c, flagsOf(c)); err != nil {
			t.Fatal(err)
		}
		text, _, ok := strings.Cut(b.String(), "\nExample:\n  "+c.example+"\n")
		if !ok {
			t.Errorf("%s: its help does not end with its example", c.name)
		}
		wide(t, c.name, text)
	}
	var b strings.Builder
	if err := printUsage(&b); err != nil {
		t.Fatal(err)
	}
	wide(t, "help", b.String())
}

func wide(t *testing.T, name, text string) {
	t.Helper()
	for _, l := range strings.Split(text, "\n") {
		if n := len([]rune(l)); n > helpWidth+1 {
			t.Errorf("%s: %d columns: %s", name, n, fmt.Sprint(l))
		}
	}
}
