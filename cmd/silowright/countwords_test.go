package main

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"
)

// FuzzCountWords: whatever is written for a sample and a batch is counted, or
// refused in one line with a hint; no number told is none.
func FuzzCountWords(f *testing.F) {
	for _, s := range [][3]string{{"5 mL: 212", "5 mL: 198", "3.4 L"}, {"5 mL, 4 g: 212", "5 mL, 4 g: 199", "1.2 kg"}, {"1/2 fl oz: 80", "4 g: 3", "1 gal"}, {"5 mL: 0", "5 mL: 0", ""},
		{"5 mL: 99999999999999999999", "5 mL: 1", "1 L"}, {":", ",", "-"}, {"5 mL:212:3", "5 mL, 5 mL: 2", "0 L"}, {"--json", "-h", "--"}, {"1000 kg: 1", "0.001 mL: 9223372036854775807", "1000 L"}} {
		f.Add(s[0], s[1], s[2])
	}
	f.Fuzz(func(t *testing.T, one, two, total string) {
		for _, extra := range []string{"--json=false", "--json"} {
			var out bytes.Buffer
			err := runCount(&env{stdout: &out, stderr: &out}, []string{extra, "--total", total, "--", one, two})
			if err != nil {
				if text := err.Error(); strings.ContainsAny(text, "\n\r\x1b") || !strings.Contains(text, "hint: ") {
					t.Errorf("not one line with a hint: %q", text)
				}
				continue
			}
			text := strings.ReplaceAll(out.String(), strings.TrimSpace(total), "")
			if strings.Contains(text, "NaN") || strings.Contains(text, "Inf") || strings.Contains(text, "%!") {
				t.Errorf("%q", text)
			}
			if extra == "--json" && !json.Valid(out.Bytes()) {
				t.Errorf("no JSON: %.200q", out.String())
			}
		}
	})
}
