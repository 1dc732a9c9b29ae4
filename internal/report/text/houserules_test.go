package textreport_test

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/drink"
	"sipsum/internal/houserules"
	"sipsum/internal/report/text"
)

// answered are answers to invented rules, with whatever a file could hold in their words.
func answered() *houserules.Answer {
	return &houserules.Answer{
		Rules: &drink.HouseRules{File: "a\x1b[31m/house-rules.yaml", From: "Invented\u202e, read " + strings.Repeat("long ", 40)},
		Lines: []houserules.Line{
			{Key: "kinds", Rule: "No spirit", Verdict: houserules.Pass, Why: "none"},
			{Key: "limits", Rule: "At most \x1b[2J0.5 % of alcohol in whatever is put on the bar before anybody at all, cold or hot, stirred or not, with or without a garnish", Verdict: houserules.Fails, Why: "a\nb"},
			{Key: "minutes", Rule: "minutes: 15", Verdict: houserules.CannotTell, Why: "the file does not say", Settle: []string{"takes: … min"}},
		},
		Remarks: []string{"Remarked."},
	}
}

// The answers to house rules stand on the page whatever its width, and nothing in them steers a terminal.
func TestHouseRulesOnThePage(t *testing.T) {
	s := tide()
	s.House = answered()
	for _, columns := range []int{40, 80, 120} {
		out := printed(t, textreport.Evidence, s, columns)
		narrow(t, "house rules", out, columns)
		flat := strings.Join(strings.Fields(out), " ")
		assert.Contains(t, flat, "pass: No spirit none fails: At most [2J0.5 %")
		assert.Contains(t, flat, "cannot tell: minutes: 15 the file does not say takes: … min Remarked.")
		assert.NotContains(t, out, "\x1b")
		assert.NotContains(t, out, "\u202e")
	}
	s.House = nil
	assert.NotContains(t, printed(t, textreport.Evidence, s, 80), "House rules")
}

// A brief gives house rules a line and stays on its screen; without any it has none.
func TestHouseRulesOnTheBrief(t *testing.T) {
	for name, text := range briefed(t) {
		s := told(t, text)
		s.House = answered()
		var out bytes.Buffer
		require.NoError(t, textreport.Brief(&out, s, textreport.Style{}), name)
		assert.LessOrEqual(t, strings.Count(out.String(), "\n"), screen, name)
		assert.Contains(t, out.String(), "House    rules: 1 pass · 1 fails, the rule “at most [2J0.5 % of alcohol", name)
		s.House = nil
		out.Reset()
		require.NoError(t, textreport.Brief(&out, s, textreport.Style{}), name)
		assert.NotContains(t, out.String(), "House ", name)
	}
}
