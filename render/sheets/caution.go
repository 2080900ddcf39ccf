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

// Cautions lists the cautions that the pages print, words and source of each,
// in the order of the work.
func Cautions() [][2]string {
	var out [][2]string
	for _, list := range [][]caution{usedDrum, {cautionSaw, cautionKickback, cautionCut, cautionEdge, cautionPoints,
		cautionSealant, cautionCement, cautionResin, cautionLift, cautionSeed, cautionPower}} {
		for _, c := range list {
			out = append(out, [2]string{c.words, c.source})
		}
	}
	return out
}
