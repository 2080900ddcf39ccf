package sweep

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"regexp"
	"strconv"
)

var (
	object = regexp.MustCompile(`(?s)\n(\d+) 0 obj\n(<<.*?>>)\n(stream\r?\n)?`)
	length = regexp.MustCompile(`/Length (\d+)`)
	// what a number that is none, or a fault of formatting, reads as
	wrongNumber = regexp.MustCompile(`\bNaN\b|[+-]Inf\b|%!|<nil>`)
)

// wrongWords are the same as words of a page, which are written in UTF-16.
var wrongWords = func() [][]byte {
	var out [][]byte
	for _, s := range []string{"NaN", "+Inf", "-Inf", "%!", "<nil>"} {
		var b []byte
		for i := range len(s) {
			b = append(b, 0, s[i])
		}
		out = append(out, b)
	}
	return out
}()

// pdfFaults looks into every stream of a PDF but its fonts for numbers and
// words that are none. It returns how many streams it read.
func pdfFaults(data []byte) (streams int, out []string) {
	for _, at := range object.FindAllSubmatchIndex(data, -1) {
		dict := data[at[4]:at[5]]
		if at[6] < 0 {
			if wrongNumber.Match(dict) {
				out = append(out, fmt.Sprintf("object %s holds %q", data[at[2]:at[3]], wrongNumber.Find(dict)))
			}
			continue
		}
		if bytes.Contains(dict, []byte("/Length1")) { // a font
			continue
		}
		n, err := strconv.Atoi(string(length.FindSubmatch(dict)[1]))
		if err != nil || at[1]+n > len(data) {
			return streams, append(out, "a stream without its length")
		}
		body := data[at[1] : at[1]+n]
		if bytes.Contains(dict, []byte("/FlateDecode")) {
			z, err := zlib.NewReader(bytes.NewReader(body))
			if err == nil {
				body, err = io.ReadAll(z)
			}
			if err != nil {
				return streams, append(out, err.Error())
			}
		}
		streams++
		if !bytes.Contains(body, []byte(" Tj")) && !bytes.Contains(body, []byte(" TJ")) && !bytes.Contains(body, []byte(" l\n")) && !bytes.Contains(body, []byte(" re")) {
			continue // no page
		}
		for _, bad := range append([][]byte{[]byte("NaN"), []byte("Inf "), []byte("%!")}, wrongWords...) {
			if i := bytes.Index(body, bad); i >= 0 {
				out = append(out, fmt.Sprintf("object %s holds %q in %q", data[at[2]:at[3]], bad, body[max(0, i-40):min(len(body), i+40)]))
			}
		}
	}
	return streams, out
}
