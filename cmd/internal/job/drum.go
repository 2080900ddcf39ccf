package job

import (
	"fmt"
	"slices"
	"strings"

	"silowright/geometry"
	"silowright/geometry/measure"
)

// drumKeys are the keys of [[drum]] besides the sections it overrides.
var drumKeys = []string{"label", "count", "circumference", "outside", "height", "wall",
	"foot_outside", "foot_height", "head_recess", "hoops"}

// drumMeasure is a measure the tape must give: there is no default for it.
type drumMeasure struct {
	key       string
	low, high measure.Length
	means     string
	at        func(*geometry.Drum) *measure.Length
}

// drumMeasures lists them with the range each may lie in.
//
// common practice, no source: all ranges; they run from a pail to a vat.
var drumMeasures = []drumMeasure{
	{"height", 200 * mm, 2500 * mm, "ground to the upper chime", func(d *geometry.Drum) *measure.Length { return &d.Height }},
	{"wall", 1 * mm, 15 * mm, "the wall's thickness", func(d *geometry.Drum) *measure.Length { return &d.Wall }},
	{"foot_outside", 60 * mm, 1500 * mm, "the diameter it stands on", func(d *geometry.Drum) *measure.Length { return &d.FootOutside }},
	{"foot_height", 1 * mm, 500 * mm, "the height at which the wall has its full diameter", func(d *geometry.Drum) *measure.Length { return &d.FootHeight }},
	{"head_recess", 0, 200 * mm, "how far the head lies below the upper chime", func(d *geometry.Drum) *measure.Length { return &d.HeadRecess }},
}

const (
	minOutside, maxOutside = 80 * mm, 1500 * mm
	maxHoops               = 8
	maxKinds               = 50
	maxLabel               = 20
	hoopExample            = `hoops = [{from = 10.5, to = 12, outside = 23.875}, …]`
)

// drums reads every [[drum]].
func (r *reader) drums(top table, j *geometry.Job) {
	entries := r.tables(top, "drum", "[[drum]] with its keys below")
	if len(entries) == 0 {
		if _, ok := top.items["drum"]; !ok || len(r.errs) == 0 {
			r.fail("drum", "", missing, "1 to "+fmt.Sprint(maxKinds)+" kinds", "write [[drum]] and the drum's measures below it")
		}
		return
	}
	if len(entries) > maxKinds {
		r.fail(entries[maxKinds].path, fmt.Sprint(len(entries)), "kinds of drum are too many", fmt.Sprintf("1 to %d", maxKinds), "split the job")
		return
	}
	for i, t := range entries {
		r.kinds = append(r.kinds, r.drum(t, i, len(entries)))
	}
	r.labels()
	r.counts(j)
}

func (r *reader) drum(t table, i, of int) kind {
	k := kind{path: t.path, drum: geometry.Drum{Label: string(rune('A' + i%26))}}
	if i >= 26 {
		k.drum.Label += fmt.Sprint(i / 26)
	}
	d := &k.drum
	if v, ok := t.items["label"]; ok {
		d.Label, _ = r.title(t.at("label"), v, maxLabel)
	}
	if v, ok := t.items["count"]; ok {
		d.Count, _ = r.count(t.at("count"), v, 0, maxCount)
		k.given = true
	} else if of > 1 {
		r.fail(t.at("count"), "", missing, fmt.Sprintf("0 to %d", maxCount), "with several kinds of drum each says how many there are")
	}
	r.outside(t, d)
	for _, m := range drumMeasures {
		v, ok := t.items[m.key]
		if !ok {
			r.fail(t.at(m.key), "", missing, m.low.Both(r.units)+" to "+m.high.Both(r.units), "measure "+m.means)
			continue
		}
		*m.at(d), _ = r.length(t.at(m.key), v, m.low, m.high)
	}
	d.Hoops, k.hoops = sorted(r.hoops(t))
	k.fittings = r.fittings(t)
	k.own = r.sections(t)
	r.unknown(t, append(append([]string{"fittings"}, drumKeys...), sectionNames()...), "drum")
	return k
}

