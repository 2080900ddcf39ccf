package stock

import "silowright/geometry/measure"

// Screw is a pan-head tapping screw. A length of zero is not known.
type Screw struct {
	Size               string         // "6", "ST3.5"
	MajorMin, MajorMax measure.Length // over the thread
	HeadMin, HeadMax   measure.Length // head diameter
	Pitch              measure.Length // crest to crest
	Origin             Origin
}

// Screws lists the screws, inch sizes first: type AB, inches, and the metric
// sizes, of which only the pitch is given.
func Screws() []Screw {
	inch, metric := Origin{"ASME B18.6.4, type AB, pan head", One}, Origin{"ISO 1478", Memory}
	return []Screw{
		{"6", in(.132), in(.139), in(.256), in(.270), in(1. / 20), inch},
		{"8", in(.159), in(.166), in(.306), in(.322), in(1. / 18), inch},
		{"10", in(.182), in(.189), in(.357), in(.373), in(1. / 16), inch},
		{Size: "ST3.5", Pitch: 1.3, Origin: metric},
		{Size: "ST4.2", Pitch: 1.4, Origin: metric},
	}
}

// ScrewOf returns the screw of that size.
func ScrewOf(size string) (Screw, bool) {
	for _, s := range Screws() {
		if s.Size == size {
			return s, true
		}
	}
	return Screw{}, false
}

// ScrewSizes lists the sizes known.
func ScrewSizes() []string {
	var out []string
	for _, s := range Screws() {
		out = append(out, s.Size)
	}
	return out
}

// ScrewLengths lists the lengths inch screws are sold in, shortest first.
func ScrewLengths() ([]measure.Length, Origin) {
	return ins(3./8, 1./2, 5./8, 3./4, 1, 1.25, 1.5), Origin{srcPractice, Memory}
}

// ScrewInPlastics is the general rule for tapping screws in plastics; nothing
// was found for high-density polyethylene in particular.
type ScrewInPlastics struct {
	PilotMin, PilotMax           float64 // pilot hole over the major diameter
	EngagementMin, EngagementMax float64 // thread engaged over the major diameter
	Origin                       Origin
}

// ScrewName is "No. 8" for the inch sizes and the size itself for metric ones.
func ScrewName(size string) string {
	if size != "" && size[0] >= '0' && size[0] <= '9' {
		return "No. " + size
	}
	return size
}

// Pilot is the pilot holes the rule gives a thread of a major diameter.
func (r ScrewInPlastics) Pilot(major measure.Length) (least, most measure.Length) {
	return major * measure.Length(r.PilotMin), major * measure.Length(r.PilotMax)
}

// ScrewRule returns that rule.
func ScrewRule() ScrewInPlastics {
	return ScrewInPlastics{.75, .90, 2, 3, Origin{"design guides for screws in plastics, general", One}}
}
