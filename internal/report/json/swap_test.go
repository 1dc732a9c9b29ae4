package jsonreport_test

import (
	"bytes"
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/composition"
	"sipsum/internal/fit"
	"sipsum/internal/food"
	"sipsum/internal/report/json"
	"sipsum/internal/sheet"
)

// A swap in JSON has no list that is null and no number that is none.
func TestASwapIsWritten(t *testing.T) {
	s := small(t)
	x := &fit.Exchanged{Of: &food.Food{ID: food.ID{Table: "core", Code: "a"}}, Kept: []fit.Trait{{Quality: fit.Sweet, Told: fit.Told{Words: "sweetness"}}}, Why: "nothing", Found: []fit.Substitute{{
		Food: &food.Food{ID: food.ID{Table: "core", Code: "b"}}, Sure: 0.5, May: math.NaN(),
		Held: []fit.Trait{{Quality: fit.Sweet, Told: fit.Told{Words: "sweetness", After: composition.Result{Unit: "g/100 ml"}}, Hurt: math.NaN(), Help: 1}},
	}}}
	x.Found[0].After = s.Assay
	var out bytes.Buffer
	require.NoError(t, jsonreport.Swapped(&out, sheet.Swap(s, x, []*sheet.Sheet{s}, nil)))
	assert.NotContains(t, out.String(), "NaN")
	assert.NotContains(t, out.String(), "[null")
	var d struct {
		Schema string
		Found  []struct {
			Food  string
			Low   float64  `json:"probability_low"`
			High  *float64 `json:"probability_high"`
			Pours []any
		}
		Without []string
		Why     string
	}
	require.NoError(t, json.Unmarshal(out.Bytes(), &d))
	assert.Equal(t, "sipsum.swap/1", d.Schema)
	assert.Equal(t, "core:b", d.Found[0].Food)
	assert.InDelta(t, 0.5, d.Found[0].Low, 0)
	assert.Nil(t, d.Found[0].High)
	assert.NotNil(t, d.Found[0].Pours)
	assert.NotNil(t, d.Without)
	assert.Equal(t, "nothing", d.Why)
}
