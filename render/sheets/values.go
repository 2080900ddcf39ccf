package sheets

import (
	"fmt"
	"strconv"
	"strings"

	"silowright/geometry"
	"silowright/geometry/measure"
)

// volume writes v in litres and US gallons, the shop's own first.
func volume(v measure.Volume, u measure.Unit) string {
	return pair(v.Litres(), "L", v.Gallons(), "gal", u)
}

// littleVolume writes v in millilitres and US fluid ounces.
func littleVolume(v measure.Volume, u measure.Unit) string {
	return pair(v.ML(), "mL", float64(v/measure.USFluidOunce), "fl oz", u)
}

// mass writes m in kilograms and pounds.
func mass(m measure.Mass, u measure.Unit) string {
	return pair(m.Kg(), "kg", m.Pounds(), "lb", u)
}

func pair(metric float64, mu string, inch float64, iu string, u measure.Unit) string {
	a, b := figure(metric)+" "+mu, figure(inch)+" "+iu
	if u == measure.UnitMM {
		return a + " (" + b + ")"
	}
	return b + " (" + a + ")"
}

// figure writes x to one decimal, to none from 100 on, finer under a tenth.
func figure(x float64) string {
	if x >= 100 || x <= -100 {
		return strconv.FormatFloat(x, 'f', 0, 64)
	}
	return measure.Number(x, 1)
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// perKind says the same for every drum kind: once when all kinds agree, else
// once a kind with the kind's label in front.
func perKind(silos []geometry.Silo, say func(geometry.Silo) string) []string {
	var out []string
	same := true
	for i, s := range silos {
		out = append(out, say(s))
		same = same && out[i] == out[0]
	}
	if same && len(out) > 0 {
		return out[:1]
	}
	for i, s := range silos {
		out[i] = fmt.Sprintf("Drum kind %s: %s", s.Spec.Drum.Label, out[i])
	}
	return out
}

// sentence begins words with a capital and ends them with a full stop.
func sentence(s string) string {
	s = upper(strings.TrimSpace(s))
	if s == "" || strings.ContainsAny(s[len(s)-1:], ".!?") {
		return s
	}
	return s + "."
}

func upper(s string) string {
	if s != "" && s[0] >= 'a' && s[0] <= 'z' {
		return string(s[0]-32) + s[1:]
	}
	return s
}

// seriesNames are the series of the pipe tables as they stand on the pipe.
var seriesNames = map[string]string{
	"sch40": "Schedule 40", "sch80": "Schedule 80", "sdr35": "SDR 35", "sdr26": "SDR 26",
	"en1401-sn4": "EN 1401 SN 4", "en1401-sn8": "EN 1401 SN 8", "pn10": "PN 10",
}

// pipeName writes a pipe as its print does: "NPS 2 Schedule 40", "63 PN 10".
// Inch pipe is called by its nominal pipe size, metric pipe by its outside.
func pipeName(p geometry.PipeRef) string {
	series, ok := seriesNames[p.Series]
	switch {
	case !ok:
		return p.String()
	case strings.HasPrefix(p.Series, "sch") || strings.HasPrefix(p.Series, "sdr"):
		return "NPS " + p.Size + " " + series
	}
	return p.Size + " " + series
}
