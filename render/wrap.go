package render

import (
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Wrap breaks words into lines no wider than room; a word wider than that is
// broken within, each line holding one letter at least. A number stays with its unit and its fraction. There is
// always at least one line.
func Wrap(words string, size length, bold bool, room length) []string {
	var out []string
	line := ""
	take := func(word string) {
		try := word
		if line != "" {
			try = line + " " + word
		}
		if TextWidth(try, size, bold) <= room {
			line = try
			return
		}
		if line != "" {
			out = append(out, line)
		}
		for TextWidth(word, size, bold) > room {
			head := headOf(word, size, bold, room)
			out = append(out, head)
			word = word[len(head):]
		}
		line = word
	}
	for _, group := range glued(strings.Fields(words)) {
		if TextWidth(group, size, bold) <= room {
			take(group)
			continue
		}
		for _, word := range strings.Fields(group) {
			take(word)
		}
	}
	if line != "" || len(out) == 0 {
		out = append(out, line)
	}
	return out
}

// units are the words that stay with the number before them.
var units = []string{"in", "mm", "ft", "L", "gal", "mL", "fl", "oz", "kg", "lb", "%", "ppm", "mA", "MPa", "mm²", "°F", "°C", "h", "min",
	"L/min", "gpm", "m", "µm", "ft/s", "in/s", "m/s", "mm/s", "hp", "W", "kWh", "psi", "kPa", "g/kg", "kg/m²", "L/min/kg"}

// glued puts words that must stay on one line into one string: a whole number
// and its fraction, a number and its unit.
func glued(words []string) []string {
	var out []string
	for i, w := range words {
		if i > 0 && endsInDigit(words[i-1]) && (isFraction(w) || slices.Contains(units, strings.TrimRight(w, ").,;:"))) {
			out[len(out)-1] += " " + w
			continue
		}
		out = append(out, w)
	}
	return out
}

func endsInDigit(w string) bool {
	return w != "" && w[len(w)-1] >= '0' && w[len(w)-1] <= '9'
}

func isFraction(w string) bool {
	a, b, ok := strings.Cut(w, "/")
	_, e1 := strconv.Atoi(a)
	_, e2 := strconv.Atoi(b)
	return ok && e1 == nil && e2 == nil
}

// headOf is as much of a word as fits, at least one letter; it is broken
// behind a hyphen, point or stroke where there is one in its last half.
func headOf(word string, size length, bold bool, room length) string {
	end := 0
	for end < len(word) {
		_, n := utf8.DecodeRuneInString(word[end:])
		if end > 0 && TextWidth(word[:end+n], size, bold) > room {
			break
		}
		end += n
	}
	if at := strings.LastIndexAny(word[:end], "-./_,") + 1; at > end/2 {
		return word[:at]
	}
	return word[:end]
}
