package bom

import (
	"fmt"
	"math"

	"silowright/bom/nest"
	"silowright/bom/rolls"
	"silowright/geometry/measure"
)

// Lay is how parts lie on a roll, on a length cut off one, or on sheets.
type Lay struct {
	Width  measure.Length `json:"width_mm"`
	Length measure.Length `json:"length_mm"` // of the roll or sheet; of what is cut off, when cut to length
	Rack   bool           `json:"from_the_rack"`
	Count  int            `json:"count"` // rolls or sheets laid alike
	Parts  []LaidPart     `json:"parts"` // of one, one after another along the roll
}

// LaidPart is a run of equal parts on a roll, or one plate on a sheet.
type LaidPart struct {
	Name   string         `json:"name"`
	Shape  Shape          `json:"shape"`
	Across measure.Length `json:"across_mm"`
	Count  int            `json:"count"`
	From   measure.Length `json:"from_mm"`   // along the roll, from its cut end; of a plate's corner
	Side   measure.Length `json:"side_mm"`   // of a plate's corner from the long edge
	Length measure.Length `json:"length_mm"` // of roll taken
	Bound  measure.Length `json:"bound_mm"`  // no layout takes less
	Layout rolls.Layout   `json:"-"`
}

// laid lays the need's flat parts: on what is on the rack, then on whole rolls
// and sheets or a length cut off a roll, whichever costs least.
func (a *asker) laid(packs []pack) (option, bool, error) {
	left := make([]int, len(a.need.Flats))
	for i, f := range a.need.Flats {
		left[i] = f.Count
	}
	var rack []Lay
	for _, h := range a.held {
		more, err := a.fill(left, h.Width, measure.Length(h.Amount), h.Count)
		if err != nil {
			return option{}, false, err
		}
		for i := range more {
			more[i].Rack = true
		}
		rack = append(rack, more...)
	}
	if done(left) {
		return option{lay: rack, proven: true}, true, nil
	}
	var best option
	found := false
	for _, p := range byLengthFirst(packs) {
		if found && a.dearer(p, left, best.goods.Minor) {
			continue
		}
		o, ok, err := a.layOn(p, append([]int{}, left...))
		if err == nil && ok {
			err = o.total(a.terms.Currency)
		}
		if err != nil {
			return best, false, err
		}
		if ok && (!found || o.goods.Minor < best.goods.Minor) {
			best, found = o, true
		}
	}
	if found && len(packs) > 1 {
		best.proven = a.leastLaid(left, packs) >= best.goods.Minor
	}
	best.lay = append(rack, best.lay...)
	return best, found, nil
}

// leastLaid is what the parts left cost at least, in minor units, on rolls of
// several kinds together, which are not tried; 0 where the rolls are not of one
// width.
func (a *asker) leastLaid(left []int, packs []pack) int64 {
	width := packs[0].first().Width
	for _, p := range packs {
		if p.first().Width != width || width == 0 {
			return 0
		}
	}
	return leastMixed(float64(a.leastLength(left, width)), 0, packs)
}

// byLengthFirst puts what is cut off a roll before whole rolls and sheets,
// which take longer to lay.
func byLengthFirst(packs []pack) []pack {
	var out, whole []pack
	for _, p := range packs {
		if p.first().ByLength {
			out = append(out, p)
		} else {
			whole = append(whole, p)
		}
	}
	return append(out, whole...)
}

// dearer reports whether whole rolls or sheets are sure to cost as much as what
// is found already: as many as the least length fills, at the lowest price.
func (a *asker) dearer(p pack, left []int, found int64) bool {
	f := p.first()
	if f.ByLength || f.Width == 0 {
		return false
	}
	for i, part := range a.need.Flats {
		if left[i] > 0 && part.Across > f.Width {
			return true // it cannot be laid at all
		}
	}
	n := math.Ceil(float64(a.leastLength(left, f.Width)) / f.Holds * (1 - 1e-9))
	return n*float64(p.cheapest()) >= float64(found)
}

