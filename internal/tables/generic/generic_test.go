package generic_test

import (
	"math"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/tables/generic"
	"sipsum/internal/tables/tablestest"
)

const invented = "../../../testdata/tables/generic"

var none = math.NaN()

func TestInventedTable(t *testing.T) {
	tablestest.Run(t, generic.Format, invented, tablestest.Want{
		Columns: 6, Foods: 4, Values: 5 + 5 + 5 + 4, First: "A1", Last: "A4",
		Names: map[string]string{"A3": "Invented syrup; thick"},
		Spots: []tablestest.Spot{
			tablestest.At("A1", "CITAC", estimate.Measured, 4800, 250, "4,8 g, SD 0,25 g"),
			tablestest.At("A1", "SE", estimate.Below, none, none, "< 0,5 ug"),
			tablestest.At("A1", "WATER", estimate.Measured, 91.5, none, "91,5 g"),
			tablestest.At("A1", "generic:house-bitterness", estimate.Measured, 2, none, "2 points"),
			tablestest.At("A2", "CITAC", estimate.Trace, none, none, "Tr"),
			tablestest.At("A2", "ALC", estimate.Calculated, 40, none, "38 g per 100 ml, density 0,95 g/ml"),
			tablestest.At("A2", "ENERC", estimate.Measured, 900.5, none, "900,5 kJ"),
			tablestest.At("A3", "generic:house-bitterness", estimate.Unknown, none, none, "N"),
			tablestest.At("A3", "SE", estimate.Measured, 1.5, none, "1,5 ug"),
			tablestest.At("A4", "CITAC", estimate.Calculated, 0, none, "0 g"),
			tablestest.At("A4", "ALC", estimate.Calculated, 0, none, "0 g per 100 ml"),
		},
		Damage: tablestest.Damage{File: "house.csv", Line: 4, Number: ";60,5;", Replaced: ";%;", Missing: "house.csv", Blank: true},
	})
}

func TestFoodsAsWritten(t *testing.T) {
	foods := tablestest.Foods(t, generic.Format, invented)
	a1 := foods["A1"]
	assert.Equal(t, []food.Name{{Language: "en", Text: "Invented lemon juice"}, {Language: "fr", Text: "Jus de citron inventé"}}, a1.Names)
	assert.Equal(t, "citrus juice", a1.Group)
	assert.Equal(t, 1.025, a1.Density.GramsPerMl)
	assert.Equal(t, "first press", a1.Note)
	assert.Equal(t, 6, tablestest.Value(t, a1, "CITAC").N)
	assert.Equal(t, 0.5, tablestest.Value(t, a1, "SE").Limit)
	assert.Equal(t, 50.0, tablestest.Value(t, foods["A2"], "CITAC").Limit, "half of the last digit of a column in g with one decimal")

	a3 := foods["A3"]
	assert.Empty(t, a3.Group)
	assert.Equal(t, "kitchen", a3.PublisherGroup)
	assert.InDelta(t, 0.36, a3.Edible, 1e-12)
	assert.Equal(t, "Given per 100 ml and no density is stated, so left out: Alcohol (ml basis).", a3.Note)
	_, has := a3.Value("ALC")
	assert.False(t, has)
	assert.Equal(t, "two\nlines", foods["A4"].Note)
}

func TestReleaseSaysWhatTheMappingFileSays(t *testing.T) {
	release, err := generic.Format.Open(t.Context(), filepath.Join(invented, "sipsum-map.csv"), "house")
	require.NoError(t, err)
	assert.Equal(t, "house", release.Table.ID)
	assert.Equal(t, "Nobody. Invented house analyses, 2026-01", release.Table.Citation)
	assert.Equal(t, "invented; free to copy", release.Table.Licence)
	assert.True(t, generic.Format.Sniff(invented))
	assert.True(t, generic.Format.Sniff(filepath.Join(invented, "sipsum-map.csv")))
	assert.False(t, generic.Format.Sniff(filepath.Join(invented, "house.csv")))
	assert.False(t, generic.Format.Sniff(filepath.Dir(invented)))
}

// Lines of small mapping files; a value is in every one.
const (
	first  = "role,column,as,unit,per,why\n"
	basics = first + "file,,t.csv,,,\ntitle,,T,,,\nedition,,1,,,\nlicence,,L,,,\ncode,id,,,,\nname,food,,,,\n"
	small  = basics + "value,acid,CITAC,mg,,\n"
	rows   = "id,food,acid\n1,x,5\n"
)

