package geometry

import (
	"math"
	"testing"

	"silowright/geometry/measure"
)

const inch = measure.Inch

// exampleDrum is invented.
func exampleDrum() Drum {
	return Drum{Label: "blue", Count: 20, Outside: OutsideFromCircumference(72.125 * inch), Height: 34.5 * inch,
		Wall: 0.1875 * inch, FootOutside: 21.125 * inch, FootHeight: 2.25 * inch, HeadRecess: 0.875 * inch,
		Hoops: []Hoop{{10.5 * inch, 12 * inch, 23.875 * inch}, {22.75 * inch, 24.25 * inch, 23.875 * inch}}}
}

func exampleSpec() Spec { return DefaultSpec(exampleDrum(), measure.UnitInch) }

func exampleSilo(t testing.TB, change ...func(*Spec)) Silo {
	t.Helper()
	s := exampleSpec()
	for _, c := range change {
		c(&s)
	}
	silos, err := Solve(Job{Kinds: []Spec{s}})
	if err != nil {
		t.Fatal(err)
	}
	return silos[0]
}

func near(t testing.TB, what string, got, want, tol length) {
	t.Helper()
	if !(math.Abs(float64(got-want)) <= float64(tol)) {
		t.Errorf("%s: got %.5f mm, want %.5f ± %.5f", what, float64(got), float64(want), float64(tol))
	}
}

func find(t testing.TB, s Silo, id string) Finding {
	t.Helper()
	for _, f := range s.Findings {
		if f.ID == id {
			return f
		}
	}
	t.Fatalf("no finding %q", id)
	return Finding{}
}
