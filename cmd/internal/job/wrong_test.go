package job

import (
	"strings"
	"testing"
)

// A wrong job is the least job with one line changed, or with lines added.
type wrongJob struct {
	reason   string
	old, new string // old "" appends new
	want     string // the whole message, or its beginning when it ends in …
}

func (w wrongJob) text() string {
	if w.old == "" {
		return least + w.new
	}
	return strings.Replace(least, w.old, w.new, 1)
}

var wrong = []wrongJob{
	{"key mistyped", "", "[outlet]\nsawz = 2\n", `job.toml:16: unknown key "outlet.sawz"; hint: did you mean "outlet.saw"?`},
	{"key mistyped at the top", "drum_silos", "drum_silo", `job.toml:2: unknown key "drum_silo"; hint: did you mean "drum_silos"?`},
	{"section mistyped", "", "[latice]\nbars = 2\n", `job.toml:15: unknown key "latice"; hint: did you mean "lattice"?`},
	{"drum key mistyped", "foot_height", "foot_hight", `job.toml:9: unknown key "drum.foot_hight"; hint: did you mean "drum.foot_height"?`},
	{"hoop key mistyped", "to = 11.5", "too = 11.5", `job.toml:12: unknown key "drum.hoops.too"; hint: did you mean "drum.hoops.to"?`},
	{"key in the wrong section", "", "[lattice]\nkerf = 0.1\n", `job.toml:16: unknown key "lattice.kerf"; hint: kerf belongs to [saw]`},
	{"drum key in a section", "", "[ring]\nwall = 0.1\n", `job.toml:16: unknown key "ring.wall"; hint: wall belongs to [[drum]]`},
	{"top key in a section", "", "[ring]\ncurrency = 'EUR'\n", `job.toml:16: unknown key "ring.currency"; hint: currency stands above the first section`},
	{"wild key", "", "[ring]\nzzzzzz = 1\n", `job.toml:16: unknown key "ring.zzzzzz"; hint: known here: width`},
	{"key endless", "", "[ring]\n" + strings.Repeat("k", 3000) + " = 1\n", `job.toml:16: unknown key "ring.` + strings.Repeat("k", 114) + `…"; hint: known here: width`},
	{"key with a dot in quotes", "", "[ring]\n\"a.width\" = 1\n", `job.toml:16: unknown key "ring.a.width"; hint: did you mean "ring.width"?`},

	{"no TOML", "units = \"in\"", "units in", "job.toml:1: …"},
	{"key given twice", "drum_silos = 3", "drum_silos = 3\ndrum_silos = 4", "job.toml:3: …"},
	{"empty file", least, "", `job.toml: drum_silos: is missing; hint: …`},
	{"not UTF-8", "units", "\xff\xfe", "job.toml: is not UTF-8 text; hint: …"},

	{"units unknown", `"in"`, `"cm"`, `job.toml:1: units: "cm" is not known here, allowed: in, mm; hint: …`},
	{"units a number", `"in"`, `3.5`, `job.toml:1: units: 3.5 is not known here, allowed: in, mm; hint: …`},
	{"count a fraction", "drum_silos = 3", "drum_silos = 3.5", `job.toml:2: drum_silos: 3.5 is not a whole number, allowed: 0 to 100000; hint: …`},
	{"count text", "drum_silos = 3", `drum_silos = "3"`, `job.toml:2: drum_silos: "3" is not a whole number, …`},
	{"count negative", "drum_silos = 3", `drum_silos = -3`, `job.toml:2: drum_silos: -3 is out of range, allowed: 0 to 100000; hint: count again`},
	{"count huge", "drum_silos = 3", `drum_silos = 100001`, `job.toml:2: drum_silos: 100001 is out of range, …`},
	{"count infinite", "drum_silos = 3", `drum_silos = inf`, `job.toml:2: drum_silos: +Inf is not a whole number, …`},
	{"count missing", "drum_silos = 3\n", "", `job.toml: drum_silos: is missing; hint: …`},
	{"pipe silos missing", "pipe_silos = 2\n", "", `job.toml: pipe_silos: is missing; hint: …`},
	{"currency in words", `units = "in"`, `currency = "dollars"`, `job.toml:1: currency: "dollars" is not a currency code, …`},
	{"currency of nowhere", `units = "in"`, `currency = "QQQ"`, `job.toml:1: currency: "QQQ" is not a currency code, …`},
	{"currency a number", `units = "in"`, `currency = 5`, `job.toml:1: currency: 5 is not a currency code, …`},
	{"name empty", `units = "in"`, `name = ""`, `job.toml:1: name: "" is empty, …`},
	{"name a list", `units = "in"`, `name = [1]`, `job.toml:1: name: a list is not text, …`},
	{"name with a control character", `units = "in"`, `name = "a\u0007b"`, `job.toml:1: name: "a\ab" holds a character that cannot be printed, …`},
	{"name endless", `units = "in"`, `name = "` + strings.Repeat("x", 61) + `"`, `job.toml:1: name: …`},

	{"no drum", least[strings.Index(least, "[[drum]]"):], "", `job.toml: drum: is missing, …`},
	{"drum in single brackets", "[[drum]]", "[drum]", `job.toml:4: drum: a section is not a list; hint: write [[drum]] …`},
	{"drum a number", least[strings.Index(least, "[[drum]]"):], "drum = 1\n", `job.toml:4: drum: 1 is not a list; hint: write [[drum]] …`},
	{"height missing", "height = 34\n", "", `job.toml:4: drum.height: is missing, allowed: 7 7/8 in (200 mm) to 98 7/16 in (2500 mm); hint: measure ground to the upper chime`},
	{"height zero", "height = 34", "height = 0", `job.toml:6: drum.height: 0 is out of range, allowed: 7 7/8 in (200 mm) to 98 7/16 in (2500 mm); hint: a bare number is taken in inches; write the unit to be sure`},
	{"height negative", "height = 34", "height = -34", `job.toml:6: drum.height: -34 is out of range, …`},
	{"height not a number", "height = 34", "height = nan", `job.toml:6: drum.height: NaN is out of range, …`},
	{"height infinite", "height = 34", "height = inf", `job.toml:6: drum.height: +Inf is out of range, …`},
	{"height absurd", "height = 34", "height = 1e308", `job.toml:6: drum.height: 1e+308 is out of range, …`},
	{"height beyond numbers", "height = 34", "height = 1e999", `job.toml:6: …`},
	{"height empty", "height = 34", `height = ""`, `job.toml:6: drum.height: "" is not a length, …`},
	{"height in words", "height = 34", `height = "tall"`, `job.toml:6: drum.height: "tall" is not a length, …`},
	{"height NaN in text", "height = 34", `height = "NaN"`, `job.toml:6: drum.height: "NaN" is not a length, …`},
	{"height true", "height = 34", `height = true`, `job.toml:6: drum.height: true is not a length, …`},
	{"height a date", "height = 34", `height = 2024-01-02`, `job.toml:6: drum.height: 2024-01-02 is not a length, …`},
	{"height in mm by mistake", "height = 34", `height = 876`, `job.toml:6: drum.height: 876 is out of range, …`},
	{"no round measure", "circumference = \"71 1/2\"\n", "", `job.toml:4: drum.circumference: is missing; hint: …`},
	{"both round measures", "height = 34", "height = 34\noutside = 23", `job.toml:7: drum.outside: 23 stands beside circumference; hint: …`},
	{"circumference of a cup", `"71 1/2"`, `7`, `job.toml:5: drum.circumference: 7 is out of range, …`},
	{"wall thick", `wall = "3/16"`, `wall = 3`, `job.toml:7: drum.wall: 3 is out of range, …`},
	{"label too long", "[[drum]]", "[[drum]]\nlabel = \"abcdefghijklmnopqrstu\"", `job.toml:5: drum.label: "abcdefghijklmnopqrstu" is 21 characters long, …`},
	{"label the fonts lack", "[[drum]]", "[[drum]]\nlabel = \"貝\"", `job.toml:5: drum.label: "貝" holds a letter that the drawings' fonts do not have, …`},
	{"projection unknown", "units", "projection = 'second'\nunits", `job.toml:1: projection: "second" is not known here, allowed: third, first; hint: …`},
	{"label of signs", "[[drum]]", "[[drum]]\nlabel = \"--\"", `job.toml:5: drum.label: "--" holds no letter or digit; hint: …`},
	{"count does not add up", "[[drum]]", "[[drum]]\ncount = 2", `job.toml:2: drum_silos: 3 is not the sum of the drums' counts (2 = 2), allowed: 2; hint: …`},

	{"no hoops", least[strings.Index(least, "hoops"):], "", `job.toml:4: drum.hoops: is missing, allowed: 1 to 8 hoops; hint: …`},
	{"hoops empty", least[strings.Index(least, "hoops"):], "hoops = []\n", `job.toml:11: drum.hoops: is missing, …`},
	{"hoops a number", least[strings.Index(least, "hoops"):], "hoops = 2\n", `job.toml:11: drum.hoops: 2 is not a list; hint: …`},
	{"hoops of numbers", least[strings.Index(least, "hoops"):], "hoops = [1, 2]\n", `job.toml:11: drum.hoops: 1 is not a set of keys; hint: …`},
	{"hoop without to", "to = 11.5, ", "", `job.toml:12: drum.hoops.to: is missing; hint: …`},
	{"hoop upside down", "to = 11.5", "to = 9.5", `job.toml:12: drum.hoops.to: 9 1/2 in is not between the hoop's lower edge and the drum's height, …`},
	{"hoop above the drum", `to = "2 ft"`, `to = 40`, `job.toml:13: drum.hoops.to: 40 in is not between …`},
	{"hoops overlap", `from = "22 1/2 in"`, `from = 11`, `job.toml:13: drum.hoops.from: 11 in lies within the hoop below it …`},
	{"hoop in the wall", `"23 3/4"`, `22`, `job.toml:12: drum.hoops.outside: 22 in does not stand out …`},
	{"hoop in the foot", "foot_height = 2", "foot_height = 10.5", `job.toml:12: drum.hoops.from: 10 in lies below …`},
	{"foot wider than the drum", `foot_outside = "21"`, `foot_outside = 24`, `job.toml:8: drum.foot_outside: 24 in is wider …`},
	{"head recess deeper than the base", least, strings.NewReplacer("height = 34", "height = 29", "0.75", "7").Replace(least), `job.toml:10: drum.head_recess: 7 in is deeper than the base is high, …`},

	{"ring wider than the body", least, strings.NewReplacer("10,", "4,", "11.5", "5", `"22 1/2 in"`, "6", `"2 ft"`, "7").Replace(least) + "[ring]\nwidth = 6\n", `job.toml:16: ring.width: 6 in leaves no body below it, allowed: …`},
	{"lattice wider than the foot", "", "[lattice]\nacross = 21\n", `job.toml:16: lattice.across: 21 in does not lie within the foot's inside …`},
	{"bars leave no opening", "", "[lattice]\nbars = 6\nbar_width = 5\n", `job.toml:17: lattice.bar_width: 5 in leaves no opening between the bars, allowed: …`},
	{"too many bars", "", "[lattice]\nbars = 7\n", `job.toml:16: lattice.bars: 7 is out of range, allowed: 2 to 6; hint: …`},
	{"edge unknown", "", "[lattice]\nedge = \"round\"\n", `job.toml:16: lattice.edge: "round" is not known here, allowed: arc, straight; hint: …`},
	{"fraction as percent", "", "[mesh]\nopen_fraction = 42\n", `job.toml:16: mesh.open_fraction: 42 is out of range, allowed: 0.05 to 0.95; hint: …`},
	{"fraction in text", "", "[sealant]\nwaste = \"15 %\"\n", `job.toml:16: sealant.waste: "15 %" is not a number, …`},
	{"cartridge of nothing", "", "[sealant]\ncartridge = 0\n", `job.toml:16: sealant.cartridge: 0 is out of range, allowed: 10 to 5000 mL; hint: …`},
	{"cartridge in words", "", "[sealant]\ncartridge = \"one\"\n", `job.toml:16: sealant.cartridge: "one" is not a volume, …`},
	{"slot off the body", "", "[handle]\nbelow_rim = 22\n", `job.toml:16: handle.below_rim: 22 in puts the slot off the body's wall, …`},
	{"slot meets the other", least, strings.NewReplacer(`"71 1/2"`, "36", `"21"`, "9", `"23 3/4"`, "12", `"603 mm"`, "12").Replace(least) + "[lattice]\nbar_width = 0.5\n[drum.handle]\nlength = 18\n", `job.toml:18: handle.length: 18 in is shorter than the slot is high, or meets the other slot, …`},
	{"datum past once round", "", "[handle]\nround = 80\n", `job.toml:16: handle.round: 80 in is more than once round the wall, …`},
	{"outlet below the foot", "", "[outlet]\nbelow_rim = 30\n", `job.toml:16: outlet.below_rim: 30 in lies below the body's foot, …`},
	{"inlet above the base", "", "[inlet]\nabove_ground = 20\n", `job.toml:16: inlet.above_ground: 20 in lies above the base's mouth, …`},
	{"drain above the base", "", "[drain]\nabove_ground = 20\n", `job.toml:16: drain.above_ground: 20 in lies above …`},
	{"pipe unknown", "", "[outlet]\npipe = \"2 1/3\"\n", `job.toml:16: outlet.pipe: "2 1/3" is not a pipe size of the tables, allowed: …`},
	{"pipe negative", "", "[outlet]\npipe = -2\n", `job.toml:16: outlet.pipe: -2 is not a pipe size of the tables, …`},
	{"pipe NaN", "", "[outlet]\npipe = nan\n", `job.toml:16: outlet.pipe: NaN is not a pipe size of the tables, …`},
	{"series unknown", "", "[outlet]\nseries = \"sch41\"\n", `job.toml:16: outlet.series: "sch41" is not known here, allowed: …`},
	{"size not in the series", "", "[outlet]\npipe = 2\nseries = \"sdr35\"\n", `job.toml:16: outlet.pipe: "2" does not come in the series sdr35, allowed: …`},
	{"default size not in the series", "", "[outlet]\nseries = \"sdr35\"\n", `job.toml:16: outlet.series: "2" (the default) does not come in the series sdr35, …`},
	{"joint unknown", "", "[outlet]\njoint = \"glue\"\n", `job.toml:16: outlet.joint: "glue" is not known here, allowed: couplings, grommet, bulkhead; hint: …`},
	{"stopper unknown", "", "[drain]\nstopper = 99\n", `job.toml:16: drain.stopper: 99 is not a stopper of the tables, allowed: …`},
	{"stopper of unknown length", "", "[drain]\nstopper = 14\n", `job.toml:16: drain.stopper: 14 has no length in the tables; hint: measure it and give length under [fittings.stopper."14"]`},
	{"stopper in words", "", "[drain]\nstopper = \"big\"\n", `job.toml:16: drain.stopper: "big" is not a stopper's number; hint: …`},
	{"screw unknown", "", "[screws]\nsize = 7\n", `job.toml:16: screws.size: 7 is not known here, allowed: 6, 8, 10, …`},
	{"side hole past the pipe", "", "[pipe_silo]\nlength = 8\n", `job.toml:4: pipe_silo.outlet_above_screen: 9 in (the default) lies past …`},
	{"load time unknown", "", "[load]\ntime = \"2 h\"\n", `job.toml:16: load.time: "2 h" is not known here, allowed: 0.5 h, 12 h, 100 h, 1 year, 50 years; hint: …`},
	{"load of nothing", "", "[load]\nseed_kg = 0\n", `job.toml:16: load.seed_kg: 0 is out of range, allowed: 0.1 to 1000 kg; hint: …`},
	{"section a number", least, "ring = 3\n" + least, `job.toml:1: ring: 3 is not a section; hint: write it as [ring] with its keys below`},
	{"section twice over", "", "[[ring]]\nwidth = 1\n", `job.toml:15: ring: a list is not a section; …`},
	{"fitting unknown", "", "[fittings.elbow.\"2\"]\noutside = 3\n", `job.toml:15: unknown key "fittings.elbow"; hint: …`},
	{"fitting of no size", "", "[fittings.coupling.big]\noutside = 3\n", `job.toml:15: fittings.coupling.big: "big" is not a pipe size of the tables, …`},
	{"fitting measure mistyped", "", "[fittings.coupling.\"2\"]\noutsid = 3\n", `job.toml:16: unknown key "fittings.coupling.outsid"; hint: did you mean "fittings.coupling.outside"?`},
	{"fitting empty", "", "[fittings.coupling.\"2\"]\n", `job.toml:15: fittings.coupling.2: is empty; …`},
	{"fitting twice", "", "[fittings.coupling.\"1 1/2\"]\noutside = 3\n[fittings.coupling.\"1-1/2\"]\noutside = 3\n", `job.toml:17: fittings.coupling.1-1/2: "1-1/2" is the same size as another here; …`},
	{"bulkhead without a flange to speak of", "", "[fittings.bulkhead.2]\nthread = 3\nflange = 2\n", `job.toml:16: fittings.bulkhead.2.thread: 3 in is not narrower than the flange, …`},
	{"bulkhead with a bore past its thread", "", "[fittings.bulkhead.2]\nthread = 3\nbore = 3\n", `job.toml:17: fittings.bulkhead.2.bore: 3 in is not narrower than the thread, …`},
	{"bulkhead with ends unknown", "", "[fittings.bulkhead.2]\nends = \"barb\"\n", `job.toml:16: fittings.bulkhead.2.ends: "barb" is not known here, allowed: socket, thread; hint: …`},
	{"stopper upside down", "", "[fittings.stopper.11]\ntop = 1\nbottom = 2\n", `job.toml:17: fittings.stopper.11.bottom: 2 in is not narrower than the top, …`},
	{"prices a number", "", "[prices]\nfile = 3\n", `job.toml:16: prices.file: 3 is not text, …`},
	{"prices key unknown", "", "[prices]\nfyle = \"a\"\n", `job.toml:16: unknown key "prices.fyle"; hint: did you mean "prices.file"?`},
	{"the override is wrong", "", "[drum.ring]\nwidth = 0\n", `job.toml:16: drum.ring.width: 0 is out of range, …`},
	{"the first of two faults is told", "", "[ring]\nwidth = 0\n[mesh]\ntrim = -1\n", `job.toml:16: ring.width: 0 is out of range, …`},
}

