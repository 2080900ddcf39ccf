package table

import (
	"context"
	"net/http"
	"strings"
	"testing"
	"time"
)

// A port that is taken is told in one line with a way out.
func TestPortTaken(t *testing.T) {
	one, err := Start(Config{Dir: t.TempDir()}, Listen{})
	if err != nil {
		t.Fatal(err)
	}
	defer one.listener.Close()
	port := one.listener.Addr().String()
	_, err = Start(Config{Dir: t.TempDir()}, Listen{Port: portOf(t, port)})
	if err == nil || !strings.Contains(err.Error(), "is taken by another program, or by another silowright serve; hint: --port 0 picks a free one") || strings.Contains(err.Error(), "\n") {
		t.Errorf("%v", err)
	}
	for _, bad := range []int{-1, 65536} {
		if _, err := Start(Config{Dir: t.TempDir()}, Listen{Port: bad}); err == nil || !strings.Contains(err.Error(), "out of range") {
			t.Errorf("%d: %v", bad, err)
		}
	}
}

func portOf(t *testing.T, address string) int {
	t.Helper()
	n := 0
	for _, c := range address[strings.LastIndexByte(address, ':')+1:] {
		n = 10*n + int(c-'0')
	}
	return n
}

// On the local network every call needs the token of the address printed; by
// default only this machine is let in at all.
func TestToken(t *testing.T) {
	tb, err := Start(Config{Dir: t.TempDir()}, Listen{LAN: true})
	if err != nil {
		t.Fatal(err)
	}
	go func() { _ = tb.Serve(t.Context()) }()
	_, token, ok := strings.Cut(tb.URL, "#")
	if !ok || len(token) < 20 {
		t.Fatalf("the address %s has no token", tb.URL)
	}
	url := "http://127.0.0.1:" + tb.listener.Addr().String()[strings.LastIndexByte(tb.listener.Addr().String(), ':')+1:] + "/"
	for sent, want := range map[string]int{"": 401, "wrong": 401, token: 200} {
		if code := ask(t, url, "work", workAsk{demoTexts, nil, nil}, nil, func(r *http.Request) { r.Header.Set(tokenHeader, sent) }); code != want {
			t.Errorf("token %q: %d, want %d", sent, code, want)
		}
	}
	plain, err := Start(Config{Dir: t.TempDir()}, Listen{})
	if err != nil {
		t.Fatal(err)
	}
	defer plain.listener.Close()
	if a := plain.listener.Addr().String(); !strings.HasPrefix(a, "127.0.0.1:") {
		t.Errorf("by default it listens on %s", a)
	}
}

// Told to stop, it ends what runs and takes no more.
func TestStops(t *testing.T) {
	tb, err := Start(Config{Dir: t.TempDir()}, Listen{})
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(t.Context())
	ended := make(chan error, 1)
	go func() { ended <- tb.Serve(ctx) }()
	code := make(chan int, 1)
	go func() {
		code <- ask(t, tb.URL, "page", map[string]any{"job": demoTexts.Job, "prices": demoTexts.Prices, "page": 1}, nil)
	}()
	for len(tb.server.slots) == 0 && len(code) == 0 { // until the request is under way
		time.Sleep(time.Millisecond)
	}
	stop()
	if err := <-ended; err != nil {
		t.Errorf("%v", err)
	}
	if got := <-code; got != 200 {
		t.Errorf("the request under way: %d", got)
	}
	if _, err := http.Get(tb.URL); err == nil {
		t.Error("it still answers")
	}
}
