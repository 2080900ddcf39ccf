package plan

import (
	"silowright/cmd/internal/demo"
	"silowright/cmd/internal/job"
)

// Text works out a job given as text, named as messages are to call it; prices
// is the text of the price list it names. It is what Load makes of the same
// two files; under the demo's name the prices are taken for invented, as Demo
// takes them.
func Text(name string, text, prices []byte) (*Plan, error) {
	f, err := job.Parse(name, text)
	if err != nil {
		return nil, err
	}
	p, err := workOut(f, f.PricesPath, prices, Counts{})
	if err == nil {
		p.Invented = name == demo.JobName
	}
	return p, err
}