func TestWrongJobs(t *testing.T) {
	for _, c := range wrong {
		t.Run(c.reason, func(t *testing.T) {
			if c.old != "" && !strings.Contains(least, c.old) {
				t.Fatalf("the least job holds no %q", c.old)
			}
			_, err := Parse("job.toml", []byte(c.text()))
			if err == nil {
				t.Fatal("was taken")
			}
			got := err.Error()
			begins, cut := strings.CutSuffix(c.want, "…")
			if (cut && !strings.HasPrefix(got, begins)) || (!cut && got != c.want) {
				t.Errorf("\n got %s\nwant %s", got, c.want)
			}
			if strings.ContainsAny(got, "\n\r") || !strings.Contains(got, "; hint: ") {
				t.Errorf("not one line with a hint: %q", got)
			}
		})
	}
}

// Two kinds: the faults that only several drums can have.
func TestWrongKinds(t *testing.T) {
	drum := least[strings.Index(least, "[[drum]]"):]
	two := func(a, b string) string {
		return strings.Replace(least, "[[drum]]", "[[drum]]\n"+a, 1) + strings.Replace(drum, "[[drum]]", "[[drum]]\n"+b, 1)
	}
	for _, c := range []struct{ reason, text, want string }{
		{"counts missing", two("", ""), "job.toml:4: drum.count: is missing, allowed: 0 to 100000; hint: with several"},
		{"counts do not add up", two("count = 1", "count = 1"), "job.toml:2: drum_silos: 3 is not the sum of the drums' counts (1 + 1 = 2), allowed: 2; hint: "},
		{"one label twice", two("count = 1\nlabel = \"Blue\"", "count = 2\nlabel = \"blue\""), `job.toml:19: drum.label: "blue" is too like the label "Blue" of another drum; hint: `},
		{"only the second cannot be made", two("count = 1", "count = 2\n[drum.ring]\nwidth = 0.001\n[[drum.hoops]]\nfrom=1"), "job.toml:"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			_, err := Parse("job.toml", []byte(c.text))
			if err == nil || !strings.HasPrefix(err.Error(), c.want) {
				t.Errorf("\n got %v\nwant %s…", err, c.want)
			}
		})
	}
}
