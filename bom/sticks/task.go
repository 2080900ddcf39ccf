package sticks

import (
	"fmt"
	"math/bits"
	"slices"

	"silowright/geometry/measure"
)

// inst is a task in whole reduced units: pieces longest first, each taking its
// length and one kerf, sticks with one kerf more than their usable length.
type inst struct {
	w    []int64 // what one piece takes
	d    []int64 // how many are wanted
	long []bool  // whether the saw can hold one
	item []int   // index in the instance that this is a part of
	st   []stick
	free bool // whether every piece is long, so that Hold asks nothing
}

// stick is a stock length in the units of inst.
type stick struct {
	room  int64 // what pieces may take if one of them can be held
	short int64 // what they may take if none can; below 0 nothing
	price int64
	have  int64 // below 0 any number
	from  int   // index into Task.Stock, −1 for the sticks that are missing
}

// allowed reports whether pieces that take so much may come from the stick.
func (s *stick) allowed(used int64, long bool) bool {
	return used <= s.short || long && used <= s.room
}

func name(kind string, i int, given string) string {
	if given == "" {
		return fmt.Sprintf("%s %d", kind, i+1)
	}
	return fmt.Sprintf("%s %q", kind, given)
}

// inRange reports whether l is a length that Solve takes, of a nanometre or more.
func inRange(l measure.Length) bool { return l > 0 && l <= longest && nanometres(l) > 0 }

// check refuses numbers that are out of range.
func (t Task) check() error {
	for _, v := range []struct {
		key string
		l   measure.Length
	}{{"kerf", t.Kerf}, {"trim", t.Trim}, {"hold", t.Hold}} {
		if !(v.l >= 0 && v.l <= longest) {
			return fmt.Errorf("%s: %s is out of range, 0 to 10 km; hint: give it as a length of the saw's", v.key, v.l.Both(measure.UnitMM))
		}
	}
	if len(t.Pieces) > mostRows || len(t.Stock) > mostKinds {
		return fmt.Errorf("sticks: %d rows of pieces and %d of stock are too many, at most %d and %d; hint: put equal lengths in one row", len(t.Pieces), len(t.Stock), mostRows, mostKinds)
	}
	for i, p := range t.Pieces {
		if !inRange(p.Length) {
			return fmt.Errorf("%s: length %s is out of range, above 0 to 10 km; hint: leave out pieces without a length", name("piece", i, p.Name), p.Length.Both(measure.UnitMM))
		}
		if p.Count <= 0 || p.Count > mostCount {
			return fmt.Errorf("%s: count %d is out of range, 1 to %d; hint: leave out pieces that are not wanted", name("piece", i, p.Name), p.Count, int(mostCount))
		}
	}
	for j, s := range t.Stock {
		if !inRange(s.Length) {
			return fmt.Errorf("%s: length %s is out of range, above 0 to 10 km; hint: give the length of one stick", name("stock", j, s.Name), s.Length.Both(measure.UnitMM))
		}
		if s.Price < 0 || s.Price > mostPrice {
			return fmt.Errorf("%s: price %d is out of range, 0 to %d; hint: give the price of one stick in minor units", name("stock", j, s.Name), s.Price, int64(mostPrice))
		}
	}
	return nil
}

// kinds are the different lengths of the task, longest first, in nanometres,
// and which of them each piece is.
func (t Task) kinds() (lengths []int64, of []int) {
	lengths = make([]int64, 0, len(t.Pieces))
	for _, p := range t.Pieces {
		lengths = append(lengths, nanometres(p.Length))
	}
	slices.Sort(lengths)
	slices.Reverse(lengths)
	lengths = slices.Compact(lengths)
	of = make([]int, len(t.Pieces))
	for i, p := range t.Pieces {
		l := nanometres(p.Length)
		of[i], _ = slices.BinarySearchFunc(lengths, l, func(a, b int64) int {
			switch {
			case a > b:
				return -1
			case a < b:
				return 1
			}
			return 0
		})
	}
	return lengths, of
}

