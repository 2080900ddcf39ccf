package sticks_test

import (
	"strings"
	"testing"

	"silowright/bom/sticks"
	"silowright/geometry/measure"
)

// solve plans a task, and counts the plan over.
func solve(t testing.TB, task sticks.Task) sticks.Plan {
	t.Helper()
	p, err := sticks.Solve(task)
	if err != nil {
		t.Fatalf("%v\n%+v", err, task)
	}
	if err := p.Verify(task); err != nil {
		t.Fatalf("%v\n%+v\n%+v", err, task, p)
	}
	return p
}

func pieces(pairs ...float64) (out []sticks.Piece) {
	for i := 0; i < len(pairs); i += 2 {
		out = append(out, sticks.Piece{Length: measure.Length(pairs[i]), Count: int(pairs[i+1])})
	}
	return out
}

// Sticks by hand. A stick of L less the trim gives pieces with Σ(l + k) ≤ L + k.
func TestByHand(t *testing.T) {
	sold := func(l measure.Length) []sticks.Stock { return []sticks.Stock{{Length: l, Price: 1, Have: -1}} }
	for _, c := range []struct {
		why  string
		task sticks.Task
		want int64
	}{
		{"half millimetres: L 12000, k 6, l 1995: 6 × 2001 = 12006 = L + k, so 6 a stick; without the last kerf counted, 12000/2001 = 5",
			sticks.Task{Pieces: pieces(1995*0.5, 6), Stock: sold(12000 * 0.5), Kerf: 3}, 1},
		{"the same, one more", sticks.Task{Pieces: pieces(1995*0.5, 7), Stock: sold(12000 * 0.5), Kerf: 3}, 2},
		{"half a millimetre longer: 6 × 2002 = 12012 > 12006",
			sticks.Task{Pieces: pieces(1996*0.5, 6), Stock: sold(12000 * 0.5), Kerf: 3}, 2},
		{"sixty-fourths are exact: 8 × (14 15/16 + 1/16) = 120 = 119 15/16 + 1/16",
			sticks.Task{Pieces: pieces((14+15.0/16)*25.4, 8), Stock: sold((119 + 15.0/16) * 25.4), Kerf: 25.4 / 16}, 1},
		{"trim 10 of 1000 leaves 990: 2 × 495 without kerf",
			sticks.Task{Pieces: pieces(495, 4), Stock: sold(1000), Trim: 10}, 2},
		{"trim 11 leaves 989: one each", sticks.Task{Pieces: pieces(495, 4), Stock: sold(1000), Trim: 11}, 4},
		{"hold 100: of 1000, pieces of 50 may take 900, 18 a stick, not 20",
			sticks.Task{Pieces: pieces(50, 36), Stock: sold(1000), Hold: 100}, 2},
		{"one more is another stick", sticks.Task{Pieces: pieces(50, 37), Stock: sold(1000), Hold: 100}, 3},
		{"a piece of 100 can be held itself: 18 × 50 beside it",
			sticks.Task{Pieces: pieces(50, 18, 100, 1), Stock: sold(1000), Hold: 100}, 1},
		{"hold after the kerf: 9 × (95 + 5) = 900 leaves 100",
			sticks.Task{Pieces: pieces(95, 9), Stock: sold(1000), Hold: 100, Kerf: 5}, 1},
		{"hold 101 leaves 8 a stick", sticks.Task{Pieces: pieces(95, 9), Stock: sold(1000), Hold: 101, Kerf: 5}, 2},
		{"L 132, pieces 44 × 2, 33 × 3, 12 × 6: the relaxation is 259/132 = 1.962, yet 2 sticks do not do (exhaustive search)",
			sticks.Task{Pieces: pieces(44, 2, 33, 3, 12, 6), Stock: sold(132)}, 3},
	} {
		p := solve(t, c.task)
		if p.Cost != c.want || !p.Proven {
			t.Errorf("%s: %d sticks, proven %v, want %d", c.why, p.Cost, p.Proven, c.want)
		}
	}
}

