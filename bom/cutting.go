package bom

import (
	"fmt"
	"math"
	"math/big"

	"silowright/bom/money"
	"silowright/bom/sticks"
	"silowright/geometry/measure"
)

// Cutting is the plan by which one item's pieces are sawn.
type Cutting struct {
	Kerf   measure.Length `json:"kerf_mm"`
	Trim   measure.Length `json:"trim_mm"` // off one end of every stick
	Sticks []Stick        `json:"sticks"`
	Proven bool           `json:"proven_least"`
	Over   money.Money    `json:"at_most_above"` // how far the cost is at most above what is possible
	// Tiers and Mixed say why a plan is not proven that would be otherwise: the
	// price falls with the count, or sticks and coils could be bought together.
	Tiers bool `json:"price_by_count,omitempty"`
	Mixed bool `json:"sticks_and_coils,omitempty"`
}

// Stick is a number of sticks sawn alike.
type Stick struct {
	Length measure.Length `json:"length_mm"`
	Count  int            `json:"count"`
	Rack   bool           `json:"from_the_rack"`
	Pieces []Piece        `json:"pieces"`    // of one stick
	Offcut measure.Length `json:"offcut_mm"` // of one stick
	Keep   bool           `json:"keep"`      // the offcut is long enough to keep
}

// Says is what the plan claims: "proven least", or that it is not and how far it
// may be off.
func (c Cutting) Says() string {
	why := ""
	switch {
	case c.Proven:
		return "proven least"
	case c.Tiers:
		why = ", since its price goes by the count"
	case c.Mixed:
		why = ", since what is cut to length is not bought beside whole sticks"
	}
	return "best found, not proven least" + why + ": at most " + c.Over.String() + " above the bound"
}

// sawn saws the need's pieces from whole sticks, the rack's first, or from one
// length cut off a coil where that costs less. Sticks beside a coil, or two
// coils, are not tried: where both are sold the bound is that of their mixtures.
func (a *asker) sawn(packs []pack) (option, bool, error) {
	var best option
	found := false
	take := func(o option, ok bool, err error) error {
		if err != nil || !ok {
			return err
		}
		if err := o.total(a.terms.Currency); err != nil {
			return err
		}
		if !found || o.goods.Minor < best.goods.Minor {
			best, found = o, true
		}
		return nil
	}
	var whole []pack
	for _, p := range packs {
		if p.first().ByLength {
			if err := take(a.offTheCoil(p)); err != nil {
				return best, false, err
			}
			continue
		}
		whole = append(whole, p)
	}
	err := take(a.inSticks(whole))
	if coils := len(packs) - len(whole); found && coils > 0 && len(packs) > 1 {
		best.bound = leastMixed(a.bare(), float64(a.terms.Saw.Trim), packs)
		best.proven = best.goods.Minor <= best.bound
		if best.cut != nil {
			best.cut.Proven, best.cut.Mixed = best.proven, !best.proven
			best.cut.Over.Minor = max(0, best.goods.Minor-best.bound)
		}
	}
	return best, found, err
}

// bare is the pieces' length without what is on the rack.
func (a *asker) bare() float64 {
	length := 0.0
	for _, q := range a.need.Pieces {
		length += float64(q.Count) * float64(q.Length)
	}
	for _, h := range a.held {
		length -= float64(h.Count) * h.Amount
	}
	return max(0, length)
}

