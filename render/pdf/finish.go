package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"sync"
)

// finish does to a file what the library has no call for: it asks viewers not
// to scale when printing (ISO 32000-1, 12.2), and compresses pages and forms,
// several at a time, which the library would do one by one with a new
// compressor for each. The cross-reference table is then written anew (7.5.4).
func finish(pdf []byte) ([]byte, error) {
	objects, trailer, err := parted(pdf)
	if err != nil {
		return nil, err
	}
	squeezeAll(objects)
	catalogue := slices.IndexFunc(objects, func(o object) bool { return bytes.Contains(o.text, []byte(catalog)) })
	if catalogue < 0 {
		return nil, fmt.Errorf("pdf: the file has no catalogue to put the print scaling in")
	}
	o := &objects[catalogue]
	o.text = bytes.Replace(o.text, []byte(catalog), []byte(catalog+"\n/ViewerPreferences <</PrintScaling /None>>"), 1)

	var out bytes.Buffer
	out.Grow(len(pdf))
	out.Write(pdf[:len("%PDF-1.")])
	out.WriteByte('6')
	out.Write(pdf[len("%PDF-1.3"):objects[0].at])
	places := make([]int, len(objects))
	for _, o := range objects {
		places[o.number-1] = out.Len()
		out.Write(o.text)
	}
	table := out.Len()
	fmt.Fprintf(&out, "xref\n0 %d\n0000000000 65535 f \n", len(objects)+1)
	for _, at := range places {
		fmt.Fprintf(&out, "%010d 00000 n \n", at)
	}
	out.Write(trailer)
	fmt.Fprintf(&out, "startxref\n%d\n%%%%EOF\n", table)
	return out.Bytes(), nil
}

const catalog = "/Type /Catalog"

// object is one object of a file, from its number to the next one's.
type object struct {
	number, at int
	text       []byte
}

var ending = regexp.MustCompile(`xref\n0 (\d+)\n0000000000 65535 f \n((?:\d{10} 00000 n \n)*)(trailer\n(?s:.*))startxref\n(\d+)\n%%EOF\n$`)

// parted takes a file apart into its objects, in the order in which they
// stand, and its trailer.
func parted(pdf []byte) (objects []object, trailer []byte, err error) {
	bad := fmt.Errorf("pdf: the file is not laid out as the library lays it out")
	from := bytes.LastIndex(pdf, []byte("\nxref\n")) + 1
	m := ending.FindSubmatch(pdf[from:])
	if m == nil || string(m[4]) != strconv.Itoa(from) || !bytes.HasPrefix(pdf, []byte("%PDF-1.")) {
		return nil, nil, bad
	}
	const line = len("0000000000 00000 n \n")
	for i := range len(m[2]) / line {
		at, err := strconv.Atoi(string(m[2][i*line : i*line+10]))
		if err != nil || at >= from {
			return nil, nil, bad
		}
		objects = append(objects, object{number: i + 1, at: at})
	}
	if string(m[1]) != strconv.Itoa(len(objects)+1) || len(objects) == 0 {
		return nil, nil, bad
	}
	slices.SortFunc(objects, func(a, b object) int { return a.at - b.at })
	for i := range objects {
		end := from
		if i+1 < len(objects) {
			end = objects[i+1].at
		}
		o := &objects[i]
		o.text = pdf[o.at:end]
		if !bytes.HasPrefix(o.text, fmt.Appendf(nil, "%d 0 obj\n", o.number)) {
			return nil, nil, bad
		}
	}
	return objects, m[3], nil
}

// squeezeAll compresses the objects that hold a page or a form.
func squeezeAll(objects []object) {
	var wait sync.WaitGroup
	next := make(chan *object)
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			var to bytes.Buffer
			c, _ := zlib.NewWriterLevel(&to, zlib.BestSpeed) // the level is one it has
			for o := range next {
				o.text = squeezed(o.text, &to, c)
			}
		})
	}
	for i := range objects {
		next <- &objects[i]
	}
	close(next)
	wait.Wait()
}

const begins = "stream\n"

var dictionary = regexp.MustCompile(`^\d+ 0 obj\n<<((?s:.*))/Length (\d+) ?>>\nstream\n$`)

// squeezed is an object with its stream compressed; as it is when it has none,
// when that is compressed already, or is a font's map of characters, which
// stays to be read.
func squeezed(text []byte, to *bytes.Buffer, c *zlib.Writer) []byte {
	const end = "\nendstream\nendobj\n"
	head := bytes.Index(text, []byte(begins)) + len(begins)
	m := dictionary.FindSubmatchIndex(text[:head])
	if m == nil || !bytes.HasSuffix(text, []byte(end)) {
		return text
	}
	plain := text[m[1] : len(text)-len(end)]
	if bytes.Contains(text[m[2]:m[3]], []byte("/Filter")) || bytes.HasPrefix(plain, []byte("/CIDInit")) {
		return text
	}
	to.Reset()
	c.Reset(to)
	_, err := c.Write(plain)
	if err == nil {
		err = c.Close()
	}
	if err != nil { // into memory it cannot fail
		return text
	}
	var out bytes.Buffer
	out.Grow(m[1] + to.Len() + 64)
	out.Write(text[:m[2]])
	out.WriteString("/Filter /FlateDecode ")
	out.Write(text[m[2]:m[4]])
	out.WriteString(strconv.Itoa(to.Len()))
	out.Write(text[m[5]:m[1]])
	out.Write(to.Bytes())
	out.WriteString(end)
	return out.Bytes()
}
