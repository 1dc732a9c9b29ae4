package ciqual_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/tables/ciqual"
	"sipsum/internal/tables/tablestest"
)

const (
	fourteen = "../../../testdata/tables/ciqual"
	invented = "../../../testdata/tables/ciqual-xml"
)

var none = math.NaN()

// Figures as printed in the cells of the workbook of 2020.
func spots() []tablestest.Spot {
	return []tablestest.Spot{
		tablestest.At("18071", "OA", estimate.Calculated, 0.033, none, "Acides organiques 0,033"),
		tablestest.At("18071", "SUGAR", estimate.Trace, none, none, "Sucres traces"),
		tablestest.At("18071", "FRUS", estimate.Below, none, none, "Fructose < 0,1"),
		tablestest.At("18071", "WATER", estimate.Calculated, 97.8, none, "Eau 97,8"),
		tablestest.At("18071", "ENERC_KCAL", estimate.Calculated, 7.64, none, "Energie, Règlement UE 7,64 kcal"),
		tablestest.At("2031", "OA", estimate.Calculated, 5, none, "Acides organiques 5"),
		tablestest.At("2031", "VITC", estimate.Calculated, 6.4, none, "Vitamine C 6,4"),
		tablestest.At("2074", "FRUS", estimate.Calculated, 5.96, none, "Fructose 5,96"),
		tablestest.At("31008", "CHOAVL", estimate.Calculated, 81.7, none, "Glucides 81,7; Polyols -"),
		tablestest.At("19023", "CHOAVL", estimate.Calculated, 4.85, none, "Glucides 4,85; Polyols 0"),
		tablestest.At("13037", "CHOAVL", estimate.Calculated, 9.01, none, "Glucides 10,9; Polyols 1,89; Sucres 9,01"),
		tablestest.At("31054", "OA", estimate.Trace, none, none, "Acides organiques traces"),
		tablestest.At("1003", "ALC", estimate.Calculated, 23.8, none, "Alcool 23,8"),
		tablestest.At("13008", "NACL", estimate.Below, none, none, "Sel < 0,013"),
		tablestest.At("9621", "ENERC", estimate.Calculated, 1160, none, "first row of 9621: Energie, Règlement UE 1160 kJ"),
		tablestest.At("9621~2", "WATER", estimate.Calculated, 9.05, none, "second row of 9621: Eau 9,05"),
		tablestest.At("9621~2", "ciqual:332", estimate.Calculated, 1160, none, "second row of 9621: Energie, N x facteur Jones 1160 kJ"),
	}
}

func names() map[string]string {
	return map[string]string{
		"2031": "Lime juice, pure juice", "5001": "Beer, regular (4-5° alcohol)", "9621~2": "Wheat bran", "24999": "Desert (average)",
	}
}

func TestFourteenRows(t *testing.T) {
	tablestest.Run(t, ciqual.Format, fourteen, tablestest.Want{
		Columns: 67, Foods: 14, Values: 779, First: "24999", Last: "5001", Names: names(), Spots: spots(),
		Damage: tablestest.Damage{File: "ciqual.csv", Line: 5, Number: ";15000.0;", Replaced: ";%;", Missing: "ciqual.csv", NoAmount: true},
	})
}

// Counts of foods (3,185 codes and the second row of 9621) and of filled cells
// of the workbook: 129,676 numbers, 16,630 limits and 1,904 traces.
func TestWholeRelease(t *testing.T) {
	dir := tablestest.Published(t, "ciqual2020")
	tablestest.Run(t, ciqual.Format, dir, tablestest.Want{
		Columns: 67, Foods: 3186, Values: 129_676 + 16_630 + 1_904, First: "24999", Last: "42501", Names: names(), Spots: spots(),
	})
	assertWhole(t, dir)
}

func assertWhole(t *testing.T, dir string) {
	t.Helper()
	release := tablestest.Open(t, ciqual.Format, dir)
	assert.Equal(t, "2020", release.Table.Edition)
	assert.Equal(t, "Anses. 2020. Ciqual French food composition table.", release.Table.Citation)
	count := map[estimate.State]int{}
	english := 0
	for f, err := range release.Foods {
		require.NoError(t, err)
		for _, v := range f.Values {
			count[v.State]++
		}
		if f.Names[0].Language == "en" {
			english++
		}
	}
	assert.Equal(t, map[estimate.State]int{estimate.Calculated: 129_676, estimate.Below: 16_630, estimate.Trace: 1_904}, count)
	assert.Equal(t, 3186, english)
}

