package seed

import (
	"fmt"
	"strconv"
	"strings"

	"silowright/geometry/measure"
)

// amountUnits are the units a sample or a batch is measured in, the longer
// names first where one ends in another.
var amountUnits = [...]struct {
	name   string
	volume measure.Volume
	mass   measure.Mass
}{
	{"fl oz", measure.USFluidOunce, 0}, {"gal", measure.USGallon, 0}, {"ml", measure.Millilitre, 0}, {"cc", measure.Millilitre, 0},
	{"l", measure.Litre, 0}, {"lb", 0, measure.Pound}, {"oz", 0, measure.Pound / 16}, {"kg", 0, 1}, {"mg", 0, 1e-6}, {"g", 0, 1e-3},
}

const amountHint = `write it as 5 mL, 1.5 L, 1/2 fl oz, 2 gal, 4 g, 2.8 kg, 1 oz or 6 lb`

// ParseAmount reads an amount of seed: a volume (mL, cc, L, fl oz, gal, all US)
// or a mass (mg, g, kg, oz, lb). One of the two answers is zero. The number is
// a decimal or a fraction such as 1/2. Errors name no key: the caller knows it.
func ParseAmount(s string) (measure.Volume, measure.Mass, error) {
	text := strings.ToLower(strings.TrimSpace(s))
	for _, u := range amountUnits {
		rest, ok := strings.CutSuffix(text, u.name)
		if !ok {
			continue
		}
		x, ok := parseNumber(strings.TrimSpace(rest))
		v, m := u.volume*measure.Volume(x), u.mass*measure.Mass(x)
		switch {
		case !ok:
			return 0, 0, fmt.Errorf("%.40q, has no number before its unit, allowed: a decimal or a fraction; hint: %s", s, amountHint)
		case !(x > 0) || v > 1e6*measure.Litre || m > 1e6 || (v < measure.Millilitre/1000 && m < 1e-6):
			return 0, 0, fmt.Errorf("%.40q, is out of range, allowed: 0.001 mL to 1000000 L, 0.001 g to 1000000 kg; hint: %s", s, amountHint)
		}
		return v, m, nil
	}
	return 0, 0, fmt.Errorf("%.40q, has no unit of volume or mass, allowed: mL, cc, L, fl oz, gal, mg, g, kg, oz, lb; hint: %s", s, amountHint)
}

// parseNumber reads "2", "2.5" or "1/2": digits, with one point or one stroke.
func parseNumber(s string) (float64, bool) {
	over, under, stroke := strings.Cut(s, "/")
	a, ok := parseDecimal(over)
	if !ok || !stroke {
		return a, ok
	}
	b, ok := parseDecimal(under)
	if !ok || b == 0 {
		return 0, false
	}
	return a / b, finite(a / b)
}

func parseDecimal(s string) (float64, bool) {
	if s == "" || len(s) > 20 || strings.Trim(s, "0123456789.") != "" {
		return 0, false
	}
	x, err := strconv.ParseFloat(s, 64)
	return x, err == nil
}
