package label_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/label"
)

// accepts gives what an authority accepts of the rows of an EU card, "4.4 to 8.4", by row.
func accepts(t *testing.T, amounts map[constituent.ID]float64) map[string]string {
	t.Helper()
	works, err := label.Explain("eu", facts(100, amounts))
	require.NoError(t, err)
	out := map[string]string{}
	for _, w := range works {
		if w.Accepted != nil {
			assert.Equal(t, label.Per100ml, w.Basis, "the guidance is on what is declared in 100 g")
			assert.Equal(t, "secondary", w.Accepted.Status)
			out[w.Row] = w.Accepted.Low + " to " + w.Accepted.High
		}
	}
	return out
}

// Commission guidance of December 2012, table 1: limits of its bands. From 10 g on the share
// is of the widened figure too: 10 is 9.5 to 10.4, and 0.8 × 9.5 is 7.6, 1.2 × 10.4 is 12.48.
func TestToleranceAtTheEdgesOfItsBands(t *testing.T) {
	for _, c := range []struct {
		key    string
		tag    constituent.ID
		amount float64
		want   string
	}{
		{"protein", "PROCNT", 9.9, "7.9 to 12"}, {"protein", "PROCNT", 10, "7.6 to 12"}, {"protein", "PROCNT", 40, "32 to 48"}, {"protein", "PROCNT", 41, "33 to 49"},
		{"fat", "FAT", 9.9, "8.4 to 11"}, {"fat", "FAT", 10, "7.6 to 12"}, {"fat", "FAT", 0.6, "0 to 2.1"},
		{"sugars", "SUGAR", 2.6, "0.6 to 4.6"}, {"sugars", "SUGAR", 2.2, "<0.5 to 4.2"}, {"fibre", "FIBTG", 3, "1.0 to 5.0"},
		{"saturates", "FASAT", 3.9, "3.1 to 4.7"}, {"saturates", "FASAT", 4, "3.2 to 4.8"},
	} {
		assert.Equal(t, c.want, accepts(t, map[constituent.ID]float64{c.tag: c.amount, "FAT": max(c.amount, 0)})[c.key], "%s %g", c.key, c.amount)
	}
}

// What nobody has read stays out: salt, sodium and vitamins; energy has no tolerance of its
// own, and words or a declared 0 are no figure to add to.
func TestNoToleranceIsMadeUp(t *testing.T) {
	got := accepts(t, map[constituent.ID]float64{"NA": 400, "PROCNT": 0.3, "CHOAVL": 5, "CHOCDF": 5, "POLYL": 3, "FAT": 0})
	assert.Equal(t, map[string]string{"carbohydrate": "6.0 to 10"}, got)
	works, err := label.Explain("us", facts(100, map[constituent.ID]float64{"PROCNT": 6}))
	require.NoError(t, err)
	for _, w := range works {
		assert.Nil(t, w.Accepted, "%s of us: its tolerances are limits one way, and a card cannot tell what was added", w.Row)
	}
}

// Bands of one row stand from the highest down, each is an amount or a share, and names rows
// that cards have.
func TestTolerancesAndColoursAreSourced(t *testing.T) {
	rowsOf := map[string][]string{}
	for _, r := range table(t, "card_rows.csv") {
		rowsOf[r["rules"]] = append(rowsOf[r["rules"]], r["key"])
	}
	rowsOf["uk"] = rowsOf["eu"]
	last := map[string]float64{}
	for _, r := range table(t, "tolerances.csv") {
		assert.NotEqual(t, r["amount"] == "", r["percent"] == "", "%v", r)
		assert.Contains(t, []string{"verified", "secondary"}, r["status"], "%v", r)
		assert.NotEmpty(t, r["source"], "%v", r)
		from := figure(t, r["from"])
		if above, ok := last[r["rules"]+r["rows"]]; ok {
			assert.Less(t, from, above, "%v", r)
		}
		last[r["rules"]+r["rows"]] = from
		assert.Contains(t, []string{"least", "most", "both"}, r["side"], "%v", r)
		for rules := range strings.FieldsSeq(r["rules"]) {
			for row := range strings.FieldsSeq(r["rows"]) {
				assert.Contains(t, rowsOf[rules], row)
			}
		}
	}
	for _, r := range table(t, "colours.csv") {
		assert.Less(t, figure(t, r["green_to"]), figure(t, r["red_above"]), "%v", r)
		assert.Equal(t, r["portion_red_above"] == "", r["portion_over_ml"] == "", "%v", r)
		assert.True(t, slices.Contains(rowsOf["eu"], r["row"]), "%v: uk has the rows of eu", r)
		assert.Contains(t, []string{"verified", "secondary"}, r["status"], "%v", r)
		assert.NotEmpty(t, r["source"], "%v", r)
	}
}

func figure(t *testing.T, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	return x
}
