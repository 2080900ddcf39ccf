package house

import (
	"go/doc"
	"strings"
	"testing"
)

// shown are the rooms whose use is shown by examples that go doc and the pages
// made of it set beside the package; each prints what it says it prints.
var shown = []string{
	"geometry", "geometry/measure", "geometry/path", "geometry/stock",
	"bom", "bom/money", "bom/sticks", "bom/rolls", "bom/cover", "bom/basket", "bom/work",
	"nursery", "nursery/sea", "nursery/flow", "nursery/manifold", "nursery/seed",
	"render", "render/pdf", "render/svg",
}

func TestExamplesShowEachRoom(t *testing.T) {
	h := wholeHouse(t)
	for _, name := range shown {
		r := h.rooms[module+"/"+name]
		if r == nil {
			t.Errorf("no room %s", name)
			continue
		}
		n := 0
		for _, f := range r.tests {
			outside := strings.HasSuffix(f.Name.Name, "_test")
			for _, e := range doc.Examples(f) {
				n++
				if !outside {
					t.Errorf("%s: Example%s is not written as a reader would: package %s_test", name, e.Name, r.name)
				}
				if e.Output == "" {
					t.Errorf("%s: Example%s prints nothing that is held", name, e.Name)
				}
				// what it is of must be there, or the page leaves it out
				if of, _, _ := strings.Cut(e.Name, "_"); of != "" && r.types.Scope().Lookup(of) == nil {
					t.Errorf("%s: Example%s is of nothing that is exported", name, e.Name)
				}
			}
		}
		if n == 0 {
			t.Errorf("%s has no example", name)
		}
	}
}
