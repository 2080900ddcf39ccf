package measure

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// ErrLength is wrapped by every error of ParseLength.
var ErrLength = errors.New("not a length")

// Longest is the longest length that ParseLength reads; nothing in a shop
// comes near it.
const Longest = 100 * Metre

// accepted is the hint of every error: one text, so that it is learnt once.
const accepted = `write it as 34 3/4, 10-1/2 in, 2 ft 10 3/4 in, 2' 10 3/4", 1.9, 883 mm, 88.3 cm or 0.9 m`

// ParseLength reads a length as a shop writes it: a whole number, a decimal, a
// fraction or a whole number with a fraction ("10 1/2", "10-1/2", "10½"), then
// a unit (in, inch, inches, ", ″, ft, foot, feet, ', ′, mm, cm, m, in either
// case); or whole feet and inches. A number without a unit is in bare. Blanks
// at either end do not count. Nothing else is read: no sign, no exponent, no
// decimal comma, no fraction of 1 or more behind a whole number, nothing over
// Longest. Every error wraps ErrLength.
func ParseLength(s string, bare Unit) (Length, error) {
	text := strings.TrimSpace(s)
	l, why := parseLength(text, bare)
	if why == "" {
		return l, nil
	}
	return 0, fmt.Errorf("%s is %w: %s; hint: %s", quoteShort(text), ErrLength, why, accepted)
}

// parseLength reads s and says why not when it cannot.
func parseLength(s string, bare Unit) (Length, string) {
	switch {
	case s == "":
		return 0, "it is empty"
	case utf8.RuneCountInString(s) > 40:
		return 0, "it is too many characters"
	case strings.HasPrefix(s, "-") || strings.HasPrefix(s, "−"):
		return 0, "it is negative"
	}
	n, rest, why := scanNumber(s)
	if why != "" {
		return 0, why
	}
	unit, rest := scanUnit(rest)
	per, why := unitLength(unit, bare)
	if why != "" {
		return 0, why
	}
	l := Length(n.value) * per
	if rest != "" {
		if per != Foot || unit == "" {
			return 0, fmt.Sprintf("%q is left over", rest)
		}
		inches, why := scanInches(n, rest)
		if why != "" {
			return 0, why
		}
		l += inches
	}
	if !l.Finite() || l > Longest {
		return 0, "it is too long, more than 100 m (328 ft)"
	}
	return l, ""
}

// scanInches reads the inches that follow n feet, to the end of s.
func scanInches(n number, s string) (Length, string) {
	if !n.whole {
		return 0, "feet before inches must be a whole number"
	}
	s = strings.TrimLeftFunc(strings.TrimPrefix(s, "-"), unicode.IsSpace)
	in, rest, why := scanNumber(s)
	if why != "" {
		return 0, why
	}
	unit, rest := scanUnit(rest)
	per, why := unitLength(unit, UnitMM)
	switch {
	case why != "":
		return 0, why
	case per != Inch:
		return 0, "what follows feet must be inches, with their unit"
	case rest != "":
		return 0, fmt.Sprintf("%q is left over", rest)
	case in.value >= 12:
		return 0, "the inches that follow feet must be under 12"
	}
	return Length(in.value) * Inch, ""
}

// number is a number as scanned.
type number struct {
	value float64
	whole bool // digits alone
}

// vulgar are the fractions of a ruler that have a character of their own.
var vulgar = map[rune]float64{
	'½': 1. / 2, '¼': 1. / 4, '¾': 3. / 4, '⅛': 1. / 8, '⅜': 3. / 8, '⅝': 5. / 8, '⅞': 7. / 8,
}

// scanNumber reads a number from the start of s and returns what follows it.
func scanNumber(s string) (n number, rest, why string) {
	if f, rest, ok := scanVulgar(s); ok {
		return number{value: f}, rest, ""
	}
	digits, rest := scanDigits(s)
	if strings.HasPrefix(rest, ".") {
		places, after := scanDigits(rest[1:])
		if places == "" {
			return n, rest, "a digit must follow the point"
		}
		return number{value: parseDigits(digits + "." + places)}, after, ""
	}
	if digits == "" {
		return n, rest, "it has no number where one must stand"
	}
	value := parseDigits(digits)
	if f, after, why, ok := scanSlash(value, rest); ok {
		return number{value: f}, after, why
	}
	return scanMixed(number{value, true}, rest)
}