func TestFaultsOfTheMappingFileAreToldAtOnce(t *testing.T) {
	_, err := open(t, map[string]string{"m.csv": basics + strings.Join([]string{
		"colour,food,,,,", "value,acid,CITRIC,mg,,", "value,b,CITAC,kJ,,", "value,c,keep,,,", "value,d,CITAC,mg,1 l,", "sd,e,nothing,,,",
		"name,food,,,,", "code,f,,,,", "density,g,,kg,,", "edible,h,,g,,", "title,,again,,,", "trace,,,,,", "decimal,,dot,,,", "header,,0,,,",
		"separator,,pipe,,,", "value,C!,keep,x,,", "value,??,keep,x,,", "short,row", "value,,K,mg,,", "state,,guessed,,,",
	}, "\n") + "\n"})
	for line, says := range []string{
		`m.csv:8: "colour" is not a role`, `m.csv:9: "CITRIC" is not a constituent`, `m.csv:10: "kJ" cannot become mg, the unit of CITAC`,
		`m.csv:11: column "c" has no unit`, `m.csv:12: per "1 l"`, `m.csv:13: sd of "nothing"`, `m.csv:14: column "food" has a row already, on line 7`,
		`m.csv:15: code has a column already, on line 6`, `m.csv:16: density in "kg"`, `m.csv:17: edible share in "g"`, `m.csv:18: title stands twice`,
		`m.csv:19: trace has no mark`, `m.csv:20: decimal is "dot" (write comma or point)`, `m.csv:21: "0" is not the number of a row`,
		`m.csv:22: separator is "pipe"`, `m.csv:23: columns "c" and "C!" cannot be told apart`, `m.csv:24: column "??" has no letter or digit`,
		`m.csv:25: 2 cells where there should be 6`, `m.csv:26: value names no column`, `m.csv:27: state is "guessed"`,
	} {
		assert.ErrorContains(t, err, says, "line %d", line+8)
	}
	assert.ErrorContains(t, err, "CITAC", "the second CITAC")
}

func TestFaults(t *testing.T) {
	cases := []struct {
		name  string
		files map[string]string
		says  string
	}{
		{"nothing needed is there", map[string]string{"m.csv": first}, "there is no row licence (add a row: licence,,TEXT,,,)"},
		{"empty mapping file", map[string]string{"m.csv": ""}, "m.csv: the file is empty (begin it with role,column,as,unit,per,why)"},
		{"another file", map[string]string{"m.csv": rows}, "m.csv:1: the first line is not that of a mapping file"},
		{"no table", map[string]string{"m.csv": small}, "m.csv:2: the table t.csv is not there"},
		{"a table elsewhere", map[string]string{"m.csv": strings.Replace(small, "t.csv", "../t.csv", 1)}, `m.csv:2: "../t.csv" leads outside of the folder`},
		{"column missing", map[string]string{"m.csv": small, "t.csv": "id,food,acids\n"}, `m.csv:8: column "acid" is not in t.csv (its columns are ["id" "food" "acids"])`},
		{"column not named", map[string]string{"m.csv": small, "t.csv": "id,food,acid,x\n"}, `t.csv:1:14: the mapping file has no row for column "x" (add one, or: ignore,x,,,,)`},
		{"column twice", map[string]string{"m.csv": small, "t.csv": "id,food,acid,acid\n"}, `t.csv:1:14: column "acid" stands twice`},
		{"no header", map[string]string{"m.csv": small + "header,,9,,,\n", "t.csv": rows}, "t.csv:9: there is no header in this row"},
		{"no food", map[string]string{"m.csv": small, "t.csv": "id,food,acid\n"}, "t.csv: holds no food"},
		{"short row", map[string]string{"m.csv": small, "t.csv": "id,food,acid\n1,x\n"}, "t.csv:2:3: 2 cells where the header has 3"},
		{"food twice", map[string]string{"m.csv": small, "t.csv": rows + "1,y,6\n"}, `t.csv:3:1: code "1" is empty or stands twice`},
		{"no name", map[string]string{"m.csv": small, "t.csv": "id,food,acid\n1,,5\n"}, "t.csv:2:3: the food has no name"},
		{"mark not named", map[string]string{"m.csv": small, "t.csv": "id,food,acid\n1,x,Tr\n"}, `t.csv:2:5: "Tr" is neither a number nor a mark of the mapping file`},
		{"limit not named", map[string]string{"m.csv": small, "t.csv": "id,food,acid\n1,x,<5\n"}, `t.csv:2:5: "<5" is neither`},
		{"decimal comma not named", map[string]string{"m.csv": small, "t.csv": "id,food,acid\n1,x,\"1,5\"\n"}, `t.csv:2:5: "1,5" is neither`},
		{"thousands", map[string]string{"m.csv": small + "decimal,,comma,,,\nseparator,,semicolon,,,\n", "t.csv": "id;food;acid\n1;x;1.234,5\n"}, `t.csv:2:5: "1.234,5" is neither`},
		{"negative", map[string]string{"m.csv": small, "t.csv": "id,food,acid\n1,x,-5\n"}, `t.csv:2:5: "-5" is neither`},
		{"more than the whole", map[string]string{"m.csv": small, "t.csv": "id,food,acid\n1,x,5\n2,y,500000\n"}, `t.csv:3:5: "500000" makes citric acid of 500 g in 100 g, and that cannot be`},
		{"a limit above the whole", map[string]string{"m.csv": small + "below,,<,,,\n", "t.csv": "id,food,acid\n1,x,<500000\n"}, `t.csv:2:5: "<500000" makes citric acid of 500 g in 100 g`},
		{"more than the whole by its density", map[string]string{"m.csv": strings.Replace(small, "mg,,", "g,100 ml,", 1) + "density,d,,g/ml,,\n", "t.csv": "id,food,acid,d\n1,x,120,1.1\n"}, `t.csv:2:5: "120" makes citric acid of 109.091 g in 100 g`},
		{"spread beyond its mean", map[string]string{"m.csv": small + "sd,s,acid,,,\n", "t.csv": "id,food,acid,s\n1,x,1,100\n"}, `t.csv:2:7: "100" is more than the standard deviation of such a mean (say in a column n of how many samples) can be`},
		{"spread beyond its samples", map[string]string{"m.csv": small + "sd,s,acid,,,\nn,n,acid,,,\n", "t.csv": "id,food,acid,s,n\n1,x,10,33,9\n"}, `t.csv:2:8: "33" is more than the standard deviation of 9 samples with such a mean can be`},
		{"sheet missing", map[string]string{"m.csv": strings.Replace(small, "t.csv", "t.xlsx", 1) + "sheet,,Foods,,,\n", "t.xlsx": "no workbook"}, "t.xlsx: is not a whole .xlsx workbook"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			_, err := open(t, c.files)
			assert.ErrorContains(t, err, c.says)
			assert.Equal(t, fail.Wrong, fail.ExitCode(err))
		})
	}
}