// instance reads the task into whole units.
func (t Task) instance() (*inst, error) {
	if err := t.check(); err != nil {
		return nil, err
	}
	lengths, of := t.kinds()
	kerf, trim, hold := nanometres(t.Kerf), nanometres(t.Trim), nanometres(t.Hold)
	if len(lengths) > mostKinds {
		return nil, fmt.Errorf("sticks: %d different lengths are too many, at most %d; hint: plan each pipe size by itself", len(lengths), mostKinds)
	}
	in := &inst{
		w:    make([]int64, len(lengths)),
		d:    make([]int64, len(lengths)),
		long: make([]bool, len(lengths)),
		free: true,
	}
	unit := int64(0)
	for i, l := range lengths {
		in.w[i], in.long[i] = l+kerf, l >= hold
		in.free = in.free && in.long[i]
		unit = gcd(unit, in.w[i])
	}
	var total int64
	for i, p := range t.Pieces {
		in.d[of[i]] += int64(p.Count)
		total += int64(p.Count)
	}
	for i := range in.w {
		in.w[i] /= unit
	}
	var dearest int64
	for j, s := range t.Stock {
		usable := nanometres(s.Length) - trim
		if s.Have == 0 || usable <= 0 {
			continue
		}
		k := stick{room: (usable + kerf) / unit, short: -1, price: s.Price, have: -1, from: j}
		if usable >= hold {
			k.short = (usable - hold) / unit
		}
		if in.free {
			k.short = k.room
		}
		if s.Have > 0 && int64(s.Have) < total {
			k.have = int64(s.Have)
		}
		dearest = max(dearest, s.Price)
		in.st = append(in.st, k)
	}
	if err := t.tooLong(in, lengths, of); err != nil {
		return nil, err
	}
	in.dropDear()
	if hi, lo := bits.Mul64(uint64(total), uint64(dearest)); hi > 0 || lo > 1<<61 {
		return nil, errTooMuch
	}
	if !in.alwaysEnough() {
		// Sticks that are missing are the dearest of all.
		miss := stick{from: -1, have: -1}
		worst := uint64(1)
		for _, s := range in.st {
			n := s.have
			if n < 0 {
				n = total
			}
			hi, lo := bits.Mul64(uint64(n), uint64(s.price))
			sum, carry := bits.Add64(worst, lo, 0)
			if hi > 0 || carry > 0 {
				return nil, errTooMuch
			}
			worst = sum
			miss.room = max(miss.room, s.room)
		}
		miss.short = miss.room
		if hi, lo := bits.Mul64(worst, uint64(total)); hi > 0 || lo > 1<<61 {
			return nil, errTooMuch
		}
		miss.price = int64(worst)
		in.st = append(in.st, miss)
	}
	return in, nil
}

var errTooMuch = fmt.Errorf("sticks: counts times prices are beyond what can be added up, about 2 × 10¹⁸ minor units; hint: plan fewer pieces at once")

// tooLong names the longest piece that no stick can give.
func (t Task) tooLong(in *inst, lengths []int64, of []int) error {
	kind := -1
	for i, w := range in.w {
		if !in.fits(i, w) {
			kind = i
			break
		}
	}
	if kind < 0 {
		return nil
	}
	p := slices.Index(of, kind)
	who, l := name("piece", p, t.Pieces[p].Name), t.Pieces[p].Length.Both(measure.UnitMM)
	best := int64(0)
	for _, s := range in.st {
		best = max(best, nanometres(t.Stock[s.from].Length)-nanometres(t.Trim))
	}
	switch {
	case best == 0:
		return fmt.Errorf("%s: %s cannot be sawn, no stock is longer than the trim or there is none left; hint: add a stock length", who, l)
	case lengths[kind] > best:
		return fmt.Errorf("%s: %s is longer than any stick gives, at most %s after trim; hint: add a longer stock length or make the piece in two", who, l, length(best).Both(measure.UnitMM))
	}
	return fmt.Errorf("%s: %s is shorter than the saw holds (%s) and no stick leaves as much beside it, at most %s in all; hint: add a longer stock length or cut it by hand", who, l, t.Hold.Both(measure.UnitMM), length(best).Both(measure.UnitMM))
}

// fits reports whether some stick can give a piece, alone or beside a long one.
func (in *inst) fits(i int, w int64) bool {
	for j := range in.st {
		s := &in.st[j]
		if s.allowed(w, in.long[i]) {
			return true
		}
		for k, long := range in.long {
			if long && w+in.w[k] <= s.room {
				return true
			}
		}
	}
	return false
}

// dropDear leaves out stock that another, of any number, betters or equals.
func (in *inst) dropDear() {
	keep := in.st[:0:0]
	for j, s := range in.st {
		worse := false
		for k, o := range in.st {
			if j != k && o.have < 0 && o.room >= s.room && o.short >= s.short && o.price <= s.price {
				same := o.room == s.room && o.short == s.short && o.price == s.price && s.have < 0
				worse = worse || !same || k < j
			}
		}
		if !worse {
			keep = append(keep, s)
		}
	}
	in.st = keep
}

// alwaysEnough reports whether each piece alone comes from stock without end.
func (in *inst) alwaysEnough() bool {
	for i, w := range in.w {
		ok := false
		for j := range in.st {
			ok = ok || in.st[j].have < 0 && in.st[j].allowed(w, in.long[i])
		}
		if !ok {
			return false
		}
	}
	return true
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
