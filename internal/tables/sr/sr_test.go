package sr_test

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/tables/sr"
	"sipsum/internal/tables/tablestest"
)

const trimmed = "../../../testdata/tables/sr"

var none = math.NaN()

// Values as printed in NUT_DATA.txt of SR28; sd = Std_Error · √Num_Data_Pts.
var spots = []tablestest.Spot{
	tablestest.At("01001", "PROCNT", estimate.Measured, 0.85, 0.074*4, "~01001~^~203~^0.85^16^0.074^~1~^~~^"),
	tablestest.At("01001", "FD", estimate.Measured, 2.8, 0.674*math.Sqrt(19), "~01001~^~313~^2.8^19^0.674^~1~^~A~^"),
	tablestest.At("01077", "VITD", estimate.Measured, 1.3, none, "~01077~^~328~^1.3^24^^~1~^~AS~^"),
	tablestest.At("01077", "sr:324", estimate.Measured, 51, 3.297*math.Sqrt(24), "~01077~^~324~^51^24^3.297^~1~^~A~^"),
	tablestest.At("09160", "SUCS", estimate.Measured, 0.48, 0.114, "~09160~^~210~^0.48^4^0.057^~1~^~A~^"),
	tablestest.At("09160", "LACS", estimate.Below, none, 0, "~09160~^~213~^0^4^0^~1~^~A~^"),
	tablestest.At("09160", "STARCH", estimate.Below, none, none, "~09160~^~209~^0^1^^~1~^~A~^"),
	tablestest.At("09160", "CAFFN", estimate.Assumed, 0, none, "~09160~^~262~^0^0^^~7~^~Z~^"),
	tablestest.At("09206", "VITC", estimate.Calculated, 50, none, "~09206~^~401~^50^0^^~1~^~~^"),
	tablestest.At("13361", "CHOLE", estimate.Calculated, 89, none, "~13361~^~601~^89^0^^~4~^~PIK~^"),
	tablestest.At("14209", "CAFFN", estimate.Measured, 40, 0.476*math.Sqrt(8), "~14209~^~262~^40^8^0.476^~1~^~A~^"),
	tablestest.At("19296", "GLUS", estimate.Measured, 35.75, none, "~19296~^~211~^35.75^1^^~13~^~AI~^"),
	tablestest.At("19335", "SUCS", estimate.Measured, 99.8, 0.096*math.Sqrt(8), "~19335~^~210~^99.8^8^0.096^~1~^~A~^"),
}

func TestTrimmedRelease(t *testing.T) {
	tablestest.Run(t, sr.Format, trimmed, tablestest.Want{
		Columns: 150, Foods: 14, Values: 1457, First: "01001", Last: "19335",
		Names: map[string]string{
			"02010": "Spices, cinnamon, ground",
			"13361": `Beef, composite of trimmed retail cuts, separable lean and fat, trimmed to 0" fat, all grades, cooked`,
		},
		Spots: spots,
		Damage: tablestest.Damage{
			File: "NUT_DATA.txt", Line: 3, Number: "^~205~^0.06^", Replaced: "^~205~^%^", Missing: "NUT_DATA.txt",
		},
	})
}

// Counts of the documentation of SR28, Table 3.
func TestWholeRelease(t *testing.T) {
	tablestest.Run(t, sr.Format, tablestest.Published(t, "sr28"), tablestest.Want{
		Columns: 150, Foods: 8789, Values: 679045, First: "01001", Last: "93600",
		// FOOD_DES has bytes 0x91 and 0x92, the quotes of Windows-1252.
		Names: map[string]string{"09160": "Lime juice, raw", "93600": "Turtle, green, raw"},
		Spots: append([]tablestest.Spot{
			tablestest.At("19165", "THEBRN", estimate.Measured, 2057, none, "~19165~^~263~^2057^1^^~1~^~~^"),
			tablestest.At("93600", "WATER", estimate.Calculated, 78.5, none, "~93600~^~255~^78.5^0^^~1~^~~^"),
		}, spots...),
	})
}

// TestStatesOfZeros counts the three kinds of zero of SR28: 61,269 rows have
// source code 7, and the other zeros divide by their data points.
func TestStatesOfZeros(t *testing.T) {
	release := tablestest.Open(t, sr.Format, tablestest.Published(t, "sr28"))
	assert.Equal(t, "28", release.Table.Edition)
	zeros := map[estimate.State]int{}
	for f, err := range release.Foods {
		require.NoError(t, err)
		for _, v := range f.Values {
			if v.Amount == 0 || v.State == estimate.Below {
				zeros[v.State]++
			}
		}
	}
	// Counted with a few lines of awk over NUT_DATA.txt, apart from this reader.
	assert.Equal(t, map[estimate.State]int{estimate.Assumed: 61269, estimate.Below: 37738, estimate.Calculated: 83598}, zeros)
}

func TestLimitIsHalfOfTheLastDecimalOfTheColumn(t *testing.T) {
	// NUTR_DEF.txt: ~213~^~g~^~LACS~^~Lactose~^~2~ and ~322~^~µg~^~CARTA~^~Carotene, alpha~^~0~
	f := tablestest.Foods(t, sr.Format, trimmed)["09160"]
	for tag, limit := range map[constituent.ID]float64{"LACS": 0.005, "CARTA": 0.5} {
		assert.Equal(t, limit, tablestest.Value(t, f, tag).Limit, tag)
	}
}

