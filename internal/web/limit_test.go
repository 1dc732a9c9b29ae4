package web_test

import (
	"bytes"
	"context"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/fail"
	"sipsum/internal/sheet"
	"sipsum/internal/web"
	"sipsum/internal/workshop"
)

// cook is a kitchen of which a test says what happens when a drink is calculated.
type cook struct {
	web.Kitchen
	sheet func(ctx context.Context, file web.File) error
}

func (c cook) Sheet(ctx context.Context, file web.File, _ web.Ask) (*sheet.Sheet, error) {
	return nil, c.sheet(ctx, file)
}

func (c cook) Demos() []web.Demo { return nil }

// safe is a log that several may write.
type safe struct {
	mu   sync.Mutex
	text bytes.Buffer
}

func (s *safe) Write(p []byte) (int, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.text.Write(p)
}

func (s *safe) String() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.text.String()
}

// house serves a folder of its own with one drink in it, behind a door, in this process.
func house(t *testing.T, door web.Door, calculates func(context.Context, web.File) error) (server *httptest.Server, log *safe) {
	t.Helper()
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "small.yaml"), []byte(small), 0o644))
	folder, err := workshop.Open(dir, 1<<20)
	require.NoError(t, err)
	t.Cleanup(func() { folder.Close() })
	log = &safe{}
	server = httptest.NewUnstartedServer(nil)
	server.Config = web.New(cook{sheet: calculates}, folder).Serving(door, log)
	server.Start()
	t.Cleanup(server.Close)
	return server, log
}