// scanMixed reads the fraction that may follow the whole number n, after
// blanks, after a hyphen, or, when it is one character, at once.
func scanMixed(n number, s string) (number, string, string) {
	after := strings.TrimLeftFunc(s, unicode.IsSpace)
	if after == s {
		after = strings.TrimPrefix(s, "-")
	}
	if f, rest, ok := scanVulgar(after); ok {
		return number{value: n.value + f}, rest, ""
	}
	digits, rest := scanDigits(after)
	if digits == "" || after == s {
		return n, s, ""
	}
	f, rest, why, ok := scanSlash(parseDigits(digits), rest)
	switch {
	case !ok:
		return n, s, "a number follows a number"
	case why == "" && f >= 1:
		why = "the fraction behind a whole number must be less than 1"
	}
	return number{value: n.value + f}, rest, why
}

// scanSlash reads "/den" behind the number over; ok is whether there is a
// slash at all.
func scanSlash(over float64, s string) (f float64, rest, why string, ok bool) {
	after, ok := strings.CutPrefix(s, "/")
	if !ok {
		after, ok = strings.CutPrefix(s, "⁄") // U+2044, which some keyboards make of 1/2
	}
	if !ok {
		return 0, s, "", false
	}
	digits, rest := scanDigits(after)
	den := parseDigits(digits)
	switch {
	case digits == "":
		return 0, rest, "nothing stands under the fraction's bar", true
	case den == 0:
		return 0, rest, "the fraction is over zero", true
	}
	return over / den, rest, "", true
}

func scanVulgar(s string) (float64, string, bool) {
	r, size := utf8.DecodeRuneInString(s)
	f, ok := vulgar[r]
	if !ok {
		return 0, s, false
	}
	return f, s[size:], true
}

func scanDigits(s string) (digits, rest string) {
	i := 0
	for i < len(s) && '0' <= s[i] && s[i] <= '9' {
		i++
	}
	return s[:i], s[i:]
}

// parseDigits reads digits and a point, which cannot fail and, as the text is
// short, cannot overflow.
func parseDigits(s string) float64 {
	f, _ := strconv.ParseFloat(s, 64)
	return f
}

// scanUnit reads a word or a mark from the start of s, blanks round it apart.
func scanUnit(s string) (unit, rest string) {
	s = strings.TrimLeftFunc(s, unicode.IsSpace)
	end := strings.IndexFunc(s, func(r rune) bool { return !unicode.IsLetter(r) })
	if end < 0 {
		end = len(s)
	}
	if end == 0 {
		if r, size := utf8.DecodeRuneInString(s); strings.ContainsRune(`'"′″`, r) {
			end = size
		}
	}
	return strings.ToLower(s[:end]), strings.TrimLeftFunc(s[end:], unicode.IsSpace)
}

// unitLength is the length of one unit.
func unitLength(unit string, bare Unit) (Length, string) {
	switch unit {
	case "":
		if bare == UnitMM {
			return Millimetre, ""
		}
		return Inch, ""
	case "in", "inch", "inches", `"`, "″":
		return Inch, ""
	case "ft", "foot", "feet", "'", "′":
		return Foot, ""
	case "mm":
		return Millimetre, ""
	case "cm":
		return 10 * Millimetre, ""
	case "m":
		return Metre, ""
	}
	return 0, fmt.Sprintf("%q is not a unit it can be in", unit)
}

// quoteShort quotes s, cut where it would fill the line.
func quoteShort(s string) string {
	if r := []rune(s); len(r) > 40 {
		return strconv.Quote(string(r[:40]) + "…")
	}
	return strconv.Quote(s)
}
