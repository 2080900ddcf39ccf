package table

import (
	"bytes"
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"silowright/cmd/internal/demo"
)

// FuzzForms: whatever is sent to the table, in path, query, headers or body, it
// answers with a page, with JSON or with a refusal in one line; it never
// panics and never touches a file outside its folder.
func FuzzForms(f *testing.F) {
	for _, s := range formSeeds() {
		f.Add(s.method, s.target, s.origin, s.site, s.kind, s.token, s.body)
	}
	f.Fuzz(func(t *testing.T, method, target, origin, site, kind, token string, body []byte) {
		shop := t.TempDir()
		dir := filepath.Join(shop, "served")
		for name, text := range map[string]string{"secret.toml": "drum", "served/job.toml": string(demo.Job), "served/prices.csv": string(demo.Prices), "served/cove/job.toml": "[[drum]]"} {
			path := filepath.Join(shop, name)
			if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		if err := os.Symlink(shop, filepath.Join(dir, "out")); err != nil {
			t.Fatal(err)
		}
		const host = "localhost:8460"
		s, err := newServer(Config{Dir: dir, Job: "job.toml", Hosts: []string{host}, Token: "t"})
		if err != nil {
			t.Fatal(err)
		}
		defer func() { _ = s.close() }()
		u, err := url.ParseRequestURI(target)
		if err != nil {
			return
		}
		r, err := http.NewRequest(method, "http://"+host+"/", bytes.NewReader(body))
		if err != nil {
			return
		}
		u.Scheme, u.Host = "http", host
		r.URL, r.RequestURI = u, target
		for name, v := range map[string]string{"Origin": origin, "Sec-Fetch-Site": site, "Content-Type": kind, tokenHeader: token} {
			if v != "" {
				r.Header.Set(name, v)
			}
		}
		w := httptest.NewRecorder()
		s.handler().ServeHTTP(w, r)
		got := w.Body.Bytes()
		if w.Code >= 500 {
			t.Errorf("%d: %.300s", w.Code, got)
		}
		if bytes.Contains(got, []byte(shop)) {
			t.Errorf("an answer tells where the folder lies: %.300s", got)
		}
		if strings.HasPrefix(w.Header().Get("Content-Type"), "application/json") {
			var a struct{ Error any }
			if err := json.Unmarshal(got, &a); err != nil {
				t.Errorf("%d: %v in %.300s", w.Code, err, got)
			}
			if w.Code >= 400 {
				says, _ := a.Error.(map[string]any)
				text, _ := says["text"].(string)
				if text == "" || strings.ContainsAny(text, "\n\r") {
					t.Errorf("%d is refused as %q", w.Code, text)
				}
			}
		}
		entries, err := os.ReadDir(shop)
		if err != nil || len(entries) != 2 {
			t.Errorf("files beside the folder: %v, %v", entries, err)
		}
		if text, err := os.ReadFile(filepath.Join(shop, "secret.toml")); err != nil || string(text) != "drum" {
			t.Errorf("a file outside was changed to %.100q, %v", text, err)
		}
	})
}

// form is a call.
type form struct {
	method, target, origin, site, kind, token string
	body                                      []byte
}

// formSeeds are the page's own calls and some that are not.
func formSeeds() []form {
	own := func(what string, body any) form {
		data, _ := json.Marshal(body)
		return form{"POST", "/api/" + what, "http://localhost:8460", "same-origin", "application/json", "t", data}
	}
	texts := map[string]any{"path": "job.toml", "job": string(demo.Job), "prices": string(demo.Prices)}
	with := func(more map[string]any) map[string]any {
		out := map[string]any{}
		for _, m := range []map[string]any{texts, more} {
			for k, v := range m {
				out[k] = v
			}
		}
		return out
	}
	out := []form{
		{method: "GET", target: "/"}, {method: "GET", target: "/web/page.js"}, {method: "GET", target: "/web/"}, {method: "GET", target: "/web/../server.go"},
		{method: "GET", target: "/api/open", token: "t"}, {method: "GET", target: "/api/open?job=cove/job.toml", token: "t"}, {method: "GET", target: "/api/open?job=out/secret.toml", token: "t"},
		{method: "GET", target: "/api/open?job=..%2fsecret.toml", token: "t"}, {method: "GET", target: "/api/open", token: "no"}, {method: "HEAD", target: "//x", token: "t"},
		own("work", with(map[string]any{"want": []string{"draw", "cost", "water"}})),
		own("work", with(map[string]any{"edits": []edit{{"outlet.saw", "nan"}, {"drum[0].wall", "-1"}}})),
		own("fixes", with(map[string]any{"id": "outlet.saw-pipe", "drum": "Cove"})),
		own("page", with(map[string]any{"id": "findings", "page": 0})), own("page", with(map[string]any{"id": "steps", "page": -1})), own("page", with(map[string]any{"id": "drawings", "page": 1 << 40})),
		own("file", with(map[string]any{"name": "shop-pack.pdf"})), own("file", with(map[string]any{"name": "../x"})), own("file", with(map[string]any{"name": "report.json"})),
		own("compare", map[string]any{"a": texts, "b": map[string]any{"job": "", "prices": ""}}), own("compare", map[string]any{"a": nil}),
		own("save", with(map[string]any{"path": "new.toml"})), own("save", with(map[string]any{"path": "../new.toml"})), own("save", with(map[string]any{"path": "out/new.toml"})), own("save", with(map[string]any{"path": "job.toml", "revision": "x"})),
		own("draft", texts), own("undraft", texts), own("draft", with(map[string]any{"path": "/etc/x.toml"})), own("work", nil), own("work", []int{1}), own("nothing", texts),
	}
	stranger := own("save", texts)
	stranger.origin, stranger.site = "http://elsewhere.example", "cross-site"
	form2 := own("work", texts)
	form2.kind, form2.body = "application/x-www-form-urlencoded", []byte("job=1")
	return append(out, stranger, form2)
}
