package web

import (
	"io"
	"log"
	"net"
	"net/http"
	"slices"
	"strings"
	"time"

	"sipsum/internal/embedded"
)

// Door says who may come in.
type Door struct {
	Hosts []string // the names by which a browser may know this machine, beside the address that it reached
	Keys  *Keys    // whoever comes needs one; nil: who reaches the address may come in
}

// Loopback are the names of this machine for itself.
func Loopback() []string { return []string{"localhost", "127.0.0.1", "::1"} }

// Limits of a connection, from data/size_limits.csv.
var (
	longestRequest = time.Duration(embedded.Limit("seconds of a request")) * time.Second
	longestSaying  = time.Duration(embedded.Limit("seconds to say it")) * time.Second
)

// mostHeader is what the header of a request may hold, in bytes: our own bound, browsers send a tenth.
const mostHeader = 32 << 10

// Serving is the server of the page behind a door. What goes wrong it writes to a log, without anything that
// somebody typed.
func (s *Server) Serving(door Door, faults io.Writer) *http.Server {
	notes := log.New(faults, "sipsum: ", 0)
	mux := s.Handler()
	handler := mux
	for _, wrap := range []func(http.Handler) http.Handler{ // innermost first
		newTurns().take, bounded, door.Keys.known, sameOrigin, door.answered, locked, noted(notes, mux),
	} {
		handler = wrap(handler)
	}
	return &http.Server{
		Handler: handler, ErrorLog: notes, MaxHeaderBytes: mostHeader,
		ReadHeaderTimeout: longestSaying, ReadTimeout: longestSaying, IdleTimeout: longestRequest,
		WriteTimeout: longestSaying + longestRequest + longestSaying, // it is said, done and taken away
	}
}

// policy lets a page have the style, the scripts and the pictures of this server, and nothing else of anybody.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

// locked writes the headers that keep a page to itself.
func locked(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Cache-Control", "no-store")
		next.ServeHTTP(w, r)
	})
}

// answered lets those in who call this machine by a name of its own: a name of somebody else's that leads here is how a
// page of theirs would read ours.
func (d Door) answered(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if !d.knows(r) {
			http.Error(w, "this machine is not called so: open the address that sipsum serve prints", http.StatusMisdirectedRequest)
			return
		}
		next.ServeHTTP(w, r)
	})
}

func (d Door) knows(r *http.Request) bool {
	host := hostOf(r.Host)
	if slices.ContainsFunc(d.Hosts, func(known string) bool { return strings.EqualFold(known, host) }) {
		return true
	}
	reached, ok := r.Context().Value(http.LocalAddrContextKey).(*net.TCPAddr)
	return ok && reached.IP.Equal(net.ParseIP(host))
}

// hostOf gives the name of a host without its port and without the brackets of an address.
func hostOf(host string) string {
	if name, _, err := net.SplitHostPort(host); err == nil {
		return name
	}
	if strings.HasPrefix(host, "[") && strings.HasSuffix(host, "]") {
		return host[1 : len(host)-1]
	}
	return host
}

// sameOrigin refuses what a page of somebody else sends: every change, and what it would have of us in a page of its own. A
// link to here may be followed.
func sameOrigin(next http.Handler) http.Handler {
	links := http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		site, mode := r.Header.Get("Sec-Fetch-Site"), r.Header.Get("Sec-Fetch-Mode")
		if (site == "cross-site" || site == "same-site") && mode != "navigate" {
			forbidden(w, r)
			return
		}
		next.ServeHTTP(w, r)
	})
	protection := http.NewCrossOriginProtection()
	protection.SetDenyHandler(http.HandlerFunc(forbidden))
	return protection.Handler(links)
}

func forbidden(w http.ResponseWriter, _ *http.Request) {
	http.Error(w, "another page sent this, and only pages of sipsum may: open the address that sipsum serve prints", http.StatusForbidden)
}
