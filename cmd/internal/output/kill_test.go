package output

import (
	"bufio"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"
)

// The child of the tests below is this test program run again.
const (
	childDir    = "SILOWRIGHT_OUTPUT_CHILD" // the directory it writes in
	childMoment = "SILOWRIGHT_OUTPUT_MOMENT"
	childMoves  = "SILOWRIGHT_OUTPUT_MOVES" // "two renames" or nothing
)

// generation is a set whose files all tell its number and their own length, so
// that a mixed or a half-written set shows.
func generation(g int) []File {
	var out []File
	for i := range 8 + g%4 {
		name := fmt.Sprintf("f%d.txt", i)
		if i%3 == 0 {
			name = fmt.Sprintf("d%d/%s", g%2, name)
		}
		out = append(out, File{name, oneOf(g, i)})
	}
	return out
}

// oneOf is file i of a generation.
func oneOf(g, i int) []byte {
	return []byte(fmt.Sprintf("%d %d\n", g, i) + strings.Repeat("x", 3000*i) + "\nend\n")
}

// TestKilledChild is no test by itself: it writes sets and single files until
// it is killed.
func TestKilledChild(t *testing.T) {
	parent := os.Getenv(childDir)
	if parent == "" {
		t.Skip("the child of the other tests")
	}
	m := system
	if os.Getenv(childMoves) != "" {
		m = twoRenames
	}
	if k, err := strconv.Atoi(os.Getenv(childMoment)); err == nil {
		m = dyingAt(m, k)
	}
	target := filepath.Join(parent, "pack")
	for g := 1; ; g++ {
		if err := m.replace(target, generation(g)); err != nil {
			t.Fatal(err)
		}
		if err := Write(filepath.Join(parent, "one.txt"), oneOf(g, 5)); err != nil {
			t.Fatal(err)
		}
		if g == 1 {
			fmt.Println("writing")
		}
	}
}

// die ends this process as kill -9 does.
func die() {
	p, err := os.FindProcess(os.Getpid())
	if err == nil {
		err = p.Kill()
	}
	if err != nil {
		panic(err)
	}
	select {}
}

// dyingAt is m that dies at the k-th moment of its moves: each move has one
// before and one after it. A move that fails has one.
func dyingAt(m mover, k int) mover {
	at := 0
	step := func() {
		if at++; at > k {
			die()
		}
	}
	around := func(move func(a, b string) error) func(a, b string) error {
		return func(a, b string) error {
			step()
			err := move(a, b)
			if err == nil {
				step()
			}
			return err
		}
	}
	return mover{around(m.rename), around(m.exchange)}
}

func child(t *testing.T, parent, moves, moment string) *exec.Cmd {
	t.Helper()
	c := exec.Command(os.Args[0], "-test.run=^TestKilledChild$")
	c.Env = append(os.Environ(), childDir+"="+parent, childMoves+"="+moves, childMoment+"="+moment)
	c.Stderr = os.Stderr
	return c
}

// wholeSet fails unless dir holds one generation as it was written, and
// returns its number.
func wholeSet(t *testing.T, dir string) int {
	t.Helper()
	known, ours, err := markerOf(dir)
	if err != nil || !ours {
		t.Fatalf("no whole set at its place: %v, %v", ours, err)
	}
	got := tree(t, dir)
	var g int
	for _, text := range got {
		if _, err := fmt.Sscanf(text, "%d", &g); err != nil {
			t.Fatal(err)
		}
		break
	}
	want := generation(g)
	if len(got) != len(want) || len(known) != len(want)+1 {
		t.Fatalf("generation %d: %d files there, %d listed, want %d", g, len(got), len(known)-1, len(want))
	}
	for _, f := range want {
		if got[f.Name] != string(f.Data) || !known[f.Name] {
			t.Fatalf("generation %d: %s has %d bytes, want %d; listed %v", g, f.Name, len(got[f.Name]), len(f.Data), known[f.Name])
		}
	}
	return g
}

// wholeFile fails unless name holds one generation of the single file.
func wholeFile(t *testing.T, name string) {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	var g int
	if _, err := fmt.Sscanf(string(text), "%d", &g); err != nil || string(text) != string(oneOf(g, 5)) {
		t.Fatalf("%d bytes that are no generation: %v", len(text), err)
	}
}

// strays counts work directories.
func strays(t *testing.T, parent string) int {
	t.Helper()
	all, err := filepath.Glob(filepath.Join(parent, ".silowright-*"))
	if err != nil {
		t.Fatal(err)
	}
	return len(all)
}

