package sheets

import (
	"slices"
	"sort"
	"strconv"
	"strings"
	"unicode/utf8"

	"silowright/render"
)

// standIn is printed for a letter the printing face lacks.
const standIn = '□'

// pageOf numbers a page.
func pageOf(n, total int) string {
	return "page " + strconv.Itoa(n) + " of " + strconv.Itoa(total)
}

// printable turns what a user wrote into words the printing face holds:
// breaks and tabs become spaces, every other letter that is missing becomes
// standIn. It reports whether a letter was replaced.
func printable(s string) (string, bool) {
	plain := true
	for i := 0; i < len(s); i++ {
		if s[i] < 0x20 || s[i] > 0x7e {
			plain = false
			break
		}
	}
	if plain {
		return s, false
	}
	var b strings.Builder
	changed := false
	for _, r := range s {
		switch {
		case r == '\n' || r == '\r' || r == '\t' || r == '\u00a0':
			b.WriteByte(' ')
		case r > 0xffff || r < 0x20 || !render.HasGlyphs(string(r)):
			b.WriteRune(standIn)
			changed = true
		default:
			b.WriteRune(r)
		}
	}
	return b.String(), changed
}

// clean is printable without the report.
func clean(s string) string {
	out, _ := printable(s)
	return out
}

// width is how wide words are set.
func width(words string, size length, bold bool) length {
	return render.TextWidth(words, size, bold)
}

// wrap breaks words into lines no wider than room; a word wider than that is
// broken within. A number stays with its unit and its fraction. There is
// always at least one line.
func wrap(words string, size length, bold bool, room length) []string {
	var out []string
	line := ""
	take := func(word string) {
		try := word
		if line != "" {
			try = line + " " + word
		}
		if width(try, size, bold) <= room {
			line = try
			return
		}
		if line != "" {
			out = append(out, line)
		}
		for width(word, size, bold) > room {
			head := headOf(word, size, bold, room)
			out = append(out, head)
			word = word[len(head):]
		}
		line = word
	}
	for _, group := range glued(strings.Fields(words)) {
		if width(group, size, bold) <= room {
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
		if end > 0 && width(word[:end+n], size, bold) > room {
			break
		}
		end += n
	}
	if at := strings.LastIndexAny(word[:end], "-./_,") + 1; at > end/2 {
		return word[:at]
	}
	return word[:end]
}

// fit shortens words that are wider than room and marks that with "…".
func fit(words string, size length, room length) string {
	if width(words, size, false) <= room {
		return words
	}
	runes := []rune(words)
	short := func(n int) string { return strings.TrimRight(string(runes[:n]), " ") + "…" }
	n := sort.Search(len(runes), func(n int) bool { return width(short(n), size, false) > room }) - 1
	if n < 1 {
		return ""
	}
	return short(n)
}
