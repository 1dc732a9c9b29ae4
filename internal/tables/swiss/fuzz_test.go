package swiss

import (
	"context"
	"testing"
	"testing/fstest"

	"sipsum/internal/tables/tablestest"
)

// FuzzSwiss reads a table of any bytes: it must end, give only legal values, and
// refuse with a place.
func FuzzSwiss(f *testing.F) {
	f.Add(tablestest.Bytes(f, "../../../testdata/tables/swiss", file))
	const head = "ID,name D,synonyms D,name F,synonyms F,name I,synonyms I,name E,synonyms E,category E,specific gravity,protein,unit,matrix unit,value type,source\n"
	f.Add([]byte(head + "1,a,,b,,c,,d,e;f,g,1.1,2,gram,per 100ml food volume,less than,3\n2,,,,,,,x,,,,0,gram,per 100g edible portion,trace,Computed value\n"))
	f.Add([]byte("ID\n1\n"))
	f.Fuzz(func(t *testing.T, content []byte) {
		release, err := open(context.Background(), fstest.MapFS{file: {Data: content}}, "fuzz", "")
		tablestest.Legal(t, release, err)
	})
}
