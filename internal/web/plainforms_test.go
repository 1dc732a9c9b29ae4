package web_test

import (
	"html"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var (
	forms  = regexp.MustCompile(`(?s)<form([^>]*)>(.*?)</form>`)
	inputs = regexp.MustCompile(`<input[^>]*\bname="([^"]*)"[^>]*>`)
	valued = regexp.MustCompile(`\bvalue="([^"]*)"`)
	texts  = regexp.MustCompile(`(?s)<textarea[^>]*>\n?(.*?)</textarea>`)
	chosen = regexp.MustCompile(`(?s)<select[^>]*\bname="([^"]*)"[^>]*>\s*<option(?: value="([^"]*)")?[^>]*>([^<]*)`)
)

// formTo gives what a browser without a script sends of the first form of a page that goes to an address.
func formTo(t *testing.T, page, address string) url.Values {
	t.Helper()
	for _, f := range forms.FindAllStringSubmatch(page, -1) {
		if !strings.Contains(f[1], `action="`+address+`"`) {
			continue
		}
		sent := url.Values{}
		for _, in := range inputs.FindAllStringSubmatch(f[2], -1) {
			value := ""
			if v := valued.FindStringSubmatch(in[0]); v != nil {
				value = html.UnescapeString(v[1])
			}
			sent.Add(html.UnescapeString(in[1]), value)
		}
		for _, in := range chosen.FindAllStringSubmatch(f[2], -1) {
			value := in[2]
			if value == "" {
				value = in[3]
			}
			sent.Set(in[1], html.UnescapeString(value))
		}
		if text := texts.FindStringSubmatch(f[2]); text != nil {
			sent.Set("text", html.UnescapeString(text[1]))
		}
		return sent
	}
	require.Fail(t, "no form", "to %s in %.300s", address, page)
	return nil
}

// Without a script each panel, reached by its link, changes the drink so that it can be saved.
func TestPanelsByPlainFormsAreSaved(t *testing.T) {
	const drink = "/drink/garden-tide.yaml"
	for name, steps := range map[string]func(t *testing.T, s *site) string{
		"a food": func(t *testing.T, s *site) string {
			_, page := s.fetch(t, "/foods/core:honey?drink=garden-tide.yaml")
			_, page = s.post(t, drink+"/edit", formTo(t, page, drink+"/edit"))
			return page
		},
		"a claim": func(t *testing.T, s *site) string {
			_, page := s.fetch(t, drink+"/claim")
			asked := formTo(t, page, drink+"/claim")
			asked.Set("check", "contains(milk)")
			_, page = s.post(t, drink+"/claim", asked)
			_, page = s.post(t, drink+"/edit", formTo(t, page, drink+"/edit"))
			return page
		},
		"a fit": func(t *testing.T, s *site) string {
			_, page := s.fetch(t, drink+"/fit")
			asked := formTo(t, page, drink+"/fit")
			asked.Set("wish", "sweeter by 10 %")
			_, page = s.post(t, drink+"/fit", asked)
			_, page = s.post(t, drink+"/edit", formTo(t, page, drink+"/edit"))
			return page
		},
		"a swap": func(t *testing.T, s *site) string {
			_, page := s.fetch(t, drink+"/swap")
			asked := formTo(t, page, drink+"/swap")
			asked.Set("food", "core:sugar-white")
			_, page = s.post(t, drink+"/swap", asked)
			_, page = s.post(t, drink+"/edit", formTo(t, page, drink+"/edit"))
			return page
		},
	} {
		t.Run(name, func(t *testing.T) {
			s := serve(t, demos(t))
			before := s.saved(t, "garden-tide.yaml")
			page := steps(t, s)
			assert.Equal(t, http.StatusSeeOther, s.status(t, http.MethodPost, drink+"/save", formTo(t, page, drink+"/edit")), "nobody else was at it")
			after := s.saved(t, "garden-tide.yaml")
			assert.NotEqual(t, before, after)
			assert.Contains(t, after, `drink: "Garden Tide"`)
		})
	}
}

// Wherever a laptop's page is scrolled so that a tool is in view, it is the tool that is pressed, and nothing lies over the panel.
func TestNothingLiesOverTheTools(t *testing.T) {
	s, ctx := serve(t, demos(t)), browser(t)
	for _, size := range [][2]int64{{1024, 768}, {1440, 900}, {1440, 1300}, {1920, 1080}} {
		require.NoError(t, chromedp.Do(ctx, chromedp.EmulateViewport(size[0], size[1]), chromedp.Navigate(s.url+"/drink/garden-tide.yaml")))
		becomes(t, ctx, `document.documentElement.classList.contains("scripted")`)
		const covered = `(selector => { let worst = ""; const step = innerHeight / 5;
			for (let y = 0; y <= document.documentElement.scrollHeight; y += step) {
				scrollTo({top: y, behavior: "instant"});
				for (const e of document.querySelectorAll(selector)) {
					const b = e.getBoundingClientRect(), x = b.left + b.width / 2, m = b.top + b.height / 2;
					if (b.width === 0 || m < 0 || m >= innerHeight) continue;
					const top = document.elementFromPoint(x, m);
					if (top !== e && !e.contains(top) && !top?.contains(e)) worst = selector + " under " + (top?.id || top?.tagName) + " at " + y;
				}
			}
			scrollTo({top: 0, behavior: "instant"});
			return worst; })`
		assert.Empty(t, evaluated[string](t, ctx, covered+`(".tools a")`), "%v", size)
		require.NoError(t, chromedp.Do(ctx, chromedp.Evaluate[chromedp.Void](`document.querySelector('.tools a[href^="/foods"]').click(); 0`)))
		becomes(t, ctx, `document.querySelector("#panel #q")`)
		assert.Empty(t, evaluated[string](t, ctx, covered+`("#panel #q, #panel button")`), "%v", size)
	}
}