func TestAWorkbookReadsLikeTheText(t *testing.T) {
	dir := t.TempDir()
	book := excelize.NewFile()
	defer book.Close()
	_, err := book.NewSheet("Foods")
	require.NoError(t, err)
	for cell, value := range map[string]any{"A3": "id", "B3": "food", "C3": "acid", "A4": "01", "B4": "x", "C4": 1.25, "A6": "02", "B6": "y", "C6": "1,5", "A7": "03", "B7": "z"} {
		require.NoError(t, book.SetCellValue("Foods", cell, value))
	}
	require.NoError(t, book.SaveAs(filepath.Join(dir, "t.xlsx")))
	mapping := strings.Replace(small, "t.csv", "t.xlsx", 1) + "sheet,,Foods,,,\nheader,,3,,,\ndecimal,,comma,,,\n"
	tablestest.Write(t, dir, "m.csv", []byte(mapping))
	foods := tablestest.Foods(t, generic.Format, filepath.Join(dir, "m.csv"))
	for code, want := range map[string]float64{"01": 1.25, "02": 1.5} {
		assert.Equal(t, want, tablestest.Value(t, foods[code], "CITAC").Amount)
	}
	assert.Empty(t, foods["03"].Values)

	tablestest.Write(t, dir, "m.csv", []byte(strings.Replace(mapping, "sheet,,Foods", "sheet,,Food", 1)))
	_, err = generic.Format.Open(t.Context(), filepath.Join(dir, "m.csv"), "")
	assert.ErrorContains(t, err, `m.csv:9: t.xlsx has no sheet "Food" (its sheets are ["Sheet1" "Foods"])`)
}

// Of nine samples of which one is 90 and the others 0 the mean is 10 and the standard
// deviation 30; a mean printed as 0 may be almost a half.
func TestAWideSpreadMayStand(t *testing.T) {
	foods, err := open(t, map[string]string{"m.csv": small + "sd,s,acid,,,\nn,n,acid,,,\n", "t.csv": "id,food,acid,s,n\n1,x,10,30,9\n2,y,0,0.4,\n"})
	require.NoError(t, err)
	assert.Equal(t, 30.0, tablestest.Value(t, foods[0], "CITAC").SD)
	assert.Equal(t, 0.4, tablestest.Value(t, foods[1], "CITAC").SD)
}

func TestIgnoreTheRest(t *testing.T) {
	foods, err := open(t, map[string]string{"m.csv": small + "ignore,*,,,,\n", "t.csv": "id,food,acid,x,\n1,a,5,z,z\n"})
	require.NoError(t, err)
	assert.Len(t, foods, 1)
}

// open reads small files from m.csv.
func open(t *testing.T, files map[string]string) ([]*food.Food, error) {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		tablestest.Write(t, dir, name, []byte(text))
	}
	return tablestest.Read(t, generic.Format, filepath.Join(dir, "m.csv"))
}
