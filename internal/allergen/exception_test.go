package allergen_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/allergen"
)

// Each exception takes its leaf out of what it names, and out of nothing like it. What is
// expected is the text that its row in data/allergen_exceptions.csv cites.
func TestEachExceptionTakesOutWhatItNames(t *testing.T) {
	tried := map[string]bool{}
	for _, c := range rowsOf(t, "exceptions.csv") {
		for _, row := range rows(t, "allergen_exceptions.csv") {
			rules, id, _ := strings.Cut(row["id"], "-")
			assert.Equal(t, rules, row["rules"], row["id"])
			if id != c["exception"] {
				continue
			}
			holds := func(list []allergen.Entry) bool {
				return slices.ContainsFunc(list, func(e allergen.Entry) bool { return slices.Contains(e.Leaves, c["leaf"]) })
			}
			d := declare(t, rules, ownItem(c["excepted"]))
			assert.True(t, holds(d.Excepted), "%s: %s", row["id"], c["excepted"])
			assert.False(t, holds(d.Contains), "%s: %s", row["id"], c["excepted"])
			d = declare(t, rules, ownItem(c["declared"]))
			assert.True(t, holds(d.Contains), "%s: %s", row["id"], c["declared"])
			tried[row["id"]] = true
		}
	}
	for _, row := range rows(t, "allergen_exceptions.csv") {
		assert.True(t, tried[row["id"]], "exception %s has no case", row["id"])
		assert.NotEmpty(t, row["source"], row["id"])
		assert.Contains(t, []string{"verified", "secondary", "unverified"}, row["status"], row["id"])
		assert.NotEmpty(t, row["leaves"], row["id"])
	}
}

// Isinglass clears beer and wine without being declared (Annex II, item 4 (b)); in any other
// drink it is fish. Who states an allergen has stated it.
func TestWhatExceptionsDoNotCover(t *testing.T) {
	assert.Equal(t, []string{"Fish"}, names(declare(t, "eu", ownItem("Isinglass")).Contains))
	assert.Equal(t, []string{"Cereals containing gluten (wheat)"}, names(declare(t, "eu", stated("g", "Wheat glucose syrup", "wheat")).Contains))
	assert.Empty(t, declare(t, "eu", stated("g", "Wheat glucose syrup")).Check, "an empty list says what the rules say")
	assert.Equal(t, []string{allergen.CheckContradicts}, checkCodes(declare(t, "us", stated("g", "Wheat glucose syrup"))), "and the United States know no such exception")
	assert.Equal(t, []string{"Peanuts"}, names(declare(t, "eu", ownItem("Highly refined peanut oil")).Contains), "nor the European Union that one")
}
