package sheets

import "silowright/geometry"

// saying sets sentences with their marks in one box, heavy when one is a stop.
func (f *flow) saying(list []Said) {
	var out []boxed
	heavy := false
	for _, s := range list {
		if s.Words == "" {
			continue
		}
		heavy = heavy || s.Level == geometry.Stop
		out = append(out, s.boxed()...)
	}
	if len(out) > 0 {
		f.box(heavy, out...)
	}
}

// boxed is the sentence with its mark; what is no more than ok is not bold.
func (s Said) boxed() []boxed {
	words := sentence(s.Words)
	if s.Level != geometry.OK {
		words = levelWord(s.Level) + ": " + words
	}
	if s.Basis != "" {
		words += " [" + s.Basis + "]"
	}
	return []boxed{{words: words, bold: s.Level != geometry.OK, mark: levelMark(s.Level)}}
}

// orElse is words, or other when there are none.
func orElse(words, other string) string {
	if words == "" {
		return other
	}
	return words
}

// bases sets what the numbers of a section rest on.
func (f *flow) bases(list []BasisLine) {
	if len(list) == 0 {
		return
	}
	t := table{cols: []column{{head: "Number or method", share: 74, bold: true}, {head: "What it rests on", share: 110}}}
	for _, b := range list {
		t.add(say(upper(b.What)), say(b.Source))
	}
	f.headed("What these pages rest on", t)
}
