package job

import (
	"fmt"
	"strings"

	"silowright/bom"
	"silowright/geometry/measure"
)

const heldExample = `12, "150 mL", ["49 in", "3 ft"], or {amount = "3 ft", width = "48 in", count = 2}`

// onHand reads [on_hand]: what is on the rack, by the price list's item names.
func (r *reader) onHand(top table, f *File) {
	t, ok := r.table(top, "on_hand")
	if !ok {
		return
	}
	for _, item := range t.keys() {
		path, v := t.at(item), t.items[item]
		if strings.TrimSpace(item) == "" || len(item) > 200 {
			r.fail(path, show(item), "is not an item", "", "the item's name, as silowright cost lists it")
			continue
		}
		list, many := v.([]any)
		if !many {
			list = []any{v}
		}
		for i, v := range list {
			at := path
			if many {
				at = entry(path, i)
			}
			if h, ok := r.held(at, item, v); ok {
				f.Held = append(f.Held, h)
			}
		}
	}
}

func (r *reader) held(path, item string, v any) (bom.Held, bool) {
	h := bom.Held{Item: item, Count: 1}
	amount := v
	if items, ok := v.(map[string]any); ok {
		t := table{path: path, items: items, lines: r.lines}
		r.unknown(t, []string{"amount", "width", "count"}, "on_hand")
		if n, ok := items["count"]; ok {
			h.Count, ok = r.count(t.at("count"), n, 0, maxHeld)
			if !ok {
				return h, false
			}
		}
		if w, ok := items["width"]; ok {
			if h.Width, ok = r.length(t.at("width"), w, 10*mm, 20000*mm); !ok {
				return h, false
			}
		}
		if amount, ok = items["amount"]; !ok {
			r.fail(t.at("amount"), "", missing, "", "how much of it: "+heldExample)
			return h, false
		}
		path = t.at("amount")
	}
	if n, bare := number(amount); bare {
		whole, ok := r.count(path, amount, 0, maxHeld)
		h.Kind, h.Amount, h.Count = bom.Each, 1, h.Count*whole
		if h.Width > 0 {
			r.fail(path, plain(n), "has a width, but no unit", "", heldExample)
			return h, false
		}
		return h, ok && h.Count > 0
	}
	text, ok := amount.(string)
	if !ok {
		r.fail(path, show(amount), "is not an amount", "", heldExample)
		return h, false
	}
	if low := strings.ToLower(text); strings.HasSuffix(low, "l") || strings.HasSuffix(low, "fl oz") {
		vol, ok := r.volume(path, text, 0, 1e6*measure.Millilitre)
		h.Kind, h.Amount = bom.Volume, vol.ML()
		return h, ok && h.Amount > 0 && h.Count > 0
	}
	if _, err := measure.ParseLength(text, r.units); err != nil {
		r.fail(path, show(text), "is not an amount", "", heldExample)
		return h, false
	}
	l, ok := r.length(path, text, 0, heldLength)
	h.Kind, h.Amount = bom.Length, l.MM()
	return h, ok && l > 0 && h.Count > 0
}

// The most of anything that may be on the rack.
const (
	maxHeld    = 1_000_000
	heldLength = 1e6 * mm
)

// runs reads [[pipe_run]]: pipe for the manifold and the mains.
func (r *reader) runs(top table, f *File) {
	for _, t := range r.tables(top, "pipe_run", "[[pipe_run]] with pipe, length and count below it") {
		r.unknown(t, []string{"name", "pipe", "series", "length", "count"}, "pipe_run")
		run := bom.Run{Name: "manifold", Count: 1}
		ok := true
		if v, given := t.items["name"]; given {
			run.Name, _ = r.title(t.at("name"), v, 40)
		}
		if v, given := t.items["pipe"]; given {
			run.Pipe.Size, ok = r.pipeSize(t.at("pipe"), v)
		} else {
			r.fail(t.at("pipe"), "", missing, "", "the pipe's nominal size, as in pipe = \"3\"")
			ok = false
		}
		if v, given := t.items["series"]; given {
			run.Pipe.Series, _ = r.word(t.at("series"), v, pipeSeries())
		}
		if ok {
			r.settleRun(t, &run)
		}
		if v, given := t.items["length"]; given {
			run.Length, _ = r.length(t.at("length"), v, 10*mm, 100000*mm)
		} else {
			r.fail(t.at("length"), "", missing, "", "how long each piece is")
		}
		if v, given := t.items["count"]; given {
			run.Count, _ = r.count(t.at("count"), v, 0, maxCount)
		}
		f.Runs = append(f.Runs, run)
	}
}

// settleRun picks the series where a run gives a size alone.
func (r *reader) settleRun(t table, run *bom.Run) {
	for _, series := range pipeSeries() {
		if run.Pipe.Series != "" && series != run.Pipe.Series {
			continue
		}
		for _, size := range pipeSizes(series) {
			if size == run.Pipe.Size {
				run.Pipe.Series = series
				return
			}
		}
	}
	r.fail(t.at("pipe"), fmt.Sprintf("%q", run.Pipe.Size), "does not come in the series "+run.Pipe.Series, strings.Join(pipeSizes(run.Pipe.Series), ", "), "change pipe or series")
}
