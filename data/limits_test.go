package data_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Every limit is a range with a source, and none is from memory.
func TestLimitsAreSourced(t *testing.T) {
	for _, r := range rows(t, "limits.csv") {
		at := r["quantity"] + " " + r["unit"]
		assert.Less(t, number(t, r, "low"), number(t, r, "high"), at)
		assert.NotEmpty(t, r["source"], at)
		assert.NotContains(t, r["source"], "from memory", at)
	}
}
