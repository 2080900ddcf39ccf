package job

import (
	"bytes"
	"maps"
	"slices"
	"strings"

	"silowright/geometry"
	"silowright/geometry/measure"
)

// Field is one key of a job file with what is known of it, for a person who
// fills it in.
type Field struct {
	Key     string `json:"key"`     // as Edit takes it: "outlet.saw", "drum[0].wall"
	Section string `json:"section"` // "outlet", "drum[0]", "drum[0].outlet"; empty above the first section
	Name    string `json:"name"`
	Means   string `json:"means"`
	Kind    Kind   `json:"kind"`
	// Low and High bound a length, count or number, written out; empty for
	// other kinds. Unit is what a bare number is in, where that is not the
	// job's own unit of length.
	Low   string   `json:"low"`
	High  string   `json:"high"`
	Unit  string   `json:"unit"`
	Words []string `json:"words"` // what a word or pipe may be
	// Fallback is what holds when the key is left out, as it would be written;
	// empty when there is none, or when it follows from a drum that cannot be
	// read yet.
	Fallback string `json:"fallback"`
	Value    string `json:"value"` // as in the file; empty when it is not there
	Both     string `json:"both"`  // a length in force in both units
	Line     int    `json:"line"`  // where it stands; 0 when it does not
}

// SectionWords says what a section is about, by the name Field.Section has
// without its entry numbers.
func SectionWords() map[string]string {
	out := maps.Clone(sectionMeans)
	maps.Copy(out, map[string]string{
		"": "the job", "drum": "the drum as the tape reads it, standing on its foot", "drum.hoops": "a hoop round the drum",
		"prices": "the price list", "fittings": "parts you measured, which win over the tables",
		"buying": "tax, and how sure the prices are", "bench": "how pipe is sawn", "supplier": "what one supplier asks of an order",
		"choose": "items that come from one supplier whatever others ask", "exchange": "other currencies in the price list",
		"on_hand": "what is on the rack and not bought again", "pipe_run": "pipe for the manifold and the mains",
		"rates": "what is used up", "work": "minutes and crew", seedSection: "the seed to be raised",
	})
	maps.Copy(out, farmMeans)
	return out
}

// Fields lists the keys of a job file: those that every job has, with their
// defaults, and those of the drums, suppliers, fittings and the like that
// stand in the text. It reads what can be read of a text that is wrong.
func Fields(text []byte) []Field {
	text, top := lenient(text)
	marks, _ := scan(text)
	f := &fielder{text: text, marks: marks, top: top, r: &reader{lines: top.lines, stoppers: map[string]geometry.StopperMeasure{}}}
	f.at = map[string]int{}
	for i, m := range marks {
		if _, seen := f.at[pathText(m.path)]; !seen && m.kind != header {
			f.at[pathText(m.path)] = i
		}
	}
	if w, _ := top.items["units"].(string); strings.EqualFold(strings.TrimSpace(w), "mm") {
		f.r.units = measure.UnitMM
	}
	f.force()
	for _, k := range catalogue() {
		f.spread(k)
	}
	return f.out
}

// lenient decodes as much of a text as it can: lines that stop it are taken
// for blank.
func lenient(text []byte) ([]byte, table) {
	if len(text) > maxSize {
		text = nil
	}
	text = bytes.ToValidUTF8(slices.Clone(text), []byte("?"))
	for range 40 {
		top, bad := decode("job", text)
		if bad == nil {
			return text, top
		}
		from := 0
		for range bad.Line - 1 {
			from += bytes.IndexByte(text[from:], '\n') + 1
		}
		to := len(text)
		if n := bytes.IndexByte(text[from:], '\n'); n >= 0 {
			to = from + n
		}
		if blank := bytes.Repeat([]byte{' '}, to-from); bad.Line > 0 && !bytes.Equal(text[from:to], blank) {
			copy(text[from:to], blank)
			continue
		}
		break
	}
	return nil, table{items: map[string]any{}, lines: lines{}}
}

// fielder gathers the fields of one text.
type fielder struct {
	text  []byte
	marks []mark
	at    map[string]int // where a path stands among marks
	top   table
	r     *reader
	specs []geometry.Spec // in force, one a [[drum]]; of the example where the drum cannot be read
	guess []bool          // it is of the example
	bare  []geometry.Spec // with nothing set
	own   []section
	share section
	base  geometry.Fittings
	out   []Field
}

