package cnf

import (
	"context"
	"testing"
	"testing/fstest"

	"sipsum/internal/tables/tablestest"
)

// FuzzCNF reads a release whose foods, amounts and conversion factors are any
// bytes: it must end, give only legal values, and refuse with a place.
func FuzzCNF(f *testing.F) {
	const dir = "../../../testdata/tables/cnf"
	fixed := fstest.MapFS{}
	for _, name := range []string{columnFile, sourceFile, measureFile} {
		fixed[name] = &fstest.MapFile{Data: tablestest.Bytes(f, dir, name)}
	}
	f.Add(tablestest.Bytes(f, dir, foodFile), tablestest.Bytes(f, dir, valueFile), tablestest.Bytes(f, dir, portionFile))
	const foods = "FoodID,FoodGroupID,FoodDescription\n1,1,x\n"
	const amounts = "FoodID,NutrientID,NutrientValue,StandardError,NumberofObservations,NutrientSourceID\n"
	const portions = "FoodID,MeasureID,ConversionFactorValue\n"
	f.Add([]byte(foods), []byte(amounts+"1,203,1e308,1e308,9,0\n"), []byte(portions+"1,341,1e308\n"))
	f.Add([]byte("\xef\xbb\xbf"+foods), []byte(amounts+"1,203,\"1\n"), []byte{0})
	f.Fuzz(func(t *testing.T, foods, amounts, portions []byte) {
		files := fstest.MapFS{foodFile: {Data: foods}, valueFile: {Data: amounts}, portionFile: {Data: portions}}
		for name, file := range fixed {
			files[name] = file
		}
		release, err := open(context.Background(), files, "fuzz", "")
		tablestest.Legal(t, release, err)
	})
}