// A process that writes sets is killed at random moments, again and again in
// the same directory. Each time one whole set is at its place; with two
// renames at the latest after the next run has begun.
func TestKilledAtRandom(t *testing.T) {
	for _, c := range []struct {
		moves string
		kills int
	}{{"", 40}, {"two renames", 24}} {
		t.Run("moves "+c.moves, func(t *testing.T) {
			t.Parallel()
			parent := t.TempDir()
			target := filepath.Join(parent, "pack")
			oneStep := c.moves == "" && exchanges(t)
			random := rand.New(rand.NewPCG(7, uint64(c.kills)))
			left, absent := 0, 0
			for range c.kills {
				p := child(t, parent, c.moves, "")
				out, err := p.StdoutPipe()
				if err != nil {
					t.Fatal(err)
				}
				if err := p.Start(); err != nil {
					t.Fatal(err)
				}
				line, _ := bufio.NewReader(out).ReadString('\n')
				time.Sleep(time.Duration(random.IntN(25_000)) * time.Microsecond)
				if err := p.Process.Kill(); err != nil {
					t.Fatal(err)
				}
				if p.Wait() == nil || line != "writing\n" {
					t.Fatalf("the child ended by itself: %q", line)
				}
				if n := strays(t, parent); n > 1 {
					t.Fatalf("%d work directories: earlier ones were not taken away", n)
				} else {
					left += n
				}
				if _, err := os.Lstat(target); err != nil && !oneStep {
					absent++
					tidy(parent)
				}
				wholeSet(t, target)
				wholeFile(t, filepath.Join(parent, "one.txt"))
			}
			if left == 0 {
				t.Errorf("none of %d kills fell into the writing: nothing was tried", c.kills)
			}
			if err := Replace(target, generation(1000)); err != nil {
				t.Fatal(err)
			}
			if g := wholeSet(t, target); g != 1000 {
				t.Errorf("generation %d stands there", g)
			}
			onlyIn(t, parent, "one.txt", "pack")
			t.Logf("%d kills: %d left a work directory, %d between the two renames", c.kills, left, absent)
		})
	}
}

// exchanges reports whether this system and disk exchange two names.
func exchanges(t *testing.T) bool {
	dir := t.TempDir()
	a, b := filepath.Join(dir, "a"), filepath.Join(dir, "b")
	for _, d := range []string{a, filepath.Join(b, "in")} {
		if err := os.MkdirAll(d, 0o777); err != nil {
			t.Fatal(err)
		}
	}
	if err := exchange(a, b); err != nil {
		t.Logf("no exchange here: %v", err)
		return false
	}
	if _, err := os.Stat(filepath.Join(a, "in")); err != nil {
		t.Errorf("exchange did not swap: %v", err)
	}
	return true
}

// Killed before and after each move of the swap: what stands at the target
// then, and after the next run has begun.
func TestKilledAtEachMove(t *testing.T) {
	const none = 0
	type row struct {
		moves  string
		moment int
		now    int // the generation at its place; 900 was there before
		next   int // after the next run has begun
	}
	rows := []row{
		{"two renames", 0, 900, 900}, // before the exchange that there is none of
		{"two renames", 1, 900, 900},
		{"two renames", 2, none, 900}, // moved aside
		{"two renames", 3, none, 900},
		{"two renames", 4, 1, 1},
	}
	if exchanges(t) {
		rows = append(rows, row{"", 0, 900, 900}, row{"", 1, 1, 1})
	}
	for _, c := range rows {
		t.Run(fmt.Sprintf("%s %d", c.moves, c.moment), func(t *testing.T) {
			parent := t.TempDir()
			target := filepath.Join(parent, "pack")
			if err := Replace(target, generation(900)); err != nil {
				t.Fatal(err)
			}
			if err := child(t, parent, c.moves, strconv.Itoa(c.moment)).Run(); err == nil {
				t.Fatal("the child was to be killed")
			}
			if n := strays(t, parent); n != 1 {
				t.Errorf("%d work directories after the kill", n)
			}
			if _, err := os.Lstat(target); (err != nil) != (c.now == none) {
				t.Errorf("at its place: %v, want generation %d", err, c.now)
			} else if c.now != none && wholeSet(t, target) != c.now {
				t.Errorf("generation %d, want %d", wholeSet(t, target), c.now)
			}
			// the next run writes something else beside it
			if err := Write(filepath.Join(parent, "other.txt"), nil); err != nil {
				t.Fatal(err)
			}
			if g := wholeSet(t, target); g != c.next {
				t.Errorf("generation %d after the next run, want %d", g, c.next)
			}
			onlyIn(t, parent, "other.txt", "pack")
		})
	}
}
