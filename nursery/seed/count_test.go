package seed

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"silowright/geometry/measure"
)

// Two-sided 95 % and 99 % points of Student's t: NIST/SEMATECH e-Handbook of
// Statistical Methods, 1.3.6.7.2, columns 0.975 and 0.995 (from memory).
func TestStudentTable(t *testing.T) {
	for _, c := range []struct {
		df       int
		p95, p99 float64
	}{
		{1, 12.706, 63.657}, {2, 4.303, 9.925}, {3, 3.182, 5.841}, {4, 2.776, 4.604}, {5, 2.571, 4.032},
		{9, 2.262, 3.250}, {10, 2.228, 3.169}, {20, 2.086, 2.845}, {30, 2.042, 2.750}, {100, 1.984, 2.626},
	} {
		near(t, "t of 95 %", studentT(c.df, 0.95), c.p95, 0.0005)
		near(t, "t of 99 %", studentT(c.df, 0.99), c.p99, 0.0005)
	}
}

// gonum's distributions, a general-purpose library, agree on every quantile.
func TestQuantilesAgainstGonum(t *testing.T) {
	for _, conf := range []float64{0.5, 0.8, 0.9, 0.95, 0.99, 0.999} {
		for _, df := range []int{1, 2, 3, 5, 11, 29, 120, 999} {
			want := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: float64(df)}.Quantile(0.5 + conf/2)
			near(t, "t", studentT(df, conf)/want, 1, 1e-9)
		}
		for _, k := range []int{0, 1, 2, 7, 50, 473, 20000} {
			least, most := poissonMean(k, conf)
			near(t, "Garwood's greater limit", most/(distuv.ChiSquared{K: float64(2*k + 2)}.Quantile(0.5+conf/2)/2), 1, 1e-9)
			if k == 0 {
				near(t, "Garwood's lesser limit of none", least, 0, 0)
				continue
			}
			near(t, "Garwood's lesser limit", least/(distuv.ChiSquared{K: float64(2 * k)}.Quantile(0.5-conf/2)/2), 1, 1e-9)
		}
	}
}

// Garwood 1936, exact 95 % limits of a Poisson mean (from memory).
func TestPoissonLimits(t *testing.T) {
	for k, want := range map[int][2]float64{0: {0, 3.689}, 1: {0.025, 5.572}, 5: {1.623, 11.668}, 10: {4.795, 18.390}, 50: {37.11, 65.92}} {
		least, most := poissonMean(k, 0.95)
		near(t, "least", least, want[0], 0.005)
		near(t, "most", most, want[1], 0.005)
	}
}

// Five level spoons of 5 mL worked by hand: 52, 48, 55, 47, 53 hold 255 seed in
// 25 mL, 10.2 a millilitre; deviations 1, −3, 4, −4, 2 give s = √(46/4) =
// 3.391, standard error 3.391/√5/5 = 0.30332, t of 4 is 2.776.
func TestCountedByVolume(t *testing.T) {
	var samples []Sample
	for _, n := range []int{52, 48, 55, 47, 53} {
		samples = append(samples, Sample{Volume: 5 * measure.Millilitre, Mass: 4e-3, Count: n})
	}
	c, err := Count(samples, 0.95)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "seed a litre", c.PerLitre.Mean, 10200, 1e-9)
	near(t, "standard error", c.PerLitre.SE, 303.32, 0.01)
	near(t, "low", c.PerLitre.Low, 10200-2.7764*303.32, 0.1)
	near(t, "high", c.PerLitre.High, 10200+2.7764*303.32, 0.1)
	near(t, "seed a gram", c.PerGram.Mean, 255.0/20, 1e-9)
	near(t, "one seed, mg", c.Each.Kg()*1e6, 20000.0/255, 1e-9)
	near(t, "kg a litre", float64(c.Bulk)/1000, 0.8, 1e-12)
	all, ok := c.InVolume(3.5 * measure.Litre)
	if !ok || c.Poisson {
		t.Errorf("volume told %v, Poisson %v", ok, c.Poisson)
	}
	near(t, "in 3.5 L", all.Mean, 35700, 1e-6)
	near(t, "low in 3.5 L", all.Low, 3.5*c.PerLitre.Low, 1e-6)
	if all, ok = c.InMass(2.8); !ok {
		t.Error("mass told but not used")
	}
	near(t, "in 2.8 kg", all.Mean, 35700, 1e-6)
}

// One sample tells nothing of the mixing: the exact Poisson interval, for 50
// seed 37.11 to 65.92 (Garwood 1936, from memory).
func TestOneSample(t *testing.T) {
	c, err := Count([]Sample{{Mass: 1e-3, Count: 50}}, 0.95)
	if err != nil || !c.Poisson {
		t.Fatalf("%+v, %v", c, err)
	}
	near(t, "low", c.PerGram.Low, 37.11, 0.005)
	near(t, "high", c.PerGram.High, 65.92, 0.005)
	if _, ok := c.InVolume(measure.Litre); ok {
		t.Error("a volume was worked out that no sample told")
	}
	alike, err := Count([]Sample{{Mass: 1e-3, Count: 25}, {Mass: 1e-3, Count: 25}}, 0.95)
	if err != nil || !alike.Poisson {
		t.Fatalf("samples alike: %+v, %v", alike, err)
	}
	near(t, "two samples alike, low", alike.PerGram.Low, 37.11/2, 0.005)
	none, err := Count([]Sample{{Volume: measure.Millilitre, Count: 0}}, 0.95)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "none found, at most a litre", none.PerLitre.High, 3689, 0.5)
}

