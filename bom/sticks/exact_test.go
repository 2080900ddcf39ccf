package sticks_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"silowright/bom/sticks"
	"silowright/render/outside"
)

// Tiny tasks against every plan there is, also where sticks are too few.
func TestAgainstEveryPlan(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	refused := 0
	for n := range 300 {
		task := random(r, shape{kinds: 3, count: 3, stocks: 3, limited: true})
		if n%4 == 0 { // all limited
			last := &task.Stock[len(task.Stock)-1]
			last.Have = 1 + r.IntN(3)
		}
		want := least(task)
		p, err := sticks.Solve(task)
		if want == math.MaxInt64 {
			refused++
			if err == nil {
				t.Errorf("task %d: no plan exists, got %+v", n, p)
			}
			continue
		}
		if err != nil {
			t.Errorf("task %d: %v, want cost %d\n%+v", n, err, want, task)
			continue
		}
		if err := p.Verify(task); err != nil {
			t.Errorf("task %d: %v", n, err)
		}
		if p.Cost != want || !p.Proven {
			t.Errorf("task %d: cost %d, bound %d, proven %v; want %d\n%+v", n, p.Cost, p.Bound, p.Proven, want, task)
		}
	}
	if refused < 5 {
		t.Errorf("only %d tasks without a plan", refused)
	}
}

// program writes a task as an integer programme over all its patterns, in the
// LP format that GLPK and CBC read.
func program(t sticks.Task) []byte {
	var obj, rows, ints strings.Builder
	obj.WriteString("Minimize\n obj:")
	rows.WriteString("Subject To\n")
	ints.WriteString("General\n")
	demand := make([]strings.Builder, len(t.Pieces))
	have := make([]strings.Builder, len(t.Stock))
	v := 0
	for j := range t.Stock {
		for _, w := range ways(t, j) {
			x := fmt.Sprintf("x%d", v)
			v++
			fmt.Fprintf(&obj, " + %d %s\n", t.Stock[j].Price, x)
			fmt.Fprintf(&have[j], " + %s\n", x)
			fmt.Fprintf(&ints, " %s\n", x)
			for i, a := range w {
				if a > 0 {
					fmt.Fprintf(&demand[i], " + %d %s\n", a, x)
				}
			}
		}
	}
	for i, p := range t.Pieces {
		fmt.Fprintf(&rows, " d%d:%s >= %d\n", i, demand[i].String(), p.Count)
	}
	for j, s := range t.Stock {
		if s.Have >= 0 && have[j].Len() > 0 {
			fmt.Fprintf(&rows, " h%d:%s <= %d\n", j, have[j].String(), s.Have)
		}
	}
	return []byte(obj.String() + "\n" + rows.String() + ints.String() + "End\n")
}

var objective = regexp.MustCompile(`(?im)^(?:Objective:\s+obj = |Optimal - objective value\s+)([-+.\de]+)`)

// optimum reads the optimal cost out of what the program wrote to the file.
func optimum(t testing.TB, file string) int64 {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	m := objective.FindSubmatch(data)
	if m == nil {
		t.Fatalf("no optimum in\n%.600s", data)
	}
	v, err := strconv.ParseFloat(string(m[1]), 64)
	if err != nil || v != math.Round(v) {
		t.Fatalf("%s: %v", m[1], err)
	}
	return int64(v)
}

func glpk(t testing.TB, lp []byte) int64 {
	t.Helper()
	file := outside.File(t, "a.lp", lp)
	out := filepath.Join(filepath.Dir(file), "glpk.txt")
	outside.Run(t, "glpsol", "--lp", file, "-o", out)
	return optimum(t, out)
}

func cbc(t testing.TB, lp []byte) int64 {
	t.Helper()
	file := outside.File(t, "a.lp", lp)
	out := filepath.Join(filepath.Dir(file), "cbc.txt")
	outside.Run(t, "cbc", file, "ratioGap", "0", "allowableGap", "0", "solve", "solution", out)
	return optimum(t, out)
}

// small tasks of one or several stock lengths for the outside programs.
func small(seed uint64, n, count int) (out []sticks.Task) {
	r := rand.New(rand.NewPCG(seed, 7))
	for len(out) < n {
		t := random(r, shape{kinds: 5, count: count, stocks: 1 + len(out)%4, limited: len(out)%2 == 0})
		all := 0
		for j := range t.Stock {
			all += len(ways(t, j))
		}
		if all < 400 {
			out = append(out, t)
		}
	}
	return out
}

// GLPK (glpsol) and CBC (cbc), general solvers of integer programmes, reach the
// same least cost with all patterns written out.
func TestAgainstGeneralSolvers(t *testing.T) {
	for _, c := range []struct {
		name         string
		solve        func(testing.TB, []byte) int64
		seed         uint64
		tasks, count int
	}{{"GLPK", glpk, 1, 250, 5}, {"CBC", cbc, 2, 150, 12}} {
		t.Run(c.name, func(t *testing.T) {
			for n, task := range small(c.seed, c.tasks, c.count) {
				p := solve(t, task)
				if want := c.solve(t, program(task)); p.Cost != want || !p.Proven {
					t.Errorf("task %d: cost %d, bound %d, proven %v; want %d\n%+v", n, p.Cost, p.Bound, p.Proven, want, task)
				}
			}
		})
	}
}