// force works out what holds for each drum.
func (f *fielder) force() {
	r := f.r
	f.base = r.fittings(f.top)
	f.share = r.sections(f.top)
	list, _ := f.top.items["drum"].([]any)
	if len(list) > maxKinds {
		list = list[:maxKinds]
	}
	for i, v := range list {
		items, _ := v.(map[string]any)
		t := table{path: entry("drum", i), items: items, lines: f.top.lines}
		k, good := r.kindOf(t, i, len(list))
		f.add(k, good)
	}
	if len(f.specs) == 0 {
		f.add(kind{drum: exampleDrum(r.units)}, false)
	}
}

// kindOf reads one drum and whether that went without an error.
func (r *reader) kindOf(t table, i, of int) (kind, bool) {
	trial := &reader{file: r.file, lines: r.lines, units: r.units, stoppers: r.stoppers}
	k := trial.drum(t, i, of)
	good := true
	for _, e := range trial.errs {
		good = good && strings.Contains(e.Key, ".") && slices.Contains(sectionNames(), strings.Split(strings.TrimPrefix(e.Key, "drum."), ".")[0])
	}
	if good {
		_, bad := geometry.DefaultSpec(k.drum, r.units).Impossible()
		return k, !bad || len(k.drum.Hoops) > 0
	}
	return k, false
}

func (f *fielder) add(k kind, good bool) {
	if !good {
		k.drum = exampleDrum(f.r.units)
	}
	f.specs = append(f.specs, f.laid(k, f.share, k.own))
	f.bare = append(f.bare, f.laid(kind{drum: k.drum}, nil, nil))
	f.guess = append(f.guess, !good)
	f.own = append(f.own, k.own)
}

// laid is a kind's spec with the sections given.
func (f *fielder) laid(k kind, shared, own section) geometry.Spec {
	trial := &reader{units: f.r.units, kinds: []kind{{path: k.path, drum: k.drum, own: own, fittings: k.fittings}}}
	specs, _ := trial.lay(shared, f.base)
	return specs[0]
}

// spread makes the fields of one key of the catalogue: one, or one an entry.
func (f *fielder) spread(k knownKey) {
	switch {
	case k.section == "drum" || k.section == "drum.hoops":
		f.entries(k)
	case k.section == "supplier" || k.section == "pipe_run":
		list, _ := f.top.items[k.section].([]any)
		for i := range list {
			f.field(k, []step{{k.section, i}, {k.name, -1}}, f.fixed(k))
		}
	case strings.HasPrefix(k.section, "fittings."), k.name == "":
		f.named(k)
	default:
		if q, ok := ruleOf(k.key()); ok {
			f.rule(k, q)
			return
		}
		f.field(k, top(k.section, k.name), f.fixed(k))
	}
}

func top(section, name string) []step {
	if section == "" {
		return []step{{name, -1}}
	}
	return []step{{section, -1}, {name, -1}}
}

func (f *fielder) fixed(k knownKey) string {
	if k.fallback == nil {
		return ""
	}
	return k.fallback(f.r.units)
}

func ruleOf(key string) (rule, bool) {
	for _, q := range rules {
		if q.key() == key {
			return q, true
		}
	}
	return rule{}, false
}

// entries are the fields of each drum, or of each hoop of it.
func (f *fielder) entries(k knownKey) {
	list, _ := f.top.items["drum"].([]any)
	for i, v := range list {
		items, _ := v.(map[string]any)
		if k.section == "drum" {
			fallback := ""
			switch {
			case k.name == "label":
				fallback = string(rune('A' + i%26))
			case k.name == "count" && len(list) == 1:
				fallback = f.value([]step{{"drum_silos", -1}})
			}
			f.field(k, []step{{"drum", i}, {k.name, -1}}, fallback)
			continue
		}
		hoops, _ := items["hoops"].([]any)
		for j := range hoops {
			f.field(k, []step{{"drum", i}, {"hoops", j}, {k.name, -1}}, "")
		}
	}
}

