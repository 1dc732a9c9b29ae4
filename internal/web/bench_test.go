package web_test

import (
	"context"
	"encoding/json"
	"math"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/workshop"
)

// valueOf gives what the document of an assay has for a figure of the bench.
func valueOf(d document, path string) any {
	key, ok := strings.CutPrefix(path, "serving.")
	key, ok2 := strings.CutSuffix(key, ".mean")
	if !ok || !ok2 {
		return nil
	}
	switch key {
	case "ph":
		return at(d, "chemistry", "ph_meter", "mean")
	case "brix", "titratable_acidity":
		return at(d, "chemistry", key, "mean")
	}
	return at(d, "serving", "constituents", key, "mean")
}

// rounds reports whether a text is a number rounded to some place, in its unit or one a thousandth of it.
func rounds(text string, x float64) bool {
	for _, factor := range []float64{1, 1e3} {
		for places := 6; places >= -4; places-- {
			step := math.Pow10(-places)
			if strconv.FormatFloat(math.Round(x*factor/step)*step, 'f', max(places, 0), 64) == text {
				return true
			}
		}
	}
	return false
}

// asAssayed holds the figures of a page to the document of assay.
func asAssayed(t *testing.T, page string, d document) {
	t.Helper()
	n := 0
	for _, f := range figuresOf(page) {
		x, ok := valueOf(d, f.path).(float64)
		if !ok || strings.HasPrefix(f.text, "<") {
			continue
		}
		n++
		assert.True(t, rounds(f.text, x), "%s: the page says %s, assay %v", f.path, f.text, x)
	}
	assert.Greater(t, n, 6)
}

func sourceOf(t *testing.T, ctx context.Context) string {
	t.Helper()
	text, err := chromedp.Run(ctx, chromedp.Evaluate[string](`document.documentElement.outerHTML`))
	require.NoError(t, err)
	return text
}

// becomes waits for something to be true of the shown page.
func becomes(t *testing.T, ctx context.Context, script string) {
	t.Helper()
	const patience = 20 * time.Second
	for began := time.Now(); ; time.Sleep(50 * time.Millisecond) {
		done, err := chromedp.Run(ctx, chromedp.Evaluate[bool]("!!("+script+")"))
		if err == nil && done {
			return
		}
		if time.Since(began) > patience {
			require.Fail(t, "it never comes true", "%s: %v\n%s", script, err, sourceOf(t, ctx))
		}
	}
}

func does(t *testing.T, ctx context.Context, script string) {
	t.Helper()
	_, err := chromedp.Run(ctx, chromedp.Evaluate[bool]("(() => {"+script+"; return true})()"))
	require.NoError(t, err)
}

// Each figure beside the pots is that of the command, without a script too.
func TestFiguresOfTheBenchAreThoseOfAssay(t *testing.T) {
	s := serve(t, demos(t))
	for name := range demos(t) {
		status, page := s.fetch(t, "/drink/"+name)
		require.Equal(t, http.StatusOK, status)
		assert.Less(t, len(page), 300_000)
		asAssayed(t, page, s.told(t, "200", "assay", name))
	}
}

// A dial that is turned changes the text at its place alone; the brief shows what was and what is, and the figure is
// the one that assay prints of the changed file.
func TestAnAmountIsEdited(t *testing.T) {
	files := demos(t)
	s := serve(t, files)
	ctx := browser(t)
	const name = "harbour-veil.yaml"
	require.NoError(t, chromedp.Do(ctx, chromedp.EmulateViewport(1440, tall), chromedp.Navigate(s.url+"/drink/"+name)))
	becomes(t, ctx, `document.documentElement.classList.contains("scripted")`)
	does(t, ctx, `const i = document.querySelector("input[data-path='build/orange syrup']"); i.focus(); i.value = "45 g"; i.dispatchEvent(new Event("change", {bubbles: true}))`)
	becomes(t, ctx, `document.querySelector("#brief .was")`)
	text, err := chromedp.Run(ctx, chromedp.Evaluate[string](`document.getElementById("text").value`))
	require.NoError(t, err)
	want := strings.Replace(files[name], "- 30 g orange syrup", "- 45 g orange syrup", 1)
	assert.Equal(t, want, text)
	require.NoError(t, os.WriteFile(filepath.Join(s.dir, "again.yaml"), []byte(want), 0o644))
	asAssayed(t, sourceOf(t, ctx), s.told(t, "200", "assay", "again.yaml"))
	becomes(t, ctx, `document.getElementById("heard").textContent.includes("sugars")`)

	// One step of the scale on, by its key, and the focus stays.
	does(t, ctx, `document.activeElement.dispatchEvent(new KeyboardEvent("keydown", {key: "ArrowUp", bubbles: true, cancelable: true}))`)
	becomes(t, ctx, `document.getElementById("text").value.includes("- 45.1 g orange syrup")`)
	becomes(t, ctx, `document.activeElement.dataset.path === "build/orange syrup"`)
	does(t, ctx, `document.querySelector("button[name=step][value='-1 build/orange syrup']").click()`)
	becomes(t, ctx, `document.getElementById("text").value.includes("- 45.0 g orange syrup")`)

	// Saved, it is what stands in the folder, and nothing is struck out any more.
	require.NoError(t, chromedp.Do(ctx, chromedp.Evaluate[chromedp.Void](`document.querySelector("[data-save]").click()`)))
	becomes(t, ctx, `document.getElementById("state")?.textContent.includes("as it is saved") && !document.querySelector("#brief .was")`)
	saved, err := os.ReadFile(filepath.Join(s.dir, name))
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(want, "45 g orange", "45.0 g orange", 1), string(saved))
}

