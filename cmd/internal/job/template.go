package job

import (
	"fmt"
	"strings"

	"silowright/geometry"
	"silowright/geometry/measure"
)

// Template returns a job file to begin with, in units u: an example drum that
// is to be replaced, and every other key as a comment with its default for
// that drum and what it means. It is a valid job as it stands.
func Template(u measure.Unit) []byte {
	d := exampleDrum(u)
	s := geometry.DefaultSpec(d, u)
	var b strings.Builder
	currency := "USD"
	if u == measure.UnitMM {
		currency = "EUR"
	}
	fmt.Fprintf(&b, `# Job file of silowright. Lines that begin with # are notes or defaults: to
# change a default, take the # off and write your own value. A default that
# follows from the drum is shown for the example drum.
#
# A length is a number in the units below, or text with a fraction or a unit:
# 10.5, "10 1/2", "10-1/2 in", "267 mm", "2 ft 10 3/4 in".

name       = "my silos"       # printed on every page
units      = %q             # "in" or "mm": what a bare number means
drum_silos = 1                # how many drum silos to build
pipe_silos = 1                # how many pipe silos to build; 0 for none
currency   = %q            # three letters, as on the price list
# projection = %q       # of the drawings: "third" or "first" angle

# The drum as the tape reads it, standing on its foot: see measuring-sheet.pdf.
# THE NUMBERS BELOW ARE AN EXAMPLE: REPLACE EVERY ONE WITH YOUR OWN.
# For a second kind of drum repeat [[drum]] with its own label and count.
[[drum]]
label         = "A"           # at most 20 letters; files are named for it
count         = 1             # how many drums of this kind
`, u.String(), currency, geometry.DefaultProjection(u))
	line := func(key, value, means string) {
		fmt.Fprintf(&b, "%-13s = %-13s # %s: replace with your own\n", key, value, means)
	}
	quoted := func(l measure.Length) string { return fmt.Sprintf("%q", written(l, u)) }
	line("circumference", quoted(d.Circumference()), "tape round the plain wall")
	for _, m := range drumMeasures {
		line(m.key, quoted(*m.at(&d)), m.means)
	}
	b.WriteString("hoops = [                     # lowest first, both edges measured up from the foot\n")
	for _, h := range d.Hoops {
		fmt.Fprintf(&b, "  {from = %s, to = %s, outside = %s}, # replace with your own\n", quoted(h.From), quoted(h.To), quoted(h.Outside))
	}
	b.WriteString("]\n# A section for this kind of drum alone is written as [drum.ring], [drum.outlet] …\n# and stands here, below its [[drum]].\n")
	section := ""
	for _, q := range rules {
		if q.section != section {
			section = q.section
			fmt.Fprintf(&b, "\n[%s] # %s\n", section, sectionMeans[section])
		}
		value := q.write(&s, u)
		if !q.bare {
			value = fmt.Sprintf("%q", value)
		}
		fmt.Fprintf(&b, "# %-19s = %-13s # %s\n", q.name, value, means[q.key()])
	}
	b.WriteString(`
[prices]
file = "prices.csv"           # beside this file
# decimal             = "point"       # "comma" when the list writes 12,50

# Parts vary from maker to maker. What you measured, or read on the part's own
# label, wins over the built-in tables; take the # off and write yours. The
# measures below are invented: they only show how one is written.
`)
	for _, k := range fittingKinds() {
		name, by := s.Outlet.Pipe.Size, "by pipe size"
		if k.numbered {
			name, by = s.Drain.Stopper, "by number"
		}
		fmt.Fprintf(&b, "# [fittings.%s.%q] # %s\n", k.name, name, by)
		for _, m := range k.measures {
			fmt.Fprintf(&b, "# %-19s = %-13s # %s\n", m.key, quoted(m.example), m.means)
		}
		for _, q := range k.words {
			fmt.Fprintf(&b, "# %-19s = %-13q # %s\n", q.key, q.words[0], q.means)
		}
	}
	buyingTemplate(&b, u)
	farmTemplate(&b, u)
	return []byte(b.String())
}

// exampleDrum is an invented drum of about 200 litres.
func exampleDrum(u measure.Unit) geometry.Drum {
	if u == measure.UnitMM {
		return geometry.Drum{Label: "A", Count: 1, Outside: geometry.OutsideFromCircumference(1810 * mm),
			Height: 880 * mm, Wall: 5 * mm, FootOutside: 535 * mm, FootHeight: 55 * mm, HeadRecess: 20 * mm,
			Hoops: []geometry.Hoop{{From: 270 * mm, To: 310 * mm, Outside: 602 * mm}, {From: 575 * mm, To: 615 * mm, Outside: 602 * mm}}}
	}
	const in = measure.Inch
	return geometry.Drum{Label: "A", Count: 1, Outside: geometry.OutsideFromCircumference(71.5 * in),
		Height: 34.25 * in, Wall: in * 3 / 16, FootOutside: 21 * in, FootHeight: 2 * in, HeadRecess: 0.75 * in,
		Hoops: []geometry.Hoop{{From: 10.25 * in, To: 11.75 * in, Outside: 23.75 * in}, {From: 22.5 * in, To: 24 * in, Outside: 23.75 * in}}}
}
