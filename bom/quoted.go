package bom

import (
	"fmt"
	"slices"
	"time"
)

// warn notes quotations older than the terms allow, and what is on the rack
// that this build has no use for.
func (s *shopping) warn(needs []Need, held []Held) {
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
	for _, h := range held {
		if !slices.ContainsFunc(needs, func(n Need) bool { return itemKey(n.Item) == itemKey(h.Item) }) {
			s.bill.Warnings = append(s.bill.Warnings, fmt.Sprintf("on_hand: %s: this build uses none; hint: silowright cost lists the items it uses", h.Item))
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
