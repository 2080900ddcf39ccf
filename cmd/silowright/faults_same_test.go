package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"

	"silowright/render/outside"
)

// surroundings are environments whose difference no byte may show: time zones
// half a day apart and none at all, languages that write numbers, letters and
// the alphabet's order in other ways, one processor and eight, memory taken
// back all the time.
var surroundings = []struct {
	name    string
	environ []string
}{
	{"plain", []string{"TZ=UTC", "LANG=C", "GOMAXPROCS=8"}},
	{"far east", []string{"TZ=Pacific/Kiritimati", "LANG=tr_TR.UTF-8", "LC_ALL=tr_TR.UTF-8", "GOMAXPROCS=1"}},
	{"far west", []string{"TZ=America/Adak", "LANG=de_DE.ISO-8859-1", "LC_NUMERIC=de_DE", "GOMAXPROCS=2", "GOGC=5"}},
	{"odd", []string{"TZ=:no/such\nzone", "LANG=\xff\xfe", "LC_ALL=", "HOME=/no/such", "TMPDIR=/no/such", "PATH=", "GOMAXPROCS=3"}},
}

// everything writes all that the program writes into dir and returns its sums,
// those of what it prints among them. Two jobs: the demo, and the one in
// millimetres that start writes.
func everything(t *testing.T, bin, dir string, environ []string) map[string]string {
	t.Helper()
	if root := os.Getenv("SYSTEMROOT"); root != "" {
		environ = append(environ, "SYSTEMROOT="+root)
	}
	printed(t, bin, dir, environ, "1", []string{"start", "job", "--units", "mm"})
	for name, args := range map[string][]string{
		"2": {"pack"},
		"3": {"pack", "job/job.toml", "--out", "mm"},
		"4": {"check", "--json"},
		"5": {"check", "--all", "job/job.toml"},
		"6": {"cost"},
		"7": {"water"},
		"8": {"tables"},
		"9": {"seed"},
	} {
		printed(t, bin, dir, environ, name, args)
	}
	return sums(t, dir)
}

func printed(t *testing.T, bin, dir string, environ []string, name string, args []string) {
	t.Helper()
	e := finish(t, exec.Command(bin, args...), dir, environ)
	if e.code == exitBad {
		t.Fatalf("%v: %s", args, e.errout)
	}
	text := bytes.Join([][]byte{[]byte(e.out), []byte(e.errout)}, []byte("\n--\n"))
	if err := os.WriteFile(filepath.Join(dir, name+".txt"), text, 0o666); err != nil {
		t.Fatal(err)
	}
}

// ownPath is where the program is, for a child without a path.
func ownPath(t *testing.T) string {
	t.Helper()
	bin, err := exec.LookPath("silowright")
	if err != nil {
		t.Fatal(err)
	}
	return bin
}

// The same bytes in a directory near and in one deep down, a second time and in
// each of the surroundings.
func TestSameBytes(t *testing.T) {
	t.Parallel()
	bin := ownPath(t)
	want := everything(t, bin, t.TempDir(), surroundings[0].environ)
	if len(want) < 40 {
		t.Fatalf("%d files: is everything written?", len(want))
	}
	for _, s := range surroundings {
		t.Run(s.name, func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), "deeper", "with spaces, and ünïcode")
			if err := os.MkdirAll(dir, 0o777); err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(want, everything(t, bin, dir, s.environ)); diff != "" {
				t.Errorf("(-plain +%s):\n%s", s.name, diff)
			}
		})
	}
}

// A build that watches for races writes the same bytes, and finds none. It
// takes a while to make, so that it is tried where SILO_RACE is set.
func TestSameBytesWatchedForRaces(t *testing.T) {
	if os.Getenv("SILO_RACE") == "" {
		t.Skip("set SILO_RACE to build and try it")
	}
	bin := filepath.Join(t.TempDir(), "silowright")
	if out, err := exec.Command("go", "build", "-race", "-o", bin, ".").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	want := everything(t, ownPath(t), t.TempDir(), surroundings[0].environ)
	for _, s := range surroundings[:2] {
		environ := append([]string{"GORACE=exitcode=66 halt_on_error=1"}, s.environ...)
		if diff := cmp.Diff(want, everything(t, bin, t.TempDir(), environ)); diff != "" {
			t.Errorf("%s (-plain +watched):\n%s", s.name, diff)
		}
	}
}

// A build for another processor, which joins products and sums where this one
// rounds twice, writes the same bytes. It runs in an emulator.
func TestSameBytesOnArm64(t *testing.T) {
	t.Parallel()
	emulator := outside.Find(t, "qemu-aarch64-static")
	dir := t.TempDir()
	build := exec.Command("go", "build", "-o", filepath.Join(dir, "arm64"), ".")
	build.Env = append(os.Environ(), "GOOS=linux", "GOARCH=arm64", "CGO_ENABLED=0")
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	bin := filepath.Join(dir, "silowright")
	script := fmt.Sprintf("#!/bin/sh\nexec %s %s/arm64 \"$@\"\n", emulator, dir)
	if err := os.WriteFile(bin, []byte(script), 0o777); err != nil {
		t.Fatal(err)
	}
	plain := surroundings[0].environ
	if diff := cmp.Diff(everything(t, ownPath(t), t.TempDir(), plain), everything(t, bin, t.TempDir(), plain)); diff != "" {
		t.Errorf("(-here +arm64):\n%s", diff)
	}
}