// outside reads circumference or outside: exactly one of them.
func (r *reader) outside(t table, d *geometry.Drum) {
	c, round := t.items["circumference"]
	o, across := t.items["outside"]
	switch {
	case round && across:
		r.fail(t.at("outside"), show(o), "stands beside circumference", "", "keep the one you measured; the tape round the plain wall is the surer")
	case round:
		low, high := geometry.Drum{Outside: minOutside}.Circumference(), geometry.Drum{Outside: maxOutside}.Circumference()
		l, _ := r.length(t.at("circumference"), c, low, high)
		d.Outside = geometry.OutsideFromCircumference(l)
	case across:
		d.Outside, _ = r.length(t.at("outside"), o, minOutside, maxOutside)
	default:
		r.fail(t.at("circumference"), "", missing, "", "measure round the plain wall, or give outside, the diameter")
	}
}

func (r *reader) hoops(t table) []geometry.Hoop {
	entries := r.tables(t, "hoops", hoopExample)
	if len(entries) == 0 {
		if len(r.errs) == 0 || t.items["hoops"] == nil {
			r.fail(t.at("hoops"), "", missing, fmt.Sprintf("1 to %d hoops", maxHoops), "the drum is cut under its uppermost hoop; "+hoopExample)
		}
		return nil
	}
	if len(entries) > maxHoops {
		r.fail(t.at("hoops"), fmt.Sprint(len(entries)), "hoops are too many", fmt.Sprintf("1 to %d", maxHoops), "leave out ribs that do not stand out")
		return nil
	}
	var out []geometry.Hoop
	for _, e := range entries {
		var h geometry.Hoop
		for _, m := range []struct {
			key       string
			low, high measure.Length
			to        *measure.Length
		}{{"from", 0, 2500 * mm, &h.From}, {"to", 0, 2500 * mm, &h.To}, {"outside", minOutside, maxOutside + 200*mm, &h.Outside}} {
			v, ok := e.items[m.key]
			if !ok {
				r.fail(e.at(m.key), "", missing, "", "a hoop reads {from = …, to = …, outside = …}, measured up from the foot")
				continue
			}
			*m.to, _ = r.length(e.at(m.key), v, m.low, m.high)
		}
		r.unknown(e, []string{"from", "to", "outside"}, "drum.hoops")
		out = append(out, h)
	}
	return out
}

// labels holds the kinds' labels apart, also as file names.
func (r *reader) labels() {
	seen := map[string]int{}
	for i, k := range r.kinds {
		slug := geometry.Slug(k.drum.Label)
		path := k.path + ".label"
		if slug == "" {
			r.fail(path, show(k.drum.Label), "holds no letter or digit", "", "files are named for it")
			continue
		}
		if j, ok := seen[slug]; ok {
			r.fail(path, show(k.drum.Label), fmt.Sprintf("is too like the label %q of another drum", r.kinds[j].drum.Label), "", "files are named for it: give each kind a label of its own")
		}
		seen[slug] = i
	}
}

// counts holds the kinds' counts to the number of silos.
func (r *reader) counts(j *geometry.Job) {
	if len(r.kinds) == 1 && !r.kinds[0].given {
		r.kinds[0].drum.Count = j.DrumSilos
		return
	}
	sum := 0
	var parts []string
	for _, k := range r.kinds {
		sum += k.drum.Count
		parts = append(parts, fmt.Sprint(k.drum.Count))
	}
	if sum == j.DrumSilos || r.fromSeed || len(r.errs) > 0 {
		return
	}
	r.fail("drum_silos", fmt.Sprint(j.DrumSilos), fmt.Sprintf("is not the sum of the drums' counts (%s = %d)", strings.Join(parts, " + "), sum),
		fmt.Sprint(sum), "one drum makes one silo: change drum_silos or a count")
}

// sorted returns hoops lowest first with the place each had in the file.
func sorted(hoops []geometry.Hoop) ([]geometry.Hoop, []int) {
	order := make([]int, len(hoops))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch {
		case hoops[a].From < hoops[b].From:
			return -1
		case hoops[a].From > hoops[b].From:
			return 1
		}
		return 0
	})
	out := make([]geometry.Hoop, len(hoops))
	for i, from := range order {
		out[i] = hoops[from]
	}
	return out, order
}
