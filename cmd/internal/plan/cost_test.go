package plan

import (
	"fmt"
	"testing"
	"time"
)

// The demo priced at every count: complete, the sums add up, and one more silo
// of either sort never makes the build cheaper.
func TestDemoCosts(t *testing.T) {
	totals := map[[2]int]int64{}
	for drums := range 31 {
		for pipes := range 21 {
			p, err := DemoFor(Counts{Drum: &drums, Pipe: &pipes, Dry: true})
			if err != nil {
				t.Fatal(err)
			}
			b := p.Cost.Bill
			if !b.Complete() || !p.Invented {
				t.Fatalf("%d+%d: without a price: %v", drums, pipes, b.Missing)
			}
			var lines int64
			for _, l := range b.Lines {
				lines += l.Amount.Minor
			}
			if lines != b.Goods.Minor || b.Drums.Minor+b.Pipes.Minor != b.Total.Minor || b.Total.Minor != lines+b.TopUp.Minor+b.Shipping.Minor+b.Tax.Minor {
				t.Errorf("%d+%d: lines come to %d, drum silos %v, pipe silos %v, total %v", drums, pipes, lines, b.Drums, b.Pipes, b.Total)
			}
			if !b.Proven {
				t.Errorf("%d+%d: the orders may be %v above the least", drums, pipes, b.Over)
			}
			c := p.Cost
			if c.Drums.Minor+c.Pipes.Minor != c.Total.Minor || c.Total.Minor != b.Total.Minor+c.Labour.Minor+c.Contingency.Minor {
				t.Errorf("%d+%d: %v + %v, labour %v, contingency %v, total %v", drums, pipes, c.Drums, c.Pipes, c.Labour, c.Contingency, c.Total)
			}
			if drums == 0 && b.Drums.Minor != 0 || pipes == 0 && b.Pipes.Minor != 0 || drums+pipes > 0 && b.Total.Minor <= 0 {
				t.Errorf("%d+%d: drum silos %v, pipe silos %v", drums, pipes, b.Drums, b.Pipes)
			}
			totals[[2]int{drums, pipes}] = b.Total.Minor
			for _, fewer := range [][2]int{{drums - 1, pipes}, {drums, pipes - 1}} {
				if less, ok := totals[fewer]; ok && less > b.Total.Minor {
					t.Errorf("%v silos cost %d, %d+%d only %d", fewer, less, drums, pipes, b.Total.Minor)
				}
			}
		}
	}
}

// BenchmarkCost is a whole answer: job file read, silos solved, bill priced.
// It grows with the kinds of drum and hardly with the silos: the cost of n is
// held against that of 20, taken in turn.
func BenchmarkCost(b *testing.B) {
	lap := func(n int) time.Duration {
		pipes := n / 2
		begin := time.Now()
		if _, err := DemoFor(Counts{Drum: &n, Pipe: &pipes, Dry: true}); err != nil {
			b.Fatal(err)
		}
		return time.Since(begin)
	}
	for _, n := range []int{20, 10000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			var own, twenty time.Duration
			for b.Loop() {
				own += lap(n)
				b.StopTimer()
				twenty += lap(20)
				b.StartTimer()
			}
			b.ReportMetric(float64(own)/float64(twenty), "x-20")
		})
	}
}
