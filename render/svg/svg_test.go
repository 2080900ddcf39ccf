package svg_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
	"silowright/render/svg"
)

func write(t testing.TB, d render.Drawing) []byte {
	t.Helper()
	var buf bytes.Buffer
	if err := svg.Write(&buf, d); err != nil {
		t.Fatal(err)
	}
	return buf.Bytes()
}

// plate has a line on every layer, a fill and words that need escaping.
func plate() render.Drawing {
	d := render.Drawing{Title: `Plate <A> & "B"`, Description: "base, drum A: rim < up", Width: 266.7, Height: 150.25}
	for i, l := range render.Layers() {
		y := measure.Length(10 + 8*i)
		d.Line(l, path.Pt(20, y), path.Pt(120, y))
	}
	d.Circle(render.Cut, path.Pt(190, 75), 33.35)
	d.Shade(path.Circle(path.Pt(190, 75), 10), 0.25)
	d.Words(path.Pt(20, 130), 3.5, render.Left, `<script>alert("1⅛ & Ø")</script>`)
	d.TurnedWords(path.Pt(140, 70), 3.5, render.Middle, 90*measure.Degree, "turned ¾")
	d.BoldWords(path.Pt(250, 120), 5, render.Right, "bold")
	return d
}

// element is one start tag with what is in it, as encoding/xml reads it.
type element struct {
	name, text, group string
	attr              map[string]string
}

func elements(t testing.TB, data []byte) []element {
	t.Helper()
	dec := xml.NewDecoder(bytes.NewReader(data))
	var out []element
	var open []int
	for {
		tok, err := dec.Token()
		if errors.Is(err, io.EOF) {
			return out
		}
		if err != nil {
			t.Fatalf("%v in\n%s", err, data)
		}
		switch x := tok.(type) {
		case xml.StartElement:
			e := element{name: x.Name.Local, attr: map[string]string{}}
			for _, a := range x.Attr {
				e.attr[a.Name.Local] = a.Value
			}
			for _, i := range open {
				if id := out[i].attr["id"]; out[i].name == "g" && id != "" {
					e.group = id
				}
			}
			open = append(open, len(out))
			out = append(out, e)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			if len(open) > 0 {
				out[open[len(open)-1]].text += string(x)
			}
		}
	}
}

// One unit is one millimetre, groups carry their layer's name once, words stay
// words, and there is nothing in the file that a shop's machine could trip on.
func TestFile(t *testing.T) {
	d := plate()
	data := write(t, d)
	if !bytes.Equal(data, write(t, d)) {
		t.Error("two files of one drawing differ")
	}
	all := elements(t, data)
	root := all[0]
	if root.name != "svg" || root.attr["width"] != "266.7000mm" && root.attr["width"] != "266.7mm" {
		t.Errorf("width is %q", root.attr["width"])
	}
	var box [4]float64
	for i, f := range strings.Fields(root.attr["viewBox"]) {
		x, err := strconv.ParseFloat(f, 64)
		if err != nil || i > 3 {
			t.Fatal(root.attr["viewBox"])
		}
		box[i] = x
	}
	if box != [4]float64{0, 0, 266.7, 150.25} {
		t.Errorf("viewBox is %v", box)
	}
	seen, groups := map[string]string{}, map[string]bool{}
	for _, e := range all[1:] {
		switch e.name {
		case "g":
			id := e.attr["id"]
			if groups[id] || !regexp.MustCompile(`^[a-z]+$`).MatchString(id) {
				t.Errorf("the group id %q is not plain or not the only one", id)
			}
			groups[id] = true
		case "title", "desc", "path", "text":
			seen[e.name] += e.text + "\n"
			if e.name == "path" && e.group == "" {
				t.Error("a path is in no group")
			}
		default:
			t.Errorf("there is a <%s>", e.name)
		}
		for a, v := range e.attr {
			if strings.HasPrefix(a, "on") || a == "href" || a == "style" || strings.Contains(v, "url(") || strings.Contains(v, "NaN") || strings.Contains(v, "Inf") {
				t.Errorf("<%s %s=%q>", e.name, a, v)
			}
		}
	}
	for _, l := range render.Layers() {
		if !groups[l.Group()] {
			t.Errorf("no group %q", l.Group())
		}
	}
	for name, want := range map[string]string{"title": d.Title, "desc": d.Description, "text": d.Texts[0].Words} {
		if !strings.Contains(seen[name], want) {
			t.Errorf("<%s> is %q, want %q", name, seen[name], want)
		}
	}
	if !strings.Contains(string(data), "A33.35 33.35") {
		t.Error("the circle is not made of arcs of its own radius")
	}
}

// What cannot be drawn faithfully is refused before anything is written.
func TestRefuses(t *testing.T) {
	for i, spoil := range []func(*render.Drawing){
		func(d *render.Drawing) { d.Circle(render.Cut, path.Pt(50, 50), measure.Length(math.NaN())) },
		func(d *render.Drawing) { d.Height = measure.Length(math.Inf(1)) },
		func(d *render.Drawing) { d.Words(path.Pt(50, 50), 3.5, render.Left, "⌀") },
		func(d *render.Drawing) { d.Words(path.Pt(50, 149), 3.5, render.Left, "over the top of the page") },
		func(d *render.Drawing) { d.Line(render.Cut, path.Pt(-1, 10), path.Pt(10, 10)) },
		func(d *render.Drawing) { d.PathOn(render.Cut, path.Path{{Kind: path.Line}}) },
	} {
		d := plate()
		spoil(&d)
		var buf bytes.Buffer
		if err := svg.Write(&buf, d); err == nil || buf.Len() > 0 {
			t.Errorf("%d: %d bytes and %v", i, buf.Len(), err)
		}
	}
}

// Whatever words a user puts in a title or on a sheet, the file is still XML
// and the words read back; control characters, which XML 1.0 cannot hold, are
// refused on the sheet and replaced in the title.
func FuzzWords(f *testing.F) {
	for _, s := range []string{"Tidewrack Cove", `<&>"'`, "]]>", "--><!--", "1⅛ in", "a\x00b", "\xff", "tab\there", "  two  blanks "} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		d := render.Drawing{Title: s, Description: s, Width: 5000, Height: 100}
		d.Circle(render.Cut, path.Pt(50, 50), 3)
		if render.HasGlyphs(s) && len(s) < 300 {
			d.Words(path.Pt(10, 10), 2.5, render.Left, s)
		}
		for _, e := range elements(t, write(t, d)) {
			if e.name == "text" && e.text != s {
				t.Errorf("%q reads back as %q", s, e.text)
			}
			if e.name == "title" && render.HasGlyphs(s) && e.text != s {
				t.Errorf("the title %q reads back as %q", s, e.text)
			}
		}
	})
}
