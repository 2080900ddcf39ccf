package table

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io"
	"io/fs"
	"net/http"
	"path"
	"slices"
	"strings"
	"unicode/utf8"

	"silowright/cmd/internal/demo"
	"silowright/cmd/internal/job"
)

// opened is a job as it is on the disk.
type opened struct {
	Job        string   `json:"job"`
	Prices     string   `json:"prices"`
	Revision   string   `json:"revision"` // empty when there is no file yet
	Path       string   `json:"path"`     // empty for the demo
	PricesPath string   `json:"pricesPath"`
	Files      []string `json:"files"` // job files in the folder
	Invented   bool     `json:"invented"`
	Warning    string   `json:"warning,omitempty"` // the price list could not be read
	Draft      *draft   `json:"draft,omitempty"`
}

// draft is work that was not saved.
type draft struct {
	Job      string `json:"job"`
	Prices   string `json:"prices"`
	Revision string `json:"revision"` // the file it was begun from
	Saved    string `json:"saved"`    // when, RFC 3339
}

// mostJob is the most that is read of a job file.
const mostJob = 256 << 10

// open answers with a job of the folder, the one served first, or the demo.
func (s *server) open(r *http.Request, _ *body) (any, error) {
	name := s.cfg.Job
	if q := r.URL.Query(); q.Has("job") {
		name = q.Get("job")
	}
	out := &opened{Files: s.jobFiles()}
	if name == "" {
		out.Job, out.Prices, out.Invented = string(demo.Job), string(demo.Prices), true
		out.PricesPath = "prices.csv"
		return out, nil
	}
	if err := local(name); err != nil {
		return nil, err
	}
	got, there, err := s.onDisk(name)
	if err == nil && !there {
		err = pathError(name, fs.ErrNotExist)
	}
	if err != nil {
		return nil, err
	}
	got.Files = out.Files
	out = &got
	out.Draft = s.draftOf(out)
	return out, nil
}

// revision names a state of the two files.
func revision(job, prices string) string {
	h := sha256.New()
	for _, s := range []string{job, prices} {
		n := sha256.Sum256([]byte(s))
		h.Write(n[:])
	}
	return hex.EncodeToString(h.Sum(nil))[:32]
}

// pricesPath is where a job's price list is, relative to the folder.
func pricesPath(name string, text []byte) (string, error) {
	file := "prices.csv"
	for _, f := range job.Fields(text) {
		if f.Key == "prices.file" && f.Value != "" {
			file = f.Value
		}
	}
	p := path.Join(path.Dir(name), file)
	if path.IsAbs(file) || local(p) != nil {
		return "", refuse(http.StatusForbidden, "prices.file: %q lies outside the folder served; hint: keep it beside the job file", file)
	}
	return p, nil
}

// local refuses a path that is not one below the folder.
func local(name string) error {
	if !fs.ValidPath(name) || name == "." || !utf8.ValidString(name) || len(name) > 400 ||
		strings.ContainsAny(name, "\x00\\:") || strings.ContainsFunc(name, func(c rune) bool { return c < 0x20 || c == 0x7f }) {
		return refuse(http.StatusForbidden, "path: %.60q is not a name below the folder served; hint: as in job.toml or cove/job.toml", name)
	}
	for part := range strings.SplitSeq(name, "/") {
		if strings.HasPrefix(part, ".") {
			return refuse(http.StatusForbidden, "path: %.60q is hidden; hint: name it without a dot in front", name)
		}
	}
	return nil
}

// readFile reads a plain file below the folder.
func (s *server) readFile(name string, most int64) ([]byte, error) {
	f, err := s.root.Open(name)
	if err != nil {
		return nil, pathError(name, err)
	}
	defer f.Close()
	if info, err := f.Stat(); err != nil || !info.Mode().IsRegular() {
		return nil, refuse(http.StatusForbidden, "path: %.60q is not a plain file", name)
	}
	data, err := io.ReadAll(io.LimitReader(f, most+1))
	if err != nil {
		return nil, pathError(name, err)
	}
	if int64(len(data)) > most {
		return nil, refuse(http.StatusRequestEntityTooLarge, "path: %.60q is larger than %d kB; hint: is it a job file at all?", name, most>>10)
	}
	if !utf8.Valid(data) {
		return nil, refuse(http.StatusUnprocessableEntity, "path: %.60q is not UTF-8 text", name)
	}
	return data, nil
}

func pathError(name string, err error) error {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return refuse(http.StatusNotFound, "path: %.60q: no such file in the folder served", name)
	case errors.Is(err, fs.ErrPermission):
		return refuse(http.StatusForbidden, "path: %.60q: may not be read or written; hint: look at its permissions", name)
	}
	return refuse(http.StatusForbidden, "path: %.60q: cannot be reached below the folder served; hint: it may be a link that leads out", name)
}

// jobFiles lists the job files of the folder: TOML with a drum in it, no more
// than three folders down and no more than 200.
func (s *server) jobFiles() []string {
	out := []string{}
	seen := 0
	_ = fs.WalkDir(s.root.FS(), ".", func(name string, d fs.DirEntry, err error) error {
		if seen++; seen > 5000 || len(out) >= 200 {
			return fs.SkipAll
		}
		if err != nil {
			return nil
		}
		if name != "." && strings.HasPrefix(d.Name(), ".") || d.IsDir() && strings.Count(name, "/") >= 2 {
			if d.IsDir() {
				return fs.SkipDir
			}
			return nil
		}
		if d.Type().IsRegular() && strings.EqualFold(path.Ext(name), ".toml") && local(name) == nil {
			if text, err := s.readFile(name, mostJob); err == nil && strings.Contains(string(text), "drum") {
				out = append(out, name)
			}
		}
		return nil
	})
	slices.Sort(out)
	return out
}
