package sheets

import (
	"strconv"

	"silowright/render"
)

// sharePitch is the height of one bar of the shares with the room below it.
const sharePitch length = 4.6

// sharesTall is how tall the bars come out.
func sharesTall(c *Cost, pitch length) length {
	if len(c.Shares) == 0 {
		return 0
	}
	return pitch*length(len(c.Shares)) + 2.5
}

// shares draws where the money goes: a bar a category, its name before it, its
// amount and its share of the whole in words behind it.
func (f *flow) shares(c *Cost, pitch length) {
	if len(c.Shares) == 0 {
		return
	}
	names, says, most := length(0), length(0), 0.0
	written := make([]string, len(c.Shares))
	for i, s := range c.Shares {
		written[i] = f.safe(c.amount(s.Sum) + " · " + percent(s.Part))
		names = max(names, width(f.safe(upper(s.Name)), small, false))
		says = max(says, width(written[i], small, false))
		most = max(most, part(s.Part))
	}
	names, says = min(names, f.wide()*0.34), min(says, f.wide()*0.36)
	left := marginL + names + 2
	room := f.wide() - names - says - 4
	for i, s := range c.Shares {
		f.need(pitch)
		f.put(marginL+names, f.y+(pitch+small)/2-0.2, fit(f.safe(upper(s.Name)), small, names), small, false, render.Right)
		long := length(0)
		if most > 0 {
			long = room * length(part(s.Part)/most)
		}
		if long > 0.05 {
			f.shade(left, f.y+0.4, left+long, f.y+pitch-0.8, 0.35)
		}
		f.put(left+long+1.5, f.y+(pitch+small)/2-0.2, fit(written[i], small, says), small, false, render.Left)
		f.line(left, f.y, left, f.y+pitch, render.Thin)
		f.y += pitch
	}
	f.y += 2.5
}

// part is x held to 0 to 1.
func part(x float64) float64 {
	if !(x > 0) {
		return 0
	}
	return min(x, 1)
}

// percent writes a part of a whole; what rounds to none is said to be less
// than one.
func percent(x float64) string {
	switch x = part(x); {
	case x > 0 && x < 0.005:
		return "under 1 %"
	}
	return strconv.Itoa(int(x*100+0.5)) + " %"
}