func done(left []int) bool {
	for _, n := range left {
		if n > 0 {
			return false
		}
	}
	return true
}

// fill lays parts on at most so many equal pieces of roll or sheet, and takes
// what is laid off left.
func (a *asker) fill(left []int, width, length measure.Length, pieces int) ([]Lay, error) {
	var out []Lay
	for pieces > 0 && !done(left) {
		l := Lay{Width: width, Length: length, Count: 1}
		at := measure.Length(0)
		takes := make([]int, len(left))
		for i, f := range a.need.Flats {
			if left[i] == 0 || f.Shape == Plate || f.Across > width || f.Across > length-at {
				continue
			}
			fit, err := rolls.Fit(roll(f), width, length-at, 0)
			if err != nil {
				return nil, fmt.Errorf(": %s: %w", a.need.Item, err)
			}
			if takes[i] = min(fit.Count, left[i]); takes[i] == 0 {
				continue
			}
			lay := fit
			if takes[i] < fit.Count {
				if lay, err = rolls.Shortest(roll(f), takes[i], width, 0); err != nil {
					return nil, fmt.Errorf(": %s: %w", a.need.Item, err)
				}
			}
			l.Parts = append(l.Parts, partOf(f, at, lay))
			at += lay.Length
		}
		if plates, err := a.plates(left, takes, width, length); err != nil {
			return nil, err
		} else {
			l.Parts = append(l.Parts, plates...)
		}
		if len(l.Parts) == 0 {
			return out, nil
		}
		for again := true; again && pieces > 0; { // as often as the same parts are left
			pieces, l.Count = pieces-1, l.Count+1
			for i, n := range takes {
				left[i] -= n
				again = again && left[i] >= n
			}
		}
		l.Count--
		out = append(out, l)
	}
	return out, nil
}

// plates nests plates of every size on one sheet, largest first, and notes in
// takes how many of each went on.
func (a *asker) plates(left, takes []int, width, length measure.Length) ([]LaidPart, error) {
	var parts []nest.Part
	var of []int
	for i, f := range a.need.Flats {
		for n := 0; f.Shape == Plate && n < left[i]; n++ {
			parts, of = append(parts, nest.Part{Width: f.Across, Height: f.Across}), append(of, i)
		}
	}
	for len(parts) > 0 {
		places, sheets, err := nest.Rows(parts, width, length, 0)
		if err == nil && sheets == 1 {
			var out []LaidPart
			for k, p := range places {
				f := a.need.Flats[of[k]]
				takes[of[k]]++
				out = append(out, LaidPart{Name: f.Name, Shape: Plate, Across: f.Across, Count: 1, From: p.Y, Side: p.X, Length: f.Across, Bound: f.Across})
			}
			return out, nil
		}
		parts, of = parts[:len(parts)-1], of[:len(of)-1]
	}
	return nil, nil
}

func roll(f Flat) rolls.Piece {
	if f.Shape == Disc {
		return rolls.Piece{Shape: rolls.Disc, Across: f.Across}
	}
	return rolls.Piece{Shape: rolls.Square, Across: f.Across}
}

func partOf(f Flat, at measure.Length, l rolls.Layout) LaidPart {
	return LaidPart{Name: f.Name, Shape: f.Shape, Across: f.Across, Count: l.Count, From: at, Length: l.Length, Bound: l.Bound, Layout: l}
}

