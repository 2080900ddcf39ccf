package main

import (
	"io"

	"silowright/cmd/internal/notices"
)

var licencesCommand = command{
	name:    "licences",
	summary: "print the licences of the libraries that the program is built from",
	example: "silowright licences --list",
	run:     runLicences,
}

func runLicences(e *env, args []string) error {
	fs := newFlags("licences")
	list := fs.Bool("list", false, "the modules alone, with version, licence and purpose")
	if _, err := parseFlags(fs, args, 0, 0); err != nil {
		return err
	}
	text := notices.Modules()
	if !*list {
		text += "\n" + notices.Texts()
	}
	_, err := io.WriteString(e.stdout, text)
	return err
}
