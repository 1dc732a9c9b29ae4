package htmlreport_test

import (
	"context"
	"encoding/base64"
	"encoding/json"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/report/html"
	"sipsum/internal/report/reporttest"
)

// browser opens a browser for a test; it is gone when the test is.
func browser(t *testing.T) context.Context {
	t.Helper()
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(required(t, "chromium")), chromedp.NoSandbox)
	ctx, cancel := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(cancel)
	ctx, cancel = chromedp.NewContext(ctx)
	t.Cleanup(cancel)
	require.NoError(t, chromedp.Do(ctx), "the browser does not start")
	return ctx
}

// open shows a page.
func open(text string) chromedp.Action[chromedp.Void] {
	return chromedp.Navigate("data:text/html;charset=utf-8;base64," + base64.StdEncoding.EncodeToString([]byte(text)))
}

// on sets the medium that a page is shown on.
func on(media string) chromedp.Action[chromedp.Void] {
	return func(ctx context.Context, t *chromedp.Target) (chromedp.Void, error) {
		_, err := cdp.Call(ctx, t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: media})
		return chromedp.Void{}, err
	}
}

var pdfPage = regexp.MustCompile(`/Type\s*/Page\b`)

// onPaper prints a page as a browser does when somebody presses print, and counts the pages.
func onPaper(t *testing.T, ctx context.Context, text string) int {
	t.Helper()
	require.NoError(t, chromedp.Do(ctx, open(text)))
	pdf, err := chromedp.Run(ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize()))
	require.NoError(t, err)
	return len(pdfPage.FindAll(pdf, -1))
}

// A card is one page on each paper that it may be asked for, under both rules at once; so are
// the guest's and the stage's card and the allergens. A menu takes as many as it needs.
func TestACardIsOnePage(t *testing.T) {
	ctx := browser(t)
	for kind, l := range demoPages(t) {
		if l.Kind == "menu" {
			continue
		}
		for _, paper := range htmlreport.Papers() {
			assert.Equal(t, 1, onPaper(t, ctx, printed(t, l, paper)), "%s on %s", kind, paper)
		}
	}
}

// axeCore is the script of axe-core; without it a test is skipped.
func axeCore(t *testing.T) string {
	t.Helper()
	script := os.Getenv("SIPSUM_PAGES")
	if script == "" {
		t.Skip("skipped: SIPSUM_PAGES does not name the script of axe-core (axe.min.js)")
	}
	axe, err := os.ReadFile(script)
	require.NoError(t, err)
	return string(axe)
}

// violation is what axe-core finds.
type violation struct {
	ID, Help string
	Nodes    []struct{ HTML string }
}

// No rule of axe-core is broken, on a phone, on a wide screen and on paper; a page without a
// language and with pale ink is found out.
func TestPagesAreAccessible(t *testing.T) {
	axe := axeCore(t)
	ctx := browser(t)
	faulty := strings.Replace(printed(t, reporttest.Leaf(), "a5"), `lang="en"`, "", 1)
	faulty = strings.Replace(faulty, "--ink: #221e1a", "--ink: #e0dcd4", 1)
	var seen []string
	for _, v := range judged(t, ctx, axe, faulty, 1280, "screen") {
		seen = append(seen, v.ID)
	}
	assert.Subset(t, seen, []string{"html-has-lang", "color-contrast"})
	for kind, l := range pages(t) {
		page := printed(t, l, "a5")
		for _, look := range []struct {
			wide  int64
			media string
		}{{390, "screen"}, {1280, "screen"}, {559, "print"}} {
			assert.Empty(t, judged(t, ctx, axe, page, look.wide, look.media), "%s at %d on %s", kind, look.wide, look.media)
		}
	}
}

// judged gives what axe-core finds on a page.
func judged(t *testing.T, ctx context.Context, axe, page string, wide int64, media string) []violation {
	t.Helper()
	const tall = 844
	require.NoError(t, chromedp.Do(ctx,
		chromedp.EmulateViewport(wide, tall), on(media), open(page), chromedp.Evaluate[chromedp.Void](axe+";0"),
	))
	found, err := chromedp.Run(ctx, chromedp.Evaluate[string](`axe.run().then(r => JSON.stringify(r.violations))`, chromedp.EvalAwaitPromise))
	require.NoError(t, err)
	var list []violation
	require.NoError(t, json.Unmarshal([]byte(found), &list))
	return list
}

// On a phone nothing but a wide table is wider than the screen.
func TestPagesFitAPhone(t *testing.T) {
	ctx := browser(t)
	for kind, l := range pages(t) {
		const phone, tall = 390, 844
		require.NoError(t, chromedp.Do(ctx, chromedp.EmulateViewport(phone, tall), open(printed(t, l, "a6"))))
		wide, err := chromedp.Run(ctx, chromedp.Evaluate[int64](`document.documentElement.scrollWidth`))
		require.NoError(t, err)
		assert.LessOrEqual(t, wide, int64(phone), kind)
	}
}
