package seed

import (
	"strings"
	"testing"

	"silowright/geometry/stock"
)

// Every row has its source and standing, and says what the publications say;
// what is worked out from them:
//   - Pfeiffer & Rusch 2001, 4.4 to 5.9 mm in 14 days at 1.0 g/cm²: 0.75 mm a
//     week at 10 kg/m²;
//   - University of Florida, oysters of 1 to 2 mm to 6 to 8 mm in 6 to 12 weeks:
//     4/12 to 7/6 mm a week;
//   - Bacher & Baud 1992, 0.014 to 2.2 g in 60 days: 8.43 % a day, doubling in
//     8.22 days; 120,000 a m² are 11,148 a ft²;
//   - FAO Fisheries Technical Paper 471, §6.1: 0.3 mg at 1 mm, clams 30 % less;
//   - Helgoland Marine Research, doi 10.1007/s10152-014-0419-y, table 3:
//     0.0004·L² L/h at 1.5 and 25 mm; SRAC 4301: grown clam 7 to 8 L/h.
func TestTables(t *testing.T) {
	var all strings.Builder
	for _, table := range Tables() {
		all.WriteString(table.Name + "\n")
		if len(table.Rows) == 0 {
			t.Errorf("%s is empty", table.Name)
		}
		for _, r := range table.Rows {
			if len(r) != len(table.Columns) || r[len(r)-2] == "" || r[len(r)-1] == "" {
				t.Errorf("%s: %q", table.Name, r)
			}
			all.WriteString(strings.Join(r, " | ") + "\n")
		}
	}
	for _, want := range []string{
		"clam | 14 | 4.4 mm (0.173 in) | 5.9 mm (0.232 in) | 0.75 mm (0.0295 in) a week | 10 kg/m² (2.05 lb/ft²) | not told | not told | " + srcPR01,
		"oyster | 42 to 84 | 1 to 2 mm (0.0394 to 0.0787 in) | 6 to 8 mm (0.236 to 0.315 in) | 0.333 to 1.17 mm (0.0131 to 0.0459 in) a week | not told",
		"oyster | 60 | 14 mg (0.000494 oz) | 2200 mg (0.0776 oz) | 8.43 % a day, doubles in 8.22 days | not told | 120000 (11148) | 1 L (0.264 gal) a day",
		"oyster | shell of 1 mm (0.0394 in) | 0.3 mg (0.0000106 oz) | " + srcFAO + ", §6.1 | " + string(stock.One),
		"clam | shell of 1 mm (0.0394 in) | 0.21 mg (0.00000741 oz) | " + srcFAO + ", §6.1 | " + string(stock.Derived),
		"oyster | held by a sieve of 7 mm (0.276 in) | 150 to 250 mg (0.00529 to 0.00882 oz) | " + srcHandle,
		"mussel | shell of 1.5 to 25 mm (0.0591 to 0.984 in) | 0.0009 to 0.25 L",
		"clam | grown, no figure for seed | 7 to 8 L (1.85 to 2.11 gal) | " + srcSRAC,
	} {
		if !strings.Contains(all.String(), "\n"+want) {
			t.Errorf("no row %q in\n%s", want, all.String())
		}
	}
}
