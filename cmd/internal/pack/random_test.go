package pack

import (
	"fmt"
	"math/rand"
	"os"
	"path/filepath"
	"testing"

	"silowright/cmd/internal/plan"
)

// randomJob writes a job of a random drum with random holes, mm or in.
func randomJob(r *rand.Rand) string {
	between := func(a, b float64) float64 { return a + r.Float64()*(b-a) }
	pick := func(words ...string) string { return words[r.Intn(len(words))] }
	outside := between(300, 1200)
	height := outside * between(1.2, 1.8)
	low, top := height*between(0.25, 0.35), height*between(0.6, 0.75)
	hoop := outside * between(1.02, 1.06)
	wall := between(2, 8)
	return fmt.Sprintf(`name = "random %d"
units = %q
drum_silos = %d
pipe_silos = %d
[[drum]]
label = "lot"
outside = "%.2f mm"
height = "%.2f mm"
wall = "%.2f mm"
foot_outside = "%.2f mm"
foot_height = "%.2f mm"
head_recess = "%.2f mm"
hoops = [{from = "%.2f mm", to = "%.2f mm", outside = "%.2f mm"}, {from = "%.2f mm", to = "%.2f mm", outside = "%.2f mm"}]
[lattice]
bars = %d
edge = %q
[outlet]
joint = %q
below_rim = "%.2f mm"
round = "%.2f mm"
[inlet]
joint = %q
`, r.Intn(1000), pick("in", "mm"), 1+r.Intn(40), r.Intn(20),
		outside, height, wall, outside*between(0.85, 1), height*between(0.03, 0.15), between(0, 40),
		low, low+between(15, 45), hoop, top, top+between(15, 45), hoop,
		2+r.Intn(4), pick("arc", "straight"), pick("couplings", "grommet"), between(90, 250), between(0, 3*outside), pick("couplings", "grommet"))
}

// Whatever job is taken can be packed: every page is finite, in the fonts and
// on its paper (pack.Make refuses any other), and the tables hold no NaN.
func TestRandomJobsPack(t *testing.T) {
	n := 30
	if testing.Short() {
		n = 5
	}
	r := rand.New(rand.NewSource(7))
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "prices.csv"), []byte("item,pack,unit,price\ndrum,1,each,10.00\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	taken := 0
	for range n {
		text := randomJob(r)
		file := filepath.Join(dir, "job.toml")
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		p, err := plan.Load(file)
		if err != nil {
			t.Logf("refused: %v", err)
			continue
		}
		taken++
		if _, err := Make(p, DefaultOptions(p.Job.Units)); err != nil {
			t.Errorf("%v, for the job\n%s", err, text)
		}
	}
	if taken < n/2 {
		t.Errorf("only %d of %d random jobs were taken", taken, n)
	}
}
