package ifct_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/tables/ifct"
	"sipsum/internal/tables/tablestest"
)

const invented = "../../../testdata/tables/ifct"

var none = math.NaN()

func TestInventedRelease(t *testing.T) {
	tablestest.Run(t, ifct.Format, invented, tablestest.Want{
		Columns: 207, Foods: 3, Values: 3 * 207, First: "Z001", Last: "Z003",
		Names: map[string]string{"Z002": `Invented milk, "whole"`},
		Spots: []tablestest.Spot{
			tablestest.At("Z001", "CITAC", estimate.Measured, 4000, 250, "citac 4, citac_e 0.25 g"),
			tablestest.At("Z001", "CHOAVL", estimate.Measured, 3, none, "cho 3"),
			tablestest.At("Z001", "ifct:choavldf", estimate.Measured, 8, none, "choavldf 8"),
			tablestest.At("Z001", "ifct:orgac", estimate.Measured, 4.5, none, "orgac 4.5"),
			tablestest.At("Z001", "GLUS", estimate.Measured, 2, none, "glus 2"),
			tablestest.At("Z001", "ifct:glu", estimate.Measured, 0.03125, none, "glu 0.03125, labelled as glucose"),
			tablestest.At("Z001", "THIA", estimate.Measured, 0.00025, none, "thia 2.5e-7 g"),
			tablestest.At("Z001", "ENERC", estimate.Measured, 111, 5, "enerc 111, enerc_e 5 kJ"),
			tablestest.At("Z001", "QUINAC", estimate.Unknown, none, none, "quinac 0, quinac_e 0"),
			tablestest.At("Z002", "CITAC", estimate.Unknown, none, none, "citac 0, citac_e 0"),
			tablestest.At("Z002", "LACS", estimate.Measured, 5, none, "lactose 5"),
			tablestest.At("Z003", "OXALAC", estimate.Measured, 250, none, "oxalt 0.25"),
		},
		Damage: tablestest.Damage{File: "compositions.csv", Line: 3, Number: ",300,", Replaced: ",%,", Missing: "compositions.csv"},
	})
}

func TestLocalNames(t *testing.T) {
	foods := tablestest.Foods(t, ifct.Format, invented)
	assert.Equal(t, []food.Name{{Language: "en", Text: "Invented juice, sour"}, {Language: "la", Text: "Fructus fictus"}, {Language: "hi", Text: "Khatta ras"}, {Language: "ta", Text: "Pulippu"}}, foods["Z001"].Names)
	assert.Equal(t, "Kh. Soh invented; [Place of collection: nowhere]", foods["Z001"].Note)
	assert.Equal(t, []food.Name{{Language: "en", Text: "Invented seed"}, {Language: "la", Text: "Semen fictum"}, {Language: "as", Text: "Guti"}, {Language: "en", Text: "Made-up seed"}}, foods["Z003"].Names)
	assert.Equal(t, "B., H. Beej", foods["Z003"].Note)
}

// Single figures as printed in compositions.csv of the package, in g per 100 g
// (energy in kJ), cited to check the conversion of units.
func TestWholeRelease(t *testing.T) {
	tablestest.Run(t, ifct.Format, tablestest.Published(t, "ifct2017"), tablestest.Want{
		Columns: 207, Foods: 542, Values: 542 * 207, First: "A001", Last: "T014",
		Names: map[string]string{"E033": "Lemon, juice", "L002": "Milk, whole, Cow"},
		Spots: []tablestest.Spot{
			tablestest.At("E033", "CITAC", estimate.Measured, 3490, 7.1, "citac 3.49, citac_e 0.0071"),
			tablestest.At("E033", "MALAC", estimate.Measured, 243, 5, "malac 0.243, malac_e 0.005"),
			tablestest.At("E033", "CHOAVL", estimate.Measured, 2.59, 0.06, "cho 2.59, cho_e 0.06"),
			tablestest.At("E033", "ifct:choavldf", estimate.Unknown, none, none, "choavldf 0"),
			tablestest.At("E033", "QUINAC", estimate.Unknown, none, none, "quinac 0"),
			tablestest.At("E033", "ENERC", estimate.Measured, 153, 9, "enerc 153, enerc_e 9"),
			tablestest.At("E033", "VITC", estimate.Measured, 48.16, 4.35, "vitc 0.04816, vitc_e 0.00435"),
			tablestest.At("E033", "THIA", estimate.Measured, 0.04, 0.007, "thia 0.00004, thia_e 0.000007"),
			tablestest.At("L002", "LACS", estimate.Measured, 4.28, 0.1, "lactose 4.28, lactose_e 0.1"),
			tablestest.At("L002", "CITAC", estimate.Unknown, none, none, "citac 0"),
			tablestest.At("A001", "OXALAC", estimate.Measured, 226, none, "oxalt 0.226, oxalt_e 0"),
			tablestest.At("T001", "ENERC", estimate.Unknown, none, none, "enerc 0"),
		},
	})
}