// layOn lays what is left on one kind of pack.
func (a *asker) layOn(p pack, left []int) (option, bool, error) {
	f := p.first()
	if f.Width == 0 {
		return a.byArea(p, left)
	}
	for i, part := range a.need.Flats {
		if left[i] > 0 && part.Across > f.Width {
			return option{}, false, nil
		}
	}
	if f.ByLength {
		return a.offTheRoll(p, left)
	}
	least := a.leastLength(left, f.Width)
	used := a.areaOf(left)
	lays, err := a.fill(left, f.Width, measure.Length(f.Holds), math.MaxInt32)
	if err != nil || !done(left) {
		return option{}, false, err
	}
	n := int64(0)
	for _, l := range lays {
		n += int64(l.Count)
	}
	b, err := p.atLeast(n)
	if err != nil {
		return option{}, false, err
	}
	o := option{buys: []Purchase{b}, lay: lays, proven: p.falls() && n <= int64(math.Ceil(float64(least)/f.Holds*(1-1e-9)))}
	o.left = float64(b.Packs)*f.Holds*f.Width.MM() - used.MM2()
	o.keep = float64(b.Packs-n) * f.Holds * f.Width.MM()
	if last := lays[len(lays)-1]; last.Count == 1 && last.Parts[0].Shape != Plate {
		end := last.Parts[len(last.Parts)-1]
		o.keep += float64(last.Length-end.From-end.Length) * f.Width.MM()
	}
	return o, true, nil
}

// offTheRoll cuts one length that holds everything left.
func (a *asker) offTheRoll(p pack, left []int) (option, bool, error) {
	width := p.first().Width
	lay := Lay{Width: width, Count: 1}
	for i, f := range a.need.Flats {
		if left[i] == 0 {
			continue
		}
		l, err := rolls.Shortest(roll(f), left[i], width, 0)
		if err != nil {
			return option{}, false, fmt.Errorf(": %s: %w", a.need.Item, err)
		}
		lay.Parts = append(lay.Parts, partOf(f, lay.Length, l))
		lay.Length += l.Length
	}
	need, ok := exact(math.Ceil(float64(lay.Length)*1e6-1e-3) / 1e6)
	if !ok {
		return option{}, false, fmt.Errorf(": %s: the quantity needed is out of range; hint: look for a size that is far out", a.need.Item)
	}
	o, err := covered(need, []pack{p})
	if err != nil {
		return o, false, err
	}
	bought := o.left + float64(lay.Length)
	o.keep = o.left * width.MM()
	o.left = bought*width.MM() - a.areaOf(left).MM2()
	o.proven = o.proven && math.Ceil(float64(a.leastLength(left, width))/p.first().Holds*(1-1e-9)) >= math.Round(bought/p.first().Holds)
	lay.Length = measure.Length(bought)
	o.lay = []Lay{lay}
	return o, true, nil
}

// byArea buys the area of the parts, each a square, whatever the roll's width.
func (a *asker) byArea(p pack, left []int) (option, bool, error) {
	need, ok := exact(math.Round(a.areaOf(left).MM2()*1e6) / 1e6)
	if !ok {
		return option{}, false, fmt.Errorf(": %s: the quantity needed is out of range; hint: look for a size that is far out", a.need.Item)
	}
	o, err := covered(need, []pack{p})
	o.keep = o.left
	return o, err == nil, err
}

// areaOf is what so many of each flat count for by area.
func (a *asker) areaOf(left []int) measure.Area {
	sum := measure.Area(0)
	for i, f := range a.need.Flats {
		f.Count = left[i]
		sum += f.area()
	}
	return sum
}

// leastLength is a length of roll that no layout of what is left can do with
// less than: the longest of the bounds of each size alone, and the area of all
// over the width.
func (a *asker) leastLength(left []int, width measure.Length) measure.Length {
	least, area := measure.Length(0), 0.0
	for i, f := range a.need.Flats {
		if left[i] == 0 {
			continue
		}
		each := float64(f.Across.Times(f.Across))
		if f.Shape == Disc {
			each *= math.Pi / 4
		}
		area += each * float64(left[i])
		if f.Shape == Plate {
			continue
		}
		if l, err := rolls.Shortest(roll(f), left[i], width, 0); err == nil {
			least = max(least, l.Bound)
		}
	}
	return max(least, measure.Length(area/width.MM()))
}
