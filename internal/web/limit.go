package web

import (
	"bytes"
	"context"
	"errors"
	"io"
	"net/http"
	"strings"
	"sync"

	"sipsum/internal/embedded"
)

// mostRequest is what a request may say, in bytes.
var mostRequest = int64(embedded.Limit("request"))

// bounded hears a request to its end before anything is done about it, and refuses one that has no end. Whoever speaks
// slowly keeps nobody waiting.
func bounded(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.ContentLength > mostRequest {
			tooLong(w)
			return
		}
		body, err := io.ReadAll(http.MaxBytesReader(w, r.Body, mostRequest))
		var more *http.MaxBytesError
		switch {
		case errors.As(err, &more):
			tooLong(w)
			return
		case err != nil:
			http.Error(w, "this came too slowly, or not to its end", http.StatusRequestTimeout)
			return
		}
		r.Body = io.NopCloser(bytes.NewReader(body))
		next.ServeHTTP(w, r)
	})
}

func tooLong(w http.ResponseWriter) {
	w.Header().Set("Connection", "close") // what is still to come nobody reads
	http.Error(w, "this is longer than a drink file may be", http.StatusRequestEntityTooLarge)
}

// turns lets few requests calculate at once and the others wait, and stops what something newer of the same browser about
// the same drink has taken the place of.
type turns struct {
	running chan struct{} // holds one for each that calculates
	waiting chan struct{} // and for each that calculates or waits

	mu     sync.Mutex
	latest map[string]*turn // by browser and what it asks
}

// turn is a request that may be stopped.
type turn struct{ stop context.CancelFunc }

func newTurns() *turns {
	atOnce := embedded.Limit("requests at once")
	return &turns{
		running: make(chan struct{}, atOnce), waiting: make(chan struct{}, atOnce+embedded.Limit("requests waiting")),
		latest: map[string]*turn{},
	}
}

// take answers requests in turn. An answer is written down before it is sent: who takes it slowly holds no turn.
func (t *turns) take(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if costsNothing(r) {
			next.ServeHTTP(w, r)
			return
		}
		ctx, done := t.newest(r)
		defer done()
		written := &answer{header: w.Header().Clone()}
		if err := t.hold(ctx); err != nil {
			fails(w, err)
			return
		}
		func() {
			defer t.release()
			next.ServeHTTP(written, r.WithContext(ctx))
		}()
		written.send(w)
	})
}

// newest gives a request its time, and ends what it is newer than.
func (t *turns) newest(r *http.Request) (context.Context, func()) {
	ctx, stop := context.WithTimeout(r.Context(), longestRequest)
	if r.Method != http.MethodPost || strings.HasSuffix(r.URL.Path, saving) {
		return ctx, stop // what is looked at, or kept, is not replaced by the next
	}
	session, _ := r.Context().Value(sessionKey{}).(string)
	key, mine := session+" "+r.URL.Path, &turn{stop}
	t.mu.Lock()
	defer t.mu.Unlock()
	if before := t.latest[key]; before != nil {
		before.stop()
	}
	t.latest[key] = mine
	return ctx, func() {
		stop()
		t.mu.Lock()
		defer t.mu.Unlock()
		if t.latest[key] == mine {
			delete(t.latest, key)
		}
	}
}

// errFull says that too many wait.
var errFull = errors.New("too many requests wait")

// hold waits for a turn.
func (t *turns) hold(ctx context.Context) error {
	select {
	case t.waiting <- struct{}{}:
	default:
		return errFull
	}
	select {
	case t.running <- struct{}{}:
		return nil
	case <-ctx.Done():
		<-t.waiting
		return ctx.Err()
	}
}

func (t *turns) release() {
	<-t.running
	<-t.waiting
}

// costsNothing reports whether a request is for what lies ready.
func costsNothing(r *http.Request) bool {
	return strings.HasPrefix(r.URL.Path, "/assets/") || r.URL.Path == "/hues.css"
}

// answer is what is to be sent.
type answer struct {
	header http.Header
	status int
	body   bytes.Buffer
}

func (a *answer) Header() http.Header { return a.header }

func (a *answer) WriteHeader(status int) {
	if a.status == 0 {
		a.status = status
	}
}

func (a *answer) Write(text []byte) (int, error) {
	a.WriteHeader(http.StatusOK)
	return a.body.Write(text)
}

func (a *answer) send(w http.ResponseWriter) {
	h := w.Header()
	clear(h)
	for name, values := range a.header {
		h[name] = values
	}
	a.WriteHeader(http.StatusOK)
	w.WriteHeader(a.status)
	_, _ = w.Write(a.body.Bytes()) // somebody who has left needs no words
}
