package table

import (
	"encoding/json"
	"errors"
	"io/fs"
	"net/http"
	"os"
	"path"
	"path/filepath"
	"strings"
	"time"

	"silowright/bom"
	"silowright/cmd/internal/output"
)

// draftEnd is what the name of a draft ends in; it begins with a dot, so that
// no job or price list is taken for one.
const draftEnd = ".draft"

func draftName(name string) string {
	return path.Join(path.Dir(name), "."+path.Base(name)+draftEnd)
}

// target checks where a job is to be written and returns the path of its
// price list.
func (s *server) target(b *body) (name, prices string, err error) {
	if b.Path == nil || *b.Path == "" {
		return "", "", refuse(http.StatusBadRequest, "path: missing; hint: name the job file, as in cove/job.toml")
	}
	name = *b.Path
	if err := local(name); err != nil {
		return "", "", err
	}
	if !strings.EqualFold(path.Ext(name), ".toml") {
		return "", "", refuse(http.StatusBadRequest, "path: %.60q does not end in .toml; hint: as in cove/job.toml", name)
	}
	if prices, err = pricesPath(name, []byte(b.Job)); err != nil {
		return "", "", err
	}
	if strings.EqualFold(prices, name) || !strings.EqualFold(path.Ext(prices), ".csv") {
		return "", "", refuse(http.StatusBadRequest, "prices.file: %.60q does not end in .csv; hint: as in prices.csv", prices)
	}
	if len(b.Job) > mostJob {
		return "", "", refuse(http.StatusRequestEntityTooLarge, "job: larger than %d kB", mostJob>>10)
	}
	return name, prices, nil
}

// onDisk is a job as the folder has it, with the list that it names itself;
// false when there is no job file.
func (s *server) onDisk(name string) (opened, bool, error) {
	out := opened{Path: name}
	text, err := s.readFile(name, mostJob)
	if missing(err) {
		return out, false, nil
	}
	if err != nil {
		return out, false, err
	}
	out.Job = string(text)
	if out.PricesPath, err = pricesPath(name, text); err == nil {
		list, err := s.readFile(out.PricesPath, bom.MaxPrices)
		if err != nil {
			out.Warning = err.Error()
		}
		out.Prices = string(list)
	} else {
		out.Warning = err.Error()
	}
	out.Revision = revision(out.Job, out.Prices)
	return out, true, nil
}

func missing(err error) bool {
	var p *problem
	return errors.As(err, &p) && p.status == http.StatusNotFound
}

// save writes job and prices, unless the files are no longer those the page
// began from.
func (s *server) save(_ *http.Request, b *body) (any, error) {
	name, prices, err := s.target(b)
	if err != nil {
		return nil, err
	}
	s.saving.Lock()
	defer s.saving.Unlock()
	now, _, err := s.onDisk(name)
	if err != nil {
		return nil, err
	}
	list, err := s.readFile(prices, bom.MaxPrices)
	if err != nil && !missing(err) {
		return nil, err
	}
	// both states that stand in the way have a revision; a page that names it
	// has shown them
	beside := now
	beside.Prices = string(list)
	beside.Revision = revision(beside.Job, beside.Prices)
	seen := err == nil && b.Revision == beside.Revision
	switch other := err == nil && prices != now.PricesPath && string(list) != b.Prices; {
	case b.Revision != now.Revision && !seen:
		return nil, conflict(b, now)
	case other && !seen: // the job names another list now, and one is there
		return nil, conflict(b, beside)
	}
	// the list first: a job file is never there without the list it names
	if missing(err) && b.Prices != "" || err == nil && b.Prices != string(list) {
		if err := s.put(prices, []byte(b.Prices)); err != nil {
			return nil, err
		}
	}
	if b.Job != now.Job || now.Revision == "" {
		if err := s.put(name, []byte(b.Job)); err != nil {
			return nil, err
		}
	}
	_ = s.root.Remove(draftName(name))
	return map[string]string{"revision": revision(b.Job, b.Prices), "path": name, "pricesPath": prices}, nil
}

