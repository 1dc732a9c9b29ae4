package store

import (
	"encoding/json"
	"fmt"
	"strconv"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// FuzzFacts reads any text as the values of a food: it must end, and what it takes it must write again so that
// it reads the same. What is written is JSON.
func FuzzFacts(f *testing.F) {
	f.Add([]byte(`{}`))
	f.Add([]byte(`{"CITAC":[0.1,0,1,2,7,0.3,1e-300,1e+300,null,12],"inv:2\"5":[null,5,null,"a text"]}`))
	f.Add([]byte(`{"a":[1,2,3],"b":[]}`))
	f.Add([]byte(`{"a":[9e999]}`))
	f.Add([]byte(`{"a\`))
	textOf := func(key int64) (string, error) { return strconv.FormatInt(key, 10), nil }
	itself := func(to []byte, text string) []byte {
		if text == "" {
			return append(to, "null"...)
		}
		return appendQuoted(to, text)
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		values, err := factsOf(text, textOf)
		if err != nil || !utf8.Valid(text) { // SQLite keeps texts as they are, JSON does not
			return
		}
		written := appendFacts(nil, values, itself)
		require.True(t, json.Valid(written), "%s", written)
		again, err := factsOf(written, textOf)
		require.NoError(t, err)
		assert.Equal(t, fmt.Sprintf("%#v", values), fmt.Sprintf("%#v", again))
	})
}

// What is not stated at the end of a value is left out, and comes back as not stated.
func TestFactsAreShort(t *testing.T) {
	none := food.None
	bare := food.Value{Constituent: constituent.Water, Amount: 90, SD: none, Low: none, High: none, Limit: none, State: estimate.Calculated}
	counted := bare
	counted.N = 3
	whole := food.Value{Constituent: "x", Amount: none, SD: 0.5, Low: none, High: 2, Limit: none, State: estimate.Measured, Source: "w", Ref: "p. 7", Line: 12}
	keys := map[string]string{"": "null", "w": "4", "p. 7": "5"}
	text := appendFacts(nil, []food.Value{bare, counted, whole}, func(to []byte, text string) []byte { return append(to, keys[text]...) })
	assert.Equal(t, `{"WATER":[90,1,null,null],"WATER":[90,1,null,null,3],"x":[null,0,4,5,0,0.5,null,2,null,12]}`, string(text))
}
