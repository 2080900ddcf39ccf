package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"testing"
	"time"
)

// emptyProgram does nothing: what any process costs.
const emptyProgram = "package main\n\nfunc main() {}\n"

// programs makes the program as it is handed out, and one that does nothing.
func programs(t testing.TB) (silowright, nothing string) {
	t.Helper()
	dir := t.TempDir()
	silowright, nothing = filepath.Join(dir, "silowright"), filepath.Join(dir, "nothing")
	source := filepath.Join(dir, "nothing.go")
	if err := os.WriteFile(source, []byte(emptyProgram), 0o666); err != nil {
		t.Fatal(err)
	}
	for out, what := range map[string]string{silowright: ".", nothing: source} {
		if said, err := exec.Command("go", "build", "-trimpath", "-o", out, what).CombinedOutput(); err != nil {
			t.Fatalf("go build %s: %v\n%s", what, err, said)
		}
	}
	return silowright, nothing
}

// took runs a program to its end in a directory of its own and returns how
// long that was.
func took(t testing.TB, args ...string) time.Duration {
	t.Helper()
	c := exec.Command(args[0], args[1:]...)
	c.Dir = t.TempDir()
	begin := time.Now()
	if err := c.Run(); err != nil {
		t.Fatalf("%v: %v", args, err)
	}
	return time.Since(begin)
}

// BenchmarkCold is a process from its start to its end, file cache warm, held
// against the same program that only tells its version ("x-start": what linking
// its libraries costs is in both) and against a program that does nothing
// ("x-empty"), the three run in turn. The ratios are of medians.
func BenchmarkCold(b *testing.B) {
	silowright, nothing := programs(b)
	for _, args := range [][]string{{"check"}, {"cost"}, {"water"}, {"pack"}} {
		b.Run(args[0], func(b *testing.B) {
			var own, start, empty []time.Duration
			for b.Loop() {
				own = append(own, took(b, append([]string{silowright}, args...)...))
				b.StopTimer()
				start = append(start, took(b, silowright, "--version"))
				empty = append(empty, took(b, nothing))
				b.StartTimer()
			}
			b.ReportMetric(median(own)/median(start), "x-start")
			b.ReportMetric(median(own)/median(empty), "x-empty")
		})
	}
}

func median(times []time.Duration) float64 {
	slices.Sort(times)
	return float64(times[len(times)/2])
}

// peak is a program of the test's own: it runs the command it is given and
// prints the most memory that it held, in kilobytes. The test itself holds too
// much to ask: what a process held before it became another counts for that.
func peak() {
	c := exec.Command(os.Args[1], os.Args[2:]...)
	if err := c.Run(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	fmt.Println(mostHeld(c.ProcessState))
}

// The demo's pack is made in less than 64 MB, all that the process holds
// counted, and so is the cost of 10,000 silos.
func TestPeakMemory(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("the most a process held is asked of Linux")
	}
	silowright, _ := programs(t)
	const most = 64 // MB
	for _, args := range [][]string{{"pack"}, {"check"}, {"cost", "--drum-silos", "10000"}} {
		e := exec.Command("peak", append([]string{silowright}, args...)...)
		e.Dir = t.TempDir()
		out, err := e.Output()
		if err != nil {
			t.Fatal(err)
		}
		kb, err := strconv.Atoi(string(out[:len(out)-1]))
		if err != nil {
			t.Fatal(err)
		}
		t.Logf("%v: %d MB", args, kb/1024)
		if kb/1024 >= most || kb < 4096 {
			t.Errorf("%v held %d MB, allowed less than %d", args, kb/1024, most)
		}
	}
}