func TestFoodAsPublished(t *testing.T) {
	foods := tablestest.Foods(t, sr.Format, trimmed)
	f := foods["01001"]
	require.NotEmpty(t, f.Portions)
	assert.Equal(t, `pat (1" sq, 1/3" high)`, f.Portions[0].Name) // ~01001~^1^1^~pat (1" sq, 1/3" high)~^5.0^^
	assert.Equal(t, 5.0, f.Portions[0].Grams)
	assert.Equal(t, "Dairy and Egg Products", f.PublisherGroup)
	assert.Equal(t, 1.0, f.Edible)

	f = foods["01012"] // ~01012~^1^4^~oz~^113^^
	assert.Equal(t, "4 oz", f.Portions[0].Name)
	assert.Equal(t, 113.0, f.Portions[0].Grams)

	f = foods["01048"] // two jars (5 oz), of 128 g and 142 g
	names := map[string]float64{}
	for _, p := range f.Portions {
		names[p.Name] = p.Grams
	}
	assert.Equal(t, 128.0, names["jar (5 oz)"])
	assert.Equal(t, 142.0, names["jar (5 oz)~2"])

	f = foods["09316"] // ~Caps and stems~^6^
	assert.InDelta(t, 0.94, f.Edible, 1e-12)
	assert.Contains(t, f.Note, "Caps and stems")
	assert.Contains(t, f.Note, "On 432: Value based on the analysis of 5-methyltetrahydrofolate")

	f = foods["13361"] // refuse is blank; FOOTNOTE has bytes 0xA0 and 0x94
	assert.False(t, food.Stated(f.Edible))
	assert.Contains(t, f.Note, "of 0\u201d fat trim cuts")
	assert.Contains(t, f.Note, "were\u00a0based")
}

func TestOptionalFilesMayBeAbsent(t *testing.T) {
	dir := tablestest.Copy(t, trimmed)
	for _, name := range []string{"WEIGHT.txt", "FOOTNOTE.txt", "DERIV_CD.txt"} {
		require.NoError(t, os.Remove(filepath.Join(dir, name)))
	}
	foods := tablestest.Foods(t, sr.Format, dir)
	assert.Len(t, foods, 14)
	for _, f := range foods {
		assert.Empty(t, f.Portions)
	}
}

func BenchmarkRead(b *testing.B) {
	tablestest.Bench(b, sr.Format, tablestest.Published(b, "sr28"))
}

// TestFilesThatDoNotBelongTogether: each file is whole by itself, but a line of
// one is missing in another.
func TestFilesThatDoNotBelongTogether(t *testing.T) {
	last := func(lines []string) []string { return lines[:len(lines)-1] }
	cases := []struct {
		name, file string
		change     func(lines []string) []string
		says       string
	}{
		{"values of the last food cut off", "NUT_DATA.txt", func(lines []string) []string {
			return slices.DeleteFunc(lines, func(l string) bool { return strings.HasPrefix(l, "~19335~") })
		}, "FOOD_DES.txt:14:1: food 19335 has no row in NUT_DATA.txt"},
		{"last food cut off", "FOOD_DES.txt", last, `NUT_DATA.txt:1380:1: food "19335" is not in FOOD_DES.txt`},
		{"column missing", "NUTR_DEF.txt", last, `column "859" is not in NUTR_DEF.txt`},
		{"column of another kind", "NUTR_DEF.txt", func(lines []string) []string {
			return append(lines, "~999~^~g~^~~^~Surprise~^~2~^~1~\r\n")
		}, `NUTR_DEF.txt:151:1: column "999" is not known`},
		{"source code missing", "SRC_CD.txt", func(lines []string) []string { return lines[1:] }, `source code "1" is not in SRC_CD.txt`},
		{"group missing", "FD_GROUP.txt", func(lines []string) []string { return lines[1:] }, `FOOD_DES.txt:1:9: group "0100" is not in FD_GROUP.txt`},
		{"foods not sorted", "FOOD_DES.txt", func(lines []string) []string {
			lines[3], lines[4] = lines[4], lines[3]
			return lines
		}, "is not in FOOD_DES.txt or its rows are not together"},
		{"zero byte in a name", "FOOD_DES.txt", func(lines []string) []string {
			lines[1] = strings.Replace(lines[1], "Cheese", "Che\x00se", 1)
			return lines
		}, "FOOD_DES.txt:2:20: a zero byte"},
		{"portion of no food", "WEIGHT.txt", func(lines []string) []string {
			return append(lines, "~99999~^1^1^~cup~^1^^\r\n")
		}, `WEIGHT.txt:52:1: food "99999"`},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			dir := tablestest.Change(t, trimmed, c.file, func(content []byte) []byte {
				lines := slices.Collect(strings.Lines(string(content)))
				return []byte(strings.Join(c.change(lines), ""))
			})
			_, err := tablestest.Read(t, sr.Format, dir)
			assert.ErrorContains(t, err, c.says)
		})
	}
}

// The derivation says that nobody measured a zero, whatever its source code says: of
// DERIV_CD.txt, "~Z~^~Assumed zero (Insignificant amount or not naturally occurring …". A
// value above zero is none.
func TestDerivationZIsAnAssumedZero(t *testing.T) {
	const printed = "~09160~^~262~^0^0^^~7~^~Z~^"
	for as, want := range map[string]estimate.State{
		"~09160~^~262~^0^0^^~1~^~Z~^": estimate.Assumed,
		"~09160~^~262~^0^4^^~1~^~Z~^": estimate.Assumed,
		"~09160~^~262~^0^4^^~1~^~A~^": estimate.Below,
		"~09160~^~262~^2^4^^~1~^~Z~^": estimate.Measured,
		"~09160~^~262~^2^0^^~1~^~Z~^": estimate.Calculated,
	} {
		dir := tablestest.Change(t, trimmed, "NUT_DATA.txt", tablestest.Swap(t, printed, as))
		assert.Equal(t, want, tablestest.Value(t, tablestest.Foods(t, sr.Format, dir)["09160"], "CAFFN").State, as)
	}
}
