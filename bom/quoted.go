package bom

import (
	"fmt"
	"slices"
	"time"
)

// warn notes quotations older than the terms allow, and what is on the rack,
// chosen or told of a supplier that this build has no use for: as a rule a name
// written otherwise than in the list, so that it counts for nothing.
func (s *shopping) warn(needs []Need, held []Held) {
	used := func(item string) bool {
		return slices.ContainsFunc(needs, func(n Need) bool { return itemKey(n.Item) == itemKey(item) })
	}
	for _, h := range held {
		if !used(h.Item) {
			s.bill.Warnings = append(s.bill.Warnings, fmt.Sprintf("on_hand: %s: this build uses none; hint: silowright cost lists the items it uses", h.Item))
		}
	}
	for _, c := range s.terms.Choose {
		if !used(c.Item) {
			s.bill.Warnings = append(s.bill.Warnings, fmt.Sprintf("choose: %s: this build uses none; hint: silowright cost lists the items it uses", c.Item))
		}
	}
	for _, c := range s.terms.Suppliers {
		if len(s.names) > 0 && !slices.ContainsFunc(s.names, func(n string) bool { return itemKey(n) == itemKey(c.Name) }) {
			s.bill.Warnings = append(s.bill.Warnings, fmt.Sprintf("supplier: %s: sells nothing in %s, so its shipping, minimum and tax count for nothing; hint: write the name as the list does", c.Name, s.list.Name))
		}
	}
	day := s.terms.Date
	for _, o := range s.list.Offers {
		if s.terms.Date == "" && o.Quoted > day { // ISO 8601 dates sort as text
			day = o.Quoted
		}
	}
	for _, l := range s.bill.Lines {
		for _, b := range l.Buys {
			if n, ok := age(b.Offer.Quoted, day); ok && s.terms.QuoteDays > 0 && n > s.terms.QuoteDays {
				s.bill.Warnings = append(s.bill.Warnings, fmt.Sprintf("%s: quoted %s, %d days before %s, allowed: %d; hint: ask %s again",
					l.Item, b.Offer.Quoted, n, day, s.terms.QuoteDays, named(b.Offer.Supplier)))
			}
		}
	}
}

// age is how many days lie between two dates.
func age(quoted, day string) (int, bool) {
	q, err := time.Parse(time.DateOnly, quoted)
	d, err2 := time.Parse(time.DateOnly, day)
	return int(d.Sub(q).Hours() / 24), err == nil && err2 == nil
}

// named is a supplier's name in a sentence.
func named(supplier string) string {
	if supplier == "" {
		return "the supplier"
	}
	return supplier
}
