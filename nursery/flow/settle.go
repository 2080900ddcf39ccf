package flow

import (
	"math"

	"silowright/geometry/measure"
	"silowright/nursery/sea"
)

// archimedes is Ar = d³·ρ(ρs − ρ)g/μ² of a grain of the sphere diameter d.
func archimedes(w sea.Water, size measure.Length, seed measure.Density) float64 {
	d, mu := size.Metres(), float64(w.Viscosity)
	return d * d * d * float64(w.Density) * float64(seed-w.Density) * gravity / (mu * mu)
}

// speedOf is the speed at a Reynolds number on the grain.
func speedOf(w sea.Water, size measure.Length, re float64) measure.Speed {
	return measure.Speed(re*w.Kinematic()/size.Metres()) * measure.MetrePerSecond
}

// fluidiseErgun is the upwelling speed at which Ergun's loss carries the bed:
// 1.75/(ε³φ)·Re² + 150(1−ε)/(ε³φ²)·Re = Ar.
func (b Bed) fluidiseErgun(w sea.Water) measure.Speed {
	e3 := b.Voidage * b.Voidage * b.Voidage
	a := 1.75 / (e3 * b.Sphericity)
	c := 150 * (1 - b.Voidage) / (e3 * b.Sphericity * b.Sphericity)
	ar := archimedes(w, b.Size, b.Density)
	// the root, written so that nothing cancels
	return speedOf(w, b.Size, 2*ar/(c+math.Sqrt(c*c+4*a*ar)))
}

// fluidiseWenYu is the same by Wen and Yu (1966), Re = √(33.7² + 0.0408·Ar) −
// 33.7, which wants no voidage: within about a third for grains of many kinds.
func (b Bed) fluidiseWenYu(w sea.Water) measure.Speed {
	x := 0.0408 * archimedes(w, b.Size, b.Density)
	return speedOf(w, b.Size, x/(math.Sqrt(33.7*33.7+x)+33.7))
}

// terminal is the speed at which one grain alone is carried away, by the drag
// of Haider and Levenspiel (1989, from memory) for sphericity φ from 0.5 to 1
// and Re up to 2.5e5:
//
//	C = 24/Re·(1 + A·Re^B) + C'/(1 + D/Re),   ¾·C·Re² = Ar
//
// For spheres it lies within 5 % of what is measured, for odd shapes within
// some tenths.
func (b Bed) terminal(w sea.Water) measure.Speed {
	p := b.Sphericity
	k1 := math.Exp(2.3288 + p*(-6.4581+p*2.4486))
	k2 := 0.0964 + 0.5565*p
	k3 := math.Exp(4.905 + p*(-13.8944+p*(18.4222-p*10.2599)))
	k4 := math.Exp(1.4681 + p*(12.2584+p*(-20.7322+p*15.8855)))
	ar := archimedes(w, b.Size, b.Density)
	re := math.Exp(root(func(x float64) float64 {
		re := math.Exp(x)
		return math.Log(0.75*(24*re*(1+k1*math.Pow(re, k2))+k3*re*re/(1+k4/re))) - math.Log(ar)
	}, -25, 16))
	return speedOf(w, b.Size, re)
}
