package web

import (
	"log"
	"net/http"
	"runtime/debug"
	"time"
)

// noted writes down what went wrong: which kind of request, how it ended and after how long. No name, no text
// and no address of anybody is written; of a fault of ours, where in the program it was.
func noted(notes *log.Logger, mux http.Handler) func(http.Handler) http.Handler {
	return func(next http.Handler) http.Handler {
		return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
			began := time.Now()
			seen := &watched{ResponseWriter: w}
			defer func() {
				fault := recover()
				if fault != nil && fault != http.ErrAbortHandler {
					notes.Printf("a fault of ours in %s\n%s", kindOf(mux, r), debug.Stack())
					if seen.status == 0 {
						fails(w, errFault)
					}
					return
				}
				if seen.status == http.StatusInternalServerError {
					notes.Printf("%s: %d after %d ms", kindOf(mux, r), seen.status, time.Since(began).Milliseconds())
				}
			}()
			next.ServeHTTP(seen, r)
		})
	}
}

// kindOf names a request by its route, without what is in it.
func kindOf(mux http.Handler, r *http.Request) string {
	if m, ok := mux.(*http.ServeMux); ok {
		if _, pattern := m.Handler(r); pattern != "" {
			return pattern
		}
	}
	return "a request for no page"
}

// watched sees the status that is sent.
type watched struct {
	http.ResponseWriter
	status int
}

func (w *watched) WriteHeader(status int) {
	if w.status == 0 {
		w.status = status
	}
	w.ResponseWriter.WriteHeader(status)
}

func (w *watched) Write(text []byte) (int, error) {
	if w.status == 0 {
		w.status = http.StatusOK
	}
	return w.ResponseWriter.Write(text)
}

// Unwrap is how the server finds what it can do with a connection.
func (w *watched) Unwrap() http.ResponseWriter { return w.ResponseWriter }
