package pack

import (
	"bytes"
	"sync"
	"testing"

	"silowright/cmd/internal/plan"
)

// Packs made at once, as a server makes them, are those made alone.
func TestPacksAtOnce(t *testing.T) {
	p, err := plan.Demo()
	if err != nil {
		t.Fatal(err)
	}
	var wait sync.WaitGroup
	packs := make([]Made, 4)
	for i := range packs {
		wait.Go(func() {
			p, err := plan.Demo()
			if err != nil {
				t.Error(err)
				return
			}
			if packs[i], err = Make(p, DefaultOptions(p.Job.Units)); err != nil {
				t.Error(err)
			}
		})
	}
	wait.Wait()
	alone, err := Make(p, DefaultOptions(p.Job.Units))
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range packs {
		if len(m.Files) != len(alone.Files) {
			t.Fatalf("%d files, alone %d", len(m.Files), len(alone.Files))
		}
		for i, f := range m.Files {
			if f.Name != alone.Files[i].Name || !bytes.Equal(f.Data, alone.Files[i].Data) {
				t.Errorf("%s is not as it is alone", f.Name)
			}
		}
	}
}
