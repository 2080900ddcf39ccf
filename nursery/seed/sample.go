package seed

import (
	"fmt"
	"math"

	"silowright/geometry/measure"
)

// Sample is one counted sample of a batch: a level spoon or a weighed pinch.
// Volume is the settled volume, Mass the drained live mass; one of them may be
// zero, but then in every sample of the batch.
type Sample struct {
	Volume measure.Volume
	Mass   measure.Mass
	Count  int
}

// Estimate is a number of seed for a unit of volume or mass, with its
// interval. All four are seed a litre, or seed a gram.
type Estimate struct {
	Mean float64 `json:"mean"`
	// SE is the standard error of Mean.
	SE float64 `json:"standard_error"`
	// Low and High hold the true mean with the confidence asked for.
	Low  float64 `json:"low"`
	High float64 `json:"high"`
}

// Times returns the estimate for n units.
func (e Estimate) Times(n float64) Estimate {
	return Estimate{e.Mean * n, e.SE * n, e.Low * n, e.High * n}
}

// Counted is what counted samples tell of their batch.
type Counted struct {
	Samples    int     `json:"samples"`
	Count      int     `json:"count"` // seed counted in all
	Confidence float64 `json:"confidence"`
	// PerLitre and PerGram are zero when the samples told no volume or no mass.
	PerLitre Estimate `json:"per_litre"`
	PerGram  Estimate `json:"per_gram"`
	// Each is the live mass of one seed and Bulk the mass of a volume of seed
	// with the water drained; zero when the samples don't tell it.
	Each measure.Mass    `json:"each_kg"`
	Bulk measure.Density `json:"bulk_kg_m3"`
	// Poisson says that the interval is the exact one for seed scattered at
	// random (Garwood 1936), because one sample, or samples all alike, tell
	// nothing of how unevenly the batch is mixed. It is too narrow for a batch
	// that is badly mixed.
	Poisson bool `json:"poisson"`
}

// The limits of a count.
const (
	maxSamples = 1000
	// maxCounted is as many as anyone counts.
	maxCounted = 10_000_000
	minConf    = 0.5
	maxConf    = 0.999
)

// Count works the samples of one batch out to seed per litre and per gram. The
// mean is all seed over all volume (or mass); its standard error is that of a
// ratio, s/(v̄√n) with s² = Σ(cᵢ − R·vᵢ)²/(n − 1), which for equal samples is
// the plain standard error (Cochran, Sampling Techniques, chapter 6, from
// memory), and the interval is Student's t with n − 1 degrees of freedom. conf
// is the confidence of the interval, 0.5 to 0.999; 0.95 is usual.
//
// The interval tells how well the samples agree. It can't tell of a spoon
// filled heaped, or of small seed sunk to the bottom of the bucket.
func Count(samples []Sample, conf float64) (Counted, error) {
	if err := checkSamples(samples, conf); err != nil {
		return Counted{}, err
	}
	out := Counted{Samples: len(samples), Confidence: conf}
	var volumes, grams []float64
	var v, g float64
	for _, s := range samples {
		out.Count += s.Count
		volumes, grams = append(volumes, s.Volume.Litres()), append(grams, s.Mass.Kg()*1000)
		v, g = v+s.Volume.Litres(), g+s.Mass.Kg()*1000
	}
	if v > 0 {
		e, exact := estimate(samples, volumes, v, conf)
		out.PerLitre, out.Poisson = e, exact
	}
	if g > 0 {
		e, exact := estimate(samples, grams, g, conf)
		out.PerGram, out.Poisson = e, out.Poisson || exact
		if out.Count > 0 {
			out.Each = measure.Mass(g / 1000 / float64(out.Count))
		}
	}
	if v > 0 && g > 0 {
		out.Bulk = measure.Density(g / v) // g/L is kg/m³
	}
	return out, nil
}

// estimate works out seed per unit; sizes are the samples' and sum their total.
func estimate(samples []Sample, sizes []float64, sum, conf float64) (Estimate, bool) {
	n, total := len(samples), 0
	for _, s := range samples {
		total += s.Count
	}
	mean := float64(total) / sum
	var squares float64
	for i, s := range samples {
		d := float64(s.Count) - mean*sizes[i]
		squares += d * d
	}
	// Samples all alike leave only rounding in the sum of squares.
	if n == 1 || squares <= 1e-18*float64(total)*float64(total) {
		low, high := poissonMean(total, conf)
		return Estimate{mean, math.Sqrt(float64(total)) / sum, low / sum, high / sum}, true
	}
	se := math.Sqrt(squares/float64(n-1)/float64(n)) / (sum / float64(n))
	half := studentT(n-1, conf) * se
	return Estimate{mean, se, max(0, mean-half), mean + half}, false
}

func checkSamples(samples []Sample, conf float64) error {
	if !(conf >= minConf && conf <= maxConf) {
		return fmt.Errorf("confidence: %s, is out of range, allowed: %g to %g; hint: 0.95 is usual", number(conf), minConf, maxConf)
	}
	if len(samples) < 1 || len(samples) > maxSamples {
		return fmt.Errorf("samples: %d, is out of range, allowed: 1 to %d; hint: count three or more samples, stirred before each", len(samples), maxSamples)
	}
	for i, s := range samples {
		key := fmt.Sprintf("sample %d", i+1)
		switch {
		case s.Count < 0 || s.Count > maxCounted:
			return fmt.Errorf("%s: %d, is no count, allowed: 0 to %d; hint: count whole seed", key, s.Count, maxCounted)
		case s.Volume != 0 && !(s.Volume >= measure.Millilitre/1000 && s.Volume <= 1000*measure.Litre):
			return fmt.Errorf("%s: %s mL, is out of range, allowed: 0.001 mL to 1000 L; hint: give the settled volume", key, number(s.Volume.ML()))
		case s.Mass != 0 && !(s.Mass >= 1e-6 && s.Mass <= 1000):
			return fmt.Errorf("%s: %s g, is out of range, allowed: 0.001 g to 1000 kg; hint: give the drained mass", key, number(s.Mass.Kg()*1000))
		case s.Volume == 0 && s.Mass == 0:
			return fmt.Errorf("%s: 0, has neither a volume nor a mass, allowed: one or both; hint: measure what was counted", key)
		case (s.Volume == 0) != (samples[0].Volume == 0) || (s.Mass == 0) != (samples[0].Mass == 0):
			return fmt.Errorf("%s: is measured otherwise than sample 1, allowed: all by volume, all by mass or all by both; hint: measure every sample the same way", key)
		}
	}
	return nil
}

// InVolume returns how many seed v holds; ok is false when the samples told no
// volume.
func (c Counted) InVolume(v measure.Volume) (Estimate, bool) {
	return c.PerLitre.Times(v.Litres()), c.PerLitre.High > 0
}

// InMass returns how many seed m holds; ok is false when the samples told no
// mass.
func (c Counted) InMass(m measure.Mass) (Estimate, bool) {
	return c.PerGram.Times(m.Kg() * 1000), c.PerGram.High > 0
}
