package web_test

import (
	"context"
	"net/url"
	"strconv"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// typed sets a field as hands do: letter by letter, so that the page hears each.
func typed(field, text string) chromedp.Action[chromedp.Void] {
	return chromedp.SendKeys(field, text)
}

// evaluated gives what an expression is on the page.
func evaluated[T any](t testing.TB, ctx context.Context, expression string) T {
	t.Helper()
	x, err := chromedp.Run(ctx, chromedp.Evaluate[T](expression))
	require.NoError(t, err, expression)
	return x
}

// A search answers while it is typed, and the last word is the one that is answered.
func TestASearchAnswersWhileItIsTyped(t *testing.T) {
	s, ctx := serve(t, demos(t)), browser(t)
	require.NoError(t, chromedp.Do(ctx, chromedp.Navigate(s.url+"/foods?drink=garden-tide.yaml"), typed("#q", "lemon ju")))
	becomes(t, ctx, `document.querySelector("#hits .hits")?.textContent.includes("core:lemon-juice")`)
	assert.True(t, evaluated[bool](t, ctx, `document.activeElement.id === "q" && document.activeElement.value === "lemon ju"`), "the hand stays where it types")
	require.NoError(t, chromedp.Do(ctx, chromedp.Evaluate[chromedp.Void](`document.querySelector("#q").value = ""; 0`), typed("#q", "honey")))
	becomes(t, ctx, `document.querySelector("#hits .hits")?.textContent.includes("core:honey")`)
	assert.False(t, evaluated[bool](t, ctx, `document.querySelector("#hits").textContent.includes("core:lemon-juice")`))
	require.NoError(t, chromedp.Do(ctx, chromedp.Click(`#hits a[href^="/foods/core:honey?"]`)))
	becomes(t, ctx, `document.querySelector("form.add [name=line]")?.value === "10 g core:honey"`)
	assert.Equal(t, []string{"build", "espresso shot", "passion syrup", "mint whey"}, evaluated[[]string](t, ctx, `[...document.querySelectorAll("form.add option")].map(o => o.value)`))
}

// A claim is judged while it is typed; where it cannot be read the place is marked.
func TestAClaimIsJudgedWhileItIsTyped(t *testing.T) {
	s, ctx := serve(t, demos(t)), browser(t)
	require.NoError(t, chromedp.Do(ctx, chromedp.Navigate(s.url+"/drink/garden-tide.yaml/claim"), typed("#check", "serving(SUGAR) < 9")))
	becomes(t, ctx, `document.querySelector("#verdict mark, #verdict .wrong")`)
	require.NoError(t, chromedp.Do(ctx, typed("#check", " g")))
	becomes(t, ctx, `document.querySelector("#verdict .verdict")`)
	d := s.document(t, []string{"evidence", "DRINK", "--check", "serving(SUGAR) < 9 g"})
	shown := evaluated[string](t, ctx, `document.querySelector("#verdict [data-figure]").textContent`)
	assert.True(t, shows(figure{"claims.0.probability", "", shown}, at(d, "claims", "0", "probability")), shown)
	assert.Equal(t, "serving(SUGAR) < 9 g", evaluated[string](t, ctx, `document.querySelector("#verdict form [name=check]").value`), "what is kept is what was judged")
}

// The clock of the stage runs when somebody begins to speak.
func TestTheStageHasAClock(t *testing.T) {
	s, ctx := serve(t, demos(t)), browser(t)
	require.NoError(t, chromedp.Do(ctx, chromedp.Navigate(s.url+"/drink/garden-tide.yaml/stage"), chromedp.Click("[data-clock] button")))
	becomes(t, ctx, `document.querySelector("[data-clock] output").value >= "0:01"`)
	assert.Greater(t, evaluated[float64](t, ctx, `parseFloat(getComputedStyle(document.querySelector(".spoken")).fontSize)`), 20.0, "it is read at an arm's length")
	said := evaluated[string](t, ctx, `document.querySelector("article").innerText`)
	told := decoded(t, program(t, "evidence", s.dir+"/garden-tide.yaml", "--speech=judge", "--format", "json"))
	for _, l := range at(told, "speeches", "0", "lines").([]any) {
		assert.Contains(t, said, at(l, "text"))
	}
}

// Every panel, the stage and what is handed out keep the rules of axe-core in light and in dark, and fit
// the widths of a phone, a tablet and a bench.
func TestPanelsAreAccessibleAndFit(t *testing.T) {
	s, ctx := serve(t, demos(t)), browser(t)
	axe := axeCore(t)
	const drink = "/drink/garden-tide.yaml"
	for _, c := range []struct {
		name, path string
		form       url.Values // what is pressed or written before it is looked at
		until      string
	}{
		{"find", "/foods?drink=garden-tide.yaml&q=lemon", nil, ""},
		{"food", "/foods/core:lemon-juice?drink=garden-tide.yaml", nil, ""},
		{"rank", "/foods/rank?of=malic+acid&without=milk", nil, ""},
		{"rank-empty", "/foods/rank", nil, ""},
		{"fit", drink + "/fit", url.Values{"button[value='sweeter by 10 %']": nil}, `document.querySelector(".held")`},
		{"swap", drink + "/swap", url.Values{"form.row button": nil}, `document.querySelector("section.card")`},
		{"claim", drink + "/claim", url.Values{"#check": {"serving(FASAT) < 0.05 g"}}, `document.querySelector(".verdict")`},
		{"claim-wrong", drink + "/claim", url.Values{"#check": {"serving(SUGER)"}}, `document.querySelector("mark")`},
		{"stage", drink + "/stage", nil, ""},
		{"guest-en", drink + "/guest", nil, ""},
		{"guest-de", drink + "/guest?language=de", nil, ""},
		{"allergens-en", "/drink/harbour-veil.yaml/allergens", nil, ""},
		{"bench-find", drink, url.Values{`.tools a[href^="/foods"]`: nil}, `document.querySelector("#panel #q")`},
		{"bench-claim", drink, url.Values{`.tools a[href$="/claim"]`: nil}, `document.querySelector("#panel #check")`},
		{"bench-fit", drink, url.Values{`.tools a[href$="/fit"]`: nil}, `document.querySelector("#panel #quality")`},
		{"allergens-de", "/drink/harbour-veil.yaml/allergens?language=de", nil, ""},
	} {
		require.NoError(t, chromedp.Do(ctx, inScheme("light"), chromedp.Navigate(s.url+c.path)))
		for field, text := range c.form {
			if text == nil {
				require.NoError(t, chromedp.Do(ctx, chromedp.Click(field)))
				continue
			}
			require.NoError(t, chromedp.Do(ctx, typed(field, text[0])))
		}
		if c.until != "" {
			becomes(t, ctx, c.until)
		}
		for _, wide := range looks {
			require.NoError(t, chromedp.Do(ctx, chromedp.EmulateViewport(wide, tall), inScheme("light")))
			fits(t, ctx, wide, c.name+" at "+strconv.FormatInt(wide, 10))
			pictured(t, ctx, c.name+"-"+strconv.FormatInt(wide, 10))
		}
		for _, wide := range looks[:1] {
			require.NoError(t, chromedp.Do(ctx, chromedp.EmulateViewport(wide, tall)))
			assert.Empty(t, judged(t, ctx, axe), c.name)
		}
		pictured(t, ctx, c.name+"-dark")
	}
}
