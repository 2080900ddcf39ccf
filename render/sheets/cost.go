package sheets

// Cost is what the build costs. All amounts are written out already; the
// numbers are for places in drawings only.
type Cost struct {
	Currency  string      // ISO 4217 code that heads the columns; amounts may begin with it
	Suppliers []Order     // what each supplier is paid; Rows and Notes are not set here
	Bought    OrderSums   // of all suppliers
	Total     string      // of the whole build, with labour and contingency
	Points    []CostPoint // what one costs at 5, 10, 20, 50
	Counted   string      // what the points and the curve count, in the plural; "" is "silos"
	Curve     []CurvePoint
	Built     int     // the build's own count on the curve; 0 marks none
	Shares    []Share // where the money goes, largest first
	Lines     []Amount
	Stale     []string // prices quoted longer ago than the job allows, a sentence each
	Missing   []string // items without a price: every sum leaves them out
	Invented  bool     // the prices are made up and must not be bought by
}

// CostPoint is what builds of one size cost; "" stands where nothing is known.
type CostPoint struct {
	Silos    string // how many
	Total    string
	EachDrum string // each drum silo
	EachPipe string // each pipe silo
	Next     string // what one more would add
	Own      bool   // the build's own count
}

// CurvePoint is one place of the cost curve.
type CurvePoint struct {
	N    int     // silos built
	Each float64 // cost of each, in the currency's major unit
	Says string  // Each written out
}

// Share is one bar of where the money goes.
type Share struct {
	Name string
	Sum  string
	Part float64 // of the whole, 0 to 1
}

func setCost(f *flow, p *Pack) {
	if p.Cost == nil {
		f.para("No costs were worked out for this pack.")
		return
	}
}
