package web_test

import (
	"fmt"
	"io"
	"net"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/workshop"
)

const small = "drink: \"Small\"\nserves: 1\nbuild:\n  - 30 g core:lemon-juice\n"

// ask sends a request with a change to it, and gives what came back.
func (s *site) ask(t testing.TB, method, path string, form url.Values, change func(*http.Request)) (*http.Response, string) {
	t.Helper()
	r, err := http.NewRequestWithContext(t.Context(), method, s.url+path, strings.NewReader(form.Encode()))
	require.NoError(t, err)
	if form != nil {
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	}
	if change != nil {
		change(r)
	}
	client := &http.Client{CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	answer, err := client.Do(r)
	require.NoError(t, err)
	defer answer.Body.Close()
	body, err := io.ReadAll(answer.Body)
	require.NoError(t, err)
	return answer, string(body)
}

// A name of somebody else's that leads to this machine opens nothing; each name of its own does, the address in brackets
// among them.
func TestAHostOfSomebodyElseIsRefused(t *testing.T) {
	s := serve(t, map[string]string{"small.yaml": small})
	_, port, err := net.SplitHostPort(strings.TrimPrefix(s.url, "http://"))
	require.NoError(t, err)
	for host, status := range map[string]int{
		"127.0.0.1:" + port: 200, "localhost:" + port: 200, "LOCALHOST:" + port: 200, "[::1]:" + port: 200, "localhost": 200, "[::1]": 200,
		"rebound.example:" + port: 421, "rebound.example": 421, "localhost.rebound.example:" + port: 421, "127.0.0.1.rebound.example:" + port: 421,
		"localhost.:" + port: 421, "192.168.1.1:" + port: 421, "0.0.0.0:" + port: 421, "[::]:" + port: 421, "[::1": 421, "127.1:" + port: 421, "2130706433:" + port: 421,
	} {
		answer, body := s.ask(t, http.MethodGet, "/", nil, func(r *http.Request) { r.Host = host })
		assert.Equal(t, status, answer.StatusCode, host)
		assert.Equal(t, status == 200, strings.Contains(body, "small.yaml"), host)
	}
	for _, request := range []string{
		"GET / HTTP/1.0\r\n\r\n", "GET / HTTP/1.1\r\nHost: \r\n\r\n", // no name at all
		"GET http://rebound.example/ HTTP/1.1\r\nHost: localhost\r\n\r\n", // the address counts, and not the header
	} {
		assert.NotContains(t, s.raw(t, request), "small.yaml", request)
	}
}

// raw sends bytes and gives what comes back until the other side is silent.
func (s *site) raw(t testing.TB, text string) string {
	t.Helper()
	c, err := net.Dial("tcp", strings.TrimPrefix(s.url, "http://"))
	require.NoError(t, err)
	defer c.Close()
	_, err = io.WriteString(c, text)
	require.NoError(t, err)
	require.NoError(t, c.SetReadDeadline(time.Now().Add(time.Second)))
	answer, _ := io.ReadAll(c) // silence is an end
	return string(answer)
}

// What a page of somebody else sends changes nothing; what it would show of ours it does not get; a link to here may be
// followed.
func TestAPageOfSomebodyElseIsRefused(t *testing.T) {
	s := serve(t, map[string]string{"small.yaml": small})
	form := url.Values{"text": {"drink: \"Stolen\"\n"}, "base": {workshop.Fingerprint([]byte(small))}, "name": {"Stolen"}}
	posts := []string{"/drink/small.yaml/save", "/drink/small.yaml/aside", "/new", "/drink/small.yaml", "/drink/small.yaml/print", "/drink/small.yaml/compare"}
	for what, header := range map[string]http.Header{
		"origin":        {"Origin": {"http://evil.example"}},
		"another port":  {"Origin": {"http://127.0.0.1:1"}},
		"no origin":     {"Origin": {"null"}},
		"cross-site":    {"Sec-Fetch-Site": {"cross-site"}, "Sec-Fetch-Mode": {"navigate"}},
		"same-site":     {"Sec-Fetch-Site": {"same-site"}},
		"a script's":    {"Sec-Fetch-Site": {"cross-site"}, "Sec-Fetch-Mode": {"no-cors"}},
		"plain as text": {"Origin": {"http://evil.example"}, "Content-Type": {"text/plain"}},
	} {
		for _, path := range posts {
			answer, body := s.ask(t, http.MethodPost, path, form, func(r *http.Request) {
				for name := range header {
					r.Header.Set(name, header.Get(name))
				}
			})
			assert.Equal(t, http.StatusForbidden, answer.StatusCode, "%s to %s", what, path)
			assert.Contains(t, body, "only pages of sipsum may", "in words of our own")
		}
	}
	text, err := os.ReadFile(filepath.Join(s.dir, "small.yaml"))
	require.NoError(t, err)
	assert.Equal(t, small, string(text))
	for mode, status := range map[string]int{"no-cors": 403, "cors": 403, "navigate": 200} {
		answer, _ := s.ask(t, http.MethodGet, "/", nil, func(r *http.Request) {
			r.Header.Set("Sec-Fetch-Site", "cross-site")
			r.Header.Set("Sec-Fetch-Mode", mode)
		})
		assert.Equal(t, status, answer.StatusCode, mode)
	}
	answer, _ := s.ask(t, http.MethodPost, "/drink/small.yaml/save", form, func(r *http.Request) { r.Header.Set("Sec-Fetch-Site", "same-origin") })
	assert.Equal(t, http.StatusSeeOther, answer.StatusCode, "our own page may")
}

// Every answer keeps itself to itself: no script but ours, nothing from elsewhere, no address told to anybody.
func TestEveryAnswerIsLocked(t *testing.T) {
	s := serve(t, map[string]string{"small.yaml": small})
	for _, path := range []string{"/", "/assets/style.css", "/hues.css", "/drink/small.yaml", "/drink/small.yaml/versions", "/drink/small.yaml/print", "/drink/small.yaml/send/everything", "/nothing", "/drink/none.yaml"} {
		answer, body := s.ask(t, http.MethodGet, path, nil, nil)
		h := answer.Header
		rules := h.Get("Content-Security-Policy")
		assert.True(t, strings.HasPrefix(rules, "default-src 'none';"), path)
		assert.NotContains(t, rules, "unsafe-eval", path)
		assert.NotContains(t, rules, "script-src 'self' ", path)
		assert.NotContains(t, rules, "http", path)
		assert.Contains(t, rules, "frame-ancestors 'none'", path)
		assert.Equal(t, "nosniff", h.Get("X-Content-Type-Options"), path)
		assert.Equal(t, "no-referrer", h.Get("Referrer-Policy"), path)
		assert.Equal(t, "same-origin", h.Get("Cross-Origin-Resource-Policy"), path)
		if strings.Contains(h.Get("Content-Type"), "html") {
			assert.NotRegexp(t, `(?i)<script>|\son[a-z]+="|javascript:|(src|href)="(https?:)?//`, body, path)
		}
	}
}

// Names that lead out of the folder, to hidden files or to devices read and write nothing, in whatever way they are written.
func TestNamesLeadNowhere(t *testing.T) {
	s := serve(t, map[string]string{"small.yaml": small, "house.shelf.yaml": "foods: {}\n", ".secret.yaml": "drink: \"Secret\"\n"})
	outside := filepath.Join(filepath.Dir(s.dir), "outside.yaml")
	require.NoError(t, os.WriteFile(outside, []byte("drink: \"Secret\"\n"), 0o644))
	t.Cleanup(func() { os.Remove(outside) })
	require.NoError(t, os.Symlink(outside, filepath.Join(s.dir, "link.yaml")))
	for _, name := range []string{
		"..%2foutside.yaml", "..%5coutside.yaml", "%2e%2e%2foutside.yaml", "%252e%252e%252foutside.yaml", url.PathEscape(outside), ".secret.yaml", "link.yaml",
		"small.yaml%00.yaml", "small.yaml:stream.yaml", "con.yaml", "NUL.drink.yaml", "aux", "small.yaml%20", "small.yaml.", "house.shelf.yaml", "house-rules.yaml",
		strings.Repeat("x", 300) + ".yaml", "%ff.yaml",
	} {
		for _, page := range []string{"", "/versions", "/print", "/send", "/send/file", "/send/everything", "/mark", "/compare"} {
			answer, body := s.ask(t, http.MethodGet, "/drink/"+name+page, nil, nil)
			assert.GreaterOrEqual(t, answer.StatusCode, 300, "%s%s", name, page)
			assert.NotContains(t, body, "Secret", "%s%s", name, page)
		}
		answer, _ := s.ask(t, http.MethodPost, "/drink/"+name+"/save", url.Values{"text": {"drink: x\n"}, "base": {workshop.Fingerprint([]byte("drink: \"Secret\"\n"))}}, nil)
		assert.GreaterOrEqual(t, answer.StatusCode, 400, name)
		answer, _ = s.ask(t, http.MethodPost, "/drink/"+name+"/aside", url.Values{"text": {"drink: x\n"}}, nil)
		assert.GreaterOrEqual(t, answer.StatusCode, 400, name)
	}
	for _, id := range []string{"..", "..%2f..%2f..%2foutside.yaml", "20260101T000000.000000000Z"} {
		answer, body := s.ask(t, http.MethodGet, "/drink/small.yaml/versions/"+id, nil, nil)
		assert.GreaterOrEqual(t, answer.StatusCode, 300, id)
		assert.NotContains(t, body, "Secret", id)
	}
	for _, use := range []string{"../outside.yaml", outside, "link.yaml", ".secret.yaml", "/dev/zero", "/etc/passwd"} {
		_, body := s.ask(t, http.MethodPost, "/drink/small.yaml", url.Values{"text": {fmt.Sprintf("use: [%q]\n%s", use, small)}}, nil)
		assert.NotContains(t, body, "Secret", use)
		assert.NotContains(t, body, "root:", use)
	}
	text, err := os.ReadFile(outside)
	require.NoError(t, err)
	assert.Equal(t, "drink: \"Secret\"\n", string(text))
	left, err := os.ReadDir(s.dir)
	require.NoError(t, err)
	assert.Len(t, left, 4, "nothing was written") // and no .sipsum: nothing was saved
}

// endless reads the same letter for as long as one wants.
type endless struct{ left int64 }

func (e *endless) Read(p []byte) (int, error) {
	if e.left <= 0 {
		return 0, io.EOF
	}
	n := min(int64(len(p)), e.left)
	for i := range p[:n] {
		p[i] = 'x'
	}
	e.left -= n
	return int(n), nil
}

// A hundred megabytes are refused before they are heard, whether their length is told or not, and the next is served.
func TestALongBodyIsRefused(t *testing.T) {
	s := serve(t, map[string]string{"small.yaml": small})
	const huge = 100 << 20
	for _, told := range []int64{huge, -1} {
		body := &endless{huge}
		r, err := http.NewRequestWithContext(t.Context(), http.MethodPost, s.url+"/drink/small.yaml/save", body)
		require.NoError(t, err)
		r.ContentLength = told
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		answer, err := http.DefaultClient.Do(r)
		if err == nil { // else the connection was closed on us while we still spoke
			assert.Equal(t, http.StatusRequestEntityTooLarge, answer.StatusCode)
			answer.Body.Close()
		}
		assert.Greater(t, body.left, int64(huge/2), "it was heard to its end")
	}
	r, _ := s.ask(t, http.MethodGet, "/", nil, func(r *http.Request) { r.Header.Set("Cookie", strings.Repeat("x", 1<<20)) })
	assert.Equal(t, http.StatusRequestHeaderFieldsTooLarge, r.StatusCode)
	answer, _ := s.ask(t, http.MethodPost, "/drink/small.yaml/save", url.Values{"text": {strings.Repeat("x", 300_000)}, "base": {workshop.Fingerprint([]byte(small))}}, nil)
	assert.GreaterOrEqual(t, answer.StatusCode, 400, "longer than a drink file may be")
	text, err := os.ReadFile(filepath.Join(s.dir, "small.yaml"))
	require.NoError(t, err)
	assert.Equal(t, small, string(text))
}

// Many who speak slowly, and many who say nothing, keep nobody waiting.
func TestSlowClientsKeepNobodyWaiting(t *testing.T) {
	s := serve(t, map[string]string{"small.yaml": small})
	for i := range 60 {
		c, err := net.Dial("tcp", strings.TrimPrefix(s.url, "http://"))
		require.NoError(t, err)
		defer c.Close()
		if i%2 == 0 {
			fmt.Fprintf(c, "POST /drink/small.yaml HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: 1000\r\n\r\ntext=")
		}
	}
	began := time.Now()
	answer, _ := s.ask(t, http.MethodPost, "/drink/small.yaml", url.Values{"text": {small}}, nil)
	assert.Equal(t, 200, answer.StatusCode)
	assert.Less(t, time.Since(began), 10*time.Second)
}

// bombs are texts that ask for more than a moment: aliases of aliases, components of components, deep lists, long checks.
func bombs() map[string]string {
	aliases := "a: &a [x,x,x,x,x,x,x,x,x,x]\n"
	for c := 'b'; c < 'k'; c++ {
		aliases += fmt.Sprintf("%c: &%c [%s]\n", c, c, strings.TrimSuffix(strings.Repeat(fmt.Sprintf("*%c,", c-1), 10), ","))
	}
	pots := small + "components:\n  p0:\n    ingredients: [1 g core:lemon-juice]\n"
	for i := 1; i < 40; i++ {
		pots += fmt.Sprintf("  p%d:\n    ingredients: [1 g p%d, 1 g p%d]\n", i, i-1, i-1)
	}
	checks := small + "claims:\n"
	for range 200 {
		checks += "  - {say: \"x\", check: \"" + strings.Repeat("(", 400) + "serving(sugars) < 1 g" + strings.Repeat(")", 400) + "\"}\n"
	}
	return map[string]string{
		"aliases": aliases + small, "pots": pots, "checks": checks, "deep": strings.Repeat("[", 20000), "blank": strings.Repeat("\n", 100_000), "long": strings.Repeat("- ", 120_000),
		"draws": small + "claims:\n" + strings.Repeat("  - {say: \"y\", check: \"serving(sugars) "+strings.Repeat("+ serving(sugars) ", 90)+"< 1 g\"}\n", 100),
	}
}

// A text that asks for more than a moment is refused within one, and the program goes on.
func TestBombsAreRefused(t *testing.T) {
	s := serve(t, map[string]string{"small.yaml": small})
	for what, text := range bombs() {
		began := time.Now()
		answer, _ := s.ask(t, http.MethodPost, "/drink/small.yaml", url.Values{"text": {text}}, nil)
		assert.Less(t, answer.StatusCode, 500, what)
		assert.Less(t, time.Since(began), 20*time.Second, what)
		t.Logf("%s: %d after %d ms", what, answer.StatusCode, time.Since(began).Milliseconds())
	}
	answer, _ := s.ask(t, http.MethodPost, "/drink/small.yaml", url.Values{"text": {small}}, nil)
	assert.Equal(t, 200, answer.StatusCode)
}
