package table

import (
	"context"
	"crypto/subtle"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"mime"
	"net/http"
	"net/url"
	"slices"
	"strings"
	"time"
)

// policy lets the page load its own files and nothing else.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; connect-src 'self'; " +
	"font-src 'self'; object-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

// tokenHeader is the header the token comes in.
const tokenHeader = "X-Silowright-Token"

// problem is an answer that is not what was asked for.
type problem struct {
	status int
	says   string
	more   any // a member for the answer beside its error
}

func (p *problem) Error() string { return p.says }

func refuse(status int, format string, args ...any) *problem {
	return &problem{status: status, says: fmt.Sprintf(format, args...)}
}

// guard sets what every answer carries and turns away what does not come from
// the page itself.
func (s *server) guard(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("X-Frame-Options", "DENY")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Cross-Origin-Embedder-Policy", "require-corp")
		h.Set("Permissions-Policy", "camera=(), microphone=(), geolocation=()")
		h.Set("Cache-Control", "no-store")
		if !slices.Contains(s.cfg.Hosts, strings.ToLower(r.Host)) {
			fail(w, refuse(http.StatusMisdirectedRequest, "host: this server is not called that; hint: open the address that silowright serve printed"))
			return
		}
		api := strings.HasPrefix(r.URL.Path, "/api/")
		if site := r.Header.Get("Sec-Fetch-Site"); api && site != "" && site != "same-origin" && site != "none" {
			fail(w, refuse(http.StatusForbidden, "origin: the call comes from another page; hint: open the address that silowright serve printed"))
			return
		}
		if r.Method == http.MethodPost && !s.ownPage(r) {
			fail(w, refuse(http.StatusForbidden, "origin: the call does not come from the page; hint: open the address that silowright serve printed"))
			return
		}
		if api && s.cfg.Token != "" && subtle.ConstantTimeCompare([]byte(r.Header.Get(tokenHeader)), []byte(s.cfg.Token)) != 1 {
			fail(w, refuse(http.StatusUnauthorized, "token: missing or wrong; hint: open the whole address that silowright serve printed, with what follows #"))
			return
		}
		next.ServeHTTP(w, r)
	})
}

// ownPage reports whether a call that may change something was made by the
// page: by its origin and by what the browser says of it.
func (s *server) ownPage(r *http.Request) bool {
	if site := r.Header.Get("Sec-Fetch-Site"); site != "" && site != "same-origin" {
		return false
	}
	o, err := url.Parse(r.Header.Get("Origin"))
	return err == nil && o.Scheme == "http" && o.Host != "" && strings.EqualFold(o.Host, r.Host) && slices.Contains(s.cfg.Hosts, strings.ToLower(o.Host))
}

// body is what a call carries; each call reads the members it needs.
type body struct {
	Path     *string  `json:"path"` // of the job file, relative to the folder
	Job      string   `json:"job"`
	Prices   string   `json:"prices"`
	Edits    []edit   `json:"edits"`
	Want     []string `json:"want"`
	ID       string   `json:"id"`
	Drum     string   `json:"drum"`
	Page     int      `json:"page"`
	Name     string   `json:"name"`
	Revision string   `json:"revision"`
	A        *variant `json:"a"`
	B        *variant `json:"b"`
}

type edit struct {
	Key   string `json:"key"`
	Value string `json:"value"`
}

type variant struct {
	Path   *string `json:"path"`
	Job    string  `json:"job"`
	Prices string  `json:"prices"`
}

// file is an answer that is not JSON.
type file struct {
	name, kind string
	data       []byte
}

// api bounds a call and writes what h answers.
func (s *server) api(h func(*http.Request, *body) (any, error)) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		b := &body{}
		if r.Method == http.MethodPost {
			if err := s.read(w, r, b); err != nil {
				fail(w, err)
				return
			}
		}
		out, err := s.bounded(r, b, h)
		if err != nil {
			fail(w, err)
			return
		}
		if f, ok := out.(file); ok {
			sendFile(w, f)
			return
		}
		send(w, http.StatusOK, out)
	})
}

