// Package nearest finds the word someone meant when they mistyped one.
package nearest

// Word returns the word of known that takes the fewest edits (letter added,
// left out, changed, or two neighbours swapped) to make from typed. It reports
// false when even that takes more than a third of the letters, rounded up: a
// wilder guess helps nobody. Of equals the first in known wins.
//
// Source of the distance: optimal string alignment, textbook form.
func Word(typed string, known []string) (string, bool) {
	best, at := -1, ""
	for _, k := range known {
		if d := distance([]rune(typed), []rune(k)); best < 0 || d < best {
			best, at = d, k
		}
	}
	if best < 0 || best > (len([]rune(at))+2)/3 {
		return "", false
	}
	return at, true
}

// maxTyped bounds the work for absurd input; no word known is half as long.
const maxTyped = 80

func distance(a, b []rune) int {
	if len(a) > maxTyped {
		return len(a)
	}
	rows := make([][]int, len(a)+1)
	for i := range rows {
		rows[i] = make([]int, len(b)+1)
		rows[i][0] = i
	}
	for j := range rows[0] {
		rows[0][j] = j
	}
	for i := 1; i <= len(a); i++ {
		for j := 1; j <= len(b); j++ {
			change := 1
			if a[i-1] == b[j-1] {
				change = 0
			}
			d := min(rows[i-1][j]+1, rows[i][j-1]+1, rows[i-1][j-1]+change)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d = min(d, rows[i-2][j-2]+1)
			}
			rows[i][j] = d
		}
	}
	return rows[len(a)][len(b)]
}
