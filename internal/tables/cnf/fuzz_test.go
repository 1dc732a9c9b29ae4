package cnf

import (
	"context"
	"errors"
	"os"
	"testing"
	"testing/fstest"

	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
)

// FuzzCNF reads a release whose foods, amounts and conversion factors are any
// bytes: it must end, give only legal values, and refuse with a place.
func FuzzCNF(f *testing.F) {
	const dir = "../../../testdata/tables/cnf/"
	fixed := fstest.MapFS{}
	for _, name := range []string{columnFile, sourceFile, measureFile} {
		content, err := os.ReadFile(dir + name)
		if err != nil {
			f.Fatal(err)
		}
		fixed[name] = &fstest.MapFile{Data: content}
	}
	seed := func(name string) []byte {
		content, err := os.ReadFile(dir + name)
		if err != nil {
			f.Fatal(err)
		}
		return content
	}
	f.Add(seed(foodFile), seed(valueFile), seed(portionFile))
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
		if err != nil {
			checkFault(t, err)
			return
		}
		for f, err := range release.Foods {
			if err != nil {
				checkFault(t, err)
				return
			}
			for _, v := range f.Values {
				if v.Amount < 0 || v.SD < 0 || v.N < 0 || v.State > estimate.Unknown || (v.State >= estimate.Trace) == food.Stated(v.Amount) {
					t.Fatalf("%s: %+v", f.ID, v)
				}
			}
		}
	})
}

func checkFault(t *testing.T, err error) {
	var faults *fail.Error
	if !errors.As(err, &faults) || faults.Faults[0].File == "" || faults.Exit != fail.Wrong {
		t.Fatalf("not a fault with a place: %v", err)
	}
}
