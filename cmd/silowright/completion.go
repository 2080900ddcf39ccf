package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/pflag"
)

// shells are those that completion writes for, each with its writer.
var shells = []struct {
	name  string
	write func([]choice) string
}{{"bash", bashCompletion}, {"zsh", zshCompletion}, {"fish", fishCompletion}}

// completionCommand is a function since the script lists every command, this
// one among them.
func completionCommand() command {
	return command{
		name:    "completion",
		args:    "SHELL",
		summary: "print what lets a shell complete commands and flags: bash, zsh or fish",
		example: "silowright completion bash > silowright.bash",
		run:     runCompletion,
	}
}

func runCompletion(e *env, args []string) error {
	rest, err := parseFlags(newFlags("completion"), args, 1, 1)
	if err != nil {
		return err
	}
	for _, s := range shells {
		if s.name == rest[0] {
			_, err := io.WriteString(e.stdout, s.write(choices()))
			return err
		}
	}
	return usagef("completion: shell %q is not known; hint: %s", rest[0], strings.Join(shellNames(), ", "))
}

func shellNames() []string {
	var names []string
	for _, s := range shells {
		names = append(names, s.name)
	}
	return names
}

// choice is a command as a shell completes it.
type choice struct {
	name, says string
	flags      []flagChoice
	words      []string // what its argument may be, where that is one of a few
	files      bool     // its argument is a file or a directory
}

type flagChoice struct {
	name, says string
	valued     bool
}

// choices reads the same table and flags as --help.
func choices() []choice {
	var out []choice
	for _, c := range commands() {
		q := choice{name: c.name, says: c.summary, files: strings.Contains(c.args, "JOB") || strings.Contains(c.args, "DIR")}
		flagsOf(c).VisitAll(func(f *pflag.Flag) {
			q.flags = append(q.flags, flagChoice{"--" + f.Name, f.Usage, f.NoOptDefVal == ""})
		})
		q.flags = append(q.flags, flagChoice{"--help", "tell more of " + c.name, false})
		switch c.name {
		case tablesCommand.name:
			for _, t := range allTables() {
				q.words = append(q.words, t.Name)
			}
		case completionCommand().name:
			q.words = shellNames()
		}
		out = append(out, q)
	}
	return out
}

// quoted is s as one word of a shell's.
func quoted(s string) string { return "'" + strings.ReplaceAll(s, "'", `'\''`) + "'" }

func bashCompletion(all []choice) string {
	var names []string
	var cases strings.Builder
	for _, c := range all {
		names = append(names, c.name)
		var flags, valued []string
		for _, f := range c.flags {
			flags = append(flags, f.name)
			if f.valued {
				valued = append(valued, f.name)
			}
		}
		fmt.Fprintf(&cases, "  %s) flags='%s' valued='%s' words='%s' files=%s ;;\n", c.name,
			strings.Join(flags, " "), strings.Join(valued, " "), strings.Join(c.words, " "), yes(c.files))
	}
	return `# Completion of silowright for bash: source this file from ~/.bashrc.
_silowright() {
  local cur="${COMP_WORDS[COMP_CWORD]}" before="${COMP_WORDS[COMP_CWORD-1]}"
  local flags='' valued='' words='' files=''
  COMPREPLY=()
  if [ "$COMP_CWORD" -eq 1 ]; then
    COMPREPLY=($(compgen -W '` + strings.Join(names, " ") + ` help --help --version' -- "$cur"))
    return
  fi
  case "${COMP_WORDS[1]}" in
` + cases.String() + `  help) words='` + strings.Join(names, " ") + `' ;;
  esac
  case " $valued " in
  *" $before "*) words='' files=yes ;;
  *) case "$cur" in -*) words="$flags" files='' ;; esac ;;
  esac
  if [ -n "$words" ]; then
    COMPREPLY=($(compgen -W "$words" -- "$cur"))
  elif [ -n "$files" ]; then
    local IFS=$'\n'
    compopt -o filenames 2>/dev/null
    COMPREPLY=($(compgen -f -- "$cur"))
  fi
}
complete -F _silowright silowright
`
}

