package sticks

import (
	"fmt"
	"math/bits"
)

// Verify counts the plan over against the task: each stick's length, kerfs,
// trim and hold, its offcut, the sticks there are, the pieces wanted and the
// cost. It returns the first fault, or nil. It does not prove the bound.
func (p Plan) Verify(t Task) error {
	if err := t.check(); err != nil {
		return err
	}
	if len(p.Used) != len(t.Stock) {
		return fmt.Errorf("plan: %d stocks, the task has %d; hint: plan this task again", len(p.Used), len(t.Stock))
	}
	kerf, trim, hold := nanometres(t.Kerf), nanometres(t.Trim), nanometres(t.Hold)
	made := make([]int64, len(t.Pieces))
	used := make([]int64, len(t.Stock))
	for n, q := range p.Patterns {
		fault := func(format string, args ...any) error {
			return fmt.Errorf("pattern %d: %s; hint: plan this task again", n+1, fmt.Sprintf(format, args...))
		}
		if q.Stock < 0 || q.Stock >= len(t.Stock) || q.Count <= 0 || len(q.Takes) != len(t.Pieces) {
			return fault("stock %d, count %d, %d pieces are not the task's", q.Stock, q.Count, len(q.Takes))
		}
		usable := nanometres(t.Stock[q.Stock].Length) - trim
		rest, longest := usable, int64(0)
		for i, c := range q.Takes {
			if c < 0 || c > t.Pieces[i].Count {
				return fault("takes %d of piece %d, 0 to %d", c, i+1, t.Pieces[i].Count)
			}
			if c == 0 {
				continue
			}
			l := nanometres(t.Pieces[i].Length)
			hi, lo := bits.Mul64(uint64(l+kerf), uint64(c))
			if hi > 0 || lo > uint64(rest+kerf) || rest+kerf < 0 {
				return fault("pieces and kerfs are longer than the stick")
			}
			rest -= int64(lo)
			longest = max(longest, l)
			made[i] += int64(c) * int64(q.Count)
			if made[i] > int64(t.Pieces[i].Count) {
				return fault("more of piece %d than wanted (%d)", i+1, t.Pieces[i].Count)
			}
		}
		switch {
		case longest == 0:
			return fault("takes no piece")
		case longest < hold && rest < hold:
			return fault("no piece and no offcut is as long as the saw holds")
		case nanometres(q.Offcut) != max(0, rest) || q.Length != t.Stock[q.Stock].Length:
			return fault("offcut or length of the stick is wrong")
		}
		used[q.Stock] += int64(q.Count)
	}
	cost := int64(0)
	for i, m := range made {
		if m != int64(t.Pieces[i].Count) {
			return fmt.Errorf("plan: %d of piece %d, wanted %d; hint: plan this task again", m, i+1, t.Pieces[i].Count)
		}
	}
	for j, n := range used {
		if int64(p.Used[j]) != n || t.Stock[j].Have >= 0 && n > int64(t.Stock[j].Have) {
			return fmt.Errorf("plan: %d sticks of stock %d (said: %d), there are %d; hint: plan this task again", n, j+1, p.Used[j], t.Stock[j].Have)
		}
		cost += n * t.Stock[j].Price
	}
	if cost != p.Cost || p.Bound > p.Cost || p.Bound < 0 || p.Proven != (p.Bound == p.Cost) {
		return fmt.Errorf("plan: cost %d, bound %d and proven %v do not agree with %d counted; hint: plan this task again", p.Cost, p.Bound, p.Proven, cost)
	}
	return nil
}
