package generic

import (
	"context"
	"errors"
	"math"
	"os"
	"testing"
	"testing/fstest"

	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
)

// FuzzGeneric reads a mapping file and a table of any bytes: it must end, give
// only legal values, and refuse with a place.
func FuzzGeneric(f *testing.F) {
	const dir = "../../../testdata/tables/generic/"
	mapping, err := os.ReadFile(dir + mapFile)
	if err != nil {
		f.Fatal(err)
	}
	house, err := os.ReadFile(dir + "house.csv")
	if err != nil {
		f.Fatal(err)
	}
	const small = "role,column,as,unit,per,why\nfile,,house.csv,,,\ntitle,,T,,,\nedition,,1,,,\nlicence,,L,,,\ncode,id,,,,\nname,food,,,,\n"
	f.Add(mapping, house)
	f.Add([]byte(small+"value,acid,CITAC,g,100 ml,\ndensity,d,,g/ml,,\ntrace,,Tr,,,\nbelow,,<,,,\n"), []byte("id,food,acid,d\n1,x,1e12,0.1\n2,y,<1e-12,\n3,z,Tr,1\n"))
	f.Add([]byte(small+"value,acid,keep,%,,\nignore,*,,,,\nheader,,3,,,\n"), []byte("a title\n\nid,food,acid\n1,\xe9,\"5\n"))
	f.Fuzz(func(t *testing.T, mapping, house []byte) {
		files := fstest.MapFS{mapFile: {Data: mapping}, "house.csv": {Data: house}}
		release, err := open(context.Background(), files, "fuzz", mapFile, "")
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
				if v.Amount < 0 || math.IsInf(v.Amount, 0) || v.SD < 0 || v.Limit < 0 || v.N < 0 || v.State > estimate.Unknown ||
					(v.State >= estimate.Trace) == food.Stated(v.Amount) {
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
