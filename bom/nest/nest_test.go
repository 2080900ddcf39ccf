package nest

import (
	"math/rand"
	"testing"

	"silowright/geometry/measure"
)

// Six 300 × 400 parts with gaps of 10 on 1000 × 1000: turned flat (400 × 300)
// two go in a row (830 of 1000), three rows (940): one sheet.
func TestRowsByHand(t *testing.T) {
	parts := make([]Part, 6)
	for i := range parts {
		parts[i] = Part{300, 400}
	}
	_, sheets, err := Rows(parts, 1000, 1000, 10)
	if err != nil || sheets != 1 {
		t.Errorf("%d sheets, %v; want 1", sheets, err)
	}
}

func TestTooLarge(t *testing.T) {
	if _, _, err := Rows([]Part{{1200, 990}}, 1219, 1000, 10); err == nil {
		t.Error("a part that does not fit was laid")
	}
}

// No two parts overlap, none leaves its sheet, whatever is laid.
func TestNothingOverlaps(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for range 300 {
		var parts []Part
		for range 1 + r.Intn(25) {
			parts = append(parts, Part{measure.Length(20 + r.Float64()*1100), measure.Length(20 + r.Float64()*1100)})
		}
		places, sheets, err := Rows(parts, 1219, 2438, 6)
		if err != nil {
			t.Fatal(err)
		}
		for i, a := range places {
			aw, ah := size(parts[i], a)
			if a.X < 6-slack || a.Y < 6-slack || a.X+aw > 1213+slack || a.Y+ah > 2432+slack || a.Sheet >= sheets {
				t.Fatalf("part %d leaves its sheet", i)
			}
			for j, b := range places[:i] {
				bw, bh := size(parts[j], b)
				if a.Sheet == b.Sheet && a.X < b.X+bw+6-2*slack && b.X < a.X+aw+6-2*slack && a.Y < b.Y+bh+6-2*slack && b.Y < a.Y+ah+6-2*slack {
					t.Fatalf("parts %d and %d overlap", i, j)
				}
			}
		}
	}
}