// inSticks plans the pieces on whole sticks, each at the lowest of its tiers, and
// buys as many or, where a tier makes that cheaper, more. With tiers a plan on
// sticks of one length is proven where its count is, if the price never rises with
// it; one on sticks of several only where it costs no more than at the lowest.
func (a *asker) inSticks(packs []pack) (option, bool, error) {
	var o option
	task := sticks.Task{Trim: a.terms.Saw.Trim, Hold: a.terms.Saw.Hold}
	longest := measure.Length(0)
	for _, p := range a.need.Pieces {
		task.Kerf = max(task.Kerf, p.Kerf)
		task.Pieces = append(task.Pieces, sticks.Piece{Length: p.Length, Count: p.Count, Name: p.Name})
		longest = max(longest, p.Length)
	}
	for _, h := range a.held {
		task.Stock = append(task.Stock, sticks.Stock{Length: measure.Length(h.Amount), Have: h.Count})
	}
	tiered := false
	for _, p := range packs {
		tiered = tiered || len(p.tiers) > 1 || p.first().From > 1
		task.Stock = append(task.Stock, sticks.Stock{Length: measure.Length(p.first().Holds), Price: p.cheapest(), Have: -1})
	}
	if len(task.Stock) == 0 {
		return o, false, nil
	}
	got, err := sticks.Solve(task)
	if err != nil {
		if tooShort(task, longest) || len(packs) == 0 {
			return o, false, nil
		}
		return o, false, fmt.Errorf(":%d: pack: %s: %w", packs[0].first().Row, a.need.Item, err)
	}
	if err := got.Verify(task); err != nil { // what is sawn by is counted again
		return o, false, fmt.Errorf(": %s: %w", a.need.Item, err)
	}
	cut := &Cutting{Kerf: task.Kerf, Trim: task.Trim}
	counts := make([]int64, len(task.Stock))
	for _, p := range got.Patterns {
		counts[p.Stock] += int64(p.Count)
		s := Stick{Length: task.Stock[p.Stock].Length, Count: p.Count, Rack: p.Stock < len(a.held), Offcut: p.Offcut}
		s.Keep = a.terms.Saw.Keep > 0 && p.Offcut >= a.terms.Saw.Keep
		for i, n := range p.Takes {
			if n > 0 {
				q := a.need.Pieces[i]
				q.Count = n
				s.Pieces = append(s.Pieces, q)
			}
		}
		cut.Sticks = append(cut.Sticks, s)
		if s.Keep && !s.Rack {
			o.keep += float64(s.Offcut) * float64(s.Count)
		}
	}
	for i, p := range packs {
		if n := counts[len(a.held)+i]; n > 0 {
			b, err := p.atLeast(n)
			if err != nil {
				return o, false, err
			}
			o.buys = append(o.buys, b)
			o.keep += float64(b.Packs-n) * p.first().Holds
		}
	}
	o.cut, o.bound = cut, got.Bound
	if len(packs) == 1 {
		o.bound = packs[0].leastFor(got.Bound)
	}
	if err := a.measured(&o); err != nil {
		return o, false, err
	}
	cut.Proven = o.goods.Minor <= o.bound
	cut.Tiers = tiered && !cut.Proven
	o.proven = cut.Proven
	return o, true, nil
}

// measured sets what an option of sticks leaves over, and how far above its
// bound it is.
func (a *asker) measured(o *option) error {
	if err := o.total(a.terms.Currency); err != nil {
		return err
	}
	if o.cut != nil {
		o.cut.Over = money.Money{Minor: max(0, o.goods.Minor-o.bound), Currency: a.terms.Currency}
	}
	got := new(big.Rat)
	for _, b := range o.buys {
		got.Add(got, new(big.Rat).Mul(new(big.Rat).SetInt64(b.Packs), b.Offer.holds))
	}
	have, _ := got.Float64()
	rack := 0.0
	if o.cut != nil {
		for _, s := range o.cut.Sticks {
			if s.Rack {
				rack += float64(s.Count) * float64(s.Length-s.Offcut)
			}
		}
	}
	need, _ := a.exact.Float64()
	o.left = max(0, have+rack-need)
	return nil
}

// tooShort reports whether no stick holds the longest piece.
func tooShort(t sticks.Task, longest measure.Length) bool {
	for _, s := range t.Stock {
		if s.Length-t.Trim >= longest {
			return false
		}
	}
	return true
}

// offTheCoil cuts everything off one length, which needs no more than the
// pieces' sum with their kerfs.
func (a *asker) offTheCoil(p pack) (option, bool, error) {
	sum := 0.0
	for _, q := range a.need.Pieces {
		sum += float64(q.Count) * float64(q.Length+q.Kerf)
	}
	need, ok := exact(math.Round(sum*1e6) / 1e6)
	if !ok {
		return option{}, false, fmt.Errorf(": %s: the quantity needed is out of range; hint: look for a size that is far out", a.need.Item)
	}
	// A piece on the rack stands in for as many of the longest pieces as it
	// gives, since nothing is joined.
	q := a.need.Pieces[0]
	each := float64(q.Length + q.Kerf)
	spare := float64(q.Count)
	for _, h := range a.held {
		n := min(spare, float64(h.Count)*math.Floor((h.Amount+float64(q.Kerf))/each*(1+1e-12)))
		spare -= n
		if r, ok := exact(n * each); ok {
			need.Sub(need, r)
		}
	}
	if need.Sign() <= 0 {
		return option{proven: true}, true, nil
	}
	o, err := covered(need, []pack{p})
	o.keep = o.left
	return o, err == nil, err
}
