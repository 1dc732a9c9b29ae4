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

const written = `document.getElementById("text").value`

// Beside the bench a food is found and added, a claim is tried and kept, amounts are fitted and written, a food gives
// way to another: each works on the text as it is typed, and changes that and nothing else.
func TestPanelsWorkBesideTheBench(t *testing.T) {
	s, ctx := serve(t, demos(t)), browser(t)
	require.NoError(t, chromedp.Do(ctx, chromedp.EmulateViewport(1440, tall), chromedp.Navigate(s.url+"/drink/garden-tide.yaml")))
	becomes(t, ctx, `document.documentElement.classList.contains("scripted")`)
	press := func(button string) {
		t.Helper()
		becomes(t, ctx, `document.querySelector(`+"`"+button+"`"+`)`)
		require.NoError(t, chromedp.Do(ctx, chromedp.Evaluate[chromedp.Void](`document.querySelector(`+"`"+button+"`"+`).click(); 0`)))
	}
	before := evaluated[string](t, ctx, written)

	press(`.tools a[href^="/foods"]`)
	becomes(t, ctx, `document.querySelector("#panel #q")`)
	require.NoError(t, chromedp.Do(ctx, typed("#q", "honey")))
	press(`#hits a[href^="/foods/core:honey?"]`)
	press(`#panel form.add button`)
	becomes(t, ctx, written+`.includes("  - 10 g core:honey\n")`)
	assert.Equal(t, before, strings.Replace(evaluated[string](t, ctx, written), "  - 10 g core:honey\n", "", 1), "nothing else is written")

	press(`.tools a[href$="/claim"]`)
	becomes(t, ctx, `document.querySelector("#panel #check")`)
	require.NoError(t, chromedp.Do(ctx, typed("#say", "A little honey"), typed("#check", `contains(milk)`)))
	press(`#verdict form button`)
	becomes(t, ctx, written+`.includes("A little honey")`)
	becomes(t, ctx, `document.querySelector("#brief").textContent.includes("A little honey")`)

	press(`.tools a[href$="/fit"]`)
	press(`#panel button[value="sweeter by 10 %"]`)
	becomes(t, ctx, `document.querySelector("#panel .moves input[name=line]")`)
	line := evaluated[string](t, ctx, `document.querySelector("#panel .moves input[name=line]").value`)
	press(`#panel form[action$="/edit"] button`)
	_, amount, _ := strings.Cut(line, "=")
	becomes(t, ctx, written+`.includes("  - `+amount+` ")`)

	press(`.tools a[href$="/swap"]`)
	becomes(t, ctx, `document.querySelector("#panel select[name=food]")`)
	require.NoError(t, chromedp.Do(ctx, chromedp.SetValue("#food", "core:sugar-white")))
	press(`#panel form.row button`)
	press(`#panel section.card form button`)
	becomes(t, ctx, `!`+written+`.includes("core:sugar-white")`)
	assert.Contains(t, evaluated[string](t, ctx, written), "A little honey", "what was kept before stays")
}

// hidden are the fields that a form carries without showing them.
var hidden = regexp.MustCompile(`<input type="hidden" name="([^"]+)" value="([^"]*)">`)

// Without a script a panel carries the text along, and its buttons change that.
func TestPanelsWorkWithoutAScript(t *testing.T) {
	s := serve(t, demos(t))
	const drink = "/drink/garden-tide.yaml"
	typedText := strings.Replace(demos(t)["garden-tide.yaml"], "30 g passion syrup", "31 g passion syrup", 1)
	code, page := s.post(t, drink+"/claim", url.Values{"text": {typedText}, "base": {"x"}, "say": {"A little milk"}, "check": {"contains(milk)"}})
	require.Equal(t, http.StatusOK, code)
	_, form, found := strings.Cut(page, `<form method="post" action="/drink/garden-tide.yaml/edit"`)
	require.True(t, found)
	form, _, _ = strings.Cut(form, "</form>")
	fields := url.Values{}
	for _, f := range hidden.FindAllStringSubmatch(form, -1) {
		fields.Add(f[1], html.UnescapeString(f[2]))
	}
	assert.Equal(t, []string{"claim"}, fields["op"])
	assert.Equal(t, []string{"x"}, fields["base"])
	code, page = s.post(t, drink+"/edit", fields)
	require.Equal(t, http.StatusOK, code)
	text := html.UnescapeString(page)
	assert.Contains(t, text, "31 g passion syrup", "what was typed and not saved is still there")
	assert.Contains(t, text, "A little milk")
}

// What a guest reads is what the commands print: every figure, every cell, every line.
func TestWhatIsHandedOutIsWhatIsPrinted(t *testing.T) {
	s := serve(t, demos(t))
	for path, command := range map[string][]string{
		"/guest": {"card", "--guest"}, "/guest?language=de": {"card", "--guest", "--language", "de"},
	} {
		_, page := s.fetch(t, "/drink/harbour-veil.yaml"+path)
		text := html.UnescapeString(page)
		d := decoded(t, program(t, append(command, s.dir+"/harbour-veil.yaml", "--format", "json")...))
		count := 0
		var walk func(x any)
		walk = func(x any) {
			switch x := x.(type) {
			case map[string]any:
				for key, inner := range x {
					if key != "role" {
						walk(inner)
					}
				}
			case []any:
				for _, inner := range x {
					walk(inner)
				}
			case string:
				assert.Contains(t, text, x, path)
				count++
			}
		}
		walk(at(d, "leaf", "blocks"))
		assert.Greater(t, count, 20, path)
	}
}
