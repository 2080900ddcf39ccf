package main

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// ended is how a run of the program ended.
type ended struct {
	code        int
	out, errout string
}

// program runs the program in dir; with environ nil in this test's environment.
func program(t *testing.T, dir string, environ []string, args ...string) ended {
	t.Helper()
	return finish(t, exec.Command("silowright", args...), dir, environ)
}

func finish(t *testing.T, c *exec.Cmd, dir string, environ []string) ended {
	t.Helper()
	var out, errout bytes.Buffer
	c.Dir, c.Env, c.Stderr = dir, environ, &errout
	if c.Stdout == nil {
		c.Stdout = &out
	}
	err := c.Run()
	if bad := (*exec.ExitError)(nil); err != nil && !errors.As(err, &bad) {
		t.Fatal(err)
	}
	return ended{c.ProcessState.ExitCode(), out.String(), errout.String()}
}

// refused fails unless a run ended with code 2 and one line with a hint that
// holds words.
func (e ended) refused(t *testing.T, words string) {
	t.Helper()
	if e.code != exitBad || !strings.Contains(e.errout, words) {
		t.Errorf("exit code %d, %q; want 2 and %q", e.code, e.errout, words)
	}
	if !strings.HasPrefix(e.errout, "silowright: ") || strings.Count(e.errout, "\n") != 1 || !strings.Contains(e.errout, "; hint: ") {
		t.Errorf("not one line of ours with a hint: %q", e.errout)
	}
}

// sums are the hashes of every file below dir, by name.
func sums(t *testing.T, dir string) map[string]string {
	t.Helper()
	got := map[string]string{}
	err := filepath.WalkDir(dir, func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := os.ReadFile(name)
		rel, _ := filepath.Rel(dir, name)
		got[filepath.ToSlash(rel)] = fmt.Sprintf("%x", sha256.Sum256(text))
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return got
}

// names are the names in dir.
func names(t *testing.T, dir string) []string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, e := range entries {
		out = append(out, e.Name())
	}
	return out
}

// packed is a directory with an earlier pack in it, other than the demo's, and
// the pack's sums.
func packed(t *testing.T) (dir string, before map[string]string) {
	t.Helper()
	dir = t.TempDir()
	if e := program(t, dir, nil, "pack", "--paper", "A0"); e.code != exitOK {
		t.Fatal(e.errout)
	}
	before = sums(t, filepath.Join(dir, "shop-pack"))
	if len(before) < 20 {
		t.Fatalf("a pack of %d files", len(before))
	}
	return dir, before
}

// untouched fails unless the earlier pack is as it was, with nothing beside it
// but what is named.
func untouched(t *testing.T, dir string, before map[string]string, beside ...string) {
	t.Helper()
	if diff := cmp.Diff(before, sums(t, filepath.Join(dir, "shop-pack"))); diff != "" {
		t.Errorf("the earlier pack (-before +after):\n%s", diff)
	}
	want := append(beside, "shop-pack")
	slices.Sort(want)
	if diff := cmp.Diff(want, names(t, dir)); diff != "" {
		t.Errorf("beside the pack (-want +got):\n%s", diff)
	}
}

// Without home, path, temporary directory, locale or font settings the pack is
// made as ever: the program asks the environment for nothing.
func TestNothingInTheEnvironment(t *testing.T) {
	t.Parallel()
	dir, _ := packed(t)
	usual, bare := t.TempDir(), t.TempDir()
	if e := program(t, usual, nil, "pack"); e.code != exitOK {
		t.Fatal(e.errout)
	}
	environ := []string{}
	if root := os.Getenv("SYSTEMROOT"); root != "" {
		environ = append(environ, "SYSTEMROOT="+root)
	}
	if e := program(t, bare, environ, "pack"); e.code != exitOK {
		t.Fatal(e.errout)
	}
	want := sums(t, filepath.Join(usual, "shop-pack"))
	if diff := cmp.Diff(want, sums(t, filepath.Join(bare, "shop-pack"))); diff != "" {
		t.Error(diff)
	}
	if cmp.Equal(want, sums(t, filepath.Join(dir, "shop-pack"))) {
		t.Error("two papers, one pack: the comparison sees nothing")
	}
}

