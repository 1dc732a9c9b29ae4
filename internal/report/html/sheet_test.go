package htmlreport_test

import (
	"bytes"
	"context"
	"os/exec"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/report/html"
	"sipsum/internal/report/reporttest"
	"sipsum/internal/sheet"
)

func onSheet(t testing.TB, s *sheet.Sheet, paper string) string {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, htmlreport.Sheet(&out, sheet.PaperOf(s), paper))
	return out.String()
}

// sheets are the sheets of the demos and of the drinks that are hard to print, by name.
func sheets(t testing.TB) map[string]*sheet.Sheet {
	t.Helper()
	all := reporttest.Demos(t, "eu", "us")
	for name, text := range reporttest.PaperDrinks(t) {
		all[name] = reporttest.Read(t, text)
	}
	return all
}

// A sheet is one file: no script, nothing that is fetched, no markup of a stranger, and no promise.
func TestSheetsHoldNothingThatRunsOrIsFetched(t *testing.T) {
	all := sheets(t)
	for name, s := range all {
		page := onSheet(t, s, "a4")
		for _, never := range []string{"<script", "javascript:", "onload", "src=", "href=", "@import", "<link", "<img", "<iframe", "alert(\"x\")</script>", "#ZgotmplZ"} {
			assert.NotContains(t, page, never, name)
		}
		assert.NotContains(t, strings.ReplaceAll(page, "url(#unmeasured)", ""), "url(", name)
		assert.NotRegexp(t, `(?i)free from`, page, name)
		assert.NotRegexp(t, `NaN|\bInf\b`, page, name)
		assert.Contains(t, page, "default-src 'none'", name)
	}
	assert.Contains(t, onSheet(t, all["hostile"], "a4"), "&lt;script&gt;alert(")
}

func TestSheetOnUnknownPaperIsRefused(t *testing.T) {
	s := reporttest.Read(t, reporttest.HostileDrink())
	assert.ErrorContains(t, htmlreport.Sheet(&bytes.Buffer{}, sheet.PaperOf(s), "a0"), "a0")
	assert.ErrorContains(t, htmlreport.Sheet(full{}, sheet.PaperOf(s), "a4"), "disk full")
}

// HTML Tidy has nothing to say of any sheet, warnings included.
func TestSheetsAreValid(t *testing.T) {
	tidy := required(t, "tidy")
	for name, s := range sheets(t) {
		cmd := exec.Command(tidy, "-errors", "-quiet", "-utf8")
		cmd.Stdin = strings.NewReader(onSheet(t, s, "a4"))
		said, err := cmd.CombinedOutput()
		assert.NoError(t, err, name)
		assert.Empty(t, string(said), name)
	}
}

// beforeAnnex is a sheet without what stands behind its first two pages.
func beforeAnnex(page string) string {
	from, to := strings.Index(page, `<div class="annex">`), strings.LastIndex(page, "</main>")
	return page[:from] + page[to:]
}

// The brief is one page and the card another, on both papers, whatever the drink; the annex begins
// on the third.
func TestBriefAndCardAreTwoPages(t *testing.T) {
	ctx := browser(t)
	for name, s := range sheets(t) {
		for _, paper := range []string{"a4", "letter"} {
			page := onSheet(t, s, paper)
			assert.Equal(t, 2, onPaper(t, ctx, strings.Replace(beforeAnnex(page), ".paper section.page { break-after: page;", ".paper section.first { break-after: page;", 1)), "%s on %s", name, paper)
			assert.Greater(t, onPaper(t, ctx, page), 2, "%s on %s", name, paper)
		}
	}
}

// No rule of axe-core is broken on a phone, on a wide screen in the dark, and on paper.
func TestSheetsAreAccessible(t *testing.T) {
	axe := axeCore(t)
	ctx := browser(t)
	all := sheets(t)
	for _, name := range []string{"garden-tide", "hostile", "contradicts", "fizz"} { // all forms that a sheet has
		page := onSheet(t, all[name], "a4")
		dark := strings.ReplaceAll(page, "(prefers-color-scheme: dark)", "(min-width: 1px)")
		for _, look := range []struct {
			page  string
			wide  int64
			media string
		}{{page, 360, "screen"}, {dark, 1280, "screen"}, {page, 700, "print"}} {
			assert.Empty(t, judged(t, ctx, axe, look.page, look.wide, look.media), "%s at %d on %s", name, look.wide, look.media)
		}
	}
}

// At each width nothing is wider than the screen, no table is cut, no text of a drawing lies outside the
// screen, and no figure is parted.
func TestSheetsFitEveryScreen(t *testing.T) {
	ctx := browser(t)
	all := sheets(t)
	for name, s := range all {
		page := onSheet(t, s, "a4")
		for _, wide := range []int64{360, 768, 1440} {
			assert.Empty(t, misfits(t, ctx, page, wide), "%s at %d", name, wide)
		}
	}
	faulty := strings.Replace(onSheet(t, all["foam"], "a4"), "</h1>", strings.Repeat("m", 400)+"</h1><p style=\"white-space:nowrap\">"+strings.Repeat("m", 400)+"</p>", 1)
	assert.NotEmpty(t, misfits(t, ctx, faulty, 360))
}

// misfits lists what does not fit a screen.
func misfits(t *testing.T, ctx context.Context, page string, wide int64) []string {
	t.Helper()
	const tall = 900
	require.NoError(t, chromedp.Do(ctx, chromedp.EmulateViewport(wide, tall), on("screen"), open(page)))
	list, err := chromedp.Run(ctx, chromedp.Evaluate[string](`(() => {
		const found = [], room = document.documentElement.clientWidth
		if (document.documentElement.scrollWidth > room) found.push("the page is " + document.documentElement.scrollWidth + " wide")
		for (const r of document.querySelectorAll(".sheet")) {
			if (r.scrollWidth > r.clientWidth + 1) found.push("a table is cut: " + r.getAttribute("aria-label"))
		}
		for (const t of document.querySelectorAll("svg text")) {
			const b = t.getBoundingClientRect()
			if (b.width > 0 && (b.left < -1 || b.right > room + 1)) found.push("drawn outside: " + t.textContent)
		}
		for (const e of document.querySelectorAll("[data-figure]")) {
			if (e.getClientRects().length > 1 && !e.classList.contains("word")) found.push("parted: " + e.textContent)
		}
		for (const e of document.querySelectorAll(".kind")) {
			const words = document.createRange()
			words.selectNodeContents(e)
			if (words.getClientRects().length > 1) found.push("parted: " + e.textContent)
		}
		for (const e of document.querySelectorAll("main *")) {
			const s = getComputedStyle(e)
			if (s.overflowX === "hidden" && e.scrollWidth > e.clientWidth + 1 && e.namespaceURI.endsWith("xhtml")) found.push("clipped: " + e.textContent.slice(0, 40))
		}
		return found.join("\n")
	})()`))
	require.NoError(t, err)
	if list == "" {
		return nil
	}
	return strings.Split(list, "\n")
}
