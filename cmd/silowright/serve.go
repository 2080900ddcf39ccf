package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"runtime"
	"syscall"

	"silowright/cmd/internal/table"
)

var serveCommand = command{
	name:    "serve",
	args:    "[JOB]",
	summary: "draw, check and print a job on a page in the browser, offline",
	example: "silowright serve my-silos/job.toml --open",
	run:     runServe,
}

// usualPort is a number no program is known for.
const usualPort = 8460

func runServe(e *env, args []string) error {
	fs := newFlags("serve")
	port := fs.Int("port", usualPort, "port to listen on; 0 picks a free one")
	lan := fs.Bool("lan", false, "let other machines of the local network in, by the address printed alone")
	open := fs.Bool("open", false, "open the page in the browser")
	rest, err := parseFlags(fs, args, 0, 1)
	if err != nil {
		return err
	}
	cfg := table.Config{Dir: e.path(".")}
	if len(rest) == 1 {
		if cfg.Dir, cfg.Job, err = served(e, rest[0]); err != nil {
			return err
		}
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	t, err := table.Start(cfg, table.Listen{Port: *port, LAN: *lan})
	if err != nil {
		return usagef("serve: %w", err)
	}
	fmt.Fprintf(e.stdout, "open %s\nit reads and writes job files in %s; Ctrl-C stops it\n", t.URL, cfg.Dir)
	if *lan {
		fmt.Fprintf(e.stdout, "whoever has the whole address can change these files: tell it to nobody you do not trust\n")
	}
	if *open {
		if err := openBrowser(t.URL); err != nil {
			fmt.Fprintf(e.stderr, "silowright: no browser could be opened: %s; hint: open the address by hand\n", oneLine(err.Error()))
		}
	}
	return t.Serve(ctx)
}

// served is the folder to serve for a job, and the job's name in it: the
// folder the command was started in where the job lies below it, else the
// job's own.
func served(e *env, name string) (dir, job string, err error) {
	full, err := filepath.Abs(e.path(name))
	if err != nil {
		return "", "", err
	}
	info, err := os.Stat(full)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "", "", fmt.Errorf("%s: no such file; hint: silowright start DIR writes a job file to begin with, silowright serve alone shows the demo", name)
	case err != nil:
		return "", "", fmt.Errorf("%s: cannot be read; hint: look at its permissions", name)
	case info.IsDir():
		return "", "", fmt.Errorf("%s: is a directory; hint: name the job file in it, as in %s", name, filepath.Join(name, "job.toml"))
	}
	start, err := filepath.Abs(e.path("."))
	if err != nil {
		return "", "", err
	}
	if rel, err := filepath.Rel(start, full); err == nil && filepath.IsLocal(rel) {
		return start, filepath.ToSlash(rel), nil
	}
	return filepath.Dir(full), filepath.Base(full), nil
}

// openBrowser asks the system to show an address.
func openBrowser(url string) error {
	name, args := "xdg-open", []string{url}
	switch runtime.GOOS {
	case "darwin":
		name = "open"
	case "windows":
		name, args = "rundll32", []string{"url.dll,FileProtocolHandler", url}
	}
	c := exec.Command(name, args...)
	if err := c.Start(); err != nil {
		return err
	}
	go func() { _ = c.Wait() }()
	return nil
}
