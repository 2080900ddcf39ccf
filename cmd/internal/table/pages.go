package table

import (
	"archive/zip"
	"bytes"
	"fmt"
	"net/http"
	"path"
	"strings"

	"silowright/cmd/internal/output"
	"silowright/cmd/internal/report"
)

// shownPage is one page of the pack on the screen.
type shownPage struct {
	SVG   string   `json:"svg"`
	Page  int      `json:"page"` // from 1
	Pages int      `json:"pages"`
	Title string   `json:"title"`
	Index []string `json:"titles"` // of all pages
}

// page answers with one page of the pack.
func (s *server) page(_ *http.Request, b *body) (any, error) {
	pages, err := s.kept.of(s.name(b.Path, b.Prices), b.Job, b.Prices).pages()
	if err != nil {
		return nil, err
	}
	if b.Page < 1 {
		return nil, refuse(http.StatusBadRequest, "page: %d is not there, allowed: 1 to %d", b.Page, len(pages))
	}
	// a job that has lost pages since still shows its last
	n := min(b.Page, len(pages))
	p := pages[n-1]
	out := shownPage{Page: n, Pages: len(pages), Title: p.Title}
	for _, q := range pages {
		out.Index = append(out.Index, q.Title)
	}
	out.SVG, err = pageSVG(p)
	return out, err
}

// zipName is the whole pack in one file.
const zipName = "pack.zip"

// file answers with a file of the pack, or with all of them.
func (s *server) file(_ *http.Request, b *body) (any, error) {
	made, err := s.kept.of(s.name(b.Path, b.Prices), b.Job, b.Prices).made()
	if err != nil {
		return nil, err
	}
	if b.Name == zipName {
		data, err := zipped(made.Files)
		return file{zipName, "application/zip", data}, err
	}
	var names []string
	for _, f := range made.Files {
		if f.Name == b.Name {
			return file{path.Base(f.Name), kindOf(f.Name), f.Data}, nil
		}
		names = append(names, f.Name)
	}
	return nil, refuse(http.StatusNotFound, "name: %.60q is no file of the pack; hint: %s, or %s", b.Name, zipName, strings.Join(names, ", "))
}

// zipped puts files into one, dated like the PDF so that the same pack gives
// the same bytes.
func zipped(files []output.File) ([]byte, error) {
	var buf bytes.Buffer
	z := zip.NewWriter(&buf)
	for _, f := range files {
		h := &zip.FileHeader{Name: "shop-pack/" + f.Name, Method: zip.Deflate}
		w, err := z.CreateHeader(h)
		if err == nil {
			_, err = w.Write(f.Data)
		}
		if err != nil {
			return nil, fmt.Errorf("%s: %w", f.Name, err)
		}
	}
	if err := z.Close(); err != nil {
		return nil, err
	}
	return buf.Bytes(), nil
}

// kindOf is a file's media type, by its name.
func kindOf(name string) string {
	switch path.Ext(name) {
	case ".pdf":
		return "application/pdf"
	case ".svg":
		return "image/svg+xml"
	case ".csv":
		return "text/csv; charset=utf-8"
	case ".json":
		return "application/json"
	case ".xlsx":
		return "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
	}
	return "application/octet-stream"
}

// compared are two jobs side by side.
type compared struct {
	report.Comparison
	DrawingsA []kindDrawings `json:"drawings_a"`
	DrawingsB []kindDrawings `json:"drawings_b"`
	ErrorA    *jobError      `json:"error_a"`
	ErrorB    *jobError      `json:"error_b"`
}

// compare sets two variants side by side; one that is wrong is answered with
// what is wrong with it.
func (s *server) compare(_ *http.Request, b *body) (any, error) {
	if b.A == nil || b.B == nil {
		return nil, refuse(http.StatusBadRequest, "a and b: one is missing; hint: both are wanted, with job and prices")
	}
	one := s.kept.of(s.name(b.A.Path, b.A.Prices), b.A.Job, b.A.Prices)
	two := s.kept.of(s.name(b.B.Path, b.B.Prices), b.B.Job, b.B.Prices)
	out := &compared{}
	a, errA := one.plan()
	c, errB := two.plan()
	for _, q := range []struct {
		w   *worked
		err error
		to  *[]kindDrawings
		bad **jobError
	}{{one, errA, &out.DrawingsA, &out.ErrorA}, {two, errB, &out.DrawingsB, &out.ErrorB}} {
		if q.err != nil {
			*q.bad = wrong(q.err, nil)
			continue
		}
		d, err := q.w.drawn()
		if err != nil {
			return nil, err
		}
		*q.to = d.kinds
	}
	if errA != nil || errB != nil {
		return out, nil
	}
	var err error
	out.Comparison, err = report.Compare(a, c)
	return out, err
}