// The interval holds the true mean in about 95 % of simulated batches: clumped
// batches by t (5 samples), well mixed ones by Poisson (one sample).
func TestIntervalHoldsTheMean(t *testing.T) {
	rng := rand.New(rand.NewPCG(471, 2004))
	const trials, truth = 4000, 200.0 // seed a gram
	for _, c := range []struct {
		name    string
		n       int
		clump   float64 // standard deviation of the local mean
		low, hi float64
	}{{"t, clumped", 5, 30, 0.935, 0.965}, {"t, well mixed", 3, 0, 0.935, 0.965}, {"Poisson", 1, 0, 0.945, 0.975}} {
		held := 0
		for range trials {
			var samples []Sample
			for range c.n {
				local := max(1, truth+c.clump*rng.NormFloat64())
				k := int(distuv.Poisson{Lambda: local, Src: rng}.Rand())
				samples = append(samples, Sample{Mass: 1e-3, Count: k})
			}
			got, err := Count(samples, 0.95)
			if err != nil {
				t.Fatal(err)
			}
			if got.PerGram.Low <= truth && truth <= got.PerGram.High {
				held++
			}
		}
		if share := float64(held) / trials; share < c.low || share > c.hi {
			t.Errorf("%s: the interval held the mean in %.3f of batches, want %.3f to %.3f", c.name, share, c.low, c.hi)
		}
	}
}

func TestCountRefuses(t *testing.T) {
	good := Sample{Volume: measure.Millilitre, Count: 3}
	nan := measure.Volume(math.NaN())
	for _, c := range []struct {
		samples []Sample
		conf    float64
		want    string
	}{
		{nil, 0.95, "samples: 0"},
		{[]Sample{good}, 1, "confidence: 1"},
		{[]Sample{good}, math.NaN(), "confidence: NaN"},
		{[]Sample{good, {Volume: measure.Millilitre, Count: -1}}, 0.95, "sample 2: -1"},
		{[]Sample{good, {Mass: 1e-3, Count: 1}}, 0.95, "sample 2: is measured otherwise"},
		{[]Sample{{Count: 1}}, 0.95, "sample 1: 0, has neither"},
		{[]Sample{{Volume: nan, Count: 1}}, 0.95, "sample 1: NaN mL"},
		{[]Sample{{Mass: -1, Count: 1}}, 0.95, "sample 1: -1000 g"},
	} {
		_, err := Count(c.samples, c.conf)
		if err == nil || !strings.HasPrefix(err.Error(), c.want) || !strings.Contains(err.Error(), "; hint: ") {
			t.Errorf("got %v, want %q … hint", err, c.want)
		}
	}
}

// FuzzCount: no samples break the count, and its interval holds its mean.
func FuzzCount(f *testing.F) {
	f.Add(1e6, 2e6, 1e-3, 4, 7, 0.95)
	f.Add(0.0, 0.0, 1e-3, 0, 0, 0.5)
	f.Fuzz(func(t *testing.T, v1, v2, m float64, a, b int, conf float64) {
		c, err := Count([]Sample{{measure.Volume(v1), measure.Mass(m), a}, {measure.Volume(v2), measure.Mass(m), b}}, conf)
		if err != nil {
			return
		}
		for _, e := range []Estimate{c.PerLitre, c.PerGram} {
			if !(e.Low >= 0 && e.Low <= e.Mean && e.Mean <= e.High) || !finite(e.High) || !finite(e.SE) {
				t.Errorf("%g to %g about %g ± %g", e.Low, e.High, e.Mean, e.SE)
			}
		}
	})
}

// A US gallon is 231 in³ and 128 fl oz, a pound 0.45359237 kg and 16 oz: NIST
// Handbook 44, appendix C.
func TestParseAmount(t *testing.T) {
	for _, c := range []struct {
		text  string
		ml, g float64
	}{
		{"5 mL", 5, 0}, {"5ml", 5, 0}, {"2.5 cc", 2.5, 0}, {" 3.5 L ", 3500, 0}, {"1/2 fl oz", 14.786764781, 0}, {"1 gal", 3785.411784, 0},
		{"4 g", 0, 4}, {"250 mg", 0, 0.25}, {"2.8 kg", 0, 2800}, {"1 oz", 0, 28.349523125}, {"6 lb", 0, 2721.55422},
	} {
		v, m, err := ParseAmount(c.text)
		if err != nil {
			t.Error(err)
		}
		near(t, c.text+", mL", v.ML(), c.ml, 1e-8)
		near(t, c.text+", g", m.Kg()*1000, c.g, 1e-8)
	}
	for _, bad := range []string{"", "5", "mL", "-5 mL", "1e3 mL", "NaN g", "1/0 g", "1/2/3 g", "1..2 g", "0 g", "0.0001 mL", "9999999 kg", "5 cups", "inf kg"} {
		if _, _, err := ParseAmount(bad); err == nil || !strings.Contains(err.Error(), "; hint: ") || !strings.Contains(err.Error(), ", allowed: ") {
			t.Errorf("%q: got %v", bad, err)
		}
	}
}

// FuzzParseAmount: an error in one line, or one positive amount that a count
// takes or refuses in words.
func FuzzParseAmount(f *testing.F) {
	for _, s := range []string{"5 mL", "1/2 fl oz", "2.8 kg", "1/0 g", "٣ g"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		v, m, err := ParseAmount(s)
		if err != nil {
			if strings.ContainsAny(err.Error(), "\n\r") {
				t.Errorf("message of several lines: %q", err)
			}
			return
		}
		if !finite(float64(v)) || !finite(float64(m)) || (v > 0) == (m > 0) || v < 0 || m < 0 {
			t.Errorf("%q: %v and %v", s, v, m)
		}
	})
}
