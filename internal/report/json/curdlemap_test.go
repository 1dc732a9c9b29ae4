package jsonreport_test

import (
	"bytes"
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/composition"
	"sipsum/internal/curdling"
	"sipsum/internal/estimate"
	"sipsum/internal/report/json"
)

// curdleMapOf gives chemistry.curdle_map of a document.
func curdleMapOf(t *testing.T, c *curdling.Judgement) []byte {
	t.Helper()
	s := small(t)
	s.Assay.Curdling = c
	var out bytes.Buffer
	require.NoError(t, jsonreport.Assay(&out, s))
	var document struct {
		Chemistry struct {
			CurdleMap json.RawMessage `json:"curdle_map"`
		}
	}
	require.NoError(t, json.Unmarshal(out.Bytes(), &document))
	return document.Chemistry.CurdleMap
}

func TestCurdleMapKeepsItsForm(t *testing.T) {
	cell := func(pH, smooth float64, v curdling.Verdict) curdling.Cell {
		return curdling.Cell{PH: pH, Smooth: smooth, Verdict: v}
	}
	got := curdleMapOf(t, &curdling.Judgement{
		Milk: []string{"steamed milk"}, Sour: "lemon syrup", Protein: "casein of milk", Celsius: 55,
		PH:    composition.Result{Summary: estimate.Summary{Mean: 5.62, SD: 0.08, Low: 5.49, High: 5.76}, Unit: "pH"},
		Stand: curdling.Stand{Curdling: curdling.Band{Celsius: 55, Low: 5.4, High: 6, Source: "Author 2001"}, MilkShare: 0.52, Smooth: 0.34, Verdict: curdling.Doubtful},
		Map: curdling.Map{Doses: []float64{0, 1}, Milks: []float64{1}, Shares: []float64{0.5}, Cells: [][]curdling.Cell{
			{cell(6.6, 1, curdling.Smooth), cell(5.6, 0.34, curdling.Doubtful)},
		}},
		Ways: []curdling.Way{
			{Kind: curdling.Buffer, Salt: curdling.Salts()[0], Grams: 0.2, Celsius: 55, PH: 5.98, Smooth: 0.95},
			{Kind: curdling.Cooler, Celsius: 33.5, PH: 5.62, Smooth: 0.97},
		},
	})
	assert.JSONEq(t, `{
		"milk": ["steamed milk"], "pour_c": 55,
		"estimate": {
			"sour": "lemon syrup", "protein": "casein of milk",
			"curdling_ph": {"low": 5.4, "high": 6, "source": "Author 2001"},
			"ph": {"mean": 5.62, "low": 5.49, "high": 5.76, "at_c": 25},
			"milk_share": 0.52, "smooth": 0.34, "verdict": "doubtful",
			"doses": [0, 1], "milks": [1], "milk_shares": [0.5],
			"cells": [[
				{"ph": 6.6, "smooth": 1, "verdict": "smooth"},
				{"ph": 5.6, "smooth": 0.34, "verdict": "doubtful"}
			]],
			"ways_out": [
				{"change": "buffer", "grams": 0.2, "salt": "trisodium citrate", "additive": "E 331", "pour_c": 55, "ph": 5.98, "smooth": 0.95},
				{"change": "cooler", "pour_c": 33.5, "ph": 5.62, "smooth": 0.97}
			]
		}
	}`, string(got))
}

func TestCurdleMapWithoutAnEstimate(t *testing.T) {
	assert.Nil(t, curdleMapOf(t, nil), "a drink without milk has no map")
	got := curdleMapOf(t, &curdling.Judgement{Milk: []string{"oat"}, Celsius: 6, Why: "unknown", Do: "titrate", PH: composition.Result{Summary: estimate.Summary{Mean: math.NaN()}}})
	assert.JSONEq(t, `{"milk": ["oat"], "pour_c": 6, "why": "unknown", "reading": "titrate"}`, string(got))
}
