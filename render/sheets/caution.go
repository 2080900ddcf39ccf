package sheets

// caution is a warning and the public source it rests on.
type caution struct{ words, source string }

// cautions sets warnings in one framed box, each with its source.
func (f *flow) cautions(list []caution) {
	if len(list) > 0 {
		f.box(false, cautionBox(list)...)
	}
}

func cautionBox(list []caution) []boxed {
	var out []boxed
	for _, c := range list {
		out = append(out, boxed{words: c.words + " [" + c.source + "]", mark: careMark})
	}
	return out
}
