package outside

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/xuri/excelize/v2"
)

// Convert turns one of each unit into another by LibreOffice's function
// CONVERT: from, to, from, to … by the names of that function ("in", "m",
// "lbm", "kg").
func Convert(t testing.TB, fromTo ...string) []float64 {
	t.Helper()
	book := excelize.NewFile()
	for i := 0; i+1 < len(fromTo); i += 2 {
		if err := book.SetCellFormula("Sheet1", fmt.Sprintf("A%d", i/2+1), fmt.Sprintf("CONVERT(1,%q,%q)", fromTo[i], fromTo[i+1])); err != nil {
			t.Fatal(err)
		}
	}
	data, err := book.WriteToBuffer()
	if err != nil {
		t.Fatal(err)
	}
	file := File(t, "units.xlsx", data.Bytes())
	dir := t.TempDir()
	Run(t, "soffice", "-env:UserInstallation=file://"+filepath.Join(dir, "profile"), "--headless", "--convert-to", "xlsx", "--outdir", filepath.Join(dir, "out"), file)
	done, err := os.ReadFile(filepath.Join(dir, "out", "units.xlsx"))
	if err != nil {
		t.Fatal(err)
	}
	out, err := excelize.OpenReader(bytes.NewReader(done))
	if err != nil {
		t.Fatal(err)
	}
	var values []float64
	for i := 0; i+1 < len(fromTo); i += 2 {
		s, err := out.GetCellValue("Sheet1", fmt.Sprintf("A%d", i/2+1), excelize.Options{RawCellValue: true})
		if err != nil {
			t.Fatal(err)
		}
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatalf("%s to %s: LibreOffice says %q", fromTo[i], fromTo[i+1], s)
		}
		values = append(values, v)
	}
	return values
}