// What is wrong stands under its row as it is typed, and the key goes there; what was calculated stays to be seen.
func TestAFaultStandsAtItsLine(t *testing.T) {
	s := serve(t, demos(t))
	ctx := browser(t)
	require.NoError(t, chromedp.Do(ctx, chromedp.EmulateViewport(1440, tall), chromedp.Navigate(s.url+"/drink/harbour-veil.yaml")))
	becomes(t, ctx, `document.documentElement.classList.contains("scripted")`)
	does(t, ctx, `const x = document.getElementById("text"); x.value = x.value.replace("90 g core:sugar-white", "90 q core:sugar-white"); x.dispatchEvent(new Event("input", {bubbles: true}))`)
	becomes(t, ctx, `document.querySelector(".at-fault .place")?.textContent === "line 18"`)
	becomes(t, ctx, `document.querySelector(".rows b")?.textContent === "18" && !document.querySelector(".under").hidden`)
	becomes(t, ctx, `document.getElementById("brief").classList.contains("old") && document.querySelector("#brief [data-figure]")`)
	does(t, ctx, `document.body.dispatchEvent(new KeyboardEvent("keydown", {key: "F8", bubbles: true, cancelable: true}))`)
	becomes(t, ctx, `document.activeElement.id === "text" && document.activeElement.value.slice(0, document.activeElement.selectionStart).split("\n").length === 18`)
	does(t, ctx, `const x = document.getElementById("text"); x.value = x.value.replace("90 q", "90 g"); x.dispatchEvent(new Event("input", {bubbles: true}))`)
	becomes(t, ctx, `!document.querySelector(".at-fault") && document.querySelector(".under").hidden`)
}

// From a figure one comes to the pot, the food and the row of the table; with a script beside the bench, without one
// on a page that keeps what was typed.
func TestAFigureIsFollowedToItsRow(t *testing.T) {
	files := demos(t)
	s := serve(t, files)
	ctx := browser(t)
	require.NoError(t, chromedp.Do(ctx, chromedp.EmulateViewport(1440, tall), chromedp.Navigate(s.url+"/drink/harbour-veil.yaml")))
	becomes(t, ctx, `document.documentElement.classList.contains("scripted")`)
	does(t, ctx, `document.querySelector("button[formaction$='of=SUGAR']").click()`)
	becomes(t, ctx, `document.querySelector("#panel .trace")?.textContent.includes("core:sugar-white")`)
	becomes(t, ctx, `document.querySelector("#panel .source-rows").textContent.includes("Release 28")`)
	becomes(t, ctx, `document.querySelector("#panel .trace summary").textContent.includes("orange syrup")`)
	typed := strings.Replace(files["harbour-veil.yaml"], "- 30 g orange syrup", "- 60 g orange syrup", 1)
	for _, of := range []string{"SUGAR", "CITAC", "ph", "brix", "solids", "CAFFN", "titratable_acidity"} {
		answer, err := http.PostForm(s.url+"/drink/harbour-veil.yaml/trace?of="+of, url.Values{"text": {typed}, "base": {"x"}})
		status, page := read(t, answer, err)
		assert.Equal(t, http.StatusOK, status, of)
		assert.Contains(t, page, "- 60 g orange syrup", of)
	}
	status, _ := s.fetch(t, "/drink/harbour-veil.yaml/trace?of=nothing")
	assert.Equal(t, http.StatusUnprocessableEntity, status)
}

