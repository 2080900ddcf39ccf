package report

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Numbers lose what is behind the twelfth digit, words and whole numbers lose
// nothing.
func TestIndented(t *testing.T) {
	got, err := Indented([]any{19956.05410969912, 19956.054109699115, 1198535.909375, 1198535.9093749998, 1234567890123456789, 1e-7 / 3, 1e30 / 3, -0.1, "1.234567890123456789 \" \\", map[string]float64{"2.00000000000000001": 2.5}, []int{}})
	if err != nil {
		t.Fatal(err)
	}
	want := `[
  19956.0541097,
  19956.0541097,
  1198535.90938,
  1198535.90938,
  1234567890123456789,
  3.33333333333e-8,
  3.33333333333e+29,
  -0.1,
  "1.234567890123456789 \" \\",
  {
    "2.00000000000000001": 2.5
  },
  []
]
`
	if diff := cmp.Diff(want, string(got)); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	if _, err := Indented(math.NaN()); err == nil {
		t.Error("no error for a number that is none")
	}
}

// What is written is JSON that reads back as what went in, to the digits kept.
func FuzzIndented(f *testing.F) {
	f.Add("a\"b\\u00e9 1.5", 0.1, int64(-3))
	f.Add("\\", 1e300, int64(1)<<60)
	f.Fuzz(func(t *testing.T, words string, x float64, n int64) {
		words = strings.ToValidUTF8(words, "?")
		if math.IsNaN(x) || math.IsInf(x, 0) {
			t.Skip("no number")
		}
		type told struct {
			Words map[string]string
			X     []float64
			N     int64
		}
		in := told{map[string]string{words: words}, []float64{x, -x}, n}
		text, err := Indented(in)
		if err != nil {
			t.Fatal(err)
		}
		var back told
		if err := json.NewDecoder(bytes.NewReader(text)).Decode(&back); err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		if back.N != n || cmp.Diff(back.Words, in.Words) != "" {
			t.Errorf("%+v became %+v", in, back)
		}
		if off := math.Abs(back.X[0] - x); off > 5.1e-12*math.Abs(x) || back.X[1] != -back.X[0] {
			t.Errorf("%v became %v", x, back.X)
		}
	})
}
