package houserules_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/houserules"
	"sipsum/internal/recipe"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// readRules reads rules that are well written. All rules of these tests are invented.
func readRules(t testing.TB, text string) *drink.HouseRules {
	t.Helper()
	h, faults := drink.ParseHouseRules("rules", []byte("rules: \"Invented\"\n"+text))
	houserules.Check(h, faults)
	require.NoError(t, faults.Err(fail.Wrong), text)
	return h
}

// served keeps the sheets of the drinks of these tests, by their text.
var served = map[string]*sheet.Sheet{}

func noWorks(string, string) (source.Work, bool) { return source.Work{}, false }

// serve calculates a drink as the command does.
func serve(t testing.TB, text string) *sheet.Sheet {
	t.Helper()
	if s, ok := served[text]; ok {
		return s
	}
	d, faults := drink.Parse("test", []byte(text), nil)
	r, err := recipe.Find(context.Background(), d, faults, assaytest.Core(t))
	require.NoError(t, err)
	ens := estimate.Ensemble{Seed: 1, N: 201, Journal: &estimate.Journal{}}
	a, err := assay.Prepare(r, ens).Run(context.Background(), nil, assay.Want{Intervals: true, Chemistry: true, Draws: true})
	require.NoError(t, err)
	s, err := sheet.Build("test", a, nil, noWorks, []string{"eu"})
	require.NoError(t, err)
	served[text] = s
	return s
}

// answered answers rules of a drink.
func answered(t testing.TB, text, rules string) *houserules.Answer {
	t.Helper()
	s := serve(t, text)
	require.NoError(t, sheet.JudgeHouse(context.Background(), s, readRules(t, rules), noWorks, nil))
	return s.House
}

// only gives the one line of an answer.
func only(t testing.TB, text, rules string) houserules.Line {
	t.Helper()
	lines := answered(t, text, rules).Lines
	require.Len(t, lines, 1, rules)
	return lines[0]
}
