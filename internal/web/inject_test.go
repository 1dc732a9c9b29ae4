package web_test

import (
	"fmt"
	"mime"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Names that are something else to a page, a drawing, a spreadsheet, a terminal or a reader.
var hostileNames = []string{
	`<script>window.hacked=1</script>`, `"><img src=x onerror=window.hacked=1>`, `'-window.hacked=1-'`, `</title><svg onload=window.hacked=1>`, `</textarea><script>window.hacked=1</script>`,
	`javascript:window.hacked=1`, `{{.Text}}`, `=HYPERLINK("http://evil.example","x")`, `@SUM(1)`, `&lt;b&gt;`, `]]><script>window.hacked=1</script>`,
}

// seenByBrowser is how many of them a browser is shown too.
const seenByBrowser = 5

// hostile is a drink of which every name is hostile.
func hostile(name string) string {
	q := fmt.Sprintf("%q", name)
	return "drink: " + q + "\nnote: " + q + "\nvessel: " + q + "\nserves: 1\nfoods:\n  own-food:\n    name: " + q + "\n    group: vinegar\n    per: 100 g\n    values: {water: 93 g, acetic acid: 5 g}\n    allergens: []\n    source: " + q +
		"\ncomponents:\n  " + q + ":\n    ingredients:\n      - {food: core:lemon-juice, amount: 20 g, note: " + q + "}\n      - 5 g own:own-food\n    steps:\n      - treat: " + q + "\nbuild:\n  - {food: " + q + ", amount: 20 g}\nclaims:\n  - {say: " + q + ", check: \"serving(sugars) < 5 g\"}\n"
}

// Whatever a name says, no page has an element of it, and a browser does nothing of it.
func TestNamesAreNoMarkup(t *testing.T) {
	files, worst := map[string]string{}, hostile(hostileNames[0])
	for i, name := range hostileNames {
		files[fmt.Sprintf("h%d.yaml", i)] = hostile(name)
	}
	files["<img src=x onerror=x>.yaml"] = small // no drink's name: it is not listed
	files["'onclick=x '&amp;.yaml"] = worst
	s := serve(t, files)
	ctx := browser(t)
	for i, name := range hostileNames {
		file := fmt.Sprintf("/drink/h%d.yaml", i)
		require.Equal(t, 303, s.status(t, http.MethodPost, file+"/save", url.Values{"text": {hostile(name) + "# more\n"}, "base": {s.base(t, file)}}))
		_, versions := s.fetch(t, file+"/versions")
		version := between(versions, file+"/versions/", `"`)
		require.NotEmpty(t, version)
		for _, page := range []string{file, file + "/versions", file + "/versions/" + version, file + "/compare?with=" + version, file + "/print", file + "/send", "/"} {
			status, text := s.fetch(t, page)
			assert.True(t, status == 200 || status == 422, "%s: %d", page, status) // a component's name has no colon
			assertInert(t, text, page)
			if i >= seenByBrowser {
				continue
			}
			require.NoError(t, chromedp.Do(ctx, chromedp.Navigate(s.url+page)))
			hacked, err := chromedp.Run(ctx, chromedp.Evaluate[bool](`"hacked" in window || document.querySelectorAll("main img, main script, main [onerror], main [onload], main [onclick]").length > 0`))
			require.NoError(t, err)
			assert.False(t, hacked, page)
		}
		_, text := s.post(t, file+"/save", url.Values{"text": {hostile(name) + "# mine\n"}, "base": {"another"}})
		assertInert(t, text, "conflict of "+file)
	}
	_, text := s.fetch(t, "/")
	assert.NotContains(t, text, "<img src")
	assert.Contains(t, text, "&#39;onclick=x &#39;&amp;amp;.yaml")
}

func assertInert(t *testing.T, page, what string) {
	t.Helper()
	for _, bad := range []string{"<script>window", "<img src=x", "<svg onload", `href="javascript:`, "</textarea><script"} {
		assert.NotContains(t, page, bad, what)
	}
}

// What turns the reading direction or steers a terminal comes to no page as it is, and no log.
func TestNamesTurnNothing(t *testing.T) {
	s := serve(t, map[string]string{"turned.yaml": "drink: \"a\u202eb\u2066c\x1b[31m\u200bd\"\nserves: 1\nbuild: [1 g core:lemon-juice]\n"})
	for _, page := range []string{"/", "/drink/turned.yaml/versions", "/drink/turned.yaml/send"} {
		_, text := s.fetch(t, page)
		for _, bad := range []string{"\u202e", "\u2066", "\x1b", "\u200b"} {
			assert.NotContains(t, text, bad, page)
		}
	}
	status, text := s.fetch(t, "/drink/turned.yaml/print")
	assert.Equal(t, http.StatusUnprocessableEntity, status)
	assert.NotContains(t, text, "\u202e")
	assert.NotContains(t, text, "\x1b")
}

// A name goes into no header as it is: the file that is handed out is called by one name alone.
func TestNamesAreNoHeaders(t *testing.T) {
	s := serve(t, map[string]string{"a; filename=evil.exe.yaml": small, "пить 2.yaml": small})
	list, err := os.ReadDir(s.dir)
	require.NoError(t, err)
	for _, e := range list {
		answer, body := s.ask(t, http.MethodGet, "/drink/"+url.PathEscape(e.Name())+"/send/file", nil, nil)
		assert.Equal(t, 200, answer.StatusCode)
		assert.Equal(t, small, body)
		kind, words, err := mime.ParseMediaType(answer.Header.Get("Content-Disposition"))
		require.NoError(t, err)
		assert.Equal(t, "attachment", kind)
		assert.Equal(t, map[string]string{"filename": e.Name()}, words)
		assert.FileExists(t, filepath.Join(s.dir, e.Name()))
	}
}

func (s *site) status(t *testing.T, method, path string, form url.Values) int {
	t.Helper()
	answer, _ := s.ask(t, method, path, form, nil)
	return answer.StatusCode
}

func (s *site) post(t *testing.T, path string, form url.Values) (int, string) {
	t.Helper()
	answer, body := s.ask(t, http.MethodPost, path, form, nil)
	return answer.StatusCode, body
}

// base gives the mark of a file as it is in the folder.
func (s *site) base(t *testing.T, file string) string {
	t.Helper()
	_, text := s.fetch(t, file+"/mark")
	return between(text, `"base":"`, `"`)
}

// between gives what stands in a text after one piece and before the next.
func between(text, after, before string) string {
	_, text, _ = strings.Cut(text, after)
	text, _, _ = strings.Cut(text, before)
	return text
}
