package cofid

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

// FuzzCoFID reads sheets of any bytes: it must end, give only legal values, and
// refuse with a place.
func FuzzCoFID(f *testing.F) {
	const dir = "../../../testdata/tables/cofid/"
	seed := func(name string) []byte {
		content, err := os.ReadFile(dir + name)
		if err != nil {
			f.Fatal(err)
		}
		return content
	}
	f.Add(seed("1.2 Factors.csv"), seed("1.3 Proximates.csv"))
	f.Add([]byte("Food Code,Food Name,Specific gravity\n1,x,0.11\n"), []byte("Food Code,Food Name,Group,Water (g),Water (mg)\n1,x,Q,1e12,Tr\n1,x,Q,Tr,N\n"))
	f.Add([]byte(",Food Name,Description\n"), []byte("a title\n\n,Food Name,Group,Water (g)\n,,,\n1,\xe9,Q,< 0.1\n"))
	f.Fuzz(func(t *testing.T, factors, proximates []byte) {
		files := fstest.MapFS{"a.csv": {Data: factors}, "b.csv": {Data: proximates}}
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
				if v.Amount < 0 || math.IsInf(v.Amount, 0) || v.Limit < 0 || v.State > estimate.Unknown || (v.State >= estimate.Trace) == food.Stated(v.Amount) {
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
