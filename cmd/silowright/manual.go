package main

import (
	"fmt"
	"io"
	"maps"
	"regexp"
	"runtime/debug"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"silowright/cmd/internal/job"
	"silowright/geometry/measure"
)

// manualCommand is a function since the page lists every command, this one
// among them.
func manualCommand() command {
	return command{
		name:    "manual",
		summary: "print the manual page, for man to read",
		example: "silowright manual > silowright.1",
		run: func(e *env, args []string) error {
			if _, err := parseFlags(newFlags("manual"), args, 0, 0); err != nil {
				return err
			}
			info, _ := debug.ReadBuildInfo()
			_, err := io.WriteString(e.stdout, manual(info))
			return err
		},
	}
}

// manual is the manual page in the man macros of roff, written from the same
// table and flags as --help. It is dated by the commit it was built from,
// where the Go tool recorded one.
func manual(info *debug.BuildInfo) string {
	p := &page{}
	day, _, _ := strings.Cut(setting(info, "vcs.time"), "T")
	p.line(`.TH SILOWRIGHT 1 "%s" "silowright %s"`, day, roff(versionOf(info)))
	p.line(".ad l")
	p.line(".SH NAME\nsilowright \\- %s", roff(purpose))
	p.line(".SH SYNOPSIS\n.B silowright\n.I COMMAND\n[\n.I FLAGS\n]\n[\n.I JOB\n]")
	p.line(".SH DESCRIPTION\n%s", filled(aim+" "+more))
	p.line(".SH COMMANDS")
	for _, c := range commands() {
		p.command(c)
	}
	p.line(".SH THE JOB FILE\n%s", filled("TOML, strict: an unknown key, a wrong type or an impossible size is refused "+
		"with file, line, key, value, allowed range and a hint. silowright start writes one with every key, its meaning and its default."))
	for _, s := range jobSections() {
		p.item(s.name, s.says)
	}
	p.line(".SH FILES")
	for _, f := range [][2]string{
		{"job.toml", "the job file, as start names it; any name will do"},
		{"prices.csv", "the price list; the job file names it under [prices], beside itself"},
		{"shop-pack/", "what pack writes, put in place in one move; files that pack did not write are never replaced"},
	} {
		p.item(f[0], f[1])
	}
	p.line(".SH EXIT STATUS")
	for code, means := range exitCodes {
		p.item(strconv.Itoa(code), means)
	}
	return p.b.String()
}

// page is a manual page as it grows.
type page struct{ b strings.Builder }

func (p *page) line(format string, args ...any) { fmt.Fprintf(&p.b, format+"\n", args...) }

// item writes a word and what is said of it, set in.
func (p *page) item(word, says string) {
	p.line(".TP\n\\fB%s\\fR\n%s", roff(word), filled(says))
}

// command writes what --help says of a command.
func (p *page) command(c command) {
	flags := flagsOf(c)
	p.line(".SS %s", roff(c.name))
	p.line(".B %s", roff(c.usage(flags)))
	p.line(".PP\n%s", filled(c.says()))
	flags.VisitAll(func(f *pflag.Flag) {
		kind, usage := pflag.UnquoteUsage(f)
		if !slices.Contains([]string{"", "0", "false", "[]"}, f.DefValue) {
			usage += " (default " + f.DefValue + ")"
		}
		p.item(strings.TrimSpace("--"+f.Name+" "+kind), usage)
	})
	p.line(".PP\nExample:\n.PP\n.EX\n    %s\n.EE", roff(c.example))
}

// roff writes text so that roff prints it as it stands.
func roff(s string) string {
	var b strings.Builder
	for _, r := range s {
		switch {
		case r == '\\':
			b.WriteString(`\e`)
		case r == '-':
			b.WriteString(`\-`)
		case r == '"':
			b.WriteString(`\(dq`)
		case r == '\'':
			b.WriteString(`\(aq`)
		case r == '`':
			b.WriteString(`\(ga`)
		case r == '^':
			b.WriteString(`\(ha`)
		case r == '~':
			b.WriteString(`\(ti`)
		case r > '~':
			fmt.Fprintf(&b, `\[u%04X]`, r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// filled is a paragraph in short lines, none of which is taken for a macro. A
// key of the job file is not hyphenated.
func filled(s string) string {
	words := strings.Fields(roff(s))
	for i, w := range words {
		if strings.Contains(w, "_") {
			words[i] = `\%` + w
		}
	}
	lines := strings.Split(wrapped(strings.Join(words, " "), 78), "\n")
	for i, l := range lines {
		if strings.HasPrefix(l, ".") {
			lines[i] = `\&` + l
		}
	}
	return strings.Join(lines, "\n")
}

// jobSection is a section of the job file with what it is about and its keys.
type jobSection struct{ name, says string }

// jobSections are the sections of the job file as start writes it, then those
// it shows as examples alone.
func jobSections() []jobSection {
	about := job.SectionWords()
	number := regexp.MustCompile(`\[\d+\]`) // the place of an entry in a list, as in drum[0]
	var order []string
	keys := map[string][]string{}
	for _, f := range job.Fields(job.Template(measure.UnitInch)) {
		s := number.ReplaceAllString(f.Section, "")
		if keys[s] == nil {
			order = append(order, s)
		}
		if !slices.Contains(keys[s], f.Name) {
			keys[s] = append(keys[s], f.Name)
		}
	}
	for _, s := range slices.Sorted(maps.Keys(about)) {
		if keys[s] == nil {
			order = append(order, s)
		}
	}
	var out []jobSection
	for _, s := range order {
		says := about[s]
		if says == "" {
			continue // [drum.ring] and the like, which say of one drum what [ring] says of all
		}
		if keys[s] != nil {
			says += ": " + strings.Join(keys[s], ", ")
		}
		name := "[" + s + "]"
		if s == "" {
			name = "above the first section"
		}
		out = append(out, jobSection{name, says})
	}
	return out
}
