package proof

// noFacts are declarations of the pure rooms that hold numbers and are no facts
// of the world, by the reason why.
var noFacts = map[string]string{
	"how far a reader's number may go: keeps out slips of the pen and overflow": `
		bom.MaxPrices bom.largestPack bom.longestText bom.mostFrom bom.narrowest bom.smallestPack bom.widest bom/basket.Limit
		bom/cover.Limit bom/cover.huge bom/money.Limit bom/rolls.MostPieces bom/rolls.mostAcross bom/rolls.mostAlong bom/sticks.longest
		bom/sticks.mostCount bom/sticks.mostKinds bom/sticks.mostPrice bom/sticks.mostRows bom/work.MaxDays bom/work.never
		geometry.impossibleFoot geometry.impossibleHoops geometry.slack geometry/measure.Longest nursery.mostSilos nursery.checkBores
		nursery.checkPlan nursery.mostLMin nursery.stocking nursery/flow.Check nursery/flow.MostFlow nursery/manifold.Estimate
		nursery/manifold.check nursery/manifold.checkRatio nursery/manifold.maxFlow nursery/manifold.maxHead nursery/manifold.maxK
		nursery/manifold.maxLaterals nursery/manifold.minFlow nursery/seed.checkWeekTable nursery/seed.maxArea nursery/seed.maxConf
		nursery/seed.maxCounted nursery/seed.maxEach nursery/seed.maxMeshes nursery/seed.maxOpening nursery/seed.maxPoints
		nursery/seed.maxSamples nursery/seed.maxShell nursery/seed.maxWeekRows nursery/seed.minArea nursery/seed.minConf
		nursery/seed.minEach nursery/seed.minOpening nursery/seed.minShell`,
	"steps and sizes of a search: the answer says how sure it is": `
		bom.mostMixed bom/basket.rounds bom/basket.stepLimit bom/cover.costSteps bom/cover.tieSteps bom/rolls.deepest bom/rolls.mostFull
		bom/rolls.mostRows bom/sticks.counterNodes bom/sticks.knapsackNodes bom/sticks.mostBranches bom/sticks.mostSeen
		bom/sticks.mostWork bom/sticks.share bom/sticks.solve bom/sticks.tiredNodes bom/work.exactJobs bom/work.exactNodes
		bom/work.searchJobs bom/work.searchRuns nursery.manySilos nursery/manifold.mostSteps nursery/seed.maxTerms`,
	"tolerance, damping or start of an iteration, of which the answer is free": `
		bom/nest.slack geometry.rounding geometry.sharp bom/rolls.slack bom/sticks.margin bom/sticks.tiny bom/work.crewTime bom/work.direct nursery.tableError
		nursery.tableFrom nursery.tableNodes nursery.tableOf nursery/flow.critical nursery/flow.root
		nursery/flow.segment nursery/manifold.beyondAny nursery/manifold.guess nursery/manifold.mostOver nursery/manifold.round nursery/manifold.search
		nursery/manifold.settled nursery/seed.roundOff nursery/seed.tiny`,
	"how finely a number is written, and two are told apart": `
		geometry/measure.Tape geometry/measure.alike geometry/measure.mostFigures geometry/measure.rounding`,
	"points of a numeric integral": `
		nursery/flow.nodeCos nursery/flow.nodeSin nursery/flow.nodes`,
	"parts of one: per cent, millionths, minutes in an hour, fractions written as one letter": `
		bom.Whole bom/basket.Million bom/work.minute bom/work.night geometry/measure.vulgar nursery.percent`,
	"plane geometry": `
		bom/rolls.pocket`,
	"where words and lines lie on a template or a plot": `
		geometry.head geometry.column geometry.letterWidth nursery.Heads geometry.latticeTemplate geometry.meshDiscTemplate geometry.beside geometry.stripFree geometry.stripLetters geometry.noteStep geometry.notes
		geometry.onDatum geometry.patchAbove geometry.patchBelow geometry.patchSide geometry.patchWide geometry.pipeWrapTemplate
		`,
	"which sizes of build are shown": `
		bom/build.most bom/build.named`,
	"a pipe that nobody described: too wide to take any head": `
		nursery.lossless`,
}
