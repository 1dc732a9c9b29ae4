package web_test

import (
	"fmt"
	"html"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/workshop"
)

const file = "/drink/small.yaml"

func (s *site) saved(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(s.dir, name))
	require.NoError(t, err)
	return string(text)
}

func (s *site) outside(t *testing.T, name, text string) {
	t.Helper()
	require.NoError(t, os.WriteFile(filepath.Join(s.dir, name), []byte(text), 0o644))
}

// In an empty folder one takes a demo or begins a drink by its name, and what is there is not written over.
func TestFirstUse(t *testing.T) {
	s := serve(t, nil)
	_, page := s.fetch(t, "/")
	for _, demo := range []string{"Garden Tide", "Harbour Veil", "Slow Lantern"} {
		assert.Contains(t, page, ">"+demo+"</button>")
	}
	answer, _ := s.ask(t, http.MethodPost, "/new", url.Values{"name": {"Slow Lantern"}, "from": {"slow-lantern"}}, nil)
	assert.Equal(t, http.StatusSeeOther, answer.StatusCode)
	assert.Equal(t, "/drink/slow-lantern.drink.yaml", answer.Header.Get("Location"))
	answer, _ = s.ask(t, http.MethodPost, "/new", url.Values{"name": {"First Light"}}, nil)
	assert.Equal(t, "/drink/first-light.drink.yaml", answer.Header.Get("Location"))
	assert.Contains(t, s.saved(t, "first-light.drink.yaml"), `drink: "First Light"`)
	for _, drink := range []string{"slow-lantern.drink.yaml", "first-light.drink.yaml"} {
		assert.Equal(t, 200, s.status(t, http.MethodGet, "/drink/"+drink+"/print", nil), "it works as it stands")
	}
	assert.Equal(t, http.StatusUnprocessableEntity, s.status(t, http.MethodPost, "/new", url.Values{"name": {"first LIGHT"}}), "it is there already")
	for _, name := range []string{"", " ", "///", "\x00"} {
		assert.Equal(t, http.StatusUnprocessableEntity, s.status(t, http.MethodPost, "/new", url.Values{"name": {name}}), "%q", name)
	}
	assert.Equal(t, http.StatusUnprocessableEntity, s.status(t, http.MethodPost, "/new", url.Values{"name": {"x"}, "from": {"../core/foods"}}))
	assert.Equal(t, http.StatusUnprocessableEntity, s.status(t, http.MethodPost, "/new", url.Values{"name": {"CON"}}), "a device of Windows")
	assert.Equal(t, http.StatusSeeOther, s.status(t, http.MethodPost, "/new", url.Values{"name": {"../../out"}}))
	list, err := os.ReadDir(filepath.Dir(s.dir))
	require.NoError(t, err)
	assert.Len(t, list, 1, "nothing outside the folder")
	_, page = s.fetch(t, "/")
	assert.Contains(t, page, "First Light")
	assert.NotContains(t, page, "</button></form></li>", "demos are offered first in an empty folder")
}

// What is typed is saved as it was typed, under the line ends of the file, and a second press of the button does no harm.
func TestSaveAndReload(t *testing.T) {
	s := serve(t, map[string]string{"small.yaml": small, "crlf.yaml": strings.ReplaceAll(small, "\n", "\r\n")})
	next := strings.Replace(small, "30 g", "31 g", 1) + "# a comment at its line\n"
	form := url.Values{"text": {strings.ReplaceAll(next, "\n", "\r\n")}, "base": {s.base(t, file)}} // as a browser sends it
	for range 2 {
		answer, _ := s.ask(t, http.MethodPost, file+"/save", form, nil)
		assert.Equal(t, http.StatusSeeOther, answer.StatusCode)
		assert.Equal(t, file, answer.Header.Get("Location"))
	}
	assert.Equal(t, next, s.saved(t, "small.yaml"))
	_, page := s.fetch(t, file)
	assert.Contains(t, page, "a comment at its line")
	_, page = s.fetch(t, file+"/send/file")
	assert.Equal(t, next, page, "comments travel with the file")

	form.Set("base", s.base(t, "/drink/crlf.yaml"))
	answer, body := s.ask(t, http.MethodPost, "/drink/crlf.yaml/save", form, func(r *http.Request) { r.Header.Set("Sipsum-Piece", "1") })
	assert.Equal(t, 200, answer.StatusCode)
	assert.Equal(t, strings.ReplaceAll(next, "\n", "\r\n"), s.saved(t, "crlf.yaml"))
	assert.Equal(t, s.base(t, "/drink/crlf.yaml"), between(body, `"base":"`, `"`), "a script goes on from here")
}

