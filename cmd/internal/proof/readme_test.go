package proof

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// The README counts numbers and checks by standing as the ledger does.
func TestReadmeCounts(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(root, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	numbers, checks := Count(Numbers()), Count(Checks())
	for i, s := range Standings() {
		line := fmt.Sprintf("| %s: %s | %d | %d |", s[0], s[1], numbers[i], checks[i])
		if !strings.Contains(string(text), line+"\n") {
			t.Errorf("README.md, Sources, wants the line\n%s", line)
		}
	}
}
