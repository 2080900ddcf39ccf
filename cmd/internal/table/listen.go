package table

import (
	"context"
	"crypto/rand"
	"encoding/base64"
	"errors"
	"fmt"
	"io"
	"log"
	"net"
	"net/http"
	"strconv"
	"strings"
	"time"
)

// Listen says where a table listens.
type Listen struct {
	Port int  // 0 picks a free one
	LAN  bool // on every address of this machine, for those who have the token
}

// Table is a server that listens.
type Table struct {
	server   *server
	http     *http.Server
	listener net.Listener
	// URL is the address to open: http://localhost:8460/, with #TOKEN behind it
	// on the local network.
	URL string
}

// Start begins to listen. It fails when the port is taken, in one line with a
// way out; nothing is served before Serve.
func Start(cfg Config, l Listen) (*Table, error) {
	if l.Port < 0 || l.Port > 65535 {
		return nil, fmt.Errorf("port: %d is out of range, allowed: 0 to 65535; hint: 0 picks a free one", l.Port)
	}
	address := "127.0.0.1"
	if l.LAN {
		address = ""
	}
	listener, err := net.Listen("tcp", net.JoinHostPort(address, strconv.Itoa(l.Port)))
	if err != nil {
		return nil, listenError(l.Port, err)
	}
	port := listener.Addr().(*net.TCPAddr).Port
	named := func(host string) string { return net.JoinHostPort(host, strconv.Itoa(port)) }
	cfg.Hosts = []string{named("localhost"), named("127.0.0.1"), named("::1")}
	host := "localhost"
	if l.LAN {
		addresses := ownAddresses()
		for _, a := range addresses {
			cfg.Hosts = append(cfg.Hosts, named(a))
		}
		if len(addresses) > 0 {
			host = addresses[0]
		}
		if cfg.Token, err = newToken(); err != nil {
			listener.Close()
			return nil, err
		}
	}
	t := &Table{listener: listener, URL: "http://" + named(host) + "/"}
	if cfg.Token != "" {
		t.URL += "#" + cfg.Token
	}
	if t.server, err = newServer(cfg); err != nil {
		listener.Close()
		return nil, err
	}
	limits := t.server.cfg.Limits
	t.http = &http.Server{
		Handler:           t.server.handler(),
		ReadHeaderTimeout: min(5*time.Second, limits.Read),
		ReadTimeout:       limits.Read,
		WriteTimeout:      limits.Read + limits.Wait + limits.Work + 10*time.Second,
		IdleTimeout:       60 * time.Second,
		MaxHeaderBytes:    16 << 10,
		ErrorLog:          log.New(io.Discard, "", 0),
	}
	return t, nil
}

func listenError(port int, err error) error {
	why := err.Error()
	var op *net.OpError
	if errors.As(err, &op) && op.Err != nil {
		why = op.Err.Error()
	}
	low := strings.ToLower(why)
	switch {
	case strings.Contains(low, "in use") || strings.Contains(low, "only one usage"):
		return fmt.Errorf("port: %d is taken by another program, or by another silowright serve; hint: --port 0 picks a free one", port)
	case strings.Contains(low, "permission") || strings.Contains(low, "denied"):
		return fmt.Errorf("port: %d may not be listened on; hint: a port above 1023, or --port 0 for a free one", port)
	}
	return fmt.Errorf("port: %d cannot be listened on: %s; hint: --port 0 picks a free one", port, why)
}

// ownAddresses are this machine's addresses on the local network, IPv4 first.
func ownAddresses() []string {
	var four, six []string
	all, err := net.InterfaceAddrs()
	if err != nil {
		return nil
	}
	for _, a := range all {
		n, ok := a.(*net.IPNet)
		switch {
		case !ok || n.IP.IsLoopback() || n.IP.IsLinkLocalUnicast():
		case n.IP.To4() != nil:
			four = append(four, n.IP.String())
		default:
			six = append(six, n.IP.String())
		}
	}
	return append(four, six...)
}

// newToken is 128 bits that nobody can guess.
func newToken() (string, error) {
	b := make([]byte, 16)
	if _, err := rand.Read(b); err != nil {
		return "", fmt.Errorf("token: none can be made: %w", err)
	}
	return base64.RawURLEncoding.EncodeToString(b), nil
}

// linger is how long running requests may take to end when the server stops.
const linger = 20 * time.Second

// Serve answers requests until ctx ends; then it takes no more, lets those
// that run end, and returns nil.
func (t *Table) Serve(ctx context.Context) error {
	defer t.server.close()
	failed := make(chan error, 1)
	go func() { failed <- t.http.Serve(t.listener) }()
	select {
	case err := <-failed:
		return err
	case <-ctx.Done():
	}
	rest, cancel := context.WithTimeout(context.WithoutCancel(ctx), linger)
	defer cancel()
	if err := t.http.Shutdown(rest); err != nil {
		_ = t.http.Close()
		return fmt.Errorf("stopping: a request did not end within %d seconds", int(linger.Seconds()))
	}
	return nil
}
