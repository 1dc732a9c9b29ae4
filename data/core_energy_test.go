package data_test

import (
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
)

// explainedEnergy are the core foods whose energy neither the general factors nor
// SR28's own factors give.
var explainedEnergy = map[string]string{
	"carob-flour":       "its fibre (39.8 g) counts nothing in SR28: 4 × 49.1 + 4 × 4.6 + 9 × 0.65 = 221",
	"vinegar-distilled": "SR28 gives its 5 g of acetic acid about 3.5 kcal/g",
	"pectin-liquid":     "SR28 does not say how 2.1 g of carbohydrate give 11 kcal",
}

// TestEnergyByFactors calculates the energy of the SR28 foods by the factors of
// Regulation (EU) No 1169/2011, Annex XIV. Where that lies more than a tenth from
// SR28's figure, the food's own factors of SR28 (FOOD_DES; Merrill and Watt 1973)
// must give it.
func TestEnergyByFactors(t *testing.T) {
	shared := os.Getenv("SIPSUM_SHARED")
	if shared == "" {
		t.Skip("set SIPSUM_SHARED to the folder that holds tables/sr28")
	}
	const relative, absolute = 0.10, 2.0 // of kcal per 100 g; the second is half a unit of four proximates
	own := energyFactors(t, filepath.Join(shared, "tables", "sr28", "FOOD_DES.txt"))
	all := coreContents(t)
	kcal := map[string]float64{}
	for _, v := range rows(t, "core/values.csv") {
		if v["constituent"] == "ENERC_KCAL" && v["amount"] != "" {
			kcal[v["code"]] = number(t, v, "amount")
		}
	}
	byOwn, general := 0, 0
	for code, f := range byKey(t, "core/foods.csv", "code") {
		printed, ok := kcal[code]
		if !ok || f["use"] != "" {
			continue
		}
		near := func(x float64) bool { return math.Abs(x-printed) <= max(relative*printed, absolute) }
		c := all[code]
		why, explained := explainedEnergy[code]
		switch {
		case near(euEnergy(c)):
			general++
		case near(own[f["sr"]].energy(c)):
			byOwn++
		case explained:
			t.Logf("%s: SR28 %g kcal, by factors %.0f: %s", code, printed, euEnergy(c), why)
			continue
		default:
			t.Errorf("%s: SR28 %g kcal, by general factors %.0f, by its own %.0f", code, printed, euEnergy(c), own[f["sr"]].energy(c))
		}
		assert.False(t, explained, "%s needs no explanation any more", code)
	}
	t.Logf("%d foods by the general factors, %d by SR28's own", general, byOwn)
	require.Greater(t, general, 300)
}

// euEnergy is in kcal per 100 g.
func euEnergy(c contents) float64 {
	acids, fibre := c.total(constituent.OrganicAcids), c["FIBTG"]
	return 4*c["PROCNT"] + 9*c["FAT"] + 4*(c["CHOCDF"]-fibre-acids) + 2*fibre + 3*acids + 7*c["ALC"]
}

// factors are a food's own energy factors in kcal/g.
type factors struct{ protein, fat, carbohydrate float64 }

func (f factors) energy(c contents) float64 {
	const alcohol = 6.93 // Merrill and Watt 1973, table 13
	return f.protein*c["PROCNT"] + f.fat*c["FAT"] + f.carbohydrate*c["CHOCDF"] + alcohol*c["ALC"]
}

// energyFactors reads Pro_Factor, Fat_Factor and CHO_Factor by NDB number; where
// SR28 states none it calculates with 4, 9 and 4 (documentation of SR28).
func energyFactors(t *testing.T, path string) map[string]factors {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	all := map[string]factors{}
	for line := range strings.Lines(string(text)) {
		cells := strings.Split(strings.TrimRight(line, "\r\n"), "^")
		require.Len(t, cells, 14)
		read := func(i int, general float64) float64 {
			if v, err := strconv.ParseFloat(cells[i], 64); err == nil && v > 0 {
				return v
			}
			return general
		}
		all[strings.Trim(cells[0], "~")] = factors{read(11, 4), read(12, 9), read(13, 4)}
	}
	return all
}
