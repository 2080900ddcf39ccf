package table

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"slices"
	"sync"

	"silowright/bom"
	"silowright/cmd/internal/job"
	"silowright/cmd/internal/pack"
	"silowright/cmd/internal/plan"
	"silowright/cmd/internal/report"
	"silowright/geometry"
)

// worked is a job and its price list with what was worked out of them so far:
// each part once, when it is first asked for. What is in it is not changed.
type worked struct {
	name        string
	job, prices []byte

	solved func() (*solved, error)
	listed func() error // reads the price list
	plan   func() (*plan.Plan, error)
	costs  func() (report.Costs, error)
	made   func() (pack.Made, error)
	pages  func() ([]pack.Page, error)
	drawn  func() (drawn, error)
}

// solved is a job solved, without its costs.
type solved struct {
	file     *job.File
	silos    []geometry.Silo
	findings []geometry.Finding
}

func work(name string, text, prices []byte) *worked {
	w := &worked{name: name, job: text, prices: prices}
	w.solved = sync.OnceValues(func() (*solved, error) { return solve(name, text) })
	w.listed = sync.OnceValue(func() error {
		s, err := w.solved()
		if err != nil {
			return nil
		}
		_, err = bom.ReadPrices(s.file.PricesPath, bytes.NewReader(prices), s.file.Listing)
		return err
	})
	w.plan = sync.OnceValues(func() (*plan.Plan, error) { return plan.Text(name, text, prices) })
	w.costs = sync.OnceValues(func() (report.Costs, error) {
		p, err := w.plan()
		if err != nil {
			return report.Costs{}, err
		}
		return report.CostsOf(p)
	})
	w.made = sync.OnceValues(func() (pack.Made, error) {
		p, err := w.plan()
		if err != nil {
			return pack.Made{}, err
		}
		return pack.Make(p, pack.DefaultOptions(p.Job.Units))
	})
	w.pages = sync.OnceValues(func() ([]pack.Page, error) {
		p, err := w.plan()
		if err != nil {
			return nil, err
		}
		return pack.Pages(p, pack.DefaultOptions(p.Job.Units))
	})
	w.drawn = sync.OnceValues(func() (drawn, error) {
		s, err := w.solved()
		if err != nil {
			return drawn{}, err
		}
		return draw(s)
	})
	return w
}

// begin works out beside the caller what it will ask for next.
func (w *worked) begin(drawings bool) {
	begin := func(part func()) {
		go func() {
			// whoever asks for the part falls over it too, and is answered so
			defer func() { _ = recover() }()
			part()
		}()
	}
	begin(func() { _, _ = w.plan() })
	if drawings {
		begin(func() { _, _ = w.drawn() })
	}
}

func solve(name string, text []byte) (*solved, error) {
	f, err := job.Parse(name, text)
	if err != nil {
		return nil, err
	}
	s := &solved{file: f}
	if s.silos, err = geometry.Solve(f.Job); err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	for _, k := range s.silos {
		s.findings = append(s.findings, k.Findings...)
	}
	return s, nil
}

// keeper keeps the jobs worked on last, so that the next page or file of a job
// is not worked out anew.
type keeper struct {
	mu    sync.Mutex
	most  int
	order []key // oldest first
	held  map[key]*worked
}

type key [sha256.Size]byte

func newKeeper(most int) *keeper { return &keeper{most: most, held: map[key]*worked{}} }

// of returns the job with those texts, new or kept.
func (k *keeper) of(name, text, prices string) *worked {
	h := sha256.New()
	for _, s := range []string{name, text, prices} {
		fmt.Fprintf(h, "%d:%s", len(s), s)
	}
	id := key(h.Sum(nil))
	k.mu.Lock()
	defer k.mu.Unlock()
	w, ok := k.held[id]
	if ok {
		i := slices.Index(k.order, id)
		k.order = append(slices.Delete(k.order, i, i+1), id)
		return w
	}
	w = work(name, []byte(text), []byte(prices))
	k.held[id], k.order = w, append(k.order, id)
	if len(k.order) > k.most {
		delete(k.held, k.order[0])
		k.order = slices.Delete(k.order, 0, 1)
	}
	return w
}
