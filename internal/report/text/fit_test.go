package textreport_test

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/fit"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// weir fits an invented drink with targets.
func weir(t testing.TB) *sheet.Fitted {
	t.Helper()
	const draws = 200
	r := assaytest.Found(t, assaytest.Core(t), string(assaytest.FileOf(t, "../testdata/drinks/pear-weir.drink.yaml")))
	b := fit.Bench{
		Central: assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 1}), Drawn: assay.Prepare(r, estimate.Ensemble{Seed: 1, N: draws + 1}),
		Drink: r.Drink, Declared: func(string) (bool, error) { return false, nil },
	}
	res, err := b.Fit(context.Background(), fit.Read(r.Drink, &fail.List{}))
	require.NoError(t, err)
	s, err := sheet.Build("sipsum test", res.After, nil, func(_, id string) (source.Work, bool) { return source.Work{ID: id}, true }, nil)
	require.NoError(t, err)
	return sheet.Fit(s, res, nil)
}

// The page of a fit, as it is printed.
func TestAFitIsPrinted(t *testing.T) {
	f := weir(t)
	var out bytes.Buffer
	require.NoError(t, textreport.Fit(&out, f, textreport.Style{}))
	path := filepath.Join("testdata", "fit", "pear-weir.txt")
	if *update {
		require.NoError(t, os.WriteFile(path, out.Bytes(), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, string(want), out.String())
}

// No line is wider than a page that is narrow, and a name that takes the terminal over is made harmless.
func TestAFitFoldsAndIsHarmless(t *testing.T) {
	f := weir(t)
	f.Moves[0].Name = "pear\x1b[2J"
	f.Line = "a\x1b]0;x\x07b"
	var out bytes.Buffer
	const narrow = 40
	require.NoError(t, textreport.Fit(&out, f, textreport.Style{Width: narrow}))
	assert.NotContains(t, out.String(), "\x1b")
	for _, line := range bytes.Split(out.Bytes(), []byte("\n")) {
		assert.LessOrEqual(t, len([]rune(string(line))), narrow, string(line))
	}
}
