package label_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/label"
)

// The rules of a land that is not: everything that a set of rules can ask for, as rows.
var madeUp = map[string]string{
	"rules": `rules,like,as,title,basis,columns,percent_head,usual,unknown,serving_line,ml,energy_in,kj_per_kcal,percent_of,simplified_from,source,status
isle,,,What is in it,volume,serving per-100,% of a day*,,we cannot say,a cup of {size},mL,kcal,4,printed,2,Isle Code 1,verified
twin,isle,", as the twin has it",Twin facts,volume,per-100 serving,% of a day*,,we cannot say,a cup of {size},mL,kcal,4,printed,2,Twin Code 1,secondary
`,
	"rows": `rules,key,label,indent,tag,terms,unit,print_unit,need,within,simple,rounding,reference,percent,percent_terms,percent_of,line,source,status
isle,energy,Energy,0,ENERC,energy,kcal kJ,kcal kJ,always,,core,whole,,,,,,Isle Code 2,verified
isle,fat,Fat,0,FAT,FAT,g,g,always,,zero,half,fat,share,,,,Isle Code 3,verified
isle,carbohydrate,Carbohydrate,0,CHOCDF,MASS WATER*-1 PROCNT*-1 FAT*-1 ASH*-1,g,g,always,,zero,half,,,,,,Isle Code 4,verified
isle,caffeine,Caffeine,0,CAFFN,CAFFN,mg,mg,if present,,,whole,,,,,Wakes with {},Isle Code 5: from memory,unverified
`,
	"rounding": `rules,band,from,including,step,figures,trim,text,when,source,status
isle,whole,0,yes,1,,no,,,Isle Code 6,verified
isle,half,100,yes,,2,no,,,Isle Code 7,verified
isle,half,0.5,yes,0.5,,yes,,,Isle Code 7,verified
isle,half,0,yes,,,no,none,CAFFN>50,Isle Code 7,verified
isle,half,0,yes,,,no,a trace,,Isle Code 7,verified
isle,share,0,yes,5,,no,,,Isle Code 8,verified
`,
	"references": `rules,key,value,unit,source,status
isle,fat,50,g,Isle Code 9,verified
`,
	"texts": `rules,kind,when,text,source,status
isle,statement,always,A day is 50 g of fat.,Isle Code 10,verified
isle,note,abv>0.5,Strong: {abv} %.,Isle Code 11,verified
twin,note,always,The twin asks for this too.,Twin Code 2,verified
`,
	"factors": `rules,constituent,kj_per_g,kcal_per_g,own,source,status
isle,CHOCDF,,4,,Isle Code 12,verified
isle,FAT,,9,,Isle Code 12,verified
isle,ALC,,7,,Isle Code 12,verified
`,
}

func isle(t *testing.T, rules string, f label.Facts) label.Card {
	t.Helper()
	parse := func(name string) []embedded.Row { return embedded.Parse(name, strings.NewReader(madeUp[name])) }
	c, err := label.MakeFrom(label.Tables{
		Rules: parse("rules"), Rows: parse("rows"), Rounding: parse("rounding"), References: parse("references"), Texts: parse("texts"),
		Factors: constituent.ReadEnergyFactors(parse("factors")),
	}, rules, f)
	require.NoError(t, err)
	return c
}

// A further jurisdiction takes rows only.
func TestAJurisdictionIsRows(t *testing.T) {
	f := facts(200, map[constituent.ID]float64{"WATER": 80, "ASH": 1, "PROCNT": 2, "FAT": 7.3, "CAFFN": 80, "ALC": 3})
	c := isle(t, "isle", f)
	assert.Equal(t, []string{label.PerServing, label.Per100ml}, c.Columns)
	assert.Equal(t, "a cup of 200 mL", c.ServingsLine)
	energy := row(t, c, "energy")
	// 100 − 80 − 2 − 7.3 − 1 = 9.7 g: 4 · 9.7 + 9 · 7.3 + 7 · 3 = 125.5 kcal, and 4 kJ each
	assert.Equal(t, "126 kcal / 502 kJ", energy.Serving.Printed)
	assert.Equal(t, "63 kcal / 251 kJ", energy.Per100ml.Printed)
	fat := row(t, c, "fat")
	assert.Equal(t, "7.5 g", fat.Serving.Printed)
	assert.Equal(t, "15 %", fat.Serving.Reference, "of what is printed")
	assert.Equal(t, "9.5 g", row(t, c, "carbohydrate").Serving.Printed)
	assert.Equal(t, "Wakes with 80 mg", row(t, c, "caffeine").Line)
	assert.True(t, row(t, c, "caffeine").FromMemory)
	assert.Equal(t, []label.Open{{Cell: "row caffeine", Source: "Isle Code 5: from memory"}}, c.Unverified)
	assert.Contains(t, notes(c), "Strong: 1.9 %.") // 3 g of 0.789 g/ml in 200 ml
	assert.Equal(t, label.Vertical, c.Shape)

	f.Serving["FAT"] = f.Serving["FASAT"]
	assert.Equal(t, "none g", row(t, isle(t, "isle", f), "fat").Serving.Printed, "a text with a condition")
	f.Serving["CAFFN"] = f.Serving["FASAT"]
	c = isle(t, "isle", f)
	assert.Equal(t, "a trace g", row(t, c, "fat").Serving.Printed)
	assert.NotContains(t, keys(c), "caffeine")
	delete(f.Serving, "FAT")
	delete(f.Serving, "FASAT")
	assert.Equal(t, "we cannot say", row(t, isle(t, "isle", f), "fat").Serving.Printed)
}

// A delta has the rows of the rules that it is like, and its own texts beside theirs.
func TestADeltaHasTheRowsOfItsModel(t *testing.T) {
	c := isle(t, "twin", facts(100, map[constituent.ID]float64{"WATER": 80}))
	assert.Equal(t, "Twin facts", c.Title)
	assert.Equal(t, []string{label.Per100ml, label.PerServing}, c.Columns)
	assert.Equal(t, "Isle Code 3, as the twin has it", row(t, c, "fat").Source)
	assert.Equal(t, "A day is 50 g of fat.", c.Statements[0].Text)
	assert.Contains(t, notes(c), "The twin asks for this too.")
	eu, uk := card(t, "eu", facts(100, nil)), card(t, "uk", facts(100, nil))
	assert.Equal(t, keys(eu), keys(uk))
	assert.Contains(t, row(t, uk, "fat").Source, "as retained in the law of the United Kingdom")
	assert.NotContains(t, notes(eu), "kcal a day")
	assert.Contains(t, notes(uk), "adults need around 2000 kcal a day") // SI 2021/909
}
