package htmlreport_test

import (
	"bytes"
	"os/exec"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/food"
	"sipsum/internal/proof"
	"sipsum/internal/report/html"
	"sipsum/internal/report/reporttest"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// packOf is a pack of a drink with the rows that its serving is made of.
func packOf(t testing.TB, text string) *proof.Pack {
	t.Helper()
	s := reporttest.Read(t, text)
	in := proof.Inputs{
		Drink: s.Assay.Drink.Name, Files: []proof.File{{Name: reporttest.Markup, Text: text}}, Seed: 1, Draws: 100, Rules: s.Rules,
		Unproven: []string{reporttest.Markup}, Constants: proof.ProgramConstants()[:2],
	}
	rows := map[string]*food.Food{reporttest.Markup: {ID: food.ID{Table: "odd", Code: reporttest.Markup}, Names: []food.Name{{Text: reporttest.Markup}}, Note: reporttest.Markup, Edible: food.None, Density: food.Density{GramsPerMl: food.None, SD: food.None}}}
	for _, row := range s.Assay.Serving.Rows {
		if f := row.Profile.Food; f.ID.Table == "core" {
			rows[f.ID.String()] = f
		}
	}
	in.Gather(proof.Used{
		Rows: rows, Tables: []source.Table{{ID: "core", Title: "Core", Licence: "free"}, {ID: "odd", Title: reporttest.Markup, Licence: reporttest.Markup}},
		Works: func(table, id string) (source.Work, bool) {
			return source.Work{ID: id, Citation: reporttest.Markup}, true
		},
	})
	return &proof.Pack{Schema: proof.Schema, Program: "sipsum test", Short: in.Short("sipsum test"), Inputs: in, Figures: sheet.ProofOf(s)}
}

func proofPage(t testing.TB, p *proof.Pack) string {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, htmlreport.Proof(&out, p))
	return out.String()
}

// The pages of an honest drink and of a hostile one.
func proofPages(t testing.TB) map[string]string {
	t.Helper()
	const sour = "drink: Sour\nserves: 1\ncomponents:\n  syrup:\n    ingredients: [50 g core:sugar-white, 50 g core:lemon-juice]\nbuild: [30 g syrup, 40 g core:espresso]\n"
	return map[string]string{"sour": proofPage(t, packOf(t, sour)), "hostile": proofPage(t, packOf(t, reporttest.HostileDrink()))}
}

// The page holds its pack as data, once, and nothing else that looks like a script, nor anything that is fetched.
func TestAProofPageHoldsItsPackAndNothingThatRuns(t *testing.T) {
	for name, page := range proofPages(t) {
		assert.Equal(t, 1, strings.Count(page, "<script"), name)
		assert.Equal(t, 1, strings.Count(page, proof.BlockBegins), name)
		for _, never := range []string{"javascript:", "onload", "src=", "url(", "@import", "<link", "<img", "<iframe"} {
			assert.NotContains(t, body(page), never, name)
		}
		shown, _, _ := strings.Cut(page, proof.BlockBegins)
		assert.NotRegexp(t, `(?i)free from`, shown, name)
		assert.NotRegexp(t, `NaN|\bInf\b`, shown, name)
		o, err := proof.Read([]byte(page))
		require.NoError(t, err)
		assert.Empty(t, o.Broken, name)
		assert.True(t, o.Page)
	}
}

// A figure opens to the pot, the food, and what its row says, with its source.
func TestAFigureOpensToItsRow(t *testing.T) {
	page := proofPages(t)["sour"]
	at := strings.Index(page, "<span>citric acid</span>")
	require.Positive(t, at)
	citric := page[at : at+strings.Index(page[at:], "</details>\n</details>")]
	assert.Contains(t, citric, "<summary><bdi>syrup</bdi></summary>")
	assert.Contains(t, citric, "core:lemon-juice says of CITAC in 100 g: ")
	assert.Contains(t, citric, `<a href="#row-core-lemon-juice">`)
	assert.Contains(t, page, `<details id="row-core-lemon-juice">`)
}

func TestProofPagesAreValid(t *testing.T) {
	tidy := required(t, "tidy")
	for name, page := range proofPages(t) {
		cmd := exec.Command(tidy, "-errors", "-quiet", "-utf8")
		cmd.Stdin = strings.NewReader(page)
		said, err := cmd.CombinedOutput()
		assert.NoError(t, err, name)
		assert.Empty(t, string(said), name)
	}
}

func TestProofPagesAreAccessibleAndFitAPhone(t *testing.T) {
	axe := axeCore(t)
	ctx := browser(t)
	for name, page := range proofPages(t) {
		page = strings.ReplaceAll(page, "<details", "<details open")
		for _, wide := range []int64{390, 1280} {
			assert.Empty(t, judged(t, ctx, axe, page, wide, "screen"), "%s at %d", name, wide)
			got, err := chromedp.Run(ctx, chromedp.Evaluate[int64](`document.documentElement.scrollWidth`))
			require.NoError(t, err)
			assert.LessOrEqual(t, got, wide, name)
		}
	}
}