// When another hand has been at the file both texts are shown, and each of the ways on loses neither.
func TestConflictWithAnOutsideEdit(t *testing.T) {
	mine, theirs := strings.Replace(small, "30 g", "31 g", 1), strings.Replace(small, "30 g", "29 g", 1)
	for _, way := range []string{"save", "aside", "new"} {
		s := serve(t, map[string]string{"small.yaml": small})
		base := s.base(t, file)
		s.outside(t, "small.yaml", theirs)
		for _, piece := range []string{"", "1"} {
			answer, page := s.ask(t, http.MethodPost, file+"/save", url.Values{"text": {mine}, "base": {base}}, func(r *http.Request) { r.Header.Set("Sipsum-Piece", piece) })
			assert.Equal(t, http.StatusConflict, answer.StatusCode)
			assert.Contains(t, page, "31 g")
			assert.Contains(t, page, "29 g")
			assert.Contains(t, page, workshop.Fingerprint([]byte(theirs)))
		}
		assert.Equal(t, theirs, s.saved(t, "small.yaml"))
		form := url.Values{"text": {mine}, "base": {workshop.Fingerprint([]byte(theirs))}, "name": {"Small 2"}}
		switch way {
		case "save":
			assert.Equal(t, http.StatusSeeOther, s.status(t, http.MethodPost, file+"/save", form))
			assert.Equal(t, mine, s.saved(t, "small.yaml"))
			assert.Contains(t, s.versions(t), theirs)
		case "aside":
			assert.Equal(t, http.StatusSeeOther, s.status(t, http.MethodPost, file+"/aside", form))
			assert.Equal(t, theirs, s.saved(t, "small.yaml"))
			assert.Contains(t, s.versions(t), mine)
		case "new":
			assert.Equal(t, http.StatusSeeOther, s.status(t, http.MethodPost, "/new", form))
			assert.Equal(t, theirs, s.saved(t, "small.yaml"))
			assert.Equal(t, strings.Replace(mine, `"Small"`, `"Small 2"`, 1), s.saved(t, "small-2.drink.yaml"))
		}
	}
}

// versions gives the texts of the versions of the small drink, newest first.
func (s *site) versions(t *testing.T) (list []string) {
	t.Helper()
	found, err := filepath.Glob(filepath.Join(s.dir, ".sipsum", "versions", "small.yaml", "*"))
	require.NoError(t, err)
	for _, name := range found {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		list = append([]string{string(text)}, list...)
	}
	return list
}

// A file that is gone is told of, and what was typed can become a drink.
func TestAFileThatIsGone(t *testing.T) {
	s := serve(t, map[string]string{"small.yaml": small})
	base := s.base(t, file)
	require.NoError(t, os.Remove(filepath.Join(s.dir, "small.yaml")))
	status, page := s.post(t, file+"/save", url.Values{"text": {small}, "base": {base}})
	assert.Equal(t, http.StatusConflict, status)
	assert.Contains(t, page, "no longer in the folder")
	assert.Contains(t, page, "30 g core:lemon-juice")
	assert.Equal(t, http.StatusNotFound, s.status(t, http.MethodGet, file, nil))
}

// A version is seen, compared and put back, and what it takes the place of becomes one.
func TestVersions(t *testing.T) {
	s := serve(t, map[string]string{"small.yaml": small})
	later := strings.Replace(small, "30 g", "60 g", 1)
	require.Equal(t, http.StatusSeeOther, s.status(t, http.MethodPost, file+"/save", url.Values{"text": {later}, "base": {s.base(t, file)}}))
	_, page := s.fetch(t, file+"/versions")
	id := between(page, file+"/versions/", `"`)
	require.NotEmpty(t, id)
	_, page = s.fetch(t, file+"/versions/"+id)
	assert.Contains(t, page, "<del>  - 30 g core:lemon-juice</del>")
	assert.Contains(t, page, "<ins>  - 60 g core:lemon-juice</ins>")
	status, page := s.fetch(t, file+"/compare?with="+id)
	assert.Equal(t, 200, status)
	assert.Contains(t, page, "30 g → 60 g core:lemon-juice")
	assert.Contains(t, html.UnescapeString(page), "+30.0", "of the mass")
	status, page = s.post(t, file+"/compare", url.Values{"text": {strings.Replace(small, "30 g", "90 g", 1)}})
	assert.Equal(t, 200, status)
	assert.Contains(t, page, "60 g → 90 g core:lemon-juice", "what is typed, against the file")
	status, page = s.post(t, file+"/compare", url.Values{"text": {"drink: x\nserves: none\n"}})
	assert.Equal(t, http.StatusUnprocessableEntity, status)
	assert.Contains(t, page, "small.yaml:2:", "where it is wrong")
	assert.Equal(t, http.StatusSeeOther, s.status(t, http.MethodPost, file+"/save", url.Values{"text": {small}, "base": {s.base(t, file)}}))
	assert.Equal(t, small, s.saved(t, "small.yaml"))
	assert.Equal(t, []string{later, small}, s.versions(t))
	assert.Equal(t, http.StatusNotFound, s.status(t, http.MethodGet, file+"/versions/20260101T000000.000000000Z", nil))
}

