package main

import (
	"math/rand/v2"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// The program itself is killed while it makes a pack over an earlier one: one
// of the two is there, whole, and the run after the last leaves nothing beside
// it. How each moment of the writing ends is tried where it is written.
func TestPackKilled(t *testing.T) {
	t.Parallel()
	dir, a0 := packed(t)
	target := filepath.Join(dir, "shop-pack")
	letter := t.TempDir()
	begin := time.Now()
	if e := program(t, letter, nil, "pack"); e.code != exitOK {
		t.Fatal(e.errout)
	}
	usual := time.Since(begin) // spreads the kills over a run
	other := sums(t, filepath.Join(letter, "shop-pack"))
	random := rand.New(rand.NewPCG(7, 7))
	killed := 0
	for k := range 8 {
		c := exec.Command("silowright", "pack", "--paper", []string{"letter", "A0"}[k%2])
		c.Dir = dir
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(float64(usual) * (0.2 + 0.9*random.Float64())))
		_ = c.Process.Kill() // it may have ended by itself
		if c.Wait() != nil {
			killed++
		}
		if got := sums(t, target); !cmp.Equal(got, a0) && !cmp.Equal(got, other) {
			t.Fatalf("kill %d left neither pack: %s", k, cmp.Diff(other, got))
		}
	}
	if killed == 0 {
		t.Error("every run ended before it was killed: nothing was tried")
	}
	if e := program(t, dir, nil, "pack"); e.code != exitOK {
		t.Fatal(e.errout)
	}
	untouched(t, dir, other)
	t.Logf("8 runs, %d killed", killed)
}

// A process that is killed leaves what the next one takes away, whatever it
// writes there.
func TestNextRunTidies(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	for left := false; !left; {
		c := exec.Command("silowright", "pack")
		c.Dir = dir
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		done := make(chan error, 1)
		go func() { done <- c.Wait() }()
		for ended := false; !ended && !left; {
			select {
			case <-done:
				ended = true
			default:
				left = strings.Contains(strings.Join(names(t, dir), " "), ".silowright-")
			}
		}
		if left {
			_ = c.Process.Kill()
			<-done
			left = strings.Contains(strings.Join(names(t, dir), " "), ".silowright-")
		}
	}
	if e := program(t, dir, nil, "start", "mine"); e.code != exitOK {
		t.Fatal(e.errout)
	}
	for _, n := range names(t, dir) {
		if strings.HasPrefix(n, ".silowright-") {
			t.Errorf("%s is left", n)
		}
	}
}
