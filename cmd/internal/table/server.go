// Package table is the drawing table: a page on this machine on which a job is
// filled in, redrawn, checked and printed, and the server behind it. The
// server keeps no state but the job files of the folder it serves; every
// request carries the job and its price list as text.
package table

import (
	"embed"
	"io/fs"
	"net/http"
	"os"
	"path/filepath"
	"sync"
	"time"
)

//go:embed web
var webFiles embed.FS

// Config says what a table serves and to whom.
type Config struct {
	// Dir is the folder whose job files may be opened and saved.
	Dir string
	// Job is the job file to open first, relative to Dir with forward slashes;
	// empty opens the demo.
	Job string
	// Hosts are the names, with port, that a request may call this server by:
	// "localhost:8460".
	Hosts []string
	// Token, when not empty, must come with every call to the API.
	Token string
	// Limits bound what the server does at once; the zero value is
	// DefaultLimits.
	Limits Limits
}

// Limits bound the size, number and length of requests.
type Limits struct {
	Body   int64         // bytes of a request's body
	AtOnce int           // requests worked on at one time
	Queue  int           // requests that may wait for their turn
	Wait   time.Duration // how long one waits at most
	Work   time.Duration // how long one is worked on at most
	Read   time.Duration // for the whole request to come in
}

// defaultLimits are 1 MB, 64 requests worked on and 256 waiting.
func defaultLimits() Limits {
	return Limits{Body: 1 << 20, AtOnce: 64, Queue: 256, Wait: 10 * time.Second, Work: 60 * time.Second, Read: 15 * time.Second}
}

// server answers the page's requests. It is safe for use by several
// goroutines.
type server struct {
	cfg   Config
	root  *os.Root // nothing outside the folder can be reached through it
	slots chan struct{}
	queue chan struct{}
	kept  *keeper
	mux   *http.ServeMux
	// saving is held while files are compared and written.
	saving sync.Mutex
}

// newServer makes a server for a folder. It fails when the folder cannot be opened.
func newServer(cfg Config) (*server, error) {
	if cfg.Limits == (Limits{}) {
		cfg.Limits = defaultLimits()
	}
	dir, err := filepath.Abs(cfg.Dir)
	if err != nil {
		return nil, err
	}
	cfg.Dir = dir
	root, err := os.OpenRoot(dir)
	if err != nil {
		return nil, err
	}
	s := &server{cfg: cfg, root: root, kept: newKeeper(24),
		slots: make(chan struct{}, cfg.Limits.AtOnce), queue: make(chan struct{}, cfg.Limits.AtOnce+cfg.Limits.Queue)}
	s.routes()
	return s, nil
}

// close lets go of the folder.
func (s *server) close() error { return s.root.Close() }

func (s *server) routes() {
	m := http.NewServeMux()
	web, _ := fs.Sub(webFiles, "web")
	files := http.FileServerFS(web)
	m.Handle("GET /{$}", files)
	m.Handle("GET /web/", http.StripPrefix("/web/", filesAlone(files)))
	m.Handle("GET /api/open", s.api(s.open))
	for path, h := range map[string]func(*http.Request, *body) (any, error){
		"work": s.work, "fixes": s.fixes, "page": s.page, "file": s.file, "compare": s.compare,
		"save": s.save, "draft": s.keepDraft, "undraft": s.dropDraft,
	} {
		m.Handle("POST /api/"+path, s.api(h))
	}
	s.mux = m
}

// filesAlone hides the list of files, and knows no name that no file can have.
func filesAlone(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "." || !fs.ValidPath(r.URL.Path) {
			http.NotFound(w, r)
			return
		}
		next.ServeHTTP(w, r)
	})
}

// handler is the whole server, guarded.
func (s *server) handler() http.Handler { return s.guard(s.mux) }