// yes is how the bash script says it.
func yes(b bool) string {
	if b {
		return "yes"
	}
	return "''"
}

func zshCompletion(all []choice) string {
	var list, cases strings.Builder
	var names []string
	for _, c := range all {
		names = append(names, c.name)
		fmt.Fprintf(&list, "    %s\n", quoted(c.name+":"+c.says))
		fmt.Fprintf(&cases, "  %s) _arguments", c.name)
		for _, f := range c.flags {
			spec := f.name
			if f.valued {
				spec += "="
			}
			spec += "[" + zshText(f.says) + "]"
			if f.valued {
				spec += ":value:_files"
			}
			fmt.Fprintf(&cases, " \\\n      %s", quoted(spec))
		}
		switch {
		case c.files:
			fmt.Fprintf(&cases, " \\\n      '*:file:_files'")
		case c.words != nil:
			fmt.Fprintf(&cases, " \\\n      %s", quoted("1:name:("+strings.Join(c.words, " ")+")"))
		}
		cases.WriteString(" ;;\n")
	}
	return `#compdef silowright
# Completion of silowright for zsh: keep this file as _silowright in a
# directory of $fpath.
_silowright() {
  local -a commands=(
` + list.String() + `    'help:tell more of a command'
  )
  if (( CURRENT == 2 )); then
    _describe command commands
    compadd -- --help --version
    return
  fi
  shift words
  (( CURRENT-- ))
  case $words[1] in
` + cases.String() + `  help) _arguments ` + quoted("1:command:("+strings.Join(names, " ")+")") + ` ;;
  esac
}
if [ "$funcstack[1]" = _silowright ]; then
  _silowright "$@"
else
  compdef _silowright silowright
fi
`
}

// zshText guards what means something in a flag's description.
func zshText(s string) string {
	return strings.NewReplacer(`\`, `\\`, `[`, `\[`, `]`, `\]`, `:`, `\:`).Replace(s)
}

func fishCompletion(all []choice) string {
	var names []string
	for _, c := range all {
		names = append(names, c.name)
	}
	b := &strings.Builder{}
	b.WriteString("# Completion of silowright for fish: keep this file as silowright.fish in\n# ~/.config/fish/completions.\ncomplete -c silowright -f\n")
	first := "not __fish_seen_subcommand_from " + strings.Join(names, " ") + " help"
	for _, c := range all {
		fmt.Fprintf(b, "complete -c silowright -n %s -a %s -d %s\n", quoted(first), c.name, fishText(c.says))
	}
	fmt.Fprintf(b, "complete -c silowright -n %s -a help -d 'tell more of a command'\n", quoted(first))
	fmt.Fprintf(b, "complete -c silowright -n %s -l help -d 'list the commands'\n", quoted(first))
	fmt.Fprintf(b, "complete -c silowright -n %s -l version -d 'tell what this build is'\n", quoted(first))
	for _, c := range all {
		here := quoted("__fish_seen_subcommand_from " + c.name)
		for _, f := range c.flags {
			value := ""
			if f.valued {
				value = " -r -F"
			}
			fmt.Fprintf(b, "complete -c silowright -n %s -l %s%s -d %s\n", here, strings.TrimPrefix(f.name, "--"), value, fishText(f.says))
		}
		switch {
		case c.files:
			fmt.Fprintf(b, "complete -c silowright -n %s -F\n", here)
		case c.words != nil:
			fmt.Fprintf(b, "complete -c silowright -n %s -a %s\n", here, quoted(strings.Join(c.words, " ")))
		}
	}
	fmt.Fprintf(b, "complete -c silowright -n '__fish_seen_subcommand_from help' -a %s\n", quoted(strings.Join(names, " ")))
	return b.String()
}

// fishText is s as one word of fish's, which takes \ and ' alone within quotes.
func fishText(s string) string {
	return "'" + strings.NewReplacer(`\`, `\\`, `'`, `\'`).Replace(s) + "'"
}