// read takes in a call's body: JSON, of a bounded size.
func (s *server) read(w http.ResponseWriter, r *http.Request, b *body) error {
	if kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type")); err != nil || kind != "application/json" {
		return refuse(http.StatusUnsupportedMediaType, "content type: only application/json is read")
	}
	large := refuse(http.StatusRequestEntityTooLarge, "body: larger than %d kB; hint: a job file is a few kilobytes", s.cfg.Limits.Body>>10)
	if r.ContentLength > s.cfg.Limits.Body {
		w.Header().Set("Connection", "close")
		return large
	}
	data, err := io.ReadAll(http.MaxBytesReader(w, r.Body, s.cfg.Limits.Body))
	if err != nil {
		var over *http.MaxBytesError
		if errors.As(err, &over) {
			return large
		}
		w.Header().Set("Connection", "close")
		return refuse(http.StatusRequestTimeout, "body: it did not come in whole")
	}
	if err := json.Unmarshal(data, b); err != nil {
		return refuse(http.StatusBadRequest, "body: is not the JSON this call reads")
	}
	return nil
}

// bounded works on a call when its turn comes and no longer than it may take.
func (s *server) bounded(r *http.Request, b *body, h func(*http.Request, *body) (any, error)) (any, error) {
	busy := refuse(http.StatusServiceUnavailable, "busy: too many calls at once; hint: try again in a moment")
	select {
	case s.queue <- struct{}{}:
	default:
		return nil, busy
	}
	wait := time.NewTimer(s.cfg.Limits.Wait)
	defer wait.Stop()
	select {
	case s.slots <- struct{}{}:
	case <-wait.C:
		<-s.queue
		return nil, busy
	case <-r.Context().Done():
		<-s.queue
		return nil, refuse(http.StatusRequestTimeout, "the caller went away")
	}
	ctx, cancel := context.WithTimeout(r.Context(), s.cfg.Limits.Work)
	defer cancel()
	type answer struct {
		out any
		err error
	}
	done := make(chan answer, 1)
	go func() {
		// the turn is kept until the work is over, whoever still waits for it
		defer func() { <-s.slots; <-s.queue }()
		defer func() {
			if p := recover(); p != nil {
				done <- answer{nil, refuse(http.StatusInternalServerError, "this job cannot be worked out: %v; hint: take the last change back", p)}
			}
		}()
		out, err := h(r.WithContext(ctx), b)
		done <- answer{out, err}
	}()
	select {
	case a := <-done:
		return a.out, a.err
	case <-ctx.Done():
		return nil, refuse(http.StatusServiceUnavailable, "this takes too long; hint: fewer silos or a smaller change")
	}
}

// fail answers with an error.
func fail(w http.ResponseWriter, err error) {
	p := &problem{}
	if !errors.As(err, &p) {
		p = refuse(http.StatusUnprocessableEntity, "%s", oneLine(err.Error()))
	}
	out := map[string]any{"error": map[string]string{"text": p.says}}
	if more, ok := p.more.(map[string]any); ok {
		for k, v := range more {
			out[k] = v
		}
	}
	send(w, p.status, out)
}

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

func send(w http.ResponseWriter, status int, v any) {
	data, err := json.Marshal(v) // escapes <, > and & too
	if err != nil {
		status, data = http.StatusInternalServerError, []byte(`{"error":{"text":"the answer cannot be written"}}`)
	}
	w.Header().Set("Content-Type", "application/json; charset=utf-8")
	w.WriteHeader(status)
	_, _ = w.Write(data)
}

func sendFile(w http.ResponseWriter, f file) {
	h := w.Header()
	h.Set("Content-Type", f.kind)
	h.Set("Content-Disposition", mime.FormatMediaType("attachment", map[string]string{"filename": f.name}))
	h.Set("Content-Length", fmt.Sprint(len(f.data)))
	w.WriteHeader(http.StatusOK)
	_, _ = w.Write(f.data)
}