// named are the fields whose section or name the file makes up: an item, a
// currency, a fitting's size.
func (f *fielder) named(k knownKey) {
	seen := map[string]bool{}
	for _, m := range f.marks {
		p := m.path
		if general(p) != k.key()+strings.Repeat(".", one(k.name == "" && !strings.HasSuffix(k.key(), "."))) || m.kind == header || m.kind == itemMark || seen[pathText(p)] {
			continue
		}
		seen[pathText(p)] = true
		f.field(k, p, f.fixed(k))
	}
	if !strings.HasPrefix(k.section, "fittings.") {
		return
	}
	// the other measures of a fitting of which one is given
	for _, m := range f.marks {
		p := m.path
		if n := len(p); m.kind != header && n >= 4 && p[n-4].name == "fittings" && "fittings."+p[n-3].name == k.section {
			other := append(slices.Clone(p[:n-1]), step{k.name, -1})
			if !seen[pathText(other)] {
				seen[pathText(other)] = true
				f.field(k, other, "")
			}
		}
	}
}

func one(b bool) int {
	if b {
		return 1
	}
	return 0
}

// rule is the field of a key that all drums share, and of each drum that has
// its own.
func (f *fielder) rule(k knownKey, q rule) {
	u := f.r.units
	f.fieldIn(k, top(k.section, k.name), f.without(0, q, true), q.write(&f.specs[0], u))
	for i, own := range f.own {
		p := []step{{"drum", i}, {k.section, -1}, {k.name, -1}}
		_, there := f.at[pathText(p)]
		if _, set := own[q.key()]; set || there {
			f.fieldIn(k, p, f.without(i, q, false), q.write(&f.specs[i], u))
		}
	}
}

// without is what a key would be if the file left it out: of one drum, or of
// the section that all share.
func (f *fielder) without(i int, q rule, shared bool) string {
	u := f.r.units
	if !shared {
		if set, ok := f.share[q.key()]; ok {
			s := f.bare[i]
			set.apply(&s)
			return q.write(&s, u)
		}
	}
	s := f.bare[i]
	if strings.HasSuffix(q.name, "nipple") || strings.HasSuffix(q.name, "series") { // these follow from other keys
		share := maps.Clone(f.share)
		delete(share, q.key())
		s = f.laid(kind{drum: s.Drum}, share, nil)
	}
	value := q.write(&s, u)
	if f.guess[i] { // does it follow from the drum?
		d := exampleDrum(u)
		d.Outside, d.FootOutside = d.Outside/2, d.FootOutside/2
		other := f.laid(kind{drum: d}, nil, nil)
		if q.write(&other, u) != q.write(&f.bare[i], u) {
			return ""
		}
	}
	return value
}

// field adds a field whose value in force is what the file or else its
// fallback says.
func (f *fielder) field(k knownKey, path []step, fallback string) {
	force := f.value(path)
	if force == "" {
		force = fallback
	}
	f.fieldIn(k, path, fallback, force)
}

func (f *fielder) fieldIn(k knownKey, path []step, fallback, force string) {
	w := asked[f.r.units]()[k.key()]
	out := Field{Key: pathText(path), Name: path[len(path)-1].name, Section: pathText(path[:len(path)-1]), Means: k.means,
		Kind: w.kind, Low: w.low, High: w.high, Unit: w.unit, Words: w.words, Fallback: fallback, Value: f.value(path)}
	if i, ok := f.at[out.Key]; ok {
		out.Line = 1 + bytes.Count(f.text[:f.marks[i].key], []byte("\n"))
	}
	if w.kind == KindLength && force != "" {
		in := f.r.units
		if i, there := f.at[out.Key]; k.unit == "mm" && (!there || f.text[f.marks[i].from] != '"') { // as a bare number there is
			in = measure.UnitMM
		}
		if l, err := measure.ParseLength(force, in); err == nil && l.Finite() {
			out.Both = l.Both(f.r.units)
		}
	}
	f.out = append(f.out, out)
}

// value is what the file holds at a path: the words of a string, else as it
// is written.
func (f *fielder) value(path []step) string {
	i, ok := f.at[pathText(path)]
	if !ok {
		return ""
	}
	raw := string(f.text[f.marks[i].from:f.marks[i].to])
	if s, ok := unquote(raw); ok {
		return s
	}
	return raw
}

// Plain is the field's key as errors and findings name it: without entry
// numbers and quotes.
func (f Field) Plain() string {
	path, err := parseKey(f.Key)
	if err != nil {
		return f.Key
	}
	plain := ""
	for _, s := range path {
		plain = child(plain, s.name)
	}
	return plain
}
