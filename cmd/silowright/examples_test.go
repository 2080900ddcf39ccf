package main

import (
	"bufio"
	"errors"
	"os/exec"
	"strings"
	"testing"

	"silowright/render/outside"
)

// before is what a command's example needs to stand there first: the folders
// of jobs that start writes.
var before = map[string][]string{
	"check":   {"my-silos"},
	"pack":    {"my-silos"},
	"cost":    {"my-silos"},
	"compare": {"couplings", "grommets"},
	"water":   {"my-silos"},
	"serve":   {"my-silos"},
}

// Every example that a help ends with, typed into a shell as it stands, does
// what it says: it ends with 0, or with 1 where the job holds a stop, and
// answers something. The one of serve is stopped as soon as it listens.
func TestEveryExampleWorks(t *testing.T) {
	outside.Run(t, "sh", "-c", "exit 0")
	ownPath(t) // the shell finds the program by its name
	for _, c := range commands() {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			for _, job := range before[c.name] {
				shell(t, dir, "silowright start "+job)
			}
			if c.name == "serve" {
				served := strings.Replace(c.example, " --open", " --port 0", 1)
				if served == c.example {
					t.Fatalf("%q has no --open to leave away here", c.example)
				}
				listens(t, dir, served)
				return
			}
			out := shell(t, dir, c.example)
			if redirected := strings.Contains(c.example, " > "); redirected == (out != "") {
				t.Errorf("%s: prints %q", c.example, out)
			}
		})
	}
}

// shell runs a line in dir and returns what it prints.
func shell(t *testing.T, dir, line string) string {
	t.Helper()
	cmd := exec.Command("sh", "-c", line)
	cmd.Dir = dir
	var errout strings.Builder
	cmd.Stderr = &errout
	out, err := cmd.Output()
	var exit *exec.ExitError
	if errors.As(err, &exit) && exit.ExitCode() == exitStop {
		err = nil
	}
	if err != nil || errout.Len() > 0 {
		t.Fatalf("%s: %v\n%s", line, err, &errout)
	}
	return string(out)
}

// listens starts a line that serves, and stops it when it says where.
func listens(t *testing.T, dir, line string) {
	t.Helper()
	cmd := exec.Command("sh", "-c", "exec "+line)
	cmd.Dir = dir
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	first, err := bufio.NewReader(out).ReadString('\n')
	if !strings.HasPrefix(first, "open http://localhost:") {
		t.Errorf("%s: %q, %v", line, first, err)
	}
	if err := cmd.Process.Kill(); err != nil {
		t.Error(err)
	}
	_ = cmd.Wait() // it was killed
}
