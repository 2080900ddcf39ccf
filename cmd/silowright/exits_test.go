package main

import (
	"bytes"
	"os"
	"strconv"
	"strings"

	"github.com/rogpeppe/go-internal/testscript"
)

// exits is a script command: "exits CODE ARGS…" runs silowright in this very
// process and compares the exit code; its output goes to the files out.txt
// and err.txt of the script's directory. With code 2 it holds the message to
// its form: one line that begins with "silowright: ", nothing on stdout.
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 1 {
		ts.Fatalf("usage: exits CODE ARGS…")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	var out, msg bytes.Buffer
	got := run(args[1:], &env{stdin: strings.NewReader(""), stdout: &out, stderr: &msg, dir: ts.MkAbs(".")})
	ts.Check(os.WriteFile(ts.MkAbs("out.txt"), out.Bytes(), 0o666))
	ts.Check(os.WriteFile(ts.MkAbs("err.txt"), msg.Bytes(), 0o666))
	if got != want {
		ts.Fatalf("exit code %d, want %d\nstdout:\n%s\nstderr:\n%s", got, want, &out, &msg)
	}
	if want == exitBad {
		s := msg.String()
		if !strings.HasPrefix(s, "silowright: ") || strings.Count(s, "\n") != 1 {
			ts.Fatalf("message is not one line of ours: %q", s)
		}
		if out.Len() > 0 {
			ts.Fatalf("bad input, yet it printed: %q", &out)
		}
	}
}
