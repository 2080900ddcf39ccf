package sheets

import (
	"slices"
	"strings"
)

// tools are the single tools a line of a list names: "snips or heavy shears"
// is one with two names, "tape measure, steel rule, square" are three.
func tools(item string) [][]string {
	var out [][]string
	for _, part := range strings.Split(strings.NewReplacer(" and ", ",", ";", ",").Replace(plainName(item)), ",") {
		var names []string
		for _, n := range strings.Split(part, " or ") {
			n = strings.TrimSpace(n)
			for _, article := range []string{"a ", "an ", "and "} {
				n = strings.TrimPrefix(n, article)
			}
			if n != "" {
				names = append(names, n)
			}
		}
		if len(names) > 0 {
			out = append(out, names)
		}
	}
	return out
}

// plainName is an item in small letters, without what follows a colon and
// without a bracket at its end.
func plainName(s string) string {
	s, _, _ = strings.Cut(strings.ToLower(s), ":")
	s = strings.TrimSpace(s)
	if strings.HasSuffix(s, ")") {
		if i := strings.LastIndex(s, " ("); i > 0 {
			s = s[:i]
		}
	}
	return s
}

// named reports whether an entry of Have is one of the names.
func (p *Pack) named(names ...string) (entry string, ok bool) {
	for _, h := range p.Have {
		if slices.Contains(names, plainName(h)) {
			return h, true
		}
	}
	return "", false
}

// has reports whether all that item names is on hand, and which entries of
// Have are a part of it.
func (p *Pack) has(item string) (all bool, some []string) {
	if len(p.Have) == 0 {
		return false, nil
	}
	if h, ok := p.named(plainName(item)); ok {
		return true, []string{h}
	}
	single := tools(item)
	all = len(single) > 0
	for _, names := range single {
		h, ok := p.named(names...)
		all = all && ok
		if ok {
			some = append(some, h)
		}
	}
	return all, some
}

// tick is the field to tick for item, ticked already when it is on hand.
func (p *Pack) tick(item string) cell {
	if all, _ := p.has(item); all {
		return cell{mark: tickedBox, paras: []string{""}}
	}
	return cell{mark: tickBox, paras: []string{""}}
}

// onHand says that an item is on hand, or which of what it names, or nothing.
func (p *Pack) onHand(item string) string {
	switch all, some := p.has(item); {
	case all:
		return "on hand"
	case len(some) > 0:
		return "on hand: " + strings.Join(some, ", ")
	}
	return ""
}

// otherwiseOnHand are the entries of Have that no list of this pack names.
func (p *Pack) otherwiseOnHand(f *flow) []string {
	if len(p.Have) == 0 {
		return nil
	}
	var found []string
	find := func(item string) {
		_, some := p.has(item)
		found = append(found, some...)
	}
	for _, r := range sawTable(f, p).rows {
		find("hole saw " + r[1].paras[0])
	}
	for _, r := range bitTable(f, p).rows {
		find(r[1].paras[0])
	}
	for _, r := range toolRows(f, p) {
		find(r[0])
	}
	for _, r := range p.Bill.Rows {
		find(r.Item)
	}
	var out []string
	for _, h := range p.Have {
		if plainName(h) != "" && !slices.Contains(found, h) {
			out = append(out, h)
		}
	}
	return out
}

// sawName is a hole saw as a list of tools calls it.
func sawName(f *flow, size length) string { return "hole saw " + size.Both(f.units) }