// The output's place is wrong: a file, below a file, without a parent.
func TestOutputPlaceIsWrong(t *testing.T) {
	t.Parallel()
	dir, before := packed(t)
	if err := os.WriteFile(filepath.Join(dir, "file"), []byte("mine"), 0o666); err != nil {
		t.Fatal(err)
	}
	for out, words := range map[string]string{
		"file":      "file: is a file, not a directory",
		"file/pack": "what it would stand in is a file",
		"no/pack":   "the directory it would stand in does not exist; hint: make no first",
		".":         "is the directory you are in",
	} {
		program(t, dir, nil, "pack", "--out", out).refused(t, words)
		untouched(t, dir, before, "file")
	}
	if text, err := os.ReadFile(filepath.Join(dir, "file")); err != nil || string(text) != "mine" {
		t.Errorf("the file holds %q, %v", text, err)
	}
}

// A price list that another program writes all the while: each run ends as it
// should or with one line about the list, and the pack is whole and of one of
// the states that were ever on the disk in full or in part.
func TestPriceListWrittenMeanwhile(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	if e := program(t, dir, nil, "start", "job"); e.code != exitOK {
		t.Fatal(e.errout)
	}
	job, list := filepath.Join("job", "job.toml"), filepath.Join(dir, "job", "prices.csv")
	text, err := os.ReadFile(list)
	if err != nil {
		t.Fatal(err)
	}
	if e := program(t, dir, nil, "pack", job); e.code != exitOK {
		t.Fatal(e.errout)
	}
	stop, stopped := make(chan bool), make(chan error)
	go func() {
		for {
			select {
			case <-stop:
				stopped <- nil
				return
			default:
			}
			time.Sleep(3 * time.Millisecond) // whole
			f, err := os.Create(list)
			time.Sleep(15 * time.Millisecond) // emptied, as it is found most times
			for _, part := range [][]byte{text[:len(text)/2], text[len(text)/2:]} {
				if err == nil {
					_, err = f.Write(part)
				}
				time.Sleep(2 * time.Millisecond) // the half, then the whole
			}
			if err = errors.Join(err, f.Close()); err != nil {
				<-stop
				stopped <- err
				return
			}
		}
	}()
	refusals := 0
	for range 12 {
		before := sums(t, filepath.Join(dir, "shop-pack"))
		e := program(t, dir, nil, "pack", job)
		if e.code == exitOK {
			continue
		}
		refusals++
		e.refused(t, "prices.csv")
		untouched(t, dir, before, "job")
	}
	close(stop)
	if err := <-stopped; err != nil {
		t.Fatal(err)
	}
	t.Logf("12 runs, %d refused", refusals)
	if refusals == 0 {
		t.Error("the list was never found half-written: nothing was tried")
	}
	if e := program(t, dir, nil, "pack", job); e.code != exitOK {
		t.Errorf("written in full again, yet: %s", e.errout)
	}
}

// A price list cut at any byte gives a bill or one line about it, never a
// crash; the job file likewise.
func TestInputCutShort(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("many runs")
	}
	dir := t.TempDir()
	if e := program(t, dir, nil, "start", "job"); e.code != exitOK {
		t.Fatal(e.errout)
	}
	for _, name := range []string{"prices.csv", "job.toml"} {
		full := filepath.Join(dir, "job", name)
		text, err := os.ReadFile(full)
		if err != nil {
			t.Fatal(err)
		}
		told := 0
		for cut := 0; cut < len(text); cut += 1 + len(text)/60 {
			if err := os.WriteFile(full, text[:cut], 0o666); err != nil {
				t.Fatal(err)
			}
			var out, errout bytes.Buffer
			code := run([]string{"cost", filepath.Join("job", "job.toml")}, &env{stdout: &out, stderr: &errout, dir: dir})
			if code == exitBad {
				told++
				ended{code, out.String(), errout.String()}.refused(t, name)
			}
		}
		if told == 0 {
			t.Errorf("%s cut short was never noticed", name)
		}
		if err := os.WriteFile(full, text, 0o666); err != nil {
			t.Fatal(err)
		}
	}
}
