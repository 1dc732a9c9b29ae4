package main

import (
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

func TestRebuildGivesTheKeptValues(t *testing.T) {
	shared := os.Getenv("SIPSUM_SHARED")
	if shared == "" {
		t.Skip("set SIPSUM_SHARED to the folder that holds tables/sr28")
	}
	require.NoError(t, run(filepath.Join(shared, "tables", "sr28"), filepath.Join("..", "..", "data"), true))
}

func TestFirstDifference(t *testing.T) {
	assert.Zero(t, firstDifference([]byte("a\nb\n"), []byte("a\nb\n")))
	assert.Equal(t, 2, firstDifference([]byte("a\nb\n"), []byte("a\nc\n")))
	assert.Equal(t, 3, firstDifference([]byte("a\nb\n"), []byte("a\nb\nc\n")))
}

func TestByFormula(t *testing.T) {
	amount := func(c record, id string) float64 {
		rows, err := byFormula(c)
		require.NoError(t, err)
		for key, row := range rows {
			if string(key) == id {
				v, err := strconv.ParseFloat(row["amount"], 64)
				require.NoError(t, err)
				return v
			}
		}
		return math.NaN()
	}
	hydrate := record{"code": "x", "formula": "C6H8O7·H2O", "parts": "CITAC×1 WATER×1", "source": "formula"}
	// Relative molecular masses 210.14 and 192.12: JECFA specification of citric acid.
	assert.InDelta(t, 100000*192.12/210.14, amount(hydrate, "CITAC"), 20)
	salt := record{"code": "x", "formula": "K3C6H5O7·H2O", "parts": "CITAC×1 K×3 WATER×1", "rest": "ASH", "source": "formula"}
	assert.InDelta(t, 100, amount(salt, "CITAC")/1000+amount(salt, "WATER")+amount(salt, "ASH"), 1e-3, "leaves make up the whole, potassium rides")

	_, err := byFormula(record{"code": "x", "formula": "NaCl", "parts": "NA×1", "source": "formula"})
	assert.ErrorContains(t, err, "no leaf takes the rest")
	_, err = byFormula(record{"code": "x", "formula": "H2O", "parts": "CITAC×1", "rest": "ASH", "source": "formula"})
	assert.ErrorContains(t, err, "exceed")
}

func TestPressLeavesTheFibre(t *testing.T) {
	value := func(id string, amount float64) food.Value {
		return food.Value{Constituent: constituent.ID(id), Amount: amount, SD: food.None, Low: food.None, High: food.None, Limit: food.None, State: estimate.Measured}
	}
	fruit := &food.Food{Values: []food.Value{value("WATER", 86), value("CHOCDF", 12), value("FIBTG", 2), value("CARTB", 700), value("K", 173)}}
	rows, err := press(record{"code": "juice", "sr": "00000"}, fruit)
	require.NoError(t, err)
	assert.Equal(t, "87.76", rows["WATER"]["amount"], "86 · 100/98")
	assert.Equal(t, "10.2", rows["CHOCDF"]["amount"], "(12 − 2) · 100/98")
	assert.Equal(t, "calculated", rows["K"]["state"])
	assert.NotContains(t, rows, constituent.ID("FIBTG"))
	assert.NotContains(t, rows, constituent.ID("CARTB"), "stays with the pulp")

	_, err = press(record{"sr": "00000"}, &food.Food{})
	assert.ErrorContains(t, err, "states no fibre")
}

func TestSpreadOfAPrintedZeroIsNotStated(t *testing.T) {
	assert.Empty(t, spread(0))
	assert.Empty(t, spread(food.None))
	assert.Equal(t, "0.2083", spread(0.20828))
}
