package flow

import (
	"fmt"
	"math"

	"silowright/geometry/measure"
	"silowright/nursery/sea"
)

// Outlet is the nipple through the wall by which water leaves. Levels are
// above its invert, the lowest point of its bore.
type Outlet struct {
	Bore      measure.Length
	Length    measure.Length
	Roughness measure.Length
	Entrance  float64 // K of the way in: 0.5 for a flat face, 0.8 for a thin pipe reaching in
	Hose      Hose    // what is pushed on outside; without length the nipple discharges freely
}

// Hose takes the water on from the outlet. It is taken to run full.
type Hose struct {
	Bore      measure.Length
	Length    measure.Length
	Roughness measure.Length
	Drop      measure.Length // outlet's invert down to the hose's end, or to the water that end is under; negative when it rises
	K         float64        // fittings on it, its exit left out
}

// orificeCd is the discharge coefficient of a sharp-edged orifice, tubeCd that
// of a tube of 2½ to 3 bores that runs full (Çengel and Cimbala, Fluid
// Mechanics, and handbooks of hydraulics, from memory).
const (
	orificeCd = 0.61
	tubeCd    = 0.82
)

// The factors of the round weirs of Staus and von Sanden and of Greve.
const (
	stausBase    = 0.555
	stausShallow = 110
	stausDeep    = 0.041

	greveFactor = 1.518
	greveBore   = 0.693
	greveHead   = 1.807
)

// Check refuses an outlet that cannot be reckoned with; key names it.
func (o Outlet) Check(key string) error {
	if err := (Pipe{o.Bore, o.Length, o.Roughness, o.Entrance}).Check(key); err != nil {
		return err
	}
	h := o.Hose
	switch {
	case !within(h.Length.MM(), 0, 1e5):
		return fmt.Errorf("%s.hose.length: %s mm, outside what is reckoned, 0 to 100 m; hint: 0 is a free discharge", key, h.Length.Metric())
	case h.Length == 0:
		return nil
	case !within(h.Drop.MM(), -5000, 5000):
		return fmt.Errorf("%s.hose.drop: %s mm, outside what is reckoned, -5 to 5 m; hint: give the fall from the outlet's invert to the hose's end", key, h.Drop.Metric())
	}
	return h.pipe().Check(key + ".hose")
}

// pipe is the hose with its exit.
func (h Hose) pipe() Pipe { return Pipe{h.Bore, h.Length, h.Roughness, h.K + 1} }

// Level is how high above the invert water stands when q leaves by the outlet,
// and the slope dlevel/dq in millimetres per cubic millimetre a second. Of
// the controls on the way the one that needs the highest level governs, as
// with culverts (FHWA, Hydraulic Design of Highway Culverts, HDS 5):
//
//   - part full: critical depth at the free brink, and before it the loss at
//     the entrance and the friction, both on the velocity of the full bore
//     (HDS 5 has 0.0098·(1.811·Q/A√D)², the same as K 0.63, for a square edge);
//   - once the first has put the crown under: an orifice, discharge coefficient
//     0.61, head above the middle of the bore. A nipple of 3 bores or more may
//     fill and pass a third more; it is not counted on, see Band;
//   - a hose: the losses of nipple and hose less its drop.
//
// Each rises with q, so the level does. The orifice needs less level than the
// brink when the crown goes under, and takes over at about 1.6 bores.
// Below some 20 mm of level surface tension holds water back further. The
// outlet must have passed Check.
func (o Outlet) Level(w sea.Water, q measure.Flow) (measure.Length, float64) {
	q = max(q, 0)
	level, slope := o.entry(w, q)
	if level >= o.Bore {
		if h, s := o.orifice(q); h > level {
			level, slope = h, s
		}
	}
	if o.Hose.Length > 0 {
		if h, s := o.hosed(w, q); h > level {
			level, slope = h, s
		}
	}
	return level, slope
}

// entry is the part-full control.
func (o Outlet) entry(w sea.Water, q measure.Flow) (measure.Length, float64) {
	e, slope, _ := critical(q.M3S(), o.Bore.Metres())
	loss, lossSlope := PipeLoss(w, o.nipple(), q)
	return metre(e) + loss, slope*1e-6 + lossSlope
}

// nipple is the nipple with its entrance, without its exit.
func (o Outlet) nipple() Pipe { return Pipe{o.Bore, o.Length, o.Roughness, o.Entrance} }

