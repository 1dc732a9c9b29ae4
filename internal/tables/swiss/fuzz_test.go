package swiss

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

// FuzzSwiss reads a table of any bytes: it must end, give only legal values, and
// refuse with a place.
func FuzzSwiss(f *testing.F) {
	content, err := os.ReadFile("../../../testdata/tables/swiss/" + file)
	if err != nil {
		f.Fatal(err)
	}
	f.Add(content)
	const head = "ID,name D,synonyms D,name F,synonyms F,name I,synonyms I,name E,synonyms E,category E,specific gravity,protein,unit,matrix unit,value type,source\n"
	f.Add([]byte(head + "1,a,,b,,c,,d,e;f,g,1.1,2,gram,per 100ml food volume,less than,3\n2,,,,,,,x,,,,0,gram,per 100g edible portion,trace,Computed value\n"))
	f.Add([]byte("ID\n1\n"))
	f.Fuzz(func(t *testing.T, content []byte) {
		release, err := open(context.Background(), fstest.MapFS{file: {Data: content}}, "fuzz", "")
		if err != nil {
			checkFault(t, err)
			return
		}
		for f, err := range release.Foods {
			if err != nil {
				checkFault(t, err)
				return
			}
			if len(f.Names) == 0 || f.Names[0].Text == "" || f.Density.GramsPerMl <= 0 {
				t.Fatalf("%+v", f)
			}
			for _, v := range f.Values {
				if v.Amount < 0 || v.Limit < 0 || math.IsInf(v.Amount, 0) || math.IsInf(v.Limit, 0) ||
					(v.State >= estimate.Trace) == food.Stated(v.Amount) || v.State == estimate.Below && !(v.Limit > 0) {
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
