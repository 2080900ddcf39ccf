package nearest

import (
	"strings"
	"testing"
)

func TestWord(t *testing.T) {
	known := []string{"check", "cost", "hole", "pack", "start", "tables"}
	for _, c := range []struct{ typed, want, reason string }{
		{"chekc", "check", "two neighbours swapped"},
		{"strt", "start", "a letter left out"},
		{"tablles", "tables", "a letter doubled"},
		{"pick", "pack", "a letter changed"},
		{"hole", "hole", "nothing wrong"},
		{"rocket", "", "nothing like it"},
		{"", "", "nothing at all"},
		{strings.Repeat("check", 1000), "", "endless"},
	} {
		got, ok := Word(c.typed, known)
		if got != c.want || ok != (c.want != "") {
			t.Errorf("%s: Word(%.20q) = %q, %v; want %q", c.reason, c.typed, got, ok, c.want)
		}
	}
	if _, ok := Word("x", nil); ok {
		t.Error("a word was found among none")
	}
}

// The worked pairs of the literature on edit distance: kitten to sitting is 3,
// Saturday to Sunday is 3 (textbook examples).
func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{{"kitten", "sitting", 3}, {"Saturday", "Sunday", 3}, {"", "abc", 3}, {"ab", "ba", 1}, {"Øre", "Øre", 0}} {
		if got := distance([]rune(c.a), []rune(c.b)); got != c.want {
			t.Errorf("distance(%q, %q) = %d, want %d", c.a, c.b, got, c.want)
		}
	}
}