// What is printed and sent is the sheet that the command prints.
func TestPrintAndSend(t *testing.T) {
	s := serve(t, demos(t))
	const drink = "/drink/garden-tide.yaml"
	cmd := program(t, "sheet", filepath.Join(s.dir, "garden-tide.yaml"), "--format", "html")
	want, _ := cmd.Output() // 3: something is to be decided
	answer, page := s.ask(t, http.MethodGet, drink+"/print", nil, nil)
	assert.Equal(t, 200, answer.StatusCode)
	assert.Equal(t, unnamed(string(want)), unnamed(page))
	answer, page = s.ask(t, http.MethodGet, drink+"/send/everything", nil, nil)
	assert.Equal(t, `attachment; filename=garden-tide.html`, answer.Header.Get("Content-Disposition"))
	assert.Equal(t, unnamed(string(want)), unnamed(page))
	answer, page = s.ask(t, http.MethodGet, drink+"/send/proof", nil, nil)
	assert.Equal(t, `attachment; filename=garden-tide-proof.html`, answer.Header.Get("Content-Disposition"))
	pack := filepath.Join(t.TempDir(), "proof.html")
	require.NoError(t, os.WriteFile(pack, []byte(page), 0o600))
	said, err := program(t, "verify", pack).CombinedOutput()
	require.NoError(t, err, "%s", said)
	_, page = s.fetch(t, drink+"/print?paper=a6")
	assert.Contains(t, page, "105mm 148mm")
	assert.Equal(t, http.StatusNotFound, s.status(t, http.MethodGet, drink+"/print?paper=wall", nil))
}

// unnamed takes out where a drink file lies, which a command tells and a page need not.
func unnamed(page string) string {
	lines := strings.Split(page, "\n")
	for i, line := range lines {
		if strings.Contains(line, "garden-tide.yaml") {
			lines[i] = "(where it lies)"
		}
	}
	return strings.Join(lines, "\n")
}

// No rule of axe-core is broken on these pages and nothing is wider than the screen, on a phone, on a tablet and on a wide one.
func TestPagesOfTheFolder(t *testing.T) {
	axe := axeCore(t)
	s := serve(t, demos(t))
	empty := serve(t, nil)
	const drink = "/drink/garden-tide.yaml"
	was := s.saved(t, "garden-tide.yaml")
	next := strings.Replace(was, "30 g passion syrup", "24 g passion syrup", 1)
	require.NotEqual(t, was, next)
	require.Equal(t, http.StatusSeeOther, s.status(t, http.MethodPost, drink+"/save", url.Values{"text": {next}, "base": {s.base(t, drink)}}))
	_, page := s.fetch(t, drink+"/versions")
	id := between(page, drink+"/versions/", `"`)
	ctx := browser(t)
	for name, address := range map[string]string{
		"first": empty.url + "/", "folder": s.url + "/", "versions": s.url + drink + "/versions", "version": s.url + drink + "/versions/" + id,
		"compare": s.url + drink + "/compare?with=" + id, "send": s.url + drink + "/send", "problem": s.url + "/nothing",
	} {
		for _, wide := range looks {
			require.NoError(t, chromedp.Do(ctx, chromedp.EmulateViewport(wide, tall), chromedp.Navigate(address)))
			what := fmt.Sprintf("%s at %d", name, wide)
			fits(t, ctx, wide, what)
			pictured(t, ctx, fmt.Sprintf("core-%s-%d", name, wide))
			assert.Empty(t, judged(t, ctx, axe), what)
		}
	}
}

// Both texts of a conflict are shown by a press of the button in a browser, without any script.
func TestConflictInABrowser(t *testing.T) {
	axe := axeCore(t)
	s := serve(t, map[string]string{"small.yaml": small})
	ctx := browser(t)
	later := strings.Replace(small, "30 g", "60 g", 1)
	require.Equal(t, http.StatusSeeOther, s.status(t, http.MethodPost, file+"/save", url.Values{"text": {later}, "base": {s.base(t, file)}}))
	_, page := s.fetch(t, file+"/versions")
	id := between(page, file+"/versions/", `"`)
	for _, wide := range looks {
		require.NoError(t, chromedp.Do(ctx, chromedp.EmulateViewport(wide, tall), chromedp.Navigate(s.url+file+"/versions/"+id)))
		s.outside(t, "small.yaml", strings.Replace(small, "30 g", fmt.Sprintf("%d g", wide), 1))
		require.NoError(t, chromedp.Do(ctx, chromedp.Evaluate[chromedp.Void](`document.querySelector("button.first").click()`), chromedp.WaitVisible("#theirs")))
		what := fmt.Sprintf("conflict at %d", wide)
		text, err := chromedp.Run(ctx, chromedp.Evaluate[string](`document.querySelector("#mine").value + document.querySelector("#theirs").value`))
		require.NoError(t, err)
		assert.Contains(t, text, "30 g")
		assert.Contains(t, text, fmt.Sprintf("%d g", wide))
		fits(t, ctx, wide, what)
		pictured(t, ctx, fmt.Sprintf("core-conflict-%d", wide))
		assert.Empty(t, judged(t, ctx, axe), what)
	}
}