// What is on the rack is free and taken first; the rest is bought at the least
// price. 1000 gives 600 + 400 and 700 gives 600, which leaves no 300: one stick
// of 600 at 5, cheaper than one of 1200 at 9.
func TestRack(t *testing.T) {
	p := solve(t, sticks.Task{
		Pieces: []sticks.Piece{{600, 2, "leg"}, {300, 1, "rail"}, {400, 1, "stub"}},
		Stock:  []sticks.Stock{{1200, 9, -1, "long"}, {600, 5, -1, "short"}, {1000, 0, 1, "rack"}, {700, 0, 1, "rack"}},
	})
	if p.Cost != 5 || !p.Proven {
		t.Errorf("cost %d, proven %v, want 5", p.Cost, p.Proven)
	}
}

// Equal lengths are planned as one and given back piece by piece.
func TestEqualLengths(t *testing.T) {
	task := sticks.Task{
		Pieces: []sticks.Piece{{100, 5, "a"}, {250, 3, "b"}, {100, 7, "c"}, {100, 1, "d"}},
		Stock:  []sticks.Stock{{Length: 600, Price: 100, Have: -1}},
		Kerf:   2,
	}
	p := solve(t, task)
	// 13 × 102 + 3 × 252 = 2082 ≤ 4 × 602, and 3 × 602 = 1806 is too little.
	if p.Cost != 400 || !p.Proven {
		t.Errorf("cost %d, proven %v, want 400", p.Cost, p.Proven)
	}
}

// An empty task is an empty plan; what cannot be is an error that names it.
func TestErrors(t *testing.T) {
	ten := []sticks.Stock{{Length: 3048, Price: 1, Have: -1, Name: "ten foot"}}
	if p, err := sticks.Solve(sticks.Task{Stock: ten}); err != nil || len(p.Patterns) != 0 || !p.Proven || p.Verify(sticks.Task{Stock: ten}) != nil {
		t.Errorf("empty task: %+v, %v", p, err)
	}
	one := func(l measure.Length, n int) []sticks.Piece { return []sticks.Piece{{l, n, "stub"}} }
	nan := measure.Length(0)
	nan /= nan
	for _, c := range []struct {
		want string
		task sticks.Task
	}{
		{`piece "stub": length`, sticks.Task{Pieces: one(0, 1), Stock: ten}},
		{`piece "stub": length`, sticks.Task{Pieces: one(-1, 1), Stock: ten}},
		{`piece "stub": length`, sticks.Task{Pieces: one(nan, 1), Stock: ten}},
		{`piece "stub": length`, sticks.Task{Pieces: one(1e12, 1), Stock: ten}},
		{`piece "stub": count 0`, sticks.Task{Pieces: one(1, 0), Stock: ten}},
		{`piece "stub": count 2000000000`, sticks.Task{Pieces: one(1, 2e9), Stock: ten}},
		{"kerf: ", sticks.Task{Pieces: one(1, 1), Stock: ten, Kerf: -1}},
		{"hold: ", sticks.Task{Pieces: one(1, 1), Stock: ten, Hold: nan}},
		{`stock "x": length`, sticks.Task{Pieces: one(1, 1), Stock: []sticks.Stock{{0, 1, -1, "x"}}}},
		{`stock "x": price -1`, sticks.Task{Pieces: one(1, 1), Stock: []sticks.Stock{{10, -1, -1, "x"}}}},
		{`piece "stub": 3038.1 mm`, sticks.Task{Pieces: one(3038.1, 1), Stock: ten, Trim: 10}},
		{`at most 3038 mm`, sticks.Task{Pieces: one(3038.1, 1), Stock: ten, Trim: 10}},
		{"there is none left", sticks.Task{Pieces: one(1, 1), Stock: []sticks.Stock{{10, 1, 0, "x"}}}},
		{"there is none left", sticks.Task{Pieces: one(1, 1)}},
		{"do not suffice", sticks.Task{Pieces: one(6, 3), Stock: []sticks.Stock{{10, 1, 2, "x"}}}},
		{"shorter than the saw holds", sticks.Task{Pieces: one(6, 3), Stock: []sticks.Stock{{10, 1, -1, "x"}}, Hold: 7}},
		{"beyond what can be added up", sticks.Task{Pieces: one(6, 1e9), Stock: []sticks.Stock{{10, 1e12, -1, "x"}}}},
	} {
		_, err := sticks.Solve(c.task)
		if err == nil || !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), "; hint: ") {
			t.Errorf("%q does not hold %q", err, c.want)
		}
	}
}
