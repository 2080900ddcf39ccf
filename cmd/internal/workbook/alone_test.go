package workbook

import (
	"bytes"
	"testing"

	"silowright/cmd/internal/demo"
	"silowright/cmd/internal/plan"
	"silowright/cmd/internal/report"
)

// A workbook does not depend on what was written before it: one without a
// price, whose headings stand over words, before and after one with prices,
// where they stand over numbers.
func TestWorkbooksStandAlone(t *testing.T) {
	of := func(prices []byte) []byte {
		t.Helper()
		p, err := plan.Text("job.toml", demo.Job, prices)
		if err != nil {
			t.Fatal(err)
		}
		costs, err := report.CostsOf(p)
		if err != nil {
			t.Fatal(err)
		}
		file, err := Of(p, costs)
		if err != nil {
			t.Fatal(err)
		}
		return file
	}
	none, _, _ := bytes.Cut(demo.Prices, []byte("\n"))
	before := of(append(none, '\n'))
	if with := of(demo.Prices); bytes.Equal(before, with) {
		t.Error("prices make no difference")
	}
	if after := of(append(none, '\n')); !bytes.Equal(before, after) {
		t.Error("a workbook written after another is not as it was before it")
	}
}
