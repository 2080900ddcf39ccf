package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/spf13/pflag"

	"silowright/render/outside"
)

// asks are command lines with the cursor at their end, and some of the words
// that must and must not be offered there.
var asks = []struct {
	line    string
	want    []string
	wantNot []string
}{
	{"silowright ", []string{"start", "check", "completion", "help"}, []string{"job.toml"}},
	{"silowright co", []string{"cost", "compare", "count", "completion"}, []string{"check"}},
	{"silowright hole --s", []string{"--saw", "--schedule", "--series", "--stopper"}, []string{"--pipe", "--strips"}},
	{"silowright check my", []string{"my-job.toml"}, []string{"--json"}},
	{"silowright pack --out ", []string{"my-job.toml", "shop"}, []string{"--paper"}},
	{"silowright tables hole", []string{"hole-saws"}, []string{"pipes", "my-job.toml"}},
	{"silowright completion ", []string{"bash", "zsh", "fish"}, []string{"my-job.toml"}},
	{"silowright help wa", []string{"water"}, []string{"check"}},
}

// script writes a shell's completion to a file, and is beside a folder with a
// job file.
func script(t *testing.T, shell, name string) (file, dir string) {
	t.Helper()
	for _, s := range shells {
		if s.name == shell {
			file = outside.File(t, name, []byte(s.write(choices())))
		}
	}
	dir = t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, "shop"), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "my-job.toml"), nil, 0o666); err != nil {
		t.Fatal(err)
	}
	return file, dir
}

// offers tries every line with a shell that prints what it offers, one a line.
func offers(t *testing.T, dir string, shell func(line string) []string) {
	t.Helper()
	for _, a := range asks {
		args := shell(a.line)
		cmd := exec.Command(args[0], args[1:]...)
		cmd.Dir = dir
		cmd.Env = append(os.Environ(), "HOME="+dir, "XDG_CONFIG_HOME="+dir, "XDG_DATA_HOME="+dir, "TERM=dumb", "LC_ALL=C.UTF-8")
		out, err := cmd.CombinedOutput()
		if err != nil {
			t.Fatalf("%s: %v\n%s", a.line, err, out)
		}
		var got []string
		for _, l := range strings.Split(strings.ReplaceAll(string(out), "\r", ""), "\n") {
			word, _, _ := strings.Cut(l, "\t")
			got = append(got, strings.TrimSuffix(strings.TrimSpace(word), "/"))
		}
		for _, w := range a.want {
			if !slices.Contains(got, w) {
				t.Errorf("%q: %q is not offered: %q", a.line, w, got)
			}
		}
		for _, w := range a.wantNot {
			if slices.Contains(got, w) {
				t.Errorf("%q: %q is offered", a.line, w)
			}
		}
	}
}

// bash takes the script, and its function offers the words: bash(1),
// Programmable Completion.
func TestBashCompletes(t *testing.T) {
	outside.Run(t, "bash", "--version")
	file, dir := script(t, "bash", "silowright.bash")
	outside.Run(t, "bash", "-n", file)
	offers(t, dir, func(line string) []string {
		return []string{"bash", "--norc", "-c", `source "$1"; complete -p silowright >/dev/null || exit 3
read -ra COMP_WORDS <<<"$2"; case "$2" in *" ") COMP_WORDS+=("") ;; esac
COMP_CWORD=$((${#COMP_WORDS[@]} - 1)); _silowright; printf '%s\n' "${COMPREPLY[@]}"`, "bash", file, line}
	})
}

// fish is asked by its own complete -C.
func TestFishCompletes(t *testing.T) {
	outside.Run(t, "fish", "--version")
	file, dir := script(t, "fish", "silowright.fish")
	outside.Run(t, "fish", "--no-execute", file)
	offers(t, dir, func(line string) []string {
		return []string{"fish", "--no-config", "-c", `source $argv[1]; complete -C $argv[2]`, file, line}
	})
}

// zsh completes in a terminal of its own, where a Tab is typed: zshmodules(1),
// zsh/zpty. What is offered is listed one a line.
func TestZshCompletes(t *testing.T) {
	outside.Run(t, "zsh", "--version")
	file, dir := script(t, "zsh", "_silowright")
	outside.Run(t, "zsh", "-n", file)
	typed := filepath.Join("testdata", "typed.zsh")
	typed, err := filepath.Abs(typed)
	if err != nil {
		t.Fatal(err)
	}
	offers(t, dir, func(line string) []string { return []string{"zsh", "-f", typed, filepath.Dir(file), line} })
}

// Every command and every flag is in what each shell is told.
func TestCompletionHoldsEverything(t *testing.T) {
	for _, s := range shells {
		text := s.write(choices())
		for _, c := range commands() {
			if !strings.Contains(text, c.name) {
				t.Errorf("%s: lacks %s", s.name, c.name)
			}
			flagsOf(c).VisitAll(func(f *pflag.Flag) {
				long := "--" + f.Name
				if s.name == "fish" {
					long = "-l " + f.Name + " "
				}
				if !strings.Contains(text, long) {
					t.Errorf("%s: lacks --%s of %s", s.name, f.Name, c.name)
				}
			})
		}
	}
}
