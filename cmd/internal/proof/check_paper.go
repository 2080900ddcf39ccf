package proof

// paperChecks are of drawings, templates and pages as outside programs read
// them.
func paperChecks() []Row {
	return checked("Checked: templates, drawings, pages", [][5]string{
		{"lattice on letter and A4, every sheet", "each point within 0.01 mm of its place", "mutool", run, "./render/pdf TestLatticeSheetsByMutool"},
		{"lattice joined by its match marks", "cut lines within 0.1 mm of true", "poppler", run, "./render/pdf TestLatticeJoinedByItsMatchMarks"},
		{"ring joined by its match marks", "each reading within 0.05 mm, areas within 0.1 %", "poppler", run, "./render/pdf TestSheetsJoinedByTheirMatchMarks"},
		{"a circle of 285 mm in the file", "within 0.003 mm", "mutool", run, "./render/pdf TestCircleInTheFile"},
		{"areas of every template in print", "within 0.1 % (0.3 % for a small one)", "poppler", run, "./render/pdf TestTemplateAreasByPoppler"},
		{"words of templates cut into sheets", "whole in a window or beside it, each on a sheet", "poppler", run, "./render/pdf TestTemplateWordsByPoppler"},
		{"words as long as they are measured", "within 2 %", "poppler", run, "./render/pdf TestWordsAreAsLongAsMeasured"},
		{"filled circle, sector, rectangle with a hole", "closed forms within 0.1 %", "poppler", run, "./render/pdf TestFilledAreas"},
		{"height of capital letters", "the nominal size", "ISO 3098 (from memory); poppler", memory, "./render/pdf TestLettersAreTrue"},
		{"PDF file", "sound, fonts embedded, not scaled", "qpdf, poppler", run, "./render/pdf TestFileFromOutside"},
		{"titles and bookmarks of any words", "read back", "qpdf, poppler, mutool; ISO 32000-1, 7.9.2.2", run, "./render/pdf TestTitles"},
		{"areas of every template as SVG", "within 0.1 % (0.2 % for a small one)", "librsvg", run, "./render/svg TestTemplateAreasByLibrsvg"},
		{"shapes as SVG", "closed forms within 0.1 %", "librsvg", run, "./render/svg TestAreasByLibrsvg"},
		{"SVG files", "nothing to say", "libxml (xmllint)", run, "./render/svg TestWellFormedByLibxml"},
		{"length and box of every SVG path", "to 0.01 mm; 96 pixels an inch", "Chromium; CSS Values, absolute lengths", run, "./render/svg TestGeometryByChromium"},
		{"cut lines of every template", "length, area and size in a browser", "Chromium", run, "./render/svg TestChromiumMeasuresTemplates"},
		{"lattice at 1:5 on a printed page", "107.315 mm high", "poppler", run, "./render/views TestLatticeOnPaper"},
		{"scales of drawings", "those of the standard, in the title strip", "ISO 5455, ISO 7200", memory, "./render/views TestEveryScaleIsInTheStrip"},
		{"a drawing's scale", "one of the standard's", "ISO 5455", memory, "./render/views TestFit"},
		{"first and third angle", "place of the view from above, symbol", "ISO 5456-2", memory, "./render/views TestProjectionPlacesThePlan"},
		{"sizes of paper", "ISO A, ANSI A to E as printed; architectural sizes and legal common practice", "ISO 216:2007, ANSI/ASME Y14.1", memory, "./render TestPaperNamed"},
		{"widths of words, height of capitals", "the font library's own measuring", "golang.org/x/image/font/opentype", run, "./render TestTextWidthAndCapHeight"},
		{"strips longer than a PDF page", "cut at 14,400 points", "ISO 32000-1, annex C.2", memory, "./render TestRollIsCutToPages"},
		{"measuring sheet", "within a printer's edge, words as wide as they are", "common practice, no source", practice, "./render TestMeasuringSheet"},
		{"curves to scale", "4 L is 1.0567 gal, 1 m is 3.2808 ft, to 0.1 mm", srcSP811, memory, "./render/charts TestCurveIsToScale"},
		{"section of the water's levels", "within 0.1 mm by written scale and axes; inch and gallon by definition", srcNIST44, memory, "./render/sheets TestLevelFigureIsToScale"},
		{"rounding error of the marking tables", "10 mm is 6.30 sixteenths", "worked by hand", worked, "./render/sheets TestRoundingError"},
		{"pages of the pack", "every word inside its margins, read as set", "poppler", run, "./render/sheets TestPopplerReadsThePages"},
		{"pieces of a stick, discs on a roll drawn", "distances on paper times the scale, by hand", "worked by hand", worked, "./render/sheets TestBarsAreToScale"},
	})
}
