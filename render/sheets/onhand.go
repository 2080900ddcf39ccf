package sheets

import "strings"

// names reports whether an entry of Have names item: it is item, or begins it
// and a word ends there, whatever the capitals.
func names(have, item string) bool {
	h, it := strings.ToLower(strings.TrimSpace(have)), strings.ToLower(item)
	rest, ok := strings.CutPrefix(it, h)
	return ok && h != "" && (rest == "" || strings.ContainsAny(rest[:1], " ,:;("))
}

// has reports whether item is on hand.
func (p *Pack) has(item string) bool {
	for _, h := range p.Have {
		if names(h, item) {
			return true
		}
	}
	return false
}

// tick is the field to tick for item, ticked already when it is on hand.
func (p *Pack) tick(item string) cell {
	if p.has(item) {
		return cell{mark: tickedBox, paras: []string{""}}
	}
	return cell{mark: tickBox, paras: []string{""}}
}

// onHand says so, or nothing.
func (p *Pack) onHand(item string) string {
	if p.has(item) {
		return "on hand"
	}
	return ""
}

// otherwiseOnHand are the entries of Have that no list of this pack ticks.
func (p *Pack) otherwiseOnHand(f *flow) []string {
	var listed []string
	for _, r := range sawTable(f, p).rows {
		listed = append(listed, "hole saw "+r[1].paras[0])
	}
	for _, r := range bitTable(f, p).rows {
		listed = append(listed, r[1].paras[0])
	}
	for _, r := range toolRows(f, p) {
		listed = append(listed, r[0])
	}
	for _, r := range p.Bill.Rows {
		listed = append(listed, r.Item)
	}
	var out []string
	for _, h := range p.Have {
		known := h == ""
		for _, l := range listed {
			known = known || names(h, l)
		}
		if !known {
			out = append(out, h)
		}
	}
	return out
}

// sawName is a hole saw as a list of tools calls it.
func sawName(f *flow, size length) string { return "hole saw " + size.Both(f.units) }