// What an instrument read is believed, or contradicts its recipe, in words at its pot; it is written where it belongs.
func TestAReadingIsBelievedOrContradicts(t *testing.T) {
	files := demos(t)
	s := serve(t, files)
	ctx := browser(t)
	require.NoError(t, chromedp.Do(ctx, chromedp.EmulateViewport(1440, tall), chromedp.Navigate(s.url+"/drink/garden-tide.yaml")))
	becomes(t, ctx, `document.documentElement.classList.contains("scripted")`)
	read := func(kind, value string) {
		does(t, ctx, `const i = document.getElementById("`+kind+`-passion syrup"); i.closest("details").open = true; i.value = "`+value+`"; i.dispatchEvent(new Event("change", {bubbles: true}))`)
	}
	pot := `document.querySelector("[data-pot='passion syrup']")`
	read("brix", "49.6")
	becomes(t, ctx, pot+`.textContent.includes("49.6") && [...`+pot+`.querySelectorAll(".read b")].every(b => b.textContent === "believed")`)
	text, err := chromedp.Run(ctx, chromedp.Evaluate[string](`document.getElementById("text").value`))
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(files["garden-tide.yaml"], "brix: 50.5 ± 0.2", "brix: 49.6", 1), text)
	read("ph", "5.4")
	becomes(t, ctx, `[...`+pot+`.querySelectorAll(".read.bad b")].some(b => b.textContent === "contradicts")`)
}

// Without a script the same forms do the same, sent whole: fields that say something else, buttons, and the file.
func TestTheBenchWorksWithoutAScript(t *testing.T) {
	files := demos(t)
	s := serve(t, files)
	const name = "harbour-veil.yaml"
	base := workshop.Fingerprint([]byte(files[name]))
	send := func(more url.Values) (int, string) {
		form := url.Values{"text": {strings.ReplaceAll(files[name], "\n", "\r\n")}, "base": {base}}
		for key, values := range more {
			form[key] = values
		}
		answer, err := http.PostForm(s.url+"/drink/"+name+"/edit", form)
		return read(t, answer, err)
	}
	for what, x := range map[string]struct {
		form url.Values
		want string
	}{
		"a field":     {url.Values{"set|30 g|build/orange syrup": {"31 g"}, "set|140 g|build/mint veil": {"140 g"}}, "- 31 g orange syrup"},
		"a button":    {url.Values{"step": {"-1 build/orange syrup"}}, "- 29.9 g orange syrup"},
		"set":         {url.Values{"op": {"set"}, "path": {"mint veil/steep/collect"}, "amount": {"160 g"}}, "collect: 160 g}"},
		"add":         {url.Values{"op": {"add"}, "to": {"build"}, "line": {"9 g core:honey"}}, "  - 9 g core:honey\n"},
		"remove":      {url.Values{"op": {"remove"}, "path": {"orange syrup/core:citric-acid"}}, "90 g core:sugar-white\n    steps"},
		"claim":       {url.Values{"op": {"claim"}, "say": {"Little"}, "check": {"serving(SUGAR) < 30 g"}}, "  - say: Little\n"},
		"read":        {url.Values{"read|brix||mint veil": {"9.5"}}, "measured: {ph: 4.55, brix: 9.5}"},
		"measured":    {url.Values{"op": {"measured"}, "component": {"build"}, "reading": {"ph"}, "value": {"4.3"}}, "\nmeasured: {ph: 4.3}\n"},
		"write":       {url.Values{"op": {"write"}, "line": {"build/orange syrup=33 g", "build/mint veil=120 g"}}, "- 33 g orange syrup\n  - 120 g mint veil"},
		"with a text": {url.Values{"text": {strings.Replace(files[name], "serves: 2", "serves: 3", 1)}}, "serves: 3"},
	} {
		status, page := send(x.form)
		assert.Equal(t, http.StatusOK, status, what)
		assert.Contains(t, unescaped(page), x.want, what)
		assert.Contains(t, page, "changed, not saved", what)
		assert.NotContains(t, page, `class="faults"`, what)
	}
	for what, form := range map[string]url.Values{
		"nothing": {"op": {"paint"}}, "nowhere": {"step": {"1 build/gold"}}, "far": {"step": {"1000000 build/orange syrup"}},
		"two rows": {"op": {"add"}, "to": {"build"}, "line": {"9 g core:honey\n  - 9 g core:salt"}}, "no amount": {"set|30 g|build/orange syrup": {"much"}},
	} {
		status, page := send(form)
		assert.Equal(t, http.StatusOK, status, what)
		assert.Contains(t, page, `class="faults"`, what)
		assert.Contains(t, page, "as it is saved", what)
	}
	now, err := os.ReadFile(filepath.Join(s.dir, name))
	require.NoError(t, err)
	assert.Equal(t, files[name], string(now), "nothing was saved")
}