// person is a browser: it keeps its cookies and follows no links by itself.
func person(t *testing.T) *http.Client {
	t.Helper()
	jar, err := cookiejar.New(nil)
	require.NoError(t, err)
	return &http.Client{Jar: jar, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
}

// sent posts a form as a browser does and gives the status; 0 if there was none.
func sent(t *testing.T, who *http.Client, address string, form url.Values) int {
	t.Helper()
	answer, err := who.PostForm(address, form)
	if err != nil {
		return 0
	}
	answer.Body.Close()
	return answer.StatusCode
}

// Newer input of the same browser about the same drink stops the run of the older; what another browser, or another
// drink, asked for goes on.
func TestNewerInputStopsTheRunBefore(t *testing.T) {
	began, release := make(chan string, 10), make(chan struct{})
	server, _ := house(t, web.Door{Hosts: web.Loopback()}, func(ctx context.Context, file web.File) error {
		text := string(file.Text)
		began <- text
		if text == "last" {
			return fail.New(fail.Wrong, "last", "")
		}
		select {
		case <-ctx.Done():
			return ctx.Err()
		case <-release:
			return fail.New(fail.Wrong, "released", "")
		}
	})
	me, other := person(t), person(t)
	for _, who := range []*http.Client{me, other} { // a browser has its session before it edits
		answer, err := who.Get(server.URL + "/")
		require.NoError(t, err)
		answer.Body.Close()
	}
	var first, others atomic.Int64
	var all sync.WaitGroup
	all.Go(func() {
		first.Store(int64(sent(t, me, server.URL+"/drink/small.yaml/print", url.Values{"text": {"first"}})))
	})
	require.Equal(t, "first", <-began)
	all.Go(func() {
		others.Store(int64(sent(t, other, server.URL+"/drink/small.yaml/print", url.Values{"text": {"other"}})))
	})
	require.Equal(t, "other", <-began)
	status := sent(t, me, server.URL+"/drink/small.yaml/print", url.Values{"text": {"last"}}) // both turns were taken: it comes by, for it stops the first
	assert.Equal(t, http.StatusUnprocessableEntity, status)
	assert.Equal(t, "last", <-began)
	close(release)
	all.Wait()
	assert.EqualValues(t, http.StatusServiceUnavailable, first.Load(), "the older was stopped")
	assert.EqualValues(t, http.StatusUnprocessableEntity, others.Load(), "the other browser's went on")
}

// Only so many calculate at once; the rest wait for their turn, so many of them, and more are sent away. The
// style of the page waits for nobody.
func TestFewCalculateAtOnce(t *testing.T) {
	const atOnce, waiting = 2, 100 // data/size_limits.csv
	var now, most, done atomic.Int64
	release := make(chan struct{})
	server, _ := house(t, web.Door{Hosts: web.Loopback()}, func(context.Context, web.File) error {
		n := now.Add(1)
		for seen := most.Load(); n > seen && !most.CompareAndSwap(seen, n); seen = most.Load() {
		}
		<-release
		now.Add(-1)
		done.Add(1)
		return fail.New(fail.Wrong, "done", "")
	})
	statuses := make(chan int, 200)
	var all sync.WaitGroup
	for range atOnce + waiting + 10 {
		all.Go(func() {
			statuses <- sent(t, person(t), server.URL+"/drink/small.yaml/print", url.Values{"text": {"x"}})
		})
	}
	sentAway := map[int]int{}
	for range 10 {
		sentAway[<-statuses]++
	}
	assert.Equal(t, map[int]int{http.StatusServiceUnavailable: 10}, sentAway)
	answer, err := http.Get(server.URL + "/assets/style.css")
	require.NoError(t, err)
	answer.Body.Close()
	assert.Equal(t, 200, answer.StatusCode)
	close(release)
	all.Wait()
	assert.EqualValues(t, atOnce, most.Load())
	assert.EqualValues(t, atOnce+waiting, done.Load())
}

// Who has left frees the turn.
func TestWhoHasLeftIsNotCalculatedFor(t *testing.T) {
	began, ended := make(chan struct{}, 1), make(chan error, 1)
	server, _ := house(t, web.Door{Hosts: web.Loopback()}, func(ctx context.Context, _ web.File) error {
		began <- struct{}{}
		<-ctx.Done()
		ended <- ctx.Err()
		return ctx.Err()
	})
	ctx, leave := context.WithCancel(t.Context())
	r, err := http.NewRequestWithContext(ctx, http.MethodGet, server.URL+"/drink/small.yaml/print", nil)
	require.NoError(t, err)
	go func() {
		if answer, err := http.DefaultClient.Do(r); err == nil {
			answer.Body.Close()
		}
	}()
	<-began
	leave()
	select {
	case err := <-ended:
		require.ErrorIs(t, err, context.Canceled)
	case <-time.After(10 * time.Second):
		t.Fatal("it goes on for nobody")
	}
}

// A fault of ours is told as one, in the page without its words, in the log by its route and where in the program it was; no
// log says what anybody typed, how a drink is called or what a key is.
func TestLogsHaveNoContents(t *testing.T) {
	server, log := house(t, web.Door{Hosts: web.Loopback()}, func(_ context.Context, file web.File) error {
		if strings.Contains(string(file.Text), "panic") {
			panic("with SECRETTEXT in it")
		}
		return fail.New(fail.Failed, "SECRETTEXT on the disk", "")
	})
	who := person(t)
	for _, text := range []string{"panic SECRETTEXT", "SECRETTEXT"} {
		answer, err := who.PostForm(server.URL+"/drink/SECRETNAME.yaml/print?q=SECRETQUERY", url.Values{"text": {text}})
		require.NoError(t, err)
		answer.Body.Close()
		assert.Equal(t, http.StatusInternalServerError, answer.StatusCode)
	}
	server.Close()
	said := log.String()
	assert.Contains(t, said, "POST /drink/{name}/print: 500 after")
	assert.Contains(t, said, "a fault of ours in POST /drink/{name}/print")
	assert.Contains(t, said, "limit_test.go", "where it was")
	assert.NotContains(t, said, "SECRET")
	assert.NotContains(t, said, "127.0.0.1")
}

func portOf(t *testing.T, address string) string {
	t.Helper()
	u, err := url.Parse(address)
	require.NoError(t, err)
	return u.Port()
}

var hiddenToken = regexp.MustCompile(`name="token" value="([^"]+)"`)

// A key opens the page to one browser, once; a look at its address does not use it up, and there is a new one after it.
func TestAKeyIsGoodOnce(t *testing.T) {
	var tokens []string
	server, log := house(t, web.Door{Hosts: web.Loopback(), Keys: web.NewKeys(func(token string) { tokens = append(tokens, token) })},
		func(context.Context, web.File) error { return fail.New(fail.Wrong, "CALCULATED", "") })
	require.Len(t, tokens, 1)
	first := tokens[0]
	stranger := person(t)
	for _, path := range []string{"/", "/drink/small.yaml", "/drink/small.yaml/send/file", "/drink/small.yaml/print", "/foods", "/nothing"} {
		answer, err := stranger.Get(server.URL + path)
		status, body := read(t, answer, err)
		assert.Equal(t, http.StatusUnauthorized, status, path)
		assert.NotContains(t, body, "lemon", path)
		assert.NotContains(t, body, "CALCULATED", path)
		assert.NotContains(t, body, first, path)
		assert.Empty(t, answer.Cookies(), path)
	}
	assert.Equal(t, http.StatusUnauthorized, sent(t, stranger, server.URL+"/new", url.Values{"name": {"x"}}))
	for _, wrong := range []string{"", "x", strings.ToLower(first), first + "A", first[:25]} {
		assert.Equal(t, http.StatusUnauthorized, sent(t, stranger, server.URL+web.Entrance, url.Values{"token": {wrong}}), "%q", wrong)
	}
	forged := &http.Cookie{Name: "sipsum-" + portOf(t, server.URL), Value: strings.Repeat("A", 26)}
	r, err := http.NewRequestWithContext(t.Context(), http.MethodGet, server.URL+"/", nil)
	require.NoError(t, err)
	r.AddCookie(forged)
	answer, err := http.DefaultClient.Do(r)
	status, _ := read(t, answer, err)
	assert.Equal(t, http.StatusUnauthorized, status)

	me := person(t)
	for range 3 { // a program that looks at links before me
		answer, err := http.Get(server.URL + web.Entrance + "?token=" + first)
		status, body := read(t, answer, err)
		assert.Equal(t, 200, status)
		assert.Equal(t, first, hiddenToken.FindStringSubmatch(body)[1])
		assert.Equal(t, "no-referrer", answer.Header.Get("Referrer-Policy"), "the key in the address is told to nobody")
	}
	answer, err = me.PostForm(server.URL+web.Entrance, url.Values{"token": {first}})
	status, _ = read(t, answer, err)
	assert.Equal(t, http.StatusSeeOther, status)
	assert.Equal(t, "/", answer.Header.Get("Location"), "the key is not in the address that is stayed at")
	require.Len(t, answer.Cookies(), 1)
	c := answer.Cookies()[0]
	assert.True(t, c.HttpOnly)
	assert.Equal(t, http.SameSiteStrictMode, c.SameSite)
	assert.Zero(t, c.MaxAge, "it goes with the browser")
	assert.NotContains(t, c.Value, first)
	assert.Equal(t, "sipsum-"+portOf(t, server.URL), c.Name, "a browser sends it to each port of this machine")
	answer, err = me.Get(server.URL + "/")
	status, body := read(t, answer, err)
	assert.Equal(t, 200, status)
	assert.Contains(t, body, "small.yaml")

	require.Len(t, tokens, 2)
	assert.Equal(t, http.StatusUnauthorized, sent(t, stranger, server.URL+web.Entrance, url.Values{"token": {first}}), "it was used")
	assert.Equal(t, http.StatusSeeOther, sent(t, stranger, server.URL+web.Entrance, url.Values{"token": {tokens[1]}}))
	server.Close()
	assert.NotContains(t, log.String(), first)
}