// put writes a file below the folder.
func (s *server) put(name string, data []byte) error {
	full, err := s.place(name)
	if err != nil {
		return err
	}
	if err := output.Write(full, data); err != nil {
		return refuse(http.StatusForbidden, "%s", s.relative(err))
	}
	return nil
}

// conflict tells both states, for the person to choose.
func conflict(b *body, now opened) error {
	p := refuse(http.StatusConflict, "the file was changed since this page opened it; hint: take one of the two, or save under another name")
	p.more = map[string]any{
		"mine":   map[string]string{"job": b.Job, "prices": b.Prices},
		"theirs": map[string]string{"job": now.Job, "prices": now.Prices}, "revision": now.Revision}
	return p
}

// place is where a file below the folder is on the disk. Its directory is
// there and no part of the way leads out of the folder.
func (s *server) place(name string) (string, error) {
	dir := path.Dir(name)
	info, err := s.root.Stat(dir) // refuses links that lead out
	if err != nil || !info.IsDir() {
		return "", refuse(http.StatusForbidden, "path: the folder %.60q is not there; hint: name one that is", dir)
	}
	at := s.cfg.Dir
	for part := range strings.SplitSeq(dir, "/") {
		if part == "." {
			continue
		}
		at = filepath.Join(at, part)
		if info, err := os.Lstat(at); err != nil || !info.IsDir() {
			return "", refuse(http.StatusForbidden, "path: %.60q leads through a link; hint: name the folder itself", name)
		}
	}
	if info, err := s.root.Lstat(name); err == nil && !info.Mode().IsRegular() {
		return "", refuse(http.StatusForbidden, "path: %.60q is not a plain file", name)
	} else if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return "", pathError(name, err)
	}
	return filepath.Join(s.cfg.Dir, filepath.FromSlash(name)), nil
}

// relative names a file as the page knows it.
func (s *server) relative(err error) string {
	return strings.ReplaceAll(oneLine(err.Error()), s.cfg.Dir+string(filepath.Separator), "")
}

// draftFile is a draft as it is kept beside the job.
type draftFile struct {
	Job      string `json:"job"`
	Prices   string `json:"prices"`
	Revision string `json:"revision"`
}

// keepDraft writes a copy of what is not saved yet, for after a crash.
func (s *server) keepDraft(_ *http.Request, b *body) (any, error) {
	name, _, err := s.target(b)
	if err != nil {
		return nil, err
	}
	data, err := json.Marshal(draftFile{b.Job, b.Prices, b.Revision})
	if err != nil {
		return nil, err
	}
	s.saving.Lock()
	defer s.saving.Unlock()
	if err := s.put(draftName(name), data); err != nil {
		return nil, err
	}
	return map[string]bool{"kept": true}, nil
}

// dropDraft takes a draft away that is not wanted.
func (s *server) dropDraft(_ *http.Request, b *body) (any, error) {
	name, _, err := s.target(b)
	if err != nil {
		return nil, err
	}
	s.saving.Lock()
	defer s.saving.Unlock()
	if _, err := s.place(draftName(name)); err != nil {
		return nil, err
	}
	if err := s.root.Remove(draftName(name)); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, pathError(name, err)
	}
	return map[string]bool{"kept": false}, nil
}

// draftOf is the draft of a job when it says something else than the file, and
// the file stands as it did when the draft was begun, or at least is no newer
// by the clock.
func (s *server) draftOf(o *opened) *draft {
	at := draftName(o.Path)
	info, err := s.root.Lstat(at)
	if err != nil || !info.Mode().IsRegular() {
		return nil
	}
	data, err := s.readFile(at, mostJob+bom.MaxPrices)
	if err != nil {
		return nil
	}
	var d draftFile
	if json.Unmarshal(data, &d) != nil || d.Job == o.Job && d.Prices == o.Prices {
		return nil
	}
	if file, err := s.root.Lstat(o.Path); d.Revision != o.Revision && err == nil && file.ModTime().After(info.ModTime()) {
		return nil
	}
	return &draft{d.Job, d.Prices, d.Revision, info.ModTime().UTC().Format(time.RFC3339)}
}
