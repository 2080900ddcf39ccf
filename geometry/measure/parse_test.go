package measure

import (
	"errors"
	"math/rand"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// Expected values are the international inch and foot of 1959, 25.4 mm and
// 304.8 mm exactly (NIST Special Publication 811, appendix B.6).
func TestParseLength(t *testing.T) {
	tests := []struct {
		reason, in string
		bare       Unit
		want       Length
	}{
		{"whole and fraction, bare in inches", "34 3/4", UnitInch, 882.65},
		{"hyphen between", "10-1/2 in", UnitInch, 266.7},
		{"millimetres whatever the bare unit", "883 mm", UnitInch, 883},
		{"inches whatever the bare unit", "10 1/2 in", UnitMM, 266.7},
		{"centimetres", "88.3 cm", UnitInch, 883},
		{"metres", "0.9 m", UnitInch, 900},
		{"feet and inches in words", "2 ft 10 3/4 in", UnitMM, 882.65},
		{"feet and inches in marks", `2' 10 3/4"`, UnitMM, 882.65},
		{"as drawings write it", `2'-10 3/4"`, UnitMM, 882.65},
		{"typographer's marks", "2′ 10 3/4″", UnitMM, 882.65},
		{"close together", `2'10"`, UnitInch, 863.6},
		{"feet and a fraction alone", "2 ft 3/4 in", UnitInch, 628.65},
		{"feet alone", "3 feet", UnitMM, 914.4},
		{"one foot", "1 foot", UnitMM, 304.8},
		{"decimal feet", "2.5 ft", UnitInch, 762},
		{"decimal", "1.9", UnitInch, 48.26},
		{"decimal, bare in mm", "1.9", UnitMM, 1.9},
		{"point first", ".5", UnitInch, 12.7},
		{"fraction", "3/8", UnitInch, 9.525},
		{"a fraction over 1 by itself is plain", "9/8", UnitInch, 28.575},
		{"one character", "½", UnitInch, 12.7},
		{"¼", "¼", UnitInch, 6.35},
		{"¾", "¾", UnitInch, 19.05},
		{"⅛", "⅛ in", UnitMM, 3.175},
		{"⅜", "⅜", UnitInch, 9.525},
		{"⅝", "⅝", UnitInch, 15.875},
		{"⅞", "⅞", UnitInch, 22.225},
		{"one character at once behind", "10½", UnitInch, 266.7},
		{"one character behind a blank", "10 ½ in", UnitInch, 266.7},
		{"fraction slash", "10 1⁄2", UnitInch, 266.7},
		{"the word", "1 inch", UnitMM, 25.4},
		{"the word for many", "2 inches", UnitMM, 50.8},
		{"inch mark", `1 1/2"`, UnitMM, 38.1},
		{"capitals", "25 MM", UnitInch, 25},
		{"blanks round it", "  \t3/8 in\n", UnitMM, 9.525},
		{"several blanks inside", "10   1/2   in", UnitMM, 266.7},
		{"no blank before the unit", "883mm", UnitInch, 883},
		{"nothing", "0", UnitInch, 0},
		{"just long enough", "100 m", UnitInch, 100000},
	}
	for _, tt := range tests {
		t.Run(tt.reason, func(t *testing.T) {
			got, err := ParseLength(tt.in, tt.bare)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(tt.want.MM(), got.MM(), cmpopts.EquateApprox(0, 1e-9)); diff != "" {
				t.Errorf("ParseLength(%q), -want +got:\n%s", tt.in, diff)
			}
		})
	}
}

func TestParseLengthRefuses(t *testing.T) {
	tests := []struct{ in, why string }{
		{"", "empty"},
		{" \t ", "empty"},
		{"NaN", "no number"},
		{"Inf", "no number"},
		{"+Inf", "no number"},
		{"-Inf", "negative"},
		{"1e308", `"e" is not a unit`},
		{"1e3", `"e" is not a unit`},
		{"0x10", `"x" is not a unit`},
		{"1_000", "left over"},
		{"3/0", "over zero"},
		{"10 3/0 in", "over zero"},
		{"1/", "under the fraction's bar"},
		{"/2", "no number"},
		{"-5", "negative"},
		{"−5 mm", "negative"},
		{"+5", "no number"},
		{"1 2", "a number follows a number"},
		{"1-2", "a number follows a number"},
		{"1 2 3/4", "a number follows a number"},
		{"2 9/8", "less than 1"},
		{"2 8/8", "less than 1"},
		{"1/2 1/2", "left over"},
		{"½½", "left over"},
		{"1.5 1/2", "left over"},
		{"1.5.2", "left over"},
		{"1.", "digit must follow"},
		{"1,5", "left over"},
		{"5 mm mm", "left over"},
		{"5 in in", "left over"},
		{"5 mm 3 in", "left over"},
		{`5""`, "left over"},
		{"5 inmm", "not a unit"},
		{"5 yards", "not a unit"},
		{"10 --1/2", "left over"},
		{"10-", "left over"},
		{"2 ft 10", "must be inches"},
		{"2 ft 10 mm", "must be inches"},
		{"2 ft 3 ft", "must be inches"},
		{"2 ft 12 in", "under 12"},
		{"2.5 ft 3 in", "whole number"},
		{"2 1/2 ft 3 in", "whole number"},
		{"2 ft 3 in 1/2", "left over"},
		{"100.001 m", "too long"},
		{"329 ft", "too long"},
		{"99999999999999999999999999", "too long"},
		{strings.Repeat("9", 400), "too many characters"},
		{"\xff\xfe", "no number"},
		{"5\x00", "left over"},
		{"five", "no number"},
	}
	for _, tt := range tests {
		t.Run(tt.in, func(t *testing.T) {
			l, err := ParseLength(tt.in, UnitInch)
			if err == nil {
				t.Fatalf("ParseLength(%q) = %v, want an error with %q", tt.in, l, tt.why)
			}
			if !errors.Is(err, ErrLength) {
				t.Errorf("%v does not wrap ErrLength", err)
			}
			if !strings.Contains(err.Error(), tt.why) || !strings.HasSuffix(err.Error(), accepted) {
				t.Errorf("error %q: want the reason %q and the hint", err, tt.why)
			}
			if l != 0 {
				t.Errorf("length %v beside an error", l)
			}
		})
	}
}

// What the program prints it also reads, to within half the step it prints in.
func TestParsePrinted(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for range 20000 {
		l := Length(r.Float64() * float64(Longest-Inch))
		if r.Intn(2) == 0 {
			l = Length(r.Float64() * float64(5*Inch))
		}
		for _, p := range []struct {
			text string
			bare Unit
			tol  Length
		}{
			{l.Inch(16), UnitInch, Inch / 32},
			{l.Inch(64), UnitInch, Inch / 128},
			{l.In(UnitInch), UnitMM, Inch / 32},
			{l.In(UnitMM), UnitInch, Millimetre / 20},
			{l.Metric(), UnitMM, Millimetre / 20},
		} {
			got, err := ParseLength(p.text, p.bare)
			if err != nil {
				t.Fatal(err)
			}
			if (got - l).Abs() > p.tol+1e-6 {
				t.Fatalf("%v mm printed as %q reads as %v", float64(l), p.text, float64(got))
			}
		}
	}
}

func FuzzParseLength(f *testing.F) {
	for _, s := range []string{"34 3/4", "10-1/2 in", "883 mm", "2 ft 10 3/4 in", `2' 10 3/4"`, "10½", ".5", "1e308", "NaN",
		"2 9/8", "3/0", "-1", "\xff", "1⁄2", "00000000000000000000000000000000000000001", "1/99999999999999999999999999999"} {
		f.Add(s, true)
		f.Add(s, false)
	}
	f.Fuzz(func(t *testing.T, s string, inch bool) {
		bare := UnitMM
		if inch {
			bare = UnitInch
		}
		l, err := ParseLength(s, bare)
		if err != nil {
			if !errors.Is(err, ErrLength) || l != 0 || strings.ContainsAny(err.Error(), "\n\r") {
				t.Fatalf("%q: %v, %v", s, l, err)
			}
			return
		}
		if !l.Finite() || l < 0 || l > Longest {
			t.Fatalf("%q = %v", s, float64(l))
		}
		again, err := ParseLength(l.In(UnitInch), UnitMM)
		if err != nil || (again-l).Abs() > Inch/32+1e-6 {
			t.Fatalf("%q = %v mm, printed %q, reads as %v: %v", s, float64(l), l.In(UnitInch), float64(again), err)
		}
		blank, err := ParseLength("  "+s+"\t", bare)
		if err != nil || blank != l {
			t.Fatalf("%q with blanks round it: %v, %v", s, blank, err)
		}
	})
}