// orifice is the submerged control.
func (o Outlet) orifice(q measure.Flow) (measure.Length, float64) {
	h, s := kLoss(Disc(o.Bore), 1/(orificeCd*orificeCd), q)
	return o.Bore/2 + h, s
}

// hosed is the control by a hose that runs full.
func (o Outlet) hosed(w sea.Water, q measure.Flow) (measure.Length, float64) {
	n, p := o.nipple(), o.Hose.pipe()
	n.K += Widening(o.Bore, o.Hose.Bore)
	p.K += Narrowing(o.Bore, o.Hose.Bore)
	h1, s1 := PipeLoss(w, n, q)
	h2, s2 := PipeLoss(w, p, q)
	return h1 + h2 - o.Hose.Drop, s1 + s2
}

// Flow is what leaves at a level above the invert: the inverse of Level.
func (o Outlet) Flow(w sea.Water, level measure.Length) measure.Flow {
	if at, _ := o.Level(w, 0); level <= 0 || level <= at && o.Hose.Length > 0 {
		return 0
	}
	// The energy is never less than the velocity head of the full bore.
	most := Disc(o.Bore).MM2() * 1000 * math.Sqrt(2*gravity*level.Metres())
	return measure.Flow(newton(func(q float64) (float64, float64) {
		h, slope := o.Level(w, measure.Flow(q))
		return float64(h - level), slope
	}, 0, most, most/2, 1e-13))
}

// Band is the least and the most that published relations give at a level,
// Flow among them: up to the crown the round weir of Staus and von Sanden and
// that of Greve (both from memory), from 1½ bores a tube that runs full, and
// between the two in proportion. With a hose it is Flow alone.
func (o Outlet) Band(w sea.Water, level measure.Length) (least, most measure.Flow) {
	q := o.Flow(w, level)
	least, most = q, q
	if o.Hose.Length > 0 || level <= 0 {
		return q, q
	}
	weirs := func(h measure.Length) measure.Flow { return max(roundWeir(o.Bore, h), greveWeir(o.Bore, h)) }
	tube := func(h measure.Length) measure.Flow {
		return cubic(tubeCd * Disc(o.Bore).MM2() * 1e-6 * math.Sqrt(2*gravity*(h-o.Bore/2).Metres()))
	}
	switch full := o.Bore * 3 / 2; {
	case level <= o.Bore:
		most = weirs(level)
		least = min(roundWeir(o.Bore, level), greveWeir(o.Bore, level))
	case level >= full:
		most = tube(level)
	default:
		part := measure.Flow((level - o.Bore) / (full - o.Bore))
		most = weirs(o.Bore)*(1-part) + tube(full)*part
	}
	return min(least, q), max(most, q)
}

// roundWeir is the flow over a sharp round weir, the water at most at its
// crown: Torricelli's flow through the segment times 0.555 + D/(110·H) +
// 0.041·H/D (Staus and von Sanden, from memory), H from a tenth of D up.
func roundWeir(d, h measure.Length) measure.Flow {
	if h <= 0 {
		return 0
	}
	at := float64(h / d)
	cd := stausBase + 1/(stausShallow*at) + stausDeep*at
	b := d.Metres()
	q, _ := spill(func(z float64) float64 { return 2 * math.Sqrt(math.Max(0, z*(b-z))) }, b, h.Metres())
	return cubic(cd * q)
}

// greveWeir is the same by Greve, Q = 1.518·D^0.693·H^1.807 in SI (from
// memory).
func greveWeir(d, h measure.Length) measure.Flow {
	return cubic(greveFactor * math.Pow(d.Metres(), greveBore) * math.Pow(max(0, h).Metres(), greveHead))
}

// kLoss is K·V²/2g of q through a, and its slope.
func kLoss(a measure.Area, k float64, q measure.Flow) (measure.Length, float64) {
	if a <= 0 {
		return 0, 0
	}
	v := q.Through(a).MS()
	return metre(k * v * math.Abs(v) / (2 * gravity)), k * math.Abs(v) / gravity / float64(a)
}

// metre is x metres.
func metre(x float64) measure.Length { return measure.Length(x) * measure.Metre }

// cubic is x cubic metres a second.
func cubic(x float64) measure.Flow { return measure.Flow(x) * measure.CubicMetrePerSec }
