package unit_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/embedded"
	"sipsum/internal/unit"
)

// Every word of the table stands for its unit, in capitals too, and for no measure of another name.
func TestEveryWordStandsForItsUnit(t *testing.T) {
	rows := embedded.Rows("unit_words.csv")
	require.Greater(t, len(rows), 50)
	for _, row := range rows {
		word, in := row.Text("word"), row.Text("unit")
		assert.NotEmpty(t, row.Text("source"), word)
		if in == "°F" {
			in = "°C"
		}
		for _, form := range []string{word, strings.ToUpper(word)} {
			q, err := unit.Scale{Units: []string{in}, Low: -100, High: 100}.Parse("1 " + form)
			require.NoError(t, err, form)
			assert.Equal(t, in, q.Unit, form)
			if m, ok := unit.FindMeasure(form); ok {
				assert.Equal(t, in, m.Name, form)
			}
		}
	}
	for _, m := range unit.Measures() {
		for _, form := range []string{m.Name, strings.ToUpper(m.Name), m.Name + "s", strings.ToUpper(m.Name) + "S"} {
			found, ok := unit.FindMeasure(form)
			assert.True(t, ok || len(m.Name) == 1, form)
			assert.True(t, !ok || found.Name == m.Name, form)
		}
	}
	for _, word := range []string{"T", "t", "oz", "pt", "lb", "part", "shot", "xyz", ""} {
		_, ok := unit.FindMeasure(word)
		assert.False(t, ok, "%s is not safe to guess", word)
	}
}

func TestEveryPortionWordIsOne(t *testing.T) {
	for many, one := range map[string]string{"leaves": "leaf", "Leaf": "leaf", "pieces": "piece", "berries": "berry", "sprigs": "sprig"} {
		word, ok := unit.PortionWord(many)
		assert.True(t, ok, many)
		assert.Equal(t, one, word)
	}
	_, ok := unit.PortionWord("sugar")
	assert.False(t, ok)
	assert.True(t, unit.IsPortion(`fruit (2-1/8" dia)`, unit.OnePiece))
	assert.False(t, unit.IsPortion("cherry, with pit", "cherry"), "no word of the list")
	assert.False(t, unit.IsPortion("leaves", "slice"))
}
