package sheets

import (
	"sort"
	"strconv"
	"strings"

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
