package render

import "silowright/geometry/path"

// blanks lists the measures A to F, each with a line to write on.
func (s *sheet) blanks(o path.Point) {
	y := o.Y
	for _, b := range []struct{ letter, key, first, second string }{
		{"A", "circumference", "tape round the plain wall, level,", "between the hoops"},
		{"B", "height", "ground to the upper chime", ""},
		{"C", "wall", "thickness, by calliper in a bung hole", "or at the first cut; three places"},
		{"D", "foot_outside", "across the circle it stands on", ""},
		{"E", "foot_height", "ground to where the wall is", "straight: lay a rule against it"},
		{"F", "head_recess", "upper chime down to the flat of the", "head: rule across, rule down"},
	} {
		s.letter(path.Pt(o.X+3.2, y), b.letter)
		s.bold(o.X+9, y-1.2, small, b.key)
		s.field(path.Pt(o.X+42, y-2), s.width-margin-o.X-42-8)
		s.say(o.X+9, y-6.2, small, b.first)
		s.say(o.X+9, y-10.6, small, b.second)
		y -= 19
	}
}

// field is a line to write on, with the unit behind it.
func (s *sheet) field(from path.Point, long length) {
	s.run(Thin, from, path.Pt(from.X+long, from.Y))
	s.say(from.X+long+1.5, from.Y+0.2, small, s.unit)
}

// hoops is the table of the hoops' edges and girths.
func (s *sheet) hoops(o path.Point) {
	s.bold(o.X, o.Y, medium, "hoops, lowest first")
	s.say(o.X+52, o.Y, small, "from and to: ground to the hoop's lower and upper edge")
	columns := []length{o.X, o.X + 34, o.X + 84, o.X + 134, s.width - margin}
	heads := []string{"", "from", "to", "outside"}
	rows := [][]string{
		{"lower hoop", "G", "H", "I"},
		{"upper hoop", "J", "K", "L"},
	}
	const high = 9
	top := o.Y - 3
	for i := range heads {
		s.bold(columns[i]+2, top-4.5, small, heads[i])
	}
	line := top - 6.5
	s.run(Outline, path.Pt(o.X, line), path.Pt(s.width-margin, line))
	for _, row := range rows {
		s.say(columns[0]+2, line-6, small, row[0])
		for i, word := range row[1:] {
			x := columns[i+1]
			s.letter(path.Pt(x+5, line-high/2), word)
			s.say(columns[i+2]-7, line-6, small, s.unit)
		}
		line -= high
		s.run(Thin, path.Pt(o.X, line), path.Pt(s.width-margin, line))
	}
	for _, x := range columns[1:4] {
		s.run(Thin, path.Pt(x, top), path.Pt(x, line))
	}
	s.say(o.X, line-5, small, "outside: tape round the hoop, divided by 3.1416. The drum is cut right under its upper hoop.")
}

// foot is what else to note down.
func (s *sheet) foot() {
	y := margin + 1
	x := margin
	for _, f := range []struct {
		words string
		blank length
	}{{"label", 30}, {"count", 16}, {"what it held", 40}, {"date", 20}} {
		s.bold(x, y, small, f.words)
		x += 2*length(len(f.words)) + 2
		s.run(Thin, path.Pt(x, y-0.8), path.Pt(x+f.blank, y-0.8))
		x += f.blank + 3
	}
	s.say(margin, y-6, small, "Read each measure three times, on different sides, and write the middle one.")
}