func TestMarks(t *testing.T) {
	foods := tablestest.Foods(t, ciqual.Format, fourteen)
	espresso := foods["18071"]
	limits := map[constituent.ID]float64{
		"FRUS":  0.1,  // < 0,1
		"ID":    20,   // < 20
		"SUGAR": 0.05, // traces; sugars commonly have one decimal
		"POLYL": 0.5,  // < 0,5
	}
	for tag, want := range limits {
		assert.InDelta(t, want, tablestest.Value(t, espresso, tag).Limit, 1e-12, tag)
	}
	v := tablestest.Value(t, espresso, "CHOAVL") // Glucides 1,16 with polyols anywhere below 0,5
	assert.InDelta(t, 1.16-0.25, v.Amount, 1e-12)
	assert.InDelta(t, 1.16-0.5, v.Low, 1e-12)
	assert.InDelta(t, 1.16, v.High, 1e-12)
	assert.Equal(t, "31000 − 34000: 1.16 − at most 0.5", v.Ref)
	_, ok := foods["2031"].Value("FRUS") // -
	assert.False(t, ok, "not determined is not a value")
	assert.Equal(t, "the publisher's table has code 9621 twice; this is the row that comes second", foods["9621~2"].Note)
	assert.Empty(t, foods["9621"].Note)
	assert.Equal(t, []food.Name{{Language: "en", Text: "Beer, regular (4-5° alcohol)"}, {Language: "fr", Text: `Bière "coeur de marché" (4-5° alcool)`}}, foods["5001"].Names)
	assert.Equal(t, "eaux et autres boissons / boissons sans alcool / jus", foods["2031"].PublisherGroup)
}

func TestGroups(t *testing.T) {
	foods := tablestest.Foods(t, ciqual.Format, fourteen)
	for code, want := range map[string]string{
		"18071": "coffee drink", "2031": "citrus juice", "2074": "fruit juice", "13037": "fruit", "31008": "honey", "19023": "milk",
		"15000": "nut", "5001": "beer", "1003": "spirit", "31054": "other", "24999": "other",
	} {
		assert.Equal(t, want, foods[code].Group, foods[code].Name())
	}
}

func TestInventedXMLSet(t *testing.T) {
	tablestest.Run(t, ciqual.Format, invented, tablestest.Want{
		Columns: 8, Foods: 3, Values: 10, First: "90001", Last: "90003",
		Names: map[string]string{"90001": "Invented juice, sour", "90002": "Invented shandy (<1° alc.) & water", "90003": "Son inventé"},
		Spots: []tablestest.Spot{
			tablestest.At("90001", "OA", estimate.Calculated, 5.2, none, "teneur 5,2"),
			tablestest.At("90001", "SUGAR", estimate.Below, none, none, "teneur < 0,5"),
			tablestest.At("90001", "CHOAVL", estimate.Calculated, 1.75, none, "3 less 1,25"),
			tablestest.At("90002", "POLYL", estimate.Trace, none, none, "teneur traces"),
			tablestest.At("90003", "ciqual:54104", estimate.Calculated, 1.5, none, "teneur 1,5"),
		},
	})
	foods := tablestest.Foods(t, ciqual.Format, invented)
	acids := tablestest.Value(t, foods["90001"], "OA")
	assert.Equal(t, food.Value{Constituent: "OA", Amount: 5.2, Low: 4.9, High: 5.6, State: estimate.Calculated, Source: "ciqual-A", Ref: "65000, source 11"}, without(acids))
	vitamin := tablestest.Value(t, foods["90003"], "ciqual:54104")
	assert.False(t, food.Stated(vitamin.Low), "the least is a trace, which is no figure")
	assert.Equal(t, 2.0, vitamin.High)
	assert.Equal(t, "boissons inventées / avec alcool / cocktails", foods["90002"].PublisherGroup)
	assert.Equal(t, "cereal", foods["90003"].Group)
	assert.Equal(t, []food.Name{
		{Language: "en", Text: "Invented juice, sour"}, {Language: "fr", Text: "Jus inventé, acidulé"},
		{Language: "fr", Text: "Jus inventé"}, {Language: "la", Text: "Fructus fictus"},
	}, foods["90001"].Names)
}

// without leaves the figures out that are not stated, so that values compare.
func without(v food.Value) food.Value {
	for _, x := range []*float64{&v.SD, &v.Low, &v.High, &v.Limit} {
		if !food.Stated(*x) {
			*x = 0
		}
	}
	return v
}
