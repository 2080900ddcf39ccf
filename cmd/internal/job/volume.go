package job

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"silowright/geometry/measure"
)

// volumeUnits are the units a volume may be written in, ml before the l it ends in.
var volumeUnits = []struct {
	name string
	per  measure.Volume
}{{"fl oz", measure.USFluidOunce}, {"ml", measure.Millilitre}, {"l", measure.Litre}}

// volume reads a number of millilitres, or text with mL, L or fl oz.
func (r *reader) volume(path string, v any, low, high measure.Volume) (measure.Volume, bool) {
	allowed := fmt.Sprintf("%s to %s mL", plain(low.ML()), plain(high.ML()))
	f, ok := number(v)
	unit := measure.Millilitre
	if s, isText := v.(string); isText {
		s = strings.ToLower(strings.TrimSpace(s))
		for _, u := range volumeUnits {
			if rest, is := strings.CutSuffix(s, u.name); is {
				s, unit = rest, u.per
				break
			}
		}
		var err error
		f, err = strconv.ParseFloat(strings.TrimSpace(s), 64)
		ok = err == nil
	}
	if !ok {
		r.fail(path, show(v), "is not a volume", allowed, `millilitres, or text such as "10.1 fl oz"`)
		return 0, false
	}
	vol := measure.Volume(f) * unit
	if !(vol >= low && vol <= high) {
		r.fail(path, show(v), "is out of range", allowed, "a bare number is in millilitres")
		return 0, false
	}
	return vol, true
}

// writtenVolume is v as it would stand in the job file.
func writtenVolume(v measure.Volume) string {
	return plain(math.Round(v.ML()*10)/10) + " mL"
}
