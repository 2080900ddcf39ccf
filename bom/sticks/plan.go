package sticks

import (
	"fmt"
	"slices"

	"silowright/geometry/measure"
)

// short returns an error if the plan takes sticks that are missing.
func (t Task) short(in *inst, s *solver) error {
	_, of := t.kinds()
	for _, b := range s.best {
		if in.st[b.st].from >= 0 {
			continue
		}
		for i, a := range b.takes {
			if a > 0 {
				p := slices.Index(of, i)
				l := t.Pieces[p].Length.Both(measure.UnitMM)
				if s.bound >= in.st[b.st].price {
					return fmt.Errorf("%s: %s, the sticks there are do not suffice for all pieces; hint: add a stock length that is on sale in any number", name("piece", p, t.Pieces[p].Name), l)
				}
				return fmt.Errorf("%s: %s, no plan was found that makes do with the sticks there are; hint: add a stock length that is on sale in any number", name("piece", p, t.Pieces[p].Name), l)
			}
		}
	}
	return nil
}

// plan writes the bars as patterns of the task's own pieces.
func (t Task) plan(in *inst, s *solver) Plan {
	p := Plan{Used: make([]int, len(t.Stock)), Cost: s.cost, Bound: min(s.bound, s.cost), Proven: s.bound >= s.cost}
	lengths, of := t.kinds()
	kerf, trim := nanometres(t.Kerf), nanometres(t.Trim)
	bars := slices.Clone(s.best)
	slices.SortStableFunc(bars, func(a, b bar) int {
		if a.st != b.st {
			return in.st[a.st].from - in.st[b.st].from
		}
		return slices.Compare(b.takes, a.takes)
	})
	left := make([]int64, len(t.Pieces))
	for i, q := range t.Pieces {
		left[i] = int64(q.Count)
	}
	for _, b := range bars {
		j := in.st[b.st].from
		offcut := nanometres(t.Stock[j].Length) - trim
		for i, a := range b.takes {
			offcut -= a * (lengths[i] + kerf)
		}
		p.Used[j] += int(b.n)
		for b.n > 0 {
			// Equal pieces share a stick in the order of the list.
			takes, n := make([]int, len(t.Pieces)), b.n
			for i, a := range b.takes {
				if a == 0 {
					continue
				}
				for q, k := range of {
					if c := min(a, left[q]); k == i && c > 0 {
						takes[q] = int(c)
						n = min(n, left[q]/c)
						a -= c
					}
				}
			}
			for q, c := range takes {
				left[q] -= int64(c) * n
			}
			b.n -= n
			last := len(p.Patterns) - 1
			if last >= 0 && p.Patterns[last].Stock == j && slices.Equal(p.Patterns[last].Takes, takes) {
				p.Patterns[last].Count += int(n)
				continue
			}
			p.Patterns = append(p.Patterns, Pattern{
				Stock: j, Count: int(n), Takes: takes,
				Length: t.Stock[j].Length, Offcut: length(max(0, offcut)),
			})
		}
	}
	return p
}
