package report

import (
	"bytes"
	"encoding/json"
	"strconv"
)

// JSON writes the report, indented. It fails on a number that is not finite.
func (r Report) JSON() ([]byte, error) { return Indented(r) }

// Indented writes v as JSON, indented. It fails on a number that is not finite.
// Numbers have digits significant digits: what stands behind them is the last
// bit of a sum, which processors round in their own ways.
func Indented(v any) ([]byte, error) {
	var buf bytes.Buffer
	e := json.NewEncoder(&buf)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return nil, err
	}
	return rounded(buf.Bytes())
}

// digits is a picometre in a metre.
const digits = 12

// rounded rounds every number of a JSON text that is written with a fraction
// or an exponent.
func rounded(text []byte) ([]byte, error) {
	out := make([]byte, 0, len(text))
	quoted := false
	for i := 0; i < len(text); {
		c := text[i]
		switch {
		case quoted && c == '\\':
			out = append(out, c, text[i+1])
			i += 2
			continue
		case c == '"':
			quoted = !quoted
		case !quoted && (c == '-' || '0' <= c && c <= '9'):
			n := len(text[i:]) - len(bytes.TrimLeft(text[i:], "+-.0123456789eE"))
			number := text[i : i+n]
			if bytes.ContainsAny(number, ".eE") {
				var err error
				if number, err = round(number); err != nil {
					return nil, err
				}
			}
			out = append(out, number...)
			i += n
			continue
		}
		out = append(out, c)
		i++
	}
	return out, nil
}

// round writes a number again, rounded.
func round(number []byte) ([]byte, error) {
	x, err := strconv.ParseFloat(string(number), 64)
	if err != nil {
		return nil, err
	}
	// Twice, for a number that lies half-way by its own digits.
	for _, n := range []int{digits + 2, digits} {
		if x, err = strconv.ParseFloat(strconv.FormatFloat(x, 'g', n, 64), 64); err != nil {
			return nil, err
		}
	}
	return json.Marshal(x)
}
