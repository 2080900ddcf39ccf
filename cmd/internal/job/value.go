package job

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"

	"silowright/geometry/measure"
	"silowright/render"
)

// number reads a bare number; a TOML integer will do.
func number(v any) (float64, bool) {
	switch v := v.(type) {
	case int64:
		return float64(v), true
	case float64:
		return v, true
	}
	return 0, false
}

// length reads a number in the job's units or a string with its own.
func (r *reader) length(path string, v any, low, high measure.Length) (measure.Length, bool) {
	allowed := bound(low, r.units, math.Ceil) + " to " + bound(high, r.units, math.Floor)
	var l measure.Length
	switch v := v.(type) {
	case string:
		var err error
		if l, err = measure.ParseLength(v, r.units); err != nil || !l.Finite() {
			r.fail(path, show(v), "is not a length", allowed, `write "10 1/2", "10-1/2 in" or "267 mm"`)
			return 0, false
		}
	default:
		f, ok := number(v)
		if !ok {
			r.fail(path, show(v), "is not a length", allowed, "a number in "+unitWord(r.units)+`, or text such as "10 1/2 in" or "267 mm"`)
			return 0, false
		}
		l = measure.Length(f)
		if r.units == measure.UnitInch {
			l *= measure.Inch
		}
	}
	if !(l >= low && l <= high) { // so that NaN fails too
		hint := "measure again, or check the unit"
		if _, bare := number(v); bare {
			hint = "a bare number is taken in " + unitWord(r.units) + "; write the unit to be sure"
		}
		r.fail(path, show(v), "is out of range", allowed, hint)
		return 0, false
	}
	return l, true
}

func unitWord(u measure.Unit) string {
	if u == measure.UnitMM {
		return "millimetres"
	}
	return "inches"
}

// asFraction is how a key takes a share that does not take a percentage.
const asFraction = "write a share as a fraction of one: 0.15 for 15 %"

// fraction reads a number between low and high.
func (r *reader) fraction(path string, v any, low, high float64, unit string) (float64, bool) {
	allowed := plain(low) + " to " + plain(high)
	if unit != "" {
		allowed += " " + unit
	}
	f, ok := number(v)
	if !ok {
		hint := "write the number without quotes"
		if s, text := v.(string); text && unit == "" && strings.Contains(s, "%") {
			hint = asFraction
		}
		r.fail(path, show(v), "is not a number", allowed, hint)
		return 0, false
	}
	if !(f >= low && f <= high) {
		hint := "check the decimal point"
		if unit == "" {
			hint = asFraction
		}
		r.fail(path, show(v), "is out of range", allowed, hint)
		return 0, false
	}
	return f, true
}

// count reads a whole number between low and high.
func (r *reader) count(path string, v any, low, high int) (int, bool) {
	allowed := fmt.Sprintf("%d to %d", low, high)
	n, ok := v.(int64)
	if f, isFloat := v.(float64); isFloat && f == math.Trunc(f) && math.Abs(f) < 1e15 {
		n, ok = int64(f), true
	}
	if !ok {
		r.fail(path, show(v), "is not a whole number", allowed, "write it without quotes, as in 20")
		return 0, false
	}
	if n < int64(low) || n > int64(high) {
		r.fail(path, show(v), "is out of range", allowed, "count again")
		return 0, false
	}
	return int(n), true
}

// word reads one of the words allowed. A number will do where words are
// numbers; "#6" and "No. 6" are read as "6".
func (r *reader) word(path string, v any, words []string) (string, bool) {
	s, ok := text(v)
	s = strings.TrimSpace(s)
	for _, w := range words {
		if ok && (strings.EqualFold(s, w) || strings.EqualFold(numeral(s), w)) {
			return w, true
		}
	}
	r.fail(path, show(v), "is not known here", strings.Join(words, ", "), "take one of those")
	return "", false
}

// numeral strips what a shop writes before a number: "#6", "No. 6".
func numeral(s string) string {
	for _, p := range []string{"#", "No.", "no.", "No", "no", "NO.", "NO"} {
		if rest, ok := strings.CutPrefix(s, p); ok {
			return strings.TrimSpace(rest)
		}
	}
	return s
}

// text reads a string, or a whole number written without quotes.
func text(v any) (string, bool) {
	switch v := v.(type) {
	case string:
		return v, true
	case int64:
		return strconv.FormatInt(v, 10), true
	}
	return "", false
}

// title reads a short line of words to print.
func (r *reader) title(path string, v any, most int) (string, bool) {
	allowed := fmt.Sprintf("1 to %d printable characters", most)
	s, ok := v.(string)
	if !ok {
		r.fail(path, show(v), "is not text", allowed, `put it in quotes`)
		return "", false
	}
	s = strings.TrimSpace(s)
	n := 0
	for _, c := range s {
		if !unicode.IsPrint(c) {
			r.fail(path, show(v), "holds a character that cannot be printed", allowed, "use letters, digits and spaces")
			return "", false
		}
		n++
	}
	switch {
	case n == 0:
		r.fail(path, show(v), "is empty", allowed, "leave the key out or write a word")
		return "", false
	case n > most:
		r.fail(path, show(v), fmt.Sprintf("is %d characters long", n), allowed, "shorten it")
		return "", false
	case path != "prices.file" && !render.HasGlyphs(s): // a file's name is not set on a sheet as it stands
		r.fail(path, show(v), "holds a letter that the drawings' fonts do not have", allowed, "use Latin, Greek or Cyrillic letters")
		return "", false
	}
	return s, true
}

// bound is an end of a range in both units: in thousandths of an inch, rounded
// inwards, where a fraction of a tape would lie outside and be refused itself.
func bound(l measure.Length, u measure.Unit, inwards func(float64) float64) string {
	if _, ok := l.Tape(); ok || u != measure.UnitInch || l >= measure.Inch {
		return l.Both(u)
	}
	return measure.Number(inwards(l.Inches()*1000)/1000, 3) + " in (" + l.Metric() + " mm)"
}

// plain writes a number without exponent or trailing zeros.
func plain(f float64) string { return strconv.FormatFloat(f, 'f', -1, 64) }

// written is l as it would stand in the job file: inches where a fraction of a
// tape says it truly, millimetres elsewhere.
func written(l measure.Length, u measure.Unit) string {
	if u == measure.UnitInch {
		if s, ok := l.Tape(); ok {
			return s + " in"
		}
	}
	return plain(math.Round(l.MM()*1000)/1000) + " mm"
}
