package sheets

import (
	"slices"
	"strconv"
	"strings"

	"silowright/geometry"
)

// sources are what the sentences of a section rest on, each once, in order of
// first use.
type sources []string

// cite numbers a source and returns the number as it stands behind a sentence.
func (s *sources) cite(basis string) string {
	if basis == "" {
		return ""
	}
	at := slices.Index(*s, basis)
	if at < 0 {
		at = len(*s)
		*s = append(*s, basis)
	}
	return " [" + strconv.Itoa(at+1) + "]"
}

// saying sets sentences with their marks in one box, heavy when one is a stop;
// the numbers behind them lead to their sources at the section's end. What is
// no more than ok is not bold, what was said already is not said again.
func (f *flow) saying(from *sources, list ...Said) {
	var out []boxed
	heavy := false
	for i, s := range list {
		if s.Words == "" || slices.Contains(list[:i], s) { // two drum kinds may say the same
			continue
		}
		heavy = heavy || s.Level == geometry.Stop
		words := sentence(s.Words)
		if s.Level != geometry.OK {
			words = levelWord(s.Level) + ": " + words
		}
		out = append(out, boxed{words: words + from.cite(s.Basis), bold: s.Level != geometry.OK, mark: levelMark(s.Level)})
	}
	if len(out) > 0 {
		f.box(heavy, out...)
	}
}

// orElse is words, or other when there are none.
func orElse(words, other string) string {
	if words == "" {
		return other
	}
	return words
}

// bases sets what the numbers of a section rest on, the sources of its
// sentences first.
func (f *flow) bases(from sources, list []BasisLine) {
	if len(from)+len(list) == 0 {
		return
	}
	t := table{cols: []column{{head: "Sentence, number or method", share: 74, bold: true}, {head: "What it rests on", share: 110}}}
	for i, s := range from {
		t.add(say("Sentences marked ["+strconv.Itoa(i+1)+"]"), say(s))
	}
	for _, b := range list {
		what := b.What
		if first, _, _ := strings.Cut(what, " "); !strings.Contains(first, ".") { // a check's id stands as it is
			what = upper(what)
		}
		t.add(say(what), say(b.Source))
	}
	f.whole("What these pages rest on", t)
}