func unescaped(page string) string {
	return strings.NewReplacer("&#34;", `"`, "&#39;", "'", "&#43;", "+", "&lt;", "<", "&gt;", ">", "&amp;", "&").Replace(page)
}

// A script is answered with the text, the pieces and the faults; of a text with faults no brief comes.
func TestAScriptIsAnsweredInPieces(t *testing.T) {
	files := demos(t)
	s := serve(t, files)
	ask := func(text string) (got struct {
		Text   string
		Pieces map[string]string
		Faults []struct{ Line int }
	}) {
		form := url.Values{"text": {text}}
		req, err := http.NewRequest(http.MethodPost, s.url+"/drink/garden-tide.yaml/edit", strings.NewReader(form.Encode()))
		require.NoError(t, err)
		req.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		req.Header.Set("Sipsum-Piece", "1")
		answer, err := http.DefaultClient.Do(req)
		status, body := read(t, answer, err)
		require.Equal(t, http.StatusOK, status, body)
		require.NoError(t, json.Unmarshal([]byte(body), &got))
		return got
	}
	whole := ask(files["garden-tide.yaml"])
	assert.Contains(t, whole.Pieces, "brief")
	assert.Empty(t, whole.Faults)
	broken := ask(strings.Replace(files["garden-tide.yaml"], "30 g passion", "30 passion", 1))
	assert.NotContains(t, broken.Pieces, "brief")
	assert.Len(t, broken.Faults, 1)
}

const oddDrink = `drink: "<b>Odd</b> & \"'{{.}}"
serves: 1
components:
  "a<script>alert(1)</script>":
    ingredients: ["20 g core:honey", {food: own:x, amount: 3 g, note: "<i>n</i>"}]
    vessel: "<u>copper"
foods:
  x: {name: "=cmd|'<img src=x onerror=alert(1)>", per: 100 g, values: {SUGAR: 20 g}, source: "<a href=javascript:alert(1)>s</a>"}
build:
  - "10 g a<script>alert(1)</script>"
  - 100 g core:water-pure
`

// No name of a drink, a pot or a food becomes anything but text.
func TestNamesAreText(t *testing.T) {
	s := serve(t, map[string]string{"odd.yaml": oddDrink})
	for _, path := range []string{"/drink/odd.yaml", "/drink/odd.yaml/trace?of=SUGAR"} {
		status, page := s.fetch(t, path)
		assert.Equal(t, http.StatusOK, status, path)
		for _, raw := range []string{"<script>", "<img", "<b>Odd", "<i>n", "<u>", "<a href=javascript"} {
			assert.NotContains(t, page, raw, path)
		}
	}
}

// The bench fits a phone, a tablet and a desk, without a fault of axe-core, in light and in dark; so do a file at fault
// and a trace.
func TestTheBenchIsSeenByAll(t *testing.T) {
	files := demos(t)
	files["broken.yaml"] = strings.Replace(files["harbour-veil.yaml"], "90 g core:sugar-white", "90 q core:sugar-white", 1)
	files["odd.yaml"] = oddDrink
	twelve, err := os.ReadFile("../cli/testdata/twelve.yaml")
	require.NoError(t, err)
	files["twelve.yaml"] = string(twelve)
	s := serve(t, files)
	ctx := browser(t)
	axe := os.Getenv("SIPSUM_PAGES") != ""
	for _, path := range []string{"harbour-veil.yaml", "twelve.yaml", "broken.yaml", "odd.yaml", "harbour-veil.yaml/trace?of=SUGAR", "harbour-veil.yaml/trace?of=ph"} {
		for _, wide := range looks {
			require.NoError(t, chromedp.Do(ctx, chromedp.EmulateViewport(wide, tall), inScheme("light"), chromedp.Navigate(s.url+"/drink/"+path)))
			if !strings.Contains(path, "trace") {
				becomes(t, ctx, `document.querySelector(".rows")`)
			}
			does(t, ctx, `for (const d of document.querySelectorAll("details")) d.open = true`)
			fits(t, ctx, wide, path)
			pictured(t, ctx, regexp.MustCompile(`\W`).ReplaceAllString(path, "-")+"-"+strconv.FormatInt(wide, 10))
			if axe && wide != 768 {
				assert.Empty(t, judged(t, ctx, axeCore(t)), "%s at %d", path, wide)
				pictured(t, ctx, regexp.MustCompile(`\W`).ReplaceAllString(path, "-")+"-dark-"+strconv.FormatInt(wide, 10))
			}
		}
	}
}
