package proof

// programChecks are of the program, its files and its page in a browser.
func programChecks() []Row {
	const (
		page   = "./cmd/internal/table "
		chrome = "Chromium"
	)
	return checked("Checked: files, page, program", [][5]string{
		{"every job's PDF", "sound, fonts embedded, words inside pages", "qpdf, poppler", run, "./cmd/internal/pack TestPDFFromOutside"},
		{"a printer that shrinks", "true size again within 0.05 mm", "mutool", run, "./cmd/internal/pack TestPrinterCorrected"},
		{"every file of every pack", "of the form its name says", "Go's encoding packages, excelize", run, "./cmd/internal/pack TestEveryJobPacks"},
		{"a metric job's pipe", "DN 200, SN 4: 200 mm outside, wall 4.9, wrap π × 200", "EN 1401", seen, "./cmd/internal/pack TestMetricJobTakesEN1401"},
		{"the least job's lengths", "25.4 × the inches written", "international inch", worked, "./cmd/internal/job TestLeastJob"},
		{"pipes and fittings of a job", "10.1 fl oz is 298.7 mL", srcNIST44, worked, "./cmd/internal/job TestPipesAndFittings"},
		{"an edit changes its value alone", "the TOML library reads all else alike", "pelletier/go-toml", run, "./cmd/internal/job FuzzEditLeavesTheRest"},
		{"defaults of the job file", "every one as it was agreed", "common practice, no source; seed from the publications named", practice, "./cmd/internal/proof TestDefaults"},
		{"distance of words", "kitten to sitting 3, Saturday to Sunday 3", "textbook examples of edit distance", memory, "./cmd/internal/nearest TestDistance"},
		{"the page, from tape to pack", "the pack is the command's, byte for byte", chrome, run, page + "TestFromTapeToPack"},
		{"the page by mouse, by keys, on a phone", "nothing wider than the screen, every field reached", chrome, run, page + "TestPhone"},
		{"accessibility of the page", "no violation, either screen, either contrast", "axe-core, Chromium", run, page + "TestAxe"},
		{"accessibility where things go wrong", "no violation", "axe-core, Chromium", run, page + "TestAxeInTrouble"},
		{"real keys on the wall", "an eighth of an inch, a thirty-second with Shift", chrome, run, page + "TestArrowKeysOnTheWall"},
		{"changes offered", "2 1/2 in is the first saw past 2.375 in", "ASTM D1785", seen, page + "TestFixesInTheTradesWords"},
		{"a user's words in a drawing", "well-formed XML, no element of theirs", "Go's encoding/xml", run, page + "TestWordsAreEscaped"},
		{"pictures of the README", "the demo's own pages, as poppler paints them", "poppler", run, "./cmd/internal/pack TestReadmePictures"},
		{"random jobs packed", "PDFs sound, SVGs and workbooks read", "qpdf, poppler, Go's encoding/xml, excelize", run, "./cmd/internal/sweep TestSweep"},
		{"modules and licences of the program", "those that the Go tool builds it from", "the go command", run, "./cmd/internal/notices TestNoticesAreThoseOfTheBuild"},
		{"modules and licences against a bill of materials", "a general tool's list agrees, where one is named", "CycloneDX", run, "./cmd/internal/notices TestBillOfMaterials"},
		{"licences that ask for more than their notice", "phrases of their own texts", "the licences' own texts", memory, "./cmd/internal/notices TestKindOf"},
		{"completion for bash", "its function offers the words", "bash(1), Programmable Completion", run, "./cmd/silowright TestBashCompletes"},
		{"completion for fish", "the words, by complete -C", "fish", run, "./cmd/silowright TestFishCompletes"},
		{"completion for zsh", "the words, by a Tab typed", "zsh, zsh/zpty", run, "./cmd/silowright TestZshCompletes"},
		{"manual page", "read without a warning, all of it shown", "mandoc, groff", run, "./cmd/silowright TestManual"},
		{"every example of the help", "does what it says", "a shell (sh)", run, "./cmd/silowright TestEveryExampleWorks"},
	})
}
